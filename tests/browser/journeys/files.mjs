import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

import { App } from "../pages/app.mjs";

export const title = "broken, cut-off, foreign and huge files are refused with their reason and change nothing";

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const desk = await t.desk(server, { place: { latitude: 47.61384, longitude: 12.30427, accuracy: 8 } });
  const app = new App(desk);
  await app.introduce("I. Varga");
  await app.newCatch();
  await app.says(/47\.6138\d*° N/);
  await app.fill({ site: "Mill Meadow" });
  await app.save();
  const whole = await exported(t, app);
  const text = whole.toString("utf8");
  const cases = [
    ["empty.txt", "", /This file is empty/],
    ["picture.json", "\u0000\u0001 not json", /cannot be read from line 1/],
    ["other.json", '{"type":"FeatureCollection"}', /This is no log file/],
    ["cut.json.txt", text.slice(0, text.length * 0.7), /This file was cut off in line \d+|cannot be read from line \d+/],
    ["changed.json.txt", text.replace("Mill Meadow", "Mull Meadow"), /changed or damaged/],
    ["huge.json", `{"format":"glassine-log","version":1,"book":"own",\n"records":[\n${"{}".repeat(8_000_000)}`, /cannot be read|cut off/],
  ];
  for (const [name, content, says] of cases) {
    await app.open("import");
    await give(app, t, name, content);
    await app.says(says);
    await app.says(/Nothing was imported and nothing changed/);
  }
  await app.open();
  assert.equal(await app.events().count(), 1);
  await app.open("import");
  await give(app, t, "mailed.json.txt", `\uFEFF${text.replace(/\n/g, "\r\n")}`);
  await app.says(/All of it is here already/);
  const copy = (await exported(t, app, "0.01")).toString("utf8");
  assert.match(copy, /"share_copy":\{/);
  assert.doesNotMatch(copy, /Mill Meadow/, "a share copy does not name the place");
  await app.says("The share copy has left. It does not count as exported.");
  const own = (await exported(t, app, "radius", "2500")).toString("utf8");
  assert.match(own, /"method":"degree_grid_radius"/);
  await app.open("import");
  await give(app, t, "copy.json.txt", copy);
  await app.says(/It can be read, never imported/);
}

async function give(app, t, name, content) {
  const path = join(t.out, name);
  writeFileSync(path, content);
  await app.pick(/^Pick (a|another) file/, path);
}

/** The whole book as the page gives it away. */
export async function exported(t, app, coarse, radius) {
  await app.open("export?all");
  if (coarse) {
    await app.page.reload();
    await app.ready();
    await app.tap(app.page.getByText("A share copy with coarser positions").first());
    await app.page.locator("#coarse").selectOption(coarse);
    if (radius) {
      await app.says("Type the radius, from 1 m to 1,000 km; then the copy is made.");
      assert.equal(await app.button(/^Download/).count(), 0, "no file leaves before the radius is known");
      await app.page.locator("#coarse-radius").fill(radius);
      await app.says("Cells that fit into a circle of 2.5 km anywhere on the Earth.");
    }
    await app.says(/share copy\.json\.txt/);
  }
  const download = app.page.waitForEvent("download");
  await app.tap(app.button(/^Download/));
  const path = join(t.out, "all.json.txt");
  await (await download).saveAs(path);
  const { readFileSync } = await import("node:fs");
  return readFileSync(path);
}
