// The map of a day under one finger, two fingers, buttons and keys; and how long its frames take with ten thousand
// events, which is told and not judged. The events are invented.

import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { crc32 } from "node:zlib";

import { violations } from "../lib/axe.mjs";
import { fits, inEachTheme, shoot } from "../lib/shots.mjs";
import { App } from "../pages/app.mjs";

export const title = "the map of a day is dragged, stretched and tapped, does not catch the page's scroll, and works by keys";
export const limit = 300;

const MANY = 10_000;

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server);
  const app = new App(phone);
  await app.introduce("I. Varga");
  await app.open();
  await app.tap(app.page.getByText("Load a sample", { exact: true }));
  await app.says("Open now");
  const day = await busiest(app);
  await looks(t, app);
  await fingers(app, day);
  await keys(t, app, day, server);
  await many(t, app);
}

const map = (page) => page.getByRole("application", { name: "Where the events lie" });
const shows = (page) => page.locator("#map-shows");
const across = async (page) => parse(await shows(page).innerText());
const numbers = (page) => map(page).locator("text:not(.degree)[text-anchor=middle]");

/** The metres from side to side. */
function parse(words) {
  const [, number, unit] = /^([\d.,]+) (k?m) from side/.exec(words);
  return Number(number.replace(",", "")) * (unit === "km" ? 1000 : 1);
}

/** Opens the sample's day with the most events; its path. */
async function busiest(app) {
  await app.open("sample/days");
  const days = await app.page.locator("a[href*='/day/']").evaluateAll((links) =>
    links.map((link) => ({ href: link.getAttribute("href"), count: Number(/(\d+) events?/.exec(link.closest("li, tr, div").innerText)?.[1] ?? 0) })));
  const { href } = days.sort((a, b) => b.count - a.count)[0];
  await app.open(href.replace(/^#\//, ""));
  await map(app.page).scrollIntoViewIfNeeded();
  return href.replace(/^#\//, "");
}

async function looks(t, app) {
  const { page } = app;
  const wrong = [];
  await inEachTheme(page, async (theme) => {
    for (const found of await violations(page)) wrong.push(`${theme}: ${found}`);
  });
  await shoot(page, t.out, "map");
  assert.deepEqual(wrong, []);
  for (const button of await page.locator("#map .commands button").all()) {
    const { width, height } = await button.boundingBox();
    assert.ok(width >= 44 && height >= 44, "a button is large enough for a thumb");
  }
  await page.setViewportSize({ width: 320, height: 640 });
  assert.ok(await fits(page), "nothing scrolls sideways at 320 pixels");
  await map(page).evaluate((chart) => chart.scrollIntoView({ block: "center" }));
  await page.screenshot({ path: join(t.out, "map-320.png") });
  await page.setViewportSize({ width: 390, height: 844 });
}

async function fingers(app, day) {
  const { page } = app;
  const all = await across(page);
  const top = () => page.locator(".sheet").evaluate((sheet) => sheet.scrollTop);

  await map(page).evaluate((chart) => chart.scrollIntoView({ block: "center" }));
  const before = await top();
  await swipe(app, 0, -120);
  assert.ok((await top()) > before + 40, "one finger scrolls the page over the map");
  await rests(page);
  assert.equal(await across(page), all, "and leaves the map where it was");

  await map(page).evaluate((chart) => chart.scrollIntoView({ block: "center" }));
  const event = await numbers(page).first().boundingBox();
  await swipe(app, 70, 0);
  const moved = await numbers(page).first().boundingBox();
  assert.ok(Math.abs(moved.x - event.x - 70) < 20, `sideways the map goes with the finger: ${moved.x - event.x}`);

  await app.tap(app.button("All"));
  await pinch(app, 40, 90);
  await page.waitForFunction((before) => !document.getElementById("map-shows").innerText.startsWith(before), said(all));
  assert.ok((await across(page)) < all / 1.6, "two fingers stretch it");
  await app.tap(app.button("All"));

  const free = await emptyPlace(page);
  await page.touchscreen.tap(free.x, free.y);
  await app.says("One finger moves the map.");
  const held = await top();
  const start = await numbers(page).first().boundingBox();
  await swipe(app, 0, -60);
  assert.equal(await top(), held, "once the map was entered, the page stays");
  const end = await numbers(page).first().boundingBox();
  assert.ok(Math.abs(end.y - start.y + 60) < 20, `and the map goes with the finger: ${end.y - start.y}`);
  await app.tap(app.button("Leave the map"));
  await app.says(/Two fingers move and stretch the map/);

  await app.tap(app.button("All"));
  for (let closer = 0; closer < 12 && !(await tapped(app)); closer += 1) await app.tap(app.button("Closer"));
  assert.match(page.url(), /\/(event|open)\//, "a tap on an event opens it");
  await page.goBack();
  await app.ready();
  assert.ok(page.url().endsWith(day));
}

/** Taps the first event that is drawn alone; false while none is. */
async function tapped(app) {
  const { page } = app;
  const chart = await map(page).boundingBox();
  for (const number of await numbers(page).all()) {
    const box = await number.boundingBox();
    const words = await number.textContent();
    const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 - 18 };
    if (!/^\d+$/.test(words) || at.y < chart.y + 8 || at.y > chart.y + chart.height - 50 || at.x < chart.x + 12 || at.x > chart.x + chart.width - 12) continue;
    await page.touchscreen.tap(at.x, at.y);
    if (await page.waitForURL(/\/(event|open)\//, { timeout: 1500 }).then(() => true, () => false)) return true;
  }
  return false;
}

async function keys(t, app, day, server) {
  const desk = await t.desk(server);
  const { page } = desk;
  const other = new App(desk);
  await other.introduce("I. Varga");
  await other.open();
  await other.tap(page.getByText("Load a sample", { exact: true }));
  await other.says("Open now");
  await other.open(day);
  await shoot(page, t.out, "map-desk");
  await map(page).focus();
  await rests(page);
  const all = await across(page);
  await page.keyboard.press("+");
  await page.keyboard.press("+");
  await rests(page);
  assert.ok(Math.abs((await across(page)) / all - 1 / 2.56) < 0.05, "plus comes closer");
  const before = await numbers(page).first().getAttribute("x");
  await page.keyboard.press("ArrowRight");
  assert.notEqual(await numbers(page).first().getAttribute("x"), before);
  await page.keyboard.press("0");
  await rests(page);
  assert.equal(await across(page), all, "0 shows all");
  await page.mouse.move(...Object.values(await middle(page)));
  await page.mouse.wheel(0, 480);
  await rests(page);
  assert.ok((await across(page)) > all * 3, "the wheel stretches a map that has the focus");
  for (let wider = 0; wider < 16; wider += 1) await page.keyboard.press("-");
  await page.waitForFunction(() => document.querySelector(".coast")?.getAttribute("d").length > 1000);
  await rests(page);
  await page.screenshot({ path: join(t.out, "map-wide.png") });
  await page.keyboard.press("0");
  await rests(page);
  await other.says(/At the cross: event/);
  for (let closer = 0; closer < 12 && !/\/(event|open)\//.test(page.url()); closer += 1) {
    await page.keyboard.press("Enter");
    await page.waitForTimeout(100); // the next Enter must meet the closer look
  }
  assert.match(page.url(), /\/(event|open)\//, "Enter opens what lies at the cross");
}

/** Ten thousand events of one day: their map moves, and the time of its frames is told. */
async function many(t, app) {
  const { page } = app;
  const path = join(t.out, "many.json");
  writeFileSync(path, invented(MANY));
  await app.open("import");
  await app.pick(/^Pick (a|another) file/, path);
  await app.button(/^Import /).waitFor({ timeout: 60_000 });
  await app.tap(app.button(/^Import /));
  await page.getByText("imported", { exact: false }).first().waitFor({ timeout: 60_000 });
  await app.open("day/2027-06-19");
  await app.says(/10,000 of 10,000 events/);
  await map(page).evaluate((chart) => chart.scrollIntoView({ block: "center" }));
  const drawn = (await numbers(page).allTextContents()).reduce((sum, words) =>
    sum + (words.includes(" ") ? words.split(" ").length : 0) + (/^\d{1,3}(,\d{3})*$/.test(words) ? Number(words.replace(",", "")) : 0), 0);
  assert.equal(drawn, MANY, "the circles count every event");
  await shoot(page, t.out, "map-many");
  const free = await middle(page);
  const dragged = await frames(page, async () => {
    for (let turn = 0; turn < 3; turn += 1) await swipe(app, turn % 2 ? 90 : -90, 0, 30, free);
  });
  const stretched = await frames(page, async () => {
    await pinch(app, 30, 120, 30);
    await pinch(app, 120, 30, 30);
  });
  console.log(`          map of ${MANY} events: frames while dragged ${dragged}; while stretched ${stretched}`);
}

/** Milliseconds from frame to frame while something happens. */
async function frames(page, deed) {
  await page.evaluate(() => {
    window.frames_seen = [];
    let last = performance.now();
    const tick = (now) => {
      window.frames_seen?.push(now - last);
      last = now;
      if (window.frames_seen) requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  await deed();
  const seen = await page.evaluate(() => {
    const seen = window.frames_seen.sort((a, b) => a - b);
    window.frames_seen = null;
    return seen;
  });
  const at = (share) => seen[Math.min(seen.length - 1, Math.floor(seen.length * share))].toFixed(0);
  return `${at(0.5)} ms in the middle, ${at(0.95)} ms at 95 %, ${at(1)} ms at most`;
}

const said = (metres) => (metres < 1000 ? `${metres} m` : `${metres / 1000} km`);

/** The map says nothing new for longer than it waits before it speaks. */
async function rests(page) {
  let before;
  for (let words = null; words !== before; words = await shows(page).innerText()) {
    before = await shows(page).innerText();
    await page.waitForTimeout(600); // it speaks 400 ms after it came to rest
  }
}

async function middle(page) {
  const { x, y, width, height } = await map(page).boundingBox();
  return { x: x + width / 2, y: y + height / 2 };
}

/** A place of the map with no event near it. */
async function emptyPlace(page) {
  const { x, y, width, height } = await map(page).boundingBox();
  const taken = await Promise.all((await numbers(page).all()).map((number) => number.boundingBox()));
  for (let down = 30; down < height - 70; down += 20) {
    for (let right = 30; right < width - 30; right += 20) {
      const away = taken.map((box) => Math.hypot(box.x + box.width / 2 - x - right, box.y + box.height / 2 - y - down));
      if (away.every((pixels) => pixels > 70)) return { x: x + right, y: y + down };
    }
  }
  throw new Error("events lie everywhere");
}

/** One finger moves over the map. */
async function swipe(app, right, down, steps = 10, from) {
  const { x, y } = from ?? (await middle(app.page));
  await touches(app, (share) => [{ x: x + right * share, y: y + down * share }], steps);
}

/** Two fingers move apart or together, level round the middle of the map. */
async function pinch(app, from, to, steps = 10) {
  const { x, y } = await middle(app.page);
  const half = (share) => (from + (to - from) * share) / 2;
  await touches(app, (share) => [{ x: x - half(share), y, id: 1 }, { x: x + half(share), y, id: 2 }], steps);
}

async function touches(app, places, steps) {
  const session = await app.device.context.newCDPSession(app.page);
  const touch = (type, touchPoints) => session.send("Input.dispatchTouchEvent", { type, touchPoints });
  await touch("touchStart", places(0));
  for (let step = 1; step <= steps; step += 1) await touch("touchMove", places(step / steps));
  await touch("touchEnd", []);
  await session.detach();
}

/** A log file of one day's events, on a piece of ground of 10 by 10 kilometres. */
function invented(count) {
  const replica = "0000000000000001";
  const entered = "2027-06-19T22:00:00+02:00";
  const hex = (number, digits) => number.toString(16).padStart(digits, "0");
  const event = (at) => {
    const id = `018f0000-0000-7000-8000-${hex(at, 12)}`;
    const clock = `${String(8 + Math.floor(at / 1000)).padStart(2, "0")}:${String(Math.floor(at / 17) % 60).padStart(2, "0")}`;
    const [north, east] = [(at * 0.618034) % 1, (at * 0.754878) % 1];
    const fields = {
      caught: { from: `2027-06-19T${clock}`, offset_minutes: 120 },
      place: { datum: "WGS84", how: "device", latitude: 47.6 + north * 0.09, longitude: 12.3 + east * 0.13, radius_m: 9 },
    };
    const stamp = [replica, at + 1, entered];
    return { kind: "event", id, ...fields, versions: { seen: { [replica]: at + 1 }, at: { caught: stamp, place: stamp } } };
  };
  const head = `{"format":"glassine-log","version":1,"written":"${entered}","device":"Generated","person":"A. Marlow","app":"0.1.0","book":"own",\n` +
    `"replicas":{\n"${replica}":{"device":"Generated","person":"A. Marlow","app":"0.1.0"}\n},\n"records":[\n`;
  const records = Array.from({ length: count }, (_, at) => JSON.stringify(event(at))).join(",\n");
  const body = `${head}${records}\n],\n`;
  return `${body}"end":{"records":${count},"checksum":"${hex(crc32(body), 8)}"}}\n`;
}
