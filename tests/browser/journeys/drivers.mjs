import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const title = "the driver writes, chooses, presses, attaches and catches a download, in every engine";
export const engines = ["chromium", "firefox", "webkit"];

const PAGES = join(dirname(fileURLToPath(import.meta.url)), "../pages");

export default async function (t) {
  const server = await t.serve({ root: PAGES });
  const driver = await t.driver(server);
  await driver.goto();
  await driver.fill({ role: "field", name: "Site" }, "Mill Meadow");
  await driver.fill({ role: "field", name: "Day" }, "2027-06-19");
  await driver.fill({ role: "field", name: /^Meth/ }, "light");
  await driver.catchDownloads();
  await driver.click({ role: "button", name: "Give it away" });
  const expected = "Mill Meadow | 2027-06-19 | light";
  assert.equal(await driver.text("#said"), expected);
  const file = await driver.downloaded();
  assert.deepEqual([file.name, String(file.bytes)], ["said.txt", expected]);

  const path = join(t.out, "log.json.txt");
  writeFileSync(path, "sent in");
  await driver.attach({ role: "field", name: "File" }, path);
  await driver.says("sent in");
  assert.equal(await driver.exists({ role: "button", name: "No such thing" }), false);
  await driver.screenshot(join(t.out, "page.png"));
}
