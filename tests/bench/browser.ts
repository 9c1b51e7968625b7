/** The part of the bench that needs a browser: dragging, the first view, and how much the page loads. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { chromium } from "@playwright/test";
import { build, preview } from "vite";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { benchPaper } from "./paper";
import { median, print, quantile, quickest } from "./table";

const SITE = "node_modules/.cache/bodicewright-bench";
const MOVES = 120;

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

    const rows: (string | number)[][] = [];
    for (const step of ["tape", "darts"]) {
      await page.goto(`http://127.0.0.1:4391/#${step}`);
      await page.reload();
      const handle = page.getByTestId("handle-front-waistDart-apex");
      await handle.waitFor();
      const box = await handle.boundingBox();
      if (box === null) throw new Error("no handle");
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      // All script between the start of a frame's callbacks and the end of its tasks, by the browser's own counters.
      const cdp = await page.context().newCDPSession(page);
      await cdp.send("Performance.enable");
      const scriptSeconds = async (): Promise<number> => {
        const { metrics } = await cdp.send("Performance.getMetrics");
        return metrics.find(({ name }) => name === "ScriptDuration")?.value ?? 0;
      };
      await page.evaluate(() => {
        const counts = { long: 0 };
        Object.assign(window, { counts });
        new PerformanceObserver((list) => {
          counts.long += list.getEntries().length;
        }).observe({ entryTypes: ["longtask"] });
      });
      await page.mouse.move(x, y);
      await page.mouse.down();
      const times: number[] = [];
      for (let i = 0; i < MOVES; i += 1) {
        const before = await scriptSeconds();
        await page.mouse.move(x + Math.sin(i / 9) * 12, y + 20 + Math.cos(i / 7) * 18);
        await page.evaluate(
          () =>
            new Promise<void>((done) => {
              requestAnimationFrame(() => requestAnimationFrame(() => done()));
            }),
        );
        times.push(((await scriptSeconds()) - before) * 1000);
      }
      await page.mouse.up();
      const long = await page.evaluate(() => (window as unknown as { counts: { long: number } }).counts.long);
      rows.push([step, median(times), quantile(times, 0.95), Math.max(...times), long]);
      await page.keyboard.press("Control+z");
    }
    print(
      "Script for each pointer move while dragging a dart's end, ms (aim: 95 % at most 4, no long task)",
      ["step shown", "median", "95 %", "worst", "long tasks"],
      rows,
    );
  } finally {
    await browser.close();
    await server.close();
  }
}
