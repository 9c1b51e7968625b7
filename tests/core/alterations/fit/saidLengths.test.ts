/** The lengths that are said of a fit alteration are those that its cuts were made by; and it is made where it says. */
import { phaseOfFit } from "../../../../src/core/decisions/tradeOrder";
import { FIT_NAMES, type FitName } from "../../../../src/core/decisions/fitNames";
import { Point } from "@flatten-js/core";
import { describe, expect, it, test } from "vitest";
import { applyAlteration } from "../../../../src/core/alterations/applyAlteration";
import type { Applied } from "../../../../src/core/alterations/outcome/applied";
import { fitOf } from "../../../../src/core/alterations/fit/index";
import type { PieceSet } from "../../../../src/core/pattern/pieceSet";
import { pointOf, type PieceName } from "../../../../src/core/pattern/piece";
import { invariant } from "../../../../src/core/result";
import { bustPointOf, changedPieces, garment, STYLE_NAMES } from "../../../support/garments";
import { clothCorners, lengthOnCloth, polygonOf } from "../../../support/independent";

function made(fit: FitName, pieces: PieceSet, amount: number): Applied {
  const done = applyAlteration(pieces, { kind: "fit", id: "a", fit, amount }, { bustPoint: bustPointOf(pieces) });
  return invariant(done.ok ? done.value : null, fit);
}

const valueOf = ({ trace }: Applied, name: string): number => invariant(trace.values[name], name);

/** Ends of the cut on a piece. */
function cutOn({ trace }: Applied, name: PieceName) {
  const cut = invariant(trace.surgery.find(({ piece }) => piece === name)?.cuts[0], `cut on ${name}`);
  return [invariant(cut[0], "begin"), invariant(cut.at(-1), "end")] as const;
}

const apart = (a: { x: number; y: number }, b: { x: number; y: number }): number => Math.hypot(b.x - a.x, b.y - a.y);

describe("a wedge across the waist", () => {
  test.each([
    ["swayBack", "sideDart", "back", "above"],
    ["waistDropBack", "princessArmhole", "back", "above"],
    ["waistDropFront", "princessArmhole", "centreFront", "above"],
    ["waistDropFront", "midriff", "frontBand", "above"],
    ["waistDropFront", "sideDart", "frontBasque", "below"],
    ["waistDropBack", "sideDart", "backBasque", "below"],
  ] as const)("%s on %s: %s is cut as far %s the waist as is said", (fit, style, name, way) => {
    const pieces = garment({ style });
    const done = made(fit, pieces, 8);
    const piece = invariant(pieces[name], name);
    const waist = pointOf(piece, "centreWaist");
    // The centre line is upright: the cut ends on it straight above or below the waist.
    const atCentre = cutOn(done, name).map((end) => apart(end, waist));
    expect(valueOf(done, way)).toBe(20);
    expect(Math.min(...atCentre)).toBeCloseTo(20, 6);
    if (name === "centreFront") return;
    // Over 20 mm a side seam is straight to within some hundredths.
    const atSide = cutOn(done, name).map((end) => apart(end, pointOf(piece, "sideWaist")));
    expect(Math.min(...atSide)).toBeGreaterThan(valueOf(done, `${way}AtSide`) - 0.2);
    expect(Math.min(...atSide)).toBeLessThanOrEqual(valueOf(done, `${way}AtSide`) + 1e-6);
  });

  it("is cut, and told, half-way along a band that is too shallow for that", () => {
    const shallow = [-40, -35].reduce(
      (pieces, amount) => made("bandDepth", pieces, amount).pieces,
      garment({ style: "midriff" }),
    );
    const band = invariant(shallow.frontBand, "band");
    const centre = band.edges.filter(({ seam }) => seam === "centre");
    expect(centre).toHaveLength(1);
    const { from, to } = invariant(centre[0], "centre");
    const depth = apart(pointOf(band, from), pointOf(band, to));
    expect(depth).toBeLessThan(40);
    const done = made("waistDropFront", shallow, 4);
    expect(valueOf(done, "above")).toBeCloseTo(depth / 2, 6);
    const waist = pointOf(band, "centreWaist");
    expect(Math.min(...cutOn(done, "frontBand").map((end) => apart(end, waist)))).toBeCloseTo(depth / 2, 6);
  });
});

test("the part beside the armhole of a side front is cut as far inside it as is said", () => {
  const pieces = garment({ style: "princessArmhole" });
  const done = made("chestWidth", pieces, 8);
  const cut = invariant(done.trace.surgery[0]?.cuts[0], "cut");
  const [first, last] = [invariant(cut[0], "first"), invariant(cut.at(-1), "last")];
  const upper = first.y < last.y ? first : last;
  const lower = upper === first ? last : first;
  const cloth = polygonOf(clothCorners(invariant(pieces.sideFront, "side front")));
  // No further than half across the piece, which tapers up to the seam, and 30 mm at the most.
  const across = [upper, lower].map((end) => lengthOnCloth(cloth, { x: -500, y: end.y }, end));
  const inside = Math.min(30, ...across.map((width) => width / 2));
  expect(valueOf(done, "inside")).toBeCloseTo(inside, 1);
  expect(upper.x - Math.min(...cut.map(({ x }) => x))).toBeCloseTo(valueOf(done, "inside"), 6);
});

test("what walking takes out of the centre front is as much as its centre lost", () => {
  const pieces = garment({ style: "princessArmhole" });
  const done = made("bustPointLevel", pieces, 8);
  const waist = (set: PieceSet): number => invariant(set.centreFront?.points.centreWaist, "waist").at.y;
  expect(valueOf(done, "walked")).toBeGreaterThan(0.5);
  expect(valueOf(done, "walked")).toBeCloseTo(waist(pieces) - waist(done.pieces), 9);
});

test("the top of the princess seam goes up with the shoulder: by the amount at the armhole, by a share of it in the shoulder", () => {
  expect(valueOf(made("shoulderSlope", garment({ style: "princessArmhole" }), 8), "top")).toBeCloseTo(8, 6);
  const shared = valueOf(made("shoulderSlope", garment({ style: "princessShoulder" }), 8), "top");
  expect(shared).toBeGreaterThan(2);
  expect(shared).toBeLessThan(8);
});

describe.each(FIT_NAMES)("%s", (fit) => {
  const styles = STYLE_NAMES.filter((style) => fitOf(fit).applies(garment({ style })));
  const amounts = fitOf(fit).range.least < 0 ? [8, -8] : [8];
  const all = styles.flatMap((style) =>
    amounts.map((amount) => {
      const pieces = garment({ style });
      const done = made(fit, pieces, amount);
      return { changed: changedPieces(pieces, done.pieces), values: done.trace.values };
    }),
  );

  it("changes the pieces that it is made on, each on some style, and no other", () => {
    const changed = new Set(all.flatMap((one) => one.changed));
    expect([...changed].toSorted()).toEqual(fitOf(fit).madeOn.toSorted());
  });

  it("gives every length without a sign", () => {
    expect(all.flatMap(({ values }) => Object.values(values)).filter((value) => !(value >= 0))).toEqual([]);
  });
});

test("whole lengths are offered before wedges", () => {
  expect(FIT_NAMES.filter((fit) => phaseOfFit(fit) === "length")).toEqual([
    "lengthAboveBust",
    "lengthBelowBust",
    "lengthBasque",
    "bandDepth",
    "roundBack",
    "swayBack",
    "waistDropFront",
    "waistDropBack",
  ]);
});

describe("what is cut lies on the piece", () => {
  const cases = FIT_NAMES.flatMap((fit) =>
    STYLE_NAMES.filter((style) => fitOf(fit).applies(garment({ style }))).map((style) => [fit, style] as const),
  );

  /** How far the corners of cuts, and the middles between them, lie off the piece. */
  const offPiece = (pieces: PieceSet, { trace }: Applied): readonly string[] =>
    trace.surgery.flatMap(({ piece: name, cuts }) => {
      const piece = invariant(pieces[name], name);
      // Straight across the mouths of darts.
      const whole = { ...piece, edges: piece.edges.map((edge) => ({ ...edge, mouthOf: null })) };
      const polygon = polygonOf(clothCorners(whole));
      return cuts.flatMap((cut) =>
        cut.flatMap((a, i) => {
          const b = cut[i + 1] ?? a;
          return [new Point(a.x, a.y), new Point((a.x + b.x) / 2, (a.y + b.y) / 2)]
            .filter((place) => !polygon.contains(place) && polygon.distanceTo(place)[0] > 0.5)
            .map(({ x, y }) => `${name} at ${x.toFixed(1)} ${y.toFixed(1)}`);
        }),
      );
    });

  test.each(cases)("%s on %s, small and large", (fit, style) => {
    for (const bust of [760, 880, 1200]) {
      const pieces = garment({ style, bust });
      expect(offPiece(pieces, made(fit, pieces, 6))).toEqual([]);
    }
  });
});
