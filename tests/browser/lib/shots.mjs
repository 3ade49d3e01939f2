// Pictures of a screen, in one theme or in each.

import { mkdirSync } from "node:fs";
import { join } from "node:path";

export const THEMES = ["paper", "sun", "dark", "lamp"];

/** Dresses the page in a theme as the shell does, without a reload. */
export async function dress(page, theme) {
  await page.evaluate((name) => { document.documentElement.dataset.theme = name; }, theme);
  await page.waitForFunction((name) => document.documentElement.dataset.theme === name, theme);
}

/** Calls `look` with the page in each theme, one after another. */
export async function inEachTheme(page, look) {
  const before = await page.evaluate(() => document.documentElement.dataset.theme);
  for (const theme of THEMES) {
    await dress(page, theme);
    await look(theme);
  }
  await dress(page, before);
}

/** Pictures `name-theme.png` of the page in each theme, in `folder`. */
export async function shoot(page, folder, name) {
  mkdirSync(folder, { recursive: true });
  await inEachTheme(page, (theme) => page.screenshot({ path: join(folder, `${name}-${theme}.png`) }));
}

/** True when only the sheet scrolls, not the page around it: the foot stays where the thumb is. */
export function stands(page) {
  return page.evaluate(() => document.documentElement.scrollHeight <= innerHeight);
}

/** True when nothing can be scrolled sideways. */
export function fits(page) {
  return page.evaluate(() => [document.documentElement, ...document.querySelectorAll(".sheet")]
    .every((element) => element.scrollWidth <= element.clientWidth));
}
