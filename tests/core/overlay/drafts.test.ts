/** What of a square of 100 mm goes on strips, by hand: a corner moved, a dart's end moved, and the nearest of printed lines. */
import { describe, expect, it } from "vitest";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { changesOf, inParts, together, type Draft } from "../../../src/core/overlay/drafts";
import { nearestOfAll } from "../../../src/core/overlay/nearestOfAll";
import { ringLength } from "../../../src/core/overlay/ringParts";
import { levelLinesOf, sewnLegs, sewnRing, type SewnLine } from "../../../src/core/overlay/sewnLines";
import type { Piece, SeamName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { darted, square } from "../sewn/flatPieces";

const near = (x: number, y: number) => ({ x: expect.closeTo(x, 6), y: expect.closeTo(y, 6) });
const ends = (lines: readonly SewnLine[]) => [lines[0]?.curve.a, lines.at(-1)?.curve.b];
const only = (drafts: readonly Draft[]): Draft => {
  expect(drafts).toHaveLength(1);
  return invariant(drafts[0], "draft");
};

describe("sewn lines of a square", () => {
  it("are its edges in order, with their lengths and ends", () => {
    expect(sewnRing(square).map(({ seam, length, from, to, dart }) => [seam, length, from, to, dart])).toEqual([
      ["armhole", 100, "centreNeck", "underarm", null],
      ["side", 30, "underarm", "sideBust", null],
      ["side", 70, "sideBust", "sideWaist", null],
      ["waist", 100, "sideWaist", "centreWaist", null],
      ["centre", 70, "centreWaist", "centreBust", null],
      ["centre", 30, "centreBust", "centreNeck", null],
    ]);
    expect(sewnLegs(square)).toEqual([]);
    expect(levelLinesOf(square)).toEqual([lineEdge(piecePoint(0, 30), piecePoint(100, 30))]);
    expect(levelLinesOf({ ...square, levelLines: [] })).toEqual([]);
  });

  it.each([
    ["from its outer end", {}],
    ["named the other way", { inner: "waistDartOuter", outer: "waistDartInner" } as const],
  ])("go over the cap of a dart, %s: from mouth end to mouth end, without a gap", (_what, also) => {
    const ring = sewnRing(darted(40, 60, 40, also));
    const cap = ring.filter(({ dart }) => dart === "waistDart");
    expect(ends(cap)).toEqual([near(60, 100), near(40, 100)]);
    expect([cap[0]?.from, cap.at(-1)?.to]).toEqual(["waistDartOuter", "waistDartInner"]);
    expect(cap.slice(1).map(({ from }) => from)).toEqual(cap.slice(1).map(() => null));
    expect(cap.slice(0, -1).map(({ to }) => to)).toEqual(cap.slice(1).map(() => null));
    for (const [index, { curve }] of ring.entries()) {
      const next = invariant(ring[(index + 1) % ring.length], "line");
      expect(next.curve.a).toEqual(near(curve.b.x, curve.b.y));
    }
  });

  it("have both legs of a dart, from the mouth to its end, and none of gathers", () => {
    const legs = sewnLegs(darted(40, 60, 40));
    expect(legs.map(({ from, to, dart, seam }) => [from, to, dart, seam])).toEqual([
      ["waistDartInner", "waistDartApex", "waistDart", "waist"],
      ["waistDartOuter", "waistDartApex", "waistDart", "waist"],
    ]);
    expect(legs.map(({ length }) => length)).toEqual([1, 2].map(() => expect.closeTo(Math.hypot(10, 60), 9)));
    expect(sewnLegs(darted(40, 60, 40, { gathered: true }))).toEqual([]);
  });
});

describe("what changed of a square", () => {
  it("is nothing where it is as printed", () => {
    expect(changesOf(darted(40, 60, 40), darted(40, 60, 40))).toEqual({ share: 0, drafts: [] });
  });

  /** Its lower side corner 10 mm further out. */
  const out: Piece = {
    ...square,
    points: { ...square.points, sideWaist: { at: piecePoint(110, 100), level: "waist" } },
  };
  const slant = Math.hypot(10, 70);

  it("of a corner moved is one strip: from half a millimetre off on the side to as much on the waist, and 20 mm on", () => {
    const { share, drafts } = changesOf(out, square);
    // The side leaves x = 100 by half a millimetre a twentieth of its way down; the waist goes beyond it for 9.5 mm.
    expect(share).toBeCloseTo((0.95 * slant + 9.5) / (100 + 30 + slant + 110 + 100), 2);
    const { of, seams, legs } = only(drafts);
    expect(of).toEqual([{ kind: "seam", lines: seams }]);
    expect(legs).toEqual([]);
    expect(seams.map(({ seam }) => seam)).toEqual(["side", "side", "waist"]);
    const [start, end] = ends(seams);
    expect(start?.x).toBeCloseTo(100, 6);
    expect(start?.y).toBeCloseTo(30 - (20 - slant / 20), 0);
    expect(end?.x).toBeCloseTo(110 - 9.5 - 20, 1);
    expect(end?.y).toBeCloseTo(100, 6);
  });

  it("of a dart's end moved is a strip of the dart: both its legs, and 20 mm of the seam on either side of its mouth", () => {
    const { drafts } = changesOf(darted(40, 60, 30), darted(40, 60, 50));
    const own = only(drafts.filter(({ of }) => of.some(({ kind }) => kind === "dart")));
    expect(own.of).toEqual([{ kind: "dart", dart: "waistDart" }]);
    expect(own.legs.map(({ curve: { a, b } }) => [a, b])).toEqual([
      [near(40, 100), near(50, 30)],
      [near(60, 100), near(50, 30)],
    ]);
    expect(ends(own.seams)).toEqual([near(80, 100), near(20, 100)]);
  });

  it("of a dart that is new is drawn on a strip of its own, and of one that is gone the seam alone", () => {
    const made = changesOf(darted(40, 60, 40), square).drafts;
    expect(made.flatMap(({ of }) => of)).toContainEqual({ kind: "dart", dart: "waistDart" });
    const gone = changesOf(square, darted(40, 60, 40)).drafts;
    expect(gone.flatMap(({ legs }) => legs)).toEqual([]);
    expect(only(gone).seams.map(({ seam }) => seam)).toEqual(["waist"]);
    // The mouth's 20 mm, less what lies within half a millimetre of its cap at either end, and 20 mm on.
    const length = ringLength(only(gone).seams);
    expect(length).toBeGreaterThan(40);
    expect(length).toBeLessThan(60);
  });

  it("is made of several strips that lie over each other by 20 mm", () => {
    const draft = only(changesOf(out, square).drafts);
    const whole = ringLength(draft.seams);
    const parts = inParts(draft, 2);
    expect(parts.map(({ seams }) => ringLength(seams))).toEqual([1, 2].map(() => expect.closeTo(whole / 2 + 10, 6)));
    expect(parts[0]?.seams[0]?.curve.a).toEqual(draft.seams[0]?.curve.a);
    expect(parts[1]?.seams.at(-1)?.curve.b).toEqual(draft.seams.at(-1)?.curve.b);
    expect(parts.map(({ of, seams }) => of.every((one) => one.kind === "seam" && one.lines === seams))).toEqual([
      true,
      true,
    ]);
  });

  it("of a dart is parted along its legs, the mouth on the first", () => {
    const { drafts } = changesOf(darted(40, 60, 30), darted(40, 60, 50));
    const dart = invariant(
      drafts.find(({ of }) => of[0]?.kind === "dart"),
      "dart",
    );
    const leg = Math.hypot(10, 70);
    const [first, second, ...more] = inParts(dart, 2);
    expect(more).toEqual([]);
    expect([first?.seams, second?.seams]).toEqual([dart.seams, []]);
    expect([first?.of, second?.of]).toEqual([dart.of, dart.of]);
    for (const part of [first, second]) {
      expect(part?.legs.map(({ length }) => length)).toEqual([1, 2].map(() => expect.closeTo(leg / 2 + 10, 6)));
    }
    expect(first?.legs[0]?.curve.a).toEqual(near(40, 100));
    expect(second?.legs[0]?.curve.b).toEqual(near(50, 30));
  });

  it("is one strip with another by all that is on either", () => {
    const [a, b] = [only(changesOf(out, square).drafts), changesOf(darted(40, 60, 40), square).drafts[0]];
    if (b === undefined) throw new Error("no strip");
    expect(together(a, b)).toEqual({
      of: [...a.of, ...b.of],
      seams: [...a.seams, ...b.seams],
      legs: [...a.legs, ...b.legs],
    });
  });
});

/** A back of 400 by 300 mm with two darts in its waist, so wide and with their ends so far up: from the middles at 110 and 260 mm. */
const twoDarts = (
  [first, firstUp]: readonly [number, number],
  [second, secondUp]: readonly [number, number],
  { out = 0, down = 0 }: { readonly out?: number; readonly down?: number } = {},
): Piece =>
  cornerPiece({
    name: "back",
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 400 + out, 0, "side"],
      ["sideWaist", 400 + out, 300 + down, "waist"],
      ["waistDart2Outer", 260 + second / 2, 300 + down, "waist", "waistDart2"],
      ["waistDart2Inner", 260 - second / 2, 300 + down, "waist"],
      ["waistDartOuter", 110 + first / 2, 300 + down, "waist", "waistDart"],
      ["waistDartInner", 110 - first / 2, 300 + down, "waist"],
      ["centreWaist", 0, 300 + down, "centre"],
    ],
    inside: { waistDartApex: [110, 300 - firstUp], waistDart2Apex: [260, 300 - secondUp] },
    darts: [dartFor("waistDart", "waist"), dartFor("waistDart2", "waist")],
  });

describe("what changed about darts", () => {
  const printed = twoDarts([20, 60], [20, 60]);
  const kinds = (drafts: readonly Draft[]) =>
    drafts.map(({ of, legs }) => [of.map((one) => (one.kind === "dart" ? one.dart : "seam")), legs.length]);
  /** The length of a leg that leaves the one as printed by so much at the mouth, and how far from the mouth it is half a millimetre off. */
  const legOf = (half: number, up: number) => {
    const length = Math.hypot(half, up);
    const turn = Math.atan2(half, up) - Math.atan2(10, up);
    return { length, until: length - 0.5 / Math.sin(turn) };
  };

  it("is on the strip of the seam where its legs moved within 25 mm of it: so much of them, and 20 mm on", () => {
    // 0.8 mm wider at either end: the tip of its fold is 0.59 mm lower.
    const { drafts } = changesOf(twoDarts([21.6, 60], [20, 60]), printed);
    const { length, until } = legOf(10.8, 60);
    expect(until).toBeGreaterThan(22);
    expect(until).toBeLessThan(25);
    const own = only(drafts);
    expect(own.of).toEqual([{ kind: "seam", lines: own.seams }]);
    expect(own.legs.map((leg) => [leg.curve.a, leg.from, leg.to])).toEqual([
      [near(99.2, 300), "waistDartInner", null],
      [near(120.8, 300), "waistDartOuter", null],
    ]);
    // Never too short, and too long by no more than to where it is 0.495 mm off.
    const late = (0.005 / 0.5) * (length - until);
    for (const leg of own.legs) {
      expect(leg.length).toBeGreaterThan(until + 20);
      expect(leg.length).toBeLessThan(until + 20 + late + 0.01);
    }
    expect(until + 20).toBeLessThan(length);
  });

  it("is all of its legs where they end sooner", () => {
    const { drafts } = changesOf(twoDarts([24, 30], [20, 60]), twoDarts([20, 30], [20, 60]));
    const { length, until } = legOf(12, 30);
    expect(until).toBeLessThan(25);
    expect(until + 20).toBeGreaterThan(length);
    expect(only(drafts).legs.map((leg) => [leg.length, leg.to])).toEqual(
      [1, 2].map(() => [expect.closeTo(length, 9), "waistDartApex"]),
    );
  });

  it("is a strip of the dart where they moved further from the seam, or where no seam moved beside it", () => {
    // 0.9 mm wider: half a millimetre off until 27 mm.
    expect(legOf(10.9, 60).until).toBeGreaterThan(26);
    expect(kinds(changesOf(twoDarts([21.8, 60], [20, 60]), printed).drafts)).toEqual([[["waistDart"], 2]]);
    // 0.65 mm wider: 14 mm, but the tip of its fold is 0.48 mm lower, no other line.
    expect(legOf(10.65, 60).until).toBeLessThan(15);
    expect(kinds(changesOf(twoDarts([21.3, 60], [20, 60]), printed).drafts)).toEqual([[["waistDart"], 2]]);
  });

  it("is a strip of the dart where they moved at their end too", () => {
    expect(kinds(changesOf(twoDarts([21.6, 62], [20, 60]), printed).drafts)).toEqual([[["waistDart"], 2]]);
  });

  describe("where the waist is 2 mm lower", () => {
    const starts = (draft: Draft | undefined) => draft?.legs.map(({ from }) => from);

    it("is the waist with what moved of the legs of a dart whose end stayed; one whose end moved has its own strip", () => {
      const { drafts } = changesOf(twoDarts([20, 90], [20, 60], { down: 2 }), printed);
      expect(kinds(drafts)).toEqual([
        [["seam"], 2],
        [["waistDart"], 2],
      ]);
      expect(starts(drafts[0])).toEqual(["waistDart2Inner", "waistDart2Outer"]);
      expect(starts(drafts[1])).toEqual(["waistDartInner", "waistDartOuter"]);
    });

    it("is parted with each leg on the part that has its mouth", () => {
      const whole = only(changesOf(twoDarts([20, 60], [20, 60], { down: 2 }), printed).drafts);
      expect(whole.legs).toHaveLength(4);
      // From the side to the centre: the mouth at 260 mm from the centre first.
      expect(inParts(whole, 2).map(starts)).toEqual([
        ["waistDart2Inner", "waistDart2Outer"],
        ["waistDartInner", "waistDartOuter"],
      ]);
    });
  });

  it("is a strip for each dart that moved, and none for the other", () => {
    expect(kinds(changesOf(twoDarts([20, 60], [20, 80]), printed).drafts)).toEqual([[["waistDart2"], 2]]);
    expect(kinds(changesOf(twoDarts([20, 80], [20, 80]), printed).drafts)).toEqual([
      [["waistDart"], 2],
      [["waistDart2"], 2],
    ]);
    // One near its seam, one far from it: the strip of the seam is that of the one.
    expect(kinds(changesOf(twoDarts([21.6, 60], [20, 80]), printed).drafts)).toEqual([
      [["seam"], 2],
      [["waistDart2"], 2],
    ]);
    expect(kinds(changesOf(twoDarts([20, 80], [21.6, 60]), printed).drafts)).toEqual([
      [["seam"], 2],
      [["waistDart"], 2],
    ]);
    // Both near their seams, a strip for each.
    const both = changesOf(twoDarts([21.6, 60], [21.6, 60]), printed).drafts;
    expect(both.map(({ legs }) => legs.map(({ dart }) => dart))).toEqual([
      ["waistDart2", "waistDart2"],
      ["waistDart", "waistDart"],
    ]);
  });

  it("is the mouth and 20 mm of the seam on either side, on the strip of a dart", () => {
    const own = only(changesOf(twoDarts([20, 60], [20, 80]), printed).drafts);
    expect(ends(own.seams)).toEqual([near(290, 300), near(230, 300)]);
    expect(own.seams.map(({ dart }) => dart)).toEqual([null, "waistDart2", "waistDart2", null]);
  });

  it("is a strip of the seam too where that changed beyond the mouth", () => {
    // The fold's tip moves the seam from 20 mm before it to 20 after, all of it on the strip of the dart; the side 10 mm out does not.
    const { drafts } = changesOf(twoDarts([20, 60], [20, 30], { out: 10 }), printed);
    expect(kinds(drafts)).toEqual([
      [["seam"], 0],
      [["waistDart2"], 2],
    ]);
    expect(drafts[0]?.seams.map(({ seam }) => seam)).toEqual(["neck", "side", "waist"]);
  });
});

describe("what was printed in the place of a line", () => {
  it("is the lines of the same seam alone", () => {
    // Neck and waist as they were, side and centre each called as the other: nothing moved, and half of 400 mm is of other seams.
    const named = (side: SeamName, centre: SeamName): Piece =>
      cornerPiece({
        corners: [
          ["centreNeck", 0, 0, "neck"],
          ["underarm", 100, 0, side],
          ["sideWaist", 100, 100, "waist"],
          ["centreWaist", 0, 100, centre],
        ],
      });
    expect(changesOf(named("side", "centre"), named("centre", "side")).share).toBeCloseTo(0.5, 6);
  });

  it("is the legs of the same dart alone", () => {
    const piece = twoDarts([20, 60], [20, 60]);
    const [first, second] = piece.darts.map(({ name, ...rest }) => ({ name, rest }));
    if (first === undefined || second === undefined) throw new Error("no darts");
    // The mouths keep their names, the legs are those of the other dart.
    const swapped: Piece = {
      ...piece,
      darts: [
        { ...second.rest, name: first.name },
        { ...first.rest, name: second.name },
      ],
      edges: piece.edges.map((edge) => ({
        ...edge,
        mouthOf: edge.mouthOf === first.name ? second.name : edge.mouthOf === second.name ? first.name : null,
      })),
    };
    const { share, drafts } = changesOf(swapped, piece);
    expect(share).toBe(0);
    expect(drafts.flatMap(({ of }) => of)).toEqual(
      [
        { kind: "dart", dart: "waistDart2" },
        { kind: "dart", dart: "waistDart" },
      ].toReversed(),
    );
  });
});

describe("the nearest of several lines", () => {
  const rows = [10, 40, 70].map((y) => lineEdge(piecePoint(0, y), piecePoint(100, y)));
  const nearest = nearestOfAll(rows);

  it.each([
    [50, 0, 50, 10],
    [50, 24, 50, 10],
    [50, 26, 50, 40],
    [50, 90, 50, 70],
    [-30, 42, 0, 40],
    [130, 68, 100, 70],
    [50, 25, 50, 10],
  ])("of (%d, %d) is at (%d, %d)", (x, y, toX, toY) => {
    const found = nearest(piecePoint(x, y));
    expect(found?.point).toEqual(near(toX, toY));
    expect(found?.distance).toBeCloseTo(Math.hypot(toX - x, toY - y), 9);
  });

  it("is none of none", () => {
    expect(nearestOfAll([])(piecePoint(0, 0))).toBeNull();
  });
});
