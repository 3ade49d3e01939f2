import assert from "node:assert/strict";

import { App } from "../pages/app.mjs";

export const title = "a damaged row is reported and set aside; the rest of the book opens";

export default async function (t) {
  const server = await t.serve({ base: "/" });
  const phone = await t.phone(server);
  const app = new App(phone);
  await app.introduce("I. Varga");
  for (const site of ["Mill Meadow", "Kestrel Wood"]) {
    await app.newCatch();
    await app.fill({ site });
    await app.save();
  }
  await spoil(app.page);
  await app.page.reload();
  await app.ready();
  await app.says(/1 block of the storage could not be read/);
  await app.events().first().waitFor();
  assert.equal(await app.events().count(), 1);
  await app.page.reload();
  await app.ready();
  await app.says(/1 block of the storage could not be read/);
}

/** Flips bytes of the newest journal row, from outside. */
function spoil(page) {
  return page.evaluate(() => new Promise((done, failed) => {
    const request = indexedDB.open("glassine-own");
    request.onerror = () => failed(request.error);
    request.onsuccess = () => {
      const books = request.result;
      const transaction = books.transaction("journal", "readwrite");
      const cursor = transaction.objectStore("journal").openCursor(null, "prev");
      cursor.onsuccess = () => {
        const bytes = cursor.result.value;
        bytes[bytes.length >> 1] ^= 0x55;
        cursor.result.update(bytes);
      };
      transaction.oncomplete = () => { books.close(); done(); };
    };
  }));
}
