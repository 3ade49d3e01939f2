// The driver of WebKitGTK, over plain WebDriver, on a screen of its own where there is none.

import { spawn } from "node:child_process";
import { existsSync, readdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";

import { Driver } from "./driver.mjs";
import { seek } from "./seek.mjs";

const ELEMENT = "element-6066-11e4-a52e-4f735466cecf"; // W3C WebDriver, section "Elements"
const LIBRARIES = "/usr/lib/x86_64-linux-gnu";
const PATIENCE = 10_000;

class WebKit extends Driver {
  #processes = [];
  #session;

  static async launch(server) {
    const driver = new WebKit(server);
    await driver.#start();
    return driver;
  }

  async #start() {
    const display = process.env.DISPLAY ?? (await this.#screen());
    const port = await freePort();
    const env = { ...process.env, DISPLAY: display, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1", GDK_BACKEND: "x11" };
    this.#processes.unshift(spawn("WebKitWebDriver", [`--port=${port}`], { env, stdio: "ignore" }));
    const base = `http://127.0.0.1:${port}`;
    await answering(`${base}/status`);
    const options = { binary: miniBrowser(), args: ["--automation"] };
    const { sessionId } = await ask(`${base}/session`, "POST", { capabilities: { alwaysMatch: { "webkitgtk:browserOptions": options } } });
    this.#session = `${base}/session/${sessionId}`;
    await this.#say("POST", "/timeouts", { script: 30_000, pageLoad: 60_000 });
    await this.#say("POST", "/window/rect", { width: 390, height: 844 });
  }

  /** A screen that nobody sees; its number. */
  async #screen() {
    const screen = spawn("Xvfb", ["-displayfd", "3", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"], { stdio: ["ignore", "ignore", "ignore", "pipe"] });
    this.#processes.push(screen);
    const number = await new Promise((done, failed) => {
      screen.once("error", failed);
      screen.stdio[3].once("data", (data) => done(String(data).trim()));
    });
    return `:${number}`;
  }

  #say(method, path, body) {
    return ask(this.#session + path, method, body);
  }

  async goto(path = "") {
    const url = this.server.url + path;
    await this.#say("POST", "/url", { url });
    // Nothing can be set up before the page's own scripts, so what breaks while it starts is not seen here.
    await this.evaluate(() => {
      window.faults = [];
      addEventListener("error", (event) => window.faults.push(String(event.message)));
      addEventListener("unhandledrejection", (event) => window.faults.push(String(event.reason)));
      addEventListener("securitypolicyviolation", (event) => window.faults.push(`policy broken: ${event.effectiveDirective} ${event.blockedURI}`));
      return true;
    });
  }

  /** Takes along what the page has seen, before it is left. */
  async #gather() {
    this.console.push(...(await this.evaluate(() => (window.faults ?? []).splice(0))));
  }

  async evaluate(question, ...words) {
    const script = `const done = arguments[arguments.length - 1];
      Promise.resolve((${question})(...JSON.parse(arguments[0]))).then((value) => done({ value }), (fault) => done({ fault: String(fault) }));`;
    const answer = await this.#say("POST", "/execute/async", { script, args: [JSON.stringify(words)] });
    if (answer?.fault) throw new Error(answer.fault);
    return answer?.value;
  }

  async #handle(target) {
    const [question, ...words] = seek.element(target);
    const script = `return (${question})(...JSON.parse(arguments[0]));`;
    const found = await this.#say("POST", "/execute/sync", { script, args: [JSON.stringify(words)] });
    return `/element/${found[ELEMENT]}`;
  }

  async press(target) {
    await this.#gather();
    await this.#say("POST", `${await this.#handle(target)}/click`, {});
  }

  async type(target, text) {
    await this.#say("POST", `${await this.#handle(target)}/value`, { text });
  }

  async give(target, path) {
    await this.#say("POST", `${await this.#handle(target)}/value`, { text: path });
  }

  async screenshot(path) {
    writeFileSync(path, Buffer.from(await this.#say("GET", "/screenshot"), "base64"));
  }

  /** Leaves the page and comes back; automation keeps no profile beyond its process. */
  async restart() {
    await this.#gather();
    await this.#say("POST", "/url", { url: "about:blank" });
  }

  async close() {
    if (this.#session) await this.#say("DELETE", "").catch(() => {});
    for (const child of this.#processes) child.kill("SIGTERM");
  }
}

async function ask(url, method, body) {
  const answer = await fetch(url, { method, body: body && JSON.stringify(body) });
  const { value } = await answer.json();
  if (!answer.ok) throw new Error(`${method} ${url.replace(/.*session\/[^/]*/, "")}: ${value.error}: ${value.message}`);
  return value;
}

async function answering(url) {
  const end = Date.now() + PATIENCE;
  while (Date.now() < end) {
    if (await fetch(url).then((answer) => answer.ok, () => false)) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`${url} does not answer`);
}

async function freePort() {
  const server = createServer();
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  const { port } = server.address();
  await new Promise((done) => server.close(done));
  return port;
}

function miniBrowser() {
  const folders = readdirSync(LIBRARIES).filter((name) => name.startsWith("webkit2gtk-") || name.startsWith("webkitgtk-"));
  const found = folders.map((name) => join(LIBRARIES, name, "MiniBrowser")).find((path) => existsSync(path));
  if (!found) throw new Error("there is no MiniBrowser; apt-get install webkit2gtk-driver");
  return found;
}

export const launch = WebKit.launch;
