/** What of a square of 100 mm goes on strips, by hand: a corner moved, a dart's end moved, and the nearest of printed lines. */
import { describe, expect, it } from "vitest";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { changesOf, inParts, together, type Draft } from "../../../src/core/overlay/drafts";
import { nearestOfAll } from "../../../src/core/overlay/nearestOfAll";
import { ringLength } from "../../../src/core/overlay/ringParts";
import { levelLinesOf, sewnLegs, sewnRing, type SewnLine } from "../../../src/core/overlay/sewnLines";
import type { Piece } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
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
