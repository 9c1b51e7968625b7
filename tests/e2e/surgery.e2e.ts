/** Styles, fit alterations, dart surgery and the pointed dart in a real browser. */
import { expect, test } from "@playwright/test";
import { expectNoAxeViolations, figuresOf, fill, goTo } from "./support";

test("another style from the same chart has its own pieces, and its checks hold", async ({ page }) => {
  await page.goto("./#envelope");
  await page.getByRole("radio", { name: "Princess seams from the armhole" }).check();
  await expect(page.getByRole("button", { name: "Side front", exact: true })).toBeVisible();
  await page.getByRole("radio", { name: "Cups on a midriff band, with straps" }).check();
  await page.getByRole("radio", { name: "thin" }).check();
  for (const piece of ["Cup", "Front midriff band", "Back midriff band", "Strap"]) {
    await expect(page.getByRole("button", { name: piece, exact: true })).toBeVisible();
  }
  await goTo(page, "Blend");
  await expect(page.getByRole("heading", { name: /Checks all hold/ })).toBeVisible();
});

test("what is seen leads to an alteration, shown before and after, printed as steps, taken out again", async ({
  page,
}) => {
  await page.goto("./#fit");
  await page.getByLabel("What do you see?").fill("fold");
  await page.getByRole("button", { name: /^Sway back/ }).click();
  await fill(page, /^Take out at the centre back/, "9");
  const planned = page.getByRole("button", { name: /Take 9 mm out across the back waist/ }).first();
  await expect(planned).toBeVisible();
  const slider = page.getByRole("slider", { name: /before/ });
  await expect(slider).toBeVisible();
  await slider.press("Home");
  await expect(page.locator(".slip-overlay, .surgery").first()).toBeAttached();
  await expectNoAxeViolations(page);
  await expect(page.getByRole("heading", { name: /Checks all hold/ })).toBeVisible();

  await goTo(page, "Paper");
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".printed-checklist");
  await expect(sheet).toContainText("Take 9 mm out across the back waist");
  await expect(sheet).toContainText("laps 9 mm over");
  await page.emulateMedia({ media: "screen" });

  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(page.getByRole("button", { name: /Take 9 mm out across the back waist/ })).toHaveCount(0);
});

test("an alteration of one half makes two halves to look at, and says which it is for", async ({ page }) => {
  await page.goto("./#fit");
  await page.getByText("Shoulders and edges").click();
  await page
    .getByRole("button", { name: /^(Shoulder slope|Square|Sloping).*/ })
    .first()
    .click();
  await page.getByRole("radio", { name: "left", exact: true }).check();
  await page.locator(".fit-body:not([hidden]) input.field-input").fill("6");
  await page.locator(".fit-body:not([hidden]) input.field-input").press("Enter");
  await expect(page.getByText(/left half/i).first()).toBeVisible();
  await expect(page.getByRole("radio", { name: /right/ }).last()).toBeVisible();
});

test("the pointed dart gets whole answers; taking one keeps the seam and makes it less full", async ({ page }) => {
  await page.goto("./#darts");
  await page.getByRole("button", { name: /^Front waist dart/ }).click();
  const end = page.getByTestId("handle-front-waistDart-apex");
  const before = await figuresOf(end);
  await page.getByText("Sewn, it comes out wrong").click();
  await fill(page, /^Its end lies past the bust point by/, "15");
  await fill(page, /^It sits too far to the side by/, "10");
  await page.getByRole("radio", { name: /^pointed/ }).check();
  await expect(page.getByText(/What not to do/)).toBeVisible();
  await expect(page.getByText(/more pointed, not less/)).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole("button", { name: "Take this one" }).first().click();
  await expect.poll(async () => (await figuresOf(end)).fullness).toBeLessThan(before.fullness);
  expect((await figuresOf(end)).mouth).toBeLessThan(before.mouth);
  // The finished waist is still what the plan says: that check holds, whatever the others make of the bust point seen.
  await expect(page.getByText("The pieces measure what the plan says")).toBeVisible();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect.poll(async () => (await figuresOf(end)).fullness).toBe(before.fullness);
});

test("a dart moves to another seam with its fullness; sewn, the front turns with the arrow keys", async ({ page }) => {
  await page.goto("./#darts");
  await page.getByRole("button", { name: /^Front side dart/ }).click();
  await page.getByText("Make something else of it").click();
  await page.getByLabel("Move it to the").selectOption({ label: "armhole" });
  await expect(page.getByRole("button", { name: /^Front armhole dart/ })).toBeVisible();
  await expect(page.getByRole("button", { name: /Move the whole side dart to the armhole/ }).first()).toBeVisible();

  await page.getByText("See it sewn").click();
  const sewn = page.getByRole("slider", { name: /The front, sewn/ }).first();
  await expect(sewn).toBeVisible();
  await sewn.focus();
  await page.keyboard.press("ArrowLeft");
  await expectNoAxeViolations(page);
});
