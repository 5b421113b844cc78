// Fetches the program before anything else, and says how that goes. The build writes
// it into each page, where it runs before anything else has come; web/start.js goes on.
"use strict";
(() => {
  const words = {
    loading: "Loading the calculator… You can read and type in the meantime.",
    percent: (n) => `${n}%`,
    notStarted: (error) => `The calculator could not be started (${error}).`,
    canRead: "You can still read the page.",
    reload: "Check your connection and reload.",
    missing: "The calculator could not be loaded: web/start.js is missing, or the server doesn't call it a script.",
    noConnection: (file) => `The connection failed while the calculator (${file}) was loading.`,
    refused: (file, status) => `The calculator could not be loaded: for ${file} the server answered ${status}.`,
    wrongFile: "The calculator could not be loaded: the server sent the wrong file.",
    incomplete: "The calculator arrived incomplete: the connection broke off, or the file on the server is damaged.",
    forbidden: "The server forbids the calculator to run: its own Content-Security-Policy must allow 'wasm-unsafe-eval' in script-src. Whoever runs this site can change that.",
    damaged: (error) => `The calculator arrived damaged, or this browser is too old for it (${error}).`,
  };
  const html = document.documentElement;
  const facts = document.getElementById("load").dataset;
  const plain = new URL(facts.program, document.baseURI).href;
  const base = new URL("..", plain); // where the site lies, known only now

  // A browser may throw even when it is asked for its workers.
  let workers = null;
  try {
    workers = navigator.serviceWorker;
  } catch (e) { /* none, then */ }

  // ---- The status line, which may not be there yet.
  function say(text, failed) {
    const status = document.getElementById("boot");
    if (!status) return;
    status.textContent = text;
    status.hidden = !text;
    status.className = failed ? "failed" : "";
    return status;
  }
  let percent = null; // an element while the waiting line shows
  let progress = 0;
  const slow = setTimeout(() => {
    const status = say(words.loading);
    if (!status) return;
    // Seen, not announced: a screen reader need not count along.
    percent = document.createElement("span");
    percent.setAttribute("aria-hidden", "true");
    status.append(" ", percent);
    showProgress(progress);
  }, 700);
  function showProgress(fraction) {
    progress = fraction;
    if (percent && fraction > 0) percent.textContent = words.percent(Math.floor(100 * Math.min(fraction, 1)));
  }
  function done() {
    clearTimeout(slow);
    percent = null;
    say("");
  }

  // ---- Reasons why it can't start: a sentence each, for people.
  class Reason extends Error {
    constructor(message, advice) {
      super(message);
      this.advice = advice;
    }
  }
  function fail(error) {
    done();
    console.warn(error);
    html.dataset.app = "failed";
    const why = error instanceof Reason ? error.message : words.notStarted(error && error.message || error);
    return say([why, words.canRead, error.advice ?? words.reload].join(" "), true);
  }
  // When the document is loaded, a script has come or never will. Then a browser may have
  // kept a damaged one, or what once stood in its place: it is asked for anew.
  const started = () => Boolean(window.goappGetenv); // one of the first things that web/start.js sets
  addEventListener("load", async () => {
    if (started()) return;
    try {
      const { src } = document.getElementById("start");
      await fetch(src, { cache: "reload" });
      await run(src);
    } catch (e) { /* it is not to be had */ }
    if (!started()) fail(new Reason(words.missing));
  });
  function run(src) {
    const script = document.createElement("script");
    script.src = src;
    return new Promise((ended) => { script.onload = script.onerror = ended; document.head.append(script); });
  }

  // ---- The program: as it is, which the host may compress, and compressed by us.
  const zipped = plain + ".gz";
  const size = Number(facts.size); // of the plain one, in bytes

  // byBrotli says whether this very page was sent by brotli, as far as anything tells.
  async function byBrotli() {
    const [page] = performance.getEntriesByType("navigation");
    if (!page) return false;
    if (typeof page.contentEncoding === "string") return page.contentEncoding === "br";
    // In other browsers the cache tells, once the page has come, and soon after. The
    // sizes that they have too are not true so early.
    if (document.readyState === "loading") await new Promise((r) => document.addEventListener("readystatechange", r, { once: true }));
    for (let tries = 4; tries > 0; tries--) {
      try {
        const kept = await fetch(location.href, { cache: "only-if-cached", mode: "same-origin" });
        return kept.headers.get("content-encoding") === "br";
      } catch (e) {
        await new Promise((r) => setTimeout(r, 20));
      }
    }
    return false;
  }

  async function get(url, how) {
    const name = new URL(url).pathname.slice(base.pathname.length);
    let response;
    try {
      response = await fetch(url, how);
    } catch (e) {
      throw new Reason(words.noConnection(name));
    }
    if (!response.ok) throw new Reason(words.refused(name, response.status));
    return response;
  }

  // opened returns a response's bytes as a stream, with the first of them looked
  // at: hosts differ in whether they undo gzip on the way, and some answer with a
  // page where a file is missing.
  async function opened(response) {
    const reader = response.body.getReader();
    const first = [];
    const head = []; // its first bytes
    let seen = 0;
    let ended = false;
    while (head.length < 4 && !ended) {
      const r = await reader.read();
      ended = r.done;
      if (!r.value) continue;
      first.push(r.value);
      seen += r.value.length;
      head.push(...r.value.subarray(0, 4));
    }
    const starts = (...bytes) => bytes.every((b, i) => head[i] === b);
    const wasm = starts(0, 0x61, 0x73, 0x6d);
    // With a content-encoding the length is not that of the bytes that come out.
    const total = wasm ? size : Number(response.headers.get("content-length"));
    const note = () => { if (total) showProgress(seen / total); };
    note();
    const stream = new ReadableStream({
      start(c) {
        for (const chunk of first) c.enqueue(chunk);
        if (ended) c.close();
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
    return { stream, wasm, gzip: starts(0x1f, 0x8b) };
  }

  // compressedBest returns the plain program as a host sends it by brotli, which
  // is smaller than any gzip. What the host compresses may depend on the kind of
  // file: otherwise it is broken off before much has come.
  async function compressedBest(how) {
    if (!await byBrotli()) return null;
    const stop = new AbortController();
    try {
      const response = await get(plain, { ...how, signal: stop.signal });
      if (response.headers.get("content-encoding") === "br") return response;
    } catch (e) {
      if (!(e instanceof Reason)) throw e;
    }
    stop.abort();
    return null;
  }

  // program returns the WebAssembly as a response of the type that streaming
  // compilation asks for, whatever type the host gave it.
  async function program(how) {
    const worker = workers && workers.controller;
    if (worker && !how) {
      // As the worker has it: the browser may have compiled it before.
      const kept = await fetch(plain + "?kept").catch(() => null);
      if (kept && kept.ok && kept.headers.get("content-type") === "application/wasm") return kept;
    }
    const typed = (stream) => new Response(stream, { headers: { "content-type": "application/wasm" } });
    if (typeof DecompressionStream !== "undefined") {
      try {
        const o = await opened(!worker && await compressedBest(how) || await get(zipped, how));
        if (o.gzip) return typed(o.stream.pipeThrough(new DecompressionStream("gzip")));
        if (o.wasm) return typed(o.stream);
      } catch (e) {
        if (!(e instanceof Reason)) throw e;
        // A host may refuse files of this kind: the plain one is left.
      }
    }
    const o = await opened(await get(plain, how));
    if (o.wasm) return typed(o.stream);
    throw new Damaged(words.wrongFile);
  }

  // Firefox says of a stream that broke off what others say of one that was stopped.
  const brokeOff = (e) => e instanceof DOMException && e.name === "AbortError";

  // What came is damaged, or something else: so may be what the browser has kept of an
  // earlier visit, for a year perhaps.
  class Damaged extends Reason {}
  // A policy that the host sends counts beside the page's own. Browsers say in their own words
  // that it forbids to compile.
  const forbidden = (e) => e instanceof WebAssembly.CompileError && /unsafe-eval|\bCSP\b|content security policy/i.test(e.message);
  function damage(e) {
    if (e instanceof Damaged) return e;
    if (e instanceof TypeError || brokeOff(e)) return new Damaged(words.incomplete);
    if (e instanceof WebAssembly.CompileError) return new Damaged(words.damaged(e.message));
    return null;
  }

  async function compiled() {
    try {
      const response = await program();
      return await (WebAssembly.compileStreaming ? WebAssembly.compileStreaming(response) : WebAssembly.compile(await response.arrayBuffer()));
    } catch (e) {
      if (forbidden(e)) throw new Reason(words.forbidden, "");
      const first = damage(e);
      if (!first) throw e;
      try {
        // Once more, from the host itself; and whole, for browsers that can't stream.
        return await WebAssembly.compile(await (await program({ cache: "reload" })).arrayBuffer());
      } catch (e) {
        throw damage(e) || first;
      }
    }
  }

  const module = typeof WebAssembly === "undefined" ? null : compiled();
  if (module) module.catch(() => {}); // start.js says what went wrong

  striderule.loading = { base, workers, say, fail, done, Reason, compiled: module };
})();
