// What a journey is given: servers and devices that are put away when it ends, and a place for what it leaves.

import { join } from "node:path";

import { serve } from "../../../demo/serve.mjs";
import { Device } from "./browser.mjs";

export class Journey {
  #servers = [];
  #devices = [];
  #drivers = [];

  constructor({ dist, out, engine }) {
    /** The folder of the release. */
    this.dist = dist;
    /** A folder of this journey's own, emptied before it starts. */
    this.out = out;
    /** "chromium", "firefox" or "webkit". */
    this.engine = engine;
  }

  /** Serves the release, or `root`, as a bare static host does; `{base, port, root, headers}`. */
  async serve(options = {}) {
    const server = await serve({ root: this.dist, headers: false, ...options });
    this.#servers.push(server);
    return server;
  }

  /** A telephone: Chromium, 390 × 844, touch. Options: see Device. */
  phone(server, options = {}) {
    return this.#device(server, { ...options, kind: "phone" });
  }

  /** A desk: Chromium, 1280 × 800, mouse and keyboard. */
  desk(server, options = {}) {
    return this.#device(server, { ...options, kind: "desk" });
  }

  async #device(server, options) {
    const device = await Device.launch(server, options);
    this.#devices.push(device);
    return device;
  }

  /** A driver of the engine that the journey runs in; one script drives all three. */
  async driver(server, options = {}) {
    const { launch } = await import(`./${this.engine}.mjs`);
    const driver = await launch(server, options);
    this.#drivers.push(driver);
    return driver;
  }

  /** What went wrong in any browser and was not allowed: errors on the console, policies broken, requests elsewhere. */
  faults() {
    return [...this.#devices, ...this.#drivers].flatMap((each) => each.faults());
  }

  /** A picture of each open page, for whoever looks into a failure. */
  async picture() {
    for (const [at, each] of [...this.#devices, ...this.#drivers].entries()) {
      await each.screenshot(join(this.out, `failed-${at}.png`)).catch(() => {});
    }
  }

  async end() {
    for (const each of [...this.#devices, ...this.#drivers]) await each.close().catch(() => {});
    for (const server of this.#servers) await server.close().catch(() => {});
  }
}
