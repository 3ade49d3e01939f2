// A font of a person's own sets what the fonts of the labels lack, and only the letters used go into the PDF. The fonts
// are invented (tests/fonts).

import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

import { fonts, pages } from "../lib/pdf.mjs";
import { fits, shoot } from "../lib/shots.mjs";
import { App } from "../pages/app.mjs";
import { pdf } from "./labels.mjs";

export const title = "a font of one's own is checked, kept, printed with as a subset, and taken away again";

const FONTS = join(dirname(fileURLToPath(import.meta.url)), "../../fonts");

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server, { denied: true });
  const app = new App(phone);
  await app.introduce("I. Varga");
  await app.newCatch();
  await app.fill({ site: "虫山 Meadow", method: "Hand net", group: { group: "Hover flies", count: 2 } });
  await app.save();
  await app.open("bench/1");
  await app.says(/No font of the labels has “虫”/);
  await refused(t, app);
  await app.pick("Add a font file", join(FONTS, "boxes.ttf"));
  await app.says("Invented Boxes, 5 letters");
  assert.ok(await fits(app.page), "Setup does not scroll sideways");
  await shoot(app.page, t.out, "setup");
  await printed(t, app);
  await takenAway(app);
}

async function refused(t, app) {
  await app.open("setup");
  const path = join(t.out, "picture.ttf");
  writeFileSync(path, "\u0000\u0001 no font");
  await app.pick("Add a font file", path);
  await app.says("“picture.ttf” is no TrueType or OpenType font, or could not be read.");
  await app.pick("Add a font file", join(FONTS, "shut.ttf"));
  await app.says("“Invented Boxes” does not allow parts of it to travel in documents.");
  assert.equal(await app.button("Take Invented Boxes away").count(), 0);
}

/** After a reload the page begins again with what it kept. */
async function printed(t, app) {
  await app.open("bench/1");
  await app.page.reload();
  await app.ready();
  await app.page.getByRole("img", { name: /^Collection label: .*虫山 Meadow/ }).waitFor();
  assert.equal(await app.page.getByText(/No font of the labels has/).count(), 0);
  await app.tap(app.button(/^Put \d+ labels on the sheet/));
  await app.open("labels");
  await app.tap(app.button(/^Make PDF/));
  await app.button(/^Open the PDF/).waitFor();
  const path = await pdf(t, app);
  assert.match(pages(path)[0].lines.map((line) => line.text).join("\n"), /虫山 Meadow/);
  const own = fonts(path).filter((font) => /Boxes/.test(font.name));
  assert.deepEqual(own.map(({ embedded, subset }) => ({ embedded, subset })), [{ embedded: true, subset: true }]);
}

async function takenAway(app) {
  await app.open("setup");
  await app.tap(app.button("Take Invented Boxes away"));
  await app.page.getByText("Invented Boxes, 5 letters").waitFor({ state: "detached" });
  await app.open("bench/1");
  await app.says(/No font of the labels has “虫”/);
}
