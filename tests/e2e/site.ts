/** Where the built page lies, and a plain server that serves it from wherever a test wants it. */
import { readFile } from "node:fs/promises";
import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("../..", import.meta.url));
export const port = Number(process.env["BODICEWRIGHT_E2E_PORT"] ?? 4173);

/** The folder of a build that there is already. */
export const built = process.env["BODICEWRIGHT_E2E_BUILT"];

/** The folder of the build: one of its own, so that runs on other ports do not meet. */
export const site = built ?? join(root, "node_modules", ".cache", `bodicewright-e2e-${port}`);

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

/** The name of a test's own script, as the page asks for it. */
const AHEAD = "ahead.js";

export interface Served {
  readonly port: number;
  /** Every request, as "GET /path". */
  readonly asked: readonly string[];
  readonly close: () => Promise<void>;
}

/**
 * Serves the built page from `folder`, which begins and ends with a stroke. All else is not there.
 *
 * @param change what stands in a file in place of what the build wrote; null where it is not there
 * @param ahead a script that runs before the page's own, where a test brings one
 */
export async function serve(
  folder: string,
  {
    change = (_file, bytes) => bytes,
    ahead,
  }: {
    readonly change?: (file: string, bytes: Buffer) => Buffer | string | null;
    readonly ahead?: Uint8Array;
  } = {},
): Promise<Served> {
  const asked: string[] = [];
  const server: Server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? "/", "http://localhost").pathname);
    asked.push(`${request.method} ${path}`);
    const inside = path.startsWith(folder) ? path.slice(folder.length) : null;
    const file = inside === "" ? "index.html" : inside;
    if (file === null || file.includes("..") || request.method !== "GET") return void response.writeHead(404).end();
    const found =
      ahead !== undefined && file === AHEAD ? Promise.resolve(Buffer.from(ahead)) : readFile(join(site, file));
    found.then(
      (bytes) => {
        const changed = change(file, bytes);
        if (changed === null) return void response.writeHead(404).end("not here any more");
        const sent =
          ahead !== undefined && file === "index.html"
            ? changed.toString().replace("<script", `<script src="./${AHEAD}"></script><script`)
            : changed;
        response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" }).end(sent);
      },
      () => response.writeHead(404).end("not here"),
    );
  });
  await new Promise<void>((resolve) => {
    server.listen(0, "127.0.0.1", resolve);
  });
  const address = server.address();
  return {
    port: isAddress(address) ? address.port : 0,
    asked,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

const isAddress = (address: AddressInfo | string | null): address is AddressInfo =>
  address !== null && typeof address !== "string";
