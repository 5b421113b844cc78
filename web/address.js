// Mends an address that would stop the program: Go takes none with a broken escape in it,
// such as #100% or a link that was cut in the middle of one, and browsers let them through.
// The sign is escaped itself, so that it stands for what it is.
"use strict";
(() => {
  function mend() {
    const mended = location.href.replace(/%(?![\da-f]{2})/gi, "%25");
    if (mended === location.href) return;
    try {
      history.replaceState(history.state, "", mended);
    } catch (e) { /* too many in too short a time: the trimmed go-app reads it as it is */ }
  }
  mend();
  addEventListener("popstate", mend); // before left.js and the program hear of it
})();
