import assert from "node:assert/strict";
import { appendFileSync } from "node:fs";

import { copyOf, discard, pathOf, rewrite } from "../lib/dist.mjs";

export const title = "the page installs, starts with the server gone, and waits to be told of a new version";

export default async function (t) {
  for (const base of ["/", "/some/sub/path/"]) await coldStart(t, base);
  await share(t);
  await wrongBytes(t);
  await update(t);
  await rescue(t);
}

async function coldStart(t, base) {
  const server = await t.serve({ base });
  const phone = await t.phone(server);
  await phone.goto();
  await started(phone.page);
  await phone.installed();
  await phone.page.reload();
  await started(phone.page);
  assert.equal(await policyOf(phone.page), "header", "the page that the worker serves carries its policy in the header only");

  await server.close();
  await phone.kill();
  await phone.reopen();
  await phone.goto();
  await started(phone.page);
  await phone.goto("no/such/place?x=1");
  await started(phone.page);
  assert.equal(new URL(phone.page.url()).pathname, base, "an unknown path leads to the start");
  await phone.close();
}

/** A file that another app sends arrives with no network and is kept for the page, which is led to it. */
async function share(t) {
  const server = await t.serve({ base: "/shared/" });
  const phone = await t.phone(server);
  await phone.goto();
  await started(phone.page);
  await phone.installed();
  await server.close();
  const received = await phone.page.evaluate(async () => {
    const form = new FormData();
    form.append("file", new File(["{}"], "Käfer 2027.json.txt", { type: "text/plain" }));
    const answer = await fetch("./received", { method: "POST", body: form, redirect: "manual" });
    const kept = await caches.match(new URL("received/file", document.baseURI));
    return { answer: answer.type, name: decodeURIComponent(kept.headers.get("x-name")), text: await kept.text() };
  });
  assert.deepEqual(received, { answer: "opaqueredirect", name: "Käfer 2027.json.txt", text: "{}" });

  const sender = await phone.context.newPage();
  await sender.setContent(`<form method="post" enctype="multipart/form-data" action="${server.url}received">
    <input type="file" name="file"><button>Send</button></form>`);
  await sender.setInputFiles("input", { name: "log.json.txt", mimeType: "text/plain", buffer: Buffer.from("{}") });
  await sender.click("button");
  await started(sender);
  assert.ok(sender.url().startsWith(`${server.url}#/import`), sender.url());
  await phone.close();
}

/** A file whose bytes are not those of the list: nothing is installed, the page still works. */
async function wrongBytes(t) {
  const root = copyOf(t.dist);
  appendFileSync(`${root}/${pathOf(root, "manifest.webmanifest")}`, "\n");
  const server = await t.serve({ root });
  const phone = await t.phone(server);
  phone.allow(/./);
  await phone.goto();
  await started(phone.page);
  const left = await phone.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.register("./sw.js");
    const worker = registration.installing;
    while (worker.state === "installing") {
      await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
    }
    return { state: worker.state, caches: (await caches.keys()).filter((name) => name.startsWith("app-")) };
  });
  assert.deepEqual(left, { state: "redundant", caches: [] });
  await phone.close();
  discard(root);
}

/** New bytes under old names: announced, kept waiting, used when told, and the old bytes gone. */
async function update(t) {
  const root = copyOf(t.dist);
  const first = await t.serve({ root });
  const phone = await t.phone(first);
  await phone.goto();
  await phone.installed();
  const other = await phone.tab();
  await started(other);
  assert.equal(await tint(phone.page), "old");

  const style = pathOf(root, "cover.css");
  rewrite(root, "second", { [style]: (text) => `${text}\n:root { --version: new; }\n` });
  await phone.page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    await registration.update();
    const worker = registration.installing ?? registration.waiting;
    while (worker.state === "installing") {
      await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
    }
  });
  assert.equal(await waiting(phone.page), true, "the new version waits");
  await phone.page.reload();
  await started(phone.page);
  assert.equal(await waiting(phone.page), true, "a reload does not switch");
  assert.equal(await tint(phone.page), "old", "the old version goes on, whole");

  await phone.page.evaluate(async () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => { window.switched = true; }, { once: true });
    (await navigator.serviceWorker.getRegistration()).waiting.postMessage({ type: "switch" });
  });
  await phone.page.waitForFunction(() => window.switched, null, { timeout: 60_000 });
  for (const page of [phone.page, other]) {
    await page.reload();
    await started(page);
    assert.equal(await tint(page), "new");
  }
  await first.close();
  await phone.page.reload();
  await started(phone.page);
  assert.equal(await tint(phone.page), "new", "the new version is the one that starts with the server gone");
  assert.equal((await phone.page.evaluate(() => caches.keys())).filter((name) => name.startsWith("app-")).length, 1, "the old version has left");
  await phone.close();
  discard(root);
}

/** A version that cannot start is left for the next one without anybody's help. */
async function rescue(t) {
  const root = copyOf(t.dist);
  const script = pathOf(root, "/shell.js");
  rewrite(root, "broken", { [script]: (text) => `throw new Error("broken");\n${text}` });
  const server = await t.serve({ root });
  const phone = await t.phone(server);
  phone.allow(/broken/);
  await phone.goto();
  await phone.installed();
  await phone.page.getByText("The page did not start").waitFor();
  rewrite(root, "mended", { [script]: (text) => text.replace(/^.*\n/, "") });
  await phone.page.reload();
  await started(phone.page);
  await phone.close();
  discard(root);
}

/** The app has taken the cover away, and is dressed in a theme. */
async function started(page) {
  await page.waitForFunction(() => document.readyState === "complete" && !document.getElementById("cover"));
  assert.match(await page.evaluate(() => document.documentElement.dataset.theme), /^(paper|sun|dark|lamp)$/);
}

function tint(page) {
  return page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--version") || "old");
}

function waiting(page) {
  return page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).waiting !== null);
}

function policyOf(page) {
  return page.evaluate(async () => {
    const meta = document.querySelector("meta[http-equiv]") !== null;
    const header = (await fetch(location.href.split("#")[0])).headers.get("content-security-policy");
    return meta ? "meta" : header?.includes("default-src 'none'") ? "header" : "none";
  });
}
