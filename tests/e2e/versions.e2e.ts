/** Versions in a real browser: two toiles and now held against each other, gone back to, and the paper of one altered. */
import { expect, test, type Page } from "@playwright/test";
import type { Work } from "../../src/core/decisions/work";
import { applyCommand, type Command } from "../../src/core/plan/commands";
import { writeWorkFile } from "../../src/document/workFile";
import { sampleWork } from "../support/sampleWork";
import { expectNoAxeViolations } from "./support";

/** A work with one trial, what was seen on it, an answer taken, and a wish of her own. */
function tried(): Work {
  const commands: readonly Command[] = [
    { kind: "beginTrial", id: "one", day: "2026-11-01" },
    {
      kind: "putObservation",
      trial: "one",
      observation: { id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 5 },
    },
    {
      kind: "takeTrialAnswer",
      trial: "one",
      answer: { causes: ["swayBack"], because: ["fold"], alterations: ["sway"] },
      alterations: [{ kind: "fit", id: "sway", fit: "swayBack", amount: 10 }],
    },
    { kind: "putAlteration", alteration: { kind: "fit", id: "tip", fit: "shoulderSlope", amount: 6, half: "right" } },
  ];
  return commands.reduce(applyCommand, { ...sampleWork, name: "Tried on" });
}

async function openTried(page: Page): Promise<void> {
  await page.goto("./");
  await page.getByRole("button", { name: "Works" }).click();
  await page.getByLabel("Work file").setInputFiles({
    name: "tried.json",
    mimeType: "application/json",
    buffer: Buffer.from(writeWorkFile(tried())),
  });
  await expect(page.getByLabel("Name of this work")).toHaveValue("Tried on");
  await page.goto("./#trial");
}

test("a trial is held against now, gone back to, and branched from", async ({ page }) => {
  await openTried(page);
  const versions = page.getByRole("region", { name: "Versions" });
  await expect(versions.getByRole("img", { name: /dashed, and Now, unbroken/ }).first()).toBeVisible();
  await expect(
    versions.getByRole("table", { name: "Alterations" }).getByRole("row", { name: /Sway back/ }),
  ).toContainText("+10 mm");
  await expect(versions.getByText(/fold across, back above the waist, pinched 5 mm/)).toBeVisible();
  await expectNoAxeViolations(page);

  await versions.getByRole("button", { name: /^Trial 1/ }).focus();
  await page.keyboard.press("Enter");
  await versions.getByRole("button", { name: "Go back to trial 1", exact: true }).press("Enter");
  await expect(versions.getByText(/as decided now/)).toBeVisible();
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(versions.getByText(/never sewn/)).toBeVisible();

  await versions.getByRole("button", { name: "Branch from trial 1" }).click();
  await expect(page.getByLabel("Name of this work")).toHaveValue("Tried on, from trial 1");
});

test("the paper of a trial is altered by what is printed, at a phone's width too", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await openTried(page);
  await page.getByRole("link", { name: "Print what changes" }).click();
  const sheet = page.getByRole("article", { name: "Alter your toile’s paper" });
  await expect(sheet).toContainText("Trial 1, 1 November 2026 → Now");
  await expect(sheet).toContainText(/Take 10\smm out across the back waist/);
  await expect(sheet).toContainText(/Trace your old piece of the back/);
  await expectNoAxeViolations(page);
  const { scroll, width } = await page.evaluate(() => ({
    scroll: document.documentElement.scrollWidth,
    width: document.documentElement.clientWidth,
  }));
  expect(scroll).toBeLessThanOrEqual(width);

  await page.getByText("The same in true size, as strips to lay on that paper").click();
  await expect(page.getByText(/strips|pages/).first()).toBeVisible();
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 120_000 }),
    page.getByRole("button", { name: /PDF/ }).click(),
  ]);
  expect(download.suggestedFilename()).toBe("tried-on-changes-overlay.pdf");
});
