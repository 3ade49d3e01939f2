// Brotli bytes of a release, file by file: what a phone fetches before the field screen can be used, what comes
// later or only into the offline cache.

import { readFileSync, readdirSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { brotliCompressSync, constants } from "node:zlib";

const FIELD = "field screen";

/** Which part of the app a file belongs to: what a new catch needs, what is fetched right after it, what is asked for. */
const PARTS = [
  [FIELD, /^index\.html$|^code-[^/]*\/(shell_bg\.wasm|shell\.js|boot\.js|early\.js|look\/.*)$/],
  ["second module", /\/(split_[^/]*\.wasm|__wasm_split\.js)$/],
  ["press", /\/press/],
  ["courier", /\/courier/],
  ["fonts of labels", /^fonts\//],
  ["tables of sea level and land", /^geo\//],
  ["sample survey", /^sample\//],
  ["icons, manifest, schema, service worker", /^(icons\/|manifest\.webmanifest$|sw\.js$|[^/]*\.schema\.json$)/],
];

function files(folder) {
  return readdirSync(folder, { recursive: true }).map((name) => join(folder, name)).filter((path) => statSync(path).isFile());
}

/** How many bytes a host sends that has compressed these as well as it can. */
export function brotli(bytes) {
  return brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_LGWIN]: 24, [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length } }).length;
}

/** Kilobytes (1,000 bytes) of each part: [name, kilobytes], the field screen first. A file of no part is a mistake. */
export function sizes(dist) {
  const sums = new Map(PARTS.map(([name]) => [name, 0]));
  for (const path of files(dist)) {
    const name = relative(dist, path);
    const part = PARTS.find(([, pattern]) => pattern.test(name));
    if (!part) throw new Error(`${name} belongs to no part`);
    sums.set(part[0], sums.get(part[0]) + brotli(readFileSync(path)) / 1000);
  }
  return [...sums];
}
