/** What points between two levels follow: shares of a way along the seam, by hand. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { followLevels } from "../../../src/core/nest/followLevels";
import type { Edge, LevelName, NamedPoint, Piece, PointName, SeamName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";

type Corner = readonly [PointName, number, number, LevelName, SeamName, "sideDart"?];

function pieceOf(corners: readonly Corner[]): Piece {
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const [name, x, y, level] of corners) points[name] = { at: piecePoint(x, y), level };
  return {
    name: "front",
    points,
    edges: corners.map(([from, , , , seam, mouthOf = null], index): Edge => {
      const [to] = corners[(index + 1) % corners.length] ?? [from];
      return { from, to, seam, curve: null, mouthOf };
    }),
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}

/** Clockwise, the side straight down: 120 mm from bust to waist, a dart's mouth of 30 at 30, a bend at 60 of the sewn way. */
const down: readonly Corner[] = [
  ["centreNeck", 0, 0, "neck", "neck"],
  ["underarm", 200, 0, "underarm", "side"],
  ["bend000", 200, 20, "bust", "side"],
  ["sideBust", 200, 50, "bust", "side"],
  ["sideDartInner", 200, 80, "bust", "side", "sideDart"],
  ["sideDartOuter", 200, 110, "bust", "side"],
  ["bend001", 200, 140, "bust", "side"],
  ["sideWaist", 200, 200, "waist", "waist"],
  ["bend002", 100, 200, "neck", "waist"],
  ["centreWaist", 0, 200, "waist", "centre"],
  ["bend003", 0, 110, "neck", "centre"],
  ["centreBust", 0, 80, "bust", "centre"],
];
const curvedFrom = (piece: Piece, name: PointName): Piece => ({
  ...piece,
  edges: piece.edges.map((edge) => {
    if (edge.from !== name) return edge;
    const [a, b] = [invariant(piece.points[edge.from], "from").at, invariant(piece.points[edge.to], "to").at];
    // A straight cubic: as long as the line.
    return {
      ...edge,
      curve: {
        c1: piecePoint(a.x + (b.x - a.x) / 3, a.y + (b.y - a.y) / 3),
        c2: piecePoint(b.x - (b.x - a.x) / 3, b.y - (b.y - a.y) / 3),
      },
    };
  }),
});
const followed = (piece: Piece): Piece["points"] => invariant(followLevels([[piece]])[0]?.[0], "piece").points;
const onSide = (share: number) => ({ level: "bust", towards: { level: "waist", share } });

describe("points between two levels", () => {
  it("follow by their share of the sewn way where the side is a line from level to level", () => {
    const points = followed(pieceOf(down));
    // A quarter at the dart, shut; half at the bend.
    expect(points.sideDartInner).toEqual({ at: piecePoint(200, 80), ...onSide(0.25) });
    expect(points.sideDartOuter).toEqual({ at: piecePoint(200, 110), ...onSide(0.25) });
    expect(points.bend001).toEqual({ at: piecePoint(200, 140), ...onSide(0.5) });
    // 20 of 50.
    expect(points.bend000).toEqual({
      at: piecePoint(200, 20),
      level: "underarm",
      towards: { level: "bust", share: 0.4 },
    });
    // The corners of levels are left.
    expect(points.sideBust).toEqual({ at: piecePoint(200, 50), level: "bust" });
    expect(points.sideWaist).toEqual({ at: piecePoint(200, 200), level: "waist" });
    expect(points.underarm).toEqual({ at: piecePoint(200, 0), level: "underarm" });
  });

  it.each(["sideBust", "sideDartOuter", "bend001"] as const)(
    "follow as a cubic's points do where the side is curved anywhere between, as from %s",
    (name) => {
      const points = followed(curvedFrom(pieceOf(down), name));
      // 3t² − 2t³ at a quarter: 5/32.
      expect(points.sideDartInner?.towards?.share).toBeCloseTo(5 / 32, 12);
      expect(points.sideDartOuter?.towards?.share).toBeCloseTo(5 / 32, 12);
      expect(points.bend001?.towards?.share).toBeCloseTo(0.5, 12);
    },
  );

  it("stay on a line though the side is curved above the bust", () => {
    expect(followed(curvedFrom(pieceOf(down), "underarm")).sideDartInner).toMatchObject(onSide(0.25));
  });

  it("do the same wherever the ring begins", () => {
    const piece = pieceOf(down);
    const whole = followed(piece);
    for (let first = 0; first < piece.edges.length; first += 1) {
      const turned = { ...piece, edges: [...piece.edges.slice(first), ...piece.edges.slice(0, first)] };
      expect(followed(turned)).toEqual(whole);
    }
  });

  it("bends follow the corners beside them, not the ends of their seam", () => {
    const points = followed(
      pieceOf([
        ["sideWaist", 200, 200, "waist", "waist"],
        ["bend000", 180, 200, "neck", "waist"],
        ["corner01", 160, 200, "hip", "waist"],
        ["bend001", 130, 200, "neck", "waist"],
        ["centreWaist", 40, 200, "bust", "centre"],
        ["centreNeck", 0, 0, "neck", "shoulder"],
      ]),
    );
    // Half of the first 40, a quarter of the next 120: 3t² − 2t³.
    expect(points.bend000).toMatchObject({ level: "waist", towards: { level: "hip", share: 0.5 } });
    expect(points.bend001).toMatchObject({ level: "hip", towards: { level: "bust", share: 5 / 32 } });
  });

  it("do the same where the ring goes up the side", () => {
    // The same outline the other way round: each corner with the seam that leaves it then.
    const corners = down.map(([name, x, y, level]): Corner => {
      const at = down.findIndex(([one]) => one === name);
      const before = invariant(down[(at + down.length - 1) % down.length], "corner");
      return before[5] === undefined ? [name, x, y, level, before[4]] : [name, x, y, level, before[4], before[5]];
    });
    const up = pieceOf(corners.toReversed());
    const points = followed(up);
    expect(points.sideDartInner).toMatchObject(onSide(0.25));
    expect(points.bend001).toMatchObject(onSide(0.5));
    const curved = followed(curvedFrom(up, "sideWaist"));
    expect(curved.sideDartInner?.towards?.share).toBeCloseTo(5 / 32, 12);
  });

  it("bends between two corners of one level follow that level; of two, each as a cubic would", () => {
    const points = followed(pieceOf(down));
    expect(points.bend002).toEqual({ at: piecePoint(100, 200), level: "waist" });
    // Up the centre from the waist, 90 of 120: 3t² − 2t³ of three quarters is 27/32.
    expect(points.bend003?.level).toBe("waist");
    expect(points.bend003?.towards?.level).toBe("bust");
    expect(points.bend003?.towards?.share).toBeCloseTo(27 / 32, 12);
  });

  it("hold for every size as the first has them, and no other point or piece is touched", () => {
    const wider = pieceOf(down.map(([name, x, ...rest]): Corner => [name, 2 * x, ...rest]));
    const other: Piece = { ...pieceOf([["corner01", 0, 0, "neck", "neck"]]), name: "strap" };
    const [first, second] = followLevels([
      [pieceOf(down), other],
      [wider, other, { ...other, name: "other1" }],
    ]);
    expect(second?.[0]?.points.sideDartInner).toEqual({ at: piecePoint(400, 80), ...onSide(0.25) });
    expect(first?.[1]).toBe(other);
    expect(second?.[2]).toEqual({ ...other, name: "other1" });
    expect(second?.[0]?.edges).toEqual(wider.edges);
    expect(second?.[0]?.points.centreNeck).toEqual(wider.points.centreNeck);
    expect(followLevels([])).toEqual([]);
  });

  it("a point that a larger size lacks is not made", () => {
    const lacking = pieceOf(down.filter(([name]) => name !== "bend002"));
    const [, second] = followLevels([[pieceOf(down)], [lacking]]);
    expect(Object.keys(second?.[0]?.points ?? {})).not.toContain("bend002");
  });

  it("are left where no level lies below them, or none above", () => {
    const cut = pieceOf([
      ["centreNeck", 0, 0, "neck", "neck"],
      ["strapOuter", 200, 0, "shoulder", "side"],
      ["sideBust", 200, 50, "bust", "side"],
      ["sideDartInner", 200, 80, "bust", "side", "sideDart"],
      ["sideDartOuter", 200, 110, "bust", "side"],
      ["corner01", 200, 140, "bust", "waist"],
      ["bend001", 100, 140, "neck", "waist"],
      ["corner02", 0, 140, "bust", "centre"],
    ]);
    const points = followed(cut);
    expect(points).toEqual({ ...cut.points, bend001: { at: piecePoint(100, 140), level: "bust" } });
  });
});
