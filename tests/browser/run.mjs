// Runs the journeys, one after another, on the release bytes.
//
//   node tests/browser/run.mjs [--dist DIR] [--engine chromium|firefox|webkit] [NAME…]
//
// A journey is a file in journeys/: `export const title`, `export default async function (t)`, and, where it needs
// them, `export const limit` (seconds) and `export const engines` (those it runs in; only Chromium without it).
// Prints one line a journey and a closing count; exits non-zero when one failed.

import { existsSync, mkdirSync, readdirSync, rmSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

import { Journey } from "./lib/journey.mjs";

const HERE = dirname(fileURLToPath(import.meta.url));
const LIMIT = 120;

function options(words) {
  const read = { dist: join(HERE, "../../dist"), engine: "chromium", names: [] };
  for (let at = 0; at < words.length; at += 1) {
    if (words[at] === "--dist") read.dist = resolve(words[(at += 1)]);
    else if (words[at] === "--engine") read.engine = words[(at += 1)];
    else read.names.push(words[at].replace(/\.mjs$/, ""));
  }
  return read;
}

/** The journeys of an engine that were asked for; a name that fits none is a mistake. */
async function chosen({ engine, names }) {
  const all = readdirSync(join(HERE, "journeys")).filter((file) => file.endsWith(".mjs")).sort();
  const known = all.map((file) => file.replace(/\.mjs$/, ""));
  const strange = names.filter((name) => !known.includes(name));
  if (strange.length > 0) throw new Error(`no such journey: ${strange.join(", ")}`);
  const loaded = [];
  for (const name of names.length > 0 ? names : known) {
    const journey = await import(pathToFileURL(join(HERE, "journeys", `${name}.mjs`)));
    if ((journey.engines ?? ["chromium"]).includes(engine)) loaded.push({ name, ...journey });
  }
  return loaded;
}

async function run(journey, { dist, engine }) {
  const out = join(HERE, "../out", engine, journey.name);
  rmSync(out, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  const t = new Journey({ dist, out, engine });
  const limit = journey.limit ?? LIMIT;
  let timer;
  const tooLong = new Promise((_, failed) => {
    timer = setTimeout(() => failed(new Error(`took longer than ${limit} s`)), limit * 1000);
  });
  try {
    await Promise.race([journey.default(t), tooLong]);
    const seen = t.faults();
    return seen.length > 0 ? `Seen in the browser:\n  ${seen.join("\n  ")}` : undefined;
  } catch (fault) {
    await t.picture().catch(() => {});
    const seen = t.faults();
    return fault.stack + (seen.length > 0 ? `\nSeen in the browser:\n  ${seen.join("\n  ")}` : "");
  } finally {
    clearTimeout(timer);
    await t.end();
  }
}

const asked = options(process.argv.slice(2));
if (!existsSync(join(asked.dist, "sw.js"))) throw new Error(`${asked.dist} holds no release; bash demo/run.sh build makes one`);
let passed = 0;
let failed = 0;
for (const journey of await chosen(asked)) {
  const start = performance.now();
  const fault = await run(journey, asked);
  const seconds = ((performance.now() - start) / 1000).toFixed(1);
  console.log(`${fault ? "FAILED" : "passed"}  ${seconds.padStart(6)} s  ${journey.name}: ${journey.title}`);
  if (fault) console.log(fault.replace(/^/gm, "    "));
  if (fault) failed += 1;
  else passed += 1;
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 || passed === 0 ? 1 : 0);
