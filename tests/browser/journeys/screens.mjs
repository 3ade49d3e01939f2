// Each screen, filled by the sample, in each theme: the automatic rules of accessibility, and nothing to scroll sideways
// at 320 pixels or with text twice as large.

import assert from "node:assert/strict";

import { violations } from "../lib/axe.mjs";
import { fits, inEachTheme, shoot, stands } from "../lib/shots.mjs";
import { App } from "../pages/app.mjs";

export const title = "every screen of the sample keeps the rules of accessibility in every theme and every width";
export const limit = 600;

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server);
  const app = new App(phone);
  await app.introduce("I. Varga");
  for (const screen of ["", "first", "days", "bench", "labels", "search", "export", "import", "setup"]) await look(t, app, screen, `empty-${screen || "start"}`);
  await app.open();
  await app.tap(app.page.getByText("Load a sample", { exact: true }));
  await app.says("Open now");
  for (const [name, screen] of await filled(app)) await look(t, app, screen, name);
}

/** The screens of the sample with something on them. */
async function filled(app) {
  await app.open("sample/days");
  const day = await app.page.locator("a[href*='/day/']").first().getAttribute("href");
  await app.page.locator("a[href*='/day/']").first().click();
  const event = await app.page.locator("li.event a").first().getAttribute("href");
  const path = (hash) => hash.replace(/^#\//, "");
  return [
    ["start", "sample/"], ["catch", "sample/catch"], ["container", "sample/catch/container"], ["day", path(day)],
    ["event", path(event)], ["bench", "sample/bench/3"], ["bench-none", "sample/bench/9417"], ["labels", "sample/labels"], ["arrange", "sample/labels/rearing"],
    ["search", "sample/search?q=meadow"], ["export", "sample/export?all"], ["setup", "sample/setup"], ["site", "sample/site"],
    ["trap", "sample/trap"], ["habit", "sample/habit"],
  ];
}

async function look(t, app, screen, name) {
  await app.open(screen);
  const wrong = [];
  if ((await sheet(app).evaluate((main) => main.scrollTop)) !== 0) wrong.push(`${name}: does not begin at its top`);
  await inEachTheme(app.page, async (theme) => {
    for (const found of await violations(app.page)) wrong.push(`${name}, ${theme}: ${found}`);
  });
  await shoot(app.page, t.out, name);
  if (!(await stands(app.page))) wrong.push(`${name}: the page itself scrolls`);
  const usual = app.page.viewportSize();
  await app.page.setViewportSize({ width: 320, height: 640 });
  if (!(await fits(app.page))) wrong.push(`${name}: scrolls sideways at 320 pixels`);
  await app.page.setViewportSize(usual);
  await app.page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
  if (!(await fits(app.page))) wrong.push(`${name}: scrolls sideways with text twice as large`);
  await app.page.evaluate(() => { document.documentElement.style.fontSize = ""; });
  await sheet(app).evaluate((main) => main.scrollTo(0, main.scrollHeight)); // the next screen begins at its top all the same
  assert.deepEqual(wrong, []);
}

const sheet = (app) => app.page.locator("main");
