// What a page holds in memory, after a collection of garbage.

import { readFileSync } from "node:fs";

const MB = 1e6;

export class Memory {
  /** Megabytes: `page` heap, buffers and WebAssembly memory; `process` what its renderer shares with nobody. */
  static async of(device) {
    const session = await device.context.newCDPSession(device.page);
    await session.send("HeapProfiler.collectGarbage");
    const { usedSize, backingStorageSize = 0 } = await session.send("Runtime.getHeapUsage");
    const wasm = await wasmOf(session);
    await session.detach();
    return { page: (usedSize + backingStorageSize + wasm) / MB, process: (await largestRenderer(device)) / MB };
  }
}

/** Bytes of all WebAssembly memories that the page can reach. */
async function wasmOf(session) {
  const { result } = await session.send("Runtime.evaluate", { expression: "WebAssembly.Memory.prototype" });
  const { objects } = await session.send("Runtime.queryObjects", { prototypeObjectId: result.objectId });
  const sum = await session.send("Runtime.callFunctionOn", {
    objectId: objects.objectId,
    functionDeclaration: "function () { return this.reduce((sum, memory) => sum + memory.buffer.byteLength, 0); }",
    returnByValue: true,
  });
  return sum.result.value;
}

/** The one page that is open has the largest renderer; workers of the page live in it too. */
async function largestRenderer(device) {
  const browser = await device.context.browser().newBrowserCDPSession();
  const { processInfo } = await browser.send("SystemInfo.getProcessInfo");
  await browser.detach();
  return Math.max(...processInfo.filter(({ type }) => type === "renderer").map(({ id }) => privateBytes(id)));
}

function privateBytes(pid) {
  const rollup = readFileSync(`/proc/${pid}/smaps_rollup`, "utf8");
  const kilobytes = [...rollup.matchAll(/^Private_(Clean|Dirty):\s+(\d+) kB/gm)].map(([, , count]) => Number(count));
  return kilobytes.reduce((sum, count) => sum + count, 0) * 1024;
}
