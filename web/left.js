// Keeps what is typed when a page is left: reloaded, put away by the system, or gone
// from, before the address has followed. And what the address does not hold.
"use strict";
// seen is how start.js sees and fills what is on the page. What is returned are the
// folds to open or close and the place to scroll to, as soon as they are there.
striderule.keepLeft = (seen) => {
  // A browser may refuse: then the last key is lost, or the form.
  const tab = {
    get(key) {
      try {
        return sessionStorage.getItem("striderule:" + key);
      } catch (e) { return null; }
    },
    set(key, text) {
      try {
        if (text === null) sessionStorage.removeItem("striderule:" + key);
        else sessionStorage.setItem("striderule:" + key, text);
      } catch (e) { /* refused */ }
    },
  };
  const show = (hash) => history.replaceState(history.state, "", location.pathname + location.search + hash);
  const noted = () => "left:" + location.pathname; // each page's by itself

  // A browser that has begun to leave no longer hears of an address that is written,
  // and comes back to the one before; or it ends the page in the middle of the writing.
  // So the program tells of it first.
  const recent = [];
  striderule.addressBecomes = (address) => {
    recent.push(location.href);
    setTimeout(() => recent.shift(), 1000);
    note(new URL(address, location.href).href, []);
  };

  // What the page last was in this tab, for who comes back by the menu.
  const last = () => "last:" + location.pathname;
  striderule.lastHere = () => tab.get(last()) || "";

  function note(now, fields) {
    const { hash } = new URL(now);
    if (hash) tab.set(last(), hash);
    tab.set(noted(), JSON.stringify({ was: [...recent, location.href], now, fields, folds: seen.folds(), y: scrollY }));
  }

  // The program writes the address at once. Browsers that reload go by the one from
  // before all the same: the tab notes both, or, where no program runs, what is in
  // the fields.
  function leave() {
    const runs = document.documentElement.dataset.app === "ready";
    if (runs) striderule.leavePage?.();
    note(location.href, runs ? [] : seen.fields());
  }
  addEventListener("pagehide", leave);
  // Phones end tabs that are not in view without another word.
  document.addEventListener("visibilitychange", () => { if (document.hidden) leave(); });
  // A field that loses the focus has the address written, which may be too late as well.
  document.addEventListener("change", leave, true);
  document.addEventListener("click", (e) => { if (e.target.closest?.("a")) leave(); }, true);

  // A page that was laid aside is shown again as it was, but WebKit then empties fields
  // that it is not to complete by itself, at some moment later.
  let held = [], rounds = 0;
  addEventListener("pagehide", () => {
    held = [...document.querySelectorAll("input:not([type=file]), select, textarea")].map((f) => [f, f.value, f.checked]);
  });
  function putBack() {
    for (const [f, value, checked] of held) {
      if (f.value !== value || f.checked !== checked) Object.assign(f, { value, checked });
    }
    if (--rounds > 0) setTimeout(putBack, 50);
  }
  addEventListener("pageshow", (e) => {
    if (!e.persisted) return;
    rounds = 20;
    setTimeout(putBack);
  });
  for (const type of ["pointerdown", "keydown", "input"]) addEventListener(type, () => { rounds = 0; }, { capture: true, passive: true });

  // ---- Steps through the history within the site. The address that has not followed yet
  // is that of a step that no longer shows: it is put right when it shows again.
  let step = null; // whose address is to follow
  striderule.addressWaits = () => {
    step = history.state && history.state.step;
    if (step) return;
    step = "gone:" + Math.random();
    try {
      history.replaceState({ step }, "");
    } catch (e) { step = null; /* too many in too short a time */ }
  };
  // The address of a step that was typed into is this tab's own, not somebody's link.
  striderule.isOwn = () => Boolean(history.state && history.state.step);
  // Before go-app, which then finds the address as it is to be.
  addEventListener("popstate", (e) => {
    if (!e.isTrusted) return; // the program's own
    const late = striderule.overtaken ? striderule.overtaken() : null;
    if (step && late !== null) tab.set(step, late);
    const here = history.state && history.state.step, fragment = here && tab.get(here);
    if (!here || fragment === null) return;
    tab.set(here, null);
    show(fragment && "#" + fragment);
  });

  // ---- Forms beside the sheet: what is half filled in is in no address.
  const draft = (address) => "draft:" + new URL(address, location.href);
  striderule.noteDraft = (address, text) => tab.set(draft(address), text || null);
  striderule.draftOf = (address) => tab.get(draft(address)) || "";

  // ---- What was left.
  const nothing = { was: [], now: location.href, fields: [], folds: [], y: 0 };
  try {
    const left = { ...nothing, ...JSON.parse(tab.get(noted())) }, now = new URL(left.now);
    tab.set(noted(), null);
    // Who asks for the same link anew wants it as it is.
    const again = performance.getEntriesByType("navigation")[0]?.type !== "navigate";
    if (!left.was.includes(location.href) || now.pathname !== location.pathname || !again && !left.fields.length) return nothing;
    show(now.hash);
    seen.fill(left.fields);
    if (!again) return nothing;
    seen.setFolds(left.folds);
    return left;
  } catch (e) { return nothing; /* it is not what was noted */ }
};
