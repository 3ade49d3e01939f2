// The app as a person uses it: what they see and tap, by the words on the screens. Journeys read as prose because
// every selector stands here.

import assert from "node:assert/strict";

export class App {
  constructor(device, page = device.page) {
    this.device = device;
    this.page = page;
  }

  /** Opens a screen: "" is the field page, "bench" the bench; "sample/…" the sample's. */
  async open(screen = "") {
    await this.page.goto(`${this.device.server.url}#/${screen}`);
    await this.ready();
  }

  /** The book is open. */
  async ready() {
    await this.page.waitForFunction(() => !document.getElementById("cover"));
    await this.page.locator("h1").first().waitFor();
    await this.page.getByRole("progressbar").waitFor({ state: "detached" });
  }

  button(name) {
    return this.page.getByRole("button", { name, exact: typeof name === "string" });
  }

  link(name) {
    return this.page.getByRole("link", { name, exact: typeof name === "string" });
  }

  field(name) {
    return this.page.getByLabel(name, { exact: true });
  }

  heading(name) {
    return this.page.getByRole("heading", { name, level: 1 });
  }

  async tap(target) {
    await target.first().click();
  }

  /** Waits until the page says this somewhere that can be seen. */
  async says(text) {
    await this.page.getByText(text).first().waitFor();
  }

  /** Answers the two questions of the first run. */
  async introduce(name, habit = /^One number a container/) {
    await this.open();
    await this.tap(this.link(/^New catch/));
    await this.heading("Before the first catch").waitFor();
    await this.field("Your name, as labels should say it").fill(name);
    await this.page.getByRole("radio", { name: habit }).check({ force: true });
    await this.tap(this.button(/^Begin/));
    await this.heading("New catch").waitFor();
    await this.open();
  }

  /** Opens a new catch from the field page. */
  async newCatch() {
    await this.tap(this.link(/^New catch/));
    await this.heading("New catch").waitFor();
  }

  /** Fills what is given of the catch form. */
  async fill({ site, method, group, host, notes }) {
    if (site !== undefined) await this.field("Site").fill(site);
    if (method !== undefined) await this.field("Method").selectOption({ label: method });
    if (host !== undefined) {
      await this.field("How it was with the host").selectOption({ label: host[0] });
      await this.field("Plant and part, fungus, insect, animal, dung or wood").fill(host[1]);
    }
    if (notes !== undefined) await this.field("Notes").fill(notes);
    if (group !== undefined) await this.contents(group);
  }

  /** Writes a group into the first container of the catch, by its own screen. */
  async contents({ group, count }) {
    await this.page.locator(".container-line a").first().click();
    const line = this.page.getByRole("combobox", { name: "Group" }).or(this.page.getByRole("textbox", { name: "Group" })).first();
    await line.fill(group);
    if (count !== undefined) {
      await this.page.getByRole("radio", { name: "exact" }).first().check({ force: true });
      await this.page.locator(".content-line .stepper input").first().fill(String(count));
    }
    await this.tap(this.button(/^Keep container/));
    await this.heading("New catch").waitFor();
  }

  /** Saves the catch; resolves when the page has confirmed it. */
  async save() {
    await this.tap(this.button(/^Save/));
    await this.page.getByRole("status").filter({ hasText: /^Saved/ }).waitFor();
  }

  /** How many events stand in the list of the day or the field page. */
  events() {
    return this.page.locator("li.event");
  }

  /** The numbers that the page shows on plates, prefix and all. */
  async plates() {
    const texts = await this.page.locator(".plate").allInnerTexts();
    return texts.map((text) => text.replace(/\s+/g, ""));
  }

  /** Picks a file by the button that asks for one. */
  async pick(button, path) {
    const chooser = this.page.waitForEvent("filechooser");
    await this.tap(this.button(button));
    await (await chooser).setFiles(path);
  }

  async isAt(title) {
    await this.heading(title).waitFor();
    assert.equal(await this.heading(title).count(), 1);
  }
}
