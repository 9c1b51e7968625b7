/** Claims about a lining by lengths that stand beside them: what each measures, and what it is held to. mm. */
import { describe, expect, it } from "vitest";
import { checkLining } from "../../../src/core/dress/checkLining";
import type { LiningDraft, SkirtLiningFigures } from "../../../src/core/lining/liningDraft";
import type { FinishedWaist } from "../../../src/core/parts/dressBody";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { cornerPiece } from "../../support/cornerPiece";
import { closed, waistOf } from "../../support/linings";
import { seamedPiece } from "../../support/seamedPiece";

const NONE: PieceSet = {};
const nothing: LiningDraft = {
  bodice: [NONE, NONE],
  skirt: [NONE, NONE],
  skirtFigures: null,
  free: null,
  beside: 6,
  levels: [],
  parts: [],
  notes: [],
};

const claims = (
  lining: Partial<LiningDraft>,
  waist: FinishedWaist,
  closure = closed("centreBack", 180),
): readonly unknown[] =>
  checkLining({ lining: { ...nothing, ...lining }, waist, closure }).map(
    ({ name, ok, measured, expected, tolerance }) => [name, ok, measured, expected, tolerance],
  );

const front = seamedPiece("front", { waist: 190, side: 300 });
const back = seamedPiece("back", { waist: 174, side: 300 });
const bodice = setOf([front, back]);
const even = waistOf({ front: 190, back: 180 });

it("nothing is claimed of what is not there", () => {
  expect(checkLining({ lining: null, waist: even, closure: closed("side", 0) })).toEqual([]);
  expect(claims({}, even)).toEqual([]);
});

describe("the waist of a lining", () => {
  const both: LiningDraft["bodice"] = [bodice, bodice];

  it("is the finished waist, less 6 where it opens: at the centre back of both halves, told once where they are alike", () => {
    expect(claims({ bodice: both }, even)).toEqual([
      ["liningWaistWalks", true, 190, 190, 0.05],
      ["liningWaistWalks", true, 174, 174, 0.05],
      ["liningSidesWalk", true, 300, 300, 0.05],
    ]);
  });

  it("at the side it opens in front and behind on the left half alone", () => {
    const left = setOf([seamedPiece("front", { waist: 184, side: 300 }), back]);
    const right = setOf([front, seamedPiece("back", { waist: 180, side: 300 })]);
    expect(claims({ bodice: [left, right] }, even, closed("side", 180))).toEqual([
      ["liningWaistWalks", true, 184, 184, 0.05],
      ["liningWaistWalks", true, 174, 174, 0.05],
      ["liningSidesWalk", true, 300, 300, 0.05],
      ["liningWaistWalks", true, 190, 190, 0.05],
      ["liningWaistWalks", true, 180, 180, 0.05],
      ["liningSidesWalk", true, 300, 300, 0.05],
    ]);
  });

  it("is told of each half where anything of them is unlike: bodice, skirt or the waist itself", () => {
    const same = setOf([front, back]);
    expect(claims({ bodice: [bodice, same] }, even)).toHaveLength(6);
    const skirt = setOf([seamedPiece("skirtFront", { waist: 190 }), seamedPiece("skirtBack", { waist: 174 })]);
    expect(claims({ bodice: both, skirt: [skirt, { ...skirt }] }, even)).toHaveLength(10);
    const uneven = waistOf({ front: 190, back: 180 }, { front: 191, back: 178 });
    expect(claims({ bodice: both }, uneven)).toEqual([
      ["liningWaistWalks", true, 190, 190, 0.05],
      ["liningWaistWalks", true, 174, 174, 0.05],
      ["liningSidesWalk", true, 300, 300, 0.05],
      ["liningWaistWalks", false, 190, 191, 0.05],
      ["liningWaistWalks", false, 174, 172, 0.05],
      ["liningSidesWalk", true, 300, 300, 0.05],
    ]);
  });

  it("is of all pieces of a side but its basque, to a twentieth of a millimetre", () => {
    const many = setOf([
      seamedPiece("centreFront", { waist: 80 }),
      seamedPiece("sideFront", { waist: 110 }),
      seamedPiece("back", { waist: 174 }),
      seamedPiece("frontBasque", { waist: 190 }),
      seamedPiece("backBasque", { waist: 174 }),
    ]);
    expect(claims({ bodice: [many, many] }, even)).toEqual([
      ["liningWaistWalks", true, 190, 190, 0.05],
      ["liningWaistWalks", true, 174, 174, 0.05],
      ["liningSidesWalk", true, 190, 190, 0.05],
      ["liningSidesWalk", true, 174, 174, 0.05],
    ]);
    const ok = (waist: number): boolean[] => {
      const set = setOf([seamedPiece("front", { waist }), back]);
      return checkLining({ lining: { ...nothing, bodice: [set, set] }, waist: even, closure: closed("centreBack", 0) })
        .filter(({ name }) => name === "liningWaistWalks")
        .map((claim) => claim.ok);
    };
    expect([189.94, 189.96, 190.04, 190.06].map(ok)).toEqual([
      [false, true],
      [true, true],
      [true, true],
      [false, true],
    ]);
    // Within means with what it is within: nothing at all is so of a twentieth.
    const bare = setOf([seamedPiece("front", {}), seamedPiece("back", {})]);
    expect(claims({ bodice: [bare, bare], beside: 0 }, waistOf({ front: 0.05, back: 0.06 }))).toEqual([
      ["liningWaistWalks", true, 0, 0.05, 0.05],
      ["liningWaistWalks", false, 0, 0.06, 0.05],
    ]);
  });
});

describe("the seams of a lining", () => {
  it("are as long as what they are sewn to, with the ease they have", () => {
    const set = setOf([
      seamedPiece("front", { waist: 190, side: 298, shoulder: 120 }),
      { ...seamedPiece("back", { waist: 174, side: 300, shoulder: 124 }), seamEase: { shoulder: 4 } },
    ]);
    expect(claims({ bodice: [set, set] }, even).slice(2)).toEqual([
      ["liningSidesWalk", true, 124, 124, 0.05],
      ["liningSidesWalk", false, 300, 298, 0.05],
    ]);
    const several = setOf([
      seamedPiece("centreFront", { shoulder: 50, princess: 400 }),
      seamedPiece("sideFront", { shoulder: 70, princess: 401, side: 300 }),
      seamedPiece("back", { shoulder: 126, side: 300 }),
    ]);
    expect(claims({ bodice: [several, several], beside: 0 }, waistOf({ front: 0, back: 0 })).slice(2)).toEqual([
      ["liningSidesWalk", true, 126, 126, 0.05],
      ["liningSidesWalk", false, 401, 400, 0.05],
      ["liningSidesWalk", true, 300, 300, 0.05],
    ]);
  });

  /** A panel 600 deep whose side is so much longer, with a corner of the V in it at the side or at the centre. */
  const panel = (name: PieceName, longer: number, at: "side" | "centre" | null): Piece =>
    cornerPiece({
      name,
      corners: [
        ["centreWaist", 0, 0, "waist"],
        ["sideWaist", 174, 0, "side"],
        ...(at === "side" ? ([["cut1", 174, 205, "side"]] as const) : []),
        ["sideHem", 174, 600 + longer, "hem"],
        ["centreHem", 0, 600, "centre"],
        ...(at === "centre" ? ([["cut1", 0, 205, "centre"]] as const) : []),
      ],
    });
  const sides = (first: Piece, second: Piece): readonly unknown[] => {
    const set = setOf([first, second]);
    return claims({ skirt: [set, set] }, even).slice(2);
  };

  it("may differ by two tenths where an end of them is left free, and where not by a twentieth", () => {
    const [long, short] = [expect.closeTo(600.15, 6), expect.closeTo(600, 6)];
    const [free, sewn] = [
      ["liningSidesWalk", true, long, short, 0.2],
      ["liningSidesWalk", false, long, short, 0.05],
    ];
    expect(sides(panel("skirtFront", 0, "side"), panel("skirtBack", 0.15, "side"))).toEqual([free]);
    expect(sides(panel("skirtFront", 0, "side"), panel("skirtBack", 0.15, null))).toEqual([free]);
    expect(sides(panel("skirtFront", 0, null), panel("skirtBack", 0.15, "side"))).toEqual([free]);
    expect(sides(panel("skirtFront", 0, null), panel("skirtBack", 0.15, "centre"))).toEqual([sewn]);
    expect(sides(panel("skirtFront", 0, null), panel("skirtBack", 0.15, null))).toEqual([sewn]);
    expect(sides(panel("skirtFront", 0, "side"), panel("skirtBack", 0.25, "side"))).toMatchObject([
      ["liningSidesWalk", false, expect.closeTo(600.25, 6), short, 0.2],
    ]);
  });
});

describe("the hip of a lining", () => {
  /** Its hip line from the centre to the side by way of a place between them, and other lines that are none. */
  const quarter = (name: PieceName, wide: number): Piece =>
    cornerPiece({
      name,
      corners: [
        ["centreWaist", 0, 0, "edge"],
        ["sideWaist", 150, 0, "edge"],
        ["sideHip", wide, 200, "edge"],
        ["centreHip", 0, 200, "edge"],
      ],
      inside: { panelHip: [100, 200] },
      levelLines: [
        { level: "hip", along: { points: ["centreHip", "panelHip", "sideHip"] } },
        { level: "waist", along: { points: ["centreWaist", "sideWaist"] } },
        { level: "hip", along: { seam: "waist" } },
      ],
    });
  const half = setOf([quarter("skirtFront", 260), quarter("skirtBack", 250)]);
  const figures = (more: Partial<SkirtLiningFigures> = {}): SkirtLiningFigures => ({
    waist: 728,
    hip: 1020,
    hipLeast: 1020,
    hipDepth: 200,
    hem: 1100,
    lengths: { front: 575, side: 575, back: 575 },
    free: null,
    ...more,
  });
  const hips = (more: Partial<SkirtLiningFigures>, closure = closed("side", 180)): unknown =>
    claims({ skirt: [half, half], skirtFigures: figures(more) }, even, closure).at(-1);

  it("is measured on the pieces of both halves, and is no less than hers with its ease", () => {
    expect(hips({})).toEqual(["liningOverHip", true, 1020, 1020, 0.05]);
    expect(hips({ hipLeast: 900 })).toEqual(["liningOverHip", true, 1020, 900, 0.05]);
    expect(hips({ hipLeast: 1020.04 })).toEqual(["liningOverHip", true, 1020, 1020.04, 0.05]);
    expect(hips({ hipLeast: 1020.06 })).toEqual(["liningOverHip", false, 1020, 1020.06, 0.05]);
    expect(claims({ skirt: [half, half] }, even).filter((claim) => JSON.stringify(claim).includes("OverHip"))).toEqual(
      [],
    );
    expect(claims({ skirtFigures: figures({ hipLeast: 0.05 }) }, even)).toEqual([
      ["liningOverHip", true, 0, 0.05, 0.05],
    ]);
  });

  it("beside a zip in the side is less by what its ends are still apart there", () => {
    const free = { below: 250, beside: 6 };
    // 200 of 250 down: a fifth of 12.
    expect(hips({ free })).toEqual(["liningOverHip", true, 1020, expect.closeTo(1017.6, 6), 0.05]);
    expect(hips({ free }, closed("centreBack", 180))).toEqual(["liningOverHip", true, 1020, 1020, 0.05]);
    expect(hips({ free: { below: 150, beside: 6 } })).toEqual(["liningOverHip", true, 1020, 1020, 0.05]);
  });
});
