/**
 * Ease let in at a side seam, on pieces whose side is a straight line. At the share s from the underarm down it goes out by
 * 27/4 · s · (1 − s)² of what is wanted: nothing at both ends, all of it at a third. mm.
 */
import { describe, expect, it } from "vitest";
import { easeSide } from "../../../src/core/lining/sideEase";
import { pointOf, type Edge, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { closePoints, turned } from "../../support/turnedPiece";

/** The side goes down from (100, 0) for 300, leaning out by `lean` on its way; the ring begins with the side itself. */
const plain = (lean = 0, curves: Parameters<typeof cornerPiece>[0]["curves"] = {}): Piece =>
  cornerPiece({
    curves,
    corners: [
      ["underarm", 100, 0, "side"],
      ["sideWaist", 100 + lean, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
      ["centreNeck", 0, 0, "neck"],
    ],
  });

const about = (x: number, y: number, digits = 2): unknown => ({
  x: expect.closeTo(x, digits),
  y: expect.closeTo(y, digits),
});

const edgeFrom = (piece: Piece, from: PointName): Edge | undefined => piece.edges.find((edge) => edge.from === from);

describe("a side seam without a dart", () => {
  it("swells between its ends, and nothing else is another", () => {
    const piece = plain();
    // The swell is a cubic itself: of 6, handles a third and two thirds down lie 6 × 9/4 out and not at all.
    expect(easeSide(piece, 6)).toEqual({
      ...piece,
      points: {
        underarm: { at: about(100, 0, 6), level: "bust" },
        sideWaist: { at: about(100, 300, 6), level: "bust" },
        centreWaist: piece.points.centreWaist,
        centreNeck: piece.points.centreNeck,
      },
      edges: [{ ...piece.edges[0], curve: { c1: about(113.5, 100), c2: about(100, 200) } }, ...piece.edges.slice(1)],
    });
    // Let in, it goes the other way.
    expect(easeSide(piece, -6).edges[0]?.curve?.c1).toEqual(about(86.5, 100));
  });

  it("goes out square to the way from end to end", () => {
    const [length, lean] = [Math.hypot(300, 90), 90];
    const { c1, c2 } = easeSide(plain(lean), 6).edges[0]?.curve ?? {};
    expect(c1).toEqual(about(130 + (13.5 * 300) / length, 100 - (13.5 * 90) / length));
    expect(c2).toEqual(about(160, 200));
  });

  it("on the lower part of a seam has what is left of the swell there", () => {
    // From the middle down: 27/4 × 1/2 × 1/4 of 6 at its upper end, none at its lower one.
    const eased = easeSide(plain(), 6, { from: 0.5, to: 1 });
    expect(pointOf(eased, "underarm")).toEqual(about(100 + 5.0625, 0, 4));
    expect(pointOf(eased, "sideWaist")).toEqual(about(100, 300, 4));
    // Of the upper half the lower end; the whole of it is at two thirds of that half.
    const upper = easeSide(plain(), 6, { from: 0, to: 0.5 });
    expect(pointOf(upper, "underarm")).toEqual(about(100, 0, 4));
    expect(pointOf(upper, "sideWaist")).toEqual(about(105.0625, 300, 4));
  });

  it("is the same piece where none is wanted, or no side is there", () => {
    const piece = plain();
    expect(easeSide(piece, 0)).toBe(piece);
    const sideless = cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["princessTop", 60, 0, "princess"],
        ["princessWaist", 60, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
    });
    expect(easeSide(sideless, 6)).toBe(sideless);
  });

  it("that is a curve already is moved as one, and stays one", () => {
    const eased = easeSide(
      plain(0, {
        underarm: [
          [112, 90],
          [96, 210],
        ],
      }),
      6,
    );
    expect(eased.edges[0]?.curve?.c1.y).toBeCloseTo(90, 2);
    expect(eased.edges[0]?.curve?.c2.y).toBeCloseTo(210, 2);
    expect(eased.edges[0]?.curve?.c1.x).toBeGreaterThan(112 + 10);
    expect(eased.edges[0]?.curve?.c2.x).toBeCloseTo(96, 1);
  });
});

/** A dart of 20 at 120 down of 300 sewn, its apex so far in; the ring begun where it is told. */
function darted(apex: number, begin = 0): Piece {
  const corners: readonly CornerOf[] = [
    ["underarm", 100, 0, "side"],
    ["sideDartInner", 100, 120, "side", "sideDart"],
    ["sideDartOuter", 100, 140, "side"],
    ["sideWaist", 100, 320, "waist"],
    ["centreWaist", 0, 320, "centre"],
    ["centreNeck", 0, 0, "neck"],
  ];
  return cornerPiece({
    corners: [...corners.slice(begin), ...corners.slice(0, begin)],
    inside: { sideDartApex: [apex, 130] },
    darts: [dartFor("sideDart", "side")],
  });
}

describe("a side seam with a dart", () => {
  // At two fifths of it sewn: 27/4 × 0.4 × 0.36 of 6.
  const out = 6 * (27 / 4) * 0.4 * 0.36;

  it("has its legs drawn longer by what reaches as far out, alike; the ends of the seam stay", () => {
    const eased = easeSide(darted(40), 6);
    const leg = Math.hypot(60, 10);
    // So far out across the seam takes leg / 60 times that along the leg, of which 10 / leg goes along the seam.
    expect(pointOf(eased, "sideDartInner")).toEqual(about(100 + out, 120 - out / 6, 4));
    expect(pointOf(eased, "sideDartOuter")).toEqual(about(100 + out, 140 + out / 6, 4));
    expect(pointOf(eased, "sideDartApex")).toEqual({ x: 40, y: 130 });
    expect(pointOf(eased, "underarm")).toEqual(about(100, 0, 6));
    expect(pointOf(eased, "sideWaist")).toEqual(about(100, 320, 6));
    const grown = Math.hypot(60 + out, 10 + out / 6) - leg;
    expect(grown).toBeCloseTo((out * leg) / 60, 6);
    // Above it: a third down, at the slope of the swell; and back from the dart, where the swell turns in at 0.81.
    const above = edgeFrom(eased, "underarm")?.curve;
    expect(above?.c1).toEqual(about(100 + (6 * 27 * 0.4) / 4 / 3, 40));
    expect(above?.c2).toEqual(about(100 + out + (6 * 0.81 * 0.4) / 3, 120 - out / 6 - 40));
    // Below it: on at that slope; at the waist square.
    const below = edgeFrom(eased, "sideDartOuter")?.curve;
    expect(below?.c1).toEqual(about(100 + out - (6 * 0.81 * 0.6) / 3, 140 + out / 6 + 60));
    expect(below?.c2).toEqual(about(100, 260));
    expect(edgeFrom(eased, "sideDartInner")).toEqual(edgeFrom(darted(40), "sideDartInner"));
  });

  it("lengthens legs that run along it by no more than two and a half times", () => {
    // 5 across in √125 is 0.447; 3 in √109 is 0.287, less than 0.4.
    const steep = easeSide(darted(95), 6);
    expect(pointOf(steep, "sideDartInner")).toEqual(about(100 + out, 120 - 2 * out, 4));
    const steeper = easeSide(darted(97), 6);
    const long = out / 0.4 / Math.sqrt(109);
    expect(pointOf(steeper, "sideDartInner")).toEqual(about(100 + 3 * long, 120 - 10 * long, 4));
    expect(pointOf(steeper, "sideDartOuter")).toEqual(about(100 + 3 * long, 140 + 10 * long, 4));
  });

  it("is the same however the piece is turned", () => {
    for (const degrees of [25, -70, 160])
      expect(turned(easeSide(darted(40), 6), degrees)).toMatchObject({
        points: closePoints(easeSide(turned(darted(40), degrees), 6)),
      });
  });

  it("is the same whichever edge its ring begins with", () => {
    const first = easeSide(darted(40), 6);
    for (const begin of [1, 2, 3, 4, 5]) {
      const other = easeSide(darted(40, begin), 6);
      expect(other.points).toEqual(first.points);
      expect(new Set(other.edges)).toEqual(new Set(first.edges));
    }
  });
});
