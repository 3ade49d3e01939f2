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

/** Bytes of all WebAssembly memories of the page, which the stopwatch has kept. */
async function wasmOf(session) {
  const expression = "(window.memories ?? []).reduce((sum, memory) => sum + memory.buffer.byteLength, 0)";
  const { result } = await session.send("Runtime.evaluate", { expression, returnByValue: true });
  return result.value;
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
