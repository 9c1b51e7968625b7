/** Two answers on one toile, in a real browser: by pointer, by keys alone, on a phone. */
import { expect, test } from "@playwright/test";
import { boxAtRest, dragHandle, expectNoAxeViolations, fill, goTo } from "./support";

test("a dart is tried another way on the other half, seen on both, printed for each, and one is kept", async ({
  page,
}) => {
  await page.goto("./#darts");
  await page.getByRole("button", { name: "Front waist dart", exact: true }).click();
  await expect(page.getByRole("radio", { name: "side by side" })).toHaveCount(0);
  await fill(page, "Shorten by", "8");
  await page.getByRole("button", { name: "Try another way on your right half", exact: true }).click();
  await expect(page.getByLabel("Shorten by")).toBeFocused();
  await fill(page, "Shorten by", "25");
  await expect(
    page.getByRole("button", { name: /Shorten the waist dart by 8 mm.*left half only/ }).first(),
  ).toBeVisible();
  await expect(
    page.getByRole("button", { name: /Shorten the waist dart by 25 mm.*right half only/ }).first(),
  ).toBeVisible();

  await page.getByRole("radio", { name: "side by side" }).check();
  const left = page.getByTestId("handle-front-waistDart-apex-left");
  const right = page.getByTestId("handle-front-waistDart-apex-right");
  await expect(left).toHaveAccessibleName(/your left half$/);
  // Seen from the front her right half is at the left.
  const [atLeft, atRight] = [await boxAtRest(left), await boxAtRest(right)];
  expect(atRight.x + 20).toBeLessThan(atLeft.x);
  await expectNoAxeViolations(page);

  // Dragged on one half it moves that half alone, the way the hand goes.
  await dragHandle(page, right, -12, 0);
  await page.mouse.up();
  await expect.poll(async () => (await right.boundingBox())?.x).toBeLessThan(atRight.x - 8);
  expect(Math.abs(((await left.boundingBox())?.x ?? 0) - atLeft.x)).toBeLessThan(1);
  await page.getByRole("button", { name: /^Undo/ }).click();

  await page.getByRole("radio", { name: "one over the other" }).check();
  await expect(page.locator(".other-half path").first()).toBeAttached();

  await goTo(page, "Paper");
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".printed-checklist");
  await expect(sheet).toContainText("On the right half: Shorten the waist dart by 25 mm");
  await expect(sheet).toContainText("tack one line along the grain on your left half, two on your right");
  await page.emulateMedia({ media: "screen" });

  await page.getByRole("button", { name: "The right is right" }).click();
  await expect(page.getByRole("button", { name: /Shorten the waist dart by 25 mm/ }).first()).toBeVisible();
  await expect(page.getByText("half only")).toHaveCount(0);
  await expect(page.getByRole("radio", { name: "one over the other" })).toHaveCount(0);
});

test("the halves are switched by keys, and on a phone", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto("./#darts");
  await page.getByRole("radio", { name: "left", exact: true }).check();
  await fill(page, "Shorten by", "12");
  const one = page.getByRole("radio", { name: "one half" });
  await one.focus();
  await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("radio", { name: "side by side" })).toBeChecked();
  await expect(page.locator("[data-testid$=-apex-right]").first()).toBeVisible();
  await page.getByRole("radio", { name: "your left" }).focus();
  await page.keyboard.press("ArrowRight");
  await expect(page.getByRole("radio", { name: "your right" })).toBeChecked();
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await expectNoAxeViolations(page);
});
