/**
 * The whole story of two trial garments as she lives it: a toile with two answers to one dart, what was seen, the answer taken,
 * "the left is right", a second toile that is clean, kept as her base, and the next dress begun from it. Once with the mouse, once
 * by keys alone, once in inches on a phone.
 */
import { expect, test, type Locator, type Page } from "@playwright/test";
import { expectNoAxeViolations } from "./support";

/** How she does it: with a pointer or by keys. Every press, tap and text counts as one. */
interface Hand {
  readonly press: (target: Locator) => Promise<void>;
  readonly write: (field: Locator, text: string) => Promise<void>;
  readonly choose: (list: Locator, label: string) => Promise<void>;
  readonly tick: (choice: Locator) => Promise<void>;
  readonly count: () => number;
}

function pointer(): Hand {
  let count = 0;
  return {
    press: async (target) => {
      count += 1;
      await target.click();
    },
    write: async (field, text) => {
      count += 2;
      await field.fill(text);
      await field.press("Tab");
    },
    choose: async (list, label) => {
      count += 2;
      await list.selectOption({ label });
    },
    tick: async (choice) => {
      count += 1;
      await choice.check();
    },
    count: () => count,
  };
}

/** Nothing but Tab, letters, arrows, Space and Enter. */
function keys(page: Page): Hand {
  let count = 0;
  const goal = async (target: Locator): Promise<void> => {
    await expect(target).toBeVisible();
    for (let step = 0; step < 600; step += 1) {
      // oxlint-disable-next-line no-await-in-loop -- one key after the other, as she presses them
      const where = await target.evaluate((element) => {
        const now = document.activeElement;
        if (now === element) return 0;
        return now !== null && (now.compareDocumentPosition(element) & Node.DOCUMENT_POSITION_PRECEDING) !== 0 ? -1 : 1;
      });
      if (where === 0) return;
      // oxlint-disable-next-line no-await-in-loop
      await page.keyboard.press(where < 0 ? "Shift+Tab" : "Tab");
    }
    throw new Error("keys do not get there");
  };
  return {
    press: async (target) => {
      count += 1;
      await goal(target);
      await page.keyboard.press("Enter");
    },
    write: async (field, text) => {
      count += 2;
      await goal(field);
      await page.keyboard.press("ControlOrMeta+a");
      await page.keyboard.type(text);
      await page.keyboard.press("Tab");
    },
    choose: async (list, label) => {
      count += 2;
      await goal(list);
      // A list takes keys for one word only where none comes late, as on a busy machine: then she types it again.
      await expect(async () => {
        await page.keyboard.type(label);
        await expect(list.locator("option:checked")).toHaveText(label, { timeout: 2000 });
      }).toPass({ timeout: 60_000, intervals: [1500] });
    },
    tick: async (choice) => {
      count += 1;
      // Of a group Tab comes to the one that is chosen, or to the first: arrows go on from there.
      const group = choice.locator("xpath=ancestor::fieldset[1]");
      const chosen = group.locator("input:checked");
      await goal((await chosen.count()) > 0 ? chosen : group.locator("input").first());
      for (let step = 0; step < 5 && !(await choice.isChecked()); step += 1) {
        // oxlint-disable-next-line no-await-in-loop
        await page.keyboard.press(step === 0 && (await chosen.count()) === 0 ? "Space" : "ArrowDown");
      }
      await expect(choice).toBeChecked();
    },
    count: () => count,
  };
}

/** How much, as she writes it: millimetres or inches with fractions. */
interface Amounts {
  readonly left: string;
  readonly right: string;
  readonly fold: string;
  readonly drop: string;
  readonly back: string;
  /** What is then taken out across the back: twice the fold. */
  readonly sway: RegExp;
}

const MM: Amounts = {
  left: "-10",
  right: "-24",
  fold: "7",
  drop: "14",
  back: "14",
  sway: /Take 14 mm out across the back waist/,
};
const INCHES: Amounts = {
  left: "-3/8",
  right: "-1",
  fold: "1/4",
  drop: "1/2",
  back: "5/8",
  sway: /Take ½\sin out across the back waist/,
};

const part = (page: Page, name: string | RegExp): Locator => page.getByRole("region", { name });

/** Two answers to one dart, one on each half. */
async function answerTwoWays(page: Page, hand: Hand, { left, right }: Amounts): Promise<void> {
  const editor = page.locator(".dart-editor");
  await hand.write(editor.getByLabel("Shorten by"), left);
  await hand.press(editor.getByRole("button", { name: "Try another way on your right half" }));
  await expect(editor.getByRole("radio", { name: "right" })).toBeChecked();
  await hand.write(editor.getByLabel("Shorten by"), right);
}

/** The head of the record, and what spoils every reading. */
async function beginTrial(page: Page, hand: Hand, isClean: boolean): Promise<void> {
  await hand.press(page.getByRole("button", { name: /^I have sewn/ }));
  for (const [name, text] of [
    ["Cloth", "calico"],
    ["Pinned by", "a friend"],
    ["Bra", "the one for this dress"],
    ["Shoes", "heels"],
  ] as const)
    // oxlint-disable-next-line no-await-in-loop -- one field after the other, as she fills them
    await hand.write(page.getByLabel(name, { exact: true }), text);
  const before = part(page, "Before you read it");
  for (const half of ["left", "right"])
    for (const way of ["Out", "Down"])
      // oxlint-disable-next-line no-await-in-loop
      await hand.write(before.getByLabel(`Bust point, ${half}: ${way}`), "0");
  for (const check of await before.locator(".trial-check").all()) {
    // oxlint-disable-next-line no-await-in-loop
    const isHem = ((await check.locator("legend").textContent()) ?? "").startsWith("Hem");
    // oxlint-disable-next-line no-await-in-loop
    await hand.tick(check.getByLabel(isHem && !isClean ? "no" : "yes", { exact: true }));
  }
}

/** Four lines, as they stand on her sheet. */
async function writeLines(page: Page, hand: Hand, { fold, drop, back }: Amounts): Promise<void> {
  const lines = part(page, "What you see");
  const of = (line: number, name: string): Locator => lines.getByLabel(`Line ${line}: ${name}`, { exact: true });
  await hand.write(of(1, "Place"), "21");
  await hand.choose(of(1, "What is seen"), "fold across");
  await hand.choose(of(1, "How told"), "pinched");
  await hand.write(of(1, "How much"), fold);
  await hand.write(of(2, "Place"), "24");
  await hand.choose(of(2, "What is seen"), "drops");
  await hand.write(of(2, "How much"), drop);
  await hand.write(of(3, "Place"), "8");
  await hand.choose(of(3, "What is seen"), "dart ends here");
  await hand.choose(of(3, "of"), "front side dart");
  await hand.write(of(3, "Out"), back);
  await hand.choose(of(3, "Half"), "right");
  await hand.write(of(4, "Place"), "8");
  await hand.choose(of(4, "What is seen"), "stands off in a point");
  await hand.choose(of(4, "of"), "front side dart");
  await hand.choose(of(4, "Half"), "right");
}

async function verdict(page: Page, hand: Hand, words: string, because: string): Promise<void> {
  const place = part(page, "Verdict");
  await hand.press(place.getByRole("button", { name: words, exact: true }));
  await hand.write(place.getByLabel("Because"), because);
}

/** The first answer taken for both halves; what it explains and leaves stands beside it. */
async function takeAnswer(page: Page, hand: Hand, { sway }: Amounts): Promise<void> {
  const answers = part(page, "What it comes to");
  const first = answers.locator("details").first();
  await expect(first).toContainText(/sway back/i);
  await expect(first).toContainText(sway);
  await expect(first).toContainText("Explains lines 1, 2, 3 and 4. It leaves nothing.");
  await hand.press(first.getByRole("button", { name: /^Take it/ }));
  await expect(answers.getByText(/^Taken/).first()).toBeVisible();
}

const ledger = (page: Page): Locator => page.locator(".ledger-place");
const onRight = (page: Page): Locator => ledger(page).getByText(/right half/);

interface Way {
  readonly hand: Hand;
  readonly amounts: Amounts;
  /** By the hand, to another step. */
  readonly goTo: (step: "Darts" | "Trial" | "Paper") => Promise<void>;
  /** What stands between, looked at. */
  readonly look: () => Promise<void>;
}

/** From the first plan to the base that is kept. */
async function tellStory(page: Page, { hand, amounts, goTo: go, look }: Way): Promise<void> {
  await go("Darts");
  await answerTwoWays(page, hand, amounts);
  await go("Trial");
  await look();
  await beginTrial(page, hand, false);
  await writeLines(page, hand, amounts);
  await look();
  await takeAnswer(page, hand, amounts);
  await look();
  await verdict(page, hand, "Try again", "The left dart is right.");
  await hand.press(page.locator("#step").getByRole("button", { name: "The left is right" }));
  await expect(onRight(page)).toHaveCount(0);
  await beginTrial(page, hand, true);
  await expect(part(page, "What it comes to")).toContainText("Write a line");
  await verdict(page, hand, "Keep", "Nothing pulls or stands off.");
  await hand.press(page.getByRole("button", { name: "Keep it as your base" }));
  await expect(page.getByText("Kept as your base.")).toBeVisible();
  await look();
}

/** The next dress is three presses away, and has what the base had. */
async function beginFromBase(page: Page, { hand, amounts, goTo: go, look }: Way): Promise<void> {
  const before = hand.count();
  await hand.press(page.getByRole("button", { name: "Works", exact: true }));
  await hand.press(page.getByRole("button", { name: "Begin from a base…" }));
  const bases = part(page, "Begin from a base");
  await expect(bases.getByRole("button")).toHaveCount(1);
  await look();
  await hand.press(bases.getByRole("button", { name: /^Wren bodice to the hip \(invented\), trial of / }));
  expect(hand.count() - before).toBe(3);
  await expect(ledger(page).getByText(amounts.sway).first()).toBeAttached();
  await go("Trial");
  // No trial of this one yet.
  await expect(page.getByRole("button", { name: "I have sewn this" })).toBeVisible();
}

const byLinks =
  (page: Page, hand: Hand) =>
  async (step: string): Promise<void> => {
    await hand.press(page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link", { name: step }));
    await expect(page.getByRole("heading", { level: 2, name: step })).toBeVisible();
  };

test("the whole story with a pointer, axe on each state", async ({ page }) => {
  test.slow();
  const hand = pointer();
  await page.goto("./");
  const way: Way = {
    hand,
    amounts: MM,
    goTo: byLinks(page, hand),
    look: () => expectNoAxeViolations(page),
  };
  await tellStory(page, way);
  await beginFromBase(page, way);
});

test("the whole story by keys alone", async ({ page }) => {
  test.slow();
  const hand = keys(page);
  await page.goto("./");
  const way: Way = { hand, amounts: MM, goTo: byLinks(page, hand), look: async () => undefined };
  await tellStory(page, way);
  await beginFromBase(page, way);
});

test("the whole story in inches on a phone, nothing wider than the screen", async ({ page }) => {
  test.slow();
  await page.setViewportSize({ width: 390, height: 844 });
  const hand = pointer();
  await page.goto("./#tape");
  await page.getByRole("radio", { name: "in", exact: true }).check();
  const way: Way = {
    hand,
    amounts: INCHES,
    goTo: byLinks(page, hand),
    look: async () => {
      await expectNoAxeViolations(page);
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    },
  };
  await tellStory(page, way);
  await beginFromBase(page, way);
});
