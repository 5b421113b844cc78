// Fills the page in from its link before the calculator is there: what somebody
// sent can be read at first paint, and where the calculator cannot start. Text
// only: nothing of a link ever becomes HTML.
"use strict";
(() => {
  const words = {
    saw: (figure) => `The sender saw ${figure}.`,
    checking: "Checking…",
    unchecked: "Not checked: the calculator isn't running.",
    entry: (name, cells) => `${name}: ${cells}`,
    also: (entries) => `Also in the link: ${entries}.`,
  };
  const { dataset } = document.documentElement;
  // It runs with web/load.js, before there is a page. A browser may show the first part of
  // one before the rest has come: what is below this line would then move down by it.
  // A "?" where the "#" was: see web/address.js.
  const linked = () => (/^\?v=/.test(location.search) ? location.search : location.hash).replace(/^[#?]+/, "");
  if (document.readyState === "loading" && linked()) {
    dataset.link = "unread";
    document.addEventListener("readystatechange", () => {
      delete dataset.link;
      peek();
    }, { once: true });
  } else peek();

  function peek() {
    const check = document.getElementById("check");
    const link = linked().slice(0, 4000);
    if (!check || !link) return;
    const fields = [...document.querySelectorAll("form.sheet [name]")];
    const rest = [];
    let saw = "";
    const done = {};
    for (const [key, cells] of striderule.link.split(link)) {
      if (key === "v" || key.startsWith("was-") || done[key]) continue;
      done[key] = true;
      if (key === "saw") {
        saw = cells.join(",");
        continue;
      }
      const of = fields.filter((f) => f.name === key);
      const inRows = of.every((f) => f.value === of[0].value); // ticks of rows, not options
      let shown = 0;
      // Defaults are set, not values: what differs from them was typed here.
      of.forEach((f, row) => {
        if (f.type === "radio" || f.type === "checkbox") {
          const on = inRows ? cells[row] === f.value : cells.includes(f.value);
          if (on) shown++;
          if (f.defaultChecked !== on) f.defaultChecked = on;
        } else if (f.tagName === "SELECT") {
          const chosen = [...f.options].find((o) => o.value === cells[row]);
          if (!chosen) return;
          shown++;
          for (const o of f.options) o.defaultSelected = o === chosen;
        } else if (row < cells.length) {
          shown++;
          const cell = cells[row].replace(/[\r\n]/g, ""); // as the field will have it: or it would seem typed
          const units = document.getElementById(`${f.id}-unit`), said = cell.replace(/^[-+\d.,\s]+/, "");
          const chosen = units && said && [...units.options || []].find((o) => o.value === said);
          if (chosen) for (const o of units.options) o.defaultSelected = o === chosen;
          f.defaultValue = chosen ? cell.slice(0, -said.length).trim() : cell;
        }
      });
      if (shown < cells.length) {
        const label = of[0] && of[0].type === "text" && of[0].labels[0];
        rest.push(words.entry(label ? label.lastChild.textContent : key, cells.join(", "))); // behind the letter of the picture
      }
    }
    const add = (text, name) => {
      const line = document.createElement("span");
      line.textContent = text;
      line.className = name;
      check.append(line, " ");
    };
    const [id, value, u] = saw.split(":");
    const number = (text) => /^-?\d{1,15}(\.\d{1,15})?(e[+-]?\d{1,2})?$/.test(text || "") && Number(text);
    const v = number(value), wide = number(u);
    if (v !== false) {
      const text = wide > 0 ? striderule.link.measured(v, wide) : String(Number(v.toPrecision(6)));
      // "steps/mm, steps/°"
      const units = (/^[a-z-]+$/.test(id) && check.getAttribute("data-" + id) || "").split(", ");
      const unit = /=rotary/.test(link) && units[1] || units[0];
      add(words.saw(text + (unit && unit !== "1" && " " + unit || "")), "");
      add(words.checking, "checking");
      add(words.unchecked, "unchecked");
    }
    if (rest.length) add(words.also(rest.join("; ")), "also");
    check.hidden = !check.firstChild;
    performance.mark("link-readable");
  }
})();
