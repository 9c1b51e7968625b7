/** Copies with their fields written out lose none of them. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Edge, NamedPoint, Piece } from "../../../src/core/pattern/piece";
import { placedAt, redrawn, withCurve, withEnds, withoutPoint, withPoint } from "../../../src/core/pattern/redraw";

const edge: Edge = { from: "sideWaist", to: "centreWaist", seam: "waist", curve: null, mouthOf: "waistDart" };
const curve = { c1: piecePoint(1, 2), c2: piecePoint(3, 4) };
const follows: Required<NamedPoint> = {
  at: piecePoint(5, 6),
  level: "bust",
  towards: { level: "waist", share: 0.25 },
};
const points: Piece["points"] = { sideWaist: follows, centreWaist: { at: piecePoint(0, 6), level: "waist" } };

/** Every field there is: one that is added to a piece must be added here before this compiles. */
const whole: Required<Piece> = {
  name: "back",
  points,
  edges: [edge],
  darts: [
    { name: "waistDart", seam: "waist", inner: "sideWaist", outer: "centreWaist", apex: "bustPoint", aimsAt: null },
  ],
  levelLines: [{ level: "waist", along: { seam: "waist" } }],
  centreOnFold: true,
  drawnTurns: { sideWaist: 3 },
  seamEase: { shoulder: 4 },
};

describe("a piece drawn anew", () => {
  const { drawnTurns: _turns, ...eased } = whole;
  const { seamEase: _ease, ...turned } = whole;
  const { drawnTurns: _t, seamEase: _e, ...plain } = whole;
  const PIECES: Readonly<Record<string, Piece>> = { whole, eased, turned, plain };

  it.each(Object.keys(PIECES))("keeps all else that it has: %s", (name) => {
    const piece: Piece = PIECES[name] ?? whole;
    const fewer = { sideWaist: follows };
    expect(redrawn(piece, fewer, [])).toStrictEqual({ ...piece, points: fewer, edges: [] });
    expect(redrawn(piece, fewer, [], [])).toStrictEqual({ ...piece, points: fewer, edges: [], darts: [] });
  });
});

describe("edges and points drawn anew", () => {
  it("keep all else that they have", () => {
    expect(withCurve(edge, curve)).toStrictEqual({ ...edge, curve });
    expect(withEnds(edge, "sideHem", "centreHem", curve)).toStrictEqual({
      ...edge,
      from: "sideHem",
      to: "centreHem",
      curve,
    });
    const at = piecePoint(7, 8);
    expect(placedAt(follows, at)).toStrictEqual({ ...follows, at });
    expect(placedAt({ at: piecePoint(0, 0), level: "hip" }, at)).toStrictEqual({ at, level: "hip" });
  });

  it("are put to the others or taken from them, which stay as they were", () => {
    const sideHem: NamedPoint = { at: piecePoint(9, 9), level: "hip" };
    expect(withPoint(points, "sideHem", sideHem)).toStrictEqual({ ...points, sideHem });
    expect(withPoint(points, "sideWaist", sideHem)).toStrictEqual({ ...points, sideWaist: sideHem });
    expect(withoutPoint(points, ["sideWaist", "sideHem"])).toStrictEqual({ centreWaist: points.centreWaist });
    expect(Object.keys(points)).toEqual(["sideWaist", "centreWaist"]);
  });
});
