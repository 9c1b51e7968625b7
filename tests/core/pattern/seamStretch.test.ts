/** Stretches of several edges moved as one: ends where they are wanted, smooth bends smooth, corners kept, one cubic as ever. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { moveMouthEnd } from "../../../src/core/dart/mouthEnd";
import { piecePoint } from "../../../src/core/geometry/point";
import { curved, straight } from "../../../src/core/pattern/namedEdges";
import {
  pointOf,
  type BendName,
  type Edge,
  type NamedPoint,
  type Piece,
  type PointName,
} from "../../../src/core/pattern/piece";
import { insertPoint } from "../../../src/core/pattern/ring";
import { placeAlong, smoothStretchAt, stretchAt, stretchLength } from "../../../src/core/pattern/seamStretch";
import { edgeTurned } from "../../../src/core/surgery/straightThrough";
import { fitHandles } from "../../../src/core/surgery/fitHandles";
import { radians } from "../../../src/core/units";
import { anyAmount } from "../../support/amounts";
import { referenceLength } from "../../support/curves";

const at = (x: number, y: number): NamedPoint => ({ at: piecePoint(x, y), level: "bust" });

/** A square piece whose neck is one cubic. */
const plain: Piece = {
  name: "front",
  points: { centreNeck: at(0, 100), sideNeck: at(80, 0), underarm: at(200, 150), centreWaist: at(0, 400) },
  edges: [
    curved("centreNeck", "sideNeck", "neck", piecePoint(45, 100), piecePoint(78, 50)),
    straight("sideNeck", "underarm", "armhole"),
    straight("underarm", "centreWaist", "side"),
    straight("centreWaist", "centreNeck", "centre"),
  ],
  darts: [],
  levelLines: [],
  centreOnFold: true,
};

/** The same neck cut by bends: the very same line in several cubics. */
const bent = (cuts: readonly number[]): Piece =>
  cuts.reduce((piece, t, index) => insertPoint(piece, index, t, `bend00${index}` as BendName, "bust"), plain);

const neckOf = ({ edges }: Piece): readonly Edge[] => edges.filter(({ seam }) => seam === "neck");

const direction = (a: { x: number; y: number }, b: { x: number; y: number }): number =>
  Math.atan2(b.y - a.y, b.x - a.x);
const away = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));

/** How far the line turns at each of its bends. */
const turns = (piece: Piece): readonly number[] =>
  neckOf(piece)
    .slice(1)
    .map((edge, index) => {
      const [into, p] = [neckOf(piece)[index], pointOf(piece, edge.from)];
      if (into?.curve === undefined || into.curve === null || edge.curve === null) throw new Error("curves");
      return away(direction(into.curve.c2, p), direction(p, edge.curve.c1));
    });

/** By very many chords. */
const lengthOf = (piece: Piece): number =>
  neckOf(piece).reduce((sum, { from, to, curve }) => {
    if (curve === null) throw new Error("curve");
    return sum + referenceLength({ a: pointOf(piece, from), ...curve, b: pointOf(piece, to) }, 1, 4000);
  }, 0);

const cutsOf = fc.array(anyAmount(0.15, 0.7), { minLength: 1, maxLength: 4 });

describe("a stretch with bends", () => {
  it("is found from any of its edges; one cubic is a stretch of its own", () => {
    const piece = bent([0.3, 0.5]);
    for (const index of [0, 1, 2]) expect(stretchAt(piece, index)).toEqual([0, 1, 2]);
    expect(stretchAt(piece, 3)).toEqual([3]);
    expect(stretchLength(piece, [0, 1, 2])).toBeCloseTo(lengthOf(plain), 3);
  });

  it("has its places by the way along it", () => {
    const piece = bent([0.3, 0.5]);
    const whole = lengthOf(plain);
    const { index, t } = placeAlong(piece, [0, 1, 2], whole * 0.6);
    const before = neckOf(insertPoint(piece, index, t, "cut1", "bust")).slice(0, index + 1);
    const cut = insertPoint(piece, index, t, "cut1", "bust");
    const long = before.reduce(
      (sum, { from, to, curve }) =>
        sum + (curve === null ? 0 : referenceLength({ a: pointOf(cut, from), ...curve, b: pointOf(cut, to) }, 1, 4000)),
      0,
    );
    expect(long).toBeCloseTo(whole * 0.6, 3);
  });

  it("goes with an end that is moved, stays smooth, and keeps its other end and both directions there", () => {
    fc.assert(
      fc.property(cutsOf, anyAmount(-12, 12), anyAmount(-12, 12), (cuts, dx, dy) => {
        const piece = bent(cuts);
        const moved = moveMouthEnd(piece, "sideNeck", piecePoint(80 + dx, dy));
        expect(pointOf(moved, "sideNeck")).toEqual(piecePoint(80 + dx, dy));
        expect(pointOf(moved, "centreNeck")).toEqual(piecePoint(0, 100));
        for (const turn of turns(moved)) expect(turn).toBeLessThan(1e-3);
        const [first, last] = [neckOf(moved)[0], neckOf(moved).at(-1)];
        expect(away(direction(piecePoint(0, 100), first?.curve?.c1 ?? piecePoint(0, 0)), 0)).toBeLessThan(1e-3);
        const arriving = direction(last?.curve?.c2 ?? piecePoint(0, 0), piecePoint(80 + dx, dy));
        expect(away(arriving, direction(piecePoint(78, 50), piecePoint(80, 0)))).toBeLessThan(1e-3);
      }),
    );
  });

  it("moves much as the one cubic does that it is cut from", () => {
    // A cubic that runs along itself at an even speed: its parameter is its share of the way.
    const even: Piece = {
      ...plain,
      edges: plain.edges.with(0, {
        ...straight("centreNeck", "sideNeck", "neck"),
        curve: { c1: piecePoint(80 / 3, 200 / 3), c2: piecePoint(160 / 3, 100 / 3) },
      }),
    };
    const chain = insertPoint(even, 0, 0.4, "bend000", "bust");
    const [one, two] = [even, chain].map((piece) => moveMouthEnd(piece, "sideNeck", piecePoint(95, 10)));
    if (one === undefined || two === undefined) throw new Error("pieces");
    const bend = pointOf(two, "bend000");
    const wanted = pointOf(insertPoint(one, 0, 0.4, "bend000", "bust"), "bend000");
    expect(Math.hypot(bend.x - wanted.x, bend.y - wanted.y)).toBeLessThan(0.001);
  });

  it("turns at an end much as the one cubic does that it is cut from", () => {
    const even: Piece = {
      ...plain,
      edges: plain.edges.with(0, {
        ...straight("centreNeck", "sideNeck", "neck"),
        curve: { c1: piecePoint(80 / 3, 200 / 3), c2: piecePoint(160 / 3, 100 / 3) },
      }),
    };
    const cut = (piece: Piece) => insertPoint(piece, 0, 0.4, "bend000", "bust");
    for (const end of ["start", "end"] as const) {
      const last = end === "start" ? 0 : 1;
      const bend = pointOf(edgeTurned(cut(even), last, end, radians(0.15)), "bend000");
      const wanted = pointOf(cut(edgeTurned(even, 0, end, radians(0.15))), "bend000");
      expect(Math.hypot(bend.x - wanted.x, bend.y - wanted.y)).toBeLessThan(0.02);
    }
  });

  it("turns at an end by the angle asked, and nowhere else sharply", () => {
    fc.assert(
      fc.property(cutsOf, anyAmount(-0.2, 0.2), (cuts, turn) => {
        const piece = bent(cuts);
        const turned = edgeTurned(piece, 0, "start", radians(turn));
        const c1 = neckOf(turned)[0]?.curve?.c1 ?? piecePoint(0, 0);
        expect(direction(piecePoint(0, 100), c1)).toBeCloseTo(turn, 3);
        for (const bend of turns(turned)) expect(bend).toBeLessThan(1e-3);
        expect(pointOf(turned, "sideNeck")).toEqual(piecePoint(80, 0));
      }),
    );
  });

  it("is drawn fuller or flatter to a length, its ends and directions kept", () => {
    fc.assert(
      fc.property(cutsOf, anyAmount(-3, 3), (cuts, longer) => {
        const piece = bent(cuts);
        const wanted = lengthOf(plain) + longer;
        const drawn = fitHandles(piece, [0], wanted);
        expect(lengthOf(drawn)).toBeCloseTo(wanted, 2);
        for (const bend of turns(drawn)) expect(bend).toBeLessThan(1e-3);
        expect(away(direction(piecePoint(0, 100), neckOf(drawn)[0]?.curve?.c1 ?? piecePoint(0, 0)), 0)).toBeLessThan(
          1e-3,
        );
      }),
    );
  });

  it("keeps straight edges straight between corners, and ends what is drawn smooth at them", () => {
    const corner = (name: PointName, to: PointName): Edge => straight(name, to, "neck");
    const square: Piece = {
      ...plain,
      points: { ...plain.points, bend000: at(60, 96) },
      edges: [corner("centreNeck", "bend000"), corner("bend000", "sideNeck"), ...plain.edges.slice(1)],
    };
    const moved = moveMouthEnd(square, "sideNeck", piecePoint(90, 4));
    expect(neckOf(moved).map(({ curve }) => curve)).toEqual([null, null]);
    expect(smoothStretchAt(square, 0)).toEqual([0]);
    expect(stretchAt(square, 0)).toEqual([0, 1]);
  });
});
