/** Ten numbers off the tissue: the pieces on the table become hers, and every sheet says so. */
import { expect, test, type Page } from "@playwright/test";
import { expectNoAxeViolations, goTo } from "./support";

const NUMBERS = [
  ["Front: Waist dart’s mouth", 1.2],
  ["Front: Waist dart’s length", -1],
  ["Front: Bust dart’s length", 0.5],
  ["Front: Bust dart from the underarm", 0.6],
  ["Front: Width at the bust", 0],
  ["Front: Side neck to waist", 0.7],
  ["Back: Waist dart’s mouth", -0.8],
  ["Back: Width at the bust", 0],
  ["Front: Waist dart’s mouth, next size", 1.2],
  ["Back: Waist dart’s mouth, next size", -0.8],
] as const;

const field = (page: Page, name: string) => page.getByRole("textbox", { name, exact: true });

async function openTape(page: Page): Promise<void> {
  await page.goto("./#tissue");
  await page.getByText("By tape on the tissue").click();
  await page.getByText("More lengths").click();
}

const freshLine = (page: Page): Promise<string> =>
  page
    .locator(".new-line")
    .first()
    .getAttribute("d")
    .then((path) => path ?? "");

test("ten numbers make the stand-in hers, and the sheets say so", async ({ page }) => {
  await openTape(page);
  await expect(page.locator(".table-source")).toHaveText("Stand-in");
  const before = await freshLine(page);
  for (const [name, more] of NUMBERS) {
    // oxlint-disable-next-line no-await-in-loop -- one number after the other, as she types them
    const standIn = Number(await field(page, name).getAttribute("placeholder"));
    // oxlint-disable-next-line no-await-in-loop
    await field(page, name).fill((standIn + more).toFixed(1));
    // oxlint-disable-next-line no-await-in-loop
    await field(page, name).press("Tab");
  }
  await expect(page.getByText("10 measured along size")).toBeVisible();
  await expect(page.locator(".table-source")).toHaveText("Stand-in, fitted to your tissue");
  await expect.poll(() => freshLine(page)).not.toBe(before);
  await expectNoAxeViolations(page);

  await goTo(page, "Blend");
  await expect(page.getByText("If your tissue prints them equally wide")).toHaveCount(0);
  await goTo(page, "Paper");
  await expect(page.getByText(/Measured on your tissue along size .*The rest is the stand-in’s\./)).toBeVisible();
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  await expect(page.getByText("brought to what you measured on your tissue")).toBeVisible();

  // Kept: the page is loaded anew.
  await page.reload();
  await goTo(page, "Tissue");
  await expect(page.getByText("10 measured along size")).toBeVisible();
});

test("the field of a phone stands beside its figure, and keys alone get from field to field", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openTape(page);
  const first = page.locator(".tissue-place input").first();
  await first.focus();
  await page.keyboard.type("23.4");
  await page.keyboard.press("Tab");
  const second = page.locator(".tissue-place input").nth(1);
  await expect(second).toBeFocused();
  await expect(second).toHaveAttribute("inputmode", "decimal");
  for (const place of [second, page.locator(".tissue-place input").nth(8)]) {
    // oxlint-disable-next-line no-await-in-loop
    await place.focus();
    const [figure, input] = [page.locator(".tissue-figure"), place];
    // oxlint-disable-next-line no-await-in-loop
    await expect(figure).toBeInViewport({ ratio: 0.9 });
    // oxlint-disable-next-line no-await-in-loop
    await expect(input).toBeInViewport();
  }
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});
