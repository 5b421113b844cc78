// Offers a newer version, once a worker has put it in place of the one that the page
// goes on with.
"use strict";
striderule.watchNewer = (workers) => {
  const words = {
    ready: "A newer version is ready.",
    reload: "Reload",
    later: "Later",
  };
  let newer = false;
  // Not on a first visit, which has no worker yet. A worker says which version it brings.
  if (workers && workers.controller) workers.addEventListener("message", (e) => {
    newer = e.data !== document.getElementById("load").dataset.version;
    offer();
  });

  // While a field is in use, the line does not stay at the lower edge.
  const aside = () => {
    document.getElementById("newer").classList.toggle("aside", document.activeElement.matches("input, select, textarea"));
  };
  for (const type of ["focusin", "focusout"]) addEventListener(type, aside);
  aside();

  // start.js calls it as well, when the program is there.
  function offer() {
    const line = document.getElementById("newer");
    if (!newer || line.firstChild || document.documentElement.dataset.app !== "ready") return;
    const button = (text, does) => {
      const b = document.createElement("button");
      b.textContent = text;
      b.onclick = does;
      return b;
    };
    const buttons = document.createElement("span");
    buttons.append(button(words.reload, () => location.reload()), button(words.later, () => line.replaceChildren()));
    line.append(words.ready, buttons);
  }
  return offer;
};
