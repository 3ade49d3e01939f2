// Measures the release beside its twin, in one Chromium and one run, and prints the table.
//
//   node tests/bench/browser/run.mjs --generate PROGRAM [--dist DIR] [--events N,N]
//
// PROGRAM writes a log file of generated records (tests/bench/native, `generate`). The app is measured from outside:
// a stopwatch is put into each page before it starts (lib/watch.mjs). Exits non-zero when something could not be
// measured, never because something was slow.

import { execFileSync } from "node:child_process";
import { closeSync, existsSync, mkdtempSync, openSync, rmSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

import { serve } from "../../../demo/serve.mjs";
import { Device } from "../../browser/lib/browser.mjs";
import { Memory } from "./lib/memory.mjs";
import { App, Twin } from "./lib/pages.mjs";
import { sizes } from "./lib/sizes.mjs";
import { Table, median } from "./lib/table.mjs";
import { stopwatch } from "./lib/watch.mjs";

const HERE = dirname(fileURLToPath(import.meta.url));
const THROTTLE = 4;
/** The first event of the generated log: words that only it has, and its hour as it is listed. */
const OLDEST = { words: "2017-04-01T08:55", hour: "08:55" };
const QUESTIONS = [["a number", "AM17-00404"], ["two words", "ditch Salix"], ["a person", "marlow"], ["nothing", "zzqx"]];
const TYPED = "marl pit 25";
/** Among the generated sites. */
const PLACE = { latitude: 48.5, longitude: 14.5, accuracy: 8 };

/** How often each is measured, by the number of events. */
const often = (events) => (events > 50_000 ? { open: 5, cold: 0, save: 15, import: 1 } : { open: 7, cold: 5, save: 15, import: 3 });

function options(words) {
  const read = { dist: join(HERE, "../../../dist"), events: [10_000, 100_000] };
  for (let at = 0; at < words.length; at += 2) {
    const [name, value] = [words[at], words[at + 1]];
    if (name === "--dist") read.dist = resolve(value);
    else if (name === "--events") read.events = value.split(",").map(Number);
    else if (name === "--generate") read.generate = resolve(value);
    else throw new Error(`there is no option ${name}`);
  }
  if (!read.generate) throw new Error("--generate names the program that writes the log file");
  if (!existsSync(join(read.dist, "sw.js"))) throw new Error(`${read.dist} holds no release`);
  return read;
}

/** The app and both twins in one browser, on a book of so many events. */
class Bench {
  static async start(events, { dist, generate }) {
    const bench = new Bench();
    bench.events = events;
    bench.often = often(events);
    bench.folder = mkdtempSync(join(tmpdir(), "glassine-bench-"));
    bench.log = bench.#generated(generate, "first", []);
    bench.other = bench.#generated(generate, "other", ["other"]);
    bench.servers = [
      await serve({ root: dist, headers: false }),
      await serve({ root: join(HERE, "twin"), headers: false }),
    ];
    const [app, twin] = bench.servers;
    bench.device = await Device.launch(app, { kind: "phone", place: PLACE, also: [twin.port] });
    bench.app = new App(bench.device, app);
    bench.rows = new Twin(bench.device, twin, "rows");
    bench.segments = new Twin(bench.device, twin, "segments");
    bench.all = [["app", bench.app], ["rows", bench.rows], ["segments", bench.segments]];
    await bench.watch();
    return bench;
  }

  #generated(generate, name, more) {
    const path = join(this.folder, `${name}.json`);
    const out = openSync(path, "w");
    execFileSync(generate, [String(this.events), "1", ...more], { stdio: ["ignore", out, "inherit"] });
    closeSync(out);
    return path;
  }

  /** Puts the stopwatch into every page that is opened from now on. */
  async watch() {
    const shown = String(this.events).replace(/\B(?=(\d{3})+$)/g, "[, \u00a0\u202f]?");
    const first = { count: ["header.head .note, #count", `\\b${shown} events`], form: ["form#catch", "."] };
    await this.device.context.addInitScript(stopwatch, { first });
  }

  /** Measures each of the three in turn, so often, and gives the medians by column. */
  async medians(times, measure) {
    const found = {};
    for (let turn = 0; turn < times; turn += 1) {
      for (const [name, measured] of this.all) (found[name] ??= []).push(await measure(measured));
    }
    return found;
  }

  async close() {
    await this.device.close();
    for (const server of this.servers) await server.close();
    rmSync(this.folder, { recursive: true });
  }
}

const only = (found, part) => Object.fromEntries(Object.entries(found).map(([name, all]) => [name, median(all.map(part))]));
const together = (one) => one.read + one.write;

async function imports(bench, table) {
  const { log, other, events } = bench;
  const count = events.toLocaleString("en");
  await bench.app.introduce("A. Marlow");
  const [fresh, again, merged] = [{}, {}, {}];
  for (const [name, measured] of bench.all) {
    if (name !== "app") await measured.go(`?way=${name}`);
    fresh[name] = await measured.import(log);
    await measured.open();
    again[name] = await measured.import(log);
    await measured.open();
    merged[name] = await measured.import(other);
  }
  const sum = (found) => Object.fromEntries(Object.entries(found).map(([name, one]) => [name, together(one)]));
  table.line(`import ${count} events into an empty book, preview and all`, "ms", sum(fresh));
  table.line("of it, reading and working out", "ms", { app: fresh.app.read });
  table.line("import the same again: nothing changes", "ms", sum(again));
  table.line(`merge ${count} with ${count}, one in ten changed`, "ms", sum(merged));
}

async function opening(bench, table) {
  const count = bench.events.toLocaleString("en");
  const found = await bench.medians(bench.often.open, async (measured) => {
    const shown = await measured.open();
    await measured.searching();
    const oldest = await measured.oldest(OLDEST.words, OLDEST.hour);
    return { shown, oldest, both: shown + oldest };
  });
  const aim = bench.events >= 100_000 ? { column: "rows", times: 0.1 } : undefined;
  table.line(`open ${count} events: exact count shown`, "ms", only(found, (one) => one.shown));
  table.line("then the oldest event found by search", "ms", only(found, (one) => one.oldest));
  table.line("both", "ms", only(found, (one) => one.both), aim);
}

async function searching(bench, table) {
  for (const [, measured] of bench.all) {
    await measured.open();
    await measured.searching();
    measured.answers = {};
    for (let turn = 0; turn < bench.often.open; turn += 1) {
      for (const [what, text] of QUESTIONS) (measured.answers[what] ??= []).push(await measured.search(text));
    }
  }
  for (const [what, text] of QUESTIONS) {
    const values = Object.fromEntries(bench.all.map(([name, measured]) => [name, median(measured.answers[what])]));
    table.line(`search ${what}: “${text}”`, "ms", values);
  }
}

async function memory(bench, table) {
  const [private_, heap] = [{}, {}];
  for (const [name, measured] of bench.all) {
    await measured.open();
    await measured.searching();
    await measured.search(QUESTIONS[0][1]);
    const found = await Memory.of(bench.device);
    private_[name] = found.process;
    heap[name] = found.page;
  }
  const aim = bench.events >= 100_000 ? { most: 150 } : undefined;
  table.line("memory: heap and buffers of the page", "MB", heap, aim);
  table.line("memory: private to its process", "MB", private_);
}

async function saving(bench, table) {
  const saves = {};
  for (const [name, measured] of bench.all) {
    await measured.open();
    saves[name] = [];
    for (let turn = 0; turn < bench.often.save; turn += 1) saves[name].push(await measured.save(`save ${turn}`));
  }
  const bytes = median(saves.app.map((save) => save.bytes));
  const raw = [];
  for (let turn = 0; turn < bench.often.save * 2; turn += 1) raw.push(await bench.rows.rawPut(bytes));
  const medians = (part) => only(saves, part);
  table.line(`one durable save: its transaction (${bytes} bytes)`, "ms", { ...medians((save) => save.ms), raw: median(raw) }, { column: "raw", times: 1.5 });
  table.line("one durable save: tap to painted confirmation", "ms", { ...medians((save) => save.confirmed), raw: median(raw) });
}

/** Keys of the catch form, processor slowed down. */
async function typing(bench, table) {
  await bench.device.reopen({ throttle: THROTTLE });
  await bench.watch();
  const fields = [["site", TYPED], ["notes", TYPED]];
  for (const [id, text] of fields) {
    const [usual, worst] = [{}, {}];
    for (const [name, measured] of bench.all) {
      await measured.coldCatch();
      await measured.newCatch();
      const keys = [...(await measured.typed(id, text)), ...(await measured.typed(id, text))];
      usual[name] = median(keys);
      worst[name] = Math.max(...keys);
    }
    table.line(`key to paint in “${id}”, ${THROTTLE} × slower: median`, "ms", usual, { most: 50 });
    table.line("the slowest of all keys", "ms", worst);
  }
}

/** The browser starts anew, the server is gone, the processor is slowed down. */
async function coldStart(bench, table) {
  for (const [, measured] of bench.all) {
    await measured.coldCatch();
    await bench.device.installed();
  }
  for (const server of bench.servers) await server.close();
  const found = await bench.medians(bench.often.cold, async (measured) => {
    await bench.device.reopen({ throttle: THROTTLE });
    await bench.watch();
    const ready = await measured.coldCatch();
    await bench.device.page.focus("#notes");
    await bench.device.page.keyboard.press("x");
    const value = await bench.device.page.inputValue("#notes");
    if (!value.endsWith("x")) throw new Error("the form does not take typing");
    return ready;
  });
  table.line(`cold start, server gone, ${THROTTLE} × slower: new catch takes typing`, "ms", only(found, (one) => one), { column: "rows", times: 1.3 });
}

async function measure(events, asked, table) {
  const bench = await Bench.start(events, asked);
  try {
    for (const part of [imports, opening, searching, memory, saving, typing]) await part(bench, table);
    if (bench.often.cold > 0) await coldStart(bench, table);
  } catch (fault) {
    await bench.device.screenshot(join(HERE, "../../out/bench-failed.png")).catch(() => {});
    console.error(bench.device.faults().join("\n"));
    throw fault;
  } finally {
    await bench.close();
  }
}

const asked = options(process.argv.slice(2));
const table = new Table();
console.log(`${new Date().toISOString().slice(0, 10)}, ${availableParallelism()} processors; medians; the app is the release in ${asked.dist}\n`);
table.head();
for (const events of asked.events) await measure(events, asked, table);
for (const [part, kilobytes] of sizes(asked.dist)) {
  table.line(`Brotli bytes: ${part}`, "kB", { app: kilobytes }, part === "field screen" ? { most: 250 } : undefined);
}
const missed = table.missed();
console.log(`\n${missed.length === 0 ? "Every aim was met." : `Missed: ${missed.map(({ what }) => what).join("; ")}.`}`);
