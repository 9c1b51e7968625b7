/** The style made from the block: what it is made by keeps the block's seams, and each cup adds its own difference. */
import { describe, expect, it } from "vitest";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { angleAt, distance } from "../../../src/core/geometry/point";
import { levelWidth } from "../../../src/core/girth/levelWidth";
import { pointOf, type Piece } from "../../../src/core/pattern/piece";
import { sideDartFront, withSideDart } from "../../../src/core/style/sideDartStyle";
import { seamByBezierJs } from "../../support/independent";

const chart = { sizes: [], draftedDifference: 50, cups: [] };
const ease = { bust: 80, waist: 40, hip: 50 };
const blockFor = (bust: number): Piece =>
  draftFrontBlock(draftMeasuresFor({ label: "x", bust, waist: bust - 180, hip: bust + 60 }, chart, ease));

function frontFor(block: Piece, difference: number): Piece {
  const made = sideDartFront(block, difference);
  if (!made.ok) throw new Error(made.failure.code);
  return made.value;
}

describe.each([760, 880, 1000, 1180])("at bust %d", (bust) => {
  const block = blockFor(bust);

  it.each([35, 50, 75, 100])(
    "cup difference %d: side and waist seams as long as the block's, by bezier-js",
    (difference) => {
      const front = frontFor(block, difference);
      for (const seam of ["side", "waist", "shoulder", "neck"] as const)
        expect(seamByBezierJs(front, seam)).toBeCloseTo(seamByBezierJs(block, seam), 2);
    },
  );

  // The block is drafted for a difference of 50 mm; a half front carries half of what a cup has more.
  it.each([35, 50, 75, 100])(
    "cup difference %d: the half front is wider by half of what it has over 50 mm",
    (difference) => {
      const width = (piece: Piece): number => levelWidth(piece, "bust") ?? NaN;
      expect(width(frontFor(block, difference)) - width(block)).toBeCloseTo((difference - 50) / 2, 6);
    },
  );

  it("each larger cup has a wider side dart and a wider waist dart", () => {
    const mouths = [35, 50, 75, 100].map((difference) => {
      const front = frontFor(block, difference);
      return (["sideDart", "waistDart"] as const).map((name) =>
        distance(pointOf(front, `${name}Inner`), pointOf(front, `${name}Outer`)),
      );
    });
    for (const index of [0, 1]) {
      const row = mouths.map((pair) => pair[index] ?? NaN);
      expect(row).toEqual(row.toSorted((a, b) => a - b));
      expect(new Set(row.map((mouth) => Math.round(mouth))).size).toBe(4);
    }
  });

  it("the side dart opens 45 mm below the bust line (common practice, no source), or a third down a short seam", () => {
    const pivoted = withSideDart(block);
    const edge = block.edges.find(({ from }) => from === "sideBust");
    if (edge === undefined) throw new Error("side");
    const whole = seamByBezierJs({ ...block, edges: [edge] }, "side");
    const upper = pivoted.edges.find(({ from, to }) => from === "sideBust" && to === "sideDartInner");
    if (upper === undefined) throw new Error("upper side");
    expect(seamByBezierJs({ ...pivoted, edges: [upper] }, "side")).toBeCloseTo(Math.min(45, whole / 3), 2);
  });

  it("the darts keep their angle but for ending short of the bust point: wider by the ratio of lengths", () => {
    const pivoted = withSideDart(block);
    const front = frontFor(block, 50);
    const [at, inner, outer] = [
      pointOf(pivoted, "bustPoint"),
      pointOf(front, "sideDartInner"),
      pointOf(front, "sideDartOuter"),
    ];
    const apex = pointOf(front, "sideDartApex");
    // The same mouth (but for truing) seen from nearer: tan of half the angle grows as the length shrinks.
    const ratio = distance(at, inner) / distance(apex, inner);
    expect(Math.tan(angleAt(apex, inner, outer) / 2) / Math.tan(angleAt(at, inner, outer) / 2)).toBeCloseTo(ratio, 1);
    expect(ratio).toBeGreaterThan(1);
  });
});

it("refuses a cup so small that a dart would close, naming the most that works", () => {
  const made = sideDartFront(blockFor(880), 0);
  expect(made).toMatchObject({ ok: false, failure: { code: "fullBust/dart-vanishes" } });
  const most = made.ok ? NaN : made.failure.most;
  expect(most).toBeLessThan(0);
  expect(sideDartFront(blockFor(880), 50 + 2 * (most + 0.01)).ok).toBe(true);
});
