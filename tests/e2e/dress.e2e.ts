/** From a finished bodice to the whole dress: few actions, by keyboard alone, on any screen. */
import { expect, test, type Locator, type Page } from "@playwright/test";
import { expectNoAxeViolations, goTo } from "./support";

const fold = (page: Page, title: string): Locator =>
  page.locator("details.dress-fold").filter({ has: page.getByRole("heading", { level: 3, name: title, exact: true }) });

test("a base comes to cut list and cloth in at most 15 actions", async ({ page }) => {
  await page.goto("./");
  let actions = 0;
  const press = async (target: Locator): Promise<void> => {
    actions += 1;
    await target.click();
  };
  await press(page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link", { name: "Dress" }));
  await press(page.locator("label.choice-mark").filter({ hasText: "Tiers" }));
  // The whole dress is there: what is left is to look.
  await press(fold(page, "Cloth to buy").locator("summary").first());
  await expect(
    fold(page, "Cloth to buy")
      .getByText(/^\d\.\d\d m of 140\.0 cm$/)
      .first(),
  ).toBeVisible();
  await press(fold(page, "Cut list").locator("summary"));
  await expect(fold(page, "Cut list").getByRole("row", { name: /^Tier 2/ })).toBeVisible();
  await press(fold(page, "Order of sewing").locator("summary"));
  await expect(fold(page, "Order of sewing").getByRole("listitem").first()).toBeVisible();
  expect(actions).toBeLessThanOrEqual(15);
  // Both sides are drawn.
  await expect(page.getByRole("img", { name: /^The finished dress from/ })).toHaveCount(2);
});

for (const [name, width, height] of [
  ["a desk", 1440, 900],
  ["a phone", 390, 844],
] as const) {
  test(`a whole dress, all folds open, in inches, has no accessibility faults on ${name}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.goto("./");
    await goTo(page, "Dress");
    await page.getByRole("radio", { name: "in", exact: true }).check();
    for (const shape of ["A-line", "Straight", "Circle", "Peplum", "Gathered", "Tiers"])
      // oxlint-disable-next-line no-await-in-loop -- one after the other
      await page.getByRole("radio", { name: shape, exact: true }).check();
    for (const title of ["Lining", "Neckline, straps and edges", "Getting in", "Under it", "Cloth to buy", "Cut list"])
      // oxlint-disable-next-line no-await-in-loop -- one after the other
      await fold(page, title).locator("summary").first().click();
    await page.getByRole("radio", { name: "bodice and skirt" }).check();
    await page.getByRole("radio", { name: "Sweetheart" }).check();
    await expect(
      fold(page, "Cloth to buy")
        .getByText(/ yd of 54\sin$/)
        .first(),
    ).toBeVisible();
    await expectNoAxeViolations(page);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });
}

test("is decided by keyboard alone", async ({ page }) => {
  await page.goto("./#dress");
  await expect(page.getByRole("heading", { level: 2, name: "Dress" })).toBeVisible();
  await page.getByRole("radio", { name: "None" }).focus();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("radio", { name: "Tiers" })).toBeChecked();
  await page.keyboard.press("Tab");
  await expect(page.getByRole("textbox", { name: "Waist to hem, side" })).toBeFocused();
  await page.keyboard.type("62");
  await page.keyboard.press("Enter");
  await expect(page.locator(".dress-measures")).toContainText("62.0 cm");
  await fold(page, "Lining").locator("summary").focus();
  await page.keyboard.press("Enter");
  await expect(page.getByRole("radio", { name: "nothing", exact: true }).first()).toBeVisible();
  await page.keyboard.press("Tab");
  await page.keyboard.press("ArrowLeft");
  await expect(page.getByRole("radio", { name: "bodice and skirt" })).toBeChecked();
});

test("the drawing covers nothing that is cut out and sewn, however far down the page is", async ({ page }) => {
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto("./#dress");
  await page.getByRole("radio", { name: "Tiers", exact: true }).check();
  for (const title of ["Cloth to buy", "Cut list", "Order of sewing"])
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    await fold(page, title).locator("summary").first().click();
  const drawing = page.locator(".dress-on-top");
  for (const at of [
    page.getByRole("textbox", { name: "Main cloth: I have this much" }),
    fold(page, "Cut list").getByRole("row", { name: /^Tier 2/ }),
    fold(page, "Order of sewing").getByRole("listitem").last(),
  ]) {
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    await at.evaluate((element) => element.scrollIntoView({ block: "center" }));
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    const [covers, covered] = await Promise.all([drawing.boundingBox(), at.boundingBox()]);
    if (covers === null || covered === null) throw new Error("not drawn");
    expect(covers.y + covers.height).toBeLessThanOrEqual(covered.y);
  }
});
