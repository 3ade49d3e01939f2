// What a careful person would write by hand for the same job, with nothing but JavaScript and IndexedDB: the measure
// beside which the app is put. Two ways of keeping records, chosen in the address: `rows`, one row a record, read with
// getAll; and `segments`, a thousand records as JSON text. Merging is field by field under the same version vectors.
// The page opens all, shows the exact count of events, searches, offers a catch form filled from the last event,
// saves durably, and imports log files.

const WAY = new URLSearchParams(location.search).get("way") === "segments" ? "segments" : "rows";
const SEGMENT = 1000;
const OFFERED = 6;
const LISTED = 20;

const show = (id, text) => { document.getElementById(id).textContent = text; };
const field = (id) => document.getElementById(id);

/** All records by id. */
const records = new Map();
/** The texts of each event in small letters, with those of its site, people and containers; made when first searched. */
let texts;
/** Every number that a container carries; made when first needed. */
let numbers;
let books;

// Storage

function opened() {
  return new Promise((done, failed) => {
    const request = indexedDB.open(`twin-${WAY}`, 1);
    request.onupgradeneeded = () => ["rows", "segments", "journal"].forEach((name) => request.result.createObjectStore(name));
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}

function written(names, write) {
  return new Promise((done, failed) => {
    const transaction = books.transaction(names, "readwrite", { durability: "strict" });
    write(...names.map((name) => transaction.objectStore(name)));
    transaction.oncomplete = done;
    transaction.onabort = () => failed(transaction.error);
    transaction.commit();
  });
}

function all(name) {
  return new Promise((done, failed) => {
    const request = books.transaction(name).objectStore(name).getAll();
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });
}

async function open() {
  books = await opened();
  if (WAY === "rows") {
    for (const record of await all("rows")) records.set(record.id, record);
  } else {
    for (const text of await all("segments")) for (const record of JSON.parse(text)) records.set(record.id, record);
  }
  for (const record of await all("journal")) records.set(record.id, record);
  count();
  fresh();
}

function count() {
  let events = 0;
  for (const record of records.values()) if (record.kind === "event" && record.deleted !== true) events += 1;
  show("count", `${events} events`);
}

// Search

/** Tells each text that stands in a value. */
function eachText(value, tell) {
  if (typeof value === "string") tell(value);
  else if (value && typeof value === "object") for (const member of Object.values(value)) eachText(member, tell);
}

function textOf(record) {
  let text = "";
  for (const name in record) {
    if (name !== "kind" && name !== "id" && name !== "versions") eachText(record[name], (part) => { text += ` ${part}`; });
  }
  return text;
}

function work() {
  const found = new Map();
  const told = new Map();
  const of = (id) => {
    if (!told.has(id)) told.set(id, records.has(id) ? textOf(records.get(id)) : "");
    return told.get(id);
  };
  for (const record of records.values()) {
    if (record.kind !== "event") continue;
    let text = textOf(record) + of(record.site);
    for (const name in record) if (name.startsWith("collector:")) text += of(record[name].person);
    found.set(record.id, text);
  }
  for (const record of records.values()) {
    if (record.kind === "container" && found.has(record.event)) found.set(record.event, found.get(record.event) + textOf(record));
  }
  for (const [id, text] of found) found.set(id, text.toLowerCase());
  return found;
}

/** The events in which every word stands, the newest first. */
function search(question) {
  const words = question.toLowerCase().split(/\s+/).filter(Boolean);
  const found = [];
  if (words.length > 0) {
    texts ??= work();
    for (const [id, text] of texts) if (words.every((word) => text.includes(word))) found.push(id);
  }
  found.sort().reverse();
  show("found", words.length > 0 ? `${found.length} found` : "");
  field("list").replaceChildren(...found.slice(0, LISTED).map((id) => line(records.get(id))));
}

function line(record) {
  const item = document.createElement("li");
  item.textContent = `${record.caught?.from ?? ""} ${records.get(record.site)?.name ?? ""} ${record.notes ?? ""}`;
  return item;
}

// The catch form

function numbersTaken() {
  if (!numbers) {
    numbers = new Set();
    for (const record of records.values()) if (record.kind === "container" && record.number) numbers.add(record.number.text);
  }
  return numbers;
}

function nextNumber() {
  let [prefix, highest, digits] = ["", 0, 1];
  for (const number of numbersTaken()) {
    const [, before, run] = number.match(/^(.*?)(\d+)$/) ?? [];
    if (before < prefix || run === undefined) continue;
    if (before > prefix) [prefix, highest] = [before, 0];
    if (Number(run) >= highest) [highest, digits] = [Number(run), run.length];
  }
  return prefix + String(highest + 1).padStart(digits, "0");
}

/** A new catch: the last event's site and people, the next number. */
function fresh() {
  let last;
  for (const record of records.values()) if (record.kind === "event" && !(last?.id > record.id)) last = record;
  const person = last && Object.entries(last).find(([name]) => name.startsWith("collector:"))?.[1].person;
  field("site").value = records.get(last?.site)?.name ?? "";
  field("collector").value = records.get(person)?.name ?? "";
  field("number").value = nextNumber();
  field("notes").value = "";
  field("catch").hidden = false;
}

function offerSites() {
  const typed = field("site").value.toLowerCase();
  const names = [];
  for (const record of records.values()) {
    if (record.kind === "site" && record.name.toLowerCase().includes(typed)) names.push(record.name);
  }
  field("sites").replaceChildren(...names.slice(0, OFFERED).map((name) => {
    const item = document.createElement("li");
    item.textContent = name;
    return item;
  }));
}

/** What is typed is kept at once, as a page may die. */
function keepDraft() {
  const draft = Object.fromEntries(["site", "collector", "number", "notes"].map((id) => [id, field(id).value]));
  localStorage.setItem("draft", JSON.stringify(draft));
}

async function save(event) {
  event.preventDefault();
  const now = new Date().toISOString();
  const id = crypto.randomUUID();
  const at = ["twin", records.size, now];
  const site = [...records.values()].find((record) => record.kind === "site" && record.name === field("site").value);
  const record = {
    kind: "event", id, caught: { from: now.slice(0, 16) }, site: site?.id, notes: field("notes").value,
    versions: { seen: { twin: records.size }, at: { caught: at, site: at, notes: at } },
  };
  const container = {
    kind: "container", id: crypto.randomUUID(), event: id, number: { text: field("number").value },
    versions: { seen: { twin: records.size }, at: { event: at, number: at } },
  };
  await written(["journal"], (journal) => [record, container].forEach((each) => journal.put(each, each.id)));
  [record, container].forEach((each) => records.set(each.id, each));
  numbers?.add(container.number.text);
  texts = undefined;
  localStorage.removeItem("draft");
  show("saved", `Saved ${container.number.text}`);
  count();
  fresh();
}

// Log files

/** Field by field: a value stays if the other has it too, or has not seen the edit that wrote it. One value a field. */
function merge(a, b) {
  const seenA = a.versions.seen;
  const seenB = b.versions.seen;
  let news = false;
  for (const replica in seenB) news ||= seenB[replica] > (seenA[replica] ?? 0);
  if (!news) return a;
  const merged = { ...a, versions: { seen: { ...seenA }, at: { ...a.versions.at } } };
  for (const replica in seenB) merged.versions.seen[replica] = Math.max(seenB[replica], seenA[replica] ?? 0);
  for (const [name, at] of Object.entries(b.versions.at)) {
    if ((seenA[at[0]] ?? 0) >= at[1]) continue;
    merged[name] = b[name];
    merged.versions.at[name] = at;
  }
  return merged;
}

async function importLog(file) {
  const log = JSON.parse(await file.text());
  const changed = [];
  for (const record of log.records) {
    const own = records.get(record.id);
    const merged = own ? merge(own, record) : record;
    if (merged !== own) changed.push(merged);
  }
  if (changed.length > 0) await keep(changed);
  for (const record of changed) records.set(record.id, record);
  texts = numbers = undefined;
  count();
  fresh();
  show("imported", `${changed.length} imported from ${file.name}`);
}

async function keep(changed) {
  if (WAY === "rows") return written(["rows"], (rows) => changed.forEach((record) => rows.put(record, record.id)));
  const together = new Map(records);
  for (const record of changed) together.set(record.id, record);
  const everything = [...together.values()];
  return written(["segments", "journal"], (segments, journal) => {
    segments.clear();
    journal.clear();
    for (let from = 0; from < everything.length; from += SEGMENT) {
      segments.put(JSON.stringify(everything.slice(from, from + SEGMENT)), from);
    }
  });
}

field("search").addEventListener("input", () => search(field("search").value));
field("site").addEventListener("input", offerSites);
field("number").addEventListener("input", () => show("taken", numbersTaken().has(field("number").value) ? "taken" : ""));
field("catch").addEventListener("input", keepDraft);
field("catch").addEventListener("submit", save);
field("file").addEventListener("change", () => importLog(field("file").files[0]));
navigator.serviceWorker.register("./sw.js");
await open();
