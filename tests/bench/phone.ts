/** The page on a phone: a screen of 390 by 844, a finger, and a processor that is four times as slow. */
import type { Browser } from "@playwright/test";
import { readTrace, traceDrag, untilIdle, type MoveCost } from "./dragTrace";
import { median, print, quantile, quickest } from "./table";
import { within } from "./within";

/** A phone is taken to be so many times as slow. */
export const PHONE_SLOWER = 4;
export const PHONE = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  deviceScaleFactor: 2,
  serviceWorkers: "block",
} as const;

const VIEWS = 3;
const ROUNDS = 2;
const DRAG = { moves: 50, rest: 64, touch: true } as const;
/** Seconds, on a machine that is shared. */
const AT_MOST = 120;

export async function benchPhone(browser: Browser, address: string): Promise<void> {
  const context = await browser.newContext(PHONE);
  const page = await context.newPage();
  page.setDefaultTimeout(AT_MOST * 1000);
  const cdp = await context.newCDPSession(page);
  await cdp.send("Emulation.setCPUThrottlingRate", { rate: PHONE_SLOWER });
  const views: number[] = [];
  for (let turn = 0; turn < VIEWS; turn += 1) {
    // From nothing: another address, so that it is not only the hash that changes.
    await page.goto("about:blank");
    await page.goto(`${address}#tape`);
    await page.locator("main input:enabled").first().waitFor();
    views.push(await page.evaluate(() => performance.now()));
  }
  await page.goto(`${address}#darts`);
  const handle = page.getByTestId("handle-front-waistDart-apex");
  await handle.waitFor();
  await page.waitForLoadState("networkidle");
  await untilIdle(page);
  const moves: MoveCost[] = [];
  let longest = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const cost = await within("a drag on a phone", AT_MOST, async () =>
      readTrace(await traceDrag(browser, page, handle, DRAG)),
    );
    moves.push(...cost.moves);
    longest = Math.max(longest, cost.longestRun);
  }
  await cdp.send("HeapProfiler.collectGarbage");
  const { usedSize } = await cdp.send("Runtime.getHeapUsage");
  print(
    `On a phone (${PHONE.viewport.width} by ${PHONE.viewport.height}, ${PHONE_SLOWER} times slower): from the address to the first field, ms`,
    ["median", "worst", "quickest", "heap in the end, MB"],
    [[median(views), Math.max(...views), quickest(views), usedSize / 1e6]],
  );
  const row = (name: string, of: (move: MoveCost) => number): (string | number)[] => {
    const all = moves.map((move) => of(move));
    return [name, quantile(all, 0.5), quantile(all, 0.95), quantile(all, 0)];
  };
  print(
    `Each of ${moves.length} moves of a dart's end there, ms as the main thread ran (longest task ${longest.toFixed(0)})`,
    ["what", "median", "95 %", "quickest"],
    [
      row("script", ({ scriptRun }) => scriptRun),
      row("style, layout", ({ layout }) => layout),
      row("paint", ({ paint }) => paint),
      row("all of it", ({ scriptRun, layout, paint }) => scriptRun + layout + paint),
    ],
  );
  await context.close();
}
