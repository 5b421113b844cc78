// Keeps the site for offline use, and each page whole.
"use strict";
const words = { // for the browser's console
  notKept: "the program could not be kept",
  otherVersion: (file, version) => `${file} is not of version ${version}`,
  refused: (file, status) => `${file}: the server answered ${status}`,
};

// The build writes in the version and the files: path -> digests of right copies.
const version = "__VERSION__";
const files = __FILES__;

const scope = new URL(self.registration.scope);
// Other tools of the same host, and other copies of this one, have caches of
// their own, which are never touched.
const ours = "striderule " + scope.pathname + " ";
const current = ours + version;

// How an update works. A page names its scripts, style and program by names that
// change with their content, so a page and its parts always belong together. A new
// worker keeps the new version in a cache of its own and takes over at once; it
// leaves the cache of the version before in place, from which a page that is
// just loading gets the rest of its parts. A page that is open has all its parts
// already: it is not touched, what is being typed stays, and the new version
// comes when the page is next loaded; a quiet line offers that. Waiting until
// every tab is closed would be no safer and would keep an installed app on an old
// version for weeks.
self.addEventListener("install", (e) => e.waitUntil((async () => {
  const cache = await caches.open(current);
  try {
    await Promise.all(Object.keys(files).filter((path) => path !== zipped && path !== plain).map((path) => keep(cache, path)));
    await keepProgram(cache);
  } catch (error) {
    await caches.delete(current); // all or nothing
    throw error;
  }
  await self.skipWaiting();
})()));

self.addEventListener("activate", (e) => e.waitUntil((async () => {
  const names = (await caches.keys()).filter((name) => name.startsWith(ours) && name !== current);
  names.pop(); // the one before stays: see above
  await Promise.all(names.map((name) => caches.delete(name)));
  await self.clients.claim();
  for (const open of await self.clients.matchAll()) open.postMessage(version); // see web/newer.js
})()));

const isPage = (path) => path === "" || path.endsWith("/");
const isFixed = (path) => /^web\/.*\.[0-9a-f]{10}\./.test(path); // by a name that changes with the content
const address = (path) => new URL(path, scope);

// keepProgram keeps the program as it is, ready to be compiled while it is read. It
// takes the form that the page has fetched, which the browser's own cache still has;
// else the compressed one; or the plain one, where the browser can't undo that or the
// host refuses such files.
const plain = Object.keys(files).find((path) => path.endsWith(".wasm"));
const zipped = plain + ".gz";
async function keepProgram(cache) {
  const forms = typeof DecompressionStream === "undefined" ? [plain] : [zipped, plain];
  for (const from of ["only-if-cached", "no-cache"]) {
    for (const path of forms) {
      try {
        let { body, right } = await take(path, from);
        if (!right) continue;
        if (new Uint8Array(body)[0] === 0x1f) { // hosts differ in whether they undo gzip on the way
          body = await new Response(new Blob([body]).stream().pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
        }
        await cache.put(address(plain), new Response(body, { headers: { "content-type": "application/wasm" } }));
        return;
      } catch (e) { /* another is left */ }
    }
  }
  throw new Error(words.notKept);
}

// keep fetches a file and puts it into the cache, if it is the file of this
// version: while an upload is under way the host has files of two versions.
async function keep(cache, path) {
  let file = await take(path, isFixed(path) ? "force-cache" : "no-cache");
  // What the browser kept may be damaged.
  if (!file.right && isFixed(path)) file = await take(path, "reload");
  if (!file.right) throw new Error(words.otherVersion(path, version));
  // A response of our own, because a redirected one can't answer a navigation.
  await cache.put(address(path), new Response(file.body, { headers: { "content-type": file.type } }));
}

// keepAnew is for a page that got a damaged part.
async function keepAnew(url) {
  const path = url.pathname.slice(scope.pathname.length);
  const program = path === plain || path === zipped;
  if (!program && !files[path]) return;
  try {
    const cache = await caches.open(current);
    await cache.delete(address(program ? plain : path));
    await (program ? keepProgram(cache) : keep(cache, path));
  } catch (e) { /* the page asks the host */ }
}

async function take(path, from) {
  // no-cache: ask the host whether what the page has just loaded is still right.
  const response = await fetch(address(path), { cache: from, mode: "same-origin" });
  if (!response.ok) throw new Error(words.refused(path, response.status));
  const body = await response.arrayBuffer();
  return { body, right: await isRight(path, body), type: response.headers.get("content-type") || "application/octet-stream" };
}

async function isRight(path, body) {
  // Hosts may add lines to a page, never take out the version that it names.
  if (isPage(path)) return new TextDecoder().decode(body).includes(version);
  const sum = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return files[path].includes([...sum].map((b) => b.toString(16).padStart(2, "0")).join(""));
}

self.addEventListener("fetch", (e) => {
  const url = new URL(e.request.url);
  if (e.request.method !== "GET" || url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) return;
  e.respondWith(e.request.mode === "navigate" ? page(e.request, url) : part(e.request, url));
});

async function page(request, url) {
  const cache = await caches.open(current);
  const path = url.pathname.replace(/index\.html$/, "");
  const hit = await cache.match(new URL(path, scope));
  if (hit) return hit;
  if (await cache.match(new URL(path + "/", scope))) return Response.redirect(new URL(path + "/" + url.search, scope), 302);
  return fetch(request);
}

async function part(request, url) {
  if (request.cache === "reload") await keepAnew(url);
  const names = (await caches.keys()).filter((name) => name.startsWith(ours) && name !== current);
  const kept = url.search === "?kept"; // a page asks for the program, if it is here
  for (const name of [current, ...names]) {
    const cache = await caches.open(name);
    // A page that asks for the compressed program takes the plain one as well.
    const hit = await cache.match(url, { ignoreSearch: kept }) || url.pathname.endsWith(".wasm.gz") && await cache.match(url.href.replace(/\.gz$/, ""));
    if (hit) return hit;
  }
  return kept ? new Response(null, { status: 204 }) : fetch(request);
}
