/** A small share of `npm run load-page`: random works opened and looked at, a dart's end dragged many times. */
import { expect, test } from "@playwright/test";
import { heapOverDrags } from "../simulation/load/heapLoad";
import { loadCase } from "../simulation/load/loadWork";
import { errorsOf } from "../simulation/load/pageErrors";
import { loadOnPage } from "../simulation/load/pageLoad";

/** Elements that come and go with what is written on the table. */
const NODES = 200;
const LISTENERS = 20;

test("a dart's end dragged two hundred moves leaves no elements and no listeners behind", async ({ page }) => {
  const errors = errorsOf(page);
  await page.goto("./#darts");
  const handle = page.getByTestId("handle-front-waistDart-apex");
  await handle.waitFor();
  await page.waitForLoadState("networkidle");
  const before = await handle.getAttribute("transform");
  const heaps = await heapOverDrags(page, handle, 200, 100);
  expect(await handle.getAttribute("transform")).not.toBe(before);
  // What the first drags bring with them, a slip among it, stays.
  const [, first, last] = heaps;
  expect((last?.nodes ?? Infinity) - (first?.nodes ?? 0)).toBeLessThan(NODES);
  expect((last?.listeners ?? Infinity) - (first?.listeners ?? 0)).toBeLessThan(LISTENERS);
  expect(errors).toEqual([]);
});

/** One of each kind of work. */
const SEEDS = { demo: 1, dressed: 2, harsh: 3, own: 12, trial: 31 } as const;

for (const [kind, seed] of Object.entries(SEEDS))
  test(`a work of the kind “${kind}” is opened, looked at and worked on with nothing amiss`, async ({ page }) => {
    expect(loadCase(seed).kind).toBe(kind);
    const errors = errorsOf(page);
    await page.goto("./");
    expect(await loadOnPage(page, seed, errors)).toEqual([]);
  });
