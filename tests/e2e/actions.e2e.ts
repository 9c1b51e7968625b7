/** How much she has to do: from an empty work to a printed checklist, and what is seen without scrolling. */
import { expect, test, type Locator, type Page } from "@playwright/test";
import { boxAtRest, goTo } from "./support";

const CHART = [
  "Body measurements in cm",
  "UK Size 8 10 12 14 16 18",
  "Bust 80 84 88 92 97 102",
  "Waist 62 66 70 74 79 84",
  'Hip - 9" below waist 86 90 94 98 103 108',
  "Finished bust 87 91 95 99 104 109",
].join("\n");

/** Every click, text and key counts as one. */
function counter() {
  let count = 0;
  return {
    click: async (target: Locator): Promise<void> => {
      count += 1;
      await target.click();
    },
    type: async (target: Locator, text: string): Promise<void> => {
      // To the field, and the text.
      count += 2;
      await target.click();
      await target.fill(text);
    },
    count: (): number => count,
  };
}

test("an empty work becomes a printed checklist in at most 25 actions", async ({ page }) => {
  await page.goto("./");
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute("data-printed", "");
  });
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  await expect(page.getByText("This is a demonstration,")).toBeHidden();
  const hand = counter();
  const step = (name: string): Locator =>
    page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link", { name });

  await hand.type(page.getByLabel(/^Bust girth/), "93.4");
  await hand.type(page.getByLabel(/^Upper chest girth/), "85.9");
  await hand.type(page.getByLabel(/^Waist girth/), "74");
  await hand.type(page.getByLabel(/^Hip girth/), "99");
  await hand.click(step("Envelope"));
  await hand.click(page.getByRole("button", { name: "Paste a chart" }));
  await hand.type(page.getByLabel("Paste the chart here"), CHART);
  await hand.click(page.getByRole("button", { name: "Use these 6 sizes" }));
  await hand.click(page.getByRole("button", { name: "A to D" }));
  await hand.click(step("Paper"));
  await hand.click(page.getByRole("button", { name: "Print the checklist" }));
  await expect(page.locator("body")).toHaveAttribute("data-printed", "");

  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".printed-checklist");
  // Upper chest 859: size 14 is drafted for 920 − 50 = 870, 12 for 830.
  await expect(sheet).toContainText("Frame14");
  await expect(sheet).toContainText("Cup and bust");
  // Bust and waist with the ease drawn in, in centimetres throughout.
  await expect(sheet).not.toContainText("NaN");
  expect(hand.count()).toBeLessThanOrEqual(25);
});

for (const screen of [
  { width: 390, height: 844 },
  { width: 1440, height: 900 },
  { width: 1000, height: 700 },
]) {
  test(`Blend's whole answer is seen at once at ${screen.width} × ${screen.height}`, async ({ page }) => {
    await page.setViewportSize(screen);
    await page.goto("./#blend");
    const bar = page.locator(".phone-bar");
    await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeVisible();
    // There is none on a desk.
    const end = (await bar.count()) === 0 ? screen.height : (await boxAtRest(bar)).y;
    for (const name of ["Frame", "Cup", "Bust", "Waist", "Hip"]) {
      const answer = page.getByRole("region", { name, exact: true }).locator("summary").first();
      await expect(answer).toContainText(/(sure|open)$/);
      const box = await answer.boundingBox();
      expect((box?.y ?? Infinity) + (box?.height ?? 0)).toBeLessThanOrEqual(end);
    }
    // Folded out and in by the keyboard.
    const frame = page.getByRole("region", { name: "Frame" });
    await frame.locator("summary").first().focus();
    await page.keyboard.press("Enter");
    await expect(frame.getByText("Why 12?")).toBeVisible();
    await page.keyboard.press("Enter");
    await expect(frame.getByText("Why 12?")).toBeHidden();
  });
}

test.describe("on a phone", () => {
  test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

  test("no step is wider than the screen, nor is the list of works", async ({ page }) => {
    await page.goto("./");
    const wide = (): Promise<number> => page.evaluate(() => document.documentElement.scrollWidth);
    for (const name of ["Tape", "Envelope", "Blend", "Darts", "Fit", "Paper"] as const) {
      await goTo(page, name);
      await expect.poll(() => wide()).toBeLessThanOrEqual(390);
    }
    await page.getByRole("button", { name: "Works" }).tap();
    const list = page.getByRole("region", { name: "Your works" });
    await expect(list.getByRole("heading").first()).toBeVisible();
    const right = await list.evaluate((element) =>
      Math.max(...[element, ...element.querySelectorAll("*")].map((inside) => inside.getBoundingClientRect().right)),
    );
    expect(right).toBeLessThanOrEqual(390.5);
    await expect.poll(() => wide()).toBeLessThanOrEqual(390);
  });

  test("the pieces can be put away, and stay so from step to step; the ledger is one tap off", async ({ page }) => {
    await page.goto("./#blend");
    const table = page.getByRole("region", { name: "Table with the pattern pieces" });
    await page.getByRole("button", { name: "Show the pieces" }).tap();
    await expect(table).toBeVisible();
    await page.getByRole("button", { name: "Put the pieces away" }).tap();
    await expect(table).toBeHidden();
    await goTo(page, "Fit");
    await expect(table).toBeHidden();
    await page.getByRole("button", { name: "Ledger", exact: true }).tap();
    await expect(page.getByRole("heading", { name: "Ledger" })).toBeInViewport();
    await page.getByRole("button", { name: "Back to the step" }).tap();
    await expect(page.getByRole("heading", { level: 2, name: "Fit" })).toBeInViewport();
    await page.getByRole("button", { name: "Show the pieces" }).tap();
    await expect(table).toBeVisible();
  });

  test("a finger draws a dart up and down, and the page stays where it is", async ({ page }) => {
    await page.goto("./#darts");
    const end = page.getByTestId("handle-front-waistDart-apex");
    const box = await boxAtRest(end);
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const before = (await end.getAttribute("aria-valuetext")) ?? "";
    const { send } = await fingerOn(page);
    await send("touchStart", x, y);
    for (let down = 2; down <= 20; down += 2) await send("touchMove", x, y + down);
    await send("touchEnd");
    await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeEnabled();
    await expect(end).not.toHaveAttribute("aria-valuetext", before);
    expect(await page.evaluate(() => window.scrollY)).toBe(0);
  });

  test("an empty table takes no room", async ({ page }) => {
    await page.goto("./");
    await page.getByRole("button", { name: "Start with my own measures" }).tap();
    await page.getByRole("button", { name: "Show the pieces" }).tap();
    const note = page.getByText("The pattern pieces appear here");
    await expect(note).toBeVisible();
    const box = await page.getByRole("region", { name: "Table with the pattern pieces" }).boundingBox();
    expect(box?.height ?? Infinity).toBeLessThan(150);
  });
});

/** A finger as the browser itself has it, so that what it makes of a touch is part of it. */
async function fingerOn(page: Page) {
  const session = await page.context().newCDPSession(page);
  const send = async (type: "touchStart" | "touchMove" | "touchEnd", x = 0, y = 0): Promise<void> => {
    await session.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y }] });
  };
  return { send };
}

test("the focus goes on where work does", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Measure anew" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByLabel(/^Bust girth/)).toBeFocused();
  await page.getByRole("button", { name: "Back to the measures of before" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: "Measure anew" })).toBeFocused();
  await page.getByRole("button", { name: "Start with my own measures" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("#step")).toBeFocused();
});

test("of a handle on its way nothing is told that Escape would make untrue", async ({ page }) => {
  await page.goto("./#darts");
  const end = page.getByTestId("handle-front-waistDart-apex");
  await end.focus();
  const before = (await end.getAttribute("aria-valuetext")) ?? "";
  await page.keyboard.press("ArrowDown");
  await expect(page.locator(".table-readout")).toBeVisible();
  await expect(end).toHaveAttribute("aria-valuetext", before);
  await page.keyboard.press("Escape");
  await expect(page.locator(".table-readout")).toHaveCount(0);
  await expect(end).toHaveAttribute("aria-valuetext", before);
  await expect(page.locator("[data-said]")).toHaveText("");
});
