// The main job, end to end, in three engines. Names and places are invented.

import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

import { fonts, info, pages, raster } from "../lib/pdf.mjs";

export const title = "a catch logged on a phone is exported, imported on a desk, found at the bench and printed right";
export const engines = ["chromium", "firefox", "webkit"];
export const limit = 180;

const PLACE = { latitude: 47.61384, longitude: 12.30427, accuracy: 8 };

export default async function (t) {
  const server = await t.serve({ base: "/collect/" });
  const log = await logged(t, server);
  const desk = await t.driver(server);
  await started(desk, "#/import");
  await taken(desk, log);
  await found(desk);
  await previewed(desk);
  await printed(t, desk);
}

/** A phone logs two hover flies from an umbel, and gives its day away. */
async function logged(t, server) {
  const phone = await t.driver(server, { place: PLACE });
  await started(phone);
  await introduce(phone, "I. Varga");
  await phone.fill({ role: "field", name: "Site" }, "Mill Meadow");
  await phone.fill({ role: "field", name: "Method" }, "hand_net");
  await phone.fill({ role: "field", name: "How it was with the host" }, "flower");
  await phone.fill({ role: "field", name: "Plant and part, fungus, insect, animal, dung or wood" }, "Heracleum sphondylium");
  await phone.click(".container-line a");
  await phone.fill({ role: "field", name: "Group" }, "Hover flies");
  await phone.click({ role: "button", name: /^Keep/ });
  await phone.see({ role: "heading", name: "New catch" });
  await phone.click({ role: "button", name: /^Save catch/ });
  await phone.says("Saved with 1 container");
  await phone.goto("#/export?all");
  await phone.catchDownloads();
  await phone.click({ role: "button", name: /^Download/ });
  const file = await phone.downloaded();
  assert.match(file.name, /^IV\d\d .*\.json\.txt$/);
  const path = join(t.out, "day.json.txt");
  writeFileSync(path, file.bytes);
  return path;
}

async function taken(desk, log) {
  await desk.drop(log, "day.json.txt");
  await desk.see({ role: "heading", name: "I. Varga’s log" });
  await desk.click({ role: "button", name: /^Import \d/ });
  await desk.says("imported");
}

/** The number as somebody types it in a hurry. */
async function found(desk) {
  await desk.goto("#/bench");
  await desk.fill("#number", `iv${String(new Date().getFullYear()).slice(2)} 1`);
  await desk.says("Mill Meadow");
  await desk.says("Heracleum sphondylium");
  await desk.click({ role: "button", name: /^Put \d+ labels? on the sheet/ });
  await desk.says("On the sheet to be printed.");
}

/** All labels were set, and the sheet is drawn. */
async function previewed(desk) {
  await desk.goto("#/labels");
  await desk.see({ role: "heading", name: "Labels" });
  await desk.says("4 fit");
  await desk.see({ role: "button", name: /^Make PDF, 4 labels/ });
}

async function printed(t, desk) {
  await desk.evaluate(() => {
    const made = URL.createObjectURL.bind(URL);
    window.blobs = [];
    URL.createObjectURL = (blob) => { window.blobs.push(blob); return made(blob); };
    window.open = () => window;
    return true;
  });
  await desk.click({ role: "button", name: /^Make PDF/ });
  await desk.click({ role: "button", name: /^Open the PDF/ });
  const base64 = await desk.waitFor(async () => {
    const blob = window.blobs.find((each) => each.type === "application/pdf");
    if (!blob) return null;
    let text = "";
    for (const byte of new Uint8Array(await blob.arrayBuffer())) text += String.fromCharCode(byte);
    return btoa(text);
  });
  const path = join(t.out, "labels.pdf");
  writeFileSync(path, Buffer.from(base64, "base64"));
  right(path);
  await desk.click({ role: "button", name: /^Note 4 as printed/ });
  await desk.says("No label waits");
  await desk.click({ role: "button", name: /^Undo/ });
  await desk.see({ role: "button", name: /^Make PDF, 4 labels/ });
}

/** What a ruler and a loupe would say of the sheet. */
function right(path) {
  const { width, height, pages: sheets } = info(path);
  assert.ok(Math.abs(width - 210) < 0.1 && Math.abs(height - 297) < 0.1, `an A4 sheet, not ${width} × ${height} mm`);
  assert.equal(sheets, 1);
  for (const font of fonts(path)) assert.ok(font.embedded && font.subset && font.unicode, `${font.name} travels along`);
  const [page] = pages(path);
  const text = page.lines.map((line) => line.text).join("\n");
  assert.match(text, /Mill Meadow/);
  assert.match(text, /leg\. I\. Varga/);
  assert.match(text, /Heracleum sphondylium/);
  const sheet = raster(path);
  const labels = labelsOf(page);
  assert.ok(labels.length >= 4, "two collection and two host labels");
  for (const { left, top, middle } of labels) {
    assert.equal(sheet.ink(middle.x, middle.y, 0.5), 0, `no ink under the pin at ${middle.x}, ${middle.y}`);
    assert.ok(sheet.inkIn({ left: left + 1, top: top + 0.5, right: left + 17, bottom: top + 7.5 }) > 100, "the words are there");
  }
}

/** The labels of a page by their words: cells of 18 × 8 mm from the margin on. */
function labelsOf(page) {
  const cells = new Map();
  for (const { text, box } of page.lines.flatMap((line) => line.words)) {
    if (box.top > 276) continue; // the bar at the foot
    const column = Math.floor((box.left - 10) / 18);
    const row = Math.floor(((box.top + box.bottom) / 2 - 10) / 8);
    const cell = { left: 10 + column * 18, top: 10 + row * 8 };
    assert.ok(box.left >= cell.left && box.right <= cell.left + 18, `“${text}” stays within its cut lines`);
    cells.set(`${column} ${row}`, { ...cell, middle: { x: cell.left + 9, y: cell.top + 4 } });
  }
  return [...cells.values()];
}

export async function started(driver, path = "") {
  await driver.goto(path);
  await driver.waitFor(() => !document.getElementById("cover") && document.querySelector("h1") !== null);
}

export async function introduce(driver, name) {
  await driver.click({ role: "link", name: /^New catch/ });
  await driver.fill({ role: "field", name: "Your name, as labels should say it" }, name);
  await driver.click({ role: "radio", name: /^One number a container/ });
  await driver.click({ role: "button", name: /^Begin/ });
  await driver.see({ role: "heading", name: "New catch" });
}
