// Prints what the QR code in a PNG file says, or fails. NODE_PATH names the folder
// with jsqr and pngjs.
"use strict";
const png = require("pngjs").PNG.sync.read(require("fs").readFileSync(process.argv[2]));
const code = require("jsqr")(new Uint8ClampedArray(png.data), png.width, png.height, { inversionAttempts: "dontInvert" });
if (!code) throw new Error("no QR code was found");
process.stdout.write(code.data);
