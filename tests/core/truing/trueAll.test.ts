/** The last truing: planted faults are put right, what is near enough is left alone, and twice does no more than once. */
import { FIT_NAMES } from "../../../src/core/decisions/fitNames";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fitOf } from "../../../src/core/alterations/fit/index";
import { pieceIn, piecesOf, withPiece, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { validateOutline } from "../../../src/core/geometry/outline";
import { piecePoint } from "../../../src/core/geometry/point";
import {
  pointOf,
  type DartName,
  type Edge,
  type Piece,
  type PieceName,
  type PointName,
} from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { outlineOf } from "../../../src/core/pattern/ring";
import { trueAll } from "../../../src/core/truing/trueAll";
import { walkSeams } from "../../../src/core/truing/walkSeams";
import { anyAmount } from "../../support/amounts";
import {
  anyGarmentOf,
  badCorners,
  bustPointOf,
  cornerAt,
  garment,
  missesOf,
  STYLE_NAMES,
} from "../../support/garments";
import { crossesItself, seamByBezierJs } from "../../support/independent";

/** Half a tenth of a millimetre: how near two seams or legs count as equal. */
const WALKED = 0.05;

const apart = (a: { readonly x: number; readonly y: number }, b: { readonly x: number; readonly y: number }): number =>
  Math.hypot(b.x - a.x, b.y - a.y);

/** A corner pulled aside, its controls with it. */
function pulled(pieces: PieceSet, name: PieceName, corner: PointName, dx: number, dy: number): PieceSet {
  const piece = pieceIn(pieces, name);
  const at = pointOf(piece, corner);
  return withPiece(pieces, moveMouthEnd(piece, corner, piecePoint(at.x + dx, at.y + dy)));
}

/** One end of an edge turned about its corner, by degrees. */
function bent(piece: Piece, from: PointName, end: "start" | "end", by: number): Piece {
  const angle = (by * Math.PI) / 180;
  return {
    ...piece,
    edges: piece.edges.map((edge): Edge => {
      if (edge.from !== from || edge.curve === null) return edge;
      const { c1, c2 } = edge.curve;
      const centre = pointOf(piece, end === "start" ? edge.from : edge.to);
      const control = end === "start" ? c1 : c2;
      const [dx, dy] = [control.x - centre.x, control.y - centre.y];
      const turned = piecePoint(
        centre.x + dx * Math.cos(angle) - dy * Math.sin(angle),
        centre.y + dx * Math.sin(angle) + dy * Math.cos(angle),
      );
      return { ...edge, curve: end === "start" ? { c1: turned, c2 } : { c1, c2: turned } };
    }),
  };
}

const legs = (piece: Piece, dart: DartName): readonly [number, number] => [
  apart(pointOf(piece, `${dart}Apex`), pointOf(piece, `${dart}Inner`)),
  apart(pointOf(piece, `${dart}Apex`), pointOf(piece, `${dart}Outer`)),
];

/** Pieces that walk to the last digit: what the draft leaves open by hundredths is closed first. */
const trued = (pieces: PieceSet): PieceSet => trueAll(pieces).pieces;

function expectTrue(pieces: PieceSet): void {
  expect(missesOf(pieces).filter((miss) => !(Math.abs(miss) <= WALKED + 1e-3))).toEqual([]);
  expect(badCorners(pieces)).toEqual([]);
  for (const piece of piecesOf(pieces)) {
    for (const { name } of piece.darts)
      expect(Math.abs(legs(piece, name)[0] - legs(piece, name)[1])).toBeLessThanOrEqual(WALKED);
    expect(validateOutline(outlineOf(piece))).toEqual([]);
  }
}

describe("truing all", () => {
  it("leaves what is true alone: the very same objects, and nothing told", () => {
    fc.assert(
      fc.property(anyGarmentOf(...STYLE_NAMES), (body) => {
        const pieces = trued(garment(body));
        expect(trueAll(pieces).pieces).toBe(pieces);
        expect(trueAll(pieces).changes).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  it("leaves a seam alone that misses by less than half a tenth of a millimetre, and walks one that misses by more", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const near = pulled(pieces, "back", "shoulderTip", 0.03, 0);
    expect(trueAll(near).pieces).toBe(near);
    const off = trueAll(pulled(pieces, "back", "shoulderTip", 0.5, 0));
    expect(off.changes.map(({ piece, seam, what, point }) => ({ piece, seam, what, point }))).toEqual([
      { piece: "back", seam: "shoulder", what: "seamWalked", point: "shoulderTip" },
      { piece: "front", seam: "shoulder", what: "seamWalked", point: "shoulderTip" },
    ]);
  });

  it("shares what the shoulders miss by between both tips", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const before = seamByBezierJs(pieceIn(pieces, "front"), "shoulder");
    const back = pieceIn(pieces, "back");
    const [neck, tip] = [pointOf(back, "sideNeck"), pointOf(back, "shoulderTip")];
    // Pulled straight on along the shoulder by 3 mm.
    const along = 3 / apart(neck, tip);
    const { pieces: set, changes } = trueAll(
      pulled(pieces, "back", "shoulderTip", (tip.x - neck.x) * along, (tip.y - neck.y) * along),
    );
    expect(seamByBezierJs(pieceIn(set, "front"), "shoulder") - before).toBeCloseTo(1.5, 1);
    expect(changes.filter(({ what }) => what === "seamWalked").map(({ amount }) => amount.toFixed(1))).toEqual([
      "1.5",
      "1.5",
    ]);
  });

  it("brings a basque to its bodice at the waist, which is the garment's girth, and leaves the bodice alone", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const off = pulled(pieces, "frontBasque", "sideWaist", 0.5, 0);
    const { pieces: set, changes } = trueAll(off);
    expect(set.front).toBe(off.front);
    expectTrue(set);
    expect(changes.find(({ seam }) => seam === "waist")).toMatchObject({ piece: "frontBasque", what: "seamWalked" });
  });

  it("moves nothing for a seam whose length is no number: no corner can bring it to the other's", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const off = pulled(pieces, "frontBasque", "sideHem", 0, NaN);
    expect(trueAll(off, [walkSeams]).pieces).toBe(off);
  });

  it("squares the neck at the centre: by what it was bent, keeping its length", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const front = pieceIn(pieces, "front");
    const length = seamByBezierJs(front, "neck");
    const off = withPiece(pieces, bent(front, "centreNeck", "start", -6));
    const bentLength = seamByBezierJs(pieceIn(off, "front"), "neck");
    const { pieces: set, changes } = trueAll(off);
    expect(changes).toMatchObject([{ piece: "front", seam: "neck", what: "cornerSquared", point: "centreNeck" }]);
    expect(invariant(changes[0], "change").amount).toBeCloseTo(6, 6);
    expect(cornerAt(pieceIn(set, "front"), "centreNeck")).toBeCloseTo(90, 6);
    expect(seamByBezierJs(pieceIn(set, "front"), "neck")).toBeCloseTo(bentLength, 2);
    expect(Math.abs(bentLength - length)).toBeGreaterThan(0.01);
  });

  it("straightens the armhole across the shoulder: half of the corner on each piece", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const off = withPiece(pieces, bent(pieceIn(pieces, "front"), "shoulderTip", "start", 8));
    const missed = cornerAt(pieceIn(off, "front"), "shoulderTip") + cornerAt(pieceIn(off, "back"), "shoulderTip") - 180;
    expect(Math.abs(missed)).toBeGreaterThan(3);
    const { pieces: set, changes } = trueAll(off);
    expect(cornerAt(pieceIn(set, "front"), "shoulderTip") + cornerAt(pieceIn(set, "back"), "shoulderTip")).toBeCloseTo(
      180,
      6,
    );
    expect(changes.map(({ piece, point, what }) => [piece, point, what])).toEqual([
      ["front", "shoulderTip", "cornerSquared"],
      ["back", "shoulderTip", "cornerSquared"],
    ]);
    for (const { amount } of changes) expect(amount).toBeCloseTo(Math.abs(missed) / 2, 6);
  });

  it("smooths a corner within a seam, each of its edges as long as it was", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const off = withPiece(pieces, bent(pieceIn(pieces, "back"), "armholeTouch", "start", 9));
    const { pieces: set, changes } = trueAll(off);
    expect(changes).toMatchObject([{ piece: "back", seam: "armhole", what: "seamSmoothed", point: "armholeTouch" }]);
    expect(cornerAt(pieceIn(set, "back"), "armholeTouch")).toBeCloseTo(180, 6);
    expect(seamByBezierJs(pieceIn(set, "back"), "armhole")).toBeCloseTo(
      seamByBezierJs(pieceIn(off, "back"), "armhole"),
      1,
    );
  });

  it("makes the legs of a dart equal: each by half of what they differed, the seam as long as it was", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const front = pieceIn(pieces, "front");
    const [inner, apex] = [pointOf(front, "sideDartInner"), pointOf(front, "sideDartApex")];
    const along = 2 / apart(apex, inner);
    const off = pulled(pieces, "front", "sideDartInner", (inner.x - apex.x) * along, (inner.y - apex.y) * along);
    const { pieces: set, changes } = trueAll(off);
    const [a, b] = legs(pieceIn(set, "front"), "sideDart");
    expect(Math.abs(a - b)).toBeLessThan(WALKED);
    const change = invariant(
      changes.find(({ what }) => what === "legsEqualled"),
      "legs",
    );
    expect(change).toMatchObject({ piece: "front", seam: "side", point: "sideDartApex" });
    expect(change.amount).toBeCloseTo(1, 1);
    expectTrue(set);
  });

  it("leaves a gathered mouth as it lies", () => {
    const pieces = trued(garment({ style: "sideDart" }));
    const front = pieceIn(pieces, "front");
    const gathered = {
      ...front,
      darts: front.darts.map((dart) => (dart.name === "waistDart" ? { ...dart, gathered: true as const } : dart)),
    };
    const apex = pointOf(front, "waistDartApex");
    const aside: Piece = {
      ...gathered,
      points: { ...gathered.points, waistDartApex: { at: piecePoint(apex.x + 9, apex.y), level: "bust" } },
    };
    const off = withPiece(pieces, aside);
    expect(trueAll(off).pieces).toBe(off);
  });
});

describe("truing any garment with a corner pulled aside", () => {
  const CORNERS: readonly PointName[] = [
    "underarm",
    "sideWaist",
    "shoulderTip",
    "sideHem",
    "sideUnderBust",
    "princessWaist",
    "centreWaist",
  ];

  it("makes it true, and does nothing more a second time", () => {
    fc.assert(
      fc.property(
        anyGarmentOf(...STYLE_NAMES),
        fc.nat(),
        fc.nat(),
        anyAmount(-3, 3),
        anyAmount(-3, 3),
        (body, which, corner, dx, dy) => {
          const pieces = garment(body);
          const all = piecesOf(pieces).flatMap((piece) =>
            CORNERS.flatMap((point) =>
              piece.edges.some(({ from }) => from === point) ? [{ name: piece.name, point }] : [],
            ),
          );
          const { name, point } = invariant(all[(which + corner) % all.length], "corner");
          const once = trueAll(pulled(pieces, name, point, point === "centreWaist" ? 0 : dx, dy));
          expectTrue(once.pieces);
          expect(piecesOf(once.pieces).filter(crossesItself)).toEqual([]);
          expect(trueAll(once.pieces).pieces).toBe(once.pieces);
          expect(once.changes.filter(({ amount }) => amount < 0.1)).toEqual([]);
        },
      ),
      { numRuns: 80 },
    );
  });
});

describe("truing after a fit alteration", () => {
  it("finds next to nothing to do: alterations leave garments that can be sewn", () => {
    fc.assert(
      fc.property(
        anyGarmentOf(...STYLE_NAMES),
        fc.constantFrom(...FIT_NAMES),
        anyAmount(-10, 10),
        (body, fit, amount) => {
          const pieces = trued(garment(body));
          const definition = fitOf(fit);
          fc.pre(
            definition.applies(pieces) &&
              amount >= definition.range.least &&
              amount <= definition.range.most &&
              amount !== 0,
          );
          const done = definition.apply(pieces, amount, { bustPoint: bustPointOf(pieces) });
          fc.pre(done.ok);
          const set = invariant(done.ok ? done.value.pieces : null, "pieces");
          expect(trueAll(set).changes).toEqual([]);
        },
      ),
      { numRuns: 80 },
    );
  });
});
