// A Chromium with a profile of its own that outlives its process, and a record of all that it asked the network for.
//
// All traffic but that to the page's own server goes to a proxy that answers nothing and keeps what was asked, so
// that a request from a worker, or to another port, cannot slip by.

import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";

import { chromium } from "playwright-core";

const KINDS = {
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 },
  desk: { viewport: { width: 1280, height: 800 } },
};

const QUIET = [
  "--disable-background-networking", "--disable-component-update", "--disable-domain-reliability", "--disable-sync",
  "--no-first-run",
];

// What the browser asks of its maker by itself, whatever page is open; a page asking there shows in `requests`.
const MAKERS = /^(http:\/\/)?([a-z0-9.-]+\.)?(google|googleapis|gvt1)\.com[:/]/;

export const CHROMIUM = process.env.CHROMIUM ?? "/usr/bin/chromium";

export class Device {
  #options;
  #context;
  #proxy;
  #elsewhere = [];
  #console = [];
  #allowed = [];
  #live = true;

  /**
   * Launches a device for a server.
   * Options: `kind` "phone" or "desk"; `place` {latitude, longitude, accuracy} grants geolocation, `denied` true
   * refuses it; `theme` "light", "dark" or "more" (contrast); `zone` and `language` as the system says them;
   * `throttle` slows the processor so many times; `also` lists the ports of further servers that it may reach.
   */
  static async launch(server, options) {
    const device = new Device();
    device.#options = { data: mkdtempSync(join(tmpdir(), "glassine-profile-")), ...options };
    device.server = server;
    await device.#start();
    return device;
  }

  async #start() {
    const { kind, data, place, denied, theme, zone, language, throttle, also = [] } = this.#options;
    const reached = [this.server.port, ...also].map((port) => `127.0.0.1:${port}`);
    this.#proxy = await blackHole(this.#elsewhere);
    /** Each request seen: {url, method}. */
    this.requests = [];
    this.#context = await chromium.launchPersistentContext(data, {
      ...KINDS[kind],
      executablePath: CHROMIUM,
      acceptDownloads: true,
      timezoneId: zone ?? "Europe/Vienna",
      locale: language ?? "en-GB",
      colorScheme: theme === "dark" ? "dark" : "light",
      contrast: theme === "more" ? "more" : "no-preference",
      ...(place && { geolocation: place, permissions: ["geolocation"] }),
      args: [
        ...QUIET,
        `--proxy-server=http://127.0.0.1:${this.#proxy.address().port}`,
        `--proxy-bypass-list=<-loopback>;${reached.join(";")}`,
      ],
    });
    this.#live = true;
    this.#context.setDefaultTimeout(15_000);
    this.#context.on("request", (request) => this.requests.push({ url: request.url(), method: request.method() }));
    this.#context.on("console", (message) => { if (message.type() === "error") this.#console.push(told(message)); });
    this.#context.on("weberror", (error) => this.#console.push(String(error.error())));
    await this.#context.addInitScript(() => addEventListener("securitypolicyviolation", (event) =>
      console.error("policy broken:", event.effectiveDirective, event.blockedURI)));
    this.page = this.#context.pages()[0] ?? (await this.#context.newPage());
    if (throttle) await this.tell("Emulation.setCPUThrottlingRate", { rate: throttle });
    if (denied) {
      const { origin } = this.server;
      await this.tell("Browser.setPermission", { permission: { name: "geolocation" }, setting: "denied", origin });
    }
  }

  /** Playwright's browser context, for what this class does not do. */
  get context() {
    return this.#context;
  }

  /** Sends a command of the DevTools protocol to the page's session. */
  async tell(command, words) {
    const session = await this.#context.newCDPSession(this.page);
    return session.send(command, words);
  }

  /** Opens a path below the app's root, such as "#/bench". */
  goto(path = "") {
    return this.page.goto(this.server.url + path);
  }

  /** Another tab of the same browser. */
  async tab(path = "") {
    const page = await this.#context.newPage();
    await page.goto(this.server.url + path);
    return page;
  }

  /** Resolves when this version's service worker serves the page. */
  async installed() {
    // Asked again and again: the page may be loaded anew meanwhile, and a slow machine needs long for the whole copy.
    await this.page.waitForFunction(() => navigator.serviceWorker.controller !== null, null, { timeout: 60_000 });
  }

  /** Cuts the network off, or joins it again. */
  offline(cut = true) {
    return this.#context.setOffline(cut);
  }

  /** Kills the browser as a dying phone would: no warning, no last write. */
  async kill() {
    const gone = new Promise((done) => this.#context.once("close", done));
    process.kill(processOf(this.#options.data), "SIGKILL");
    await gone;
    await this.#stopped();
  }

  /** Ends the browser in order. */
  async leave() {
    await this.#context.close();
    await this.#stopped();
  }

  /** Starts the browser again, a new process on the same profile; may change options. */
  async reopen(options = {}) {
    if (this.#live) await this.leave();
    Object.assign(this.#options, options);
    await this.#start();
  }

  /** Faults whose text matches are expected from now on. */
  allow(pattern) {
    this.#allowed.push(pattern);
  }

  /** Forgets all that was seen so far. */
  forgive() {
    this.#console.length = this.#elsewhere.length = this.requests.length = 0;
  }

  /** What went wrong and was not allowed. */
  faults() {
    const strange = this.requests.map(({ url }) => url).filter((url) => !this.#isOurs(url));
    const proxied = this.#elsewhere.filter((url) => !MAKERS.test(url));
    return [...new Set([
      ...this.#console.filter((text) => !this.#allowed.some((pattern) => pattern.test(text))),
      ...[...strange, ...proxied].map((url) => `a request left the origin: ${url}`),
    ])];
  }

  #isOurs(url) {
    return url.startsWith(`${this.server.origin}/`) || /^(blob:|data:|about:|chrome-extension:)/.test(url);
  }

  screenshot(path) {
    return this.page.screenshot({ path });
  }

  async #stopped() {
    this.#live = false;
    this.#proxy.closeAllConnections();
    await new Promise((done) => this.#proxy.close(done));
  }

  async close() {
    if (this.#live) await this.leave();
    rmSync(this.#options.data, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** What an error on the console says, and of which address. */
function told(message) {
  const { url } = message.location();
  return url ? `${message.text()} (${url})` : message.text();
}

/** A proxy that refuses all, and keeps what it was asked for. */
async function blackHole(asked) {
  const server = createServer((request, response) => {
    asked.push(request.url);
    response.writeHead(502).end();
  });
  server.on("connect", (request, socket) => {
    asked.push(request.url);
    socket.on("error", () => {}); // a browser that is killed hangs up without a word
    socket.end("HTTP/1.1 502 Nothing leaves\r\n\r\n");
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  return server;
}

/** The browser process that holds a profile: the one without a type of child. */
function processOf(data) {
  for (const name of readdirSync("/proc").filter((entry) => /^\d+$/.test(entry))) {
    const words = commandOf(name);
    if (words.includes(`--user-data-dir=${data}`) && !words.some((word) => word.startsWith("--type="))) return Number(name);
  }
  throw new Error(`no browser holds ${data}`);
}

function commandOf(name) {
  try {
    return readFileSync(`/proc/${name}/cmdline`, "utf8").split("\0");
  } catch {
    return [];
  }
}
