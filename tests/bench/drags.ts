/** The part of the bench that drags: what a move costs by the browser's own trace, and what a file of many alterations does to the page. */
import type { Browser, BrowserContext, Page } from "@playwright/test";
import type { Alteration } from "../../src/core/decisions/alteration";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { LIMITS } from "../../src/core/decisions/limits";
import { demoWorks } from "../../src/document/demo";
import { writeWorkFile } from "../../src/document/workFile";
import { CATEGORIES, readTasks, readTrace, traceDrag, untilIdle, type DragCost, type MoveCost } from "./dragTrace";
import { PHONE, PHONE_SLOWER } from "./phone";
import { print, quantile } from "./table";
import { within } from "./within";

/** How often each drag is made, by turns, since others share the machine. */
const ROUNDS = 2;
/** Seconds that one drag, or one thing done, may take, on a machine that is shared. */
const AT_MOST = 60;

const [hip, , , midriff] = demoWorks();
const DEMOS = [
  { name: "hip", work: invariant(hip, "demo"), handle: "handle-front-waistDart-apex" },
  { name: "midriff", work: invariant(midriff, "demo"), handle: "handle-cup-underBustDart-apex" },
] as const;

/** Between moves the page is given more time than it takes for one, ms. */
const SIZES = [
  { name: "desk", isPhone: false, moves: 80, rest: 24 },
  { name: "phone, 4 times slower", isPhone: true, moves: 50, rest: 64 },
] as const;

const contextOf = (browser: Browser, isPhone: boolean): Promise<BrowserContext> =>
  browser.newContext(isPhone ? PHONE : { viewport: { width: 1440, height: 900 }, serviceWorkers: "block" });

/** Opens a work as a file, on the step of darts. */
async function openWork(page: Page, address: string, work: Work): Promise<void> {
  page.setDefaultTimeout(AT_MOST * 1000);
  await page.goto(address);
  await chooseFile(page, work);
  await page.evaluate(() => {
    location.hash = "darts";
  });
  await page.getByRole("heading", { level: 2, name: "Darts" }).waitFor();
  await page.locator(".new-line").first().waitFor({ state: "attached" });
  // All that is loaded ahead has come.
  await page.waitForLoadState("networkidle");
  await untilIdle(page);
}

async function chooseFile(page: Page, work: Work): Promise<void> {
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
}

interface Dragged {
  readonly key: string;
  readonly drag: () => Promise<DragCost>;
}

async function openDragged(browser: Browser, address: string): Promise<readonly Dragged[]> {
  const opened: Dragged[] = [];
  for (const { name: size, isPhone, moves, rest } of SIZES)
    for (const { name: demo, work, handle } of DEMOS) {
      const context = await contextOf(browser, isPhone);
      const page = await context.newPage();
      await openWork(page, address, work);
      if (isPhone) {
        const cdp = await context.newCDPSession(page);
        await cdp.send("Emulation.setCPUThrottlingRate", { rate: PHONE_SLOWER });
      }
      const drag = async (): Promise<DragCost> => {
        await page.bringToFront();
        return readTrace(await traceDrag(browser, page, page.getByTestId(handle), { moves, rest, touch: isPhone }));
      };
      opened.push({ key: `${demo}, ${size}`, drag });
    }
  return opened;
}

export async function benchDrags(browser: Browser, address: string): Promise<void> {
  const opened = await within("opening the works to drag in", 2 * AT_MOST, () => openDragged(browser, address));
  const costs = new Map<string, DragCost[]>();
  for (let round = 0; round < ROUNDS; round += 1)
    for (const { key, drag } of opened) {
      const cost = await within(`a drag on ${key}`, AT_MOST, drag);
      if (cost.moves.length === 0) throw new Error(`no move of ${key} in the trace`);
      costs.set(key, [...(costs.get(key) ?? []), cost]);
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
      at("scriptRun", 0),
      at("script", 0.5),
      at("script", 0.95),
      at("layout", 0.5),
      at("paint", 0.5),
      Math.max(...runs.map(({ longestRun }) => longestRun)),
      Math.max(...runs.map(({ longest }) => longest)),
      runs.reduce((sum, { longByClock }) => sum + longByClock, 0),
    ];
  });
  print(
    "Each move of a dart's end on Darts, by the browser's trace, ms of the main thread (aim: script 4 at 95 % as run at the desk, no task over 50)",
    [
      "demo",
      "moves",
      "script as run",
      "95 %",
      "quickest",
      "by the clock",
      "95 %",
      "style, layout",
      "paint",
      "longest task",
    ],
    rows,
  );
  printLong([...costs].flatMap(([key, runs]) => runs.flatMap(({ long }) => long.map((task) => `${key}: ${task}`))));
}

/** Of many alike the first say enough. */
const MOST_TOLD = 12;

function printLong(tasks: readonly string[]): void {
  const more = tasks.length > MOST_TOLD ? [`and ${tasks.length - MOST_TOLD} more`] : [];
  const told = [...tasks.slice(0, MOST_TOLD), ...more];
  console.log(told.length === 0 ? "  no task over 50 ms as run" : `  over 50 ms as run:\n    ${told.join("\n    ")}`);
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

/** What comes of it a little later, as saving and what waits for keys to rest, is part of it; ms. */
const LATER = 1200;

interface Timed {
  readonly timed: (what: string, doing: () => Promise<unknown>) => Promise<void>;
  readonly tell: (title: string) => void;
}

/** What some things done to a page make it do, task by task. */
function tasksTimed(browser: Browser, page: Page): Timed {
  const rows: (string | number)[][] = [];
  const long: string[] = [];
  return {
    timed: (what, doing) =>
      within(what, AT_MOST, async () => {
        await browser.startTracing(page, { categories: CATEGORIES });
        await doing();
        await page.waitForTimeout(LATER);
        await untilIdle(page);
        const cost = readTasks((await browser.stopTracing()).toString());
        rows.push([what, cost.longestRun, cost.longest, cost.longByClock, cost.script]);
        long.push(...cost.long.map((task) => `${what}: ${task}`));
      }),
    tell: (title) => {
      print(
        title,
        ["what is done", "longest task as run", "by the clock", "over 50 by the clock", "all script, as run"],
        rows,
      );
      printLong(long);
    },
  };
}

/** A pattern read from a file, opened while another work is shown; each time in a page that never saw one. */
export async function benchOwn(browser: Browser, address: string): Promise<void> {
  const work = invariant(
    demoWorks().find(({ pattern }) => pattern.own?.inUse === true),
    "demo on its own pieces",
  );
  for (let round = 0; round < ROUNDS; round += 1) {
    const context = await contextOf(browser, false);
    const page = await context.newPage();
    await openWork(page, address, DEMOS[0].work);
    const { timed, tell } = tasksTimed(browser, page);
    await timed("opening her own pieces", () => chooseFile(page, work));
    await timed("opening them once more", () => chooseFile(page, { ...work, name: `${work.name} again` }));
    tell("A pattern read from a file, with its first plan, ms (aim: no task over 50)");
    await context.close();
  }
}

export async function benchCrowded(browser: Browser, address: string): Promise<void> {
  const context = await contextOf(browser, false);
  const page = await context.newPage();
  const { timed, tell } = tasksTimed(browser, page);
  const work = crowded(DEMOS[0].work);
  await page.goto(address);
  await timed("opening it, with its first plan", () => openWork(page, address, work));
  await timed("lighting a slip", () => page.locator(".slip .slip-face").nth(100).click());
  await timed("taking one out", () => page.locator(".slip-remove").nth(100).click());
  await timed("undo", () => page.keyboard.press("Control+z"));
  const handle = page.getByTestId(DEMOS[0].handle);
  await timed("moving a dart by a key", () => handle.press("ArrowDown"));
  tell(`A file of ${LIMITS.alterations} alterations, ms (no freeze)`);
  const [{ moves, rest }] = SIZES;
  const drag = await within("a drag", AT_MOST, async () =>
    readTrace(await traceDrag(browser, page, handle, { moves, rest })),
  );
  const runs = drag.moves.map(({ scriptRun }) => scriptRun);
  print(
    `Each move of a dart's end there, script as run, ms`,
    ["moves", "median", "95 %", "quickest", "longest task as run", "by the clock"],
    [[runs.length, quantile(runs, 0.5), quantile(runs, 0.95), quantile(runs, 0), drag.longestRun, drag.longest]],
  );
  printLong(drag.long);
  await context.close();
}
