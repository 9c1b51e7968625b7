/** What a fit says of itself: whole answers, their two sides, and doubts that are a tape's own. */
import { describe, expect, it } from "vitest";
import type { Pattern } from "../../../src/core/decisions/pattern";
import type { TissueLength } from "../../../src/core/decisions/tissue";
import { distance } from "../../../src/core/geometry/point";
import { draftBlocks, printNest } from "../../../src/core/nest/printedNest";
import { pointNames, pointOf, type PieceName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf } from "../../../src/core/pattern/pieceSet";
import { alsoFitted, anchorOf, fitToTissue, orderOfPlaces, toldAt } from "../../../src/core/tissue/fitToTissue";
import { finishedQuantity } from "../../../src/core/tissue/tissueModel";
import { measureTissue } from "../../../src/core/tissue/tapeWays";
import { testWork } from "../../support/works";
import {
  handBack,
  handBand,
  handBasque,
  handCentreFront,
  handCup,
  handFront,
  handSideFront,
  pieceOf,
} from "./handPieces";

const AT = 3;
const pattern: Pattern = { ...testWork.pattern, style: "sideDart" };
const { nest } = printNest(pattern, draftBlocks(pattern), 50);
const label = nest.labels[AT] ?? "";
const own = setOf(nest.sizes[AT] ?? []);
const above = setOf(nest.sizes[AT + 1] ?? []);
const standIn = (piece: PieceName, length: TissueLength): number =>
  measureTissue(pieceIn(own, piece), length, above[piece]) ?? NaN;

type Answers = Partial<Record<PieceName, Partial<Record<TissueLength, number>>>>;
const tissueOf = (pieces: Answers, size = label) => ({ size, pieces });
const fit = (pieces: Answers, more: Partial<Parameters<typeof fitToTissue>[0]> = {}) =>
  fitToTissue({ tissue: tissueOf(pieces), pattern, nest, sizeIndex: AT, ...more });
const near = (value: number, digits = 2): number => expect.closeTo(value, digits) as number;

const plain = fit({});
const wide = standIn("front", "neckWidth");
const answered: Answers = { front: { neckWidth: wide + 6 } };
const wider = fit(answered);

describe("a fit", () => {
  it("of a size that is gone is nothing at all", () => {
    const gone = fitToTissue({ tissue: tissueOf({ front: { neckWidth: 90 } }, "gone"), pattern, nest, sizeIndex: AT });
    expect(gone).toEqual({
      nest,
      measured: null,
      misfits: [],
      changed: [],
      unused: [],
      otherCut: [],
      doubt: { finished: { bust: null, waist: null, hip: null }, corners: {} },
      next: [],
      moves: { here: [], elsewhere: [] },
      basis: null,
    });
    expect(alsoFitted(gone, { nest, pattern, tissue: tissueOf({}) })).toBe(nest);
    expect(toldAt(gone, { sizeIndex: 0 })).toBe(gone);
  });

  it("of no answers says of which size it is, that nothing is changed, and what is doubted", () => {
    expect(plain).toMatchObject({ measured: AT, misfits: [], changed: [], unused: [], otherCut: [] });
    expect(plain.nest.source).toBe("fitted");
    expect(plain.nest.sizes).toHaveLength(nest.sizes.length);
    expect(plain.next.length).toBeGreaterThan(20);
    expect(plain.doubt.finished.waist).toBeGreaterThan(0);
  });

  it("says what one answer changed, the point that goes most first", () => {
    expect(wider.changed).toMatchObject([
      { piece: "front", length: "neckWidth", measured: wide + 6, standIn: near(wide), by: near(6) },
    ]);
    const moved = wider.changed[0]?.moved ?? [];
    expect(moved[0]).toEqual({ point: "sideNeck", by: near(6) });
    const by = moved.map((one) => one.by);
    expect(by).toEqual(by.toSorted((one, other) => other - one));
  });

  it("names what the pieces have not, and of a dart low on the side all that was measured of it", () => {
    const side = standIn("front", "sideLength");
    const low = (share: number) =>
      fit({
        cup: { neckWidth: 90 },
        front: { sideLength: side + 1, bustDartFromUnderarm: share * (side + 1), bustDartMouth: 40 },
      });
    expect(low(0.56)).toMatchObject({
      otherCut: [
        { piece: "front", length: "bustDartMouth" },
        { piece: "front", length: "bustDartFromUnderarm" },
      ],
      unused: [{ piece: "cup", length: "neckWidth" }],
    });
    expect(low(0.54).otherCut).toEqual([]);
  });
});

describe("shoulders", () => {
  const [front, back] = [standIn("front", "shoulderLength"), standIn("back", "shoulderLength")];
  const ease = (result: ReturnType<typeof fit>): number => {
    const set = setOf(result.nest.sizes[AT] ?? []);
    return (
      (measureTissue(pieceIn(set, "back"), "shoulderLength") ?? NaN) -
      (measureTissue(pieceIn(set, "front"), "shoulderLength") ?? NaN)
    );
  };

  it("have hers where both were measured", () => {
    const both = fit({ front: { shoulderLength: front + 8 }, back: { shoulderLength: back + 20 } });
    expect(both.misfits).toEqual([]);
    expect(ease(both)).toBeCloseTo(back - front + 12, 1);
    // In every size.
    const first = setOf(both.nest.sizes[0] ?? []);
    const plainFirst = setOf(nest.sizes[0] ?? []);
    const easeOf = (set: typeof first): number =>
      (measureTissue(pieceIn(set, "back"), "shoulderLength") ?? NaN) -
      (measureTissue(pieceIn(set, "front"), "shoulderLength") ?? NaN);
    expect(easeOf(first) - easeOf(plainFirst)).toBeCloseTo(12, 0);
  });
});

describe("a doubt", () => {
  it("of a point that was measured square across is the tape's", () => {
    expect(wider.doubt.corners.front?.sideNeck?.x).toBeCloseTo(2, 6);
  });

  it("is none at the centre line, and where pieces are laid on each other", () => {
    expect(plain.doubt.corners.front?.centreWaist).toEqual({ x: 0, y: 0 });
    expect(plain.doubt.corners.front?.centreNeck?.x).toBe(0);
    expect(plain.doubt.corners.front?.centreNeck?.y).toBeGreaterThan(1);
    expect(plain.doubt.corners.back?.centreWaist).toEqual({ x: 0, y: 0 });
  });

  it("is of a hip none where the pieces end at the waist", () => {
    expect(finishedQuantity(own, "hip") === null).toBe(plain.doubt.finished.hip === null);
  });

  it("told elsewhere is what it would have been told there, and grows away from the size measured", () => {
    const here = wider;
    const there = fit(answered, { sizeIndex: AT - 2 });
    expect(toldAt(here, { sizeIndex: AT - 2 }).doubt).toEqual(there.doubt);
    // What the chart prints of neither grows with the steps.
    expect(there.doubt.finished.bust ?? 0).toBeGreaterThanOrEqual(here.doubt.finished.bust ?? 0);
    expect(there.doubt.corners).toEqual(here.doubt.corners);
  });
});

describe("what is asked next", () => {
  it("is every length not measured, each once", () => {
    const keys = (list: readonly { readonly piece: string; readonly length: string }[]): string[] =>
      list.map(({ piece, length }) => `${piece} ${length}`).toSorted();
    const all = keys(orderOfPlaces({ pattern, nest, sizeIndex: AT }));
    expect(keys(plain.next)).toEqual(all);
    expect(keys(wider.next)).toEqual(all.filter((key) => key !== "front neckWidth"));
    expect(orderOfPlaces({ pattern, nest, sizeIndex: 99 })).toEqual([]);
  });

  it("saves what the doubt is then less, as it is when it is answered as the stand-in has it", () => {
    const first = plain.next.find(({ saves }) => saves.waist > 0.1) ?? plain.next[0];
    if (first === undefined) throw new Error("nothing to ask");
    const { piece, length, saves } = first;
    const after = fit({ [piece]: { [length]: standIn(piece, length) } });
    for (const level of ["bust", "waist"] as const) {
      const less = (plain.doubt.finished[level] ?? 0) - (after.doubt.finished[level] ?? 0);
      expect(saves[level]).toBeCloseTo(Math.max(0, less), 1);
    }
    for (const one of plain.next) expect(Math.min(...Object.values(one.saves))).toBeGreaterThanOrEqual(0);
  });
});

describe("other cups", () => {
  it("are moved alike: the same nest as the fit's own where it is the same", () => {
    const fitted = wider;
    const again = alsoFitted(fitted, { nest, pattern, tissue: tissueOf(answered) });
    expect(again.source).toBe("fitted");
    for (const [index, pieces] of again.sizes.entries())
      for (const piece of pieces) {
        const other = pieceIn(setOf(fitted.nest.sizes[index] ?? []), piece.name);
        for (const name of pointNames(piece))
          expect(distance(pointOf(piece, name), pointOf(other, name))).toBeLessThan(0.01);
      }
  });
});

it("pieces are laid on each other by the lowest corner of their centre line, or what stands for it", () => {
  expect(
    [handFront(), handBack(), handCentreFront(), handBasque("backBasque")].map((piece) => anchorOf(piece)),
  ).toEqual(["centreWaist", "centreWaist", "centreWaist", "centreWaist"]);
  expect([handCup(), handBand(), handSideFront()].map((piece) => anchorOf(piece))).toEqual([
    "underBustCentre",
    "centreWaist",
    "princessWaist",
  ]);
  const strap = pieceOf("strap", [
    ["strapFrontInner", 0, 0, "strap"],
    ["strapBackInner", 0, 300, "strap"],
    ["strapBackOuter", 20, 300, "edge"],
  ]);
  expect(anchorOf(strap)).toBe("strapBackInner");
  expect(anchorOf(pieceOf("other1", [["corner00", 0, 0, "edge"]]))).toBeUndefined();
});
