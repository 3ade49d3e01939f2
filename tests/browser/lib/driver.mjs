// One way to drive three engines: what a journey that must run in all of them may do.
//
// An engine answers five questions (`evaluate`, `press`, `type`, `give`, `screenshot`) and how it starts and ends;
// the rest is here. A target is a CSS selector, or {role, name}: the accessible name, whole, or a pattern.

import { readFileSync } from "node:fs";

import { seek } from "./seek.mjs";

const PATIENCE = 15_000;
const PAUSE = 50;

export class Driver {
  constructor(server) {
    this.server = server;
    this.console = [];
  }

  /** Waits until the function, run in the page, answers something true; returns that. */
  async waitFor(question, ...words) {
    const end = Date.now() + PATIENCE;
    for (let fault; ; ) {
      try {
        const answer = await this.evaluate(question, ...words);
        if (answer) return answer;
      } catch (reason) {
        fault = reason; // a page that is being left cannot answer
      }
      if (Date.now() > end) throw new Error(`waited ${PATIENCE / 1000} s for ${question} ${JSON.stringify(words)}`, { cause: fault });
      await new Promise((done) => setTimeout(done, PAUSE));
    }
  }

  /** Waits until the target can be seen. */
  see(target) {
    return this.waitFor(...seek.visible(target));
  }

  /** Waits until the page says this text somewhere. */
  says(text) {
    return this.waitFor((wanted) => document.body.innerText.replace(/\s+/g, " ").includes(wanted), text);
  }

  async exists(target) {
    return this.evaluate(...seek.visible(target));
  }

  async click(target) {
    await this.waitFor(...seek.ready(target));
    await this.press(target);
  }

  /** Writes into a field in place of what is there: by keys, or by value where keys depend on the engine (dates, choices). */
  async fill(target, text) {
    await this.see(target);
    if (await this.evaluate(...seek.set(target, text))) return;
    await this.type(target, text);
  }

  /** Gives a file to a file input, seen or not. */
  async attach(target, path) {
    await this.waitFor(...seek.there(target));
    await this.give(target, path);
  }

  async text(target) {
    await this.see(target);
    return this.evaluate(...seek.text(target));
  }

  /** Resolves when this version's service worker serves the page. */
  installed() {
    return this.waitFor(() => navigator.serviceWorker.controller !== null);
  }

  /** Stands in for the download of a file from now on, until the page is left: it is kept for `downloaded`. */
  catchDownloads() {
    return this.evaluate(() => {
      window.caught = [];
      const made = new Map();
      const make = URL.createObjectURL;
      URL.createObjectURL = (blob) => {
        const url = make.call(URL, blob);
        made.set(url, blob);
        return url;
      };
      const click = HTMLAnchorElement.prototype.click;
      HTMLAnchorElement.prototype.click = function () {
        if (!this.download) return click.call(this);
        const file = { name: this.download };
        window.caught.push(file);
        made.get(this.href).arrayBuffer().then((bytes) => {
          let text = "";
          for (const byte of new Uint8Array(bytes)) text += String.fromCharCode(byte);
          file.base64 = btoa(text);
        });
      };
      return true;
    });
  }

  /** The next file that the page gave away: {name, bytes}. */
  async downloaded() {
    const file = await this.waitFor(() => (window.caught[0]?.base64 !== undefined ? window.caught.shift() : null));
    return { name: file.name, bytes: Buffer.from(file.base64, "base64") };
  }

  /** Hands a file to the page as if it were dropped on it. */
  drop(path, name, type = "text/plain") {
    return this.evaluate((base64, named, media) => {
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const data = new DataTransfer();
      data.items.add(new File([bytes], named, { type: media }));
      for (const kind of ["dragenter", "dragover", "drop"]) {
        document.body.dispatchEvent(new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer: data }));
      }
      return true;
    }, readFileSync(path).toString("base64"), name, type);
  }

  /** What went wrong in the page. */
  faults() {
    return this.console;
  }
}
