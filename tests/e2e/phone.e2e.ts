/* oxlint-disable no-await-in-loop -- one after the other */
/** The page in one hand: what lies under the thumb, how large it is, and what is seen of a step when keys come up. */
import { expect, test, type Page } from "@playwright/test";
import { boxAtRest, expectNoAxeViolations, goTo, STEPS } from "./support";

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

const bar = (page: Page) => page.getByRole("navigation", { name: "Undo, pieces and ledger" });
const table = (page: Page) => page.getByRole("region", { name: "Table with the pattern pieces" });
const press = (page: Page, name: string | RegExp) => bar(page).getByRole("button", { name, exact: true }).tap();

const inInches = (page: Page) => page.locator(".head label").filter({ hasText: /^in$/ }).tap();

/** Every fold is opened, and those that come out of them. */
async function openAll(page: Page): Promise<void> {
  const folded = page.locator("details:not([open])");
  await expect
    .poll(async () => {
      await folded.evaluateAll((all) => all.forEach((fold) => fold.setAttribute("open", "")));
      await page.waitForTimeout(250);
      return folded.count();
    })
    .toBe(0);
}

/** Runs in the page: what can be pressed and is too small for a fingertip, but for words in the middle of a sentence. */
function tooSmall(): readonly string[] {
  const least = 43.5;
  const small = [...document.querySelectorAll("a[href], button, input, select, textarea, summary")].flatMap(
    (control) => {
      if (!control.checkVisibility({ visibilityProperty: true }) || control.matches(".skip")) return [];
      const target = control.matches("[type=radio], [type=checkbox]") ? (control.closest("label") ?? control) : control;
      const { width, height } = target.getBoundingClientRect();
      const isInText =
        getComputedStyle(control).display.startsWith("inline") &&
        control.matches("a, .link-button, .term-name") &&
        (control.closest(".term") ?? control).parentElement?.textContent?.trim() !== control.textContent?.trim();
      const words = `${control.tagName} “${(control.textContent ?? "").slice(0, 30)}” ${control.className}`;
      return isInText || (width >= least && height >= least)
        ? []
        : [`${words} ${Math.round(width)} × ${Math.round(height)}`];
    },
  );
  return [...new Set(small)];
}

/** Runs in the page: what reaches past the right of the screen and is not in a box that scrolls by itself. */
function pastTheScreen(): readonly string[] {
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= wide) return [];
  return [...document.querySelectorAll("body *")]
    .filter((one) => one.closest("svg") === null && one.getBoundingClientRect().right > wide + 0.5)
    .map((one) => `${one.tagName} ${one.className}`)
    .slice(0, 8);
}

test("everything that can be pressed is as large as a fingertip, on every step with every fold open", async ({
  page,
}) => {
  test.slow();
  await page.goto("./");
  for (const step of STEPS) {
    await goTo(page, step);
    await openAll(page);
    expect(await page.evaluate(tooSmall)).toEqual([]);
  }
  await press(page, "Show the pieces");
  await page.getByRole("button", { name: "Lines" }).tap();
  expect(await page.evaluate(tooSmall)).toEqual([]);
});

/** Runs in the page: what of a table is cut off, or scrolls in a box that keys do not reach or that nobody can name. */
function tablesOutOfReach(): readonly string[] {
  return [...document.querySelectorAll("table")].flatMap((one) => {
    if (!one.checkVisibility()) return [];
    let box: Element = one;
    while (box.parentElement !== null && getComputedStyle(box).overflowX === "visible") box = box.parentElement;
    const isCut = one.getBoundingClientRect().right > box.getBoundingClientRect().right + 0.5;
    const isReached = box.matches("[tabindex='0']:is([role=group], [role=region]):is([aria-label], [aria-labelledby])");
    const words = `${(one.textContent ?? "").slice(0, 40)} in ${box.className}`;
    return isCut && !(["auto", "scroll"].includes(getComputedStyle(box).overflowX) && isReached) ? [words] : [];
  });
}

/** Eight columns, and names of twelve letters. */
const WIDE_CHART = [
  "Body measurements in inches",
  ["Size", ...[8, 10, 12, 14].map((size) => `Petite ${String(size).padStart(5, "0")}`)].join("\t"),
  "Bust\t31 1/2\t33 1/8\t34 5/8\t36 1/4",
  "Waist\t24 3/8\t26\t27 1/2\t29 1/8",
  "Hip\t33 7/8\t35 3/8\t37\t38 5/8",
  "Finished bust\t34 1/4\t35 7/8\t37 3/8\t39",
  "Finished waist\t25 5/8\t27 1/8\t28 3/4\t30 3/8",
  "Finished hip\t36 5/8\t38 1/8\t39 3/4\t41 3/8",
  "Back waist length\t15 3/8\t15 5/8\t15 7/8\t16 1/8",
].join("\n");

for (const [of, width, height] of [
  ["the narrowest phone", 320, 640],
  ["a screen seen at 400 %", 320, 256],
] as const) {
  test(`nothing is wider than ${of}, whatever is open and however long its names are`, async ({ page }) => {
    test.slow();
    await page.setViewportSize({ width, height });
    await page.goto("./");
    const name = page.getByLabel("Name of this work");
    await name.fill("Grandmothersgreenvelvetdressforthewinterweddinginthecountry.");
    await expect(name).toHaveValue(/^.{60}$/);
    await inInches(page);
    await goTo(page, "Envelope");
    await page.getByRole("button", { name: "Paste a chart" }).tap();
    await page.getByLabel("Paste the chart here").fill(WIDE_CHART);
    await expect(page.getByRole("button", { name: "Use these 4 sizes" })).toBeVisible();
    expect(await page.evaluate(pastTheScreen)).toEqual([]);
    expect(await page.evaluate(tablesOutOfReach)).toEqual([]);
    await page.getByRole("button", { name: "Use these 4 sizes" }).tap();
    await expect(page.getByLabel("Name of size 1", { exact: true })).toHaveValue("Petite 00008");
    for (const step of STEPS) {
      await goTo(page, step);
      await openAll(page);
      expect(await page.evaluate(pastTheScreen)).toEqual([]);
      expect(await page.evaluate(tablesOutOfReach)).toEqual([]);
    }
  });
}

test("the choice of lines comes into view on the narrowest table", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await page.goto("./#darts");
  await expect(table(page)).toBeVisible();
  await page.getByRole("button", { name: "Lines" }).tap();
  await expect(page.getByLabel("Printed lines")).toBeInViewport({ ratio: 1 });
});

test("a table with more columns than the screen is scrolled by keys, in a box with a name", async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 640 });
  await page.goto("./#envelope");
  await page.getByRole("button", { name: "Paste a chart" }).tap();
  await page.getByLabel("Paste the chart here").fill(WIDE_CHART);
  const box = page.getByRole("group", { name: "Sizes as read, in centimetres" });
  await box.focus();
  await expect(box).toBeFocused();
  await expect
    .poll(async () => {
      await page.keyboard.press("ArrowRight");
      return box.evaluate(({ scrollLeft }) => scrollLeft);
    })
    .toBeGreaterThan(10);
});

test("on a low screen nothing stays in place but the bar", async ({ page }) => {
  test.slow();
  await page.setViewportSize({ width: 320, height: 256 });
  await page.goto("./#darts");
  await expect(bar(page)).toBeVisible();
  for (const step of STEPS) {
    await goTo(page, step);
    await openAll(page);
    const staying = await page.evaluate(() =>
      [...document.querySelectorAll(".app *")]
        .filter((one) => ["sticky", "fixed"].includes(getComputedStyle(one).position) && one.checkVisibility())
        .map(({ className }) => className),
    );
    expect(staying.filter((name) => name !== "phone-bar" && name !== "messages")).toEqual([]);
  }
  expect((await bar(page).boundingBox())?.height ?? Infinity).toBeLessThan(64);
});

test("the pieces stand where a step works on them, until she says where", async ({ page }) => {
  await page.goto("./");
  for (const step of STEPS) {
    await goTo(page, step);
    await expect(table(page)).toBeVisible({ visible: step === "Darts" || step === "Fit" });
  }
  await press(page, "Show the pieces");
  await goTo(page, "Tape");
  await expect(table(page)).toBeVisible();
  await press(page, "Put the pieces away");
  await goTo(page, "Darts");
  await expect(table(page)).toBeHidden();
});

test("the slide of a slip lies on no piece and no tool, and gives the tools back", async ({ page }) => {
  await page.goto("./#darts");
  const end = page.getByTestId("handle-front-waistDart-apex");
  await end.focus();
  await page.keyboard.press("ArrowDown");
  const slide = table(page).getByRole("slider", { name: /before/ });
  await expect(slide).toBeVisible();
  const under = await boxAtRest(page.locator(".slip-bar"));
  const pieces = await page.locator(".table-sheet .new-line").all();
  expect(pieces.length).toBeGreaterThan(1);
  for (const piece of pieces) {
    const box = await piece.boundingBox();
    expect(box?.y ?? 0).toBeGreaterThanOrEqual(under.y + under.height);
  }
  await expect(page.locator(".table-strip button:visible")).toHaveCount(0);
  await table(page).getByRole("button", { name: "Done" }).tap();
  await expect(page.locator(".table-strip button:visible").first()).toBeInViewport();
});

test("the pieces take the whole screen and give it back, and the focus is not lost", async ({ page }) => {
  await page.goto("./#darts");
  const sheet = page.locator(".table-sheet");
  const before = await boxAtRest(page.locator(".new-line").first());
  await press(page, "Pieces on the full screen");
  const box = await boxAtRest(sheet);
  const foot = await boxAtRest(bar(page));
  expect([box.x, box.y, box.width]).toEqual([0, 0, 390]);
  expect(Math.abs(box.y + box.height - foot.y)).toBeLessThanOrEqual(1);
  // Fitted anew: the same piece is drawn larger.
  expect((await boxAtRest(page.locator(".new-line").first())).height).toBeGreaterThan(before.height * 1.2);
  await expect(page.getByRole("link", { name: "Blend" })).toBeHidden();
  await page.getByRole("button", { name: "Zoom in" }).tap();
  await expectNoAxeViolations(page);
  const leave = bar(page).getByRole("button", { name: "Leave the full screen" });
  await leave.focus();
  await page.keyboard.press("Escape");
  await expect(bar(page).getByRole("button", { name: "Pieces on the full screen" })).toBeFocused();
  await expect(page.getByRole("link", { name: "Blend" })).toBeVisible();

  // From away to the full screen and back: what had the focus is gone with the pieces.
  await press(page, "Put the pieces away");
  await press(page, "Pieces on the full screen");
  await sheet.focus();
  await page.keyboard.press("Escape");
  await expect(table(page)).toBeHidden();
  await expect(bar(page).getByRole("button", { name: "Pieces on the full screen" })).toBeFocused();
});

test("undo and redo are in one place, under the thumb, and the ledger leads back to where she was", async ({
  page,
}) => {
  await page.goto("./#envelope");
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toHaveCount(1);
  await page.getByLabel("Pattern", { exact: true }).fill("Larkspur");
  await page.getByLabel("Pattern", { exact: true }).press("Enter");
  await press(page, "Undo");
  await expect(page.getByLabel("Pattern", { exact: true })).not.toHaveValue("Larkspur");
  await press(page, "Redo");
  await expect(page.getByLabel("Pattern", { exact: true })).toHaveValue("Larkspur");
  for (const button of await bar(page).getByRole("button").all()) {
    const box = await boxAtRest(button);
    expect(box.y).toBeGreaterThan(844 - 64);
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44);
  }
  await page.evaluate(() => window.scrollTo(0, 300));
  await press(page, "Ledger");
  await expect(page.getByRole("heading", { name: "Ledger" })).toBeInViewport();
  await press(page, "Back to the step");
  await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(300);

  // With the pieces in view it begins under them.
  await goTo(page, "Darts");
  await press(page, "Ledger");
  const pieces = await boxAtRest(table(page));
  const heading = await boxAtRest(page.getByRole("heading", { name: "Ledger" }));
  expect(heading.y).toBeGreaterThanOrEqual(pieces.y + pieces.height);
  expect(heading.y).toBeLessThan(pieces.y + pieces.height + 80);
});

for (const width of [320, 390]) {
  test(`head and steps take one row each at ${width}, and the step she is at is in sight`, async ({ page }) => {
    await page.setViewportSize({ width, height: 640 });
    await page.goto("./");
    for (const step of STEPS) {
      await goTo(page, step);
      const links = page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link");
      const names = await links.locator(".thread-title").evaluateAll((all) =>
        all.map((one) => {
          const { left, right, top } = one.getBoundingClientRect();
          return { left, right, top };
        }),
      );
      names.slice(1).forEach(({ left, top }, at) => {
        expect(left - (names[at]?.right ?? Infinity)).toBeGreaterThanOrEqual(4);
        expect(top).toBe(names[0]?.top);
      });
      const here = await links.and(page.locator("[aria-current]")).boundingBox();
      expect(here?.x ?? -1).toBeGreaterThanOrEqual(0);
      expect((here?.x ?? Infinity) + (here?.width ?? 0)).toBeLessThanOrEqual(width);
    }
    expect((await page.locator(".head").boundingBox())?.height ?? Infinity).toBeLessThan(56);
    await expect(page.getByRole("status").filter({ hasText: "Saved here" })).toBeVisible();
    // By keys: to a step that lies outside of what is seen.
    const tape = page.getByRole("link", { name: "Tape" });
    await tape.focus();
    await expect(tape).toBeInViewport();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
  });
}

test("a field that is typed in stays in sight when keys take half of the screen", async ({ page }) => {
  for (const [step, label] of [
    ["Tape", /^Hip girth/],
    ["Darts", /^Move the whole dart/],
    ["Envelope", "Hip of the new size"],
  ] as const) {
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto("./");
    await inInches(page);
    await goTo(page, step);
    const field = page.getByLabel(label).first();
    await field.tap();
    await page.setViewportSize({ width: 390, height: 430 });
    await boxAtRest(field);
    const isHit = await field.evaluate((input) => {
      const { left, right, top, bottom } = input.getBoundingClientRect();
      return [top + 3, bottom - 3].map((y) => document.elementFromPoint((left + right) / 2, y) === input);
    });
    expect(isHit).toEqual([true, true]);
  }
});

test("in inches the parts of an inch are keys under the thumb, and the field keeps the focus", async ({ page }) => {
  await page.goto("./#tape");
  const waist = page.getByLabel(/^Waist girth/);
  await expect(waist).toHaveAttribute("inputmode", "decimal");
  await inInches(page);
  await waist.tap();
  const keys = page.getByRole("group", { name: "Keys for this field" });
  await expect(keys.getByRole("button")).toHaveCount(7);
  await expect(waist).toHaveAttribute("inputmode", "decimal");
  await waist.fill("30");
  await keys.getByRole("button", { name: "3/8" }).tap();
  await expect(waist).toHaveValue("30 3/8");
  await expect(waist).toBeFocused();
  await keys.getByRole("button", { name: "1/2" }).tap();
  await expect(waist).toHaveValue("30 1/2");
  await keys.getByRole("button", { name: "1/2" }).tap();
  await expect(waist).toHaveValue("30");
  const boxes = await keys.getByRole("button").evaluateAll((all) =>
    all.map((one) => {
      const { width, height } = one.getBoundingClientRect();
      return Math.min(width, height);
    }),
  );
  expect(Math.min(...boxes)).toBeGreaterThanOrEqual(44);
  // One visit to the field is one step, whichever keys were used.
  await waist.press("Enter");
  await expect(page.getByLabel(/^Hip girth/)).toBeFocused();
  await press(page, "Undo");
  await expect(waist).not.toHaveValue(/^30/);
  await expect(keys).toBeHidden();
});

test("on its side the pieces stand beside the step with nothing laid on them, and the ledger in their place", async ({
  page,
}) => {
  await page.setViewportSize({ width: 844, height: 390 });
  await page.goto("./#darts");
  const step = await boxAtRest(page.locator("#step"));
  const place = await boxAtRest(table(page));
  expect(place.x).toBeGreaterThanOrEqual(step.x + step.width - 1);
  const tools = await boxAtRest(page.getByRole("toolbar", { name: "Table" }));
  const pieces = await page
    .locator(".new-line")
    .evaluateAll((all) => Math.min(...all.map((one) => one.getBoundingClientRect().top)));
  expect(pieces).toBeGreaterThanOrEqual(tools.y + tools.height);
  await expect(page.getByRole("heading", { name: "Ledger" })).toBeHidden();
  await press(page, "Ledger");
  await expect(page.getByRole("heading", { name: "Ledger" })).toBeInViewport();
  await expect(table(page)).toBeHidden();
  await press(page, "Show the pieces");
  await expect(table(page)).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThanOrEqual(390);
});
