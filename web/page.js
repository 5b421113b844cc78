// What the page can do with and without the calculator: jumps, copying, sharing.
// All of it happens inside the person's click, or the browser would refuse it.
"use strict";
// What Go and these scripts ask of each other: see app/browser/names.go.
window.striderule = window.striderule || {};
(() => {
  const words = {
    copied: "Copied.",
    copyBlocked: "The browser blocked copying. Select the text and copy it by hand.",
    shareBlocked: "The browser blocked sharing. Copy the link instead.",
    saved: (file) => `Saved as ${file}.`,
    starting: "The calculator is still starting. Try again in a moment.",
    notHere: "Open files on a calculator page, the start page or the log.",
    oneFile: "Drop one file at a time.",
    tooLong: (characters) => `That's ${characters} characters, too long for a field: nothing was changed.`,
  };
  let forget = 0;
  // The program's words too. #said stands outside of what the program renders:
  // it would trip over text that it did not write.
  striderule.announce = announce;
  function announce(text) {
    const said = document.getElementById("said");
    if (!said) return;
    // Emptied first: the same words twice would not be announced twice.
    said.textContent = "";
    setTimeout(() => { said.textContent = text; }, 50);
    clearTimeout(forget);
    forget = setTimeout(() => { said.textContent = ""; }, 5000);
  }

  // ---- Jumps within the page. The address holds the entries, not the place, and
  // go-app would neither move the focus nor keep the address.
  addEventListener("click", (e) => {
    if (e.button || e.ctrlKey || e.metaKey || e.shiftKey || e.altKey) return;
    const link = e.target.closest && e.target.closest("a.skip[href*='#'], a[data-jump][href*='#']");
    if (!link) return;
    const id = decodeURIComponent(link.hash.slice(1)), fold = document.getElementById(link.dataset.in);
    if (!document.getElementById(id) && !fold) return;
    e.preventDefault();
    e.stopImmediatePropagation();
    if (fold) fold.open = true;
    whenThere(id, arrive);
  }, true);
  // What lies in a fold is made when that is opened.
  function whenThere(id, then, frames = 60) {
    const target = document.getElementById(id);
    if (target) then(target);
    else if (frames) requestAnimationFrame(() => whenThere(id, then, frames - 1));
  }
  function arrive(target) {
    for (let fold = target.closest("details:not([open])"); fold; fold = fold.parentElement.closest("details:not([open])")) fold.open = true;
    target.focus({ preventScroll: true });
    if (document.activeElement !== target) {
      target.tabIndex = -1;
      target.focus({ preventScroll: true });
    }
    // A field in the middle, so that its label shows too.
    target.scrollIntoView(target.matches("input, select, fieldset") ? { block: "center" } : {});
  }

  // ---- The picture and its fields: the one in use lights its line and its hint, and a line
  // leads to its field.
  let lit = [];
  addEventListener("focusin", (e) => {
    const key = e.target.closest("form.sheet") && e.target.name;
    if (!key) return;
    for (const piece of lit) delete piece.dataset.lit;
    const row = e.target.closest(".row");
    const hints = document.querySelector(".hint-line");
    if (hints) hints.dataset.lit = "yes"; // from here on it has the hint of the field in use, or none
    lit = [...document.querySelectorAll(`form.lead [data-of~="${CSS.escape(key)}"]`), ...row ? [row] : []];
    for (const piece of lit) piece.dataset.lit = "yes";
  });
  addEventListener("click", (e) => {
    const piece = e.target.closest && e.target.closest("svg [data-of]");
    for (const key of piece ? piece.dataset.of.split(" ") : []) {
      const field = document.getElementById("f-" + key) || document.getElementById(`f-${key}-1`);
      if (field) {
        arrive(field);
        return;
      }
    }
  });

  // ---- Below the answer, a field that is typed into stays where it is on the screen when the
  // answer grows or shrinks.
  let held = null;
  function hold() {
    const field = document.activeElement && document.activeElement.closest("form.more") && document.activeElement;
    const top = field && field.getBoundingClientRect().top;
    if (field && held && held.field === field && held.at === scrollY && Math.abs(top - held.top) > 1) scrollBy(0, top - held.top);
    held = field && { field, top: field.getBoundingClientRect().top, at: scrollY };
  }
  for (const type of ["focusin", "scroll"]) addEventListener(type, hold, { passive: true });
  new MutationObserver(() => { if (held) hold(); }).observe(document.body, { subtree: true, childList: true });

  // ---- What is said of a field when it is left waits for the click that leaves it: it would push
  // the button from under the mouse.
  let pressed = false, left = [];
  function letGo() {
    pressed = false;
    for (const field of left.splice(0)) field.dispatchEvent(new Event("change", { bubbles: true }));
  }
  addEventListener("pointerdown", () => { pressed = true; }, { capture: true, passive: true });
  for (const type of ["pointerup", "pointercancel"]) addEventListener(type, () => setTimeout(letGo), { capture: true, passive: true });
  addEventListener("change", (e) => {
    if (!pressed || !e.isTrusted || !e.target.matches(".typed")) return;
    e.stopImmediatePropagation();
    left.push(e.target);
    setTimeout(letGo, 1000); // a pointer that left the window is never let go
  }, true);

  // ---- The menu closes when it has led somewhere, or is left.
  const menu = () => document.getElementById("menu");
  addEventListener("click", (e) => {
    if (menu() && (e.target.closest("#menu a") || !e.target.closest("#menu"))) menu().open = false;
  });
  addEventListener("keydown", (e) => {
    if (e.key !== "Escape" || !menu() || !menu().open) return;
    menu().open = false;
    menu().firstElementChild.focus();
  });

  // ---- A chip that is half out of its strip comes into it with the focus: browsers leave it. Not
  // while a button is pressed, or it would be gone from under the mouse.
  addEventListener("focusin", (e) => {
    if (!pressed && e.target.closest(".chips")) e.target.scrollIntoView({ inline: "nearest", block: "nearest" });
  });

  // ---- Who looks for a word finds it in closed folds too: browsers open what they find.
  addEventListener("keydown", (e) => {
    const find = (e.ctrlKey || e.metaKey) && e.key.toLowerCase() === "f" || e.key === "F3";
    if (find && striderule.unfoldAll) striderule.unfoldAll();
  });

  // ---- The bar with the answer, on a small screen: it goes away where it would
  // cover what it repeats, or the field in use. And what changed is marked.
  const shown = {};
  let due = 0;
  function look() {
    due = 0;
    const bar = document.querySelector(".bar"), answer = document.querySelector(".answer .headline") || document.querySelector(".answer");
    // The page hears of it by an attribute: where a rule looks for it itself (:has), browsers
    // work out every element's style again with each key.
    if (!bar) delete document.documentElement.dataset.bar;
    else {
      const edge = innerHeight - bar.offsetHeight;
      const box = answer && answer.getBoundingClientRect();
      const used = document.activeElement.matches("input, select, textarea") && document.activeElement;
      // Much less is seen than the page takes up: the keyboard is there.
      const keyboard = used && window.visualViewport && visualViewport.height * visualViewport.scale < innerHeight * 0.75;
      const covers = used && used.getBoundingClientRect().bottom > edge;
      const seen = box && box.top < edge && box.bottom > 0;
      document.documentElement.dataset.bar = keyboard || covers || seen ? "away" : "shown";
    }
    for (const what of [".headline data", ".bar strong"]) {
      const place = document.querySelector(what);
      if (!place) continue;
      const now = place.textContent, before = shown[what];
      shown[what] = now;
      if (before && before !== now && !matchMedia("(prefers-reduced-motion: reduce)").matches) markSoon(what);
    }
  }
  // When typing pauses: it would take of the time of the next key. Of opacity alone: the
  // browser fades it without painting the page each frame.
  const marks = {};
  function markSoon(what) {
    clearTimeout(marks[what]);
    marks[what] = setTimeout(() => {
      const place = document.querySelector(what);
      if (place) place.animate({ opacity: [1, 0] }, { duration: 1500, easing: "ease-in", pseudoElement: "::after" });
    }, 250);
  }
  const soon = () => { due = due || requestAnimationFrame(look); };
  for (const type of ["scroll", "resize", "focusin", "focusout"]) addEventListener(type, soon, { passive: true });
  if (window.visualViewport) visualViewport.addEventListener("resize", soon);
  // What a key changed is painted first.
  const changed = () => requestAnimationFrame(() => setTimeout(soon));
  new MutationObserver(changed).observe(document.body, { subtree: true, childList: true, characterData: true });

  // ---- A table that is wider than its place scrolls, by keyboard too: not every
  // browser lets the focus come to what scrolls of itself.
  let reaching = 0;
  function reach() {
    reaching = 0;
    // All of them are asked before one is changed: asking afterwards lays the page out anew.
    const boxes = [...document.querySelectorAll(".scroll")].map((box) => [box, box.querySelector("caption"), box.scrollWidth > box.clientWidth]);
    for (const [box, caption, wide] of boxes) {
      if (caption && wide) {
        for (const [name, value] of Object.entries({ tabindex: 0, role: "region", "aria-label": caption.textContent })) box.setAttribute(name, value);
      } else {
        for (const name of ["tabindex", "role", "aria-label"]) box.removeAttribute(name);
      }
    }
  }
  // Not at once: it lays out what the style sheet puts off.
  const reachSoon = () => { reaching = reaching || setTimeout(reach, 300); };
  reachSoon();
  addEventListener("resize", reachSoon, { passive: true });
  document.addEventListener("toggle", reachSoon, true);
  new MutationObserver(reachSoon).observe(document.body, { subtree: true, childList: true });

  // ---- Enter computes nothing that isn't there already: it goes on to the next field, and
  // from the end of a list that is filled in to a new row.
  addEventListener("submit", (e) => {
    if (e.target.matches("form[data-sheet]")) e.preventDefault();
  }, true);
  addEventListener("keydown", (e) => {
    const field = e.target;
    if (e.key !== "Enter" || e.isComposing || !field.matches("form.sheet .typed")) return; // in the small forms it saves
    e.preventDefault();
    const open = [...field.form.querySelectorAll(".typed")].filter((f) => f.getClientRects().length);
    const next = open[open.indexOf(field) + 1], rows = field.closest(".rows");
    const add = rows && field.value && !rows.contains(next || null) && rows.querySelector(":scope > .add");
    if (add && !add.disabled) add.click();
    else if (next) {
      next.focus();
      next.select();
    }
  });

  // ---- Copying.
  async function copy(text) {
    if (navigator.clipboard && isSecureContext) {
      try {
        await navigator.clipboard.writeText(text);
        return true;
      } catch (e) { /* refused: the old way may be allowed */ }
    }
    return copyBySelection(text);
  }
  function copyBySelection(text) {
    const active = document.activeElement;
    const area = document.createElement("textarea");
    area.value = text;
    area.readOnly = true; // no keyboard on a phone
    area.style.position = "fixed";
    area.style.opacity = "0";
    area.setAttribute("aria-hidden", "true");
    document.body.append(area);
    area.select();
    let done = false;
    try {
      done = document.execCommand("copy");
    } catch (e) { /* not done, then */ }
    area.remove();
    if (active && active.focus) active.focus({ preventScroll: true });
    return done;
  }
  async function copyFrom(button) {
    const done = await copy(button.dataset.copy);
    button.dataset.done = done ? "copied" : "failed";
    announce(done ? button.dataset.said || words.copied : words.copyBlocked);
    setTimeout(() => { delete button.dataset.done; }, 2000);
  }

  // ---- Sharing by the system's own sheet.
  async function shareFrom(button) {
    try {
      const { title, share, shareText } = button.dataset;
      await navigator.share(shareText ? { title, text: shareText } : { title: title || document.title, url: share });
    } catch (e) {
      // A person may think better of it.
      if (e.name !== "AbortError") announce(words.shareBlocked);
    }
  }

  // ---- Saving text as a file. The program saves its own through this too.
  striderule.saveText = (name, text) => {
    if (!text.endsWith("\n")) text += "\n";
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "text/plain;charset=utf-8" }));
    link.download = name;
    document.body.append(link);
    link.click();
    link.remove();
    // Not at once: the browser reads it after the click.
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    announce(words.saved(name));
  };

  // ---- What is kept on this device. A browser may refuse all of it, and throws
  // even when it is asked; that would end the program. So these return the name
  // of the error, empty if there is none.
  function named(act) {
    try {
      act();
      return "";
    } catch (e) {
      return e && e.name || "Error";
    }
  }
  striderule.keepText = (key, text) => named(() => localStorage.setItem(key, text));
  striderule.dropText = (key) => named(() => localStorage.removeItem(key));
  striderule.isKept = (key) => {
    let kept = false;
    named(() => { kept = localStorage.getItem(key) !== null; });
    return kept;
  };
  // keptTexts lists the error, then all keys behind the prefix and their texts, a
  // line each, in one: handing over ten thousand by themselves takes long. What
  // has line breaks, which no entry has, follows by itself.
  striderule.keptTexts = (prefix) => {
    const lines = [], odd = [];
    const error = named(() => {
      for (let i = 0; i < localStorage.length; i++) {
        const key = localStorage.key(i);
        if (!key.startsWith(prefix)) continue;
        const item = [key.slice(prefix.length), localStorage.getItem(key)];
        (item.some((text) => text.includes("\n")) ? odd : lines).push(...item);
      }
    });
    return [error, lines.join("\n"), ...odd];
  };

  // ---- What the program takes from outside of the fields: see app/browser/offers.go.
  const mostFile = 20e6; // bytes: some times what a browser keeps
  async function hand(file) {
    let text = "", error = "";
    if (file.size > mostFile) error = "TooLarge";
    else {
      try {
        text = await file.text();
      } catch (e) {
        error = e.name || "Error";
      }
    }
    if (!striderule.takeFile) announce(words.starting);
    else if (!striderule.takeFile(file.name, text, error)) announce(words.notHere);
  }
  // A file that the person chooses. The field is made for the click: a chosen file
  // can't be taken over from the page as it was before the program started.
  striderule.openText = (accept) => {
    document.getElementById("chosen")?.remove();
    const field = document.createElement("input");
    field.type = "file";
    field.id = "chosen";
    field.accept = accept;
    field.hidden = true;
    field.addEventListener("change", () => {
      const file = field.files[0];
      field.remove();
      if (file) hand(file);
    });
    document.body.append(field);
    field.click();
  };
  // Or one that is dropped anywhere on the page, which the browser would open in
  // the page's place.
  let over = 0;
  function holdsFiles(e) {
    if (!e.dataTransfer || !e.dataTransfer.types.includes("Files")) return false;
    e.preventDefault();
    document.documentElement.dataset.drop = "here";
    clearTimeout(over);
    over = setTimeout(() => { delete document.documentElement.dataset.drop; }, 200);
    return true;
  }
  addEventListener("dragover", holdsFiles);
  addEventListener("drop", (e) => {
    if (!holdsFiles(e)) return;
    const files = e.dataTransfer.files;
    if (files.length === 1) hand(files[0]);
    else announce(words.oneFile);
  });
  // A whole file in one field, pasted or dropped by mistake, would stop the page for long.
  const mostInserted = 50000; // characters: more than fifty rows of anything take
  function isTooLong(e, text) {
    if (text.length <= mostInserted) return false;
    e.preventDefault();
    announce(words.tooLong(text.length));
    return true;
  }
  addEventListener("beforeinput", (e) => {
    isTooLong(e, e.data || e.dataTransfer && e.dataTransfer.getData("text/plain") || "");
  });
  // A piece of a table goes into the rows; a field would run its lines together.
  addEventListener("paste", (e) => {
    const text = e.clipboardData && e.clipboardData.getData("text/plain") || "";
    if (isTooLong(e, text)) return;
    if (!e.target.matches || !e.target.matches(".row .typed") || !/[\n\r\t]/.test(text.trim())) return;
    e.preventDefault();
    if (striderule.pasteRows) striderule.pasteRows(e.target.id, text);
    else announce(words.starting);
  });

  // A page that has not yet followed the last key would show two sheets. When the program
  // has stopped it never will.
  // Paper has what is folded of the result too, which is made when it is opened.
  function printWhole() {
    if (document.querySelector("[data-app=ready] [aria-busy=true]")) {
      setTimeout(printWhole, 20);
      return;
    }
    const closed = [...document.querySelectorAll("main .result > .parts > details.part:not([open], .guide)")];
    for (const fold of closed) fold.open = true;
    let frames = 30;
    const wait = () => {
      if (frames-- && closed.some((fold) => fold.childElementCount < 2)) {
        requestAnimationFrame(wait);
        return;
      }
      print();
      for (const fold of closed) fold.open = false;
    };
    wait();
  }

  document.addEventListener("click", (e) => {
    const button = e.target.closest && e.target.closest("button[data-copy], button[data-share], button[data-save], button[data-print]");
    if (!button) return;
    if ("copy" in button.dataset) copyFrom(button);
    else if ("print" in button.dataset) printWhole();
    else if ("save" in button.dataset) striderule.saveText(button.dataset.save, button.dataset.text);
    else shareFrom(button);
  }, true); // before the program, which may make another button of it
})();
