/** One work of the load on the page: opened as a file, looked at on its steps, something done to it. */
import type { Page } from "@playwright/test";
import type { Work } from "../../../src/core/decisions/work";
import { planOf } from "../../../src/core/plan/planOf";
import { writeWorkFile } from "../../../src/document/workFile";
import { checkClaim, checkFailureSentence } from "../../../src/words/checks";
import { chancesOf, type Chances } from "../trial/chances";
import { loadCase } from "./loadWork";

const STEPS = ["tape", "envelope", "tissue", "blend", "darts", "fit", "trial", "dress", "paper"] as const;
type Step = (typeof STEPS)[number];

/** Share of the steps that are looked at of each work. */
const LOOKED_AT = 0.5;
/** ms. No sooner is something given up, on a machine that is shared. */
const PATIENCE = 60_000;

/** Waits until the page has had nothing to do for a moment. */
const untilQuiet = (page: Page): Promise<void> =>
  page.evaluate(
    () =>
      new Promise<void>((done) => {
        requestIdleCallback(() => setTimeout(done, 20), { timeout: 3000 });
      }),
  );

async function goTo(page: Page, step: Step): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, step);
  // The step of her own pattern is headed by more than its name.
  await page
    .getByRole("heading", { level: 2, name: new RegExp(`^(your )?${step}$`, "iu") })
    .waitFor({ timeout: PATIENCE });
  await untilQuiet(page);
}

async function openOnPage(page: Page, work: Work): Promise<void> {
  await page.getByRole("button", { name: "Works", exact: true }).click();
  const buffer = Buffer.from(writeWorkFile(work));
  await page.getByLabel("Work file").setInputFiles({ name: "load.json", mimeType: "application/json", buffer });
  await page.waitForFunction(
    (name) => [...document.querySelectorAll("input")].some(({ value }) => value === name),
    work.name,
    { timeout: PATIENCE },
  );
  await page.keyboard.press("Escape");
  await untilQuiet(page);
}

/** Texts, and attributes of drawings, that hold what is no word and no number; notes of parts that have a fault in them. */
const amissOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const noWord = /\bNaN\b|\bundefined\b|\bInfinity\b|\[object /u;
    const texts: string[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const text = node.textContent ?? "";
      if (noWord.test(text)) texts.push(`says “${text.slice(0, 80)}”`);
    }
    for (const element of document.querySelectorAll("svg, svg *"))
      for (const { name, value } of element.attributes)
        if (noWord.test(value)) texts.push(`draws ${element.tagName} ${name} “${value.slice(0, 60)}”`);
    for (const field of document.querySelectorAll("input"))
      if (noWord.test(field.value)) texts.push(`field holds “${field.value.slice(0, 40)}”`);
    for (const note of document.querySelectorAll(".part-failed"))
      texts.push(`part failed: ${(note.textContent ?? "").slice(0, 80)}`);
    return texts;
  });

/** What the ledger says of its checks, not those of a dress beside it: each that does not hold with its sentences. */
const ledgerSays = (page: Page): Promise<readonly string[] | null> =>
  page.evaluate(() => {
    const checks = document.querySelector(".ledger .checks");
    return checks === null
      ? null
      : [...checks.querySelectorAll("li:not([data-ok])")].flatMap((line) => [
          line.querySelector(".check-claim")?.firstChild?.textContent ?? "",
          ...[...line.querySelectorAll("p")].map(({ textContent }) => textContent.replaceAll("\u00A0", " ")),
        ]);
  });

function ledgerShould(work: Work): readonly string[] | null {
  const plan = planOf(work);
  if (!plan.ok) return null;
  const failing = plan.value.checks.filter(({ ok }) => !ok);
  return [...new Set(failing.map(({ name }) => name))].flatMap((name) => [
    checkClaim(name),
    ...failing.filter((check) => check.name === name).map((check) => checkFailureSentence(check, work.unit)),
  ]);
}

/** Of 100 ms each. */
const LEDGER_TRIES = PATIENCE / 100;

async function ledgerAmiss(page: Page, work: Work): Promise<readonly string[]> {
  const should = ledgerShould(work);
  let says = await ledgerSays(page);
  // What is worked out for a work just opened comes when it comes.
  for (let tries = 0; tries < LEDGER_TRIES && JSON.stringify(says) !== JSON.stringify(should); tries += 1) {
    await page.waitForTimeout(100);
    says = await ledgerSays(page);
  }
  const [is, ought] = [JSON.stringify(says), JSON.stringify(should)];
  return is === ought ? [] : [`the ledger says ${is}, not ${ought}`];
}

/** Drags a handle of a dart a way that chances say, and lets go. */
async function drag(page: Page, chances: Chances): Promise<void> {
  await goTo(page, "darts");
  const handles = await page.locator('[data-testid^="handle-"]').all();
  if (handles.length === 0) return;
  const box = await chances.one(handles).boundingBox();
  if (box === null) return;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + chances.from(-80, 80), y + chances.from(-80, 80), { steps: 5 });
  await page.mouse.up();
}

const TYPED = ["0", "12", "-8", "3 1/2", "1e9", "88,5", "abc", "", "900", "0.1", "34 in"] as const;

async function type(page: Page, chances: Chances): Promise<void> {
  await goTo(page, chances.one(["tape", "envelope", "blend", "darts", "fit", "dress"] as const));
  const fields = await page.locator('main input[type="text"]:visible, main input:not([type]):visible').all();
  if (fields.length === 0) return;
  const field = chances.one(fields);
  if (!(await field.isEditable())) return;
  await field.fill(chances.one(TYPED), { timeout: PATIENCE });
  await field.press("Enter");
}

const undo = (page: Page): Promise<void> => page.keyboard.press("Control+z");

const ACTIONS: readonly ((page: Page, chances: Chances) => Promise<void>)[] = [
  drag,
  type,
  async (page, chances) => {
    await drag(page, chances);
    await undo(page);
  },
  async (page, chances) => {
    await type(page, chances);
    await undo(page);
    await page.keyboard.press("Control+Shift+z");
  },
];

/** What is amiss with the work of one seed on the page; `errors` is emptied. */
export async function loadOnPage(page: Page, seed: number, errors: string[]): Promise<readonly string[]> {
  const chances = chancesOf(seed);
  const { work: drawn } = loadCase(seed);
  const work: Work = { ...drawn, name: `Load ${seed}` };
  const amiss: string[] = [];
  let at = "opening it";
  try {
    await openOnPage(page, work);
    amiss.push(...(await ledgerAmiss(page, work)), ...(await amissOn(page)));
    for (const step of STEPS.filter(() => chances.is(LOOKED_AT))) {
      at = step;
      await goTo(page, step);
      amiss.push(...(await amissOn(page)).map((text) => `${step} ${text}`));
    }
    at = "what is done to it";
    await chances.one(ACTIONS)(page, chances);
    await untilQuiet(page);
    amiss.push(...(await amissOn(page)).map((text) => `afterwards it ${text}`));
  } catch (error) {
    amiss.push(`not gone through with (${at}): ${String(error).split("\n", 4).join(" ")}`);
  }
  return [...new Set([...amiss, ...errors.splice(0)])];
}
