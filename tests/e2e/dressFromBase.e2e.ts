/**
 * Three dresses of one base, each in at most fifteen actions from the base to its cut list and its cloth: once with a pointer, once
 * by keys alone, once in inches on a phone.
 */
import { join } from "node:path";
import { expect, test, type Locator, type Page } from "@playwright/test";
import { root } from "./site";
import { expectNoAxeViolations, expectSaved } from "./support";

/** How she does it. Every press, choice and unfolding counts as one. */
interface Hand {
  readonly press: (target: Locator) => Promise<void>;
  readonly choose: (choice: Locator) => Promise<void>;
  readonly count: () => number;
}

function pointer(): Hand {
  let count = 0;
  return {
    press: async (target) => {
      count += 1;
      await target.click();
    },
    choose: async (choice) => {
      count += 1;
      await choice.check();
    },
    count: () => count,
  };
}

/** Nothing but Tab, arrows and Enter. */
function keys(page: Page): Hand {
  let count = 0;
  /** Into a group of choices Tab goes where its chosen one is. */
  const goal = async (target: Locator): Promise<void> => {
    await expect(target).toBeVisible();
    for (let step = 0; step < 600; step += 1) {
      // oxlint-disable-next-line no-await-in-loop -- one key after the other, as she presses them
      const where = await target.evaluate((element) => {
        const now = document.activeElement;
        if (now === element) return "there";
        if (
          element instanceof HTMLInputElement &&
          now instanceof HTMLInputElement &&
          element.type === "radio" &&
          now.name === element.name
        )
          return "beside";
        return now !== null && (now.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING) !== 0
          ? "before"
          : "after";
      });
      if (where === "there") return;
      // oxlint-disable-next-line no-await-in-loop
      await page.keyboard.press(where === "beside" ? "ArrowDown" : where === "before" ? "Shift+Tab" : "Tab");
    }
    throw new Error("keys do not get there");
  };
  return {
    press: async (target) => {
      count += 1;
      await goal(target);
      await page.keyboard.press("Enter");
    },
    choose: async (choice) => {
      count += 1;
      await goal(choice);
      await expect(choice).toBeChecked();
    },
    count: () => count,
  };
}

const fold = (page: Page, title: string): Locator =>
  page.locator("details.dress-fold").filter({ has: page.getByRole("heading", { level: 3, name: title, exact: true }) });
const unfold = (page: Page, title: string): Locator => fold(page, title).locator("summary").first();
const step = (page: Page, name: string): Locator =>
  page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link", { name });
const radio = (page: Page, name: string): Locator => page.getByRole("radio", { name, exact: true });

/** Her works hold one that has come to a base. */
async function withBase(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await page.getByLabel("Work file").setInputFiles(join(root, "demo-data/siskin.json"));
  await expect(page.getByRole("textbox", { name: "Name of this work" })).toHaveValue(/^Siskin/);
}

/** Three actions. */
async function beginFromBase(page: Page, { press }: Hand): Promise<void> {
  await press(page.getByRole("button", { name: "Works", exact: true }));
  await press(page.getByRole("button", { name: "Begin from a base…" }));
  await press(page.getByRole("button", { name: /^Siskin.*, trial of / }).first());
}

/** What is to be bought as the step says it, its parts and claims looked at. */
async function looked(page: Page, hand: Hand): Promise<readonly string[]> {
  await hand.press(unfold(page, "Cloth to buy"));
  const cloths = fold(page, "Cloth to buy");
  const still = async (): Promise<number> =>
    (await cloths.locator(".laying").count()) +
    (await cloths.locator(".one-cloth").count()) -
    (await cloths.locator(".to-buy").count());
  await expect.poll(still, { timeout: 60_000 }).toBe(0);
  await hand.press(unfold(page, "Cut list"));
  expect(hand.count()).toBeLessThanOrEqual(15);
  await expect(unfold(page, "Checks of the dress")).toContainText("all hold");
  return cloths.locator(".to-buy").allTextContents();
}

/** The sheets say the same cloth, and after the page is loaded again all is as it was. */
async function onPaperAndKept(page: Page, bought: readonly string[], parts: readonly RegExp[]): Promise<void> {
  await expectSaved(page);
  await page.goto("./#dress");
  await page.reload();
  await unfold(page, "Cut list").click();
  for (const part of parts)
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    await expect(fold(page, "Cut list").getByRole("row", { name: part }).first()).toBeVisible();
  await unfold(page, "Order of sewing").click();
  await page.getByRole("link", { name: "Print the sheets of the dress" }).click();
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".printed-dress");
  await expect(sheet.locator(".pd-notions li").filter({ hasText: "Main cloth" })).toBeVisible({ timeout: 60_000 });
  for (const amount of bought)
    // oxlint-disable-next-line no-await-in-loop -- one after the other
    await expect(sheet.locator(".pd-notions")).toContainText(amount);
}

test("cups with a sweetheart edge, two tiers and a lining in a sheer cloth, with a pointer", async ({ page }) => {
  await withBase(page);
  const hand = pointer();
  await beginFromBase(page, hand);
  await hand.press(step(page, "Envelope"));
  await hand.choose(page.getByRole("radio", { name: /^cups on a midriff band/i }));
  await hand.press(step(page, "Dress"));
  await hand.choose(radio(page, "Tiers"));
  await hand.press(unfold(page, "Neckline, straps and edges"));
  await hand.choose(radio(page, "Sweetheart"));
  await hand.press(unfold(page, "Under it"));
  await hand.choose(radio(page, "shapes show"));
  await hand.press(page.getByRole("button", { name: "Line the dress" }));
  const bought = await looked(page, hand);
  expect(bought).toHaveLength(2);
  await onPaperAndKept(page, bought, [/^Cup /, /^Tier 2/, /^Skirt front lining/, /^Cup lining/]);
});

test("six panels under a princess bodice, by keys alone", async ({ page }) => {
  await withBase(page);
  const hand = keys(page);
  await beginFromBase(page, hand);
  await hand.press(step(page, "Envelope"));
  await hand.choose(page.getByRole("radio", { name: /^princess seams from the armhole/i }));
  await hand.press(step(page, "Dress"));
  await hand.choose(radio(page, "A-line"));
  await hand.choose(radio(page, "6"));
  const bought = await looked(page, hand);
  await onPaperAndKept(page, bought, [/^Skirt front/, /^Skirt side front/, /^Skirt side back/, /^Skirt back/]);
});

test("the bodice of the base with a straight skirt, lined, in inches on a phone", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await withBase(page);
  const hand = pointer();
  await beginFromBase(page, hand);
  await hand.press(step(page, "Dress"));
  await hand.choose(radio(page, "in"));
  await hand.choose(radio(page, "Straight"));
  await hand.press(unfold(page, "Lining"));
  await hand.choose(radio(page, "bodice and skirt"));
  const bought = await looked(page, hand);
  expect(bought.every((amount) => amount.includes(" yd of "))).toBe(true);
  await expectNoAxeViolations(page);
  await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await onPaperAndKept(page, bought, [/^Skirt front/, /^Skirt back/, /^Skirt front lining/]);
});
