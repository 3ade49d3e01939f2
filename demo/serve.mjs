// Serves a built release on this machine, as a plain static host would: files with their media types, nothing more.
//
//   node demo/serve.mjs [--root dist] [--base /sub/path] [--port 8127]
//
// Takes the next free port when the wanted one is in use. The tests import `serve`.

import { createReadStream, readFileSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { dirname, extname, join, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";

const MEDIA = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".ttf": "font/ttf",
  ".txt": "text/plain; charset=utf-8",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
};

/**
 * Serves a folder.
 * @param {{root: string, base?: string, port?: number, headers?: boolean}} options
 *   `port` 0 takes any free one; `headers` adds those that the README advises.
 * @returns {Promise<{origin: string, url: string, port: number, close: () => Promise<void>}>}
 */
export async function serve({ root, base = "/", port = 0, headers = true }) {
  const folder = resolve(root);
  const prefix = `/${base}/`.replace(/\/+/g, "/");
  const server = createServer((request, response) => answer(request, response, { folder, prefix, headers }));
  await new Promise((done, failed) => server.once("error", failed).listen(port, "127.0.0.1", done));
  const origin = `http://127.0.0.1:${server.address().port}`;
  return {
    origin,
    url: origin + prefix,
    port: server.address().port,
    close: () => new Promise((done) => { server.close(done); server.closeAllConnections(); }),
  };
}

function answer(request, response, { folder, prefix, headers }) {
  const path = decoded(request.url.split(/[?#]/)[0]);
  if (`${path}/` === prefix) return end(response, 301, { location: prefix });
  if (request.method !== "GET" && request.method !== "HEAD") return end(response, 405, { allow: "GET, HEAD" });
  if (!path?.startsWith(prefix)) return end(response, 404);
  const below = path.slice(prefix.length);
  const file = resolve(folder, below === "" ? "index.html" : below);
  const size = file.startsWith(folder + sep) ? sizeOf(file) : undefined;
  if (size === undefined) return end(response, 404);
  response.writeHead(200, {
    "content-type": MEDIA[extname(file)] ?? "application/octet-stream",
    "content-length": size,
    "cache-control": below.startsWith("code-") ? "public, max-age=31536000, immutable" : "no-cache",
    ...(headers && advised(folder)),
  });
  if (request.method === "HEAD") return response.end();
  createReadStream(file).pipe(response);
}

function decoded(path) {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

function sizeOf(file) {
  const found = statSync(file, { throwIfNoEntry: false });
  return found?.isFile() ? found.size : undefined;
}

/** The headers worth setting: the page's own policy, and what only a header can say. */
function advised(folder) {
  const page = readFileSync(join(folder, "index.html"), "utf8");
  const policy = page.match(/http-equiv="Content-Security-Policy" content="([^"]*)"/)[1];
  return {
    "content-security-policy": `${policy}; frame-ancestors 'none'`,
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
  };
}

function end(response, status, headers = {}) {
  response.writeHead(status, { "content-type": "text/plain", ...headers });
  response.end(status < 400 ? "" : `${status}\n`);
}

function option(name, otherwise) {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? otherwise : process.argv[at + 1];
}

async function main() {
  const root = option("root", join(dirname(fileURLToPath(import.meta.url)), "..", "dist"));
  const base = option("base", "/");
  for (let port = Number(option("port", 8127)); ; port += 1) {
    try {
      const { url } = await serve({ root, base, port });
      console.log(`Glassine is at ${url}\nStop it with Ctrl+C.`);
      return;
    } catch (fault) {
      if (fault.code !== "EADDRINUSE") throw fault;
    }
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main();
