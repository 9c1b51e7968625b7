/** Ends left free of a zip, on panels of straight lines and on one that follows a hip. mm. */
import { describe, expect, it } from "vitest";
import { leaveFree } from "../../../src/core/lining/leaveFree";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { curveOf } from "../../../src/core/pattern/ring";
import { cornerPiece, type CornerOf } from "../../support/cornerPiece";
import { closePoints, turned } from "../../support/turnedPiece";

/** 200 wide and 600 deep, with the hip 200 down at either seam; the ring begun where it is told. */
function panel(begin = 0, hip: PointName = "sideHip"): Piece {
  const corners: readonly CornerOf[] = [
    ["centreWaist", 0, 0, "waist"],
    ["sideWaist", 200, 0, "side"],
    [hip, 200, 200, "side"],
    ["sideHem", 200, 600, "hem"],
    ["centreHem", 0, 600, "centre"],
    ["centreHip", 0, 200, "centre"],
  ];
  return cornerPiece({ name: "skirtBack", corners: [...corners.slice(begin), ...corners.slice(0, begin)] });
}

const at = (x: number, y: number): unknown => ({
  at: { x: expect.closeTo(x, 4), y: expect.closeTo(y, 4) },
  level: "bust",
});
const line = (from: PointName, to: PointName, seam: string): unknown => ({
  from,
  to,
  seam,
  curve: null,
  mouthOf: null,
});

/** Edges from the centre of the waist on. */
const ringOf = ({ edges }: Piece): readonly unknown[] => {
  const start = edges.findIndex(({ from }) => from === "centreWaist");
  return [...edges.slice(start), ...edges.slice(0, start)];
};

const REST = { sideHem: at(200, 600), centreHem: at(0, 600) };

describe("beside a straight seam the end is one line", () => {
  it("from the seam further down to beside the zip at the waist, which is shorter by that", () => {
    const free = leaveFree(panel(), "side", { below: 150, beside: 6 });
    expect(free.points).toEqual({
      ...REST,
      centreWaist: at(0, 0),
      sideWaist: at(194, 0),
      cut1: at(200, 150),
      sideHip: at(200, 200),
      centreHip: at(0, 200),
    });
    expect(ringOf(free)).toEqual([
      line("centreWaist", "sideWaist", "waist"),
      line("sideWaist", "cut1", "side"),
      line("cut1", "sideHip", "side"),
      line("sideHip", "sideHem", "side"),
      line("sideHem", "centreHem", "hem"),
      line("centreHem", "centreHip", "centre"),
      line("centreHip", "centreWaist", "centre"),
    ]);
    expect({ ...free, points: 0, edges: 0 }).toEqual({ ...panel(), points: 0, edges: 0 });
  });

  it("over a corner of it, which stays marked where it was; a mere bend goes", () => {
    const free = leaveFree(panel(), "side", { below: 350, beside: 6 });
    expect([free.points.sideHip, free.points.cut1, free.points.sideWaist]).toEqual([
      at(200, 200),
      at(200, 350),
      at(194, 0),
    ]);
    expect(ringOf(free).slice(0, 3)).toEqual([
      line("centreWaist", "sideWaist", "waist"),
      line("sideWaist", "cut1", "side"),
      line("cut1", "sideHem", "side"),
    ]);
    const bent = leaveFree(panel(0, "bend000"), "side", { below: 350, beside: 6 });
    expect(bent.points).toEqual({
      ...REST,
      centreWaist: at(0, 0),
      sideWaist: at(194, 0),
      cut1: at(200, 350),
      centreHip: at(0, 200),
    });
    // Where it lies below, it stays.
    expect(leaveFree(panel(0, "bend000"), "side", { below: 150, beside: 6 }).points.bend000).toEqual(at(200, 200));
  });

  it("at the centre, which runs up to the waist, just so", () => {
    const free = leaveFree(panel(), "centre", { below: 350, beside: 8 });
    expect(free.points).toEqual({
      ...REST,
      centreWaist: at(8, 0),
      sideWaist: at(200, 0),
      sideHip: at(200, 200),
      cut1: at(0, 350),
      centreHip: at(0, 200),
    });
    expect(ringOf(free).slice(4)).toEqual([line("centreHem", "cut1", "centre"), line("cut1", "centreWaist", "centre")]);
  });

  it("however the panel is turned", () => {
    for (const degrees of [25, -70, 160])
      for (const seam of ["side", "centre"] as const) {
        const free = leaveFree(turned(panel(), degrees), seam, { below: 350, beside: 6 });
        expect(turned(leaveFree(panel(), seam, { below: 350, beside: 6 }), degrees).points).toEqual(closePoints(free));
      }
  });

  it("whichever edge the ring begins with", () => {
    for (const seam of ["side", "centre"] as const) {
      const first = leaveFree(panel(), seam, { below: 350, beside: 6 });
      for (const begin of [1, 2, 3, 4, 5]) {
        const other = leaveFree(panel(begin), seam, { below: 350, beside: 6 });
        expect(other.points).toEqual(first.points);
        expect(ringOf(other)).toEqual(ringOf(first));
      }
    }
  });

  it("ends 4 short of the seam's end at the furthest: two edges that can be cut", () => {
    for (const below of [596, 597, 900]) {
      expect(leaveFree(panel(), "side", { below, beside: 6 }).points.cut1).toEqual(at(200, 596));
      expect(leaveFree(panel(), "centre", { below, beside: 6 }).points.cut1).toEqual(at(0, 596));
    }
    expect(leaveFree(panel(), "side", { below: 595, beside: 6 }).points.cut1).toEqual(at(200, 595));
  });

  it("ends at a corner that lies less than 2 from there", () => {
    for (const seam of ["side", "centre"] as const) {
      const corner = seam === "side" ? "sideHip" : "centreHip";
      const x = seam === "side" ? 200 : 0;
      for (const below of [198.1, 200, 201.9]) {
        const free = leaveFree(panel(), seam, { below, beside: 6 });
        expect(free.points).toEqual({
          ...panel().points,
          centreWaist: at(seam === "side" ? 0 : 6, 0),
          sideWaist: at(seam === "side" ? 194 : 200, 0),
        });
        expect(ringOf(free)).toEqual(ringOf(panel()));
        expect(free.points[corner]).toEqual(at(x, 200));
      }
      for (const below of [197.9, 202.1])
        expect(leaveFree(panel(), seam, { below, beside: 6 }).points.cut1).toEqual(at(x, below));
    }
  });

  it("is not there where no such seam ends at the waist", () => {
    const piece = panel();
    expect(leaveFree(piece, "princess", { below: 150, beside: 6 })).toBe(piece);
    expect(leaveFree(piece, "hem", { below: 150, beside: 6 })).toBe(piece);
  });
});

describe("beside a seam that curves over the hip", () => {
  /** The same on either side: an arc from the waist to the hip whose ends lie above each other, straight on from there. */
  const corners: readonly CornerOf[] = [
    ["centreWaist", 0, 0, "waist"],
    ["sideWaist", 200, 0, "side"],
    ["sideHip", 200, 180, "side"],
    ["sideHem", 200, 600, "hem"],
    ["centreHem", 0, 600, "centre"],
    ["centreHip", 0, 180, "centre"],
  ];
  const hips = cornerPiece({
    name: "skirtBack",
    corners,
    curves: {
      sideWaist: [
        [212, 60],
        [212, 120],
      ],
      centreHip: [
        [-12, 120],
        [-12, 60],
      ],
    },
  });
  // Parabolas 9 wide at the middle of 180: 180 · (1 + 8/3 · (9/180)²) long but for terms in the fourth power.
  const along = 180 * (1 + (8 / 3) * (9 / 180) ** 2);

  it.each(["side", "centre"] as const)("the end follows the curve, and stands off it by less and less: %s", (seam) => {
    const free = leaveFree(hips, seam, { below: along, beside: 6 });
    const from = seam === "side" ? "sideWaist" : "centreHip";
    const inwards = seam === "side" ? -1 : 1;
    expect(free.points[seam === "side" ? "sideHip" : "centreHip"]).toEqual(at(seam === "side" ? 200 : 0, 180));
    expect(free.points[seam === "side" ? "sideWaist" : "centreWaist"]).toEqual(at(seam === "side" ? 194 : 6, 0));
    const [edge, before] = [free, hips].map((piece) => piece.edges.find((one) => one.from === from));
    expect(edge).toMatchObject({ seam, to: seam === "side" ? "sideHip" : "centreWaist" });
    const offAt = (t: number): number => {
      const [p, q] = [[free, edge] as const, [hips, before] as const].map(([piece, one]) =>
        one === undefined ? { x: NaN, y: NaN } : edgePointAt(curveOf(piece, one), t),
      );
      expect(p?.y).toBeCloseTo(q?.y ?? NaN, 1);
      return ((p?.x ?? NaN) - (q?.x ?? NaN)) * inwards;
    };
    // By what is left of 6 from the waist down: nearly even along so flat a curve.
    for (const t of [0, 0.25, 0.5, 0.75, 1])
      expect(Math.abs(offAt(t) - 6 * (seam === "side" ? 1 - t : t))).toBeLessThan(0.05);
    expect(pointOf(free, "sideHem")).toEqual({ x: 200, y: 600 });
    const other = leaveFree(turned(hips, 40), seam, { below: along, beside: 6 });
    expect(turned(free, 40).points).toEqual(closePoints(other));
  });
});
