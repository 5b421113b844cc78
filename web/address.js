// Mends an address that would stop the program: Go takes none with a broken escape in it,
// such as #100% or a link that was cut in the middle of one, and browsers let them through.
// The sign is escaped itself, so that it stands for what it is. A link whose "#" became a "?"
// gets it back, with the "?" behind it: the program says that it was there. And takes a step
// to an address that the history refuses.
"use strict";
(() => {
  function mend() {
    const mended = location.href.replace(/^([^?#]*)(\?v=[^#]*)#?$/, "$1#$2").replace(/%(?![\da-f]{2})/gi, "%25");
    if (mended === location.href) return;
    try {
      history.replaceState(history.state, "", mended);
    } catch (e) { /* too many in too short a time: the trimmed go-app reads it as it is */ }
  }
  mend();
  // A browser takes no more than so many steps in so short a time, and throws: that would
  // stop the program. The page is loaded then.
  const push = history.pushState;
  history.pushState = (state, unused, address) => {
    try {
      push.call(history, state, unused, address);
    } catch (e) {
      location.assign(address);
      // The program shows the other page by then: this one is not to come back so.
      addEventListener("pageshow", (e) => { if (e.persisted) location.reload(); });
    }
  };
  addEventListener("popstate", mend); // before left.js and the program hear of it
})();
