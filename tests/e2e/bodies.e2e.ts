/** Knowing bodies, in a real browser: guesses, a misreading set right, how sure the size is, what the chart fits, the sheet. */
import { expect, test } from "@playwright/test";
import { expectSaved, expectNoAxeViolations, fill, goTo } from "./support";

test("a newcomer sees what is measured, what is guessed, and how sure the size is", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  await goTo(page, "Envelope");
  await page.getByRole("button", { name: "Wren bodice (invented)" }).click();
  await goTo(page, "Tape");
  await fill(page, /^Bust girth/, "91");
  await fill(page, /^Waist girth/, "75");
  // A hip read in inches: 40 in is 101.6 cm, and 40 cm is no hip.
  await fill(page, /^Hip girth/, "40");
  await expect(page.getByRole("alert")).toContainText(/inches/);
  await fill(page, /^Hip girth/, "101.6");

  // Not taken, it is guessed beside its empty field.
  const upperChest = page.getByLabel(/^Upper chest girth/).first();
  await expect(upperChest).toHaveValue("");
  await expect(page.getByText(/probably .* cm \(/).first()).toBeVisible();
  await expectNoAxeViolations(page);

  await goTo(page, "Blend");
  const sure = page.getByRole("region", { name: "How sure this is" });
  await expect(sure).toContainText(/upper chest/i);
  await goTo(page, "Tape");
  await fill(page, /^Upper chest girth/, "83.2");
  await goTo(page, "Blend");
  await expect(sure).toContainText(/Size 12/);
  await expect(sure).toContainText(/of 100/);
  await expectNoAxeViolations(page);

  await goTo(page, "Envelope");
  await page.getByText("What this chart fits").click();
  await expect(page.getByRole("img", { name: /waist/i }).first()).toBeVisible();
  await expectNoAxeViolations(page);
});

test("what is typed and not yet left is there after a reload", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  // The new work itself; what is typed into it has no time to be.
  await expectSaved(page);
  await page
    .getByLabel(/^Bust girth/)
    .first()
    .fill("92.4");
  await page.reload();
  await expect(page.getByLabel(/^Bust girth/).first()).toHaveValue("92.4");
});

test("the measure sheet prints on two pages, with no plan needed", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  await page.getByRole("link", { name: "Print a measure sheet" }).click();
  await expect(page.getByRole("heading", { level: 2, name: "Paper" })).toBeVisible();
  await page.emulateMedia({ media: "print" });
  await expect(page.locator(".measure-sheet")).toContainText("Upper chest girth");
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  expect(pdf.match(/\/Type \/Page\b/g)).toHaveLength(2);
});
