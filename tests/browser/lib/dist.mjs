// Copies of the release that differ from it: what a later version looks like to a phone that has the first.

import { createHash } from "node:crypto";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A copy of a release in a new temporary folder. */
export function copyOf(dist) {
  const folder = mkdtempSync(join(tmpdir(), "glassine-dist-"));
  cpSync(dist, folder, { recursive: true });
  return folder;
}

/** The list in a release's service worker: [path, digest, media type] of each file. */
function listed(folder) {
  return JSON.parse(readFileSync(join(folder, "sw.js"), "utf8").match(/^const FILES = (\[.*\]);/m)[1]);
}

/** The path of the only listed file that ends so. */
export function pathOf(folder, end) {
  const found = listed(folder).map(([path]) => path).filter((path) => path.endsWith(end));
  if (found.length !== 1) throw new Error(`${found.length} files end in ${end}`);
  return found[0];
}

/**
 * Rewrites files of a release under their old names, and its service worker's list and version with them:
 * the hardest kind of update, where no name tells that anything changed.
 */
export function rewrite(folder, version, changes) {
  const script = join(folder, "sw.js");
  const list = listed(folder);
  for (const [path, change] of Object.entries(changes)) {
    const text = change(readFileSync(join(folder, path), "utf8"));
    writeFileSync(join(folder, path), text);
    list.find(([name]) => name === path)[1] = createHash("sha256").update(text).digest("hex");
  }
  const worker = readFileSync(script, "utf8")
    .replace(/^const FILES = \[.*\];/m, () => `const FILES = ${JSON.stringify(list)};`)
    .replace(/^const VERSION = ".*";/m, `const VERSION = "${version}";`);
  writeFileSync(script, worker);
}

export function discard(folder) {
  rmSync(folder, { recursive: true, force: true });
}
