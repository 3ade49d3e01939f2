// Labels from the bench to the paper and back: what was determined stands in the PDF, a correction marks what was
// printed, and an arrangement changes what is drawn. Names and places are invented.

import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

import { violations } from "../lib/axe.mjs";
import { info, pages } from "../lib/pdf.mjs";
import { fits, inEachTheme, shoot } from "../lib/shots.mjs";
import { App } from "../pages/app.mjs";

export const title = "a determination is printed, a corrected event marks its printed labels, an arrangement changes them";
export const limit = 300;

const PLACE = { latitude: 47.61384, longitude: 12.30427, accuracy: 8 };

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server, { place: PLACE });
  const app = new App(phone);
  await app.introduce("I. Varga");
  await app.newCatch();
  await app.says(/47\.6138\d*° N/);
  await app.fill({ site: "Mill Meadow", method: "Hand net", host: ["Visiting the flower of", "Heracleum sphondylium"], group: { group: "Hover flies", count: 3 } });
  await app.save();
  await determined(t, app);
  await pinned(app);
  await printed(t, app);
  await corrected(t, app);
  await smaller(app);
  await arranged(t, app);
}

/** At the bench the flies get a name; a second one is added, the first stays. */
async function determined(t, app) {
  await app.open("bench/1");
  await app.says("Mill Meadow");
  await app.page.getByText("Add determination", { exact: true }).click();
  await app.field("Name").fill("Syrphus ribesii");
  await app.page.getByRole("radio", { name: "cf." }).check({ force: true });
  await app.field("Author").fill("(Linnaeus, 1758)");
  assert.equal(await app.field("Det. by").inputValue(), "I. Varga");
  assert.equal(await app.field("Year").inputValue(), String(new Date().getFullYear()));
  await app.tap(app.button("Add it"));
  await app.says(`det. I. Varga ${new Date().getFullYear()}`);
  const drawn = app.page.getByRole("img", { name: /^Determination label: Syrphus cf\. ribesii/ });
  await drawn.waitFor();
  await seen(t, app, "bench");
  await app.page.getByText("Other labels", { exact: true }).click();
  await app.page.getByRole("group", { name: "Slips" }).getByRole("button", { name: "One more" }).click();
  await app.page.getByRole("img", { name: /^Slip: / }).waitFor();
  await app.tap(app.button(/^Put \d+ labels on the sheet/));
  await app.says("On the sheet to be printed.");
}

/** Pins that are kept apart have a code each; taken out again, the insects count. */
async function pinned(app) {
  await app.open("bench/1");
  await app.page.getByText("Pins with codes of their own", { exact: true }).click();
  await app.field("Code of the first").fill("GLS-0099");
  const many = app.page.getByRole("group", { name: "How many pins" });
  await many.getByRole("button", { name: "One more" }).click();
  await app.tap(app.button("Add 2 pins"));
  await app.says("2 pins were added.");
  await app.button("Take out GLS-0100, pinned direct").waitFor();
  assert.deepEqual(await app.page.locator(".container-line .what .measure").allInnerTexts(), ["GLS-0099", "GLS-0100"]);
  assert.equal(await app.field("Code of the first").inputValue(), "GLS-0101");
  await app.page.getByRole("img", { name: /^Code label: GLS-0100/ }).waitFor();
  await app.field("Code of the first").fill("GLS-0099");
  await app.tap(app.button("Add this pin"));
  await app.says("Another pin is GLS-0099 already. None was added.");
  await app.tap(app.button("Take out GLS-0100, pinned direct"));
  await app.says("The pin was taken out.");
  await app.tap(app.button("Take out GLS-0099, pinned direct"));
  await app.button("Take out GLS-0099, pinned direct").waitFor({ state: "detached" });
}

/** Labels of two sizes on one sheet; the PDF says what was determined. */
async function printed(t, app) {
  await app.open("labels");
  await app.says("12 fit");
  await seen(t, app, "labels");
  await app.tap(app.button(/^Make PDF, 12 labels/));
  await app.button(/^Open the PDF/).waitFor();
  const path = await pdf(t, app);
  assert.equal(info(path).pages, 1);
  const text = pages(path)[0].lines.map((line) => line.text).join("\n");
  assert.equal(text.match(/Syrphus cf\. ribesii/g)?.length, 3, text);
  assert.match(text, /det\. I\. Varga/);
  assert.match(text, /× 3/);
  await app.tap(app.button(/^Note 12 as printed/));
  await app.says("No label waits");
}

/** The PDF that the page has made, as a file. */
export async function pdf(t, app) {
  const base64 = await app.page.evaluate(async () => {
    const blobs = [];
    const made = URL.createObjectURL;
    URL.createObjectURL = (blob) => { blobs.push(blob); return made.call(URL, blob); };
    window.open = () => window;
    [...document.querySelectorAll("button")].find((button) => button.innerText.startsWith("Open the PDF")).click();
    for (let turn = 0; turn < 200 && blobs.length === 0; turn += 1) await new Promise((done) => { setTimeout(done, 20); });
    let text = "";
    for (const byte of new Uint8Array(await blobs[0].arrayBuffer())) text += String.fromCharCode(byte);
    return btoa(text);
  });
  const path = join(t.out, "labels.pdf");
  writeFileSync(path, Buffer.from(base64, "base64"));
  return path;
}

/** The host was another plant: its printed labels are marked, old beside new; what it does not change is not. */
async function corrected(t, app) {
  await app.open("days");
  await app.page.locator("a[href*='/day/']").first().click();
  await app.page.locator("li.event a").first().click();
  await app.heading("Mill Meadow").waitFor();
  const event = new URL(app.page.url()).hash.replace(/^#\//, "");
  await app.open(`${event}/host`);
  await app.field("Plant and part, fungus, insect, animal, dung or wood").fill("Angelica sylvestris");
  await app.tap(app.button(/^Keep host/));
  await app.page.getByRole("status").filter({ hasText: /saved|kept|changed/i }).first().waitFor();
  await app.open("labels");
  await app.says("1 printed label is out of date");
  const pair = app.page.locator("#outdated-rows li");
  assert.match(await pair.innerText(), /Heracleum sphondylium[\s\S]*Angelica sylvestris/);
  await seen(t, app, "outdated");
  await app.tap(app.button(/^Print 4 again/));
  await app.button(/^Make PDF, 4 labels/).waitFor();
  await app.open("bench/1");
  await app.says(/^Corrected after printing on/);
}

/** Months in capitals: the label drawn changes at once, the labels themselves once it is saved; nothing is out of date. */
async function arranged(t, app) {
  const roman = ["i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"][new Date().getMonth()];
  await app.open("labels/collection");
  await app.page.getByRole("img", { name: new RegExp(`\\.${roman}\\.`) }).waitFor();
  await app.page.getByRole("radio", { name: new RegExp(`VI`) }).first().check({ force: true });
  await app.page.getByRole("img", { name: new RegExp(`\\.${roman.toUpperCase()}\\.`) }).waitFor();
  await app.tap(app.button("Take out site"));
  await app.page.getByRole("img", { name: /^Collection label: (?!.*Mill Meadow)/ }).waitFor();
  await seen(t, app, "arrange");
  await app.field("Name").fill("Capitals");
  await app.tap(app.button(/^Save and use it/));
  await app.page.getByRole("option", { name: "Capitals" }).waitFor({ state: "attached" });
  await app.open("bench/1");
  await app.page.getByRole("img", { name: new RegExp(`^Collection label: .*\\.${roman.toUpperCase()}\\.`) }).waitFor();
  await app.open("labels");
  await app.says("1 printed label is out of date");
}

/** A label too long for type of 4 pt says so, and fits once type may go down to 3.5. */
async function smaller(app) {
  await app.open();
  await app.newCatch();
  await app.fill({ site: "Old Sluice at Upper Mill Meadow, west bank of the Tarn Beck", group: { group: "Hover flies", count: 1 } });
  await app.save();
  await app.open("bench/2");
  await app.says(/too long at 4 pt/);
  await app.tap(app.button("Let type go down to 3.5 pt"));
  await app.page.getByText(/too long at 4 pt/).waitFor({ state: "detached" });
  assert.deepEqual(await app.page.locator(".mark.fault").allInnerTexts(), []);
  assert.equal(await app.button("Let type go down to 3.5 pt").count(), 0);
}

/** Looks at a screen in every theme, and with little room. */
async function seen(t, app, name) {
  const wrong = [];
  await inEachTheme(app.page, async (theme) => {
    for (const found of await violations(app.page)) wrong.push(`${name}, ${theme}: ${found}`);
  });
  await shoot(app.page, t.out, name);
  const usual = app.page.viewportSize();
  await app.page.setViewportSize({ width: 320, height: 640 });
  if (!(await fits(app.page))) wrong.push(`${name}: scrolls sideways at 320 pixels`);
  await app.page.setViewportSize({ width: usual.width, height: 3200 });
  await app.page.screenshot({ path: join(t.out, `${name}-whole.png`) });
  await app.page.setViewportSize(usual);
  assert.deepEqual(wrong, []);
}
