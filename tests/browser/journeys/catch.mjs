import assert from "node:assert/strict";

import { App } from "../pages/app.mjs";

export const title = "a catch takes three taps the second time, and outlives the browser";

const PLACE = { latitude: 47.61384, longitude: 12.30427, accuracy: 8 };

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server, { place: PLACE });
  const app = new App(phone);
  await app.introduce("I. Varga");
  await first(app);
  await threeTaps(app);
  await halfWritten(phone, app);
  await killed(phone, app);
  await deleted(app);
}

async function first(app) {
  await app.newCatch();
  await app.says(/47\.6138\d*° N/);
  await app.fill({ site: "Mill Meadow", method: "Hand net", host: ["Visiting the flower of", "Heracleum sphondylium"], group: { group: "Hover flies", count: 3 } });
  await app.save();
}

/** New catch, one offered group, save: site, position, method, collector, a numbered vial and its contents are there. */
async function threeTaps(app) {
  let taps = 0;
  const tap = async (target) => { taps += 1; await app.tap(target); };
  await tap(app.link(/^New catch/));
  await app.says(/47\.6138\d*° N/);
  await tap(app.button("Hover flies"));
  await tap(app.button(/^Save catch/));
  await app.page.getByRole("status").filter({ hasText: /^Saved/ }).waitFor();
  assert.equal(taps, 3);
  await app.page.locator("li.event a").first().click();
  await app.says("Mill Meadow");
  await app.says(/47\.6138\d*° N/);
  await app.says(/Hand net/);
  await app.says("I. Varga");
  assert.match((await app.plates()).join(), /^vialIV\d\d-0002$/);
  await app.says("Hover flies");
  assert.equal(await app.page.getByText("Heracleum").count(), 0, "the host is never carried over");
}

/** What is being typed is there after the page was killed in the middle of it, as a system does that wants its memory. */
async function halfWritten(phone, app) {
  await app.open();
  await app.newCatch();
  await app.field("Notes").fill("two more got away");
  phone.tell("Page.crash").catch(() => {});
  await app.page.waitForEvent("crash");
  app.page = await phone.tab();
  await app.ready();
  await app.tap(app.link(/^Go on with catch/));
  assert.equal(await app.field("Notes").inputValue(), "two more got away");
  await app.save();
}

async function killed(phone, app) {
  await phone.kill();
  await phone.reopen();
  app.page = phone.page;
  await app.open();
  await app.events().nth(2).waitFor();
  assert.equal(await app.events().count(), 3);
  await app.says(/3 events/);
}

async function deleted(app) {
  await app.page.locator("li.event a").first().click();
  await app.tap(app.button(/^Delete event/));
  await app.page.getByRole("status").filter({ hasText: "Event deleted" }).waitFor();
  await app.tap(app.button("Undo"));
  await app.open();
  await app.events().nth(2).waitFor();
}
