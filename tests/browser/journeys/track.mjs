// A recorded track places what was logged without a position; what is broken or empty says so and changes nothing.
// The track is invented.

import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";

import { App } from "../pages/app.mjs";

export const title = "a recorded track gives events without a position one, with its radius, once a person has looked";

const MINUTE = 60_000;

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server, { denied: true });
  const app = new App(phone);
  await app.introduce("I. Varga");
  await app.newCatch();
  await app.fill({ site: "Mill Meadow", method: "Hand net" });
  await app.save();

  const now = Date.now();
  await give(app, t, "empty.gpx", gpx([]));
  await app.says("No point of it has a time");
  await app.tap(app.button("Refuse"));
  await give(app, t, "cut.gpx", gpx([[47.6, 12.3, now - 5 * MINUTE]]).slice(0, -12));
  await app.says("it breaks off");
  await app.says(/after the track ends/);
  assert.equal(await app.button(/^Place/).isVisible(), false, "what lies outside the track is not taken unasked");
  await app.tap(app.button("Refuse"));

  await give(app, t, "walk.gpx", gpx([
    [47.596, 12.3, now - 18 * MINUTE], [47.598, 12.3, now - 14 * MINUTE],
    [47.6, 12.3, now - 10 * MINUTE], [47.602, 12.3, now + 10 * MINUTE],
  ]));
  await app.says("1 event without a position");
  await app.says(/between two fixes 20 min and 222 m apart/);
  await app.tap(app.button(/^Place 1 event, keep the track/));
  await app.says("1 event was given a position.");
  await app.open("days");
  await app.tap(app.page.locator("a[href*='/day/']"));
  await drawnAndTakenAway(app);
  await app.tap(app.page.locator("li.event a"));
  await app.says("from a recorded track, by the hour");
  await app.says(/47\.60\d*° N/);
  await app.open("import");
  await give(app, t, "again.gpx", gpx([[47.6, 12.3, now - 10 * MINUTE], [47.602, 12.3, now + 10 * MINUTE]]));
  await app.says("No event without a position");
}

/** The track lies on the map of its day, but for the minutes when the receiver was silent; it is there after a reload, and can be taken away and kept after all. */
async function drawnAndTakenAway(app) {
  const drawn = app.page.locator("svg.chart path.track");
  await app.says(/Track: Walk, 445 m\./);
  assert.match(await drawn.getAttribute("d"), /^M[\d.]+ [\d.]+L/);
  await app.page.reload();
  await app.ready();
  await app.says(/Track: Walk, 445 m\./);
  await app.tap(app.button("Take away"));
  await app.says("The track “Walk” is no longer kept.");
  assert.equal(await drawn.getAttribute("d"), "");
  await app.tap(app.button("Keep it after all"));
  await app.says(/Track: Walk, 445 m\./);
  assert.match(await drawn.getAttribute("d"), /^M/);
}

function gpx(fixes) {
  const points = fixes.map(([latitude, longitude, at]) =>
    `<trkpt lat="${latitude}" lon="${longitude}"><time>${new Date(at).toISOString()}</time></trkpt>`);
  return `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="invented" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Walk</name><trkseg>${points.join("\n")}</trkseg></trk></gpx>\n`;
}

async function give(app, t, name, content) {
  const path = join(t.out, name);
  writeFileSync(path, content);
  if (!app.page.url().endsWith("#/import")) await app.open("import");
  await app.pick(/^Pick (a|another) file/, path);
}
