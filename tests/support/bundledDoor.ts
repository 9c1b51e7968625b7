/**
 * A command as one file of JavaScript, to be started with Node alone: the compiler that `npm run` brings takes some seconds
 * of the processor at each start. Each command's own test starts it once as it is called.
 */
import { buildSync } from "esbuild";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll } from "vitest";
import { root } from "./doors";

export function bundledDoor(door: "plan" | "paper"): string {
  // Beside the packages, which are loaded as ever.
  const cache = join(root, "node_modules", ".cache");
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, `bodicewright-${door}-`));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  const outfile = join(folder, `${door}.mjs`);
  const entry = join(root, "src", "cli", `${door}.ts`);
  buildSync({ entryPoints: [entry], outfile, bundle: true, packages: "external", platform: "node", format: "esm" });
  return outfile;
}
