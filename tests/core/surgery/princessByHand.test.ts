/** A princess seam drawn and walked on a front of straight lines; the same bodies with a shape of their own. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { closeWedgeIntoPrincess } from "../../../src/core/surgery/closeWedge";
import { adjustPrincessBust, takenAtBust } from "../../../src/core/surgery/princessBust";
import {
  cornersOf,
  drawPrincess,
  walkPrincess,
  withoutBridge,
  withPointsAt,
} from "../../../src/core/surgery/princessSeam";
import { ontoSideFront, tiltAtTip, turnShoulder, walkUpperPrincess } from "../../../src/core/surgery/shoulderLine";
import { splitAtBustPoint, type PrincessPieces } from "../../../src/core/surgery/splitAtBustPoint";
import { walkAgain } from "../../../src/core/surgery/walkAgain";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { cornerAt } from "../../support/garments";
import { seamByBezierJs } from "../../support/independent";

const front = cornerPiece({
  corners: [
    ["centreNeck", 0, 0, "neck"],
    ["sideNeck", 60, 0, "shoulder"],
    ["shoulderDartInner", 80, 0, "shoulder", "shoulderDart"],
    ["shoulderDartOuter", 110, 0, "shoulder"],
    ["shoulderTip", 160, 0, "armhole"],
    ["underarm", 200, 100, "side"],
    ["sideBust", 200, 150, "side"],
    ["sideWaist", 200, 300, "waist"],
    ["waistDartOuter", 110, 300, "waist", "waistDart"],
    ["waistDartInner", 85, 300, "waist"],
    ["centreWaist", 0, 300, "centre"],
    ["underBustCentre", 0, 220, "centre"],
    ["centreBust", 0, 150, "centre"],
  ],
  inside: { bustPoint: [95, 150], shoulderDartApex: [95, 150], waistDartApex: [95, 150] },
  darts: [dartFor("shoulderDart", "shoulder", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")],
});
const split = splitAtBustPoint(front, "shoulderDart");
const drawn = drawPrincess(split);

/** The seam's part above and below the bust, by an independent library. */
function partsOf(piece: Piece): { readonly upper: number; readonly lower: number } {
  const part = (end: PointName): number =>
    seamByBezierJs(
      {
        ...piece,
        edges: piece.edges.filter(({ from, to, seam }) => seam === "princess" && (from === end || to === end)),
      },
      "princess",
    );
  return { upper: part("princessTop"), lower: part("princessWaist") };
}
/** Direction and length of the handles at a corner of the seam: before it and after it, going down. */
function handlesAt(piece: Piece, corner: PointName): readonly { readonly angle: number; readonly length: number }[] {
  const at = pointOf(piece, corner);
  return piece.edges
    .filter(({ seam, from, to }) => seam === "princess" && (from === corner || to === corner))
    .map((edge) => {
      const { c1, c2 } = invariant(edge.curve, "curve");
      const control = edge.from === corner ? c1 : c2;
      // All as lines down.
      const sign = control.y >= at.y ? 1 : -1;
      return {
        angle: Math.atan2(sign * (control.y - at.y), sign * (control.x - at.x)),
        length: Math.hypot(control.x - at.x, control.y - at.y),
      };
    });
}
const apart = (piece: Piece, a: PointName, b: PointName): number =>
  Math.hypot(pointOf(piece, a).x - pointOf(piece, b).x, pointOf(piece, a).y - pointOf(piece, b).y);

describe("a princess seam drawn", () => {
  it("walks above and below the bust, the centre front alone lengthened", () => {
    const [centre, side] = [partsOf(drawn.centreFront), partsOf(drawn.sideFront)];
    expect(centre.upper).toBeCloseTo(side.upper, 4);
    expect(centre.lower).toBeCloseTo(side.lower, 4);
    for (const name of ["princessTop", "princessBust", "princessWaist", "sideWaist", "sideBust", "underarm"] as const)
      expect(pointOf(drawn.sideFront, name)).toEqual(pointOf(split.sideFront, name));
    const lower = pointOf(drawn.centreFront, "centreWaist").y - 300;
    expect(pointOf(drawn.centreFront, "princessWaist")).toEqual(piecePoint(85, 300 + lower));
    expect(pointOf(drawn.centreFront, "underBustCentre")).toEqual(piecePoint(0, 220 + lower));
    expect(pointOf(drawn.centreFront, "princessTop")).toEqual(piecePoint(80, 0));
    const above = pointOf(drawn.centreFront, "princessBust").y - 150;
    for (const name of ["bustPoint", "princessBust"] as const)
      expect(pointOf(drawn.centreFront, name)).toEqual(piecePoint(95, 150 + above));
    expect(pointOf(drawn.centreFront, "centreBust")).toEqual(piecePoint(0, 150 + above));
    expect(drawn.centreFront.edges.map(({ from }) => from)).toEqual(split.centreFront.edges.map(({ from }) => from));
    const walked = invariant(walkPrincess(split), "walked");
    expect(walked.drop).toBeCloseTo(lower, 9);
    expect(walked.centreFront.trace.cuts).toEqual([[piecePoint(0, 150), piecePoint(95, 150)]]);
    // Paper let in: as high as the drop, as wide as the bust line.
    expect(walked.centreFront.trace.area).toBeCloseTo(95 * lower, 4);
  });

  it("is smooth over the bust, and meets what it is sewn to as one straight line at both ends", () => {
    for (const piece of [drawn.centreFront, drawn.sideFront]) {
      const [one, other] = handlesAt(piece, "princessBust");
      expect(one?.angle).toBeCloseTo(other?.angle ?? Number.NaN, 9);
    }
    for (const corner of ["princessTop", "princessWaist"] as const)
      expect(cornerAt(drawn.centreFront, corner) + cornerAt(drawn.sideFront, corner)).toBeCloseTo(180, 6);
  });

  it("has handles of 0.35 of each stretch at its ends and 0.3 at the bust (common practice, no source)", () => {
    for (const piece of [drawn.centreFront, drawn.sideFront]) {
      const [upper, lower] = [
        apart(piece, "princessTop", "princessBust"),
        apart(piece, "princessBust", "princessWaist"),
      ];
      expect(handlesAt(piece, "princessTop")[0]?.length).toBeCloseTo(0.35 * upper, 9);
      expect(handlesAt(piece, "princessWaist")[0]?.length).toBeCloseTo(0.35 * lower, 9);
      expect(
        handlesAt(piece, "princessBust")
          .map(({ length }) => length)
          .toSorted((a, b) => a - b),
      ).toEqual([0.3 * upper, 0.3 * lower].toSorted((a, b) => a - b).map((one) => expect.closeTo(one, 9)));
    }
  });

  it("runs as the circle through its corners there; on the side front three fifths of the way from that to plumb", () => {
    const circleAt = ({ top, bust, waist }: ReturnType<typeof cornersOf>): number => {
      // Its centre by the two bisectors; the tangent at the bust is square to the radius.
      const [ax, ay, bx, by] = [top.x - bust.x, top.y - bust.y, waist.x - bust.x, waist.y - bust.y];
      const [a2, b2, d] = [ax * ax + ay * ay, bx * bx + by * by, 2 * (ax * by - ay * bx)];
      const [ux, uy] = [(by * a2 - ay * b2) / d, (ax * b2 - bx * a2) / d];
      const angle = Math.atan2(-ux, uy);
      return angle > 0 ? angle : angle + Math.PI;
    };
    const centre = handlesAt(drawn.centreFront, "princessBust")[0]?.angle ?? 0;
    expect(Math.abs(centre - circleAt(cornersOf(drawn.centreFront)))).toBeLessThan(0.003);
    const side = handlesAt(drawn.sideFront, "princessBust")[0]?.angle ?? 0;
    const round = circleAt(cornersOf(drawn.sideFront));
    expect(Math.abs(side - (round + 0.6 * (Math.PI / 2 - round)))).toBeLessThan(0.003);
  });

  it("drawn again is as it was, and its turns at the ends are shared 35 to 65", () => {
    const again = drawPrincess(drawn);
    for (const name of ["centreFront", "sideFront"] as const)
      for (const corner of ["princessTop", "princessBust", "princessWaist"] as const) {
        expect(pointOf(again[name], corner).x).toBeCloseTo(pointOf(drawn[name], corner).x, 4);
        expect(pointOf(again[name], corner).y).toBeCloseTo(pointOf(drawn[name], corner).y, 4);
      }
    const off = (piece: Piece, a: PointName, b: PointName, corner: PointName): number => {
      const [from, to] = [pointOf(piece, a), pointOf(piece, b)];
      return Math.abs((handlesAt(piece, corner)[0]?.angle ?? 0) - Math.atan2(to.y - from.y, to.x - from.x));
    };
    for (const [a, b, corner] of [
      ["princessTop", "princessBust", "princessTop"],
      ["princessBust", "princessWaist", "princessWaist"],
    ] as const) {
      const [centre, side] = [off(drawn.centreFront, a, b, corner), off(drawn.sideFront, a, b, corner)];
      expect(centre / (centre + side)).toBeCloseTo(0.35, 6);
    }
  });

  it("does not walk where a stretch is too short to be matched", () => {
    const short: PrincessPieces = {
      centreFront: split.centreFront,
      sideFront: withPointsAt(split.sideFront, { princessWaist: piecePoint(95, 154) }),
    };
    // 4 mm long below the bust: the centre front's lies 10 mm further in.
    expect(walkPrincess(short)).toBeNull();
  });
});

describe("a princess seam of the pattern's own", () => {
  const own = (piece: Piece, seamEase?: number): Piece => ({
    ...piece,
    drawnTurns: {
      princessTop: 180 - cornerAt(piece, "princessTop"),
      princessWaist: 180 - cornerAt(piece, "princessWaist"),
    },
    ...(seamEase === undefined ? {} : { seamEase: { princess: seamEase } }),
  });

  it("keeps its shape where it walks, and its ease: as much of it on each stretch as that is long", () => {
    const same = { centreFront: own(drawn.centreFront), sideFront: own(drawn.sideFront, 0) };
    const kept = invariant(walkPrincess(same), "walked");
    expect(kept.drop).toBeCloseTo(0, 4);
    for (const corner of ["princessTop", "princessBust", "princessWaist", "centreWaist"] as const) {
      expect(pointOf(kept.centreFront.piece, corner).x).toBeCloseTo(pointOf(drawn.centreFront, corner).x, 3);
      expect(pointOf(kept.centreFront.piece, corner).y).toBeCloseTo(pointOf(drawn.centreFront, corner).y, 3);
    }
    const eased = invariant(walkPrincess({ ...same, sideFront: own(drawn.sideFront, 3) }), "eased");
    const [centre, side] = [partsOf(eased.centreFront.piece), partsOf(eased.sideFront)];
    const whole = side.upper + side.lower;
    expect(side.upper - centre.upper).toBeCloseTo((3 * side.upper) / whole, 4);
    expect(side.lower - centre.lower).toBeCloseTo((3 * side.lower) / whole, 4);
    expect(eased.drop).toBeLessThan(-2.8);
    expect(pointOf(eased.centreFront.piece, "centreWaist").y).toBeCloseTo(
      pointOf(drawn.centreFront, "centreWaist").y + eased.drop,
      9,
    );
  });
});

describe("a princess-line bust", () => {
  it("gains the spread on the side front along a level bust line; strips turn until they aim at the mark", () => {
    const done = adjustPrincessBust(drawn, 10);
    if (!done.ok) throw new Error(done.failure.code);
    const { pieces, turn, drop, traces } = done.value;
    expect(pointOf(pieces.sideFront, "princessBust")).toEqual(piecePoint(85, 150));
    for (const name of ["princessTop", "princessWaist", "sideBust", "sideWaist", "underarm"] as const)
      expect(pointOf(pieces.sideFront, name)).toEqual(pointOf(drawn.sideFront, name));
    // From the top at (110, 0): to 95 and to 85 across at 150 down; outward turns +x towards +y.
    expect(turn).toBeCloseTo(Math.atan(25 / 150) - Math.atan(15 / 150), 9);
    expect(drop).toBeGreaterThan(0);
    expect(traces.map(({ piece }) => piece)).toEqual(["sideFront", "centreFront"]);
    expect(traces[0]?.hinges).toEqual([piecePoint(110, 0), piecePoint(110, 300)]);
    // The strips meet on the bust line, 40 mm in from the seam.
    expect(traces[0]?.cuts.map((cut) => cut.at(-1))).toEqual(Array.from({ length: 3 }, () => piecePoint(135, 150)));
    const back = adjustPrincessBust(pieces, -10);
    if (!back.ok) throw new Error(back.failure.code);
    expect(pointOf(back.value.pieces.sideFront, "princessBust")).toEqual(piecePoint(95, 150));
    expect(back.value.drop).toBeCloseTo(-drop, 4);
    // Bends of the straight lines: the side front's less the centre front's.
    const bend = ({ top, bust, waist }: ReturnType<typeof cornersOf>): number =>
      Math.atan((top.x - bust.x) / (bust.y - top.y)) + Math.atan((waist.x - bust.x) / (waist.y - bust.y));
    expect(takenAtBust(pieces)).toBeCloseTo(bend(cornersOf(pieces.sideFront)) - bend(cornersOf(pieces.centreFront)), 9);
  });

  it("is refused where nothing would be left to shape, or it would bend too sharply, with the most that works", () => {
    const small = adjustPrincessBust(drawn, -60);
    expect(small).toMatchObject({ ok: false, failure: { code: "fullBust/dart-vanishes" } });
    const least = small.ok ? Number.NaN : small.failure.most;
    expect(adjustPrincessBust(drawn, least).ok).toBe(true);
    expect(adjustPrincessBust(drawn, least - 0.01).ok).toBe(false);
    const large = adjustPrincessBust(drawn, 400);
    expect(large).toMatchObject({ ok: false, failure: { code: "fullBust/out-of-reach" } });
    const most = large.ok ? Number.NaN : large.failure.most;
    expect(adjustPrincessBust(drawn, most).ok).toBe(true);
  });
});

describe("a shoulder over a princess seam", () => {
  const back = cornerPiece({
    name: "back",
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["sideNeck", 60, 0, "shoulder"],
      ["shoulderTip", 130, 0, "armhole"],
      ["underarm", 200, 100, "side"],
      ["sideWaist", 200, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ],
  });
  const straight = setOf([split.centreFront, split.sideFront, back]);
  // Down the seam's upper part: 15 right over 150 on the centre front, 15 left on the side front.
  const tilt = 2 * Math.atan(15 / 150);

  it("is seen beyond the seam as it lies sewn: turned by both slopes and shifted top to top", () => {
    const onto = ontoSideFront(split.centreFront, split.sideFront);
    expect(onto.angle).toBeCloseTo(tilt, 9);
    expect(tiltAtTip(straight, "front")).toBeCloseTo(tilt, 9);
    const set = turnShoulder(straight, "front", radians(0.05));
    const centre = pieceIn(set, "centreFront");
    expect(pointOf(centre, "princessTop").x).toBeCloseTo(60 + 20 * Math.cos(0.05), 9);
    expect(pointOf(centre, "princessTop").y).toBeCloseTo(20 * Math.sin(0.05), 9);
    const side = pieceIn(set, "sideFront");
    // The top of the side front goes by what the centre front's goes by, seen tilted.
    const [dx, dy] = [20 * Math.cos(0.05) - 20, 20 * Math.sin(0.05)];
    const [top, tip] = [pointOf(side, "princessTop"), pointOf(side, "shoulderTip")];
    expect(top.x - 110).toBeCloseTo(dx * Math.cos(tilt) - dy * Math.sin(tilt), 9);
    expect(top.y).toBeCloseTo(dx * Math.sin(tilt) + dy * Math.cos(tilt), 9);
    // The rest of the shoulder turns rigidly.
    expect(Math.hypot(tip.x - top.x, tip.y - top.y)).toBeCloseTo(50, 9);
    expect(Math.atan2(tip.y - top.y, tip.x - top.x)).toBeCloseTo(0.05, 9);
  });

  it("has its upper stretches differ as they did", () => {
    const before = setOf([drawn.centreFront, drawn.sideFront, back]);
    const longer = setOf([
      drawn.centreFront,
      withPointsAt(drawn.sideFront, { princessTop: piecePoint(112, 0.4) }),
      back,
    ]);
    const after = walkUpperPrincess(before, longer);
    expect(partsOf(pieceIn(after, "sideFront")).upper).toBeCloseTo(partsOf(drawn.sideFront).upper, 3);
    expect(partsOf(pieceIn(after, "sideFront")).lower).toBeCloseTo(partsOf(drawn.sideFront).lower, 9);
    expect(after.centreFront).toBe(drawn.centreFront);
  });

  it("is walked again where a piece of it was changed, and left where none was", () => {
    const before = setOf([drawn.centreFront, drawn.sideFront, back]);
    expect(walkAgain(before, { ...before }).centreFront).toBe(drawn.centreFront);
    for (const changed of [
      { ...before, centreFront: withPointsAt(drawn.centreFront, { princessBust: piecePoint(95, 155) }) },
      { ...before, sideFront: withPointsAt(drawn.sideFront, { princessBust: piecePoint(90, 150) }) },
    ]) {
      const after = walkAgain(before, changed);
      const [centre, side] = [partsOf(pieceIn(after, "centreFront")), partsOf(pieceIn(after, "sideFront"))];
      expect(centre.upper).toBeCloseTo(side.upper, 4);
      expect(centre.lower).toBeCloseTo(side.lower, 4);
    }
    const half = setOf([drawn.sideFront, back]);
    expect(walkAgain(half, half)).toBe(half);
  });
});

describe("a wedge into the princess seam", () => {
  it.each([
    ["centreFront", "neck", 1],
    ["sideFront", "armhole", 2],
  ] as const)(
    "turns the part above the bust of the %s, off its %s, and leaves the seam as long",
    (name, seam, amount) => {
      const piece = drawn[name];
      const done = closeWedgeIntoPrincess(piece, seam, amount);
      if (!done.ok) throw new Error(JSON.stringify(done.failure));
      const { piece: after, turn, trace } = done.value;
      expect(seamByBezierJs(after, "princess")).toBeCloseTo(seamByBezierJs(piece, "princess"), 3);
      expect(Math.abs(seamByBezierJs(piece, seam) - seamByBezierJs(after, seam) - amount)).toBeLessThan(0.06);
      expect(seamByBezierJs(after, "shoulder")).toBeCloseTo(seamByBezierJs(piece, "shoulder"), 3);
      expect(trace.hinges).toEqual([pointOf(piece, "princessBust")]);
      expect(turn).toBeGreaterThan(0);
      expect(pointOf(after, "princessBust")).toEqual(pointOf(piece, "princessBust"));
      expect(Object.keys(after.points).toSorted()).toEqual(Object.keys(piece.points).toSorted());
    },
  );
});

describe("points placed and bridges taken out", () => {
  it("place just the points that a piece has", () => {
    const placed = withPointsAt(front, { bustPoint: piecePoint(1, 2), strapAim: piecePoint(3, 4) });
    expect(placed.points).toEqual({ ...front.points, bustPoint: { at: piecePoint(1, 2), level: "bust" } });
  });

  it("join the outline over the edge that leaves a corner", () => {
    const joined = withoutBridge(front, "underarm", "sideBust");
    expect(joined.edges).toEqual([
      ...front.edges.slice(0, 5),
      { ...invariant(front.edges[6], "side"), from: "underarm" },
      ...front.edges.slice(7),
    ]);
    expect(joined.points.sideBust).toBeUndefined();
  });
});
