/**
 * What becomes of the ledger, on a front that is a rectangle with one dart: what is said of bust and blend, and what is left out
 * of either half, or of both.
 */
import { describe, expect, it } from "vitest";
import type { Alteration, Half } from "../../../src/core/decisions/alteration";
import type { StyleName } from "../../../src/core/decisions/pattern";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece, PieceName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import type { Built } from "../../../src/core/plan/buildPieces";
import { keyOf, makeOnHalves, type AlterationsMade } from "../../../src/core/plan/makeAlterations";
import type { Picked, PickedHalf } from "../../../src/core/plan/pickSizes";
import type { CutLine, PlannedAlteration } from "../../../src/core/plan/plan";
import { fail, ok } from "../../../src/core/result";
import type { BustPick, Sizing } from "../../../src/core/sizing/sizing";
import type { BustAdjusted } from "../../../src/core/style/style";
import { radians } from "../../../src/core/units";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { ref } from "../../support/dartRef";
import { sampleWork } from "../../support/sampleWork";

/** 100 by 200, its side waist so far out, its bust point so far across; with its dart or without. */
function rectangle(name: PieceName, side = 100, bust = 50, hasDart = true): Piece {
  return cornerPiece({
    name,
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 100, 0, "side"],
      ["sideWaist", side, 200, "waist"],
      ...(hasDart
        ? ([
            ["waistDartOuter", 60, 200, "waist", "waistDart"],
            ["waistDartInner", 40, 200, "waist"],
          ] as const)
        : []),
      ["centreWaist", 0, 200, "centre"],
    ],
    inside: { bustPoint: [bust, 100], ...(hasDart ? { waistDartApex: [50, 120] } : {}) },
    darts: hasDart ? [dartFor("waistDart", "waist", "bustPoint")] : [],
  });
}

const UNSURE = { margin: 20, runnerUp: null, spread: 5, probability: 0, borderline: false } as const;
const SIZING: Sizing = {
  baseSize: {
    ...UNSURE,
    label: "12",
    index: 3,
    chosenBy: "bust",
    found: 3,
    byBust: true,
    lookedUp: 900,
    chartValue: 900,
    from: 880,
    to: 920,
    beyond: 0,
  },
  cup: { ...UNSURE, label: null, chosenBy: "none", difference: null, drafted: 50 },
  bust: {
    difference: null,
    drafted: 900,
    residual: 0,
    asked: 0,
    alteration: 0,
    leftAlone: true,
    chosenBy: "residual",
  },
  alternatives: [],
};

interface HalfMade {
  readonly cut?: PieceSet;
  readonly blended?: PieceSet;
  readonly bust?: Built["bust"];
  readonly pick?: Partial<BustPick>;
  readonly cutLines?: readonly CutLine[];
}

function halfOf({ cut, blended, bust = null, pick = {}, cutLines = [] }: HalfMade): PickedHalf {
  const pieces = blended ?? { front: rectangle("front") };
  return {
    sizing: { ...SIZING, bust: { ...SIZING.bust, ...pick } },
    nest: { source: "own", labels: ["12"], sizes: [[]] },
    built: {
      cut: cut ?? pieces,
      blended: pieces,
      bust,
      alteration: 0,
      bustPoint: { printed: piecePoint(57, 104), own: null, probable: null },
      wanted: null,
    },
    levelled: null,
    cutLines,
    drafted: { bust: 80, waist: 40, hip: 50 },
  };
}

function made(
  alterations: readonly Alteration[],
  left: HalfMade = {},
  right?: HalfMade,
  style: StyleName = "sideDart",
) {
  const one = halfOf(left);
  const halves = { left: one, right: right === undefined ? one : halfOf(right) };
  const picked: Picked = {
    ...one,
    halves,
    alike: new Set(),
    row: { label: "12", bust: 900, waist: 720, hip: 960 },
    isEaseMeasured: false,
    ease: { bust: 80, waist: 40, hip: 50 },
    bust: 900,
    bodyHip: undefined,
    waist: { size: 3, girth: 760, finished: [760], body: 720, spread: 5 },
    hip: null,
  };
  return makeOnHalves({ ...sampleWork, pattern: { ...sampleWork.pattern, style }, alterations }, picked);
}
const told = ({ alterations }: AlterationsMade) =>
  alterations.map(({ id, piece, phase, outcome }) => [id, piece, phase, outcome.ok ? "made" : outcome.failure.code]);
const gather = (half?: Half, piece: PieceName = "front"): Alteration => ({
  kind: "dartGather",
  id: half === undefined ? "gather" : `gather-${half}`,
  dart: ref(piece, "waistDart"),
  ...(half === undefined ? {} : { half }),
});

describe("the bust", () => {
  const adjusted = (more: Partial<BustAdjusted> = {}): BustAdjusted => ({
    pieces: { front: rectangle("front", 100, 57) },
    turn: radians(0.1),
    drop: 0,
    smoothed: radians(0),
    traces: [],
    ...more,
  });
  const cut = { front: rectangle("front") };
  const altered = (bust: Built["bust"], pick: Partial<BustPick> = {}): PlannedAlteration | undefined =>
    made([], { cut, blended: { front: rectangle("front", 100, 57) }, bust, pick }).left.alterations[0];
  const notes = (bust: BustAdjusted, pick: Partial<BustPick> = {}) => {
    const planned = altered(ok(bust), { asked: 20, alteration: 20, ...pick });
    return planned?.outcome.ok === true ? planned.outcome.value.notes : null;
  };

  it("stands first where it is altered, and is told by what is spread, and where its point went", () => {
    expect(made([]).left.alterations).toEqual([]);
    const { outcome, ...planned } = altered(ok(adjusted({ drop: 7 })), { asked: 30, alteration: 20 }) ?? {};
    expect(planned).toEqual({
      id: "bust",
      source: "bust",
      phase: "bust",
      piece: "front",
      what: { kind: "bust", amount: 20, asked: 30, spread: 10, drop: 7, turn: radians(0.1) },
    });
    expect(outcome).toMatchObject({
      ok: true,
      value: {
        piece: "front",
        before: cut,
        surgery: [],
        moved: [{ piece: "front", from: piecePoint(50, 100), to: piecePoint(57, 104) }],
      },
    });
  });

  it("notes what could not be made, what became longer, and what was smoothed", () => {
    expect(notes(adjusted())).toEqual([]);
    expect(notes(adjusted(), { asked: 30 })).toEqual([{ code: "bustShort", asked: 30, made: 20 }]);
    expect(notes(adjusted({ drop: 7 }))).toEqual([{ code: "centreLengthened", amount: 7 }]);
    expect(notes(adjusted({ smoothed: radians(0.2) }))).toEqual([{ code: "armholeSmoothed", turned: radians(0.2) }]);
    const cups = { cup: rectangle("cup") };
    const ofCup = made(
      [],
      { cut: cups, blended: cups, bust: ok(adjusted({ drop: 7 })), pick: { asked: 20, alteration: 20 } },
      undefined,
      "midriff",
    ).left.alterations[0];
    expect(ofCup).toMatchObject({
      piece: "cup",
      outcome: { value: { notes: [{ code: "cupLengthened", amount: 7 }] } },
    });
  });

  it("that cannot be altered is left out, with the most that could be", () => {
    expect(altered(fail({ code: "fullBust/out-of-reach", most: 12 }), { asked: 30, alteration: 0 })).toEqual({
      id: "bust",
      source: "bust",
      phase: "bust",
      piece: "front",
      what: { kind: "bust", amount: 30, asked: 30, spread: 15, drop: 0, turn: radians(0) },
      outcome: { ok: false, failure: { code: "alteration/bust-too-much", asked: 30, most: 24 } },
    });
  });
});

describe("the lines of the blend", () => {
  it("stand last, each from where its piece was cut to where it came", () => {
    const line = (level: CutLine["level"]): CutLine => ({
      piece: "front",
      level,
      between: ["12", "14"],
      share: 0.5,
      offset: 6,
      alterationMove: 0,
      at: piecePoint(109, 200),
    });
    const { left } = made([gather()], { cut: { front: rectangle("front", 106) }, cutLines: [line("waist")] });
    expect(told(left)).toEqual([
      ["gather", "front", "darts", "made"],
      ["blend-front-waist", "front", "widthsTraced", "made"],
    ]);
    expect(left.alterations[1]).toMatchObject({
      source: "blend",
      what: { kind: "blend", level: "waist", cutLine: line("waist") },
      outcome: {
        value: { piece: "front", moved: [{ piece: "front", from: piecePoint(106, 200), to: piecePoint(109, 200) }] },
      },
    });
  });
});

describe("an alteration", () => {
  it("is made on both halves at once where nothing is of one alone", () => {
    const both = made([gather()]);
    expect(both.left).toBe(both.right);
    expect(told(both.left)).toEqual([["gather", "front", "darts", "made"]]);
    expect(both.left.pieces.front?.darts[0]?.gathered).toBe(true);
    expect(both.left.girths).toEqual({});
    expect([...both.left.truing.keys()]).toEqual([keyOf(ref("front", "waistDart"))]);
  });

  it("of one half is made on that half alone, and stands in no ledger of the other", () => {
    for (const half of ["left", "right"] as const) {
      const halves = made([gather(half)]);
      const other = half === "left" ? "right" : "left";
      expect(told(halves[half])).toEqual([[`gather-${half}`, "front", "darts", "made"]]);
      expect(told(halves[other])).toEqual([]);
      expect(halves[half].pieces.front?.darts[0]?.gathered).toBe(true);
      expect(halves[other].pieces.front?.darts[0]).not.toHaveProperty("gathered");
    }
  });

  it("that cannot be made is left out, with the piece it would have been made on", () => {
    const missing = made([gather(undefined, "back")]).left;
    expect(told(missing)).toEqual([["gather", "back", "darts", expect.stringContaining("alteration/")]]);
    const sway: Alteration = { kind: "fit", id: "sway", fit: "swayBack", amount: 5 };
    // Of the back there is nothing: it is told of the first piece there is.
    expect(told(made([sway]).left)).toEqual([["sway", "front", "length", expect.stringContaining("alteration/")]]);
    const two = made([sway], { blended: setOf([rectangle("cup"), rectangle("frontBand")]) }, undefined, "midriff");
    expect(told(two.left)).toEqual([["sway", "cup", "length", expect.stringContaining("alteration/")]]);
  });

  it("for both that cannot be made on one of them is left out on both", () => {
    const bare: HalfMade = { blended: { front: rectangle("front", 100, 50, false) } };
    for (const [left, right] of [
      [{}, bare],
      [bare, {}],
    ] as const) {
      const halves = made([gather()], left, right);
      const leftOut = ["gather", "front", "darts", expect.stringContaining("alteration/")];
      expect([told(halves.left), told(halves.right)]).toEqual([[leftOut], [leftOut]]);
      expect([halves.left, halves.right].flatMap(({ pieces }) => pieces.front?.darts ?? [])).toHaveLength(1);
      for (const { pieces } of [halves.left, halves.right])
        for (const dart of pieces.front?.darts ?? []) expect(dart).not.toHaveProperty("gathered");
    }
  });
});

describe("centres of two halves", () => {
  /** Its centre so long. */
  const front = (down: number, more: Partial<Piece> = {}): HalfMade => {
    const plain = rectangle("front");
    const points = { ...plain.points, centreWaist: { at: piecePoint(0, down), level: "waist" as const } };
    return { blended: { front: { ...plain, points, ...more } } };
  };
  const centre = ({ pieces }: AlterationsMade): number => pieces.front?.points.centreWaist?.at.y ?? Number.NaN;
  const changes = (left: number, right: number) => {
    const halves = made([], front(left), front(right));
    return [halves.left, halves.right].map((half) => half.changes);
  };
  const walked = (amount: number) => [
    { piece: "front", seam: "centre", what: "seamWalked", point: "centreWaist", amount: expect.closeTo(amount, 6) },
  ];

  it("that are apart by half a millimetre to six are brought to the longer one, and told so", () => {
    expect(changes(200, 203)).toEqual([walked(3), []]);
    expect(changes(205, 200)).toEqual([[], walked(5)]);
    expect(changes(200, 205.9)).toEqual([walked(5.9), []]);
    const { left, right } = made([], front(200), front(203));
    expect(centre(left)).toBeCloseTo(203, 2);
    expect(centre(right)).toBe(203);
  });

  it("are left as they are where that is less than is told, or more than truing moves", () => {
    expect(changes(200, 200.5)).toEqual([[], []]);
    expect(changes(200.4, 200)).toEqual([[], []]);
    expect(changes(200, 206.1)).toEqual([[], []]);
    expect(centre(made([], front(200), front(200.4)).left)).toBe(200);
  });

  it("are cut open on both where one is a seam, and lie on the fold else", () => {
    const folds = (left: boolean, right: boolean) => {
      const halves = made([], front(200, { centreOnFold: left }), front(200, { centreOnFold: right }));
      return [halves.left, halves.right].map(({ pieces }) => pieces.front?.centreOnFold);
    };
    expect([folds(true, true), folds(false, false)]).toEqual([
      [true, true],
      [false, false],
    ]);
    expect([folds(true, false), folds(false, true)]).toEqual([
      [false, false],
      [false, false],
    ]);
  });
});
