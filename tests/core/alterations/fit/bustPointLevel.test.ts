/** A bust point lowered and raised on a front whose dart lies aslant in its side: where mouth, end and seam come to lie. */
import { describe, expect, it } from "vitest";
import { bustPointLevel } from "../../../../src/core/alterations/fit/bustPointLevel";
import { piecePoint } from "../../../../src/core/geometry/point";
import { pieceIn, setOf } from "../../../../src/core/pattern/pieceSet";
import { pointOf, type Dart, type Piece, type PointName } from "../../../../src/core/pattern/piece";
import { invariant } from "../../../../src/core/result";
import { withBends } from "../../../support/bentPieces";
import { cornerPiece, dartFor, type CornerOf } from "../../../support/cornerPiece";
import { garment } from "../../../support/garments";
import { seamByBezierJs } from "../../../support/independent";

const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["underarm", 200, 100, "side"],
  ["sideBust", 200, 150, "side"],
  ["sideDartInner", 200, 190, "side", "sideDart"],
  ["sideDartOuter", 200, 210, "side"],
  ["sideWaist", 200, 330, "waist"],
  ["waistDartOuter", 110, 330, "waist", "waistDart"],
  ["waistDartInner", 90, 330, "waist"],
  ["centreWaist", 0, 330, "centre"],
  ["centreBust", 0, 150, "centre"],
];
const DARTS = [dartFor("sideDart", "side", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")];
const front = (
  curves: Parameters<typeof cornerPiece>[0]["curves"] = {},
  darts: readonly Dart[] = DARTS,
  corners: readonly CornerOf[] = CORNERS,
): Piece =>
  cornerPiece({
    corners,
    curves,
    inside: { bustPoint: [100, 150], sideDartApex: [130, 170], waistDartApex: [100, 180] },
    darts,
  });
const lowered = (piece: Piece, amount: number): Piece => {
  const done = bustPointLevel.apply(setOf([piece]), amount, { bustPoint: piecePoint(100, 150) });
  if (!done.ok) throw new Error(JSON.stringify(done.failure));
  return pieceIn(done.value.pieces, "front");
};
/** From the end at (130, 170) to the middle of the mouth at (200, 200): square to it, 3 inward for 7 down. */
const INWARD = 3 / 7;
const edgeFrom = (piece: Piece, from: PointName) =>
  invariant(piece.edges.find((edge) => edge.from === from)?.curve, from);
const apart = (piece: Piece, name: PointName, p: { readonly x: number; readonly y: number }): number =>
  Math.hypot(pointOf(piece, name).x - p.x, pointOf(piece, name).y - p.y);

describe("a side dart that goes with the bust point", () => {
  it.each([7, -7])("by %d mm slides square to its middle line, its end straight down", (by) => {
    const piece = lowered(front(), by);
    expect(pointOf(piece, "sideDartApex")).toEqual(piecePoint(130, 170 + by));
    expect(pointOf(piece, "waistDartApex")).toEqual(piecePoint(100, 180 + by));
    expect(pointOf(piece, "bustPoint")).toEqual(piecePoint(100, 150 + by));
    const [inner, outer] = [pointOf(piece, "sideDartInner"), pointOf(piece, "sideDartOuter")];
    // Legs made alike shift the middle of the mouth by some tenths.
    expect(Math.abs((inner.x + outer.x) / 2 - (200 - INWARD * by))).toBeLessThan(0.8);
    expect(Math.abs((inner.y + outer.y) / 2 - (200 + by))).toBeLessThan(0.8);
    expect(apart(piece, "sideDartApex", inner)).toBeCloseTo(apart(piece, "sideDartApex", outer), 3);
    for (const seam of ["side", "waist"] as const)
      expect(seamByBezierJs(piece, seam)).toBeCloseTo(seamByBezierJs(front(), seam), 4);
  });

  it.each([7, -7])("by %d mm has the seam above bent by 3f² − 2f³ of the way off at a share f of its length", (by) => {
    const piece = lowered(front(), by);
    // 50 of 90 mm from the underarm.
    const f = 50 / 90;
    const corner = pointOf(piece, "sideBust");
    expect(corner.x).toBeCloseTo(200 - INWARD * by * (3 * f * f - 2 * f ** 3), 9);
    expect(corner.y).toBeCloseTo(150, 9);
    // Smooth there, by the slope of that line: its derivative.
    const slope = (-INWARD * by * (6 * f - 6 * f * f)) / 90;
    const [above, below] = [edgeFrom(piece, "underarm").c2, edgeFrom(piece, "sideBust").c1];
    expect((above.x - corner.x) / (above.y - corner.y)).toBeCloseTo(slope, 9);
    expect((below.x - corner.x) / (below.y - corner.y)).toBeCloseTo(slope, 9);
    expect([above.y < corner.y, below.y > corner.y]).toEqual([true, true]);
    // Handles of a third; at the underarm as a line's.
    expect(apart(piece, "sideBust", above)).toBeCloseTo(50 / 3, 9);
    expect(Math.abs(apart(piece, "sideBust", below) - (40 + by) / 3)).toBeLessThan(0.3);
    const c1 = edgeFrom(piece, "underarm").c1;
    expect([c1.x, c1.y]).toEqual([expect.closeTo(200, 9), expect.closeTo(100 + 50 / 3, 9)]);
  });

  it("has the controls beside it as much nearer its ends as the seam is shorter", () => {
    const curves = {
      sideDartOuter: [
        [208, 250],
        [206, 290],
      ],
    } as const;
    const piece = lowered(front(curves), 7);
    // The lower mouth end from (200, 210) to (197, 217); the waist's end stays.
    const scale = Math.hypot(3, 113) / 120;
    const { c1, c2 } = edgeFrom(piece, "sideDartOuter");
    expect([c2.x - 200, c2.y - 330]).toEqual([expect.closeTo(6 * scale, 9), expect.closeTo(-40 * scale, 9)]);
    expect(apart(piece, "sideDartOuter", c1)).toBeCloseTo(Math.hypot(8, 40) * scale, 9);
  });

  it("in a side with bends goes with all of its stretch, smooth at the corner above it", () => {
    const curved = front({
      sideBust: [
        [203, 163],
        [203, 177],
      ],
    });
    const bent = withBends(curved, 0.5);
    const piece = lowered(bent, 7);
    expect(pointOf(piece, "sideBust")).toEqual(piecePoint(200, 150));
    const [is, was] = [edgeFrom(piece, "sideBust").c1, edgeFrom(bent, "sideBust").c1];
    expect(Math.atan2(is.y - 150, is.x - 200)).toBeCloseTo(Math.atan2(was.y - 150, was.x - 200), 3);
    expect(seamByBezierJs(piece, "side")).toBeCloseTo(seamByBezierJs(bent, "side"), 4);
  });

  it("right below the underarm, or below another dart, has nothing above it to bend", () => {
    const short = CORNERS.filter(([name]) => name !== "sideBust");
    const piece = lowered(front({}, DARTS, short), 7);
    expect(pointOf(piece, "underarm")).toEqual(piecePoint(200, 100));
    expect(seamByBezierJs(piece, "side")).toBeCloseTo(210, 4);
  });

  it("is one that aims at the bust: another stays where it is", () => {
    const darts = DARTS.map((dart) => (dart.name === "sideDart" ? { ...dart, aimsAt: null } : dart));
    const piece = lowered(front({}, darts), 7);
    for (const name of ["sideDartApex", "sideDartInner", "sideDartOuter", "sideBust"] as const)
      expect(pointOf(piece, name)).toEqual(pointOf(front(), name));
    expect(pointOf(piece, "waistDartApex")).toEqual(piecePoint(100, 187));
    // Nor does it limit how far: 22 mm stay beside the mouth of one that goes.
    const up = (of: Piece) => bustPointLevel.apply(setOf([of]), -25, { bustPoint: piecePoint(100, 150) });
    expect(up(front({}, darts)).ok).toBe(true);
    expect(up(front())).toEqual({ ok: false, failure: { code: "alteration/too-much", most: expect.closeTo(-18, 9) } });
  });
});

describe("a princess seam that goes with the bust point", () => {
  const { centreFront, sideFront, back } = garment({ style: "princessShoulder" });
  if (centreFront === undefined || sideFront === undefined || back === undefined) throw new Error("pieces");
  const pieces = setOf([centreFront, sideFront, back]);
  const context = { bustPoint: pointOf(centreFront, "bustPoint") };

  it("needs both its pieces", () => {
    expect(bustPointLevel.applies(pieces)).toBe(true);
    expect(bustPointLevel.applies(setOf([centreFront, back]))).toBe(false);
    expect(bustPointLevel.applies(setOf([sideFront, back]))).toBe(false);
    const { princessBust: _bust, ...points } = centreFront.points;
    expect(bustPointLevel.applies(setOf([{ ...centreFront, points }, sideFront]))).toBe(false);
  });

  it.each([12, -12])("has its bend lower by %d mm on both, and what the girth gains is told", (amount) => {
    const done = bustPointLevel.apply(pieces, amount, context);
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const [centre, side] = [pieceIn(done.value.pieces, "centreFront"), pieceIn(done.value.pieces, "sideFront")];
    expect(pointOf(side, "princessBust").y).toBeCloseTo(pointOf(sideFront, "princessBust").y + amount, 9);
    const walked = pointOf(centre, "centreWaist").y - pointOf(centreFront, "centreWaist").y;
    expect(done.value.values.walked).toBeCloseTo(Math.abs(walked), 9);
    for (const name of ["princessBust", "centreBust", "bustPoint"] as const)
      expect(Math.abs(pointOf(centre, name).y - pointOf(centreFront, name).y - amount)).toBeLessThan(
        Math.abs(walked) + 2,
      );
    expect(pointOf(centre, "centreBust").y).toBeCloseTo(pointOf(centre, "princessBust").y, 6);
    const along = (piece: Piece, a: PointName, b: PointName) => apart(piece, a, pointOf(piece, b));
    const gained =
      along(centre, "centreBust", "princessBust") -
      along(centreFront, "centreBust", "princessBust") +
      along(side, "princessBust", "sideBust") -
      along(sideFront, "princessBust", "sideBust");
    expect(done.value.girths).toEqual({ bust: expect.closeTo(2 * gained, 6) });
    expect(done.value.values.girth).toBeCloseTo(Math.abs(2 * gained), 6);
    expect(done.value.pieces.back).toBe(back);
  });

  it("has a curved centre line drawn on, its controls as near its ends as it is long", () => {
    const neck = pointOf(centreFront, "centreNeck");
    const curved: Piece = {
      ...centreFront,
      edges: centreFront.edges.map((edge) =>
        edge.from === "centreBust"
          ? { ...edge, curve: { c1: piecePoint(4, neck.y + 120), c2: piecePoint(neck.x + 6, neck.y + 30) } }
          : edge,
      ),
    };
    const done = bustPointLevel.apply(setOf([curved, sideFront, back]), 12, context);
    if (!done.ok) throw new Error(JSON.stringify(done.failure));
    const c2 = edgeFrom(pieceIn(done.value.pieces, "centreFront"), "centreBust").c2;
    const long = apart(curved, "centreBust", neck);
    const scale = (long + 12) / long;
    expect([c2.x - neck.x, c2.y - neck.y]).toEqual([expect.closeTo(6 * scale, 2), expect.closeTo(30 * scale, 2)]);
  });
});
