/** The part of the bench that needs a browser: dragging, the first view, and how much the page loads. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium } from "@playwright/test";
import { build, preview } from "vite";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { benchCrowded, benchDrags } from "./drags";
import { benchPaper } from "./paper";
import { median, print, quickest } from "./table";

const SITE = "node_modules/.cache/bodicewright-bench";

export async function benchBrowser(): Promise<void> {
  const executablePath = installedBrowser();
  if (executablePath === undefined) return console.log("\nNo browser here: the browser part is left out.");
  await build({ logLevel: "error", build: { outDir: SITE, emptyOutDir: true } });
  const bytes = (ending: string): number =>
    readdirSync(join(SITE, "assets")).reduce(
      (sum, name) => (name.endsWith(ending) ? sum + gzipSync(readFileSync(join(SITE, "assets", name))).length : sum),
      0,
    );
  print(
    "What the page loads, kB gzip (aim: JavaScript at most 180)",
    ["JavaScript", "CSS"],
    [[bytes(".js") / 1000, bytes(".css") / 1000]],
  );

  const server = await preview({
    logLevel: "error",
    build: { outDir: SITE },
    preview: { port: 4391, host: "127.0.0.1" },
  });
  const browser = await chromium.launch({ executablePath, args: browserFlags() });
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    const firsts: number[] = [];
    for (let i = 0; i < 5; i += 1) {
      await page.goto("http://127.0.0.1:4391/#tape");
      await page.reload();
      await page.locator(".new-line").first().waitFor();
      firsts.push(await page.evaluate(() => performance.now()));
    }
    print(
      "First view of the demo after navigation, ms (aim: at most 1000)",
      ["median", "worst", "quickest"],
      [[median(firsts), Math.max(...firsts), quickest(firsts)]],
    );

    await benchPaper(browser, "http://127.0.0.1:4391/");

    await benchDrags(browser, "http://127.0.0.1:4391/");
    await benchCrowded(browser, "http://127.0.0.1:4391/");
  } finally {
    await browser.close();
    await server.close();
  }
}
