// The driver of Chromium, on a telephone's profile.

import { Device } from "./browser.mjs";
import { Driver } from "./driver.mjs";
import { seek } from "./seek.mjs";

class Chromium extends Driver {
  #device;

  static async launch(server, options) {
    const driver = new Chromium(server);
    driver.#device = await Device.launch(server, { kind: "phone", ...options });
    return driver;
  }

  goto(path = "") {
    return this.#device.goto(path);
  }

  evaluate(question, ...words) {
    const call = `(${question})(...${JSON.stringify(words)})`;
    return this.#device.page.evaluate(call);
  }

  async #handle(target) {
    const [question, ...words] = seek.element(target);
    return (await this.#device.page.evaluateHandle(`(${question})(...${JSON.stringify(words)})`)).asElement();
  }

  async press(target) {
    await (await this.#handle(target)).click();
  }

  async type(target, text) {
    await (await this.#handle(target)).type(text);
  }

  async give(target, path) {
    await (await this.#handle(target)).setInputFiles(path);
  }

  screenshot(path) {
    return this.#device.screenshot(path);
  }

  /** A new process on the same profile. */
  async restart() {
    await this.#device.kill();
    await this.#device.reopen();
  }

  faults() {
    return this.#device.faults();
  }

  close() {
    return this.#device.close();
  }
}

export const launch = Chromium.launch;
