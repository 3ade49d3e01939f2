import assert from "node:assert/strict";

export const title = "the page starts, installs and starts again with the server gone, in every engine";
export const engines = ["chromium", "firefox", "webkit"];

export default async function (t) {
  const server = await t.serve({ base: "/some/sub/path/" });
  const driver = await t.driver(server);
  await driver.goto();
  await driver.waitFor(() => !document.getElementById("cover"));
  await driver.installed();
  await server.close();
  await driver.restart();
  await driver.goto("#/bench");
  await driver.waitFor(() => !document.getElementById("cover"));
  assert.equal(await driver.evaluate(() => document.querySelector("meta[http-equiv]")), null, "the worker serves the page");
}
