// Draws the icons of public/icons anew from icon.svg: node tests/browser/icons.mjs
// The bitmaps are committed; run this after the drawing has changed.

import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

import { chromium } from "playwright-core";

import { CHROMIUM } from "./lib/browser.mjs";

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), "../../public/icons");
const GROUND = "#f5f6f1";
// A maskable icon keeps what matters within the inner 80 %: the drawing is made that much smaller.
const SIZES = [["icon-192.png", 192, 1], ["icon-512.png", 512, 1], ["maskable-512.png", 512, 0.8], ["apple-touch-180.png", 180, 0.94]];

const drawing = readFileSync(join(FOLDER, "icon.svg"), "utf8");
const browser = await chromium.launch({ executablePath: CHROMIUM });
const page = await browser.newPage();
for (const [name, size, scale] of SIZES) {
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(`<style>body{margin:0;background:${GROUND};display:grid;place-items:center;height:100vh}
    svg{width:${scale * 100}vw}</style>${drawing}`);
  await page.screenshot({ path: join(FOLDER, name) });
}
await browser.close();
