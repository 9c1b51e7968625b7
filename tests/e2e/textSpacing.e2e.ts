/** Text set as wide as WCAG 1.4.12 asks for: lines, letters, words and paragraphs further apart. Every step, unfolded. */
import { expect, test } from "@playwright/test";
import { cutOff, openStep, STEPS, unfold } from "./support";

const SPACED = `
  * { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-block-end: 2em !important; }
`;

for (const [width, height] of [
  [1280, 800],
  [390, 844],
] as const)
  test(`nothing is cut off with text spaced as a reader may set it, at ${width}`, async ({ page }) => {
    test.slow();
    await page.setViewportSize({ width, height });
    for (const step of STEPS) {
      await openStep(page, step);
      // The page's policy lets no style be written into it.
      await page.evaluate((rules) => {
        const sheet = new CSSStyleSheet();
        sheet.replaceSync(rules);
        document.adoptedStyleSheets = [sheet];
      }, SPACED);
      await unfold(page);
      expect(await cutOff(page), step).toEqual([]);
    }
  });
