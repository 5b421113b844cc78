// Keeps what is typed when a page is left: reloaded, put away by the system, or gone
// from, before the address has followed.
"use strict";
// typed is how start.js sees and fills what is in the fields.
window.keepLeft = (typed) => {
  const noted = () => "striderule:left:" + location.pathname; // each page's by itself

  // A browser that has begun to leave no longer hears of an address that is written,
  // and comes back to the one before; or it ends the page in the middle of the writing.
  // So the program tells of it first.
  const recent = [];
  window.addressBecomes = (address) => {
    recent.push(location.href);
    setTimeout(() => recent.shift(), 1000);
    note(new URL(address, location.href).href, []);
  };

  function note(now, fields) {
    const left = { was: [...recent, location.href], now, fields };
    try {
      if (left.was.some((a) => a !== now) || fields.length) sessionStorage.setItem(noted(), JSON.stringify(left));
      else sessionStorage.removeItem(noted());
    } catch (e) { /* refused: the last key is lost */ }
  }

  // The program writes the address at once. Browsers that reload go by the one from
  // before all the same: the tab notes both, or, where no program runs, what is in
  // the fields.
  function leave() {
    const runs = document.documentElement.dataset.app === "ready";
    if (runs) window.leavePage?.();
    note(location.href, runs ? [] : typed.snapshot().fields);
  }
  addEventListener("pagehide", leave);
  // Phones end tabs that are not in view without another word.
  document.addEventListener("visibilitychange", () => { if (document.hidden) leave(); });
  // A field that loses the focus has the address written, which may be too late as well.
  document.addEventListener("change", leave, true);
  document.addEventListener("click", (e) => { if (e.target.closest?.("a")) leave(); }, true);

  // A page that was laid aside is shown again as it was, but WebKit then
  // empties fields that it is not to complete by itself, a moment later.
  let held = [];
  addEventListener("pagehide", () => {
    held = [...document.querySelectorAll("input:not([type=file]), select, textarea")].map((f) => [f, f.value, f.checked]);
  });
  addEventListener("pageshow", (e) => {
    if (e.persisted) setTimeout(() => { for (const [f, value, checked] of held) Object.assign(f, { value, checked }); });
  });

  try {
    const left = JSON.parse(sessionStorage.getItem(noted()));
    sessionStorage.removeItem(noted());
    // Who asks for the same link anew wants it as it is.
    const again = performance.getEntriesByType("navigation")[0]?.type !== "navigate";
    if (left && left.was.includes(location.href) && (again || left.fields.length)) {
      history.replaceState(history.state, "", left.now);
      typed.fill(left.fields);
    }
  } catch (e) { /* nothing is noted */ }
};
