import assert from "node:assert/strict";

import { accessible } from "../lib/axe.mjs";

export const title = "the theme stands before the first paint, and a browser that cannot run the app is told why";

export default async function (t) {
  const server = await t.serve();
  await themes(t, server);
  await tooOld(t, server);
  await stopped(t, server);
}

async function themes(t, server) {
  for (const [theme, expected] of [["light", "paper"], ["dark", "dark"], ["more", "sun"]]) {
    const phone = await t.phone(server, { theme });
    await phone.goto();
    assert.equal(await themeOf(phone.page), expected);
    await phone.page.evaluate(() => localStorage.setItem("glassine/theme", JSON.stringify("lamp")));
    await phone.page.reload();
    assert.equal(await themeOf(phone.page), "lamp", "what the person chose goes first");
    await phone.page.waitForFunction(() => document.querySelector('meta[name="theme-color"]').content === "#000000");
    await phone.close();
  }
}

function themeOf(page) {
  return page.evaluate(() => document.documentElement.dataset.theme);
}

async function tooOld(t, server) {
  const phone = await t.phone(server);
  await phone.context.addInitScript(() => { delete window.CompressionStream; });
  await phone.goto();
  await phone.page.getByText("This browser is too old").waitFor();
  assert.deepEqual(await visible(phone.page), ["cover-old"]);
  await accessible(phone.page, "too old");
  await phone.close();
}

/** The app's module does not arrive: the page says so, and gives the reason. */
async function stopped(t, server) {
  const phone = await t.phone(server);
  phone.allow(/./);
  await phone.context.route("**/shell_bg.wasm", (route) => route.abort());
  await phone.goto();
  await phone.page.getByText("The page did not start").waitFor();
  assert.deepEqual(await visible(phone.page), ["cover-stopped"]);
  assert.match(await phone.page.locator("#cover-reason").textContent(), /\w/);
  await accessible(phone.page, "stopped");
  await phone.close();
}

function visible(page) {
  return page.evaluate(() => [...document.querySelectorAll("#cover p")].filter((text) => text.checkVisibility()).map(({ id }) => id));
}
