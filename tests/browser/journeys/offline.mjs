import assert from "node:assert/strict";

import { App } from "../pages/app.mjs";

export const title = "with the server gone every screen starts cold, and a reload in the middle of an entry loses nothing";

const SCREENS = ["", "catch", "days", "bench", "labels", "setup", "search", "export", "import", "site"];

export default async function (t) {
  const server = await t.serve({ base: "/a/b/" });
  const phone = await t.phone(server, { place: { latitude: 47.6, longitude: 12.3, accuracy: 12 } });
  const app = new App(phone);
  await app.introduce("I. Varga");
  await phone.installed();
  await server.close();
  await phone.kill();
  await phone.reopen();
  app.page = phone.page;
  for (const screen of SCREENS) await app.open(screen);
  await app.open("catch");
  await app.field("Notes").fill("under the bridge");
  await app.page.reload();
  await app.ready();
  assert.equal(await app.field("Notes").inputValue(), "under the bridge");
  await app.fill({ site: "Tarn Beck", group: { group: "Mayflies", count: 2 } });
  await app.save();
  await app.open("bench/1");
  await app.says("Tarn Beck");
  await app.page.locator(".label-proof svg path").first().waitFor();
}
