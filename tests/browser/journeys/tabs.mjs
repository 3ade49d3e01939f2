import assert from "node:assert/strict";

import { App } from "../pages/app.mjs";

export const title = "two tabs of one book follow each other and never write the same number twice";

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const desk = await t.desk(server);
  const one = new App(desk);
  await one.introduce("I. Varga");
  const two = new App(desk, await desk.tab());
  await two.ready();
  await one.newCatch();
  await one.fill({ site: "Mill Meadow" });
  await one.save();
  await two.events().first().waitFor();
  await two.newCatch();
  await two.fill({ site: "Kestrel Wood" });
  await two.save();
  await one.events().nth(1).waitFor();
  await one.newCatch();
  await one.fill({ site: "Tarn Beck" });
  await one.save();
  await two.events().nth(2).waitFor();
  const numbers = await two.page.locator("li.event .numbers").allInnerTexts();
  assert.equal(new Set(numbers.filter(Boolean)).size, 3, numbers.join(" | "));
}
