/** What pieces give of a body's lengths, on straight pieces: sides of 3, 4 and 5, of 5, 12 and 13, and proportions done by hand. */
import { describe, expect, it } from "vitest";
import type { PrintedLength } from "../../../src/core/decisions/pattern";
import type { Piece, PointName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { bustPieceIn, garmentLength, type DartsMoved } from "../../../src/core/proposals/garmentLengths";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { seamedPiece } from "../../support/seamedPiece";

const lengthOf = (measure: PrintedLength, pieces: readonly Piece[], moved?: DartsMoved): number | null =>
  garmentLength(measure, setOf(pieces), moved);

const without = (piece: Piece, point: PointName): Piece => {
  const { [point]: _gone, ...points } = piece.points;
  return { ...piece, points };
};

const WAIST: readonly CornerOf[] = [
  ["sideWaist", 220, 400, "waist"],
  ["centreWaist", 0, 400, "centre"],
];
/** Its bust point lies 75 out and 180 down from the side neck at (60, 0): 195 away. Its shoulder is 50 long, its neck 100. */
const frontOver = (waist: readonly CornerOf[] = WAIST, curves = {}): Piece =>
  cornerPiece({
    corners: [
      ["centreNeck", 0, 80, "neck"],
      ["sideNeck", 60, 0, "shoulder"],
      ["shoulderTip", 90, 40, "armhole"],
      ["armholeTouch", 150, 120, "armhole"],
      ["underarm", 220, 200, "side"],
      ...waist,
    ],
    inside: { bustPoint: [135, 180], centreBust: [15, 180] },
    curves,
  });
const front = frontOver();

describe("the back waist", () => {
  const back = seamedPiece("back", { neck: 80, centre: 400 });
  it("is the centre back, and on over a band", () => {
    expect(lengthOf("backWaistLength", [back])).toBe(400);
    expect(lengthOf("backWaistLength", [back, seamedPiece("backBand", { centre: 60, waist: 100 })])).toBe(460);
  });
  it("is none where the back, its centre or that of its band is missing", () => {
    expect(lengthOf("backWaistLength", [])).toBeNull();
    expect(lengthOf("backWaistLength", [seamedPiece("backBand", { centre: 60 })])).toBeNull();
    expect(lengthOf("backWaistLength", [seamedPiece("back", { neck: 80 })])).toBeNull();
    expect(lengthOf("backWaistLength", [back, seamedPiece("backBand", { waist: 60 })])).toBeNull();
  });
});

describe("the bust point", () => {
  const cup = cornerPiece({
    name: "cup",
    corners: [
      ["strapInner", 30, 0, "strap"],
      ["strapOuter", 40, 0, "armhole"],
      ["waistDartOuter", 130, 150, "underBust"],
    ],
    inside: { bustPoint: [80, 100], strapAim: [35, 40] },
  });
  const centreFront = cornerPiece({
    name: "centreFront",
    corners: [["sideNeck", 10, 10, "shoulder"]],
    inside: { bustPoint: [15, 22] },
  });

  it("is that of the front, else of the centre front, else of the cup", () => {
    const pieceIn = (...pieces: readonly Piece[]): string | undefined => bustPieceIn(setOf(pieces))?.name;
    expect(pieceIn(cup, centreFront, front)).toBe("front");
    expect(pieceIn(cup, centreFront, without(front, "bustPoint"))).toBe("centreFront");
    expect(pieceIn(cup)).toBe("cup");
    expect(pieceIn(seamedPiece("back", { centre: 10 }))).toBeUndefined();
  });

  it("is so deep below the side neck, or below where a strap goes over the shoulder, strap and all", () => {
    expect(lengthOf("sideNeckToBustPoint", [front])).toBe(195);
    expect(lengthOf("sideNeckToBustPoint", [centreFront])).toBe(13);
    // 45 and 60 make 75; the strap is 210 long, 20 wide.
    expect(lengthOf("sideNeckToBustPoint", [cup])).toBe(75);
    expect(lengthOf("sideNeckToBustPoint", [cup, seamedPiece("strap", { neck: 210, strap: 20 })])).toBe(285);
    // Of both places the side neck counts.
    const both: Piece = { ...front, points: { ...cup.points, ...front.points } };
    expect(lengthOf("sideNeckToBustPoint", [both])).toBe(195);
  });

  it("is told by where the darts aim after her redraws", () => {
    // 75 + 5 out and 180 - 30 down: 80 and 150 make 170.
    expect(lengthOf("sideNeckToBustPoint", [front], { out: 5, down: -30 })).toBe(170);
    expect(lengthOf("bustPointWidth", [front], { out: 5, down: -30 })).toBe(250);
    expect(lengthOf("bustPointWidth", [front], { out: -5, down: 0 })).toBe(230);
  });

  it("is so far from the other one: twice its distance from the centre", () => {
    expect(lengthOf("bustPointWidth", [front])).toBe(240);
    expect(lengthOf("bustPointWidth", [without(front, "centreBust")])).toBe(270);
  });

  it("is nowhere without one, nor deep below nothing", () => {
    expect(lengthOf("bustPointWidth", [without(front, "bustPoint")])).toBeNull();
    expect(lengthOf("sideNeckToBustPoint", [without(front, "bustPoint")])).toBeNull();
    expect(lengthOf("sideNeckToBustPoint", [without(front, "sideNeck")])).toBeNull();
    expect(lengthOf("frontWaistLength", [without(front, "bustPoint")])).toBeNull();
    expect(lengthOf("frontWaistLength", [without(front, "sideNeck")])).toBeNull();
    expect(lengthOf("bustPointWidth", [])).toBeNull();
  });
});

describe("the front waist", () => {
  const to = (waist: readonly CornerOf[], curves = {}): number | null =>
    lengthOf("frontWaistLength", [frontOver(waist, curves)]);

  it("runs over the bust point and straight down to the waist below it", () => {
    expect(to(WAIST)).toBe(195 + 220);
    // From 370 at x 270 to 400 at 0: half way, 385.
    const slanting: readonly CornerOf[] = [
      ["sideWaist", 270, 370, "waist"],
      ["centreWaist", 0, 400, "centre"],
    ];
    expect(to(slanting)).toBeCloseTo(195 + 205, 9);
    // A cubic whose controls hang 30 lower, at thirds of its width: in its middle three quarters of that.
    const level: readonly CornerOf[] = [["sideWaist", 270, 400, "waist"], ...WAIST.slice(1)];
    const hanging = {
      sideWaist: [
        [180, 430],
        [90, 430],
      ],
    };
    expect(to(level, hanging)).toBeCloseTo(195 + 220 + 22.5, 9);
  });

  it("reaches the lowest place of a waist that it crosses more than once, and no other seam", () => {
    expect(
      to([
        ["sideWaist", 200, 400, "waist"],
        ["corner00", 120, 400, "waist"],
        ["corner01", 150, 430, "waist"],
        ["centreWaist", 0, 430, "centre"],
      ]),
    ).toBeCloseTo(195 + 250, 9);
    expect(
      to([
        ["sideWaist", 220, 400, "waist"],
        ["corner00", 100, 400, "hem"],
        ["corner01", 200, 450, "hem"],
        ["centreWaist", 0, 450, "centre"],
      ]),
    ).toBeCloseTo(195 + 220, 9);
  });

  it("ends at the princess seam's foot, else at the centre's, where the waist does not reach below it", () => {
    const narrow: readonly CornerOf[] = [
      ["sideWaist", 100, 395, "waist"],
      ["centreWaist", 0, 390, "centre"],
    ];
    expect(to(narrow)).toBe(195 + 210);
    expect(to([["princessWaist", 100, 395, "waist"], ...narrow.slice(1)])).toBe(195 + 215);
    expect(lengthOf("frontWaistLength", [without(frontOver(narrow), "bustPoint")])).toBeNull();
    expect(
      to([
        ["sideWaist", 100, 395, "waist"],
        ["corner00", 0, 390, "centre"],
      ]),
    ).toBeNull();
  });

  it("does not go by her redraws: the end of a dart is no part of it", () =>
    expect(lengthOf("frontWaistLength", [front], { out: 20, down: 20 })).toBe(415));

  // Bust point at (80, 100), 75 below the strap's place; from there 50 and 100 to the ends of the mouth below it.
  const cupWith = (darts: Piece["darts"]): Piece =>
    cornerPiece({
      name: "cup",
      corners: [
        ["strapInner", 30, 0, "strap"],
        ["strapOuter", 40, 0, "armhole"],
        ["underBustDartOuter", 140, 180, "underBust", "underBustDart"],
        ["underBustDartInner", 50, 140, "underBust"],
        ["sideDartInner", 80, 130, "side"],
        ["sideDartOuter", 80, 170, "side"],
      ],
      inside: { bustPoint: [80, 100], strapAim: [35, 40] },
      darts,
    });
  const lower = dartFor("underBustDart", "underBust", "bustPoint");
  const side = dartFor("sideDart", "side", "bustPoint");
  const band = seamedPiece("frontBand", { underBust: 200, centre: 90 });

  it("of a cup runs to where the mouth of its lower dart shuts, and over the band", () => {
    expect(lengthOf("frontWaistLength", [cupWith([lower]), band])).toBe(75 + 75 + 90);
    expect(lengthOf("frontWaistLength", [cupWith([side, lower]), band])).toBe(75 + 75 + 90);
    const strap = seamedPiece("strap", { neck: 300, strap: 20 });
    expect(lengthOf("frontWaistLength", [cupWith([lower]), band, strap])).toBe(375 + 75 + 90);
  });

  it("of a cup without such a dart, or over a band without a centre, is none", () => {
    expect(lengthOf("frontWaistLength", [cupWith([side]), band])).toBeNull();
    expect(lengthOf("frontWaistLength", [cupWith([]), band])).toBeNull();
    expect(lengthOf("frontWaistLength", [cupWith([lower]), seamedPiece("frontBand", { underBust: 200 })])).toBeNull();
  });
});

describe("widths", () => {
  const back = cornerPiece({
    name: "back",
    corners: [
      ["centreNeck", 20, 0, "neck"],
      ["sideNeck", 80, 0, "shoulder"],
      ["shoulderTip", 140, 20, "armhole"],
      ["armholeTouch", 160, 100, "armhole"],
      ["underarm", 200, 200, "side"],
      ["centreWaist", 0, 400, "centre"],
    ],
  });

  it("across back and front are twice that of the half at the turn of the armhole", () => {
    // The centre runs from (0, 400) to (20, 0): at 100 it lies at 15.
    expect(lengthOf("acrossBack", [back])).toBeCloseTo(2 * 145, 9);
    expect(lengthOf("acrossFront", [front])).toBeCloseTo(2 * 150, 9);
    expect(lengthOf("acrossBack", [without(back, "armholeTouch")])).toBeNull();
    expect(lengthOf("acrossFront", [without(front, "armholeTouch")])).toBeNull();
    expect(lengthOf("acrossBack", [front])).toBeNull();
    expect(lengthOf("acrossFront", [back])).toBeNull();
  });

  const centreFront = (foot: number): Piece =>
    cornerPiece({
      name: "centreFront",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["sideNeck", 50, 0, "shoulder"],
        ["princessTop", 60, 20, "princess"],
        ["princessWaist", 60 + foot / 10, 20 + foot, "waist"],
        ["centreWaist", 0, 20 + foot, "centre"],
      ],
    });
  const sideFront = cornerPiece({
    name: "sideFront",
    corners: [
      ["princessTop", 70, 30, "shoulder"],
      ["shoulderTip", 120, 30, "armhole"],
      ["armholeTouch", 160, 90, "armhole"],
      ["underarm", 200, 180, "side"],
      ["princessWaist", 40, 330, "princess"],
    ],
  });

  it("across a front with a princess seam add up where its two pieces meet", () => {
    // 60 below the top of the seam: 66 wide on the centre front, from 64 to 160 on the side front.
    expect(lengthOf("acrossFront", [centreFront(300), sideFront])).toBeCloseTo(2 * (66 + 96), 9);
    expect(lengthOf("acrossFront", [centreFront(50), sideFront])).toBeNull();
    expect(lengthOf("acrossFront", [centreFront(300)])).toBeNull();
    expect(lengthOf("acrossFront", [sideFront])).toBeNull();
    expect(lengthOf("acrossFront", [centreFront(300), without(sideFront, "armholeTouch")])).toBeNull();
    expect(lengthOf("acrossFront", [centreFront(300), without(sideFront, "princessTop")])).toBeNull();
  });

  it("of the shoulder are sewn on all pieces of the front that have some of it", () => {
    expect(lengthOf("shoulderLength", [front, back])).toBe(50);
    // 10 and 20 make √500; 50 on the side front.
    expect(lengthOf("shoulderLength", [centreFront(300), sideFront])).toBeCloseTo(Math.sqrt(500) + 50, 9);
    expect(lengthOf("shoulderLength", [sideFront])).toBe(50);
    expect(lengthOf("shoulderLength", [back])).toBeNull();
  });

  it("round the neck are sewn on front and back, where both have a side neck", () => {
    // 80 and 60 make 100 in front; 60 behind.
    expect(lengthOf("neckBaseGirth", [front, back])).toBe(2 * (100 + 60));
    expect(lengthOf("neckBaseGirth", [centreFront(300), back])).toBe(2 * (50 + 60));
    expect(lengthOf("neckBaseGirth", [front])).toBeNull();
    expect(lengthOf("neckBaseGirth", [back])).toBeNull();
    expect(lengthOf("neckBaseGirth", [front, without(back, "sideNeck")])).toBeNull();
    expect(lengthOf("neckBaseGirth", [without(front, "sideNeck"), back])).toBeNull();
  });

  it("under the bust are those of the bands' upper edges", () => {
    const [frontBand, backBand] = [
      seamedPiece("frontBand", { underBust: 190, waist: 170 }),
      seamedPiece("backBand", { underBust: 180 }),
    ];
    expect(lengthOf("underBustGirth", [frontBand, backBand])).toBe(740);
    expect(lengthOf("underBustGirth", [frontBand])).toBeNull();
    expect(lengthOf("underBustGirth", [backBand])).toBeNull();
  });

  it("of no piece is her height", () => {
    const all: PieceSet = setOf([front, back]);
    expect(garmentLength("height", all)).toBeNull();
  });
});
