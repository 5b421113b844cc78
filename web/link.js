// The links' codec, as calc/link has it, for the page while the program is not there.
// TestLinkCodec lays both over each other.
"use strict";
window.striderule = window.striderule || {}; // see app/browser/names.go
striderule.link = {
  // The pieces of a fragment: keys with their cells. What is no escape stands for itself.
  split(fragment) {
    const read = (text) => {
      try {
        return decodeURIComponent(text);
      } catch (e) {
        return text;
      }
    };
    return fragment.split("&").filter((piece) => piece.indexOf("=") > 0).map((piece) => {
      const at = piece.indexOf("=");
      return [read(piece.slice(0, at)), piece.slice(at + 1).split(",").map(read)];
    });
  },
  // Only letters, digits and what stands inside links everywhere stay as they are; at the
  // end, where forums cut links off, only the first two and the link's own marks.
  join(pieces) {
    const escaped = (sign) => "%" + sign.charCodeAt().toString(16).toUpperCase();
    const write = (text) => encodeURIComponent(text).replace(/%2F/g, "/").replace(/%3A/g, ":").replace(/[!'()*]/g, escaped);
    return pieces.map(([key, cells]) => write(key) + "=" + cells.map(write).join(",")).join("&").replace(/[-._~/:]$/, escaped);
  },
  // A value in the digits that its uncertainty, above 0, supports: two of those. There is
  // room for no more than twelve behind the point.
  measured(value, u) {
    const places = Math.min(12, 1 - u.toExponential(1).split("e")[1]), step = 10 ** -Math.min(0, places);
    return [value, u].map((v) => (step > 1 ? Math.round(v / step) * step : v).toFixed(Math.max(0, places))).join(" ± ");
  },
};
