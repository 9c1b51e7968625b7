/** Lengths in inches on every step with all of it unfolded: their fractions are drawn, and none breaks over two lines. */
import { expect, test, type Page } from "@playwright/test";
import { openStep, STEPS, unfold } from "./support";

test.use({ locale: "en-GB" });

/** Runs in the page: texts with a part of an inch that is not drawn as a fraction. */
function undrawn(): readonly string[] {
  // What a menu says is the browser's own text, and what is only spoken is read and not seen.
  const apart = "option, .fraction, .visually-hidden, title, script";
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found: string[] = [];
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode())
    if (/\d\/(?:2|4|8|16|32)\b/.test(node.textContent ?? "") && node.parentElement?.closest(apart) === null)
      found.push(`${node.parentElement.className} “${(node.textContent ?? "").slice(0, 60)}”`);
  return found;
}

/** Runs in the page: lengths whose number stands on another line than their unit. */
function broken(): readonly string[] {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const found: string[] = [];
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const text = node.textContent ?? "";
    if (node.parentElement?.closest("svg, option, .visually-hidden, textarea") !== null) continue;
    for (const { index, 0: length } of text.matchAll(/[\d½¼¾]\sin(?!\w)/g)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + length.length);
      const tops = [...range.getClientRects()].filter(({ width }) => width > 0).map(({ top }) => Math.round(top));
      if (new Set(tops).size > 1) found.push(text.slice(Math.max(0, index - 20), index + length.length));
    }
  }
  // A fraction is a mark of its own: its whole number before it and its unit behind it stand on its line too.
  for (const fraction of document.querySelectorAll(".fraction")) {
    if (fraction.closest("svg, option, .visually-hidden, textarea") !== null) continue;
    const [before, after] = [fraction.previousSibling, fraction.nextSibling];
    const whole = /\d\s$/.exec(before?.textContent ?? "");
    const unit = /^\sin(?!\w)/.exec(after?.textContent ?? "");
    const range = document.createRange();
    if (whole !== null && before instanceof Text) range.setStart(before, whole.index);
    else range.setStartBefore(fraction);
    if (unit !== null && after instanceof Text) range.setEnd(after, unit[0].length);
    else range.setEndAfter(fraction);
    const tops = [...range.getClientRects()].filter(({ width }) => width > 0).map(({ top }) => top);
    const { height } = fraction.getBoundingClientRect();
    if (Math.max(...tops) - Math.min(...tops) > height / 2) found.push(`${range.toString()} (a fraction)`);
  }
  return found;
}

const inInches = (page: Page) => page.locator(".head label").filter({ hasText: /^in$/ }).click();

for (const width of [1280, 320])
  test(`parts of an inch are drawn as fractions and keep their unit, at ${width}`, async ({ page }) => {
    test.slow();
    await page.setViewportSize({ width, height: 800 });
    await openStep(page, "Tape");
    await inInches(page);
    let drawn = 0;
    for (const step of STEPS) {
      await openStep(page, step);
      await unfold(page);
      expect(await page.evaluate(undrawn)).toEqual([]);
      expect(await page.evaluate(broken)).toEqual([]);
      drawn += await page.locator(".fraction").count();
    }
    expect(drawn).toBeGreaterThan(100);
  });
