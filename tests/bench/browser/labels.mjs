// Measures the press of a release beside jsPDF and pdf-lib, in one Chromium and one run, and prints the table.
//
//   npm --prefix tests/bench/browser/labels ci && node tests/bench/browser/labels.mjs [--dist DIR]
//
// 5,000 labels of five lines of 1,000 invented events. The press shapes, chooses size and breaks, and embeds subsets of
// its fonts; the other two write the same lines at one size where they are told to, with nothing fitted: in the same
// font, and in a standard font, which embeds nothing, shapes nothing and has no letter beyond Latin 1. Best of five,
// the first of all left out.

import { readFileSync, readdirSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

import { chromium } from "../../browser/node_modules/playwright-core/index.mjs";
import { serve } from "../../../demo/serve.mjs";
import { CHROMIUM } from "../../browser/lib/browser.mjs";

const HERE = dirname(fileURLToPath(import.meta.url));
const OTHERS = ["jspdf/dist/jspdf.umd.min.js", "pdf-lib/dist/pdf-lib.min.js", "@pdf-lib/fontkit/dist/fontkit.umd.min.js"];
const FONTS = ["FiraSansCondensed-Regular.ttf", "FiraSansCondensed-Italic.ttf", "DejaVuSansCondensed-gaps.ttf"];
const EVENTS = 1000;
const COPIES = 5;
const REPEATS = 5;
const WAYS = [
  ["the press, shaped and fitted, subsets embedded", "press"],
  ["jsPDF, placed, the same font", "jsPDFSame"],
  ["jsPDF, placed, standard font", "jsPDF"],
  ["pdf-lib, placed, a subset of the same font", "pdfLibSame"],
  ["pdf-lib, placed, standard font", "pdfLib"],
];

const place = ["--dist"].includes(process.argv[2]) ? resolve(process.argv[3]) : join(HERE, "../../../dist");
const code = readdirSync(place).find((name) => name.startsWith("code-"));

/** What runs in the page: it makes the labels, and the three ways to a PDF. */
function made({ code, fonts, events, copies }) {
  const places = ["Tarn Abbot", "Mill Meadow", "Saltmarsh", "Old Sluice", "Marl Pit", "Fen End", "Ridge"];
  const people = ["I. Varga", "D. Okoro", "C. Novak", "J. Roux", "M. Lind"];
  const four = (number) => String(number % 10_000).padStart(4, "0");
  const labels = Array.from({ length: events }, (_, event) => [
    `ORRELAND: Sallow ${event % 40}`,
    `${places[event % 7]}, ${100 + (event % 900)} m`,
    `47.${four(event)}°\u00a0N 12.${four(event * 7)}°\u00a0E ±8\u00a0m`,
    `${1 + (event % 30)}.vi.20${10 + (event % 17)}`,
    `leg.\u00a0${people[event % 5].replace(" ", "\u00a0")}`,
  ]);
  const MM = 72 / 25.4;
  const cells = labels.flatMap((lines) => Array(copies).fill(lines));
  const at = (index) => ({ x: (10 + (index % 10) * 18) * MM, y: (10 + Math.floor((index % 260) / 10) * 10) * MM });

  const worker = new Worker(`./${code}/press_loader.js`, { type: "module" });
  const heard = () => new Promise((tell) => (worker.onmessage = (event) => tell(event.data)));
  const ready = heard();
  window.press = async () => {
    if ((await ready) === "ready") {
      if (!window.inked) {
        const files = await Promise.all(fonts.map((name) => fetch(`./fonts/${name}`).then((file) => file.arrayBuffer())));
        const set = heard();
        worker.postMessage({ fonts: files.map((bytes) => new Uint8Array(bytes)) });
        window.inked = await set;
      }
    }
    const format = { width_mm: 18, height_mm: 10, type_largest_pt: 5, type_least_pt: 4, pin_mm: 0 };
    const batch = {
      labels: labels.map((lines) => ({ lines: lines.map((text) => [{ text, italic: false }]), copies, style: 0 })),
      styles: [{ format }],
      card: { size_mm: [210, 297], margin_mm: 10 },
    };
    const asked = async (work) => {
      const reply = heard();
      worker.postMessage({ id: 1, request: new TextEncoder().encode(JSON.stringify(work)) });
      const { answer, pdf, fault } = await reply;
      if (fault) throw new Error(fault);
      return { pdf, worked: JSON.parse(new TextDecoder().decode(answer)) };
    };
    let piece = await asked({ Begin: { batch, title: "Labels", words: ["50 mm"], made: [2027, 6, 19, 12, 0, 0] } });
    while (piece.worked.Under) piece = await asked("Continue");
    if (!piece.pdf) throw new Error(`the labels do not fit: ${JSON.stringify(piece.worked).slice(0, 200)}`);
    return piece.pdf.length;
  };
  const regular = fetch(`./fonts/${fonts[0]}`).then((file) => file.arrayBuffer());
  const base64 = regular.then((bytes) => {
    const letters = new Uint8Array(bytes).reduce((text, byte) => text + String.fromCharCode(byte), "");
    return btoa(letters);
  });
  window.jsPDF = () => byJsPDF();
  window.jsPDFSame = async () => byJsPDF(await base64);
  const byJsPDF = async (font) => {
    const file = new window.jspdf.jsPDF({ unit: "pt", format: "a4", compress: true });
    if (font) {
      file.addFileToVFS("same.ttf", font);
      file.addFont("same.ttf", "same", "normal");
    }
    file.setFont(font ? "same" : "helvetica").setFontSize(4.5);
    cells.forEach((lines, index) => {
      if (index && index % 260 === 0) file.addPage();
      const { x, y } = at(index);
      lines.forEach((line, row) => file.text(line, x + 1, y + 5 + row * 5));
    });
    return file.output("arraybuffer").byteLength;
  };
  window.pdfLib = () => byPdfLib();
  window.pdfLibSame = async () => byPdfLib(await regular);
  const byPdfLib = async (bytes) => {
    const file = await window.PDFLib.PDFDocument.create();
    file.registerFontkit(window.fontkit);
    const font = bytes ? await file.embedFont(bytes, { subset: true }) : await file.embedFont("Helvetica");
    let page;
    cells.forEach((lines, index) => {
      if (index % 260 === 0) page = file.addPage([595.28, 841.89]);
      const { x, y } = at(index);
      lines.forEach((line, row) => page.drawText(line, { x: x + 1, y: 836 - y - row * 5, size: 4.5, font }));
    });
    return (await file.save()).length;
  };
}

async function timed(page, name, repeats) {
  return page.evaluate(
    async ([name, repeats]) => {
      const times = [];
      let bytes = 0;
      for (let turn = 0; turn <= repeats; turn += 1) {
        const from = performance.now();
        bytes = await window[name]();
        if (turn > 0) times.push(performance.now() - from);
      }
      return { ms: Math.min(...times), bytes };
    },
    [name, repeats],
  );
}

const server = await serve({ root: place, headers: false });
const browser = await chromium.launch({ executablePath: CHROMIUM, args: ["--no-sandbox"] });
try {
  const page = await browser.newPage();
  await page.goto(server.url);
  for (const file of OTHERS) await page.evaluate(readFileSync(join(HERE, "labels/node_modules", file), "utf8"));
  await page.evaluate(made, { code, fonts: FONTS, events: EVENTS, copies: COPIES });
  console.log("| 5,000 labels of five lines of 1,000 events to PDF | ms | KB |\n|---|---:|---:|");
  for (const [words, name] of WAYS) {
    const { ms, bytes } = await timed(page, name, REPEATS);
    console.log(`| ${words} | ${ms.toFixed(0)} | ${(bytes / 1000).toFixed(0)} |`);
  }
  const wasm = readFileSync(join(place, code, "press_bg.wasm"));
  console.log(`\nThe module of the press: ${(wasm.length / 1024).toFixed(0)} KiB.`);
} finally {
  await browser.close();
  await server.close();
}
