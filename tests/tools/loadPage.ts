/**
 * Random works through the page in a real Chromium: `npm run load-page -- --seed 1 --count 1000`. Each is opened as a file, half
 * of its steps are looked at, something is dragged, typed or taken back. `--drags 10000` drags a dart's end so often and tells
 * what stays in memory. `--seconds 600` stops after so long; `--built` takes the page
 * as it was built last.
 */
import { parseArgs } from "node:util";
import { chromium, type Browser } from "@playwright/test";
import { serveSite } from "../bench/site";
import { print } from "../bench/table";
import { growing, heapOverDrags, slopeOf } from "../simulation/load/heapLoad";
import { errorsOf } from "../simulation/load/pageErrors";
import { loadOnPage } from "../simulation/load/pageLoad";
import { browserFlags, installedBrowser } from "./browser.mjs";

const { values } = parseArgs({
  options: {
    seed: { type: "string", default: "1" },
    count: { type: "string", default: "1000" },
    drags: { type: "string" },
    seconds: { type: "string", default: "1000000" },
    built: { type: "boolean", default: false },
  },
});

/** Works that one page keeps; the next has a library of its own. */
const KEPT = 20;
const SIZE = { width: 1440, height: 900 } as const;

async function loadPages(browser: Browser, address: string): Promise<void> {
  const [first, count] = [Number(values.seed), Number(values.count)];
  const end = performance.now() + 1000 * Number(values.seconds);
  let [done, failed] = [0, 0];
  for (let from = first; from < first + count && performance.now() < end; from += KEPT) {
    const context = await browser.newContext({ viewport: SIZE, serviceWorkers: "block" });
    const page = await context.newPage();
    const errors = errorsOf(page);
    await page.goto(address);
    for (let seed = from; seed < Math.min(from + KEPT, first + count) && performance.now() < end; seed += 1) {
      const amiss = await loadOnPage(page, seed, errors);
      done += 1;
      if (amiss.length > 0) failed += 1;
      for (const text of amiss) console.log(`  seed ${seed}: ${text}`);
      if (amiss.some((text) => text.startsWith("not gone"))) await page.goto(address);
    }
    console.log(`  ${done} of ${count}`);
    await context.close();
  }
  console.log(`${done} works on the page, ${failed} with something amiss`);
  if (failed > 0) process.exitCode = 1;
}

async function loadDrags(browser: Browser, address: string, moves: number): Promise<void> {
  const page = await browser.newPage({ viewport: SIZE, serviceWorkers: "block" });
  const errors = errorsOf(page);
  await page.goto(`${address}#darts`);
  const handle = page.getByTestId("handle-front-waistDart-apex");
  await handle.waitFor();
  await page.waitForLoadState("networkidle");
  const heaps = await heapOverDrags(page, handle, moves, moves / 10, ({ moves: made, bytes, nodes, listeners }) =>
    console.log(`  ${made}: ${(bytes / 1e6).toFixed(2)} MB, ${nodes} nodes, ${listeners} listeners`),
  );
  print(
    `A dart's end dragged ${moves} moves, after collection`,
    ["moves", "heap, MB", "nodes", "listeners"],
    heaps.map(({ moves: made, bytes, nodes, listeners }) => [made, bytes / 1e6, nodes, listeners]),
  );
  const grows = growing(heaps);
  console.log(
    grows === null
      ? `the history is not full for long enough to say; ${slopeOf(heaps).toFixed(0)} bytes a move`
      : `once the history is full: ${grows.length === 0 ? "flat" : `NOT flat, ${grows.join("; ")}`}`,
  );
  for (const error of errors) console.log(`  ${error}`);
  if (grows === null || grows.length > 0 || errors.length > 0) process.exitCode = 1;
}

const executablePath = installedBrowser();
const site = await serveSite(values.built);
const browser = await chromium.launch({
  args: browserFlags(),
  ...(executablePath === undefined ? {} : { executablePath }),
});
try {
  if (values.drags === undefined) await loadPages(browser, site.address);
  else await loadDrags(browser, site.address, Number(values.drags));
} finally {
  await browser.close();
  await site.close();
}
