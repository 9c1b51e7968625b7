/** The ease that the page tells of her pieces is the plan's: held against sums done in the head. */
import { describe, expect, it } from "vitest";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { easeFound } from "../../../src/core/nest/easeFound";
import type { TracedNest } from "../../../src/core/ownPieces/ownReading";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece } from "../../../src/core/pattern/piece";
import { straightNest } from "../../support/straightNest";
import { testWork } from "../../support/works";

const chart: SizeChart = {
  sizes: [
    { label: "8", bust: 800, waist: 620, hip: 860 },
    { label: "10", bust: 840, waist: 660, hip: 900 },
  ],
  draftedDifference: 50,
  cups: [
    { label: "B", difference: 50 },
    { label: "C", difference: 75 },
  ],
};
const pattern: Pattern = { ...testWork.pattern, chart, length: "waist" };
/** Half widths: bust 230 + 210, waist 200 − 30 and 190 − 25; size 10 is 10 more each. */
const traced = (cup: string | null): TracedNest => ({
  ...straightNest([
    { label: "8", front: { bust: 230, waist: 200, dart: 30 }, back: { bust: 210, waist: 190, dart: 25 } },
    { label: "10", front: { bust: 240, waist: 210, dart: 30 }, back: { bust: 220, waist: 200, dart: 25 } },
  ]),
  cup,
});

/** As wide at the waist as said, and 30 mm wider at the hip. */
function basque(name: "frontBasque" | "backBasque", waist: number): Piece {
  const at = (x: number, y: number, level: "waist" | "hip") => ({ at: piecePoint(x, y), level });
  return {
    name,
    points: {
      centreWaist: at(0, 400, "waist"),
      sideWaist: at(waist, 400, "waist"),
      sideHip: at(waist + 30, 600, "hip"),
      centreHip: at(0, 600, "hip"),
    },
    edges: [
      { from: "centreWaist", to: "sideWaist", seam: "waist", curve: null, mouthOf: null },
      { from: "sideWaist", to: "sideHip", seam: "side", curve: null, mouthOf: null },
      { from: "sideHip", to: "centreHip", seam: "hem", curve: null, mouthOf: null },
      { from: "centreHip", to: "centreWaist", seam: "centre", curve: null, mouthOf: null },
    ],
    darts: [],
    levelLines: [
      { level: "waist", along: { seam: "waist" } },
      { level: "hip", along: { points: ["centreHip", "sideHip"] } },
    ],
    centreOnFold: false,
  };
}

describe("ease found", () => {
  it("is what the finished girths are more than the chart's bodies", () => {
    // Twice 440 less 800, twice 335 less 620; twice 460 less 840, twice 355 less 660.
    expect(easeFound(traced("B"), pattern)).toEqual([
      { size: "8", ease: { bust: 80, waist: 50, hip: null } },
      { size: "10", ease: { bust: 80, waist: 50, hip: null } },
    ]);
  });

  it("goes by the bust of the cup that is drawn: 25 mm more than the chart's", () => {
    expect(easeFound(traced("C"), pattern).map(({ ease }) => ease.bust)).toEqual([55, 55]);
  });

  it("counts the waist on the bodice, not on the basques that are sewn to it, and the hip on them", () => {
    const nest = traced("B");
    const long: TracedNest = {
      ...nest,
      sizes: nest.sizes.map(({ label, pieces }, index) => ({
        label,
        pieces: [...pieces, basque("frontBasque", 170 + 10 * index), basque("backBasque", 165 + 10 * index)],
      })),
    };
    // Hip: twice 200 + 195, less 860.
    for (const { ease } of easeFound(long, { ...pattern, length: "hip" })) {
      expect(ease.waist).toBeCloseTo(50, 6);
      expect(ease.hip).toBeCloseTo(-70, 6);
    }
  });
});
