// Reads posts as forums do: {markdown: [...], bbcode: [...], plain: [...]} from the standard
// input; for each, the addresses of its links, its text and the elements in it. Plain ones
// are read in both ways: people put them into any forum.
import { createRequire } from "node:module";
import { text } from "node:stream/consumers";
const require = createRequire(process.argv[2] + "/");
const { Parser } = require("commonmark");
const { parse } = require("@bbob/parser");

function markdown(post) {
  const read = { links: [], text: "", elements: [] };
  const walker = new Parser().parse(post).walker();
  for (let e; (e = walker.next());) {
    if (!e.entering) continue;
    if (e.node.type === "link") read.links.push(e.node.destination);
    if (e.node.literal !== null) read.text += e.node.literal;
    if (e.node.type === "softbreak") read.text += "\n";
    read.elements.push(e.node.type);
  }
  return read;
}

function bbcode(post) {
  const read = { links: [], text: "", elements: [] };
  const walk = (nodes) => {
    for (const n of nodes || []) {
      if (typeof n === "string") {
        read.text += n;
        continue;
      }
      read.elements.push(n.tag);
      // [url=address] is kept as a key that is its own value.
      if (n.tag === "url") read.links.push(Object.keys(n.attrs)[0]);
      walk(n.content);
    }
  };
  walk(parse(post));
  return read;
}

const posts = JSON.parse(await text(process.stdin));
process.stdout.write(JSON.stringify({ markdown: posts.markdown.map(markdown), bbcode: posts.bbcode.map(bbcode),
  plainAsMarkdown: posts.plain.map(markdown), plainAsBBCode: posts.plain.map(bbcode) }));
