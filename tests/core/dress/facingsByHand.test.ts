/** Facings and what they are sewn to, by lengths that stand beside them; and the opening, by its easier way. mm. */
import { describe, expect, it } from "vitest";
import { checkEdges } from "../../../src/core/dress/checkEdges";
import type { Half } from "../../../src/core/decisions/alteration";
import type { ClosureReading } from "../../../src/core/opening/gettingIn";
import type { Part, PartGroup, PiecePart } from "../../../src/core/parts/part";
import type { Piece } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import type { SewingAsked } from "../../../src/core/sewing/sewingAsked";
import { seamedPiece } from "../../support/seamedPiece";
import { waistOf } from "../../support/linings";
import { testWork } from "../../support/works";

const part = (
  piece: Piece,
  half: Half | null = null,
  cloth: Part["cloth"] = "main",
  group: PartGroup = "facing",
): PiecePart => ({
  kind: "piece",
  key: `${piece.name}-${half ?? cloth}`,
  group,
  cloth,
  cut: { onFold: false, count: 1 },
  half,
  grain: "along",
  piece,
});

const asked = (
  bodice: readonly [PieceSet, PieceSet],
  parts: readonly Part[],
  reading: ClosureReading | null = null,
): SewingAsked => ({
  dress: {},
  bodice,
  waist: waistOf({ front: 0, back: 0 }),
  skirt: null,
  lining: null,
  edges: { edges: [], strap: null, bias: [], facing: null, binding: null, parts: [] },
  closure: testWork.pattern.closure,
  reading,
  under: "nothing",
  parts,
  allowances: {},
});

/** What is measured and what it is held to, in order. */
const walks = (bodice: readonly [PieceSet, PieceSet], parts: readonly Part[]): readonly (readonly [number, number])[] =>
  checkEdges(asked(bodice, parts)).map(({ measured, expected }) => [measured, expected]);

const front = seamedPiece("front", { neck: 70, shoulder: 120, armhole: 90, side: 210, waist: 200 });
const back = seamedPiece("back", { neck: 64, shoulder: 126, armhole: 96, side: 210, waist: 190 });
const bodice = setOf([front, back]);
const whole: readonly [PieceSet, PieceSet] = [bodice, bodice];

describe("facings of neck and armhole in one", () => {
  const parts = [
    part(seamedPiece("frontFacing", { neck: 70, shoulder: 120, armhole: 90, side: 50 })),
    part(seamedPiece("backFacing", { neck: 64, shoulder: 126, armhole: 96, side: 51 })),
  ];

  it("are each as long as the bodice's edges, and walk each other: told of the back one, with the shoulder's ease of 6", () => {
    expect(checkEdges(asked(whole, parts))).toEqual([
      { name: "facingsWalk", ok: true, measured: 70, expected: 70, tolerance: 0.05 },
      { name: "facingsWalk", ok: true, measured: 90, expected: 90, tolerance: 0.05 },
      { name: "facingsWalk", ok: true, measured: 64, expected: 64, tolerance: 0.05 },
      { name: "facingsWalk", ok: true, measured: 96, expected: 96, tolerance: 0.05 },
      { name: "facingsWalk", ok: true, measured: 126, expected: 126, tolerance: 0.05 },
      { name: "facingsWalk", ok: false, measured: 51, expected: 50, tolerance: 0.05 },
    ]);
  });

  it("have the ease that the pattern's own back has", () => {
    const eased = setOf([front, { ...back, seamEase: { shoulder: 2.5, side: 40 } }]);
    expect(walks([eased, eased], parts).slice(4)).toEqual([
      [126, 122.5],
      [51, 50],
    ]);
  });

  it("walk to a twentieth of a millimetre, longer and shorter", () => {
    const ok = (neck: number): boolean | undefined =>
      checkEdges(asked(whole, [part(seamedPiece("frontFacing", { neck }))]))[0]?.ok;
    expect([69.94, 69.96, 70.04, 70.06].map(ok)).toEqual([false, true, true, false]);
    const edgeless = setOf([seamedPiece("front", {})]);
    const [just] = checkEdges(asked([edgeless, edgeless], [part(seamedPiece("frontFacing", { neck: 0.05 }))]));
    expect(just).toMatchObject({ ok: true, measured: 0.05, expected: 0 });
  });
});

describe("facings of neck and armhole apart", () => {
  it("walk by pairs of a kind, without ease, whatever their order", () => {
    const parts = [
      part(seamedPiece("frontArmholeFacing", { armhole: 90, shoulder: 41, side: 52 })),
      part(seamedPiece("backArmholeFacing", { armhole: 96, shoulder: 42, side: 53 })),
      part(seamedPiece("frontFacing", { neck: 70, shoulder: 61 })),
      part(seamedPiece("backFacing", { neck: 64, shoulder: 62 })),
    ];
    expect(walks(whole, parts)).toEqual([
      [90, 90],
      [96, 96],
      [42, 41],
      [53, 52],
      [70, 70],
      [64, 64],
      [62, 61],
    ]);
    expect(walks(whole, parts.toReversed())).toEqual([
      [64, 64],
      [62, 61],
      [70, 70],
      [96, 96],
      [42, 41],
      [53, 52],
      [90, 90],
    ]);
    // A back one by itself has none to walk with.
    expect(walks(whole, parts.slice(1, 2))).toEqual([[96, 96]]);
    expect(walks(whole, parts.slice(1, 3))).toEqual([
      [96, 96],
      [70, 70],
    ]);
  });
});

describe("facings of a strapped bodice", () => {
  it("go along neck, strap and armhole of all that lies on that side, without straps and pieces of no name", () => {
    const strapped = setOf([
      seamedPiece("cup", { neck: 150, strap: 20, armhole: 110 }),
      seamedPiece("centreFront", { neck: 7, armhole: 3 }),
      seamedPiece("back", { neck: 160, strap: 21 }),
      seamedPiece("strap", { neck: 1000, strap: 1000, armhole: 1000 }),
      seamedPiece("other1", { neck: 1000, strap: 1000, armhole: 1000 }),
    ]);
    const facing = part(seamedPiece("frontFacing", { neck: 157, strap: 20, armhole: 113 }));
    const behind = part(seamedPiece("backFacing", { neck: 160, strap: 21 }));
    expect(walks([strapped, strapped], [facing, behind])).toEqual([
      [157, 157],
      [20, 20],
      [113, 113],
      [160, 160],
      [21, 21],
    ]);
  });
});

describe("facings of halves that differ", () => {
  it("are held each to its own half, and to the facing of that half", () => {
    const other = setOf([
      seamedPiece("front", { neck: 71, armhole: 91 }),
      seamedPiece("back", { neck: 65, armhole: 97 }),
    ]);
    const of = (half: Half, by: number) => [
      part(seamedPiece("frontFacing", { neck: 70 + by, shoulder: 30 + by }), half),
      part(seamedPiece("backFacing", { neck: 64 + by, shoulder: 30 + by }), half),
    ];
    expect(walks([bodice, other], [...of("left", 0), ...of("right", 1)])).toEqual([
      [70, 70],
      [64, 64],
      [30, 30],
      [71, 71],
      [65, 65],
      [31, 31],
    ]);
  });

  it("are read apart where a fold joins them", () => {
    const other = setOf([seamedPiece("front", { neck: 71 })]);
    const open: PiecePart = {
      ...part(seamedPiece("frontFacing", { neck: 70 })),
      otherHalf: seamedPiece("frontFacing", { neck: 71.5 }),
    };
    expect(walks([bodice, other], [open])).toEqual([
      [70, 70],
      [71.5, 71],
    ]);
  });
});

it("what is no facing of the cloth itself is not asked", () => {
  const neck = seamedPiece("frontFacing", { neck: 1 });
  expect(walks(whole, [part(neck, null, "interfacing"), part(neck, null, "main", "bodice")])).toEqual([]);
});

it("the opening is told by its easier way alone, without any tolerance", () => {
  const way = (lets: number, needed: number, passes: boolean): ClosureReading["ways"][number] => ({
    way: "steppingIn",
    needed,
    tightest: { below: 10, at: "waist", girth: 720, lets, of: "shell" },
    passes,
    longer: 0,
  });
  const reading = (ways: ClosureReading["ways"]): ClosureReading => ({
    ways,
    passes: true,
    opening: 400,
    comesApart: false,
    leastOpening: 400,
    zip: { cm: null, in: null },
    endsAt: { cm: null, in: null },
    levelMarks: [],
  });
  const told = (ways: ClosureReading["ways"]) => checkEdges(asked(whole, [], reading(ways)));
  expect(told([way(980, 975, true), way(700, 900, false)])).toEqual([
    { name: "opensEnough", ok: true, measured: 980, expected: 975, tolerance: 0 },
  ]);
  expect(told([way(970, 975, false)])).toMatchObject([{ ok: false, measured: 970, expected: 975 }]);
  expect(told([])).toEqual([]);
  expect(checkEdges(asked(whole, []))).toEqual([]);
});
