// The app and its twin, as the bench uses them: where things stand on their pages.

/** The main command of a screen of the app. */
const MAIN = ".bar button.main";
/** The only button of the screen that takes a file. */
const PICK = ".foot.bar-only .bar button.main[type=button]";

/** A page under measure. */
class Measured {
  constructor(device, server) {
    this.device = device;
    this.server = server;
  }

  get page() {
    return this.device.page;
  }

  /** Leaves what is open, so that the next page starts from nothing. */
  async leave() {
    await this.page.goto("about:blank");
  }

  async go(path) {
    await this.leave();
    await this.page.goto(this.server.url + path, { waitUntil: "commit" });
  }

  /** The time at which something was first painted, in milliseconds from the start of the navigation. */
  async first(name) {
    await this.page.waitForFunction((name) => window.stopwatch?.first[name], name, { timeout: 300_000 });
    return this.page.evaluate((name) => window.stopwatch.first[name], name);
  }

  ask(id, text, selector, pattern) {
    return this.page.evaluate((words) => window.stopwatch.ask(...words), [id, text, selector, pattern]);
  }

  seen(selector, pattern) {
    return this.page.evaluate((words) => window.stopwatch.seen(...words), [selector, pattern]);
  }

  at(kind) {
    return this.page.evaluate((kind) => window.stopwatch.at[kind], kind);
  }

  /** The last writing transaction: its milliseconds, and the bytes put by it. */
  lastWrite() {
    return this.page.evaluate(() => ({ ms: window.stopwatch.writes.at(-1), bytes: window.stopwatch.bytes.at(-1) }));
  }

  /** Types letter by letter as a person does; milliseconds from each key to the frame that shows it. */
  async typed(id, text) {
    await this.page.fill(`#${id}`, "");
    await this.page.evaluate(() => { window.stopwatch.keys.length = 0; });
    for (const letter of text) {
      await this.page.keyboard.press(letter === " " ? "Space" : letter);
      await this.page.waitForTimeout(120);
    }
    return this.page.evaluate(() => window.stopwatch.keys);
  }
}

export class App extends Measured {
  /** Opens the book; the time at which the exact count was shown. */
  async open() {
    await this.go("#/days");
    return this.first("count");
  }

  async searching() {
    await this.page.evaluate(() => { location.hash = "#/search"; });
    await this.page.waitForSelector("#q");
  }

  /** Milliseconds from a question to its painted answer. */
  async search(text) {
    await this.ask("q", "", "p.part.note", ".");
    return this.ask("q", text, "header.head .note", ".");
  }

  /** Milliseconds until the only event with these words is listed with its hour. */
  async oldest(words, hour) {
    await this.ask("q", "", "p.part.note", ".");
    return this.ask("q", words, "li.event .row-name", hour);
  }

  /** Answers the questions of the first run, as somebody who is in the log. */
  async introduce(name) {
    const { page } = this;
    await this.go("#/first");
    await page.fill("#me", name);
    await page.click(MAIN);
    await page.waitForFunction(() => location.hash !== "#/first");
  }

  /** Reads a log file until the preview stands there; then, if anything is new, takes it. Begins with an open book. */
  async import(path) {
    const { page } = this;
    await page.evaluate(() => { location.hash = "#/import"; });
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.click(PICK),
    ]);
    await chooser.setFiles(path);
    const read = (await this.seen("h1", "log$")) - (await this.at("change"));
    if (/ 0\b/.test(await page.textContent(MAIN))) return { read, write: 0 };
    await page.click(MAIN, { noWaitAfter: true });
    const done = await this.seen("h1", "imported$");
    return { read, write: done - (await this.at("click")) };
  }

  async newCatch() {
    await this.page.evaluate(() => { location.hash = "#/catch"; });
    await this.page.waitForSelector("form#catch #site");
  }

  /** Milliseconds from the tap on Save to the confirmation, and those of the transaction alone. */
  async save(note) {
    await this.newCatch();
    await this.page.fill("#notes", note);
    await this.page.click(MAIN, { noWaitAfter: true });
    const confirmed = (await this.seen(".undo[role=status]", "Saved")) - (await this.at("click"));
    return { confirmed, ...(await this.lastWrite()) };
  }

  async coldCatch() {
    await this.go("#/catch");
    return this.first("form");
  }
}

export class Twin extends Measured {
  constructor(device, server, way) {
    super(device, server);
    this.way = way;
  }

  async open() {
    await this.go(`?way=${this.way}`);
    return this.first("count");
  }

  async searching() {}

  async search(text) {
    await this.ask("search", "", "#found", "^$");
    return this.ask("search", text, "#found", ".");
  }

  async oldest(words, hour) {
    return this.ask("search", words, "#list li", hour);
  }

  async import(path) {
    await this.page.waitForSelector("#catch:not([hidden])");
    await this.page.evaluate(() => { document.getElementById("imported").textContent = ""; });
    await this.page.setInputFiles("#file", path);
    const done = await this.seen("#imported", "imported");
    return { read: done - (await this.at("change")), write: 0 };
  }

  async newCatch() {}

  async save(note) {
    await this.page.evaluate(() => { document.getElementById("saved").textContent = ""; });
    await this.page.fill("#notes", note);
    await this.page.click("#catch button", { noWaitAfter: true });
    const confirmed = (await this.seen("#saved", "^Saved")) - (await this.at("click"));
    return { confirmed, ...(await this.lastWrite()) };
  }

  /** Milliseconds of one strict put of so many bytes at a tap, after the same typing as before a save. */
  async rawPut(bytes) {
    await this.page.evaluate(rawPuts, bytes);
    await this.page.fill("#notes", "raw");
    await this.page.click("#raw", { noWaitAfter: true });
    await this.page.waitForFunction(() => window.raw !== undefined);
    return this.page.evaluate(() => window.raw);
  }

  async coldCatch() {
    await this.go(`?way=${this.way}`);
    return this.first("form");
  }
}

/** Runs in the page: a button that puts bytes into a store of their own. */
function rawPuts(bytes) {
  window.raw = undefined;
  const value = crypto.getRandomValues(new Uint8Array(bytes));
  const put = (books) => {
    const start = performance.now();
    const transaction = books.transaction("rows", "readwrite", { durability: "strict" });
    transaction.objectStore("rows").put(value, crypto.randomUUID());
    transaction.commit();
    transaction.oncomplete = () => {
      window.raw = performance.now() - start;
      books.close();
    };
  };
  const button = document.getElementById("raw") ?? document.body.appendChild(document.createElement("button"));
  Object.assign(button, { id: "raw", textContent: "Raw put" });
  const request = indexedDB.open("raw", 1);
  request.onupgradeneeded = () => request.result.createObjectStore("rows");
  request.onsuccess = () => { button.onclick = () => put(request.result); };
}
