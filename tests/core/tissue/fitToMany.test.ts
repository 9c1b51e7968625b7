import { describe, expect, it } from "vitest";
import type { Pattern, StyleName } from "../../../src/core/decisions/pattern";
import type { TissueLength } from "../../../src/core/decisions/tissue";
import { seamLength } from "../../../src/core/girth/seamLength";
import { distance, angleAt } from "../../../src/core/geometry/point";
import { draftBlocks, printNest } from "../../../src/core/nest/printedNest";
import { pointOf, type Nest, type Piece, type PieceName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { seamPairsOf } from "../../../src/core/pattern/sewnTogether";
import { alsoFitted, fitToTissue } from "../../../src/core/tissue/fitToTissue";
import { tissuePlaces } from "../../../src/core/tissue/placesToMeasure";
import { measureTissue } from "../../../src/core/tissue/tapeWays";
import { testWork } from "../../support/works";

const AT = 3;
const patternOf = (style: StyleName): Pattern => ({ ...testWork.pattern, style });
const nestOf = (pattern: Pattern, difference = 50): Nest => printNest(pattern, draftBlocks(pattern), difference).nest;

const sideDart = patternOf("sideDart");
const nest = nestOf(sideDart);
const labelAt = nest.labels[AT] ?? "";
const sizeOf = (of: Nest, index: number): PieceSet => setOf(of.sizes[index] ?? []);
const before = (piece: PieceName, length: TissueLength): number =>
  measureTissue(pieceIn(sizeOf(nest, AT), piece), length, sizeOf(nest, AT + 1)[piece]) ?? NaN;

type Answers = Partial<Record<PieceName, Partial<Record<TissueLength, number>>>>;
const fit = (pieces: Answers, size = labelAt) =>
  fitToTissue({ tissue: { size, pieces }, pattern: sideDart, nest, sizeIndex: AT });
const moved = (pieces: Answers, piece: PieceName): Piece => pieceIn(sizeOf(fit(pieces).nest, AT), piece);

/** How far sewn seams are from each other, at the worst of all sizes. */
function worstSeam(of: Nest): number {
  return Math.max(
    ...of.sizes.flatMap((pieces) => {
      const set = setOf(pieces);
      const long = (names: readonly PieceName[], seam: Parameters<typeof seamLength>[1]) =>
        names.reduce((sum, name) => sum + seamLength(pieceIn(set, name), seam), 0);
      return seamPairsOf(set).map(({ seam, first, second, ease }) =>
        Math.abs(long(first, seam) - long(second, seam) - ease),
      );
    }),
  );
}

describe("one answer", () => {
  it("sets a dart's mouth, the dart where it was and the sewn waist as long as it was but for what its seams bear", () => {
    const front = moved({ front: { waistDartMouth: before("front", "waistDartMouth") + 12 } }, "front");
    const mouth = distance(pointOf(front, "waistDartInner"), pointOf(front, "waistDartOuter"));
    expect(mouth).toBeCloseTo(before("front", "waistDartMouth") + 12, 2);
    const standIn = seamLength(pieceIn(sizeOf(nest, AT), "front"), "waist");
    // Opened wider it takes cloth from the side: the seam is no shorter than a fourth of what the mouth took.
    expect(Math.abs(seamLength(front, "waist") - standIn)).toBeLessThan(3);
  });

  it("moves the side waist straight out by what the waist is wider", () => {
    const wide = before("back", "waistWidth");
    const back = moved({ back: { waistWidth: wide + 6 } }, "back");
    expect(distance(pointOf(back, "centreWaist"), pointOf(back, "sideWaist"))).toBeCloseTo(wide + 6, 2);
    expect(pointOf(back, "centreWaist").x).toBe(0);
  });

  it("lowers a neckline by just what it is deeper and leaves it square to the centre", () => {
    const front = moved({ front: { neckDepth: before("front", "neckDepth") + 30 } }, "front");
    expect(pointOf(front, "centreNeck").y - pointOf(front, "sideNeck").y).toBeCloseTo(
      before("front", "neckDepth") + 30,
      2,
    );
    const neck = front.edges.find(({ from }) => from === "centreNeck");
    expect(neck?.curve?.c1.y).toBeCloseTo(pointOf(front, "centreNeck").y, 6);
    expect(pointOf(front, "centreNeck").x).toBe(0);
  });

  it("as the stand-in has it changes nothing", () => {
    const result = fit({
      front: { sideLength: before("front", "sideLength"), neckWidth: before("front", "neckWidth") },
    });
    for (const piece of result.nest.sizes[AT] ?? [])
      for (const [name, point] of Object.entries(piece.points))
        expect(distance(point.at, pointOf(pieceIn(sizeOf(nest, AT), piece.name), name as never))).toBeLessThan(0.01);
    expect(result.misfits).toEqual([]);
    expect(result.changed.map(({ by }) => Math.abs(by) < 1e-6)).toEqual([true, true]);
  });

  it("of a step changes the size above and not the one measured", () => {
    const step = before("back", "waistStep");
    const result = fit({ back: { waistStep: step + 3 } });
    const at = (of: Nest, index: number) => pointOf(pieceIn(sizeOf(of, index), "back"), "sideWaist").x;
    expect(at(result.nest, AT)).toBeCloseTo(at(nest, AT), 2);
    expect(at(result.nest, AT + 1) - at(result.nest, AT)).toBeCloseTo(step + 3, 1);
    // Two sizes below, the other way; but of what a tape has of a step less than the whole is believed there: not 6, and not nothing.
    const without = at(fit({ back: { waistStep: step } }).nest, AT - 2);
    expect(without - at(result.nest, AT - 2)).toBeGreaterThan(0.5);
    expect(without - at(result.nest, AT - 2)).toBeLessThan(6);
  });
});

describe("many answers", () => {
  const STYLES: readonly StyleName[] = ["sideDart", "midriff", "princessArmhole", "princessShoulder"];
  it.each(STYLES)("are all met on %s, in every size and cup what is sewn together matches", (style) => {
    const pattern = patternOf(style);
    const own = nestOf(pattern);
    const places = tissuePlaces({ pattern, nest: own, sizeIndex: AT }).slice(0, 14);
    const pieces: Answers = {};
    for (const [i, { piece, length, standIn }] of places.entries())
      pieces[piece] = { ...pieces[piece], [length]: standIn + (length.endsWith("Step") ? 1 : i % 2 === 0 ? 5 : -4) };
    const tissue = { size: own.labels[AT] ?? "", pieces };
    const result = fitToTissue({ tissue, pattern, nest: own, sizeIndex: AT });
    const named = result.misfits.map(({ piece, length }) => `${piece}.${length}`);
    for (const { piece, length } of places) {
      const set = sizeOf(result.nest, AT);
      const got = measureTissue(pieceIn(set, piece), length, sizeOf(result.nest, AT + 1)[piece]) ?? NaN;
      const off = Math.abs(got - (pieces[piece]?.[length] ?? NaN));
      // Met, or named.
      expect(off > 0.05).toBe(named.includes(`${piece}.${length}`));
    }
    expect(worstSeam(result.nest)).toBeLessThan(0.05);
    expect(worstSeam(alsoFitted(result, { nest: nestOf(pattern, 100), pattern, tissue }))).toBeLessThan(0.05);
  });

  it("keep dart legs equal and corners of the centre square", () => {
    const front = moved(
      { front: { bustDartMouth: 48, waistDartLength: 130, sideLength: 215, centreLength: 370 } },
      "front",
    );
    for (const { apex, inner, outer } of front.darts)
      expect(distance(pointOf(front, apex), pointOf(front, inner))).toBeCloseTo(
        distance(pointOf(front, apex), pointOf(front, outer)),
        1,
      );
    const last = front.edges.find(({ to }) => to === "centreWaist");
    const corner = pointOf(front, "centreWaist");
    const square = angleAt(corner, pointOf(front, "centreNeck"), last?.curve?.c2 ?? corner);
    expect((square * 180) / Math.PI).toBeCloseTo(90, 4);
  });
});

describe("answers that contradict", () => {
  it("are named with their amount and what they contradict, and one of them stays met exactly", () => {
    const side = before("back", "sideLength");
    const result = fit({
      back: { sideLength: side },
      front: { sideLength: side + 30, neckWidth: before("front", "neckWidth") },
    });
    expect(result.misfits).toHaveLength(1);
    const [misfit] = result.misfits;
    expect(misfit?.length).toBe("sideLength");
    expect(Math.abs(misfit?.by ?? 0)).toBeCloseTo(30, 1);
    expect(misfit?.against.map(({ length }) => length)).toEqual(["sideLength"]);
    expect(misfit?.withinTape).toBe(false);
  });

  it("by no more than a tape's doubt are named as such", () => {
    const side = before("back", "sideLength");
    const { misfits } = fit({ back: { sideLength: side }, front: { sideLength: side + 3 } });
    expect(misfits.map(({ withinTape }) => withinTape)).toEqual([true]);
    expect(Math.abs(misfits[0]?.by ?? 0)).toBeCloseTo(3, 1);
  });
});

describe("what is told", () => {
  it("fits nothing where the chart has no such size any more", () => {
    const result = fit({ front: { neckWidth: 90 } }, "gone");
    expect(result.measured).toBeNull();
    expect(result.nest).toBe(nest);
  });

  it("names answers to lengths that the pieces do not have", () => {
    expect(fit({ cup: { neckWidth: 90 } }).unused).toEqual([{ piece: "cup", length: "neckWidth" }]);
  });

  it("is a measured point's doubt no larger than the tape's, and smaller than it was", () => {
    const answers = { front: { neckWidth: before("front", "neckWidth") } };
    const plain = fit({}).doubt.corners.front?.sideNeck?.x ?? 0;
    expect(fit(answers).doubt.corners.front?.sideNeck?.x).toBeCloseTo(2, 6);
    expect(plain).toBeGreaterThan(2);
  });

  it.each(["sideDart", "princessArmhole"] as const)("is asked first of what makes the waist, on %s", (style) => {
    const pattern = patternOf(style);
    const first = tissuePlaces({ pattern, nest: nestOf(pattern), sizeIndex: AT })
      .slice(0, 10)
      .map(({ piece, length }) => `${piece}.${length}`);
    const fronts = style === "sideDart" ? ["front.waistWidth", "front.waistDartMouth"] : ["sideFront.waistWidth"];
    // A width with its dart open tells nothing without the mouth, nor a mouth without the width.
    expect(first).toEqual(expect.arrayContaining([...fronts, "back.waistWidth", "back.waistDartMouth"]));
  });

  it("is a finished waist less doubted with each answer that is asked for first", () => {
    const places = tissuePlaces({ pattern: sideDart, nest, sizeIndex: AT });
    const waist = (count: number): number => {
      const pieces: Answers = {};
      for (const { piece, length, standIn } of places.slice(0, count))
        pieces[piece] = { ...pieces[piece], [length]: standIn };
      return fit(pieces).doubt.finished.waist ?? NaN;
    };
    expect(waist(places.length)).toBeLessThan(waist(0));
  });

  it("stays unmoved by absurd answers: no throw, no number that is none", () => {
    for (const value of [0, 1, 3000]) {
      const result = fit({ front: { waistDartMouth: value, sideLength: value, bustPointFromSideNeck: value } });
      for (const { points } of result.nest.sizes.flat())
        for (const { at } of Object.values(points)) expect(Number.isFinite(at.x + at.y)).toBe(true);
    }
  });
});
