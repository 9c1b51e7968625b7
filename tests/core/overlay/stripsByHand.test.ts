/** Whole strips of straight pieces, all that is on them by hand: lines, crosses, amounts, paper and the place of the words. */
import { describe, expect, it } from "vitest";
import type { EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { overlayOf } from "../../../src/core/overlay/overlayOf";
import type { Patch, PatchLine } from "../../../src/core/overlay/overlay";
import type { Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import type { CutLine } from "../../../src/core/plan/plan";
import { piecePoint } from "../../../src/core/geometry/point";
import { invariant } from "../../../src/core/result";
import { boxPiece } from "../../support/boxPiece";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { planOfPieces } from "../../support/overlayPlans";
import { turned } from "../../support/turnedPiece";

const A3 = 400;

/** Where a line begins to have changed is found to a hundredth of a millimetre. */
const near = (value: number): unknown => expect.closeTo(value, 1);
const nearPoint = ([x, y]: readonly [number, number]) => ({ x: near(x), y: near(y) });

/** The corners of a chain of straight lines, from its start to its end. */
const cornersOf = ({ edges }: PatchLine) => [
  invariant(edges[0], "edge").a,
  ...edges.map(({ b }: EdgeCurve<"piece">) => b),
];
const line = (kind: PatchLine["kind"], ...corners: readonly (readonly [number, number])[]) => ({
  kind,
  corners: corners.map(nearPoint),
});
const drawn = (lines: readonly PatchLine[]) => lines.map((one) => ({ kind: one.kind, corners: cornersOf(one) }));
const ringOf = (u0: number, v0: number, u1: number, v1: number) =>
  (
    [
      [u0, v0],
      [u1, v0],
      [u1, v1],
      [u0, v1],
    ] as const
  ).map(nearPoint);

const only = (patches: readonly Patch[]): Patch => {
  expect(patches).toHaveLength(1);
  return invariant(patches[0], "patch");
};

const cutLine = (piece: PieceName, level: CutLine["level"], between: readonly [string, string]): CutLine => ({
  piece,
  level,
  between,
  share: 0.5,
  offset: 0,
  alterationMove: 0,
  at: piecePoint(0, 0),
});

describe("a back of 200 by 300 mm, its side 10 mm further out", () => {
  const printed = boxPiece("back", 200, 300);
  const final = boxPiece("back", 210, 300);
  const plan = planOfPieces({
    printed: [printed],
    final: [final],
    sizes: [[boxPiece("back", 190, 300)], [boxPiece("back", 216, 300)]],
    also: {
      cutLines: [
        cutLine("back", "waist", ["12", "14"]),
        // Of the same two sizes again, of the bust and of another piece: no more lines, and no amounts.
        cutLine("back", "hip", ["12", "14"]),
        cutLine("back", "bust", ["10", "12"]),
        cutLine("front", "waist", ["10", "12"]),
      ],
    },
  });
  const thePatch = (): Patch => only(overlayOf(plan, ["back"], A3).patches);

  it("has the one strip, for both halves, on the base size", () => {
    const overlay = overlayOf(plan, ["back"], A3);
    const patch = only(overlay.patches);
    expect(overlay).toMatchObject({ baseSize: { label: "12", size: 1 }, same: [], tooMuch: [] });
    expect(patch).toMatchObject({ key: "back-1", piece: "back", tissue: "back", half: null, number: 1, count: 1 });
    expect(Object.keys(patch)).not.toContain("cup");
    expect(Object.keys(patch)).not.toContain("label");
    expect(patch.of).toEqual([{ kind: "seam", seam: "side", from: "underarm", to: "sideWaist" }]);
  });

  it("has her line on it from 19.5 mm inside the old corners: 20 from where it leaves the print by half a millimetre", () => {
    const patch = thePatch();
    expect(drawn(patch.changed)).toEqual([line("seam", [180.5, 0], [210, 0], [210, 300], [180.5, 300])]);
    expect(patch.ends).toEqual([]);
  });

  it("has the printed line on it as far as the paper goes, less 2 mm: 12 mm about her lines", () => {
    const patch = thePatch();
    expect(drawn(patch.baseSize)).toEqual([line("seam", [170.5, 0], [200, 0], [200, 300], [170.5, 300])]);
  });

  it("has the line of the next size on it, which hers runs between, and not of those that others do", () => {
    const patch = thePatch();
    expect(drawn(patch.neighbours)).toEqual([line("seam", [170.5, 0], [216, 0], [216, 300], [170.5, 300])]);
    expect(patch.neighbours.map(({ size, label }) => [size, label])).toEqual([[2, "14"]]);
  });

  it("has those of both sides where hers runs between other ones elsewhere, each by its size, of this piece and this seam", () => {
    const [smaller, larger] = [boxPiece("back", 184, 300), boxPiece("back", 216, 300)];
    const front = boxPiece("front", 205, 300);
    const both = planOfPieces({
      printed: [printed],
      final: [final],
      sizes: [
        [front, smaller],
        [front, larger],
      ],
      also: { cutLines: [cutLine("back", "hip", ["10", "12"]), cutLine("back", "waist", ["12", "14"])] },
    });
    const patch = only(overlayOf(both, ["back"], A3).patches);
    expect(drawn(patch.neighbours)).toEqual([
      line("seam", [170.5, 0], [184, 0], [184, 300], [170.5, 300]),
      line("seam", [170.5, 0], [216, 0], [216, 300], [170.5, 300]),
    ]);
    expect(patch.neighbours.map(({ size, label }) => [size, label])).toEqual([
      [0, "10"],
      [2, "14"],
    ]);
    // The words left of the smaller size at 184, 2.5 mm clear of it: 20 mm wider there. Down, from the edge at 0: at 3.
    expect(patch.ring).toEqual(ringOf(148.5, -12, 222, 312));
    expect(patch.title.centre).toEqual(nearPoint([151.5 + 14.5, 3 + 38]));
  });

  it("is laid on by the corners as printed, and says how far off the lower line hers runs there", () => {
    const patch = thePatch();
    expect(patch.layOn).toEqual([
      { name: "underarm", at: piecePoint(200, 0) },
      { name: "sideWaist", at: piecePoint(200, 300) },
    ]);
    expect(patch.amounts).toEqual([{ level: "waist", at: piecePoint(210, 300), between: ["12", "14"], offset: 10 }]);
  });

  it("has its words left of the old side, for which it is 4 mm wider there", () => {
    const patch = thePatch();
    // 3 mm from the edge, 29 wide and 2.5 clear of the old side at 200: from 168.5 on at the most. Down: from −9 in steps of 4,
    // 2.5 clear of the cross at the underarm, which reaches down to 4: at 7.
    expect(patch.title).toEqual({
      centre: nearPoint([167.5 + 14.5, 7 + 38]),
      width: 76,
      height: 29,
      turn: expect.closeTo(-Math.PI / 2, 9),
    });
    expect(patch.ring).toEqual(ringOf(164.5, -12, 222, 312));
  });

  it("has but 6 mm of paper about its lines where the page is else too short, and is parted where that is too long", () => {
    // 300 mm and 12 at either end are 324, with 6 they are 312.
    const at = (longest: number) => overlayOf(plan, ["back"], longest).patches;
    expect(only(at(324)).ring).toEqual(ringOf(164.5, -12, 222, 312));
    const narrow = only(at(323));
    expect(drawn(narrow.baseSize)).toEqual([line("seam", [176.5, 0], [200, 0], [200, 300], [176.5, 300])]);
    expect(only(at(312)).ring.map(({ y }) => y)).toEqual([-6, -6, 306, 306].map(near));
  });
});

/** Corners of a band 600 mm wide: `upper` from left to right, `lower` from right to left. */
const WIDE = 600;
const band = (
  height: number,
  upper: readonly CornerOf[],
  lower: readonly CornerOf[],
  also: Partial<Piece> = {},
): Piece => ({
  ...cornerPiece({
    name: "back",
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ...upper,
      ["underarm", WIDE, 0, "side"],
      ["sideWaist", WIDE, height, "waist"],
      ...lower,
      ["centreWaist", 0, height, "centre"],
    ],
  }),
  centreOnFold: false,
  ...also,
});

/** As printed: lines across it at 100, 200, 260 and 360 mm, whose ends are crosses to lay it on by. */
const printedBand = (height: number): Piece =>
  band(
    height,
    [
      ["sideNeck", 100, 0, "neck"],
      ["shoulderTip", 200, 0, "neck"],
      ["strapInner", 260, 0, "neck"],
      ["strapOuter", 360, 0, "neck"],
    ],
    [
      ["princessWaist", 360, height, "waist"],
      ["bandTopMiddle", 260, height, "waist"],
      ["waistMiddle", 200, height, "waist"],
      ["sideUnderBust", 100, height, "waist"],
    ],
    {
      levelLines: [
        { level: "neck", along: { points: ["sideNeck", "sideUnderBust"] } },
        { level: "bust", along: { points: ["shoulderTip", "waistMiddle"] } },
        { level: "waist", along: { points: ["strapInner", "bandTopMiddle"] } },
        { level: "hip", along: { points: ["strapOuter", "princessWaist"] } },
      ],
    },
  );

const NAMES = ["corner00", "corner01", "corner02", "corner03"] as const;
const MORE = ["corner04", "corner05", "corner06", "corner07"] as const;
const LOWER = ["corner10", "corner11", "corner12", "corner13"] as const;

/** A step out by 10 mm from one place to another, at a height. */
const step = (
  names: readonly PointName[],
  seam: CornerOf[3],
  [from, to]: readonly [number, number],
  y: number,
  out: number,
): readonly CornerOf[] =>
  names.map((name, index): CornerOf => [name, index < 2 ? from : to, index % 3 === 0 ? y : y + out, seam]);

describe("a band with steps of 10 mm in its edges", () => {
  const upper = step(NAMES, "neck", [100, 200], 0, -10);
  const further = step(MORE, "neck", [260, 360], 0, -10);
  const lower = (height: number) => step(LOWER, "waist", [200, 100], height, 10);
  const laid = (final: Piece, height: number, longest = A3) =>
    overlayOf(planOfPieces({ printed: [printedBand(height)], final: [final] }), ["back"], longest);

  it("has the whole step on one strip, 19.5 mm on at either end, and widened for its words", () => {
    const patch = only(laid(band(80, upper, []), 80).patches);
    expect(drawn(patch.changed)).toEqual([
      line("seam", [80.5, 0], [100, 0], [100, -10], [200, -10], [200, 0], [219.5, 0]),
    ]);
    expect(drawn(patch.baseSize)).toEqual([
      line("seam", [70.5, 0], [100, 0], [200, 0], [229.5, 0]),
      line("level", [100, 0], [100, 10]),
      line("level", [200, 0], [200, 10]),
    ]);
    expect(patch.layOn.map(({ name }) => name)).toEqual(["sideNeck", "shoulderTip"]);
    // 3 + 29 + 2.5 mm above her line at −10: 12 are there, and in steps of four 24 more.
    expect(patch.ring).toEqual(ringOf(68.5, -46, 231.5, 12));
    expect(patch.title).toEqual({ centre: nearPoint([71.5 + 38, -43 + 14.5]), width: 76, height: 29, turn: 0 });
    expect(patch.of).toEqual([{ kind: "seam", seam: "neck", from: "centreNeck", to: "centreNeck" }]);
  });

  it("has of the next size the edge alone that it is of", () => {
    // The waist of the next size lies 5 mm below its neck, on the same paper.
    const plan = planOfPieces({
      printed: [printedBand(80)],
      final: [band(80, upper, [])],
      sizes: [[printedBand(80)], [band(5, [], [])]],
      also: { cutLines: [cutLine("back", "waist", ["12", "14"])] },
    });
    const patch = only(overlayOf(plan, ["back"], A3).patches);
    expect(drawn(patch.neighbours)).toEqual([line("seam", [70.5, 0], [229.5, 0])]);
  });

  it("is named by the nearest points of its own edge, whatever lies nearer", () => {
    const crossed = band(60, upper, [["sideUnderBust", 100, 60, "waist"]], {
      levelLines: [{ level: "bust", along: { points: ["sideUnderBust"] } }],
    });
    // From (80.5, 0) the one on the waist is 63 mm off, that on the neck 80.5.
    expect(only(laid(crossed, 60).patches).of).toEqual([
      { kind: "seam", seam: "neck", from: "centreNeck", to: "centreNeck" },
    ]);
  });

  it("has beside her line what is printed of its own edge, though another's is nearer", () => {
    // 28 mm in: the waist is 12 mm off. 12 mm about 0 to 28, and 24 above, for words between the crosses, 2.5 mm clear of the neck.
    const patch = only(laid(band(40, step(NAMES, "neck", [100, 200], 0, 28), []), 40).patches);
    expect(patch.ring).toEqual(ringOf(68.5, -36, 231.5, 40));
    expect(patch.title.centre).toEqual(nearPoint([107.5 + 38, -33 + 14.5]));
  });

  it("has two strips where they lie apart, and one for both where that is less paper", () => {
    // 163 by 58 each. At 60 mm the lower one begins at 24, past the upper one's 12: what is between them would be bare.
    const apart = laid(band(60, upper, lower(60)), 60).patches;
    expect(apart.map(({ ring }) => ring)).toEqual([ringOf(68.5, -46, 231.5, 12), ringOf(68.5, 24, 231.5, 82)]);
    expect(apart.map(({ key, number, count }) => [key, number, count])).toEqual([
      ["back-1", 1, 2],
      ["back-2", 2, 2],
    ]);
    // At 40 mm they overlap; 163 by 84 hold both, and the words between them and the crosses.
    const both = only(laid(band(40, upper, lower(40)), 40).patches);
    expect(both.of).toEqual([
      { kind: "seam", seam: "neck", from: "centreNeck", to: "centreNeck" },
      { kind: "seam", seam: "waist", from: "centreWaist", to: "centreWaist" },
    ]);
    expect(drawn(both.changed)).toEqual([
      line("seam", [80.5, 0], [100, 0], [100, -10], [200, -10], [200, 0], [219.5, 0]),
      line("seam", [219.5, 40], [200, 40], [200, 50], [100, 50], [100, 40], [80.5, 40]),
    ]);
    expect(both.ring).toEqual(ringOf(68.5, -22, 231.5, 62));
    expect(both.title).toEqual({ centre: nearPoint([107.5 + 38, 5 + 14.5]), width: 76, height: 29, turn: 0 });
    expect(both.layOn.map(({ name }) => name)).toEqual(["sideNeck", "shoulderTip", "waistMiddle", "sideUnderBust"]);
  });

  it("joins first what saves most, and nothing that saves nothing", () => {
    // Upper and lower: 2 · 163 · 58 − 163 · 84 = 5216 mm² saved. The two upper ones: 2 · 163 · 58 − 323 · 58 = 174, after which
    // 323 · 84 would hold all three; but to 163 · 84 the third adds more than its own 163 · 58.
    const { patches } = laid(band(40, [...upper, ...further], lower(40)), 40);
    expect(patches.map(({ ring }) => ring)).toEqual([ringOf(68.5, -22, 231.5, 62), ringOf(228.5, -46, 391.5, 12)]);
    expect(patches.map(({ of }) => of.length)).toEqual([2, 1]);
    expect(patches[1]?.of).toEqual([{ kind: "seam", seam: "neck", from: "centreNeck", to: "underarm" }]);
    // The same with the third below.
    const below = laid(band(40, upper, [...step(MORE, "waist", [360, 260], 40, 10), ...lower(40)]), 40).patches;
    expect(below.map(({ ring }) => ring)).toEqual([ringOf(68.5, -22, 231.5, 62), ringOf(228.5, 4, 391.5, 62)]);
    const two = laid(band(40, [...upper, ...further], []), 40).patches;
    expect(only(two).ring).toEqual(ringOf(68.5, -46, 391.5, 12));
  });
});

describe("a dart in the middle of a waist, its end 20 mm further up", () => {
  const dartPiece = (end: number): Piece =>
    cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 300, 0, "side"],
        ["sideWaist", 300, 200, "waist"],
        ["waistDartOuter", 160, 200, "waist", "waistDart"],
        ["waistDartInner", 140, 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
      inside: { waistDartApex: [150, end] },
      darts: [dartFor("waistDart", "waist")],
    });
  const plan = planOfPieces({
    printed: [dartPiece(100)],
    final: [dartPiece(80)],
    also: { cutLines: [cutLine("back", "waist", ["12", "14"])] },
  });
  const thePatch = (): Patch => only(overlayOf(plan, ["back"], A3).patches);
  // The seam beside the dart, within half the dart's angle a, turned over its leg: depth / cos 2a below the end, tan a = 10 / depth.
  const tip = (end: number): number => end + (200 - end) / Math.cos(2 * Math.atan(10 / (200 - end)));

  it("is a strip of the dart, 20 mm of the seam on either side", () => {
    const patch = thePatch();
    expect(patch.of).toEqual([{ kind: "dart", dart: "waistDart" }]);
    expect(drawn(patch.changed)).toEqual([
      line("seam", [180, 200], [160, 200], [150, tip(80)], [140, 200], [120, 200]),
      line("dartLeg", [140, 200], [150, 80]),
      line("dartLeg", [160, 200], [150, 80]),
    ]);
    expect(patch.ends).toEqual([piecePoint(150, 80)]);
    expect(patch.neighbours).toEqual([]);
    expect(patch.amounts).toEqual([]);
  });

  it("has the dart as printed on it, and its crosses", () => {
    const patch = thePatch();
    expect(drawn(patch.baseSize)).toEqual([
      line("seam", [190, 200], [160, 200], [150, tip(100)], [140, 200], [110, 200]),
      line("dartLeg", [140, 200], [150, 100]),
      line("dartLeg", [160, 200], [150, 100]),
    ]);
    expect(patch.layOn.map(({ name }) => name)).toEqual(["waistDartOuter", "waistDartInner", "waistDartApex"]);
  });

  it("lies upright, 12 mm about its lines and what is printed beside them, its words beside the dart", () => {
    const patch = thePatch();
    expect(patch.ring).toEqual(ringOf(108, 68, 192, tip(100) + 12));
    expect(patch.title).toEqual({
      centre: nearPoint([111 + 14.5, 71 + 38]),
      width: 76,
      height: 29,
      turn: expect.closeTo(-Math.PI / 2, 9),
    });
  });

  it("has no fold of the dart as printed where the lines are of a file, which need not have it", () => {
    const own = planOfPieces({ printed: [dartPiece(100)], final: [dartPiece(80)], nest: { source: "own" } });
    expect(drawn(only(overlayOf(own, ["back"], A3).patches).baseSize).slice(0, 2)).toEqual([
      line("seam", [190, 200], [160, 200]),
      line("seam", [140, 200], [110, 200]),
    ]);
    // A piece of hers as it was before has it.
    const old = planOfPieces({ printed: [], final: [dartPiece(100)] });
    expect(drawn(only(overlayOf(own, ["back"], A3, old).patches).baseSize)[0]).toEqual(
      line("seam", [190, 200], [160, 200], [150, tip(100)], [140, 200], [110, 200]),
    );
  });
});

const turnedPoint = ([x, y]: readonly [number, number], degrees: number) => {
  const [cosine, sine] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return nearPoint([x * cosine - y * sine, x * sine + y * cosine]);
};

describe("a piece that lies at a slant", () => {
  const upper = step(NAMES, "neck", [100, 200], 0, -10);
  const laid = (degrees: number): Patch =>
    only(
      overlayOf(
        planOfPieces({ printed: [turned(printedBand(80), degrees)], final: [turned(band(80, upper, []), degrees)] }),
        ["back"],
        A3,
      ).patches,
    );

  it("has its strip along its line: at 30° it is the upright one, turned", () => {
    const patch = laid(30);
    expect(patch.ring).toEqual(
      (
        [
          [68.5, -46],
          [231.5, -46],
          [231.5, 12],
          [68.5, 12],
        ] as const
      ).map((at) => turnedPoint(at, 30)),
    );
    expect(patch.title).toEqual({
      centre: turnedPoint([71.5 + 38, -43 + 14.5], 30),
      width: 76,
      height: 29,
      turn: expect.closeTo(Math.PI / 6, 9),
    });
  });

  it("has a strip turned by 45° at the most: at 60° by −30°, its words up the strip", () => {
    const patch = laid(60);
    // Turned by −30° the edge runs up the strip. Words on its right, over her line, would want 28 mm more; on its left, between
    // the two crosses, 24.
    expect(patch.ring).toEqual(
      (
        [
          [68.5, 36],
          [68.5, -22],
          [231.5, -22],
          [231.5, 36],
        ] as const
      ).map((at) => turnedPoint(at, 60)),
    );
    expect(patch.title).toEqual({
      centre: turnedPoint([107.5 + 38, 4 + 14.5], 60),
      width: 76,
      height: 29,
      turn: expect.closeTo((-120 * Math.PI) / 180, 9),
    });
  });
});

describe("a long dart at a slant", () => {
  const piece = (end: number, bust = end): Piece =>
    turned(
      cornerPiece({
        name: "back",
        corners: [
          ["centreNeck", -200, -500, "neck"],
          ["underarm", 200, -500, "side"],
          ["sideWaist", 200, 0, "waist"],
          ["waistDartOuter", 10, 0, "waist", "waistDart"],
          ["waistDartInner", -10, 0, "waist"],
          ["centreWaist", -200, 0, "centre"],
        ],
        inside: { waistDartApex: [0, end], bustPoint: [0, bust] },
        darts: [dartFor("waistDart", "waist")],
      }),
      45,
    );
  const patches = (longest: number) =>
    overlayOf(planOfPieces({ printed: [piece(-270, -160)], final: [piece(-300)] }), ["back"], longest).patches;
  const along = ({ ring: [a, b] }: Patch): number =>
    a === undefined || b === undefined ? Number.NaN : Math.atan2(b.y - a.y, b.x - a.x);

  it("has its strip along its inner leg", () => {
    const patch = only(patches(A3));
    // From (−10, 0) to (0, −300), turned by 45°, is −43.09°: no quarter of a round is taken off.
    expect(along(patch)).toBeCloseTo(Math.atan2(-300, 10) + Math.PI / 4, 6);
    expect(patch.ends).toEqual([turnedPoint([0, -300], 45)]);
  });

  it("is parted along its legs where it is too long, its end on the last strip alone", () => {
    // Upright at 45° a strip of length l and width w reaches (l + w) / √2.
    const [first, last, ...more] = patches(240);
    expect(more).toEqual([]);
    expect([first?.ends, last?.ends]).toEqual([[], [turnedPoint([0, -300], 45)]]);
    expect([first, last].map((patch) => patch?.changed.map(({ kind }) => kind))).toEqual([
      ["seam", "dartLeg", "dartLeg"],
      ["dartLeg", "dartLeg"],
    ]);
  });
});

describe("what is printed beside her line", () => {
  const BACK = 300;
  /** Two crosses off the piece, 40 mm outside its printed side. */
  const piece = (width: number): Piece => {
    const plain = boxPiece("back", width, 600);
    const at = (y: number) => ({ at: piecePoint(BACK + 40, y), level: "bust" as const });
    return { ...plain, points: { ...plain.points, bustPoint: at(50), princessBust: at(550) } };
  };
  const side = (out: number): Patch => {
    const plan = planOfPieces({ printed: [piece(BACK)], final: [piece(BACK + out)] });
    const { patches } = overlayOf(plan, ["back"], 700);
    expect(patches).toHaveLength(3);
    return only(patches.filter(({ of: [of] }) => of?.kind === "seam" && of.seam === "side"));
  };

  it("is on the strip where it lies 60 mm off or nearer, of the same seam", () => {
    // The side's strip begins 20 mm inside the new corner, on the neck: 59.99 mm off the old corner, which is the nearest of it.
    expect(side(79.99).ring).toEqual(ringOf(BACK - 12, -12, BACK + 91.99, 612));
    expect(side(79.99).layOn.map(({ name }) => name)).toEqual(["underarm", "sideWaist", "bustPoint", "princessBust"]);
    // At 60.01 mm nothing is: the strip goes as far as the crosses that it is laid on by.
    expect(side(80.01).ring).toEqual(ringOf(BACK + 28, -12, BACK + 92.01, 612));
    expect(side(80.01).layOn.map(({ name }) => name)).toEqual(["bustPoint", "princessBust"]);
    expect(side(80.01).baseSize).toEqual([]);
  });
});

describe("how far off the lower printed line hers runs", () => {
  const hipped = (waist: number, hip: number, down = 0): Piece =>
    cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 200, 0, "side"],
        ["sideWaist", waist, 150, "side"],
        ["sideHip", hip, 300 + down, "waist"],
        ["centreHip", 0, 300 + down, "centre"],
      ],
    });
  const amounts = (final: Piece, cutLines: readonly CutLine[]) =>
    overlayOf(
      planOfPieces({
        printed: [hipped(200, 200)],
        final: [final],
        sizes: [[hipped(190, 188)], [hipped(212, 214)]],
        also: { cutLines },
      }),
      ["back"],
      A3,
    ).patches.flatMap((patch) => patch.amounts.map(({ level, at, between, offset }) => [level, at.x, between, offset]));
  const waist = cutLine("back", "waist", ["10", "12"]);
  const hip = cutLine("back", "hip", ["12", "14"]);

  it("is told at the waist and at the hip, where they are on the strip", () => {
    expect(amounts(hipped(206, 208), [waist, hip])).toEqual([
      ["waist", 206, ["10", "12"], 16],
      ["hip", 208, ["12", "14"], 8],
    ]);
    expect(amounts(hipped(197, 193), [waist, hip])).toEqual([
      ["waist", 197, ["10", "12"], 7],
      ["hip", 193, ["12", "14"], -7],
    ]);
    // The side leaves the print 37.5 mm below the waist, so that the strip begins 17.5 mm below it.
    expect(amounts(hipped(200, 202), [waist, hip])).toEqual([["hip", 202, ["12", "14"], 2]]);
  });

  it("is not told where hers lies more than 10 mm higher or lower, nor of a size that is not there", () => {
    // A strip of the side and one of the waist, both with the corner.
    expect(amounts(hipped(206, 208, 10), [hip])).toHaveLength(2);
    expect(amounts(hipped(206, 208, 10.1), [hip])).toEqual([]);
    expect(amounts(hipped(206, 208, -10.1), [hip])).toEqual([]);
    expect(amounts(hipped(206, 208), [cutLine("back", "hip", ["8", "10"])])).toEqual([]);
    const short = boxPiece("back", 210, 300);
    expect(amounts(short, [hip])).toEqual([]);
  });
});

describe("a long side", () => {
  const DIGITS = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9] as const;
  const SPOTS = ([2, 3, 4] as const).flatMap((tens) => DIGITS.map((digit): PointName => `corner${tens}${digit}`));
  /** With a cross every 60 mm down its side, and no line across. */
  const sided = (width: number, height: number): Piece => {
    const names = SPOTS.slice(0, Math.ceil(height / 60) - 1);
    return cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", width, 0, "side"],
        ...names.map((name, index): CornerOf => [name, width, (index + 1) * 60, "side"]),
        ["sideWaist", width, height, "waist"],
        ["centreWaist", 0, height, "centre"],
      ],
      levelLines: names.map((name) => ({ level: "bust", along: { points: [name] } })),
    });
  };
  const parts = (height: number) =>
    overlayOf(planOfPieces({ printed: [sided(400, height)], final: [sided(410, height)] }), ["back"], 200);

  it("is parted into eight strips at the most", () => {
    // 59 mm of neck and waist, and the side: 1259 mm in eight are 157.4 each, 20 to lie over the others and 6 of paper at either end.
    const { patches } = parts(1200);
    expect(patches.map(({ number, count }) => [number, count])).toEqual([1, 2, 3, 4, 5, 6, 7, 8].map((n) => [n, 8]));
    // 1359 mm in eight are 169.9 each: 201.9 mm of paper.
    expect(parts(1300).tooMuch).toEqual([{ piece: "back", half: null, why: "noHold" }]);
  });
});

describe("what is printed beside the legs of a dart", () => {
  const piece = (at: number): Piece =>
    cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 300, 0, "side"],
        ["sideWaist", 300, 200, "waist"],
        ["waistDartOuter", 160, 200, "waist", "waistDart"],
        ["waistDartInner", 140, 200, "waist"],
        ["waistDart2Outer", 100, 200, "waist", "waistDart2"],
        ["waistDart2Inner", 80, 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
      inside: { waistDartApex: [at, 80], bustPoint: [130, 120], waistDart2Apex: [115, 95] },
      darts: [dartFor("waistDart", "waist"), dartFor("waistDart2", "waist")],
    });

  it("is on its strip as far as it lies beside the new ones", () => {
    const plan = planOfPieces({ printed: [piece(200)], final: [piece(150)] });
    const patch = only(overlayOf(plan, ["back"], A3).patches.filter(({ of: [of] }) => of?.kind === "dart"));
    // From (150, 80) the foot on the leg from (140, 200) to (200, 80) is (190, 100), 44.7 mm off; that on the other leg is further.
    // The end of the other dart, at (115, 95), is nearer, and does not count.
    expect(Math.max(...patch.ring.map(({ x }) => x))).toBeCloseTo(190 + 12, 1);
    expect(patch.layOn.map(({ name }) => name)).toEqual([
      "waistDartOuter",
      "waistDartInner",
      "bustPoint",
      "waistDart2Apex",
    ]);
    // And it does not end here.
    expect(patch.ends).toEqual([piecePoint(150, 80)]);
  });
});

describe("a dart beside a side that is 10 mm further out", () => {
  const piece = (width: number, end: number): Piece =>
    cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", width, 0, "side"],
        ["sideWaist", width, 200, "waist"],
        ["waistDartOuter", 270, 200, "waist", "waistDart"],
        ["waistDartInner", 250, 200, "waist"],
        ["centreWaist", 0, 200, "centre"],
      ],
      inside: { waistDartApex: [260, end] },
      darts: [dartFor("waistDart", "waist")],
    });
  const tip = 100 + 100 / Math.cos(2 * Math.atan(10 / 100));
  const patchOf = (source: "standIn" | "own"): Patch =>
    only(
      overlayOf(
        planOfPieces({
          printed: [piece(300, 100)],
          final: [piece(310, 80)],
          sizes: [[piece(290, 100)], [piece(316, 100)]],
          nest: { source },
          also: { cutLines: [cutLine("back", "waist", ["12", "14"])] },
        }),
        ["back"],
        A3,
      ).patches,
    );

  it("is on one strip with it, where that is less paper: with all that is on either", () => {
    // 84 by 146 and 57.5 by 224 are 25 144 mm², from 218 to 322 by 226, to the fold and 12 mm beyond, are 23 504.
    const patch = patchOf("standIn");
    expect(patch.of.map((of) => (of.kind === "dart" ? of.dart : of.seam))).toEqual(["side", "waistDart"]);
    expect(patch.ring).toEqual(ringOf(218, -12, 322, tip + 12));
    expect(patch.ends).toEqual([piecePoint(260, 80)]);
    expect(patch.changed.map(({ kind }) => kind)).toEqual(["seam", "seam", "dartLeg", "dartLeg"]);
    // Across it, over the dart and left of the cross at (300, 0), which reaches down to 4.
    expect(patch.title.centre).toEqual(nearPoint([221 + 38, 7 + 14.5]));
    expect(drawn(patch.neighbours)).toEqual([
      line("seam", [220, 0], [316, 0], [316, 200], [270, 200], [260, tip], [250, 200], [220, 200]),
    ]);
  });

  it("has no fold of the dart in another size where the lines are of a file", () => {
    expect(drawn(patchOf("own").neighbours)).toEqual([
      line("seam", [220, 0], [316, 0], [316, 200], [270, 200]),
      line("seam", [250, 200], [220, 200]),
    ]);
  });
});

describe("a strip that begins on the seam before its own", () => {
  it("is named from where its own begins", () => {
    // The neck rises steeply to the underarm, and goes 20 mm on; the strip begins 39.5 mm down it, nearer to the bust's end of the side.
    const steep = (on: number): Piece => {
      const [x, y] = [200 + (on * 200) / Math.hypot(200, 600), (-on * 600) / Math.hypot(200, 600)];
      return cornerPiece({
        name: "back",
        corners: [
          ["centreNeck", 0, 600, "neck"],
          ["underarm", x, y, "side"],
          ["sideBust", x, 18, "side"],
          ["sideWaist", x, 800, "waist"],
          ["centreWaist", 0, 800, "centre"],
        ],
        levelLines: [{ level: "bust", along: { points: ["sideBust"] } }],
      });
    };
    const plan = planOfPieces({ printed: [steep(0)], final: [steep(20)] });
    expect(only(overlayOf(plan, ["back"], 1000).patches).of).toEqual([
      { kind: "seam", seam: "side", from: "underarm", to: "sideWaist" },
    ]);
  });
});
