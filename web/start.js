// Starts the calculator on a page that can already be read and typed into.
"use strict";
(async () => {
  const words = {
    noLoader: "The calculator could not be loaded: web/load.js is missing. You can still read the page.",
    noWebAssembly: "This browser can't run the calculator: it has no WebAssembly. Browsers from 2020 or later have it, unless it is switched off.",
    crashed: "The calculator crashed. What you typed is still here.",
    crashedAtStart: "The calculator crashed while it was starting.",
    tryAgain: "Reload the page. If it crashes again, something in the link is the cause:",
    withoutEntries: "Open the page without entries",
    ended: "the program ended", // this and the rest for the browser's console
    offlineOff: "offline use is off:",
    notKept: "a file could not be kept",
  };
  const html = document.documentElement;
  // A host that writes into pages may have changed the script in this one, which the
  // page's policy then does not let run: it is there as a file too.
  if (!striderule.loading) {
    const script = document.createElement("script");
    script.src = document.getElementById("load").dataset.again;
    await new Promise((r) => { script.onload = script.onerror = r; document.head.append(script); });
  }
  if (!striderule.loading) {
    const status = document.getElementById("boot");
    status.textContent = words.noLoader;
    status.className = "failed";
    status.hidden = false;
    html.dataset.app = "failed";
    return;
  }
  const { base, workers, compiled, say, fail, done, Reason } = striderule.loading;

  let folder = base.pathname.replace(/\/$/, "");
  try {
    folder = decodeURIComponent(folder); // go-app compares it with decoded paths
  } catch (e) { /* not UTF-8: as it is */ }
  const env = {
    GOAPP_ROOT_PREFIX: folder,
    GOAPP_STATIC_RESOURCES_URL: base.pathname + "web",
    GOAPP_INTERNAL_URLS: "null",
  };
  // What go-app asks of the page.
  window.goappGetenv = (name) => env[name];
  window.goappOnAppInstallChange = () => {};
  window.goappUpdatedBeforeWasmLoaded = false;

  // ---- What the program asks of the page in one call, line by line: they are
  // explained in scripts/make/trim/added/go-app/pkg/app/draft.go.txt.
  const nodes = new Map(); // by their numbers
  let made = 0;
  const make = (node) => {
    nodes.set(node.goapp = ++made, node);
    return node;
  };
  const forget = (node) => {
    if (!nodes.delete(node.goapp)) return; // not ours, nor what is in it
    node.childNodes.forEach(forget);
  };
  // Where texts were put. Translators put elements of their own in their places, which
  // would go on to show what was.
  const places = new WeakMap();
  const put = (node, into) => {
    if (node.nodeType === Node.TEXT_NODE) places.set(node, [into, into.childNodes.length]);
    into.append(node);
  };
  function setText(node, text) {
    node.nodeValue = text;
    const [into, i] = node.isConnected ? [] : places.get(node) || [];
    if (into && into.childNodes[i]) into.childNodes[i].textContent = text;
  }
  // What the page shows already need not be made again.
  const keep = (node, id) => {
    const shown = document.getElementById(id);
    nodes.set(shown.goapp = node.goapp, shown);
    return shown;
  };
  const ended = new WeakSet(); // functions that the program gave up
  striderule.node = (number) => nodes.get(number);
  const stack = []; // what a draft in several parts has not yet put in its place
  striderule.draw = (draft, ...values) => {
    for (const line of draft.split("\0")) {
      const [it, more, most] = line.slice(1).split("\x01");
      const top = stack[stack.length - 1];
      switch (line[0]) {
        case "<": stack.push(make(more ? document.createElementNS(more, it) : document.createElement(it))); break;
        case "~": stack.push(make(document.createTextNode(it))); break;
        case "@": stack.push(nodes.get(Number(it))); break;
        case "#": stack.push(values[it - 1]); break;
        case "=":
          if (it === "data-kept") stack[stack.length - 1] = keep(top, more);
          else top.setAttribute(it, more);
          break;
        case "!": top.removeAttribute(it); break;
        case ".":
          if (it === "nodeValue") setText(top, more.slice(1));
          else top[it] = more[0] === "s" ? more.slice(1) : more === "b1";
          break;
        case "*": {
          const does = values[more - 1];
          top.addEventListener(it, (e) => ended.has(does) || does(e), values[most - 1]);
          break;
        }
        case "%": ended.add(values[it - 1]); break;
        case "+": stack.pop(); put(top, stack[stack.length - 1]); break;
        case "a": stack.pop(); put(stack.pop(), top); break;
        case "x": stack.pop().remove(); forget(top); break;
        case "r": {
          stack.pop();
          const by = stack.pop();
          if (by === top) break; // it was kept
          top.replaceWith(by);
          forget(top);
          break;
        }
        case "-": stack.pop();
      }
    }
  };

  if (navigator.share) html.dataset.canShare = "yes";

  function stopped(error) {
    if (html.dataset.app === "failed") return;
    console.warn(error);
    html.dataset.app = "failed";
    say(words.crashed, true).append(" ", striderule.carryOn());
  }

  // ---- What a person does before the program is there. Its first act replaces
  // the page's elements by ones of its own, so values, focus and place are noted
  // right before and put back right after, in one task: no key falls between.
  let composing = false;
  document.addEventListener("compositionstart", () => { composing = true; }, true);
  document.addEventListener("compositionend", () => { composing = false; }, true);

  // A button that is pressed meanwhile is pressed again when it can do something.
  // Those of web/page.js do without the program.
  const pressed = [];
  function notePressed(e) {
    const button = e.target.closest("main button[type=button]");
    if (!button || button.matches("[data-copy], [data-share], [data-save], [data-print]")) return;
    button.dataset.waiting = "yes";
    pressed.push(button.id ? "#" + CSS.escape(button.id) : 'button[aria-label="' + CSS.escape(button.getAttribute("aria-label")) + '"]');
  }
  document.addEventListener("click", notePressed);

  const isToggle = (f) => f.type === "checkbox" || f.type === "radio";
  function changed(f) {
    if (isToggle(f)) return f.checked !== f.defaultChecked;
    if (f.tagName === "SELECT") return [...f.options].some((o) => o.selected !== o.defaultSelected);
    return f.value !== f.defaultValue;
  }
  const fields = () => [...document.querySelectorAll("input[id], textarea[id], select[id]")].filter(changed)
    .map((f) => ({ id: f.id, value: f.value, checked: f.checked, text: !isToggle(f) }));
  const folds = () => [...document.querySelectorAll("details[id]")].map((d) => [d.id, d.open]);
  function snapshot() {
    const active = document.activeElement;
    const snap = { fields: fields(), folds: folds().filter(([, open]) => open), focus: active && active.id, selection: null, x: scrollX, y: scrollY, top: active ? active.getBoundingClientRect().top : 0 };
    try {
      snap.selection = [active.selectionStart, active.selectionEnd, active.selectionDirection];
    } catch (e) { /* not a text field */ }
    return snap;
  }
  function fill(fields) {
    for (const was of fields) {
      const f = document.getElementById(was.id);
      if (!f) continue;
      // The radio of a group that lost its mark follows from the one that got it.
      if (f.type === "radio" && !was.checked) continue;
      if (isToggle(f)) f.checked = was.checked;
      else f.value = was.value;
      for (const type of ["input", "change"]) f.dispatchEvent(new Event(type, { bubbles: true }));
    }
  }
  striderule.openFolds = () => folds().filter(([, open]) => open).map(([id]) => id).join(" ");
  // One within another comes when that is open.
  function setFolds(folds, frames = 30) {
    const rest = folds.filter(([id, open]) => {
      const fold = document.getElementById(id);
      if (fold && fold.open !== open) fold.open = open;
      return !fold && open;
    });
    if (rest.length && frames) requestAnimationFrame(() => setFolds(rest, frames - 1));
  }
  // What a link has in a fold, or not at all, the program takes. What else lies in a fold comes
  // with it.
  function fillAsTheyCome(fields, frames) {
    const there = (f) => document.getElementById(f.id);
    fill(fields.filter(there));
    const rest = fields.filter((f) => !there(f) && !(f.text && striderule.fillIn && striderule.fillIn(f.id, f.value)));
    if (rest.length && frames) requestAnimationFrame(() => fillAsTheyCome(rest, frames - 1));
  }
  function restore(snap) {
    setFolds([...left.folds, ...snap.folds]);
    fillAsTheyCome(snap.fields, 60);
    document.removeEventListener("click", notePressed);
    for (const selector of pressed) {
      const button = document.querySelector(selector);
      if (button) button.click();
    }
    if (snap.x || snap.y) scrollTo(snap.x, snap.y);
    if (!focusAgain(snap)) scrollOn(performance.now() + 800);
    if (snap.focus) focusAsItComes(snap, 60);
  }
  function focusAgain(snap) {
    const f = snap.focus && document.getElementById(snap.focus);
    if (!f) return false;
    f.focus({ preventScroll: true });
    try {
      if (snap.selection && snap.selection[0] !== null) f.setSelectionRange(...snap.selection);
    } catch (e) { /* not a text field */ }
    holdInPlace(f, snap.top);
    return true;
  }
  function focusAsItComes(snap, frames) {
    if (!frames || document.activeElement !== document.body || focusAgain(snap)) return;
    requestAnimationFrame(() => focusAsItComes(snap, frames - 1));
  }
  // The first answers may put text above the field that somebody is typing in:
  // it stays where it is on the screen, unless the person scrolls.
  function holdInPlace(field, top) {
    let frames = 30;
    for (const type of ["wheel", "touchmove"]) addEventListener(type, () => { frames = 0; }, { once: true, passive: true });
    const step = () => {
      if (frames-- <= 0 || document.activeElement !== field) return;
      const off = field.getBoundingClientRect().top - top;
      if (Math.abs(off) > 1) scrollBy(0, off);
      requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  }

  const left = striderule.keepLeft({ fields, folds, fill, setFolds });
  // A browser that loads a page again scrolls to where it was, as far as the page goes by
  // then: the rest of the way follows as the page grows, unless the person goes elsewhere.
  let onTheWay = left.y > 0;
  for (const type of ["wheel", "touchmove", "pointerdown", "keydown"]) addEventListener(type, () => { onTheWay = false; }, { once: true, passive: true });
  function scrollOn(until) {
    if (!onTheWay || performance.now() > until) return;
    onTheWay = Math.abs(left.y - scrollY) >= 1;
    scrollTo(scrollX, left.y);
    requestAnimationFrame(() => scrollOn(until));
  }

  const offerNewer = striderule.watchNewer(workers);

  // A turn of the browser's loop, for what else waits. Timers that follow each other
  // take 4 ms each at least, and a second on a page that nobody sees.
  const turns = [], turn = new MessageChannel();
  turn.port1.onmessage = () => turns.shift()();
  striderule.rest = (then) => {
    // A browser paints a key that was typed before it comes to messages, and would paint
    // again what came of it.
    if (html.dataset.app === "ready" && window.scheduler && scheduler.postTask) {
      scheduler.postTask(then, { priority: "user-blocking" });
      return;
    }
    turns.push(then);
    turn.port2.postMessage(0);
  };

  // What lies in a closed fold would be laid out all the same, for what browsers look for
  // in forms when a page comes. A rule of the style sheet that goes by an attribute of the
  // page would have every element's style worked out again when it changes.
  function withoutFolds() {
    try {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync("details:not([open])::details-content { display: none; }");
      document.adoptedStyleSheets = [sheet];
    } catch (e) { /* a browser from before 2023: it lays them out */ }
    return () => { document.adoptedStyleSheets = []; };
  }
  const withFolds = withoutFolds();

  const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

  async function start() {
    if (typeof WebAssembly === "undefined") {
      throw new Reason(words.noWebAssembly);
    }
    const go = new Go();
    // A page lives on a few MB. It collects them an eighth as often: that takes the pause for it
    // off nearly every key. A log of many MB must not take eight times as much more, so there is
    // a limit to it.
    Object.assign(go.env, { GOGC: "800", GOMEMLIMIT: "150MiB" });
    // Tasks of their own, between which the browser answers to touch and keys.
    const module = await compiled;
    await pause(0);
    const instance = await WebAssembly.instantiate(module, go.importObject);
    await pause(0);
    const end = go.run(instance); // up to main's wait for striderule.start
    await pause(0);
    // The program builds its page in slices, and calls this at the beginning of the
    // last one: what was typed is noted there and put back at its end, where
    // microtasks run. A word half composed would be lost with its field, for which
    // it waits some seconds at most.
    const patience = performance.now() + 4000;
    const swapped = new Promise((resolve) => {
      striderule.swap = () => {
        if (composing && performance.now() < patience) return false;
        const snap = snapshot();
        queueMicrotask(() => {
          if (go.exited) return;
          // The untouched go-app has made an element of its own for what is to stay.
          const kept = document.querySelector("[data-kept]");
          if (kept) kept.append(...page.childNodes);
          restore(snap);
          performance.mark("app-mounted");
          html.dataset.app = "ready";
          setTimeout(() => { html.dataset.started = "yes"; withFolds(); }, 450);
          resolve();
        });
        return true;
      };
    });
    const page = document.body.firstElementChild;
    striderule.start();
    // Where a host shows a page at an address that is none, go-app says so at once.
    const replaced = document.body.firstElementChild !== page;
    if (!replaced) await Promise.race([swapped, end]);
    if (go.exited) throw new Reason(words.crashedAtStart, words.tryAgain);
    if (replaced) html.dataset.app = "ready";
    fixLinks();
    end.then(() => stopped(words.ended), stopped);
    addEventListener("error", (e) => {
      // A stack that is full is an error of another kind in the midst of the program.
      if (e.error instanceof WebAssembly.RuntimeError || /wasm-function/.test(e.error?.stack)) stopped(e.error);
    });
  }

  function failed(error) {
    const status = fail(error);
    if (!error.advice) return;
    const link = document.createElement("a");
    link.href = location.pathname + location.search;
    link.textContent = words.withoutEntries;
    status.append(" ", link);
  }

  // Going to another page changes the address without loading a document, and
  // browsers would read these relative addresses anew from there.
  function fixLinks() {
    for (const link of document.querySelectorAll("link[rel~=icon], link[rel=apple-touch-icon], link[rel=manifest]")) {
      link.href = link.href;
    }
  }

  // ---- Offline use.
  async function keepOffline() {
    if (!workers || !isSecureContext) return;
    try {
      const registration = await workers.register(new URL("sw.js", base), { scope: base.pathname });
      let watched = null;
      const watch = () => {
        const worker = registration.installing;
        if (!worker || worker === watched) return;
        watched = worker;
        worker.addEventListener("statechange", () => {
          if (worker.state === "redundant" && !registration.active) console.warn(words.offlineOff, words.notKept);
        });
      };
      watch();
      registration.addEventListener("updatefound", watch);
    } catch (e) {
      console.warn(words.offlineOff, e.message);
    }
  }

  // Keeping the site takes a phone's processor for some time: the first keys come first.
  start().then(done, failed).then(offerNewer).then(() => setTimeout(keepOffline, 1500));
})();
