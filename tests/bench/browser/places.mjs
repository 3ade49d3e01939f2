// Measures `place` beside what a page would use instead, in one Chromium and one run, and prints the table.
//
//   node tests/bench/browser/places.mjs FOLDER
//
// FOLDER holds places.js and its module: tests/bench/places, made as the page's own module is. Every answer is held
// against the other library's: all are asked the same 100,000 questions and leave all answers in one array. Exits
// non-zero when two answers differ or something could not be measured, never because something was slow.

import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { availableParallelism } from "node:os";
import { join, resolve } from "node:path";

import { serve } from "../../../demo/serve.mjs";
import { Device } from "../../browser/lib/browser.mjs";
import { brotli } from "./lib/sizes.mjs";

const COUNT = 100_000;
const TURNS = 25;
/** These, before the others, find the code that the machine has not made fast yet. */
const WARMING = 3;
/** Metres of a degree of latitude, about. */
const DEGREE_M = 111_320;

/**
 * Each thing asked: who answers it, ours first, and how far apart, in metres, the answers may be.
 *
 * UTM: a millimetre is what the grid promises. Geodesics: a micrometre, as between native and wasm. Texts: half of the
 * least that any of the notations writes, four decimals of a degree.
 */
const ASKED = [
  { what: "to UTM and back", by: ["ours.utm", "proj4.utm", "proj4.bare"], apart: 1e-3 },
  { what: "inverse geodesics", by: ["ours.legs", "karney.legs", "karney.lengths"], apart: 1e-6 },
  { what: "texts in ten notations", by: ["ours.read", "written"], apart: DEGREE_M * 1e-4, alone: true },
];

/** How each is called, in the table. */
const NAMES = {
  "proj4.utm": "proj4, a converter for each zone",
  "proj4.bare": "proj4, the bare projection",
  "karney.legs": "geographiclib-geodesic, distance and azimuths",
  "karney.lengths": "geographiclib-geodesic, distance alone",
};

/** Puts everything that is timed into the page: each takes no argument and gives an array. */
async function prepare(count) {
  const ours = await import("./places.js");
  await ours.default();
  const written = new ours.Written(count);
  const places = written.positions();
  const zones = ours.zones(places);
  const from = places;
  // Every other place stands across the Earth or so, every other within some kilometres.
  const to = places.map((degrees, at) => (at % 4 < 2 ? places[(at + 31_416) % places.length] : degrees * 0.999));

  const definition = (zone) => `+proj=utm +zone=${Math.abs(zone)}${zone < 0 ? " +south" : ""} +datum=WGS84 +units=m`;
  const of = (make) => new Map([...new Set(zones)].map((zone) => [zone, make(definition(zone))]));
  const converters = of((words) => window.proj4(words));
  const bare = of((words) => window.proj4.Proj(words));
  const earth = window.geodesic.Geodesic.WGS84;

  const byConverter = () => {
    const found = new Float64Array(count * 4);
    for (let at = 0; at < count; at += 1) {
      const converter = converters.get(zones[at]);
      const metres = converter.forward([places[at * 2 + 1], places[at * 2]]);
      const back = converter.inverse(metres);
      found.set([metres[0], metres[1], back[1], back[0]], at * 4);
    }
    return found;
  };
  const byProjection = () => {
    const found = new Float64Array(count * 4);
    const radians = Math.PI / 180;
    for (let at = 0; at < count; at += 1) {
      const projection = bare.get(zones[at]);
      const { x, y } = projection.forward({ x: places[at * 2 + 1] * radians, y: places[at * 2] * radians });
      [found[at * 4], found[at * 4 + 1]] = [x, y];
      const back = projection.inverse({ x, y });
      [found[at * 4 + 2], found[at * 4 + 3]] = [back.y / radians, back.x / radians];
    }
    return found;
  };
  const geodesics = (mask, bearings) => () => {
    const found = new Float64Array(count * 2);
    for (let at = 0; at < count * 2; at += 2) {
      const way = earth.Inverse(from[at], from[at + 1], to[at], to[at + 1], mask);
      found[at] = way.s12;
      if (bearings) found[at + 1] = way.azi1;
    }
    return found;
  };
  window.timed = {
    "ours.utm": () => ours.there_and_back(places),
    "proj4.utm": byConverter,
    "proj4.bare": byProjection,
    "ours.legs": () => ours.legs(from, to),
    "karney.legs": geodesics(undefined, true),
    "karney.lengths": geodesics(window.geodesic.Geodesic.DISTANCE, false),
    "ours.read": () => written.read(),
    written: () => places,
  };
}

/** Each in turn, so often: milliseconds by name. */
function measure({ names, turns }) {
  const found = Object.fromEntries(names.map((name) => [name, []]));
  for (let turn = 0; turn < turns; turn += 1) {
    for (const name of names) {
      const start = performance.now();
      window.timed[name]();
      found[name].push(performance.now() - start);
    }
  }
  return found;
}

/**
 * The greatest distance between the answers of two, in metres; infinite where one has fewer. Of a way its length
 * counts, of a place its metres, and its degrees as metres.
 */
function compared({ one, other, degree }) {
  const [a, b] = [window.timed[one](), window.timed[other]()];
  if (a.length !== b.length) return Infinity;
  const metres = (at) => {
    if (one === "ours.legs") return at % 2 ? 0 : 1;
    return one === "ours.read" || at % 4 > 1 ? degree : 1;
  };
  let apart = 0;
  for (let at = 0; at < a.length; at += 1) {
    const weight = metres(at);
    const difference = weight && Math.abs(a[at] - b[at]) * weight;
    if (!(difference <= apart)) apart = difference;
  }
  return Number.isNaN(apart) ? Infinity : apart;
}

async function put(device, folder) {
  const need = createRequire(join(import.meta.dirname, "../../browser/package.json"));
  writeFileSync(join(folder, "index.html"), "<!doctype html><title>places</title>");
  await device.goto();
  const root = (name) => join(need.resolve(`${name}/package.json`), "..");
  for (const path of [join(root("proj4"), "dist/proj4.js"), join(root("geographiclib-geodesic"), "geographiclib-geodesic.min.js")]) {
    await device.page.addScriptTag({ content: readFileSync(path, "utf8") });
  }
  await device.page.evaluate(prepare, COUNT);
}

const ms = (number) => `${number.toFixed(number < 100 ? 1 : 0)} ms`;

/** A line of the table for each of the others; returns how many disagree or are faster. */
async function line(device, { what, by, apart: most, alone }) {
  const [ours, ...others] = by;
  const names = alone ? [ours] : by;
  const times = await device.page.evaluate(measure, { names, turns: TURNS + WARMING });
  const best = Object.fromEntries(names.map((name) => [name, Math.min(...times[name].slice(WARMING))]));
  const found = { disagree: 0, faster: 0 };
  for (const other of others) {
    const apart = await device.page.evaluate(compared, { one: ours, other, degree: DEGREE_M });
    if (apart > most) found.disagree += 1;
    if (best[other] <= best[ours]) found.faster += 1;
    const beside = alone ? "| | |" : `| ${NAMES[other]}: ${ms(best[other])} | ${(best[ours] / best[other]).toFixed(2)} × |`;
    const said = apart > most ? `DIFFERENT: ${apart} m apart` : `${apart.toExponential(0)} m`;
    console.log(`| ${COUNT.toLocaleString("en")} ${what} | ${ms(best[ours])} ${beside} ${said} |`);
  }
  return found;
}

const [folder] = process.argv.slice(2);
if (!folder) throw new Error("usage: node places.mjs FOLDER");
const server = await serve({ root: resolve(folder), headers: false });
const device = await Device.launch(server, { kind: "phone" });
try {
  await put(device, resolve(folder));
  console.log(`Positions; ${availableParallelism()} processors; the best of ${TURNS}, taken in turn\n`);
  console.log("| what | ours | beside | ours ÷ beside | farthest apart |\n|---|---:|---|---:|---:|");
  const all = [];
  for (const asked of ASKED) all.push(await line(device, asked));
  const sum = (part) => all.reduce((total, found) => total + found[part], 0);
  console.log(`\n${sum("faster") === 0 ? "Faster than each of the others." : `${sum("faster")} of the others were faster.`}`);
  // All of `place` without its tables, with the standard library and the bench around it: more than it adds to a page.
  const module = brotli(readFileSync(join(resolve(folder), "places_bg.wasm")));
  console.log(`The module that answered: ${(module / 1000).toFixed(1)} kB as Brotli.`);
  if (sum("disagree") > 0) process.exitCode = 1;
} catch (fault) {
  console.error(device.faults().join("\n"));
  throw fault;
} finally {
  await device.close();
  await server.close();
}
