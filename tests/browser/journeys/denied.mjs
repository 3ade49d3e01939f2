import assert from "node:assert/strict";

import { App } from "../pages/app.mjs";

export const title = "without permission for the position a catch is saved all the same, and coordinates can be typed";

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server, { denied: true });
  const app = new App(phone);
  await app.introduce("I. Varga");
  await app.newCatch();
  await app.says("Position is not allowed for this page. Type it, or take the site’s point.");
  await app.fill({ site: "Quarry Steps" });
  await app.save();
  await app.tap(app.link("Whole day"));
  await app.says("coordinates");
  await app.open();
  await app.newCatch();
  await app.tap(app.button("Type it"));
  await app.page.getByRole("textbox", { name: "Coordinates as you have them" }).fill("47° 36′ 49.7″ N 12° 18′ 15.2″ E");
  await app.says(/47\.6138\d*° N/);
  await app.save();
  await app.tap(app.link("Whole day"));
  await app.says("coordinates");
  const texts = await app.events().allInnerTexts();
  assert.deepEqual(texts.map((text) => /coordinates/.test(text)), [true, false], "the typed position counts");
}
