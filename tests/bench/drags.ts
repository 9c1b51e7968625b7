/** The part of the bench that drags: what a move costs by the browser's own trace, and what a file of many alterations does to the page. */
import type { Browser, BrowserContext, Page } from "@playwright/test";
import type { Alteration } from "../../src/core/decisions/alteration";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { LIMITS } from "../../src/core/decisions/limits";
import { demoWorks } from "../../src/document/demo";
import { writeWorkFile } from "../../src/document/workFile";
import { CATEGORIES, readTasks, readTrace, traceDrag, type DragCost, type MoveCost } from "./dragTrace";
import { print, quantile } from "./table";

const MOVES = 120;
/** Each drag is made so often, by turns, since others share the machine. */
const ROUNDS = 3;
/** A phone is taken to be so many times as slow. */
const PHONE_SLOWER = 4;

const [hip, , , midriff] = demoWorks();
const DEMOS = [
  { name: "hip", work: invariant(hip, "demo"), handle: "handle-front-waistDart-apex" },
  { name: "midriff", work: invariant(midriff, "demo"), handle: "handle-cup-underBustDart-apex" },
] as const;

const SIZES = [
  { name: "desk", isPhone: false },
  { name: "phone, 4 times slower", isPhone: true },
] as const;

const contextOf = (browser: Browser, isPhone: boolean): Promise<BrowserContext> =>
  browser.newContext(
    isPhone
      ? { viewport: { width: 390, height: 844 }, hasTouch: true, deviceScaleFactor: 2 }
      : { viewport: { width: 1440, height: 900 } },
  );

/** Opens a work as a file, on the step of darts. */
async function openWork(page: Page, address: string, work: Work): Promise<void> {
  await page.goto(address);
  await page.getByRole("button", { name: "Works" }).click();
  await page.getByLabel("Work file").setInputFiles({
    name: "bench.json",
    mimeType: "application/json",
    buffer: Buffer.from(writeWorkFile(work)),
  });
  await page.waitForFunction(
    (name) => [...document.querySelectorAll("input")].some(({ value }) => value === name),
    work.name,
  );
  await page.keyboard.press("Escape");
  await page.goto(`${address}#darts`);
  await page.getByRole("heading", { level: 2, name: "Darts" }).waitFor();
  await page.locator(".new-line").first().waitFor({ state: "attached" });
}

export async function benchDrags(browser: Browser, address: string): Promise<void> {
  const costs = new Map<string, DragCost[]>();
  for (let round = 0; round < ROUNDS; round += 1)
    for (const { name: size, isPhone } of SIZES)
      for (const { name: demo, work, handle } of DEMOS) {
        const context = await contextOf(browser, isPhone);
        const page = await context.newPage();
        await openWork(page, address, work);
        const cdp = await context.newCDPSession(page);
        if (isPhone) await cdp.send("Emulation.setCPUThrottlingRate", { rate: PHONE_SLOWER });
        const trace = await traceDrag(browser, page, page.getByTestId(handle), {
          moves: MOVES,
          rest: isPhone ? 120 : 40,
          touch: isPhone,
        });
        const key = `${demo}, ${size}`;
        costs.set(key, [...(costs.get(key) ?? []), readTrace(trace)]);
        await context.close();
      }
  const rows = [...costs].map(([key, runs]) => {
    const moves = runs.flatMap((run) => run.moves);
    const at = (of: keyof MoveCost, share: number): number =>
      quantile(
        moves.map((move) => move[of]),
        share,
      );
    return [
      key,
      moves.length,
      at("scriptRun", 0.5),
      at("scriptRun", 0.95),
      at("script", 0.5),
      at("script", 0.95),
      at("layout", 0.5),
      at("paint", 0.5),
      Math.max(...runs.map(({ longest }) => longest)),
    ];
  });
  print(
    "Each move of a dart's end on Darts, by the browser's trace, ms of the main thread (aim: script 4 at 95 % as run at the desk, no task over 50)",
    ["demo", "moves", "script as run", "95 %", "by the clock", "95 %", "style, layout", "paint", "longest task"],
    rows,
  );
}

/** As many alterations as a file may hold: ends moved to and fro, so that all can be made. */
function crowded(work: Work): Work {
  const alterations = Array.from({ length: LIMITS.alterations }, (_, i): Alteration => ({
    kind: "dartEnd",
    id: `s${i}`,
    dart: { piece: i % 2 === 0 ? "front" : "back", dart: "waistDart" },
    shorten: i % 4 < 2 ? 1 : -1,
    across: 0,
    hold: "fullness",
    giveBack: {},
  }));
  return { ...work, name: "Crowded (invented)", alterations };
}

export async function benchCrowded(browser: Browser, address: string): Promise<void> {
  const context = await contextOf(browser, false);
  const page = await context.newPage();
  const rows: (string | number)[][] = [];
  const timed = async (what: string, doing: () => Promise<void>): Promise<void> => {
    await browser.startTracing(page, { categories: CATEGORIES });
    await doing();
    // What comes of it a little later, as saving, is part of it.
    await page.waitForTimeout(1500);
    const { longest, longestRun, script } = readTasks((await browser.stopTracing()).toString());
    rows.push([what, longest, longestRun, script]);
  };
  const work = crowded(DEMOS[0].work);
  await page.goto(address);
  await timed("opening it", () => openWork(page, address, work));
  const slip = page.locator(".slip .slip-face").nth(100);
  await timed("lighting a slip", () => slip.click());
  await timed("taking one out", () => page.locator(".slip-remove").nth(100).click());
  await timed("undo", () => page.keyboard.press("Control+z"));
  const handle = page.getByTestId("handle-front-waistDart-apex");
  await timed("moving a dart by a key", () => handle.press("ArrowDown"));
  print(
    `A file of ${LIMITS.alterations} alterations, ms (no freeze)`,
    ["what is done", "longest task", "as run", "all script, as run"],
    rows,
  );
  await context.close();
}
