/** A filled sheet is typed by keyboard alone, what it comes to is taken, and the next toile is begun. */
import { expect, test, type Page } from "@playwright/test";
import { expectNoAxeViolations, goTo } from "./support";

const VIEWS = [
  ["a desk", { width: 1440, height: 900 }],
  ["a phone", { width: 390, height: 844 }],
] as const;

/** What holds the focus, by the name that is said of it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement;
    const isField = element instanceof HTMLInputElement || element instanceof HTMLSelectElement;
    return (isField ? element.labels?.[0]?.textContent : null) ?? element?.getAttribute("aria-label") ?? "";
  });

/** Types one line of the sheet from its place on: what is typed in each field, Tab between them. */
async function typeLine(page: Page, line: number, typed: Readonly<Record<string, string>>): Promise<void> {
  const fields = ["Place", "What is seen", "How told", "How much", "Half", "What I changed"];
  for (const field of fields) {
    // oxlint-disable-next-line no-await-in-loop -- one field after another
    await expect.poll(() => focused(page)).toBe(`Line ${line}: ${field}`);
    // oxlint-disable-next-line no-await-in-loop -- one field after another
    await page.keyboard.type(typed[field] ?? "");
    // oxlint-disable-next-line no-await-in-loop -- one field after another
    await page.keyboard.press("Tab");
  }
}

for (const [where, viewport] of VIEWS) {
  test.describe(`at ${where}`, () => {
    test.use({ viewport });

    test("a sheet is typed by Tab alone, and what it comes to is taken", async ({ page }) => {
      await page.goto("./#fit");
      await goTo(page, "Trial");
      await page.getByRole("button", { name: "I have sewn this" }).press("Enter");
      await page.getByRole("textbox", { name: "Cloth" }).press("End");
      await page.keyboard.type("calico");
      await page.keyboard.press("Tab");
      await expect.poll(() => focused(page)).toBe("Pinned by");
      await page.getByRole("combobox", { name: "Line 1: Place" }).press("End");
      await typeLine(page, 1, { Place: "21", "What is seen": "fold ac", "How much": "6" });
      // The button that takes the line away is on the way to the next one.
      await expect.poll(() => focused(page)).toBe("Remove line 1");
      await page.keyboard.press("Tab");
      await typeLine(page, 2, { Place: "24", "What is seen": "dro", "How much": "10", "What I changed": "nothing" });
      const first = page.getByRole("region", { name: "What it comes to" }).getByRole("group").first();
      await expect(first).toContainText("Explains lines 1 and 2.");
      await expect(first).toContainText("Sway back");
      await page
        .getByRole("button", { name: /^Take it: / })
        .first()
        .press("Enter");
      await expect(first).toContainText("Taken.");
      await page.getByRole("button", { name: "Try again" }).press("Enter");
      await page.getByRole("button", { name: "I have sewn the next one" }).press("Enter");
      await expect(page.getByRole("heading", { name: "Trial 2" })).toBeVisible();
      // Kept as it was typed.
      await page.reload();
      await page.getByRole("button", { name: /^Trial 1 / }).click();
      await expect(page.getByRole("textbox", { name: "Line 2: What I changed" })).toHaveValue("nothing");
    });

    test("nothing on it is in the way of those who cannot see it", async ({ page }) => {
      await page.goto("./#trial");
      await page.getByRole("button", { name: "I have sewn this" }).click();
      await page.getByRole("button", { name: "5, front armhole, your left half" }).click();
      await page.getByRole("combobox", { name: "Line 1: What is seen" }).selectOption("gapes");
      await page.getByRole("radio", { name: "Back" }).check();
      await page.getByRole("button", { name: /^21, back above the waist, your left half/ }).click();
      await page.getByRole("combobox", { name: "Line 2: What is seen" }).selectOption("fold across");
      await page.getByRole("button", { name: "Keep", exact: true }).click();
      await expectNoAxeViolations(page);
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
    });
  });
}

test.describe("in inches", () => {
  test("amounts are typed and told in them", async ({ page }) => {
    await page.goto("./#trial");
    await page.getByRole("radio", { name: "in" }).check({ force: true });
    await page.getByRole("button", { name: "I have sewn this" }).click();
    await page.getByRole("combobox", { name: "Line 1: Place" }).fill("21");
    await page.getByRole("combobox", { name: "Line 1: What is seen" }).selectOption("fold across");
    await page.getByRole("textbox", { name: "Line 1: How much" }).fill("1/4");
    await page.keyboard.press("Tab");
    await expect(page.locator(".record-line").first()).toContainText("2 × ¼ in = ½ in of cloth");
  });
});
