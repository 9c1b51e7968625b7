/**
 * How much there is to read on each step: visible words, and on a phone how long the page is and where the ledger begins.
 * `npx tsx tests/tools/stepWords.ts [--shots folder] [--work name]`; a table for each screen.
 */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "@playwright/test";
import { createServer } from "vite";
import { browserFlags, installedBrowser } from "./browser.mjs";

const STEPS = ["tape", "envelope", "tissue", "blend", "darts", "fit", "trial", "dress", "paper"];
const SCREENS = [
  { width: 1440, height: 900 },
  { width: 1000, height: 700 },
  { width: 390, height: 844 },
];

const option = (name: string): string | undefined => {
  const at = process.argv.indexOf(name);
  return at < 0 ? undefined : process.argv[at + 1];
};
const shots = option("--shots");
const port = Number(option("--port") ?? 5304);

const executablePath = installedBrowser();
const server = await createServer({
  logLevel: "error",
  cacheDir: `node_modules/.cache/step-words-${port}`,
  server: { port, host: "127.0.0.1", strictPort: true, hmr: false },
});
await server.listen();
const browser = await chromium.launch({
  args: browserFlags(),
  ...(executablePath === undefined ? {} : { executablePath }),
});

/** Runs in the page. */
function measure(): {
  readonly words: number;
  readonly height: number;
  readonly ledger: number;
  readonly wide: number;
} {
  const main = document.querySelector("main");
  const walker = document.createTreeWalker(main ?? document.body, NodeFilter.SHOW_TEXT);
  let words = 0;
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (parent === null || !parent.checkVisibility({ visibilityProperty: true })) continue;
    const { width, height } = parent.getBoundingClientRect();
    // What lies below the fold of a sheet.
    const fold = parent.closest("[data-folded]")?.getBoundingClientRect().bottom ?? Infinity;
    if (parent.getBoundingClientRect().top >= fold) continue;
    // What only a reader of the screen hears is a pixel wide.
    if (width <= 1 || height <= 1) continue;
    words += (node.textContent ?? "").split(/\s+/).filter((word) => /[\p{L}\d]/u.test(word)).length;
  }
  const ledger = document.querySelector(".ledger-place")?.getBoundingClientRect().top ?? 0;
  return {
    words,
    height: document.documentElement.scrollHeight,
    ledger: Math.round(ledger + window.scrollY),
    wide: document.documentElement.scrollWidth,
  };
}

for (const screen of SCREENS) {
  const context = await browser.newContext({
    viewport: screen,
    hasTouch: screen.width < 500,
    isMobile: screen.width < 500,
  });
  const page = await context.newPage();
  console.log(`\n${screen.width} × ${screen.height}`);
  console.log("step      words  height  ledger at  wide");
  for (const step of STEPS) {
    await page.goto(`http://127.0.0.1:${port}/#${step}`);
    await page.locator("main h2").first().waitFor();
    await page.locator(".ledger h2, .ledger-toggle").first().waitFor();
    await page.waitForTimeout(1500);
    const { words, height, ledger, wide } = await page.evaluate(measure);
    console.log(
      `${step.padEnd(9)} ${String(words).padStart(5)} ${String(height).padStart(7)} ${String(ledger).padStart(10)} ${String(wide).padStart(5)}`,
    );
    if (shots !== undefined) {
      mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: join(shots, `${screen.width}-${step}.png`) });
    }
  }
  await context.close();
}
await browser.close();
await server.close();
