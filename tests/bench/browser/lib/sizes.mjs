// Brotli bytes of a release, file by file: what a phone fetches before the field screen can be used, and what comes
// later or only into the offline cache.

import { readFileSync, readdirSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";

/** Which part of the app a file belongs to; the field screen is what is left. */
const PARTS = [
  ["press", /\/press/],
  ["courier", /\/courier/],
  ["fonts of labels", /(^|\/)fonts\//],
  ["icons, manifest, schema, service worker", /(^|\/)(icons\/|manifest\.webmanifest$|sw\.js$|[^/]*\.schema\.json$)/],
];

const FIELD = "field screen";

function files(folder) {
  return readdirSync(folder, { recursive: true }).map((name) => join(folder, name)).filter((path) => statSync(path).isFile());
}

function brotli(bytes) {
  return brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }).length;
}

/** Kilobytes (1,000 bytes) of each part: [name, kilobytes], the field screen first. */
export function sizes(dist) {
  const sums = new Map([[FIELD, 0], ...PARTS.map(([name]) => [name, 0])]);
  for (const path of files(dist)) {
    const name = relative(dist, path);
    const [part] = PARTS.find(([, pattern]) => pattern.test(name)) ?? [FIELD];
    sums.set(part, sums.get(part) + brotli(readFileSync(path)) / 1000);
  }
  return [...sums];
}
