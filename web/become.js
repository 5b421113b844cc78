// The page that came becomes the program's own. Where both are alike its nodes stay,
// and with them their place on the screen, which a phone takes long to work out anew,
// and under a finger.
"use strict";
// become changes what is shown to what the program has made, and tells took of each
// node that stays in place of one of the program's.
window.become = (shown, own, took) => {
  // What has no name of its own goes by what is in it. Containers stay as they are or go:
  // of one that is changed here Chromium 148 may show nothing any more.
  const name = (node) => node.id || node.querySelector("[id]")?.id;
  const alike = (a, b) => a && a.nodeName === b.nodeName &&
    (a.nodeType !== Node.ELEMENT_NODE || a.getAttribute("class") === b.getAttribute("class") && name(a) === name(b)) &&
    (!a.matches?.(".entry, .rows, .scroll") || a.isEqualNode(b));

  function change(shown, own) {
    took(shown, own);
    if (shown.isEqualNode(own) && !own.firstElementChild) {
      if (own.firstChild) took(shown.firstChild, own.firstChild);
    } else if (shown.nodeType === Node.TEXT_NODE) {
      shown.data = own.data;
    } else {
      attributes(shown, own);
      content(shown, own);
    }
    if (/^(INPUT|SELECT|OPTION)$/.test(own.nodeName)) states(shown, own);
  }

  function attributes(shown, own) {
    for (const name of own.getAttributeNames()) {
      const value = own.getAttribute(name);
      if (shown.getAttribute(name) !== value) shown.setAttribute(name, value);
    }
    for (const name of shown.getAttributeNames()) if (!own.hasAttribute(name)) shown.removeAttribute(name);
  }

  function states(shown, own) {
    for (const state of ["checked", "selected", "value"]) {
      if (state in own && shown[state] !== own[state]) shown[state] = own[state];
    }
  }

  function content(shown, own) {
    let next = shown.firstChild;
    const leaveOutUntil = (node) => {
      while (next !== node) {
        const gone = next;
        next = next.nextSibling;
        gone.remove();
      }
    };
    for (const child of [...own.childNodes]) {
      let found = next;
      if (child.id || child.firstElementChild) while (found && !alike(found, child)) found = found.nextSibling;
      if (!alike(found, child)) {
        shown.insertBefore(child, next);
        continue;
      }
      leaveOutUntil(found);
      next = found.nextSibling;
      change(found, child);
    }
    leaveOutUntil(null);
  }

  change(shown, own);
};
