/** Her own pattern: from a file dropped on the page to a plan made on its pieces. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test, type Page } from "@playwright/test";
import { root } from "./site";
import { boxAtRest, expectNoAxeViolations, goTo } from "./support";

const FIXTURE = join(root, "tests/e2e/fixtures/thornfield.svg");

/** Drops a file on the page, as a hand would. */
async function drop(page: Page, name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([file, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([content ?? ""], file ?? "", { type: "image/svg+xml" }));
      return data;
    },
    [name, text],
  );
  await page.dispatchEvent("body", "dragenter", { dataTransfer: transfer });
  await expect(page.getByRole("button", { name: /^Open (?:a|another) file$/ })).toBeVisible();
  await page.dispatchEvent("body", "dragover", { dataTransfer: transfer });
  await page.dispatchEvent("body", "drop", { dataTransfer: transfer });
}

async function toTissue(page: Page): Promise<void> {
  await page.goto("./#envelope");
  await page.getByRole("radio", { name: "To the waist" }).check();
  await goTo(page, "Tissue");
}

test("a dropped file comes to a plan on its pieces, and is there after a reload", async ({ page }) => {
  await toTissue(page);
  await drop(page, "thornfield.svg", readFileSync(FIXTURE, "utf8"));
  await page.getByRole("button", { name: "Cup B" }).click();
  await expect(page.getByText("Your own pieces: front and back, in sizes 10 to 14.")).toBeVisible();
  await expectNoAxeViolations(page);

  // A corner moved along the outline with the keys, and back by undo.
  await page.getByText("Pieces", { exact: true }).click();
  await page.getByRole("button", { name: /^Corners and darts: \d\. Front/ }).click();
  const handle = page.getByRole("button", { name: /^Underarm\. Arrow keys/ });
  await handle.focus();
  await page.keyboard.press("Shift+ArrowRight");
  await expect(page.getByRole("button", { name: /^Underarm by you/ })).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(page.getByRole("button", { name: /^Underarm by its form/ })).toBeVisible();

  await page.getByRole("button", { name: "Make the plan on these pieces" }).click();
  await expect(page.getByText("Your own pieces. As they were drawn in your file.")).toBeVisible();
  await page.reload();
  await expect(page.getByText("Your own pieces. As they were drawn in your file.")).toBeVisible();
});

test("a file without a scale is asked for one, and tapped for it", async ({ page }) => {
  await toTissue(page);
  const text = readFileSync(FIXTURE, "utf8")
    .replace(' width="700mm" height="640mm"', "")
    .replace(/<rect id="test-square".*\/>/, "");
  await drop(page, "bare.svg", text);
  await page.getByRole("button", { name: "How large it is: give one length that you know." }).click();
  await page.getByRole("button", { name: "First end: point at it" }).click();
  const sheet = page.getByRole("group", { name: /^The sheet as drawn/ });
  const box = await boxAtRest(sheet);
  await page.mouse.click(box.x + box.width * 0.4, box.y + box.height * 0.5);
  await expect(page.getByText("Tap its other end.")).toBeVisible();
  await page.mouse.click(box.x + box.width * 0.6, box.y + box.height * 0.5);
  await page.getByRole("textbox", { name: "It measures" }).fill("20");
  await page.keyboard.press("Enter");
  await expect(page.getByText("Proven by the length that you gave.")).toBeVisible();
  await expect(page.getByRole("button", { name: /^How large it is:/ })).toHaveCount(0);
});

test("what is no pattern is refused in words, and the page goes on", async ({ page }) => {
  await toTissue(page);
  const endless =
    '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="10mm" viewBox="0 0 10 10"><g id="a"><use href="#a"/></g></svg>';
  await drop(page, "endless.svg", endless);
  await expect(page.getByRole("alert").filter({ hasText: "Nothing was changed." })).toBeVisible();
  await goTo(page, "Blend");
  await goTo(page, "Tissue");
  await expect(page.getByText("SVG or DXF", { exact: true })).toBeVisible();
});

for (const [name, width, height] of [
  ["phone", 390, 844],
  ["tablet", 1000, 700],
] as const)
  test(`on a ${name} nothing is wider than the screen, and axe finds nothing`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await toTissue(page);
    await drop(page, "thornfield.svg", readFileSync(FIXTURE, "utf8"));
    for (const part of ["How large it is", "Lines and sizes", "Pieces"])
      // oxlint-disable-next-line no-await-in-loop -- one after the other
      await page.locator("summary", { hasText: part }).last().click();
    await page.getByRole("button", { name: /^Corners and darts: \d\. Front/ }).click();
    await page.getByRole("radio", { name: "the cutting line" }).check();
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(over).toBeLessThanOrEqual(0);
    await expectNoAxeViolations(page);
  });
