/**
 * A line drawn with a bend in it is the same line: what is altered on pieces with bends comes out as on those without. A cubic cut
 * in two is not quite a cubic any more once its ends move, so the lines may lie some tenths of a millimetre beside each other.
 */
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { fitOf } from "../../../src/core/alterations/fit/index";
import type { Applied } from "../../../src/core/alterations/outcome/applied";
import type { AlterationTrace } from "../../../src/core/alterations/outcome/trace";
import type { DartHome, DartName, PieceName } from "../../../src/core/pattern/piece";
import type { Result } from "../../../src/core/result";
import { bentSet, setOff, type BentLimits } from "../../support/bentPieces";
import { bustPointOf, garment } from "../../support/garments";

const STYLES = ["sideDart", "midriff", "princessShoulder", "princessArmhole"] as const;
type Worn = (typeof STYLES)[number];
const made = new Map(
  STYLES.map((style) => {
    const plain = garment({ style });
    return [style, { plain, bent: bentSet(plain), context: { bustPoint: bustPointOf(plain) } }] as const;
  }),
);
const wornAs = (style: Worn) => {
  const found = made.get(style);
  if (found === undefined) throw new Error(style);
  return found;
};
function both(style: Worn, alteration: Alteration): readonly [Result<Applied, unknown>, Result<Applied, unknown>] {
  const { plain, bent, context } = wornAs(style);
  return [applyAlteration(plain, alteration, context), applyAlteration(bent, alteration, context)];
}

/** In what an alteration of the bent pieces differs from that of the plain ones; a refusal is to be just the same. */
function unlike(style: Worn, alteration: Alteration, limits: BentLimits, told = 0.01): readonly unknown[] {
  const [plain, bent] = both(style, alteration);
  if (!plain.ok || !bent.ok) return JSON.stringify(plain) === JSON.stringify(bent) ? [] : [plain, bent];
  const [was, is] = [plain.value.trace, bent.value.trace];
  const values = Object.entries({ ...is.values, ...was.values }).filter(
    ([key, value]) => !(Math.abs((is.values[key] ?? Number.NaN) - value) <= told),
  );
  const partsOf = ({ surgery, given }: AlterationTrace) =>
    JSON.stringify([
      surgery.map(({ piece, parts }) => [piece, parts.length]),
      given.map(({ place, piece }) => [place, piece]),
    ]);
  return [
    ...setOff(wornAs(style).plain, plain.value.pieces, bent.value.pieces, limits),
    ...values,
    ...(partsOf(was) === partsOf(is) ? [] : [partsOf(was), partsOf(is)]),
  ];
}

/** Where no line that has a bend takes another shape, or lengths are solved for. */
const SAME: BentLimits = { corner: 0.03, seam: 0.02, line: 0.06 };
const NEARLY: BentLimits = { corner: 0.14, seam: 0.21, line: 1.15 };
const LIMITS: Readonly<Partial<Record<FitName, BentLimits>>> = {
  lengthAboveBust: { corner: 0.001, seam: 0.12, line: 0.65 },
  lengthBelowBust: SAME,
  lengthBasque: { corner: 0.001, seam: 0.02, line: 0.2 },
  bandDepth: SAME,
  strapLength: SAME,
  sideSeamUnderBust: SAME,
  sideSeamWaist: { corner: 0.04, seam: 0.001, line: 0.3 },
  sideSeamHip: { corner: 0.001, seam: 0.05, line: 0.4 },
  sideSeamBust: { corner: 0.001, seam: 0.35, line: 0.5 },
  armholeGape: { corner: 0.003, seam: 0.001, line: 0.5 },
  necklineGape: { corner: 0.003, seam: 0.001, line: 0.7 },
  edgeGape: { corner: 0.003, seam: 0.001, line: 1 },
  backNeckGape: { corner: 0.001, seam: 0.001, line: 0.3 },
  armholeDepth: { corner: 0.001, seam: 0.42, line: 0.85 },
  shoulderWidth: { corner: 0.001, seam: 0.31, line: 1.45 },
  strapWidth: { corner: 0.001, seam: 0.3, line: 0.65 },
  strapPlace: { corner: 0.001, seam: 0.6, line: 1.35 },
  // The corner of the side seam at the bust line goes along on the plain one, and with it what the bust line gains.
  bustPointLevel: { corner: 1.1, seam: 0.001, line: 1.6 },
  // Cut three tenths down the armhole: by its parameter, or by its length.
  backWidth: { corner: 0.001, seam: 0.4, line: 0.5 },
  chestWidth: { corner: 0.001, seam: 0.13, line: 0.45 },
};
const TOLD: Readonly<Partial<Record<FitName, number>>> = { bustPointLevel: 2.2, backWidth: 7, chestWidth: 1.5 };

/** The princess lines differ from the first style by their fronts alone. */
const isOwnOf = (style: Worn, fit: FitName): boolean =>
  !style.startsWith("princess") || fitOf(fit).madeOn.some((piece) => piece === "centreFront" || piece === "sideFront");

describe("a fit alteration on pieces with bends", () => {
  const cases = STYLES.flatMap((style) =>
    FIT_NAMES.filter((fit) => fitOf(fit).applies(wornAs(style).plain) && isOwnOf(style, fit)).flatMap((fit) =>
      (["most", "least"] as const).flatMap((end) => {
        const amount = Math.round(fitOf(fit).range[end] / 3);
        return amount === 0 ? [] : [[style, fit, amount] as const];
      }),
    ),
  );

  it.each(cases)("of the style %s is what it is without: %s by %d mm", (style, fit, amount) => {
    const alteration: Alteration = { kind: "fit", id: "a", fit, amount };
    expect(both(style, alteration).map(({ ok }) => ok)).toEqual([true, true]);
    expect(unlike(style, alteration, LIMITS[fit] ?? NEARLY, TOLD[fit])).toEqual([]);
  });
});

type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;
type OnDart = Without<Exclude<Alteration, { kind: "fit" }>, "id" | "dart">;

describe("a dart on pieces with bends", () => {
  const pivots = (["side", "french", "waist", "shoulder", "armhole", "neck", "centre"] satisfies DartHome[]).flatMap(
    (to) => [0.6, 1].map((share): OnDart => ({ kind: "dartPivot", to, share })),
  );
  const asked: readonly OnDart[] = [
    ...pivots,
    { kind: "dartSplit", into: 2 },
    { kind: "dartSplit", into: 3 },
    { kind: "dartGather" },
    { kind: "dartLegs", bow: 1 },
    { kind: "dartEnd", shorten: 10, across: 4, hold: "fullness", giveBack: {} },
    { kind: "dartEnd", shorten: -6, across: -3, hold: "mouth", giveBack: {} },
    ...(["centreSeam", "sideSeam", "otherDart", "underarm", "waistEnd"] as const).map((place): OnDart => ({
      kind: "dartMouth",
      inner: 3,
      outer: 2,
      giveBack: { [place]: 1 },
    })),
    { kind: "dartPlace", by: 6, how: "redraw", giveBack: {} },
    { kind: "dartPlace", by: 6, how: "offCentreSeam", giveBack: {} },
  ];
  const darts: readonly (readonly [Worn, PieceName, DartName])[] = [
    ["sideDart", "front", "waistDart"],
    ["sideDart", "front", "sideDart"],
    ["sideDart", "back", "waistDart"],
    ["sideDart", "frontBasque", "waistDart"],
    ["midriff", "back", "underBustDart"],
  ];
  const onDart = (piece: PieceName, dart: DartName, one: OnDart): Alteration => ({
    ...one,
    id: "a",
    dart: { piece, dart },
  });

  it.each(darts)("of the style %s is what it is without: %s, %s", (style, piece, dart) => {
    const limits = { corner: 0.1, seam: 0.14, line: 0.95 };
    const off = asked.flatMap((one) => unlike(style, onDart(piece, dart, one), limits, 0.18));
    expect(off).toEqual([]);
  });
});
