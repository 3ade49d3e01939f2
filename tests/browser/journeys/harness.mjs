import assert from "node:assert/strict";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

import { violations } from "../lib/axe.mjs";
import { fonts, info, pages, raster } from "../lib/pdf.mjs";

export const title = "the tools of the other journeys see what is there: ink on paper, small targets, requests elsewhere";

const PAGES = fileURLToPath(new URL("../pages", import.meta.url));

export default async function (t) {
  const server = await t.serve({ root: PAGES });
  const desk = await t.desk(server);
  await desk.goto();
  await paper(desk, join(t.out, "paper.pdf"));
  await rules(desk);
  await elsewhere(t, server);
}

/** A square of 10 mm at 30 mm from the left and 40 from the top, and a word below it. */
async function paper(desk, file) {
  await desk.page.setContent(`<style>@page { size: 100mm 150mm; margin: 0 } body { margin: 0; font: 12pt sans-serif }
    div { position: absolute; left: 30mm; top: 40mm; width: 10mm; height: 10mm; background: #000; print-color-adjust: exact }
    p { position: absolute; left: 30mm; top: 60mm; margin: 0 }</style><div></div><p>Mill &amp; Meadow</p>`);
  await desk.page.pdf({ path: file, preferCSSPageSize: true, printBackground: true });
  const { pages: count, width, height } = info(file);
  assert.deepEqual([count, Math.round(width), Math.round(height)], [1, 100, 150]);
  assert.ok(fonts(file).length === 1 && fonts(file).every((font) => font.embedded && font.subset && font.unicode));
  const [line] = pages(file)[0].lines;
  assert.equal(line.text, "Mill & Meadow");
  assert.ok(Math.abs(line.words[0].box.left - 30) < 0.5 && line.box.top > 59 && line.box.bottom < 67, "where the word stands");
  const dots = raster(file, { dpi: 600 });
  assert.ok(Math.abs(dots.width - width * dots.dots) <= 1, "one dot a 600th of an inch");
  assert.equal(dots.ink(35, 45, 0.1) > 0, true, "ink in the square");
  assert.equal(dots.ink(29, 45, 0.8), 0, "none beside it");
  assert.equal(dots.ink(29, 45, 1.2) > 0, true, "its edge is where it was drawn");
  assert.ok(Math.abs(dots.inkIn({ left: 20, top: 30, right: 50, bottom: 55 }) / dots.dots ** 2 - 100) < 2, "100 square millimetres, give or take the dots of its edge");
}

async function rules(desk) {
  await desk.page.setContent(`<html lang="en"><title>Small</title><main><h1>Small</h1>
    <button style="width:16px;height:16px;padding:0">a</button><button style="width:16px;height:16px;padding:0">b</button></main>`);
  const found = await violations(desk.page);
  assert.deepEqual([...new Set(found.map((line) => line.split(":")[0]))], ["target-size"]);
}

/** A request to another port is seen even when it comes from a worker. */
async function elsewhere(t, server) {
  const phone = await t.phone(server);
  await phone.goto();
  await phone.page.evaluate(() => new Promise((done) => {
    const script = "fetch('http://127.0.0.1:9/from-a-worker', { mode: 'no-cors' }).finally(() => postMessage(1))";
    new Worker(URL.createObjectURL(new Blob([script]))).onmessage = done;
  }));
  assert.ok(phone.faults().some((fault) => fault.includes("left the origin: http://127.0.0.1:9/from-a-worker")));
  phone.forgive();
}
