// For Run the test: the screen stays awake, a sign when a move is over, and a step of the history
// for each card.
"use strict";
(() => {
  let lock = null, asking = false, wanted = false;
  async function wake() {
    if (!wanted || lock || asking || document.hidden) return;
    asking = true;
    try {
      const got = await navigator.wakeLock.request("screen");
      got.addEventListener("release", () => { lock = null; });
      if (wanted) lock = got;
      else got.release();
    } catch (e) {
      striderule.screenDims?.();
    }
    asking = false;
  }
  striderule.stayAwake = (on) => {
    wanted = on;
    if (on) wake();
    else if (lock) lock.release();
  };
  // The browser takes it back when the page is put away.
  document.addEventListener("visibilitychange", wake);

  // Within a tap, or the browser lets nobody hear it.
  let sound = null;
  striderule.allowSign = () => {
    try {
      sound = sound || new AudioContext();
      sound.resume();
    } catch (e) { /* there is none */ }
  };
  striderule.sign = () => {
    if (navigator.vibrate) navigator.vibrate([200, 100, 200]);
    if (!sound) return;
    const tone = sound.createOscillator(), volume = sound.createGain();
    tone.frequency.value = 880;
    volume.gain.value = .3;
    tone.connect(volume).connect(sound.destination);
    tone.start();
    tone.stop(sound.currentTime + .5);
  };

  // Steps of the same test know it by a name: going back to one of them changes the card alone.
  const step = (test) => ({ step: "card:" + Math.random(), test });
  striderule.pushCard = (address, test) => history.pushState(step(test), "", address);
  striderule.nameTest = (test) => {
    try {
      history.replaceState(step(test), "");
    } catch (e) { /* too many in too short a time */ }
  };
  striderule.testHere = () => history.state && history.state.test || "";
})();
