// Starts the calculator on a page that can already be read and typed into.
"use strict";
(() => {
  const html = document.documentElement;
  const script = document.currentScript;

  // ---- Where the site lies: two levels up from this script, known only now.
  const base = new URL("..", script.src);
  let folder = base.pathname.replace(/\/$/, "");
  try {
    folder = decodeURI(folder); // go-app compares it with decoded paths
  } catch (e) { /* not UTF-8: as it is */ }
  const env = {
    GOAPP_ROOT_PREFIX: folder,
    GOAPP_STATIC_RESOURCES_URL: base.pathname + "web",
    GOAPP_INTERNAL_URLS: "null",
  };
  // What go-app asks of the page.
  window.goappGetenv = (name) => env[name];
  window.goappNav = () => {};
  window.goappOnAppInstallChange = () => {};
  window.goappUpdatedBeforeWasmLoaded = false;
  window.goappOnUpdate = () => { window.goappUpdatedBeforeWasmLoaded = true; };

  // Going to another page changes the address without loading a document, and
  // browsers would read these relative addresses anew from there.
  for (const link of document.querySelectorAll("link[rel~=icon], link[rel=apple-touch-icon], link[rel=manifest]")) {
    link.href = link.href;
  }
  if (navigator.share) html.dataset.canShare = "yes";

  // ---- The status line.
  const status = document.getElementById("boot");
  function say(text, failed) {
    status.textContent = text;
    status.hidden = !text;
    status.className = failed ? "failed" : "";
  }
  let percent = null; // an element while the waiting line shows
  let progress = 0;
  function showWaiting() {
    say("The calculator is loading. You can read and type meanwhile. ");
    // Seen, not announced: a screen reader need not count along.
    percent = document.createElement("span");
    percent.setAttribute("aria-hidden", "true");
    status.append(percent);
    showProgress(progress);
  }
  function showProgress(fraction) {
    progress = fraction;
    if (percent && fraction > 0) percent.textContent = Math.floor(100 * Math.min(fraction, 1)) + " %";
  }

  // ---- Reasons why it can't start: a sentence each, for people.
  class Reason extends Error {}
  function fail(error) {
    console.warn(error);
    html.dataset.app = "failed";
    const why = error instanceof Reason ? error.message : "The calculator could not be started (" + (error && error.message || error) + ").";
    say(why + " The page can still be read. Check the connection, then load the page again.", true);
  }
  function stopped(error) {
    if (html.dataset.app === "failed") return;
    console.warn(error);
    html.dataset.app = "failed";
    say("The calculator stopped by a fault of its own. What you typed is still in the fields; load the page again to go on.", true);
  }

  // ---- The program.
  const zipped = document.querySelector("link[rel=preload][as=fetch]").href;
  const plain = zipped.replace(".wasm.gz", ".wasm");

  async function get(url) {
    const name = new URL(url).pathname.slice(base.pathname.length);
    let response;
    try {
      response = await fetch(url);
    } catch (e) {
      throw new Reason("The connection failed while the calculator (" + name + ") was loading.");
    }
    if (!response.ok) throw new Reason("The calculator could not be loaded: for " + name + " the server answered " + response.status + ".");
    return response;
  }

  // opened returns a response's bytes as a stream, with the first of them looked
  // at: hosts differ in whether they undo gzip on the way, and some answer with a
  // page where a file is missing.
  async function opened(response) {
    // With a content-encoding the length is not that of the bytes that come out.
    const total = response.headers.get("content-encoding") ? 0 : Number(response.headers.get("content-length"));
    const reader = response.body.getReader();
    const first = [];
    let seen = 0;
    let done = false;
    while (seen < 4 && !done) {
      const r = await reader.read();
      done = r.done;
      if (r.value) { first.push(r.value); seen += r.value.length; }
    }
    const note = () => { if (total) showProgress(seen / total); };
    note();
    const head = new Uint8Array(await new Blob(first).slice(0, 4).arrayBuffer());
    const stream = new ReadableStream({
      start(c) {
        for (const chunk of first) c.enqueue(chunk);
        if (done) c.close();
      },
      async pull(c) {
        const r = await reader.read();
        if (r.done) { c.close(); return; }
        seen += r.value.length;
        note();
        c.enqueue(r.value);
      },
      cancel(e) { return reader.cancel(e); },
    });
    const starts = (...bytes) => bytes.every((b, i) => head[i] === b);
    return { stream, gzip: starts(0x1f, 0x8b), wasm: starts(0, 0x61, 0x73, 0x6d) };
  }

  // program returns the WebAssembly as a response of the type that streaming
  // compilation asks for, whatever type the host gave it.
  async function program() {
    const typed = (stream) => new Response(stream, { headers: { "content-type": "application/wasm" } });
    if (typeof DecompressionStream !== "undefined") {
      try {
        const o = await opened(await get(zipped));
        if (o.gzip) return typed(o.stream.pipeThrough(new DecompressionStream("gzip")));
        if (o.wasm) return typed(o.stream);
      } catch (e) {
        if (!(e instanceof Reason)) throw e;
        // A host may refuse files of this kind: the plain one is left.
      }
    }
    const o = await opened(await get(plain));
    if (o.wasm) return typed(o.stream);
    throw new Reason("The calculator could not be loaded: the server sent something else in its place.");
  }

  async function compiled() {
    try {
      if (WebAssembly.compileStreaming) {
        try {
          return await WebAssembly.compileStreaming(await program());
        } catch (e) {
          // A TypeError: the stream broke off, or this browser can't stream.
          if (!(e instanceof TypeError)) throw e;
        }
      }
      return await WebAssembly.compile(await (await program()).arrayBuffer());
    } catch (e) {
      if (e instanceof Reason) throw e;
      if (e instanceof TypeError) throw new Reason("The calculator arrived incomplete: the connection broke off, or the file on the server is damaged.");
      if (e instanceof WebAssembly.CompileError) throw new Reason("The calculator arrived damaged, or this browser is too old for it (" + e.message + ").");
      throw e;
    }
  }

  // ---- What a person does before the program is there. Its first act replaces
  // the page's elements by ones of its own, so values, focus and place are noted
  // right before and put back right after, in one task: no key falls between.
  let composing = false;
  document.addEventListener("compositionstart", () => { composing = true; }, true);
  document.addEventListener("compositionend", () => { composing = false; }, true);

  const isToggle = (f) => f.type === "checkbox" || f.type === "radio";
  function changed(f) {
    if (isToggle(f)) return f.checked !== f.defaultChecked;
    if (f.tagName === "SELECT") return [...f.options].some((o) => o.selected !== o.defaultSelected);
    return f.value !== f.defaultValue;
  }
  function snapshot() {
    const active = document.activeElement;
    const snap = { fields: [], focus: active && active.id, selection: null, x: scrollX, y: scrollY, top: active ? active.getBoundingClientRect().top : 0 };
    for (const f of document.querySelectorAll("input[id], textarea[id], select[id]")) {
      if (changed(f)) snap.fields.push({ id: f.id, value: f.value, checked: f.checked });
    }
    try {
      snap.selection = [active.selectionStart, active.selectionEnd, active.selectionDirection];
    } catch (e) { /* not a text field */ }
    return snap;
  }
  function restore(snap) {
    for (const was of snap.fields) {
      const f = document.getElementById(was.id);
      if (!f) continue;
      // The radio of a group that lost its mark follows from the one that got it.
      if (f.type === "radio" && !was.checked) continue;
      if (isToggle(f)) f.checked = was.checked;
      else f.value = was.value;
      for (const type of ["input", "change"]) f.dispatchEvent(new Event(type, { bubbles: true }));
    }
    const f = snap.focus && document.getElementById(snap.focus);
    if (f) {
      f.focus({ preventScroll: true });
      try {
        if (snap.selection && snap.selection[0] !== null) f.setSelectionRange(...snap.selection);
      } catch (e) { /* not a text field */ }
    }
    if (snap.x || snap.y) scrollTo(snap.x, snap.y);
    if (f) holdInPlace(f, snap.top);
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

  const pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

  async function start() {
    if (typeof WebAssembly === "undefined") {
      throw new Reason("This browser cannot run the calculator: it has no WebAssembly. A browser of 2020 or later has it, unless it is switched off.");
    }
    if (typeof Go === "undefined") {
      throw new Reason("The calculator could not be loaded: web/wasm_exec.js is missing.");
    }
    const go = new Go();
    // A page lives on a few MB. Collecting them an eighth as often takes the pause
    // for it off nearly every key.
    go.env.GOGC = "800";
    // Tasks of their own, between which the browser answers to touch and keys.
    const module = await compiled();
    await pause(0);
    const instance = await WebAssembly.instantiate(module, go.importObject);
    await pause(0);
    const end = go.run(instance); // up to main's wait for goappStart
    await pause(0);
    // A word half composed would be lost with its field.
    for (let waited = 0; composing && waited < 4000; waited += 100) await pause(100);
    const snap = snapshot();
    window.goappStart();
    if (go.exited) throw new Reason("The calculator failed at its start, by a fault of its own.");
    restore(snap);
    performance.mark("app-mounted");
    html.dataset.app = "ready";
    end.then(() => stopped("the program ended"), stopped);
    addEventListener("error", (e) => {
      if (e.error instanceof WebAssembly.RuntimeError) stopped(e.error);
    });
  }

  // ---- Offline use.
  async function keepOffline() {
    if (!("serviceWorker" in navigator) || !isSecureContext) return;
    const hadWorker = Boolean(navigator.serviceWorker.controller);
    try {
      const registration = await navigator.serviceWorker.register(new URL("sw.js", base), { scope: base.pathname });
      let watched = null;
      const watch = () => {
        const worker = registration.installing;
        if (!worker || worker === watched) return;
        watched = worker;
        worker.addEventListener("statechange", () => {
          if (worker.state === "redundant" && !registration.active) console.warn("offline use is off: a file could not be kept");
          // The page goes on with the version it began with.
          if (worker.state === "activated" && hadWorker) window.goappOnUpdate();
        });
      };
      watch();
      registration.addEventListener("updatefound", watch);
    } catch (e) {
      console.warn("offline use is off:", e.message);
    }
  }

  const slow = setTimeout(showWaiting, 700);
  start().then(() => {
    clearTimeout(slow);
    percent = null;
    say("");
  }, (e) => {
    clearTimeout(slow);
    percent = null;
    fail(e);
  }).then(keepOffline); // afterwards: the program comes first
})();
