
// The site lies in the first folder upwards that has its style sheet.
(async () => {
  const words = {
    entriesLeft: "The entries in the link are still there. Which page is it for?",
    perhaps: "Perhaps you were looking for one of these:",
  };
  const style = document.body.dataset.style;
  // A "#" that was encoded is a part of the path. Its link opens the page that it was made for.
  const [before, entries] = location.pathname.split(/%23(?=v=|v%3D)/i);
  if (entries) {
    location.replace(location.origin + before.replace(/\/?$/, "/") + "#" + entries); // "//" is no host here
    return;
  }
  const parts = location.pathname.split("/").slice(0, 20);
  for (let n = parts.length - 1; n > 0; n--) {
    const home = new URL(location.origin + parts.slice(0, n).join("/") + "/");
    const sheet = new URL(style, home);
    try {
      const answer = await fetch(sheet);
      // Some hosts send a page for whatever is asked for.
      if (!answer.ok || !(answer.headers.get("content-type") || "").startsWith("text/css")) continue;
    } catch (e) {
      continue;
    }
    document.head.append(Object.assign(document.createElement("link"), { rel: "stylesheet", href: sheet.href }));
    for (const a of document.querySelectorAll("[data-path]")) {
      a.href = new URL(a.dataset.path, home);
      // What was entered goes along: only the path is wrong.
      if (a.dataset.path && location.hash.startsWith("#v=")) a.hash = location.hash;
    }
    document.getElementById("where").textContent = location.hash.startsWith("#v=")
      ? words.entriesLeft
      : words.perhaps;
    document.getElementById("pages").hidden = false;
    return;
  }
})();
