/** What is typed in a field and not left is in the work, whatever ends the page. */
import { expect, test, type Page } from "@playwright/test";
import { goTo } from "./support";

const VIEWS = [
  ["a desk", { width: 1280, height: 800 }],
  ["a phone", { width: 390, height: 844 }],
] as const;

const caretOf = (page: Page): Promise<number | null> =>
  page.evaluate(() =>
    document.activeElement instanceof HTMLInputElement ? document.activeElement.selectionStart : null,
  );

for (const [where, viewport] of VIEWS) {
  test.describe(`at ${where}`, () => {
    test.use({ viewport });

    test("a measure is still there after Back and Forward, and after a reload", async ({ page }) => {
      await page.goto("./#envelope");
      await goTo(page, "Tape");
      const waist = page.getByRole("textbox", { name: /^Waist/ });
      await waist.fill("");
      await waist.pressSequentially("77.7");
      await page.goBack();
      await expect(page.getByRole("heading", { level: 2, name: "Envelope" })).toBeVisible();
      await page.goForward();
      await expect(waist).toHaveValue("77.7");
      // What does not read is kept as well.
      await waist.press("End");
      await waist.pressSequentially(" about");
      await page.goBack();
      // Else a slow page has both at once, and she never left the field.
      await expect(page.getByRole("heading", { level: 2, name: "Envelope" })).toBeVisible();
      await page.goForward();
      await expect(waist).toHaveValue("77.7 about");
      await expect(waist).toHaveAttribute("aria-invalid", "true");
      await waist.fill("78.5");
      await page.reload();
      await expect(waist).toHaveValue("78.5");
    });

    test("an amount is on the printed checklist", async ({ page }) => {
      await page.goto("./#paper");
      await expect(page.getByRole("article", { name: "Alteration checklist" })).toBeVisible();
      await goTo(page, "Darts");
      await page.getByRole("button", { name: /^Front waist dart/ }).click();
      const shorten = page.getByRole("textbox", { name: "Shorten by" });
      await shorten.fill("");
      await shorten.pressSequentially("25");
      await page.emulateMedia({ media: "print" });
      await page.evaluate(() => void window.dispatchEvent(new Event("beforeprint")));
      await expect(page.getByRole("article", { name: "Alteration checklist" })).toContainText(
        /Shorten the waist dart by 25\smm/,
      );
    });

    test("typing in the middle of a text leaves the caret there", async ({ page }) => {
      await page.goto("./#tape");
      const waist = page.getByRole("textbox", { name: /^Waist/ });
      const name = page.getByRole("textbox", { name: "Name of this work" });
      for (const [field, text, after] of [
        [waist, "7x.7", "7123x.7"],
        [waist, "7.7", "7123.7"],
        [name, "Seams", "S123eams"],
      ] as const) {
        await field.fill(text);
        await field.press("Home");
        await field.press("ArrowRight");
        await page.keyboard.type("123");
        await expect(field).toHaveValue(after);
        await expect.poll(() => caretOf(page)).toBe(4);
      }
    });
  });
}
