/** The page for every pair of eyes: by night, in the system's own colours, without motion, with more contrast. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test, type Locator, type Page } from "@playwright/test";
import { contrast, luminance } from "../support/tokens";
import { root } from "./site";
import { expectNoAxeViolations, goTo, STEPS } from "./support";

/** What a browser says of a colour, as #rrggbb: drawn on a canvas over the page's own, whatever way it was written. */
const colourOf = (target: Locator, property: string): Promise<string> =>
  target.first().evaluate((element, name) => {
    const said = getComputedStyle(element).getPropertyValue(name);
    const context = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
    if (context === null) return said;
    for (const colour of [getComputedStyle(document.documentElement).backgroundColor, said]) {
      context.fillStyle = colour;
      context.fillRect(0, 0, 1, 1);
    }
    const [red = 0, green = 0, blue = 0] = context.getImageData(0, 0, 1, 1).data;
    return `#${[red, green, blue].map((part) => part.toString(16).padStart(2, "0")).join("")}`;
  }, property);

async function openDarts(page: Page): Promise<void> {
  await page.goto("./#darts");
  await expect(page.locator(".table-sheet .new-line").first()).toBeVisible();
  await page.locator(".dart-choice").first().click();
}

async function openNamed(page: Page, name: (label: string) => string): Promise<void> {
  const work = readFileSync(join(root, "demo-data", "siskin.json"), "utf8");
  const renamed = work.replaceAll(
    /"(label|baseSize|size)": ?"(\d+)"/g,
    (_, key: string, label: string) => `"${key}":${JSON.stringify(name(label))}`,
  );
  await page.goto("./");
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await page.getByLabel("Work file").setInputFiles({
    name: "named.json",
    mimeType: "application/json",
    buffer: Buffer.from(renamed),
  });
  await expect(page.getByLabel("Name of this work")).toHaveValue("Siskin bodice and its two trials (invented)");
}

test.describe("by night", () => {
  test.use({ colorScheme: "dark" });

  test("the page is dark and paper is light", async ({ page }) => {
    await openDarts(page);
    expect(luminance(await colourOf(page.locator("html"), "background-color"))).toBeLessThan(0.03);
    expect(luminance(await colourOf(page.locator(".ledger-place"), "background-color"))).toBeLessThan(0.03);
    expect(luminance(await colourOf(page.locator(".table"), "background-color"))).toBeGreaterThan(0.7);
    const line = await colourOf(page.locator(".table-sheet .new-line"), "stroke");
    expect(contrast(line, await colourOf(page.locator(".table"), "background-color"))).toBeGreaterThan(4);
    expect(await page.locator(".table").evaluate((table) => getComputedStyle(table).colorScheme)).toBe("light");
    await goTo(page, "Tape");
    expect(luminance(await colourOf(page.locator(".tape-figure"), "background-color"))).toBeGreaterThan(0.7);
    await goTo(page, "Dress");
    expect(luminance(await colourOf(page.locator(".line-figure"), "background-color"))).toBeGreaterThan(0.7);
  });

  test("every step reads well", async ({ page }) => {
    await page.goto("./");
    for (const step of STEPS) {
      await goTo(page, step);
      await expectNoAxeViolations(page);
    }
  });

  test("what is printed is black on white", async ({ page }) => {
    await page.goto("./#paper");
    const sheet = page.locator(".printed-checklist");
    await expect(sheet).toBeVisible();
    await page.emulateMedia({ media: "print", colorScheme: "dark" });
    // The page lets go of its ground: what is left is the printer's paper, light whatever she wishes for the screen.
    const { scheme, ground } = await page.evaluate(() => {
      const { colorScheme, backgroundColor } = getComputedStyle(document.documentElement);
      return { scheme: colorScheme, ground: backgroundColor };
    });
    expect(scheme).toBe("light");
    expect(["rgba(0, 0, 0, 0)", "rgb(255, 255, 255)"]).toContain(ground);
    expect(await colourOf(sheet, "background-color")).toBe("#ffffff");
    expect(await colourOf(sheet, "color")).toBe("#000000");
  });

  test("the sheet before the page is dark as well", async ({ page }) => {
    await page.route(/\/assets\//, (route) => route.abort());
    await page.goto("./");
    await expect(page.locator(".opening-help")).toBeVisible();
    const ground = await colourOf(page.locator("html"), "background-color");
    expect(luminance(ground)).toBeLessThan(0.03);
    expect(contrast(await colourOf(page.locator(".opening"), "color"), ground)).toBeGreaterThan(7);
    await expectNoAxeViolations(page);
  });
});

for (const colorScheme of ["dark", "light"] as const)
  test.describe(`in the system's own ${colorScheme} colours`, () => {
    test.use({ colorScheme, forcedColors: "active" });

    test("every line of the table stands out, and what is chosen is told", async ({ page }) => {
      await openDarts(page);
      const ground = await colourOf(page.locator(".table"), "background-color");
      const faint: string[] = [];
      for (const line of [
        ".table-sheet .new-line",
        ".printed-size path",
        ".dart[data-selected] .dart-legs",
        ".table-sheet .grain",
        ".table-sheet .level",
        ".table-sheet .hatch",
        ".table-sheet .handle-dot",
        ".thread li[data-sewn] .stitch path",
        ".thread li:not([data-sewn]) .stitch path",
      ]) {
        const found = contrast(await colourOf(page.locator(line), "stroke"), ground);
        if (found < 3) faint.push(`${line}: ${found.toFixed(2)}`);
      }
      expect(faint).toEqual([]);
      const words = page.locator(".label-title text, .label-dart text");
      expect(contrast(await colourOf(words, "fill"), ground)).toBeGreaterThanOrEqual(4.5);
      expect(await colourOf(words, "stroke")).toBe(ground);

      const chosen = page.locator('.dart-choice[aria-pressed="true"]');
      const other = page.locator('.dart-choice[aria-pressed="false"]');
      const fill = await colourOf(chosen, "background-color");
      expect(contrast(fill, await colourOf(other, "background-color"))).toBeGreaterThanOrEqual(3);
      expect(contrast(fill, await colourOf(chosen, "color"))).toBeGreaterThanOrEqual(4.5);
      const unit = page.locator(".choice-mark");
      expect(
        contrast(
          await colourOf(unit.locator("input:checked + span"), "background-color"),
          await colourOf(unit.locator("input:not(:checked) + span"), "background-color"),
        ),
      ).toBeGreaterThanOrEqual(3);
    });

    test("figures are drawn in them, and sheets stay paper", async ({ page }) => {
      await page.goto("./");
      const figure = page.locator(".tape-figure");
      const ground = await colourOf(page.locator("html"), "background-color");
      expect(contrast(await colourOf(figure.locator(".figure-edge"), "stroke"), ground)).toBeGreaterThanOrEqual(4.5);
      await goTo(page, "Paper");
      const sheet = page.locator(".paper-preview .printed-checklist");
      await expect(sheet).toBeVisible();
      expect(await colourOf(sheet, "background-color")).toBe("#ffffff");
      expect(await colourOf(sheet, "color")).toBe("#000000");
      const main = page.locator(".step .button.main");
      expect(contrast(await colourOf(main, "background-color"), await colourOf(main, "color"))).toBeGreaterThanOrEqual(
        4.5,
      );
    });
  });

test.describe("without motion", () => {
  test.use({ reducedMotion: "reduce" });

  test("nothing moves on any step", async ({ page }) => {
    await page.goto("./");
    for (const step of STEPS) {
      await goTo(page, step);
      const moving = await page.evaluate(() => {
        const longest = (said: string): number => Math.max(...said.split(",").map((one) => Number.parseFloat(one)));
        return [...document.querySelectorAll("*")].flatMap((element) =>
          ["", "::before", "::after"].flatMap((part) => {
            const { transitionDuration, animationDuration, scrollBehavior } = getComputedStyle(element, part || null);
            const isStill =
              longest(transitionDuration) <= 0.001 && longest(animationDuration) <= 0.001 && scrollBehavior === "auto";
            return isStill ? [] : [`${element.tagName}${part}`];
          }),
        );
      });
      expect(moving).toEqual([]);
    }
  });
});

test.describe("with more contrast", () => {
  test.use({ contrast: "more" });

  test("soft ink is ink and rules are edges, on paper too", async ({ page }) => {
    await openDarts(page);
    const ink = await colourOf(page.locator("html"), "color");
    expect(await colourOf(page.locator(".step-head p"), "color")).toBe(ink);
    expect(await colourOf(page.locator(".table-source"), "color")).toBe(ink);
    expect(
      contrast(
        await colourOf(page.locator(".slip"), "border-top-color"),
        await colourOf(page.locator(".slip"), "background-color"),
      ),
    ).toBeGreaterThanOrEqual(3);
  });
});

/** How far what stands in each of these is wider than it, in pixels. */
const overflowing = (page: Page, selector: string): Promise<string[]> =>
  page
    .locator(selector)
    .evaluateAll((all) =>
      all
        .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 1)
        .map((one) => (one instanceof HTMLInputElement ? one.value : one.className)),
    );

for (const { said, name } of [
  { said: "six letters", name: (label: string) => `UK ${label} P` },
  { said: "twelve letters", name: (label: string) => `Regular ${label.padStart(4, "0")}` },
  { said: "twenty-eight letters", name: (label: string) => `Regular and tall figures ${label.padStart(3, "0")}` },
])
  test(`names of sizes of ${said} are read whole in chart and ledger`, async ({ page }) => {
    await page.setViewportSize({ width: 1440, height: 900 });
    await openNamed(page, name);
    await goTo(page, "Envelope");
    await expect(page.getByLabel("Name of size 1", { exact: true })).toHaveValue(name("8"));
    await expect(page.locator(".slip-amount", { hasText: name("14") }).first()).toBeVisible();
    expect(await overflowing(page, ".size-row input, .cup-row input")).toEqual([]);
    expect(await overflowing(page, ".ledger-place, .ledger-place .slip, .ledger-place .slip-face, .step")).toEqual([]);
  });

for (const [width, height] of [
  [1024, 611],
  [1200, 611],
  [1440, 560],
] as const)
  test(`the table's tools cover no piece at ${width} × ${height}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openNamed(page, (label) => label);
    for (const step of ["Blend", "Trial", "Dress"] as const) {
      await goTo(page, step);
      await expect
        .poll(() =>
          page.evaluate(() => {
            const boxes = (selector: string): DOMRect[] =>
              [...document.querySelectorAll(selector)].map((one) => one.getBoundingClientRect());
            const pieces = boxes(".table-sheet .printed-size path, .table-sheet .new-line");
            const tools = boxes(".table-tools .tool, .table-tool-row label").filter((box) => box.height > 0);
            return tools.filter((tool) =>
              pieces.some(
                (piece) =>
                  piece.left < tool.right &&
                  tool.left < piece.right &&
                  piece.top < tool.bottom &&
                  tool.top < piece.bottom,
              ),
            ).length;
          }),
        )
        .toBe(0);
    }
  });
