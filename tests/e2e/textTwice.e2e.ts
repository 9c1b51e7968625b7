/** The browser's own text size at 200 %, which the page follows in all its lengths: every step with all of it unfolded. */
import { expect, test } from "@playwright/test";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { cutOff, openStep, STEPS, unfold } from "./support";

const browser = installedBrowser();

// Widths of the styles are told in this size too, as they are where she sets it: a style of the page's own would not reach them.
test.use({
  launchOptions: {
    args: [...browserFlags(), "--blink-settings=defaultFontSize=32"],
    ...(browser === undefined ? {} : { executablePath: browser }),
  },
});

for (const [width, height] of [
  [1280, 800],
  [390, 844],
] as const)
  test(`nothing is cut off with letters twice as large, at ${width}`, async ({ page }) => {
    test.slow();
    await page.setViewportSize({ width, height });
    for (const step of STEPS) {
      await openStep(page, step);
      expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe("32px");
      await unfold(page);
      expect(await cutOff(page), step).toEqual([]);
      // All of the bar is under the thumb, and nothing lies on the name of the work.
      const bar = page.locator(".phone-bar button").filter({ visible: true });
      await expect(bar).toHaveCount(5);
      for (const button of await bar.all()) await expect(button).toBeInViewport({ ratio: 1 });
    }
    await page.getByLabel("Name of this work").click({ trial: true });
  });
