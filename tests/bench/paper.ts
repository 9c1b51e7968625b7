/** The bench of true-scale paper: pieces laid on pages, in Node, and the whole nest of a style on A4 in a browser. */
import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "@playwright/test";
import { printedParts, replacedPieces } from "../../src/core/cutting/trueParts";
import { dressOf } from "../../src/core/dress/dressOf";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { FORMATS } from "../../src/core/sheets/formats";
import { layPieces } from "../../src/core/sheets/layPieces";
import { readWorkFile } from "../../src/document/workFile";
import { dressOnPaper, type PaperRequest } from "../../src/paper/request";
import { OVERLAP, piecesToLay, truePiecesFor } from "../../src/paper/sheets";
import { median, print, quantile } from "./table";

/** Each dress with all its parts, as it comes to the paper. */
const LAID = ["wren-hip", "sorrel-princess", "siskin-panels", "siskin-straight", "siskin-tiers"] as const;
const LAID_ON = ["Letter", "A4", "A3", "A0 roll"] as const;
const LAID_RUNS = 20;

function wholeDress(name: string): PaperRequest {
  const read = readWorkFile(readFileSync(join("demo-data", `${name}.json`), "utf8"));
  if (!read.ok) throw new Error(read.failure.code);
  const plan = derivePlan(read.value);
  if (!plan.ok) throw new Error(plan.failure.code);
  const dress = dressOf(read.value);
  if (!dress.ok) throw new Error(dress.failure.code);
  const { parts } = dress.value;
  const replaced = new Set<string>(replacedPieces(plan.value, parts));
  return {
    work: read.value,
    plan: plan.value,
    dress: dressOnPaper(dress.value),
    day: "2026-11-25",
    choices: {
      kind: "pieces",
      format: "Letter",
      margin: 10,
      size: null,
      pieces: plan.value.left.pieces.flatMap((piece) => (replaced.has(piece.name) ? [] : [piece.name])),
      parts: printedParts(parts).map(({ id }) => id),
      under: [],
      before: false,
      allowances: true,
    },
  };
}

export function benchLaying(): void {
  const rows = LAID.flatMap((name) => {
    const request = wholeDress(name);
    const pieces = truePiecesFor(request);
    if (!pieces.ok) throw new Error(pieces.failure.code);
    const laid = piecesToLay(request, pieces.value).map(({ key, ring }) => ({ key, ring }));
    return LAID_ON.map((format) => {
      let pages = 0;
      const times = Array.from({ length: LAID_RUNS }, () => {
        const start = performance.now();
        const layout = layPieces(laid, { format: FORMATS[format], margin: 10, overlap: OVERLAP, gap: 0 });
        pages = layout.ok ? layout.value.tiles.length : 0;
        return performance.now() - start;
      });
      return [name, format, laid.length, pages, times[0] ?? NaN, median(times), quantile(times, 0.95)];
    });
  });
  print(
    "Laying all pieces of a dress on paper, in Node, ms (aim: nine pieces on Letter, median at most 400)",
    ["what", "paper", "pieces", "pages", "the first", "median", "95 %"],
    rows,
  );
}

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
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, serviceWorkers: "block" });
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
