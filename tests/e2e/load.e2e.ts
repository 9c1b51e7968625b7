/** A small share of `npm run load-page`: a dart's end dragged many times. */
import { expect, test } from "@playwright/test";
import { heapOverDrags } from "../simulation/load/heapLoad";
import { errorsOf } from "../simulation/load/pageErrors";

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
