// The driver of Firefox, over WebDriver BiDi.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

import puppeteer from "puppeteer-core";

import { Driver } from "./driver.mjs";
import { seek } from "./seek.mjs";

const FIREFOX = process.env.FIREFOX ?? "/usr/bin/firefox-esr";
const VIEWPORT = { width: 390, height: 844 };

class Firefox extends Driver {
  #browser;
  #page;
  #data = mkdtempSync(join(tmpdir(), "glassine-firefox-"));

  static async launch(server) {
    const driver = new Firefox(server);
    await driver.#start();
    return driver;
  }

  async #start() {
    this.#browser = await puppeteer.launch({
      browser: "firefox",
      executablePath: FIREFOX,
      headless: true,
      userDataDir: this.#data,
      defaultViewport: VIEWPORT,
      args: ["--width=390", "--height=844"],
      // Remote settings and the like would fill the log; the page cannot reach them anyway.
      extraPrefsFirefox: { "app.normandy.enabled": false, "network.captive-portal-service.enabled": false },
    });
    this.#page = (await this.#browser.pages())[0] ?? (await this.#browser.newPage());
    await this.#page.setViewport(VIEWPORT);
    this.#page.on("console", (message) => { if (message.type() === "error") this.console.push(message.text()); });
    this.#page.on("pageerror", (error) => this.console.push(String(error)));
    this.#page.on("request", (request) => {
      const ours = request.url().startsWith(`${this.server.origin}/`) || /^(blob|data|about):/.test(request.url());
      if (!ours) this.console.push(`a request left the origin: ${request.url()}`);
    });
    await this.#page.evaluateOnNewDocument(() => addEventListener("securitypolicyviolation", (event) =>
      console.error("policy broken:", event.effectiveDirective, event.blockedURI)));
  }

  async goto(path = "") {
    await this.#page.goto(this.server.url + path);
  }

  evaluate(question, ...words) {
    return this.#page.evaluate(`(${question})(...${JSON.stringify(words)})`);
  }

  async #handle(target) {
    const [question, ...words] = seek.element(target);
    return (await this.#page.evaluateHandle(`(${question})(...${JSON.stringify(words)})`)).asElement();
  }

  async press(target) {
    await (await this.#handle(target)).click();
  }

  async type(target, text) {
    await (await this.#handle(target)).type(text);
  }

  async give(target, path) {
    await (await this.#handle(target)).uploadFile(path);
  }

  screenshot(path) {
    return this.#page.screenshot({ path });
  }

  /** A new process on the same profile. */
  async restart() {
    await this.#browser.close();
    await this.#start();
  }

  async close() {
    await this.#browser.close();
    rmSync(this.#data, { recursive: true, force: true, maxRetries: 5 });
  }
}

export const launch = Firefox.launch;
