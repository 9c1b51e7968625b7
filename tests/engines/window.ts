/** A window of the engine that a project is for, with the page in it; one for all chapters of the job. */
import { readFileSync } from "node:fs";
import { test as base } from "@playwright/test";
import { build } from "esbuild";
import { join } from "node:path";
import { root, serve } from "../e2e/site";
import { engines } from "../tools/browser.mjs";
import type { Engine } from "./engine";
import { handOf, type Hand } from "./hand";
import { playwrightEngine } from "./playwrightEngine";
import { webKitEngine } from "./webKitEngine";

async function openEngine(name: string): Promise<Engine> {
  const { chromium, firefox, webkit } = engines();
  if (name === "chromium" && chromium !== undefined) return playwrightEngine("chromium", chromium);
  if (name === "firefox" && firefox !== undefined) return playwrightEngine("firefox", firefox);
  if (name === "webkit" && webkit !== undefined) return webKitEngine(webkit);
  throw new Error(`${name} is not installed here`);
}

/** What runs in the page, as one script of the plain kind. */
async function ahead(): Promise<Uint8Array> {
  const { outputFiles } = await build({
    entryPoints: [join(root, "tests/engines/inPage.ts")],
    bundle: true,
    write: false,
    format: "iife",
    target: "es2022",
    define: { "process.env": "{}" },
  });
  const [script] = outputFiles;
  if (script === undefined) throw new Error("nothing was built");
  return script.contents;
}

interface Window {
  readonly hand: Hand;
  /** Where the page is. */
  readonly address: string;
}

export const test = base.extend<object, { readonly window: Window }>({
  window: [
    // oxlint-disable-next-line no-empty-pattern -- the runner reads from it which fixtures this one needs
    async ({}, use, { project }) => {
      const served = await serve("/", { ahead: await ahead() });
      const engine = await openEngine(project.name);
      await use({ hand: handOf(engine), address: `http://127.0.0.1:${served.port}/` });
      await engine.close();
      await served.close();
    },
    { scope: "worker", timeout: 180_000 },
  ],
});

export const fixture = (name: string): string => join(root, "tests/e2e/fixtures", name);
export const textOfFile = (file: string): string => readFileSync(file, "utf8");
