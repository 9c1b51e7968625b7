/**
 * A line drawn with a bend in it is the same line: what is altered on pieces with bends comes out as on those without. A cubic cut
 * in two is not quite a cubic any more once its ends move, so the lines may lie some tenths of a millimetre beside each other.
 */
import { describe, expect, it } from "vitest";
import { FIT_NAMES, type FitName } from "../../../../src/core/decisions/fitNames";
import { fitOf } from "../../../../src/core/alterations/fit/index";
import { unlikeWithBends, withAndWithout, type BentLimits } from "../../../support/bentPieces";
import { bustPointOf, STYLE_NAMES } from "../../../support/garments";

const garments = STYLE_NAMES.map((style) => [style, withAndWithout(style)] as const);

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
const isOwnOf = (style: string, fit: FitName): boolean =>
  !style.startsWith("princess") || fitOf(fit).madeOn.some((piece) => piece === "centreFront" || piece === "sideFront");

describe("a fit alteration on pieces with bends", () => {
  const cases = garments.flatMap(([style, both]) =>
    FIT_NAMES.filter((fit) => fitOf(fit).applies(both.plain) && isOwnOf(style, fit)).flatMap((fit) =>
      (["most", "least"] as const).flatMap((end) => {
        const amount = Math.round(fitOf(fit).range[end] / 3);
        return amount === 0 ? [] : [[style, fit, amount, both] as const];
      }),
    ),
  );

  it.each(cases)("of the style %s is what it is without: %s by %d mm", (_style, fit, amount, both) => {
    const context = { bustPoint: bustPointOf(both.plain) };
    expect([both.plain, both.bent].map((pieces) => fitOf(fit).apply(pieces, amount, context).ok)).toEqual([true, true]);
    const off = unlikeWithBends(both, { kind: "fit", id: "a", fit, amount }, LIMITS[fit] ?? NEARLY, TOLD[fit]);
    expect(off).toEqual([]);
  });
});
