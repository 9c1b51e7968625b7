/** A second size by steps off the tissue: pieces of straight lines, whose points move by shares done in the head. */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { Tissue } from "../../../src/core/decisions/tissue";
import { piecePoint } from "../../../src/core/geometry/point";
import { stepSize } from "../../../src/core/nest/stepSizes";
import { pointNames, pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { straightNest } from "../../support/straightNest";

/** Steps: bust 40 and 60, waist 30 and 40, hip 20 and 50. */
const chart: SizeChart = {
  sizes: [
    { label: "8", bust: 800, waist: 600, hip: 850 },
    { label: "10", bust: 840, waist: 630, hip: 870 },
    { label: "12", bust: 900, waist: 670, hip: 920 },
  ],
  draftedDifference: 50,
  cups: [],
};
const drawn = invariant(
  straightNest([{ label: "10", front: { bust: 200, waist: 180, dart: 20 }, back: { bust: 200, waist: 160, dart: 20 } }])
    .sizes[0],
  "size",
).pieces;
const front = invariant(drawn[0], "front");
const back = invariant(drawn[1], "back");
const steps = { front: { bustStep: 10, waistStep: 12 }, back: { bustStep: 8, waistStep: 4 } };

const stepOf = (pieces: readonly Piece[], tissue: Tissue | undefined, towards: 1 | -1 = 1) =>
  stepSize({ index: 1, pieces }, { chart, tissue }, towards);
const across = (piece: Piece | undefined): Partial<Record<PointName, number>> => {
  const found = invariant(piece, "piece");
  return Object.fromEntries(pointNames(found).map((name) => [name, Math.round(pointOf(found, name).x * 1e6) / 1e6]));
};
const pieceNamed = (pieces: readonly Piece[], name: string): Piece =>
  invariant(
    pieces.find((one) => one.name === name),
    name,
  );

describe("the size beside one", () => {
  it("goes out by the step at each level, by less the nearer to the centre, at the same heights", () => {
    const { next, alike } = stepOf(drawn, { size: "10", pieces: steps });
    expect(next.index).toBe(2);
    expect([...alike]).toEqual([]);
    // Above the waist 10 of 200, so a twentieth more each; the side waist 12.
    expect(across(next.pieces[0])).toEqual({
      centreNeck: 0,
      sideNeck: 73.5,
      shoulderTip: 178.5,
      armholeTouch: 168,
      underarm: 210,
      sideBust: 210,
      sideDartInner: 205.8,
      sideDartOuter: 201.6,
      sideWaist: 192,
      waistDartOuter: 110.25,
      waistDartInner: 89.25,
      centreWaist: 0,
      centreBust: 0,
      bustPoint: 99.75,
      waistDartApex: 99.75,
      sideDartApex: 136.5,
    });
    // 8 of 200: a twenty-fifth more; the side waist 4.
    expect(across(next.pieces[1])).toEqual({
      centreNeck: 0,
      sideNeck: 72.8,
      shoulderTip: 182,
      armholeTouch: 176.8,
      underarm: 208,
      sideBust: 208,
      sideWaist: 164,
      waistDartOuter: 109.2,
      waistDartInner: 88.4,
      centreWaist: 0,
      centreBust: 0,
      waistDartApex: 98.8,
    });
    for (const name of pointNames(front))
      expect(pointOf(invariant(next.pieces[0], "front"), name).y).toBe(pointOf(front, name).y);
  });

  it("goes in by as much towards the size below, as the chart's step there stands to where it was measured", () => {
    const { next } = stepOf(drawn, { size: "10", pieces: steps }, -1);
    expect(next.index).toBe(0);
    // Measured from 10 to 12; from 8 to 10 the chart has 40 for 60, and 30 for 40: 6 2/3 and 9.
    expect(pointOf(invariant(next.pieces[0], "front"), "sideBust").x).toBeCloseTo(200 - 20 / 3, 9);
    expect(pointOf(invariant(next.pieces[0], "front"), "sideWaist").x).toBeCloseTo(171, 9);
    // 8 and 4 on the back.
    expect(pointOf(invariant(next.pieces[1], "back"), "sideBust").x).toBeCloseTo(200 - 16 / 3, 9);
    expect(pointOf(invariant(next.pieces[1], "back"), "sideWaist").x).toBeCloseTo(157, 9);
  });

  it("takes a step as it was measured where the chart does not grow, or says no more, there", () => {
    const flat: SizeChart = {
      ...chart,
      sizes: [
        { label: "8", bust: 800, waist: 600, hip: 850 },
        { label: "10", bust: 840, waist: 600, hip: 870 },
        { label: "12", bust: 900, waist: 670, hip: 920 },
      ],
    };
    const up = stepSize({ index: 1, pieces: drawn }, { chart: flat, tissue: { size: "8", pieces: steps } }, 1);
    // The bust by 60 for 40; the waist does not grow where it was measured.
    expect(pointOf(invariant(up.next.pieces[0], "front"), "sideBust").x).toBeCloseTo(215, 9);
    expect(pointOf(invariant(up.next.pieces[0], "front"), "sideWaist").x).toBeCloseTo(192, 9);
    const past = stepSize({ index: 1, pieces: drawn }, { chart, tissue: { size: "12", pieces: steps } }, 1);
    expect(pointOf(invariant(past.next.pieces[0], "front"), "sideBust").x).toBeCloseTo(210, 9);
  });

  it("takes a step as it was measured below the first size of the chart", () => {
    const { next } = stepSize({ index: 0, pieces: drawn }, { chart, tissue: { size: "10", pieces: steps } }, -1);
    expect(next.index).toBe(-1);
    expect(across(next.pieces[0])).toMatchObject({ sideBust: 190, sideWaist: 168 });
  });

  it("measures the bust at the underarm where a piece has no other side, and moves none that ends at the centre", () => {
    const { sideBust: _, ...above } = front.points;
    const cup: Piece = {
      ...front,
      name: "cup",
      points: { ...above, underarm: { at: piecePoint(160, 200), level: "underarm" } },
    };
    const cupSteps = { cup: { bustStep: 8, waistStep: 6 } };
    // 95 of 160; half a millimetre more each ten.
    expect(across(stepOf([cup], { size: "10", pieces: cupSteps }).next.pieces[0])).toMatchObject({
      underarm: 168,
      bustPoint: 99.75,
    });
    const narrow: Piece = {
      ...cup,
      points: { ...cup.points, underarm: { at: piecePoint(0, 200), level: "underarm" } },
    };
    expect(across(stepOf([narrow], { size: "10", pieces: cupSteps }).next.pieces[0])).toMatchObject({
      underarm: 0,
      bustPoint: 95,
      centreNeck: 0,
    });
  });

  it("lets nothing beyond the side go further than it, nor anything beyond the centre", () => {
    const odd: Piece = {
      ...front,
      points: {
        ...front.points,
        shoulderTip: { at: piecePoint(230, 40), level: "shoulder" },
        centreNeck: { at: piecePoint(-4, 80), level: "neck" },
      },
    };
    const { next } = stepOf([odd, back], { size: "10", pieces: steps });
    expect(across(next.pieces[0])).toMatchObject({ shoulderTip: 240, centreNeck: -4 });
  });

  it("draws handles with the level of the point that they belong to", () => {
    const curved: Piece = {
      ...front,
      edges: front.edges.map((edge) =>
        edge.from === "sideDartOuter"
          ? { ...edge, curve: { c1: piecePoint(190, 340), c2: piecePoint(90, 370) } }
          : edge,
      ),
    };
    const { next } = stepOf([curved, back], { size: "10", pieces: steps });
    const made = invariant(next.pieces[0], "front");
    const of = made.edges.find(({ from }) => from === "sideDartOuter");
    // 190 at the bust: a twentieth; 90 at the waist: half of its 180, so half of 12.
    expect(of?.curve).toEqual({ c1: piecePoint(199.5, 340), c2: piecePoint(96, 370) });
    expect(made.edges.filter(({ curve }) => curve === null)).toHaveLength(front.edges.length - 1);
  });

  it("keeps a level as it is on every piece where one has no step of it, and says which", () => {
    const { next, alike } = stepOf(drawn, { size: "10", pieces: { ...steps, back: { bustStep: 8 } } });
    expect([...alike]).toEqual(["waist"]);
    expect(across(next.pieces[0])).toMatchObject({ sideBust: 210, sideWaist: 180 });
    expect(across(next.pieces[1])).toMatchObject({ sideBust: 208, sideWaist: 160 });
  });

  it.each([undefined, { size: "11", pieces: steps }])(
    "is just as large, at bust and waist, where no line of the chart was measured",
    (tissue) => {
      const { next, alike } = stepOf(drawn, tissue);
      expect([...alike]).toEqual(["bust", "waist"]);
      expect(next.pieces).toEqual(drawn);
    },
  );

  it("asks basques for the hip and not for the waist, though their waist goes by its own step if there is one", () => {
    const at = (x: number, y: number, level: "waist" | "hip") => ({ at: piecePoint(x, y), level });
    const basque: Piece = {
      name: "frontBasque",
      points: {
        centreWaist: at(0, 0, "waist"),
        sideWaist: at(160, 0, "waist"),
        sideHip: at(200, 180, "hip"),
        sideHem: at(100, 200, "hip"),
      },
      edges: [],
      darts: [],
      levelLines: [
        { level: "waist", along: { seam: "waist" } },
        { level: "hip", along: { points: ["centreWaist", "sideHip"] } },
      ],
      centreOnFold: true,
    };
    const tissueOf = (frontBasque: Tissue["pieces"]["frontBasque"]): Tissue => ({
      size: "10",
      pieces: { ...steps, ...(frontBasque === undefined ? {} : { frontBasque }) },
    });
    const none = stepOf([...drawn, basque], tissueOf(undefined));
    expect([...none.alike]).toEqual(["hip"]);
    expect(pieceNamed(none.next.pieces, "frontBasque")).toEqual(basque);
    const hip = stepOf([...drawn, basque], tissueOf({ hipStep: 12 }));
    expect([...hip.alike]).toEqual([]);
    expect(across(pieceNamed(hip.next.pieces, "frontBasque"))).toEqual({
      centreWaist: 0,
      sideWaist: 160,
      sideHip: 212,
      // Half as far out.
      sideHem: 106,
    });
    const both = stepOf([...drawn, basque], tissueOf({ hipStep: 12, waistStep: 8 }), -1);
    // By the chart's steps: 20 for 50 at the hip, 30 for 40 at the waist.
    expect(across(pieceNamed(both.next.pieces, "frontBasque"))).toEqual({
      centreWaist: 0,
      sideWaist: 154,
      sideHip: 195.2,
      sideHem: 97.6,
    });
  });
});
