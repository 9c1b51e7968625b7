/**
 * Sizes picked from a pattern made up by hand: its girths are straight lines of the size, 40 mm from one to the next, its front a
 * rectangle whose side waist lies 10 mm further out in each size.
 */
import { describe, expect, it } from "vitest";
import type { LevelSizes } from "../../../src/core/blend/blendPiece";
import type { SizeChart } from "../../../src/core/chart/sizeChart";
import type { Picks } from "../../../src/core/decisions/decided";
import { bodyOf, measuresOf, tapesOf } from "../../../src/core/measures/tape";
import type { Cup, GirthLevel, PatternPieces } from "../../../src/core/nest/patternPieces";
import type { Nest, Piece } from "../../../src/core/pattern/piece";
import type { AlterationsMade } from "../../../src/core/plan/makeAlterations";
import { pickSizes, type PickInputs } from "../../../src/core/plan/pickSizes";
import { offerOf } from "../../../src/core/plan/printed";
import { planLevels } from "../../../src/core/plan/planLevels";
import { fail, ok } from "../../../src/core/result";
import { piecePoint } from "../../../src/core/geometry/point";
import type { FullBustFailure } from "../../../src/core/surgery/fullBust";
import { radians } from "../../../src/core/units";
import { boxPiece } from "../../support/boxPiece";
import { sampleWork } from "../../support/sampleWork";

const LABELS = ["10", "12", "14", "16"];
const CHART: SizeChart = {
  sizes: LABELS.map((label, at) => ({ label, bust: 840 + 40 * at, waist: 660 + 40 * at, hip: 900 + 40 * at })),
  draftedDifference: 50,
  cups: [
    { label: "B", difference: 50 },
    { label: "C", difference: 75 },
  ],
};

/** Its side waist as far out as its size says. */
function front(size: number): Piece {
  const box = boxPiece("front", 100 + 10 * size, 200);
  return { ...box, points: { ...box.points, bustPoint: { at: piecePoint(50, 100), level: "bust" } } };
}

interface Made {
  readonly alike?: readonly GirthLevel[];
  readonly traced?: readonly boolean[];
  /** What cannot be made, by its cup. */
  readonly refused?: Readonly<Record<string, readonly number[]>>;
  readonly unmade?: readonly Cup[];
  readonly hips?: boolean;
  readonly chart?: SizeChart;
}
const failure: FullBustFailure = { code: "fullBust/out-of-reach", most: -12 };

/** What was asked to be made: in which cup, at which sizes. */
type Asked = [Cup, LevelSizes][];

function patternPieces(
  { alike = [], traced, refused = {}, unmade = [], hips = true, chart = CHART }: Made,
  asked: Asked = [],
): PatternPieces {
  const fuller = (cup: Cup): number => (cup === "C" ? 4 : 0);
  const nest: Nest = {
    source: "fitted",
    labels: LABELS,
    sizes: LABELS.map((_, size) => [front(size)]),
    ...(traced === undefined ? {} : { traced }),
  };
  return {
    source: "fitted",
    chart,
    alike: new Set(alike),
    isEaseMeasured: true,
    printed: (cup) => ({
      nest,
      refusedAt: (size) => (refused[cup ?? "none"]?.includes(size) === true ? failure : undefined),
    }),
    printedWaists: () => LABELS.map((_, size) => 700 + 40 * size),
    finishedWaistAt: (cup, baseSize, size) => 700 + 40 * size + baseSize + fuller(cup),
    finishedHips: (cup) => (hips ? LABELS.map((_, size) => 950 + 40 * size + fuller(cup)) : null),
    finishedHipAt: (cup, baseSize, size) => 950 + 40 * size + 2 * baseSize + fuller(cup),
    easeOf: (cup, size) => ({ bust: 80 + size, waist: 40 + fuller(cup), hip: 50 }),
    make: (cup, at) => {
      asked.push([cup, at]);
      if (unmade.includes(cup)) return fail(failure);
      const open = { front: front(at.waist) };
      return ok({
        open,
        cut: open,
        others: {},
        sideNeck: piecePoint(30, 0),
        adjustBust: (pieces, spread) =>
          spread > 8
            ? fail({ code: "fullBust/out-of-reach", most: 8 })
            : ok({ pieces, turn: radians(0), drop: spread, smoothed: radians(0), traces: [] }),
        finish: (pieces) => pieces,
      });
    },
  };
}

/** 905 at the bust, 832 at the upper chest, 745 and 1000 below. */
const TAPES = tapesOf({ bustGirth: 905, upperChestGirth: 832, waistGirth: 745, hipGirth: 1000 });
const TWELVE: Picks = { baseSize: "12", cup: "C" };

const inputs = (picks: Picks, made: Made, more: Partial<PickInputs>, asked?: Asked): PickInputs => ({
  pattern: { ...sampleWork.pattern, chart: CHART },
  tapes: TAPES,
  picks,
  easeWanted: {},
  pieces: patternPieces(made, asked),
  ...more,
});
function picked(picks: Picks = TWELVE, made: Made = {}, more: Partial<PickInputs> = {}, asked: Asked = []) {
  const result = pickSizes(inputs(picks, made, more, asked));
  if (!result.ok) throw new Error(JSON.stringify(result.failure));
  return result.value;
}
function refusal(picks: Picks = TWELVE, made: Made = {}, more: Partial<PickInputs> = {}): unknown {
  const result = pickSizes(inputs(picks, made, more));
  return result.ok ? null : result.failure;
}
const close = (value: number): unknown => expect.closeTo(value, 6);

describe("sizes picked", () => {
  it("are at waist and hip where the finished girth is the body's and the ease", () => {
    const found = picked();
    // 745 and 44 of ease are 789: 12 in C is finished to 745 there, 40 more for each size.
    expect(found.waist).toEqual({
      size: close(2.1),
      girth: close(789),
      finished: [705, 745, 785, 825],
      body: 745,
      spread: bodyOf(TAPES).waistGirth?.spread,
    });
    // 1000 and 50 are 1050, of 956 + 40 s on the pieces; their own lines run 2 mm lower.
    expect(found.hip).toEqual({
      size: close(2.35),
      girth: close(1050),
      finished: [954, 994, 1034, 1074],
      body: 1000,
      spread: bodyOf(TAPES).hipGirth?.spread,
    });
    expect([found.row.label, found.ease, found.drafted, found.isEaseMeasured]).toEqual([
      "12",
      { bust: 81, waist: 44, hip: 50 },
      { bust: 81, waist: 44, hip: 50 },
      true,
    ]);
    expect([found.bust, found.bodyHip]).toEqual([905, 1000]);
    expect(found.halves.left).toBe(found.halves.right);
    expect(found.halves.left.sizing).toEqual(found.sizing);
    expect(found.alike).toEqual(new Set());
    expect(found.levelled).toBeNull();
  });

  it("are made in the cup and at the sizes found, and cut along their lines", () => {
    const asked: Asked = [];
    const { cutLines } = picked(TWELVE, {}, {}, asked);
    expect(asked).toEqual([
      [
        "C",
        {
          neck: 1,
          shoulder: 1,
          underarm: 1,
          bust: 1,
          underBust: 1,
          waist: close(2.1),
          hip: close(2.35),
        },
      ],
    ]);
    // A tenth of the 10 mm between 14 and 16.
    expect(cutLines).toEqual([
      {
        piece: "front",
        level: "waist",
        between: ["14", "16"],
        share: close(0.1),
        offset: close(1),
        alterationMove: 0,
        at: { x: close(121), y: 200 },
      },
    ]);
  });

  it("go by the ease that is wanted, level by level", () => {
    const found = picked(TWELVE, {}, { easeWanted: { waist: 60, hip: 10 } });
    expect(found.ease).toEqual({ bust: 81, waist: 60, hip: 10 });
    expect(found.drafted.waist).toBe(44);
    expect([found.waist.size, found.hip?.size]).toEqual([close(2.5), close(1.35)]);
  });

  it("are those that she picked herself, where there is any choice", () => {
    const own = { ...TWELVE, waist: 0.5, hip: 3.25 };
    const found = picked(own);
    expect([found.waist, found.hip]).toMatchObject([
      { size: 0.5, girth: 725 },
      { size: 3.25, girth: 1086 },
    ]);
    const alike = picked(own, { alike: ["waist", "hip"] });
    expect([alike.waist.size, alike.hip?.size]).toEqual([1, 1]);
    expect(alike.alike).toEqual(new Set(["waist", "hip"]));
    expect([picked(own, { alike: ["waist"] }).hip?.size, picked(own, { alike: ["hip"] }).waist.size]).toEqual([
      3.25, 0.5,
    ]);
  });

  it("have no hip where the pattern ends at the waist, whose size then goes for all below", () => {
    const asked: Asked = [];
    const short: Partial<PickInputs> = { pattern: { ...sampleWork.pattern, chart: CHART, length: "waist" } };
    const found = picked(TWELVE, { hips: false }, short, asked);
    expect([found.hip, found.bodyHip]).toEqual([null, 1000]);
    expect(asked[0]?.[1].hip).toBeCloseTo(2.1, 6);
    const { hipGirth: _hip, ...others } = measuresOf(TAPES);
    const unmeasured = picked(TWELVE, {}, { ...short, tapes: tapesOf(others) });
    expect([unmeasured.hip, unmeasured.bodyHip]).toEqual([null, undefined]);
  });
});

describe("a bust", () => {
  // 12 in C is drafted for 880 less 50 and 75: 905.
  const fuller = (bustGirth: number): Partial<PickInputs> => ({ tapes: tapesOf({ ...measuresOf(TAPES), bustGirth }) });

  it("is altered by what base and cup lack, as much as can be; as she set it whole or not at all", () => {
    expect(picked().sizing.bust).toMatchObject({ residual: 0, asked: 0, alteration: 0 });
    expect(picked(TWELVE, {}, fuller(919)).sizing.bust).toMatchObject({ residual: 14, asked: 14, alteration: 14 });
    // No more than 8 can be let in on the half.
    expect(picked(TWELVE, {}, fuller(925)).sizing.bust).toMatchObject({ residual: 20, asked: 20, alteration: 16 });
    const set = (bustAlteration: number) => picked({ ...TWELVE, bustAlteration });
    expect(set(14).sizing.bust).toMatchObject({ asked: 14, alteration: 14, chosenBy: "wearer" });
    expect(set(20).sizing.bust).toMatchObject({ asked: 20, alteration: 0, chosenBy: "wearer" });
    expect(set(20).built.bust).toEqual({ ok: false, failure: { code: "fullBust/out-of-reach", most: 8 } });
  });
});

describe("halves of two cups", () => {
  const LEFT_B: Picks = { ...TWELVE, halfCups: { left: "B" } };

  it("are each made in their own, and bring half of their girths", () => {
    const asked: Asked = [];
    const found = picked(LEFT_B, {}, {}, asked);
    expect([found.halves.left, found.halves.right, found].map(({ sizing }) => sizing.cup.label)).toEqual([
      "B",
      "C",
      "C",
    ]);
    expect([found.halves.left, found.halves.right, found].map(({ drafted }) => drafted.waist)).toEqual([40, 44, 44]);
    // 703 + 40 s in the middle of both at the waist; the ease is that of the garment's own cup.
    expect(found.waist).toMatchObject({ size: close(2.15), girth: close(789), finished: [703, 743, 783, 823] });
    expect(found.hip).toMatchObject({ size: close(2.4), girth: close(1050), finished: [954, 994, 1034, 1074] });
    expect(new Set(asked.map(([cup]) => cup))).toEqual(new Set(["B", "C"]));
    // Drafted for 892.5 in the middle: half of 25 are lacking, which is altered from 12 on.
    expect(found.sizing.bust).toMatchObject({ residual: 12.5, asked: 12.5, alteration: close(12.5) });
    expect([found.halves.left.levelled, found.halves.right.levelled]).toEqual([null, null]);
  });

  it("are one half twice where both are the garment's own", () => {
    const found = picked({ ...TWELVE, halfCups: { left: "C", right: "C" } });
    expect(found.halves.left).toBe(found.halves.right);
    const both = picked({ ...TWELVE, halfCups: { left: "B", right: "B" } });
    expect(both.halves.left.sizing.cup.label).toBe("B");
    expect(both.waist.finished).toEqual([701, 741, 781, 821]);
  });
});

describe("no sizes are picked", () => {
  it("where she picked a base size or a cup that is not there, or the chart does not reach her", () => {
    expect(refusal({ baseSize: "20" })).toEqual({ code: "plan/base-size-unknown", label: "20" });
    expect(refusal({ ...TWELVE, cup: "Q" })).toEqual({ code: "plan/cup-unknown", label: "Q" });
    const tapes = tapesOf({ ...measuresOf(TAPES), upperChestGirth: 700 });
    expect(refusal({}, {}, { tapes })).toMatchObject({ code: "plan/outside-chart", level: "upperChest" });
    expect(refusal(TWELVE, {}, { tapes })).toBeNull();
  });

  it("where one size alone was traced, and it is another", () => {
    const traced = [false, false, true, false];
    expect(refusal(TWELVE, { alike: ["bust"], traced })).toEqual({
      code: "plan/one-size-traced",
      picked: "12",
      traced: ["14"],
    });
    expect(refusal({ ...TWELVE, baseSize: "14" }, { alike: ["bust"], traced })).toBeNull();
    expect(refusal(TWELVE, { traced })).toBeNull();
    expect(refusal(TWELVE, { alike: ["bust"] })).toBeNull();
  });

  it("where the base size cannot be made in the cup, of either half; another size is no matter", () => {
    const undraftable = (label: string) => ({ code: "plan/cup-undraftable", label, least: -24 });
    expect(refusal(TWELVE, { refused: { C: [1] } })).toEqual(undraftable("C"));
    expect(refusal(TWELVE, { refused: { C: [0, 2, 3], B: [1] } })).toBeNull();
    expect(refusal({ ...TWELVE, halfCups: { right: "B" } }, { refused: { B: [1] } })).toEqual(undraftable("B"));
    expect(refusal(TWELVE, { unmade: ["C"] })).toEqual(undraftable("C"));
    for (const half of ["left", "right"] as const)
      expect(refusal({ ...TWELVE, halfCups: { [half]: "B" } }, { unmade: ["B"] })).toEqual(undraftable("B"));
    const chart = { ...CHART, cups: [] };
    expect(refusal({ baseSize: "12" }, { chart, refused: { none: [1] } })).toEqual(undraftable(""));
  });

  it("where waist or hip would lie more than two sizes beyond the last", () => {
    // Waists are finished from 705 to 825 in the base size: from 625 to 905 with two more at either end.
    const waist = (waistGirth: number): Partial<PickInputs> => ({
      tapes: tapesOf({ ...measuresOf(TAPES), waistGirth }),
    });
    expect(refusal(TWELVE, {}, waist(861))).toBeNull();
    expect(refusal(TWELVE, {}, waist(862))).toEqual({
      code: "plan/outside-chart",
      level: "waist",
      wanted: 906,
      least: 625,
      most: 905,
    });
    const hip = (hipGirth: number): Partial<PickInputs> => ({ tapes: tapesOf({ ...measuresOf(TAPES), hipGirth }) });
    expect(refusal(TWELVE, {}, hip(1105))).toMatchObject({ code: "plan/outside-chart", level: "hip", wanted: 1155 });
    expect(refusal({ ...TWELVE, waist: -2 })).toBeNull();
    expect(refusal({ ...TWELVE, waist: -2.25 })).toEqual({
      code: "plan/outside-chart",
      level: "waist",
      wanted: 615,
      least: 625,
      most: 905,
    });
    expect(refusal({ ...TWELVE, waist: 5 })).toBeNull();
    expect(refusal({ ...TWELVE, waist: 5.25 })).toMatchObject({ level: "waist", wanted: 915 });
  });
});

describe("the girths of sizes picked", () => {
  const half = (girths: AlterationsMade["girths"]): AlterationsMade => ({
    pieces: {},
    alterations: [],
    truing: new Map(),
    changes: [],
    girths,
  });
  const NONE = half({});
  const levels = (
    picks: Picks = TWELVE,
    made: Made = {},
    halves: readonly [AlterationsMade, AlterationsMade] = [NONE, NONE],
  ) => planLevels(picked(picks, made), picks, CHART.draftedDifference, halves);

  it("lie between their printed lines, are wanted by body and ease, and claim what alterations change", () => {
    const found = picked();
    const [bust, waist, hip, ...more] = levels(TWELVE, {}, [half({ bust: 6, waist: -4 }), half({ bust: 2, hip: 8 })]);
    expect(more).toEqual([]);
    expect(bust).toEqual({
      level: "bust",
      between: ["12", "14"],
      share: 0,
      size: 1,
      extrapolated: false,
      body: 905,
      ease: 81,
      target: 986,
      // 880 less 50, 75 of cup and 81 of ease; half of 6 and of 2.
      claim: 880 - 50 + 75 + 81 + 4,
      finished: 0,
      spread: found.sizing.baseSize.spread,
      margin: found.sizing.baseSize.margin,
      probability: found.sizing.baseSize.probability,
      borderline: found.sizing.baseSize.borderline,
    });
    expect(waist).toMatchObject({
      level: "waist",
      between: ["14", "16"],
      share: close(0.1),
      size: close(2.1),
      extrapolated: false,
      body: 745,
      ease: 44,
      target: 789,
      claim: 787,
      // The nearest line is finished to 785.
      margin: 4,
    });
    expect(waist).not.toHaveProperty("isHeld");
    expect(waist).not.toHaveProperty("untraced");
    expect(hip).toMatchObject({ level: "hip", target: 1050, claim: 1054, margin: 16 });
  });

  it("are what was picked, or what there is but one of, whatever is wanted", () => {
    const [, waist, hip] = levels({ ...TWELVE, waist: 0.5 });
    expect([waist?.claim, waist?.target, hip?.claim]).toEqual([725, 789, 1050]);
    const [, held, free] = levels(TWELVE, { alike: ["waist"] });
    expect([held?.isHeld, held?.claim, held?.size]).toEqual([true, 745, 1]);
    expect([free?.isHeld, free?.claim]).toEqual([undefined, 1050]);
  });

  it("are beyond the chart below its first line and above its last", () => {
    const beyond = (waist: number) => levels({ ...TWELVE, waist })[1]?.extrapolated;
    expect([-0.25, 0, 3, 3.25].map(beyond)).toEqual([true, false, false, true]);
  });

  it("say which of the lines that they stand on were not traced", () => {
    const untraced = (waist: number, ...traced: readonly boolean[]) =>
      levels({ ...TWELVE, waist }, { traced })[1]?.untraced;
    expect(untraced(2.25, false, false, true, false)).toEqual(["16"]);
    expect(untraced(2.25, false, false, false, false)).toEqual(["14", "16"]);
    expect(untraced(2.25, false, false, true, true)).toBeUndefined();
    // On a line itself it stands on that alone, also on the last.
    expect(untraced(2, true, true, true, false)).toBeUndefined();
    expect(untraced(2, true, true, false, true)).toEqual(["14"]);
    expect(untraced(3, true, true, false, true)).toBeUndefined();
    expect(untraced(3, true, true, true, false)).toEqual(["16"]);
    expect(untraced(3.25, true, true, false, true)).toEqual(["14"]);
    expect(levels(TWELVE, { traced: [true, false, true, true] })[0]?.untraced).toEqual(["12"]);
    expect(levels(TWELVE, { traced: [true, true, false, true] })[0]?.untraced).toBeUndefined();
  });
});

describe("the picks that pieces leave open", () => {
  const all: Picks = { baseSize: "12", cup: "C", halfCups: { left: "B" }, waist: 1.5, hip: 2, bustAlteration: 8 };

  it("are all of them, but a cup of her own pieces, and a line where all sizes are one", () => {
    const left = (picks: Picks, made: Made = {}, source: PatternPieces["source"] = "fitted"): Picks =>
      offerOf({ ...patternPieces(made), source }, picks).picks;
    expect(left(all)).toStrictEqual(all);
    expect(left({ baseSize: "12" })).toStrictEqual({ baseSize: "12" });
    expect(left(all, {}, "own")).toStrictEqual({ baseSize: "12", waist: 1.5, hip: 2, bustAlteration: 8 });
    const { waist: _waist, ...noWaist } = all;
    const { hip: _hip, ...noHip } = all;
    expect(left(all, { alike: ["waist"] })).toStrictEqual(noWaist);
    expect(left(all, { alike: ["hip"] })).toStrictEqual(noHip);
  });
});
