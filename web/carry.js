// Carries what is typed over to a fresh page, by a link, when the program has stopped
// and can't write one. The program's own reading makes the best of it.
"use strict";
(() => {
  const words = {
    carryOn: "Reload and keep what I typed",
  };
  function entries() {
    const by = new Map();
    for (const f of document.querySelectorAll("form.sheet [name]")) by.set(f.name, [...by.get(f.name) || [], f]);
    const pieces = [["v", ["1"]]];
    for (const [name, of] of by) {
      const ticks = of.every((f) => f.type === "radio" || f.type === "checkbox");
      const inRows = of.every((f) => f.value === of[0].value); // ticks of rows, not options
      const cells = ticks && !inRows ? of.filter((f) => f.checked).map((f) => f.value) : of.map((f) => ticks && !f.checked ? "" : f.value);
      while (cells.length && !cells[cells.length - 1].trim()) cells.pop();
      if (cells.length) pieces.push([name, cells]);
    }
    return pieces.length > 1 ? "#" + striderule.link.join(pieces) : "";
  }

  // A link to this page with what is in its fields, now and when it is followed.
  striderule.carryOn = () => {
    const link = document.createElement("a");
    link.textContent = words.carryOn;
    const update = () => { link.href = location.pathname + location.search + entries(); };
    update();
    document.addEventListener("input", update);
    link.addEventListener("click", (e) => {
      e.preventDefault();
      e.stopPropagation(); // the program would be asked
      update();
      // The form beside the sheet, as app/browser/draft.go has it.
      const beside = document.querySelectorAll("form[data-sheet]:not(.sheet) input");
      if (beside.length) striderule.noteDraft(location.pathname + entries(), [...beside].map((f) => f.value).join("\n"));
      history.pushState({ step: "gone:" + Math.random() }, "", link.href); // as web/left.js has it
      location.reload();
    });
    return link;
  };
})();
