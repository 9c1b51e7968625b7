/** What is told of a new edge on one piece, on a square of 100 whose upper edge is drawn anew: every figure by hand. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { RedrawnNeckline } from "../../../src/core/neckline/redrawNeckline";
import type { Edge, Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import { necklineJob } from "../../../src/core/plan/necklineJob";

type Places = Readonly<Partial<Record<PointName, readonly [number, number]>>>;
type Line = readonly [PointName, PointName, Edge["curve"]?, Edge["mouthOf"]?];

const AT: Places = { centreNeck: [0, 0], sideNeck: [60, -20], sideWaist: [100, 100], centreWaist: [0, 100] };
const straight = (neck: readonly Line[], at: Places, name: PieceName = "front", more: Partial<Piece> = {}): Piece => ({
  name,
  points: Object.fromEntries(
    Object.entries(at).map(([point, [x, y]]) => [point, { at: piecePoint(x, y), level: "neck" }] as const),
  ),
  edges: [
    ...neck.map(([from, to, curve = null, mouthOf = null]): Edge => ({ from, to, seam: "neck", curve, mouthOf })),
    { from: "sideNeck", to: "sideWaist", seam: "side", curve: null, mouthOf: null },
    { from: "sideWaist", to: "centreWaist", seam: "waist", curve: null, mouthOf: null },
    { from: "centreWaist", to: "centreNeck", seam: "centre", curve: null, mouthOf: null },
  ],
  darts: [],
  levelLines: [],
  centreOnFold: true,
  ...more,
});
const NECK: readonly Line[] = [["centreNeck", "sideNeck"]];
const before = straight(NECK, AT);

const redrawn: RedrawnNeckline = {
  pieces: {},
  under: {},
  before: 0,
  after: 0,
  front: { gape: 9, pinched: 4 },
  back: { gape: 8, pinched: 3 },
};
const job = (after: Piece, was = before) =>
  necklineJob(after.name, { [was.name]: was }, { [after.name]: after }, redrawn);

describe("a new edge", () => {
  it("is no job where the piece stays, or is not there", () => {
    expect(job(before)).toBeNull();
    expect(necklineJob("front", {}, { front: before }, redrawn)).toBeNull();
    expect(necklineJob("front", { front: before }, {}, redrawn)).toBeNull();
  });

  it("20 lower and 5 wider, straight, is told by where its ends lie, how long it is, and what was pinched", () => {
    // From (0, 20) to (64, -17): 5 along the shoulder from (60, -20).
    const after = straight(NECK, { ...AT, centreNeck: [0, 20], sideNeck: [64, -17] });
    expect(job(after)).toEqual({
      places: [
        { point: "centreNeck", from: "centreNeck", out: 0, down: 20 },
        { point: "sideNeck", from: "sideNeck", out: 4, down: 3 },
      ],
      lines: [
        {
          from: "centreNeck",
          to: "sideNeck",
          length: expect.closeTo(Math.hypot(64, 37), 6),
          hollow: 0,
          isSquare: true,
        },
      ],
      wider: 5,
      pinched: 4,
    });
  });

  it("tells no end that lies within half a millimetre of where it was, nor bends", () => {
    const bent: readonly Line[] = [
      ["centreNeck", "bend000"],
      ["bend000", "sideNeck"],
    ];
    const after = straight(bent, { ...AT, centreNeck: [0, 0.5], sideNeck: [60.4, -20.4], bend000: [30, 10] });
    const told = job(after);
    expect(told?.places).toEqual([
      { point: "sideNeck", from: "sideNeck", out: expect.closeTo(0.4, 9), down: expect.closeTo(-0.4, 9) },
    ]);
    expect(told?.lines.map(({ from, to, isSquare }) => [from, to, isSquare])).toEqual([
      ["centreNeck", "bend000", true],
      ["bend000", "sideNeck", false],
    ]);
  });

  it("tells a new corner from where the edge began, or from the seam that it begins at", () => {
    const cornered: readonly Line[] = [
      ["centreNeck", "neckCorner"],
      ["neckCorner", "sideNeck"],
    ];
    const after = straight(cornered, { ...AT, neckCorner: [40, 30] });
    expect(job(after)?.places).toEqual([{ point: "neckCorner", from: "centreNeck", out: 40, down: 30 }]);
    // However near to it: the paper has no such corner yet.
    const near = straight(cornered, { ...AT, neckCorner: [0.2, 0] });
    expect(job(near)?.places).toEqual([{ point: "neckCorner", from: "centreNeck", out: 0.2, down: 0 }]);
    const { centreNeck: _gone, ...side } = AT;
    const at = { ...side, princessTop: [10, 5] as const };
    const was = straight([["princessTop", "sideNeck"]], at, "sideFront");
    const made = straight(
      [
        ["princessTop", "neckCorner"],
        ["neckCorner", "sideNeck"],
      ],
      { ...at, neckCorner: [40, 30] },
      "sideFront",
    );
    expect(job(made, was)?.places).toEqual([{ point: "neckCorner", from: "princessTop", out: 30, down: 25 }]);
    expect(job(made, was)?.lines.some(({ isSquare }) => isSquare)).toBe(false);
  });

  it("is hollow by how far its middle lies off the straight, into the piece", () => {
    // A cubic with both controls 40 below a level line of 60: its middle lies ¾ of that below.
    const curve = { c1: piecePoint(20, 40), c2: piecePoint(40, 40) };
    const at = { ...AT, sideNeck: [60, 0] as const };
    const after = straight([["centreNeck", "sideNeck", curve]], at);
    expect(job(after)?.lines[0]?.hollow).toBeCloseTo(30, 9);
    const proud = { c1: piecePoint(20, -40), c2: piecePoint(40, -40) };
    expect(job(straight([["centreNeck", "sideNeck", proud]], at))?.lines[0]?.hollow).toBeCloseTo(-30, 9);
  });

  it("is not square to a centre that was drawn otherwise; a dart's mouth in it is no line of it", () => {
    const drawn = straight(NECK, { ...AT, centreNeck: [0, 9] }, "front", { drawnTurns: { centreNeck: 100 } });
    expect(job(drawn)?.lines[0]?.isSquare).toBe(false);
    const withDart: readonly Line[] = [
      ["centreNeck", "neckDartInner"],
      ["neckDartInner", "neckDartOuter", null, "neckDart"],
      ["neckDartOuter", "sideNeck"],
    ];
    const after = straight(withDart, { ...AT, neckDartInner: [20, 0], neckDartOuter: [24, 0] });
    expect(job(after)?.lines).toHaveLength(2);
  });

  it("on a back is pinched nowhere in front; a piece without a side neck is no wider", () => {
    const back = straight(NECK, AT, "back");
    const deeper = straight(NECK, { ...AT, centreNeck: [0, 30] }, "back");
    expect(job(deeper, back)).toMatchObject({ wider: 0, pinched: 0 });
    const { sideNeck: _gone, ...none } = AT;
    const cup = { ...straight([["centreNeck", "strapInner"]], { ...none, strapInner: [50, 0] }, "cup") };
    const lower = straight([["centreNeck", "strapInner"]], { ...none, strapInner: [50, 8] }, "cup");
    expect(job(lower, cup)).toMatchObject({ wider: 0, pinched: 4 });
  });
});
