/** The bench of true-scale paper in a browser: the whole nest of a style, every piece, on A4. */
import { statSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "@playwright/test";
import { median, print } from "./table";

const RUNS = 3;
const WAIT = { timeout: 120_000 };

/** Tasks of the main thread over 50 ms since the last time it was asked. */
const longTasks = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const counts = (window as unknown as { counts: { long: number } }).counts;
    const { long } = counts;
    counts.long = 0;
    return long;
  });

export async function benchPaper(browser: Browser, address: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${address}#tape`);
  await page.getByRole("button", { name: "Works" }).click();
  await page.getByLabel("Work file").setInputFiles(join("demo-data", "tansy-midriff.json"));
  await page.getByRole("link", { name: "Paper" }).click();
  await page.evaluate(() => {
    const counts = { long: 0 };
    Object.assign(window, { counts });
    new PerformanceObserver((list) => {
      counts.long += list.getEntries().length;
    }).observe({ entryTypes: ["longtask"] });
  });
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  await page.getByRole("button", { name: "All sizes" }).click();
  await page.getByText(/pages with pieces/).waitFor(WAIT);
  const rows: (string | number)[][] = [["choosing and preview", "", "", await longTasks(page)]];
  const times: number[] = [];
  let bytes = 0;
  for (let run = 0; run < RUNS; run += 1) {
    const start = Date.now();
    const [download] = await Promise.all([
      page.waitForEvent("download", WAIT),
      page.getByRole("button", { name: "Make the PDF" }).click(),
    ]);
    times.push(Date.now() - start);
    bytes = statSync(await download.path()).size;
  }
  const [first = 0] = times;
  rows.push(["PDF, the first with its typefaces", first, bytes / 1000, await longTasks(page)]);
  rows.push(["PDF, median of all", median(times), bytes / 1000, ""]);
  print(
    "Cups on a band, all pieces, nest of ten sizes, A4: ms until the file is there (aim: 2000), kB (aim: 500), long tasks (aim: 0)",
    ["what", "ms", "kB", "long tasks"],
    rows,
  );
  await page.close();
}
