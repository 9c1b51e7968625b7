/** What must hold of the fit alterations that close a gape, shape the shoulder or move the side seam, on any garment. */
import type { StyleName } from "../../../../src/core/decisions/pattern";
import type { AlterationFailure } from "../../../../src/core/alterations/outcome/alterationFailure";
import type { FitName } from "../../../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../../src/core/alterations/applyAlteration";
import { fitOf } from "../../../../src/core/alterations/fit/index";
import { piecesOf, type PieceSet } from "../../../../src/core/pattern/pieceSet";
import { pointNames } from "../../../../src/core/pattern/piece";
import { invariant, type Result } from "../../../../src/core/result";
import type { Applied } from "../../../../src/core/alterations/outcome/applied";
import { anyAmount } from "../../../support/amounts";
import {
  anyGarmentOf,
  bustPointOf,
  changedPieces,
  expectStillSewn,
  garment,
  STYLE_NAMES,
} from "../../../support/garments";
import { crossesItself, seamByBezierJs } from "../../../support/independent";
import { arePointsClose } from "../../../support/matchers";

const princess = ["princessArmhole", "princessShoulder"] as const;
const withShoulders = ["sideDart", ...princess] as const;

/** Which styles have what each is made on: by the pieces that the brief of each style names. */
const STYLES: Readonly<Partial<Record<FitName, readonly StyleName[]>>> = {
  necklineGape: withShoulders,
  edgeGape: ["midriff"],
  armholeGape: STYLE_NAMES,
  backNeckGape: withShoulders,
  shoulderSlope: withShoulders,
  forwardShoulder: withShoulders,
  shoulderWidth: withShoulders,
  armholeDepth: STYLE_NAMES,
  sideSeamBust: STYLE_NAMES,
  sideSeamUnderBust: ["midriff"],
  sideSeamWaist: STYLE_NAMES,
  sideSeamHip: STYLE_NAMES,
};

const NAMES = Object.keys(STYLES) as readonly FitName[];
const stylesOf = (fit: FitName): readonly StyleName[] => invariant(STYLES[fit], fit);

const altered = (pieces: PieceSet, fit: FitName, amount: number): Result<Applied, AlterationFailure> =>
  applyAlteration(pieces, { kind: "fit", id: "a", fit, amount }, { bustPoint: bustPointOf(pieces) });

const mostOf = (failure: AlterationFailure): number => ("most" in failure ? failure.most : Number.NaN);

/** Seams of a piece, by an independent library, beside those of another state of it. */
const SEAMS = [
  "centre",
  "neck",
  "shoulder",
  "armhole",
  "side",
  "waist",
  "hem",
  "princess",
  "underBust",
  "strap",
] as const;
const worstSeam = (before: PieceSet, after: PieceSet): number =>
  Math.max(
    ...piecesOf(after).flatMap((piece) =>
      SEAMS.map((seam) =>
        Math.abs(seamByBezierJs(piece, seam) - seamByBezierJs(invariant(before[piece.name], piece.name), seam)),
      ),
    ),
  );

describe.each(NAMES)("%s", (fit) => {
  const { range } = fitOf(fit);

  it("is offered on the styles that have what it is made on", () => {
    const applies = STYLE_NAMES.filter((style) => fitOf(fit).applies(garment({ style })));
    expect(applies).toEqual(STYLE_NAMES.filter((style) => stylesOf(fit).includes(style)));
  });

  it("leaves a garment that can be sewn, or is refused with the nearest amount that works", () => {
    fc.assert(
      fc.property(anyGarmentOf(...stylesOf(fit)), anyAmount(range.least, range.most), (body, amount) => {
        const pieces = garment(body);
        const done = altered(pieces, fit, amount);
        const nearest = done.ok ? amount : mostOf(done.failure);
        expect(Math.abs(nearest)).toBeLessThanOrEqual(Math.abs(amount));
        const after = done.ok ? done : altered(pieces, fit, nearest);
        expect(after.ok).toBe(true);
        const set = after.ok ? after.value.pieces : pieces;
        expectStillSewn(pieces, set);
        expect(changedPieces(pieces, set).filter((name) => crossesItself(invariant(set[name], name)))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it("changes nothing at 0, and next to nothing at next to nothing", () => {
    for (const style of stylesOf(fit)) {
      const pieces = garment({ style });
      const nothing = altered(pieces, fit, 0);
      expect(nothing.ok && nothing.value.pieces).toBe(pieces);
      const little = altered(pieces, fit, 0.01);
      const set = invariant(little.ok ? little.value.pieces : null, "pieces");
      expect(worstSeam(pieces, set)).toBeLessThan(0.02);
      const far = piecesOf(set).flatMap((piece) =>
        pointNames(piece).filter(
          (name) => !arePointsClose(piece.points[name]?.at, pieces[piece.name]?.points[name]?.at, 0.1),
        ),
      );
      expect(far).toEqual([]);
    }
  });
});

function ofAmount(pieces: PieceSet, fit: FitName, amount: number): Applied | null {
  const done = altered(pieces, fit, amount);
  return done.ok ? done.value : null;
}

/** Alterations that are undone by the same amount the other way round. Gapes only ever close. */
const BOTH_WAYS: readonly FitName[] = [
  "shoulderWidth",
  "armholeDepth",
  "sideSeamUnderBust",
  "sideSeamWaist",
  "sideSeamHip",
  "forwardShoulder",
  "shoulderSlope",
  "sideSeamBust",
];

describe.each(BOTH_WAYS)("%s and back again", (fit) => {
  it("returns every corner to where it was within 0.1 mm", () => {
    fc.assert(
      fc.property(anyGarmentOf(...stylesOf(fit)), anyAmount(-12, 12), (body, amount) => {
        const pieces = garment(body);
        const there = invariant(ofAmount(pieces, fit, amount), "there").pieces;
        const back = invariant(ofAmount(there, fit, -amount), "back").pieces;
        const off = piecesOf(back).flatMap((piece) =>
          piece.edges.flatMap(({ from }) => {
            const was = pieces[piece.name]?.points[from]?.at;
            return arePointsClose(piece.points[from]?.at, was, 0.1) ? [] : [`${piece.name}.${from}`];
          }),
        );
        expect(off).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });
});
