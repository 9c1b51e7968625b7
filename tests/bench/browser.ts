/** The part of the bench that needs a browser: dragging, the first view, and how much the page loads. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium, type Browser } from "@playwright/test";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { benchCrowded, benchDrags, benchOwn } from "./drags";
import { benchPaper } from "./paper";
import { benchPhone } from "./phone";
import { serveSite, SITE } from "./site";
import { median, print, quickest } from "./table";
import { within } from "./within";

/** What needs a browser, by the name it is asked for. */
export const IN_BROWSER = {
  view: benchView,
  pages: benchPaper,
  drags: benchDrags,
  phone: benchPhone,
  crowded: benchCrowded,
  own: benchOwn,
} as const;

async function benchView(browser: Browser, address: string): Promise<void> {
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

  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: "block" });
  const firsts: number[] = [];
  for (let i = 0; i < 5; i += 1) {
    await page.goto(`${address}#tape`);
    await page.reload();
    await page.locator(".new-line").first().waitFor();
    firsts.push(await page.evaluate(() => performance.now()));
  }
  print(
    "First view of the demo after navigation, ms (aim: at most 1000)",
    ["median", "worst", "quickest"],
    [[median(firsts), Math.max(...firsts), quickest(firsts)]],
  );
  await page.close();
}

/** Seconds that a part may take: some times as long as on a quiet machine. */
const PART_AT_MOST = 300;

export async function benchBrowser(parts: readonly (keyof typeof IN_BROWSER)[]): Promise<void> {
  const executablePath = installedBrowser();
  if (executablePath === undefined) return console.log("\nNo browser here: the browser part is left out.");
  const site = await serveSite(process.argv.includes("built"));
  const browser = await chromium.launch({ executablePath, args: browserFlags() });
  try {
    for (const part of parts) await within(part, PART_AT_MOST, () => IN_BROWSER[part](browser, site.address));
  } finally {
    await browser.close();
    await site.close();
  }
}
