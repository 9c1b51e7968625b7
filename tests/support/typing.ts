/**
 * What a wearer types and does not leave: real key presses in fields of every step, and what stands there afterwards. All is
 * found by roles and labels, so that older pages can be held to it too.
 */
import type { Locator, Page } from "@playwright/test";

const STEPS = ["Tape", "Envelope", "Blend", "Darts", "Fit", "Paper"] as const;
type Step = (typeof STEPS)[number];

/** A place that keys go to. */
interface Spot {
  readonly at: (page: Page) => Locator;
  readonly keys: readonly string[];
  /** Other keys for the same place, for a second page. */
  readonly otherKeys: readonly string[];
  /** Where what stands there is read; without it in the field itself. */
  readonly label?: "aria-label";
}

export interface Typed {
  readonly name: string;
  readonly step: Step;
  /** Unfolds what it stands in; does nothing where that is done. */
  readonly open?: (page: Page) => Promise<void>;
  readonly spots: readonly Spot[];
}

const field = (label: string | RegExp, text: string, other: string): Spot => ({
  at: (page) => page.getByRole("textbox", { name: label }).first(),
  keys: ["Control+a", ...text.split("")],
  otherKeys: ["Control+a", ...other.split("")],
});

const waistDart = async (page: Page): Promise<void> => {
  if (await page.getByRole("textbox", { name: "Shorten by" }).isVisible()) return;
  await page
    .getByRole("button", { name: /^Front waist dart/ })
    .first()
    .click();
};

const swayBack = async (page: Page): Promise<void> => {
  if (await page.getByRole("textbox", { name: "Take out at the centre back" }).isVisible()) return;
  await page
    .getByRole("button", { name: /sway back/i })
    .first()
    .click();
};

const allowances = async (page: Page): Promise<void> => {
  const trueScale = page.getByRole("radio", { name: "True-scale pieces" });
  if (!(await trueScale.isChecked())) await trueScale.click();
  const summary = page.getByText(/^Seam and hem allowances: /);
  await summary.waitFor();
  if (!(await page.getByRole("group", { name: "Seam and hem allowances" }).isVisible())) await summary.click();
};

const WAIST = field(/^Waist girth/, "77.7", "78.8");
/** Typed by a second page, where it is to be another field. */
export const ELSEWHERE: Typed = { name: "height", step: "Tape", spots: [field(/^Height/, "166.6", "167.7")] };

export const TYPED: readonly Typed[] = [
  { name: "measure, 77.7", step: "Tape", spots: [WAIST] },
  { name: "measure that does not read, 7o", step: "Tape", spots: [field(/^Waist girth/, "7o", "8o")] },
  { name: "name of the work", step: "Tape", spots: [field("Name of this work", "Linen no. 4", "Wool no. 5")] },
  { name: "chart cell", step: "Envelope", spots: [field("Waist of size 12", "71", "69.5")] },
  { name: "name of a size", step: "Envelope", spots: [field("Name of size 4", "12L", "12S")] },
  { name: "ease", step: "Blend", spots: [field("At the bust", "6.5", "9.5")] },
  { name: "dart shortened by 25", step: "Darts", open: waistDart, spots: [field("Shorten by", "25", "13")] },
  {
    name: "arrow keys on a dart’s end",
    step: "Darts",
    spots: [
      {
        at: (page) => page.getByRole("button", { name: /^front waist dart, end\./ }).first(),
        keys: ["ArrowDown", "ArrowDown", "ArrowDown", "ArrowDown"],
        otherKeys: ["ArrowUp", "ArrowUp"],
        label: "aria-label",
      },
    ],
  },
  { name: "sway back, 12", step: "Fit", open: swayBack, spots: [field("Take out at the centre back", "12", "18")] },
  { name: "allowance, 2.5", step: "Paper", open: allowances, spots: [field("Side seam", "2.5", "1.8")] },
  {
    name: "two measures in turn",
    step: "Tape",
    spots: [WAIST, field(/^Hip girth/, "104.4", "105.5")],
  },
  {
    name: "two chart cells in turn",
    step: "Envelope",
    spots: [field("Waist of size 12", "71", "69.5"), field("Hip of size 12", "95.5", "93.5")],
  },
];

/** How long it may take the page to show what it holds, ms. */
const PATIENCE = 2500;
/** Between two keys of a quick hand, ms. */
const BETWEEN = 40;

const pause = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

export async function goToStep(page: Page, step: Step): Promise<void> {
  const heading = page.getByRole("heading", { level: 2, name: step, exact: true });
  if (await heading.isVisible()) return;
  await page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link", { name: step }).click();
  await heading.waitFor();
}

/** A step that is not this one. */
export const anotherStep = (step: Step): Step => (step === "Tape" ? "Envelope" : "Tape");

/** Another step is shown and then this one, so that the browser has something to go back to. */
export async function openAt(page: Page, url: string, { step, open }: Typed, isSaved = true): Promise<void> {
  await page.goto(`${url}#${anotherStep(step).toLowerCase()}`);
  await page.getByRole("heading", { level: 2, name: anotherStep(step), exact: true }).waitFor();
  if (isSaved) await page.getByText("Saved here").waitFor();
  await page.waitForLoadState("networkidle");
  await goToStep(page, step);
  await open?.(page);
}

async function standsAt(page: Page, { at, label }: Spot): Promise<string> {
  const place = at(page);
  await place.waitFor();
  return label === undefined ? place.inputValue() : ((await place.getAttribute(label)) ?? "");
}

export interface TypeOptions {
  readonly keysOf?: (spot: Spot) => readonly string[];
  /** Done before the last key. */
  readonly beforeLast?: () => Promise<void>;
}

/** Types and leaves nothing but for the next place. Gives what then stands in each place. */
export async function type(page: Page, { spots }: Typed, options: TypeOptions = {}): Promise<readonly string[]> {
  const { keysOf = (spot) => spot.keys, beforeLast } = options;
  const last = spots.at(-1);
  for (const spot of spots) {
    const place = spot.at(page);
    // A handle is a drawing: it is not pressed.
    if (spot.label === undefined) await place.click();
    else await place.focus();
    for (const [at, key] of keysOf(spot).entries()) {
      if (spot === last && at === keysOf(spot).length - 1) await beforeLast?.();
      await page.keyboard.press(key);
      await pause(BETWEEN);
    }
  }
  return standAt(page, spots);
}

async function standAt(page: Page, spots: readonly Spot[]): Promise<readonly string[]> {
  const stands: string[] = [];
  for (const spot of spots) stands.push(await standsAt(page, spot));
  return stands;
}

/** Types in two pages key by key, so quickly that neither can have heard of the other. Gives what then stands in each. */
export async function typeAtOnce(
  first: Page,
  second: Page,
  { spots }: Typed,
): Promise<readonly [readonly string[], readonly string[]]> {
  for (const spot of spots) {
    for (const page of [first, second]) {
      const place = spot.at(page);
      if (spot.label === undefined) await place.click();
      else await place.focus();
    }
    for (let at = 0; at < Math.max(spot.keys.length, spot.otherKeys.length); at += 1) {
      const [here, there] = [spot.keys[at], spot.otherKeys[at]];
      await Promise.all([
        here === undefined ? null : first.keyboard.press(here),
        there === undefined ? null : second.keyboard.press(there),
      ]);
    }
  }
  return [await standAt(first, spots), await standAt(second, spots)];
}

type Kept = "kept" | "as typed, not taken" | "LOST";
export interface Remained {
  readonly kept: Kept;
  readonly instead: readonly string[];
}

/** What is there of what was typed. */
export async function remained(page: Page, typed: Typed, expected: readonly string[]): Promise<Remained> {
  await goToStep(page, typed.step);
  await typed.open?.(page);
  const look = (): Promise<readonly string[]> => standAt(page, typed.spots);
  const isThere = (found: readonly string[]): boolean => found.every((one, at) => one === expected[at]);
  let found = await look();
  for (const end = Date.now() + PATIENCE; !isThere(found) && Date.now() < end; found = await look()) await pause(100);
  if (!isThere(found)) return { kept: "LOST", instead: found.filter((one, at) => one !== expected[at]) };
  for (const spot of typed.spots)
    if ((await spot.at(page).getAttribute("aria-invalid")) === "true")
      return { kept: "as typed, not taken", instead: [] };
  return { kept: "kept", instead: [] };
}

/** Opens, one after the other, the other works that are kept; for what went on as a copy. */
export async function remainedInCopy(page: Page, typed: Typed, expected: readonly string[]): Promise<boolean> {
  const works = page.getByRole("region", { name: "Your works" });
  const openers = works
    .getByRole("listitem")
    .getByRole("button", { name: /^(?!Copy |Delete |Put in the bin: |Bring back: ).*(?<! \(open\))$/ });
  const press = page.getByRole("button", { name: "Works", exact: true });
  await press.click();
  await works.getByRole("listitem").first().waitFor();
  const count = await openers.count();
  for (let at = 0; at < count; at += 1) {
    if (at > 0) await press.click();
    // The one that was open before stands in the list again.
    await openers.nth(at).click();
    await works.waitFor({ state: "hidden" });
    if ((await remained(page, typed, expected)).kept !== "LOST") return true;
  }
  return false;
}
