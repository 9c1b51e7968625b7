/** Every fit alteration, told for every style, sign and tape: to be followed as it is printed. */
import type { StyleName } from "../../../src/core/decisions/pattern";
import type { FitAlteration } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import { fitOf } from "../../../src/core/alterations/fit/index";
import { piecesOf } from "../../../src/core/pattern/pieceSet";
import type { PieceName } from "../../../src/core/pattern/piece";
import type { LengthUnit, Work } from "../../../src/core/decisions/work";
import { invariant } from "../../../src/core/result";
import { checklistByPiece, checklistSentence } from "../../../src/words/checklist";
import { FIT_WORDS } from "../../../src/words/alterations/index";
import { fitSteps, fitTitle } from "../../../src/words/fits";
import { plannedTitle } from "../../../src/words/ledger";
import { anyAmount } from "../../support/amounts";
import { anyGarmentOf, bustPointOf, changedPieces, garment, STYLE_NAMES, type Garment } from "../../support/garments";
import { planOf, testWork } from "../../support/works";

const UNITS = ["cm", "in"] as const;
const asked = (fit: FitName, amount: number): FitAlteration => ({ kind: "fit", id: "a", fit, amount });

/** All that is said of one alteration on a garment; null where it cannot be made. */
function said(fit: FitName, body: Garment, amount: number, unit: LengthUnit) {
  const pieces = garment(body);
  const done = applyAlteration(pieces, asked(fit, amount), { bustPoint: bustPointOf(pieces) });
  if (!done.ok) return null;
  const { trace } = done.value;
  const stepsOn = (name: PieceName) => fitSteps(asked(fit, amount), name, trace, unit);
  const texts = [fitTitle(asked(fit, amount), unit), ...piecesOf(pieces).flatMap(({ name }) => stepsOn(name))];
  return { changed: changedPieces(pieces, done.value.pieces), pieces, stepsOn, text: texts.join("\n") };
}

const CASES = FIT_NAMES.flatMap((fit) =>
  STYLE_NAMES.filter((style) => fitOf(fit).applies(garment({ style }))).flatMap((style) =>
    (fitOf(fit).range.least < 0 ? [8, -8] : [8]).map((amount) => ({ fit, style, amount })),
  ),
);

/** Lengths of the other tape. */
const FOREIGN: Readonly<Record<LengthUnit, RegExp>> = { in: /\b(?:mm|cm)\b|metre/u, cm: /[\d½¼¾] in\b|inch|″/u };

describe.each(CASES)("$fit by $amount on $style", ({ fit, style, amount }) => {
  it.each(UNITS)("is told in %s on each piece that it changes and on no other, with every length filled in", (unit) => {
    const { changed, pieces, stepsOn, text } = invariant(said(fit, { style }, amount, unit), "said");
    const told = piecesOf(pieces).flatMap(({ name }) => (stepsOn(name).length === 0 ? [] : [name]));
    expect(changed.length).toBeGreaterThan(0);
    expect(told).toEqual(changed);
    expect(text).not.toMatch(/[{}]|undefined|NaN|false| {2}|[-−]\d/u);
  });

  it.each(UNITS)("names in %s no length of the other tape", (unit) => {
    expect(invariant(said(fit, { style }, amount, unit), "said").text).not.toMatch(FOREIGN[unit]);
  });
});

describe("whatever the body and the amount", () => {
  it("nothing is left in braces, and no length is of the other tape", () => {
    const any = fc
      .constantFrom(...FIT_NAMES)
      .chain((fit) =>
        fc.tuple(
          fc.constant(fit),
          anyGarmentOf(...STYLE_NAMES),
          anyAmount(fitOf(fit).range.least, fitOf(fit).range.most),
          fc.constantFrom(...UNITS),
        ),
      );
    fc.assert(
      fc.property(any, ([fit, body, amount, unit]) => {
        const text = said(fit, body, amount, unit)?.text ?? "";
        expect(text).not.toMatch(/[{}]/u);
        expect(text).not.toMatch(FOREIGN[unit]);
      }),
      { numRuns: 60 },
    );
  });

  it("nothing is to be done where nothing is asked", () => {
    for (const { fit, style } of CASES) {
      const { pieces, stepsOn } = invariant(said(fit, { style }, 0, "cm"), "said");
      expect(piecesOf(pieces).flatMap(({ name }) => stepsOn(name))).toEqual([]);
    }
  });
});

describe.each(STYLE_NAMES)("the whole order of work on %s", (style: StyleName) => {
  it.each(UNITS)("with all of them in use speaks in %s alone", (unit) => {
    for (const sign of [1, -1]) {
      const work: Work = {
        ...testWork,
        unit,
        pattern: { ...testWork.pattern, style },
        alterations: FIT_NAMES.map((fit) => ({ ...asked(fit, 4 * sign), id: fit })),
      };
      const plan = planOf(work);
      expect(plan.ledger.filter(({ source, outcome }) => source === "wearer" && outcome.ok).length).toBeGreaterThan(8);
      const lines = checklistByPiece(plan, unit).flatMap((group) => group.lines.map(checklistSentence));
      expect([...lines, ...plan.ledger.map((planned) => plannedTitle(planned, unit))].join("\n")).not.toMatch(
        FOREIGN[unit],
      );
    }
  });
});

describe("lengths of the trade's own choosing", () => {
  // 20 mm is 0.79 in, 30 mm 1.18, 40 mm 1.57, 2 mm 0.08: to an eighth, or a sixteenth where that is too coarse.
  it.each([
    ["swayBack", "sideDart", "back", "20 mm above the waist", "¾ in above the waist"],
    ["swayBack", "sideDart", "back", "for the first 20 mm", "for the first ¾ in"],
    ["waistDropFront", "sideDart", "frontBasque", "20 mm below the waist", "¾ in below the waist"],
    ["waistDropFront", "princessArmhole", "centreFront", "over the last 40 mm above", "over the last 1 5/8 in above"],
    // Half across the side front where its seam begins, 6.55 mm or 0.26 in: see saidLengths.test.ts.
    ["chestWidth", "princessArmhole", "sideFront", "7 mm from it", "¼ in from it"],
    ["forwardShoulder", "sideDart", "back", "to within 2 mm", "to within 1/16 in"],
    ["shoulderSlope", "sideDart", "front", "to within 3 mm", "to within 1/8 in"],
  ] as const)("%s on %s, %s: %j or %j", (fit, style, piece, cm, inches) => {
    expect(
      invariant(said(fit, { style }, 8, "cm"), "said")
        .stepsOn(piece)
        .join(" "),
    ).toContain(cm);
    expect(
      invariant(said(fit, { style }, 8, "in"), "said")
        .stepsOn(piece)
        .join(" "),
    ).toContain(inches);
  });
});

/** What is done on a piece for more, and for less: what is lengthened is opened, what moves forward leaves the front. */
describe("which way", () => {
  it.each([
    ["lengthAboveBust", "sideDart", "front", "gap", "Fold"],
    ["lengthBelowBust", "sideDart", "back", "gap", "Fold"],
    ["lengthBasque", "sideDart", "frontBasque", "gap", "Fold"],
    ["bandDepth", "midriff", "backBand", "gap", "Fold"],
    ["roundBack", "sideDart", "back", "gap", "laps"],
    ["swayBack", "sideDart", "back", "laps", "gap"],
    ["waistDropFront", "sideDart", "front", "gap", "laps"],
    ["waistDropFront", "sideDart", "frontBasque", "laps", "gap"],
    ["waistDropFront", "princessArmhole", "centreFront", "gap", "laps"],
    ["waistDropBack", "midriff", "backBand", "gap", "laps"],
    ["waistDropBack", "midriff", "backBasque", "laps", "gap"],
    ["bustPointLevel", "sideDart", "front", "straight down by", "straight up by"],
    ["bustPointLevel", "princessShoulder", "sideFront", "further down", "further up"],
    ["chestWidth", "sideDart", "front", "straight out until", "straight in until"],
    ["chestWidth", "princessArmhole", "sideFront", "straight out by", "straight in by"],
    ["backWidth", "sideDart", "back", "straight out until", "straight in until"],
    ["strapLength", "midriff", "strap", "part the two halves", "Fold"],
    ["strapWidth", "midriff", "cup", "apart", "together"],
    ["strapWidth", "midriff", "strap", "further out", "further in"],
    ["strapPlace", "midriff", "back", "nearer the neck", "nearer the end of the shoulder"],
    ["shoulderSlope", "sideDart", "back", "higher", "lower"],
    ["shoulderSlope", "princessArmhole", "sideFront", "further up", "further down"],
    ["forwardShoulder", "sideDart", "front", "down the armhole", "beyond the end of the shoulder"],
    ["forwardShoulder", "sideDart", "back", "beyond the end of the shoulder", "down the armhole"],
    ["shoulderWidth", "sideDart", "back", "straight on by", "in from the armhole"],
    ["armholeDepth", "midriff", "cup", "down the side seam", "upwards"],
    ["sideSeamBust", "midriff", "cup", "out from the side seam", "in from the side seam"],
    ["sideSeamUnderBust", "midriff", "cup", "beyond the side seam", "in from the side seam"],
    ["sideSeamUnderBust", "midriff", "backBand", "beyond the side seam", "in from the side seam"],
    ["sideSeamWaist", "sideDart", "frontBasque", "beyond the side seam", "in from the side seam"],
    ["sideSeamHip", "sideDart", "backBasque", "beyond the side seam", "in from the side seam"],
  ] as const)("%s on %s, %s: %j for more, %j for less", (fit, style, piece, more, less) => {
    const told = (amount: number): string =>
      invariant(said(fit, { style }, amount, "cm"), `${fit} by ${amount}`)
        .stepsOn(piece)
        .join(" ");
    expect(told(8)).toContain(more);
    expect(told(8)).not.toContain(less);
    expect(told(-8)).toContain(less);
    expect(told(-8)).not.toContain(more);
  });
});

describe("the words of each", () => {
  it.each(FIT_NAMES)("%s has a title for either sign that it works with, and says what is seen", (fit) => {
    const { name, seen, amount, more, less } = FIT_WORDS[fit];
    for (const text of [name, seen, amount, more]) expect(text).toMatch(/^[A-Z]/u);
    const titles = less === undefined ? [more] : [more, less];
    expect(titles).toHaveLength(fitOf(fit).range.least < 0 ? 2 : 1);
    expect(new Set(titles).size).toBe(titles.length);
    for (const title of titles) expect(title).toContain("{amount}");
  });

  it("have each another name", () => {
    expect(new Set(FIT_NAMES.map((fit) => FIT_WORDS[fit].name)).size).toBe(FIT_NAMES.length);
  });
});
