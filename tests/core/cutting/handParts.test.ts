/** Notches and parts of a dress on boxes made by hand: which is printed, what each is notched with, and where. mm. */
import { describe, expect, it } from "vitest";
import { buttonPlaces, buttonRow } from "../../../src/core/cutting/buttons";
import { notchPlaces } from "../../../src/core/cutting/notches";
import {
  alsoCutBy,
  printedParts,
  replacedPieces,
  sewnOnBodice,
  truePartsOf,
  type PartsAsked,
} from "../../../src/core/cutting/trueParts";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import { placeAlong, walkAlong } from "../../../src/core/cutting/walk";
import type { Closure } from "../../../src/core/decisions/pattern";
import type { Part, PartGroup, PiecePart } from "../../../src/core/parts/part";
import type { Piece, PieceName, SeamName } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { SHOULDER_EASE } from "../../../src/core/pattern/shoulderEase";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { alike } from "../../support/halves";
import { planOf, testWork } from "../../support/works";

const close = (value: number): unknown => expect.closeTo(value, 6);
const quarter = Math.PI / 2;

/** A box with its centre at x = 0: its upper edge, side, lower edge and centre. */
function box(
  name: PieceName,
  width: number,
  height: number,
  [upper, lower]: readonly [SeamName, SeamName] = ["neck", "waist"],
): Piece {
  const piece = cornerPiece({
    name,
    corners: [
      ["centreNeck", 0, 0, upper],
      ["underarm", width, 0, "side"],
      ["sideWaist", width, height, lower],
      ["centreWaist", 0, height, "centre"],
    ],
  });
  return { ...piece, centreOnFold: false };
}

const ZIP: Closure = { place: "side", belowWaist: 0 };

describe("a walk from the centre", () => {
  it("goes along an edge as it is drawn where that leaves the centre, against it where it comes there", () => {
    const piece = box("front", 100, 80);
    expect(placeAlong(walkAlong([piece], "neck"), 30)).toEqual({
      piece: "front",
      at: { x: close(30), y: close(0) },
      outward: close(-quarter),
    });
    expect(placeAlong(walkAlong([piece], "waist"), 30)).toEqual({
      piece: "front",
      at: { x: close(30), y: close(80) },
      outward: close(quarter),
    });
  });
});

describe("seam notches", () => {
  const notched = (pieces: readonly Piece[], seam: SeamName) =>
    notchPlaces(setOf(pieces), ZIP)
      .filter((notch) => notch.seam === seam)
      .map(({ piece, at, twins, kind }) => [
        piece,
        kind,
        at.x,
        at.y,
        twins?.map((twin) => [twin.piece, twin.at.x, twin.at.y]),
      ]);

  it("are double, 3 mm to either side, where backs alone meet, else single", () => {
    const back = box("back", 100, 50);
    const basque = box("backBasque", 100, 50, ["waist", "hem"]);
    // 100 mm are notched at 0.42 of them.
    expect(notched([back, basque], "waist")).toEqual([
      ["back", "seam", close(42), close(50), [39, 45].map((x) => ["back", close(x), close(50)])],
      ["backBasque", "seam", close(42), close(0), [39, 45].map((x) => ["backBasque", close(x), close(0)])],
    ]);
    const front = [box("front", 100, 50), box("frontBasque", 100, 50, ["waist", "hem"])];
    expect(notched(front, "waist")).toEqual([
      ["front", "seam", close(42), close(50), undefined],
      ["frontBasque", "seam", close(42), close(0), undefined],
    ]);
  });

  it("are as far from the upper end on both pieces, in the same share where one is eased to the other", () => {
    expect(notched([box("back", 100, 200), box("front", 100, 190)], "side")).toEqual([
      ["back", "seam", close(100), close(84), undefined],
      ["front", "seam", close(100), close(84), undefined],
    ]);
    const back = box("back", 120 + SHOULDER_EASE, 50, ["shoulder", "waist"]);
    const front = box("front", 120, 50, ["shoulder", "waist"]);
    expect(notched([back, front], "shoulder")).toEqual([
      ["back", "seam", close(0.42 * (120 + SHOULDER_EASE)), close(0), undefined],
      ["front", "seam", close(0.42 * 120), close(0), undefined],
    ]);
  });

  it("are moved by threes from a closed dart until 18 mm clear of it, or left out", () => {
    /** `each` mm of waist on either side of a dart of 20. */
    const darted = (each: number): Piece =>
      cornerPiece({
        corners: [
          ["centreNeck", 0, 0, "neck"],
          ["underarm", 2 * each + 20, 0, "side"],
          ["sideWaist", 2 * each + 20, 50, "waist"],
          ["waistDartOuter", each + 20, 50, "waist", "waistDart"],
          ["waistDartInner", each, 50, "waist"],
          ["centreWaist", 0, 50, "centre"],
        ],
        inside: { waistDartApex: [each + 10, 20] },
        darts: [dartFor("waistDart", "waist")],
      });
    const meet = (each: number) =>
      notched([darted(each), box("frontBasque", 2 * each, 50, ["waist", "hem"])], "waist").map(([, , x]) => x);
    // 0.42 of 80 is 33.6, the dart at 40: 21.6 is the first that is clear, 12 nearer the centre.
    expect(meet(40)).toEqual([close(21.6), close(21.6)]);
    // 0.42 of 90 is 37.8, the dart at 45: 9 or 12 nearer make 28.8 and 25.8; 27 is the nearest that goes.
    expect(meet(45)).toEqual([close(25.8), close(25.8)]);
    // Of 35 on either side 18 to 17 are clear of both its ends.
    expect(meet(35)).toEqual([]);
  });

  it("of a princess seam are 50 mm above and below the bust point and at it", () => {
    const panel = (name: PieceName, bust: number): Piece =>
      cornerPiece({
        name,
        corners: [
          ["princessTop", 0, 0, "armhole"],
          ["underarm", 100, 0, "side"],
          ["sideWaist", 100, 300, "waist"],
          ["princessWaist", 0, 300, "princess"],
          ["princessBust", 0, bust, "princess"],
        ],
      });
    const set = [panel("sideFront", 110), panel("centreFront", 100)];
    expect(notched(set, "princess").map(([piece, , x, y]) => [piece, x, y])).toEqual(
      [-50, 0, 50].flatMap((by) => [
        ["sideFront", close(0), close(110 + by)],
        ["centreFront", close(0), close(100 + by)],
      ]),
    );
  });
});

describe("balance marks", () => {
  const marks = (...pieces: readonly Piece[]) =>
    notchPlaces(setOf(pieces), ZIP)
      .filter(({ kind }) => kind === "balance")
      .map(({ piece, at, number, seam, twins }) => [piece, at.x, number, seam, twins?.map((twin) => twin.at.x)]);
  const holed = (name: PieceName, width: number) => box(name, width, 30, ["armhole", "waist"]);

  it("stand 0.58 down an armhole of 90 mm and more, double on what is a back", () => {
    expect(marks(holed("front", 90))).toEqual([["front", close(52.2), 0, "armhole", undefined]]);
    expect(marks(holed("front", 89.9))).toEqual([]);
    expect(marks(holed("back", 100))).toEqual([["back", close(58), 0, "armhole", [close(55), close(61)]]]);
    for (const name of ["backFacing", "backArmholeFacing"] as const)
      expect(marks(holed(name, 100)).map(([piece, , , , twins]) => [piece, twins])).toEqual([
        [name, [close(55), close(61)]],
      ]);
    for (const name of ["cup", "frontFacing", "frontArmholeFacing"] as const)
      expect(marks(holed(name, 100)).map(([piece, , , , twins]) => [piece, twins])).toEqual([[name, undefined]]);
  });

  it("go over the panels of a front together, 18 mm clear of the seam between them, or not at all", () => {
    // 140 in all: at 81.2, past the 60 of the centre panel.
    expect(marks(holed("centreFront", 60), holed("sideFront", 80))).toEqual([
      ["sideFront", close(21.2), 0, "armhole", undefined],
    ]);
    // At 81.2 of 140, the seam at 70.
    expect(marks(holed("centreFront", 70), holed("sideFront", 70))).toEqual([]);
    expect(marks(holed("sideFront", 100))).toEqual([]);
    expect(marks(holed("strap", 100))).toEqual([]);
  });
});

describe("buttons clear of a seam", () => {
  const rowOf = (upper: number, lower: number, count: number) =>
    buttonRow(setOf([box("back", 100, upper), box("backBasque", 100, lower, ["waist", "hem"])]), {
      place: "centreBack",
      belowWaist: lower,
      buttons: count,
    });

  it("have the end moved that takes least", () => {
    // 305 of 610 is 5 mm past the seam: 6 mm more above bring it to 308.
    expect(rowOf(300, 310, 3)).toEqual({ along: [18, 308, 598], spacing: 290, ends: [18, 12] });
    // 295 of 590 is 5 mm before it: 6 mm more below bring it to 292.
    expect(rowOf(300, 290, 3)).toEqual({ along: [12, 292, 572], spacing: 280, ends: [12, 18] });
    // 8 mm are clear.
    expect(rowOf(300, 316, 3)?.ends).toEqual([12, 12]);
    expect(rowOf(300, 284, 3)?.ends).toEqual([12, 12]);
  });

  it("stand in the row of the half that they meet, spread over their own", () => {
    const own = setOf([box("back", 100, 620)]);
    const row = { place: "centreBack", belowWaist: 0, buttons: 3 } as const;
    const met = setOf([box("back", 100, 300), box("backBasque", 100, 310, ["waist", "hem"])]);
    // Its ends are 18 and 12 with what is below the waist open, 12 and 12 without.
    expect(buttonPlaces(own, row, met).map(({ at }) => at.y)).toEqual([12, 310, 608].map(close));
    expect(buttonPlaces(own, { ...row, belowWaist: 310 }, met).map(({ at }) => at.y)).toEqual(
      [18, 313, 608].map(close),
    );
    expect(buttonPlaces(setOf([box("back", 100, 29)]), { ...row, belowWaist: 310 }, met)).toEqual([]);
  });
});

const part = (key: string, group: PartGroup, piece: Piece, more: Partial<PiecePart> = {}): PiecePart => ({
  kind: "piece",
  key,
  group,
  cloth: "main",
  cut: { onFold: false, count: 2 },
  half: null,
  grain: "along",
  piece,
  ...more,
});
const lower = (name: PieceName, width: number, height: number): Piece => box(name, width, height, ["waist", "hem"]);
const strap = box("strap", 20, 300);

describe("the parts that are printed", () => {
  const left = { half: "left", cut: { onFold: false, count: 1 } } as const;
  const right = { half: "right", cut: { onFold: false, count: 1 } } as const;
  const skirt = [
    part("skirtFront-left", "skirt", lower("skirtFront", 250, 600), left),
    part("skirtFront-right", "skirt", lower("skirtFront", 260, 600), right),
  ];
  const facing = part("frontFacing", "facing", box("frontFacing", 100, 50));
  const parts: readonly Part[] = [
    facing,
    part("front", "bodice", box("front", 240, 400)),
    part("strap", "strap", strap),
    part("strap-left", "strap", box("strap", 21, 300), left),
    part("new-strap", "strap", box("strap", 22, 300)),
    part("bound", "binding", box("front", 30, 400)),
    part("lining-front", "bodiceLining", box("front", 230, 390), { cloth: "lining" }),
    part("stiff", "facing", box("frontFacing", 100, 50), { cloth: "interfacing" }),
    part("stiffer", "facing", box("frontFacing", 100, 50), { cloth: "interfacing" }),
    ...skirt,
  ];

  it("are none of the bodice, none that another's paper cuts, both halves together, in the order of groups", () => {
    expect(printedParts(parts)).toEqual([
      { id: "skirtFront", group: "skirt", name: "skirtFront", cloth: "main", halves: skirt },
      {
        id: "lining-front",
        group: "bodiceLining",
        name: "front",
        cloth: "lining",
        halves: parts.filter(({ key }) => key === "lining-front"),
      },
      { id: "frontFacing", group: "facing", name: "frontFacing", cloth: "main", halves: [facing] },
      {
        id: "new-strap",
        group: "strap",
        name: "strap",
        cloth: "main",
        halves: parts.filter(({ key }) => key === "new-strap"),
      },
    ]);
    expect([alsoCutBy(parts, "frontFacing"), alsoCutBy(parts, "stiff"), alsoCutBy(parts, "front")]).toEqual([
      ["interfacing"],
      [],
      [],
    ]);
    // The same outline for the other half is no part of it.
    const other = [...parts, part("stiff-left", "facing", box("frontFacing", 100, 50), { ...left, cloth: "lining" })];
    expect(alsoCutBy(other, "frontFacing")).toEqual(["interfacing"]);
  });

  it("leave out of the plan what neither bodice nor straps are cut by", () => {
    const plan = alike(planOf(testWork), { pieces: [box("front", 240, 400), box("back", 240, 400), strap] });
    expect(replacedPieces(plan, parts)).toEqual(["back"]);
    expect(replacedPieces(plan, [part("back", "bodiceLining", box("back", 240, 400))])).toEqual([
      "front",
      "back",
      "strap",
    ]);
  });

  it("are sewn to the bodice: a skirt, or its lining where no lined bodice has it, and facings", () => {
    const [whole, lining] = [lower("skirtFront", 250, 600), lower("skirtFront", 240, 580)];
    const skirtPart = part("skirtFront", "skirt", whole);
    const skirtLining = part("lining-skirtFront", "skirtLining", lining);
    const bodiceLining = part("lining-front", "bodiceLining", box("front", 230, 390));
    const sewn = (...some: readonly Part[]) => sewnOnBodice(some)[0];
    expect(sewn(skirtPart, skirtLining, facing)).toEqual({ skirtFront: whole, frontFacing: facing.piece });
    expect(sewn(skirtLining, facing)).toEqual({ skirtFront: lining, frontFacing: facing.piece });
    expect(sewn(skirtLining, bodiceLining, facing)).toEqual({ frontFacing: facing.piece });
    // Of two layers the first.
    expect(sewn(skirtPart, part("overlay", "skirt", lining))).toEqual({ skirtFront: whole });
    const [one, other] = sewnOnBodice([skirtPart, facing]);
    expect(other).toBe(one);
    expect(sewnOnBodice([...skirt, facing])).toEqual([
      { skirtFront: skirt[0]?.piece, frontFacing: facing.piece },
      { skirtFront: skirt[1]?.piece, frontFacing: facing.piece },
    ]);
    // Halves that differ elsewhere are no matter.
    const [here, there] = sewnOnBodice([skirtPart, part("front-left", "bodice", box("front", 240, 400), left)]);
    expect(there).toBe(here);
  });
});

describe("parts at true scale", () => {
  const one = { onFold: false, count: 1 } as const;
  const made = (parts: readonly Part[], more: Partial<PartsAsked> = {}): readonly TruePiece[] => {
    const asked = {
      parts,
      ids: printedParts(parts).map(({ id }) => id),
      allowances: {},
      closure: ZIP,
      liningOpen: null,
    };
    const found = truePartsOf({ ...asked, ...more });
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    return found.value;
  };
  const notchesOn = (pieces: readonly TruePiece[], kind: string, seam: SeamName) =>
    pieces.map(({ key, notches }) => [
      key,
      notches.filter((notch) => notch.kind === kind && notch.seam === seam).map(({ stitch }) => stitch.y),
    ]);

  it("are notched half by half", () => {
    const halves = (["left", "right"] as const).flatMap((half, index) =>
      (["skirtFront", "skirtBack"] as const).map((name) =>
        part(`${name}-${half}`, "skirt", lower(name, 250, 300 + 100 * index), { half, cut: one }),
      ),
    );
    const [left, right] = [
      [90, 192],
      [120, 256],
    ];
    // 0.3 and 0.64 of 300 on the left, of 400 on the right.
    expect(notchesOn(made(halves), "seam", "side")).toEqual([
      ["skirtFront-left", left.map(close)],
      ["skirtFront-right", right.map(close)],
      ["skirtBack-left", left.map(close)],
      ["skirtBack-right", right.map(close)],
    ]);
    // Fronts are drawn as the left half, backs as the right one.
    expect(made(halves).map(({ cutting }) => Math.sign(cutting.reduce((sum, { at }) => sum + at.x, 0)))).toEqual([
      1, -1, -1, 1,
    ]);
  });

  it("of a lining open as far as that is left free, its seams free there; the shell with its zip", () => {
    const parts = [
      part("skirtFront", "skirt", lower("skirtFront", 250, 600)),
      part("lining-front", "bodiceLining", box("front", 240, 390)),
      part("lining-skirtFront", "skirtLining", lower("skirtFront", 240, 580)),
    ];
    const pieces = made(parts, { closure: { place: "side", belowWaist: 180 }, liningOpen: 200 });
    expect(notchesOn(pieces, "opening", "side")).toEqual([
      ["skirtFront", [close(180)]],
      ["lining-front", []],
      ["lining-skirtFront", [close(200)]],
    ]);
    const opens = (some: readonly TruePiece[]) =>
      some.map(({ seams }) => seams.filter((run) => run.opens !== null).map((run) => `${run.seam} ${run.opens}`));
    expect(opens(pieces)).toEqual([["side zip"], ["side free"], ["side free"]]);
    expect(opens(made(parts, { closure: { place: "side", belowWaist: 180 } }))).toEqual([
      ["side zip"],
      ["side free"],
      [],
    ]);
    expect(pieces.map(({ number, part: of, also }) => [number, of, also])).toEqual([
      [[1, 3], { group: "skirt", cloth: "main" }, []],
      [[2, 3], { group: "bodiceLining", cloth: "main" }, []],
      [[3, 3], { group: "skirtLining", cloth: "main" }, []],
    ]);
    expect(made(parts, { ids: ["lining-front"] }).map(({ key, number }) => [key, number])).toEqual([
      ["lining-front", [1, 1]],
    ]);
  });

  it("meet what they are sewn to: the shell the shell, a lining the lining, or the bodice that has none", () => {
    const waists = (...parts: readonly Part[]) =>
      notchesOn(made(parts), "seam", "waist").map(([key, at]) => [key, at?.length]);
    const bodice = part("front", "bodice", box("front", 250, 400));
    const bodiceLining = part("lining-front", "bodiceLining", box("front", 240, 390));
    const skirtLining = part("lining-skirtFront", "skirtLining", lower("skirtFront", 240, 580));
    const skirt = part("skirtFront", "skirt", lower("skirtFront", 250, 600));
    expect(waists(bodice, skirt, bodiceLining, skirtLining)).toEqual([
      ["skirtFront", 1],
      ["lining-front", 1],
      ["lining-skirtFront", 1],
    ]);
    expect(waists(bodice, skirtLining)).toEqual([["lining-skirtFront", 1]]);
    expect(waists(bodiceLining)).toEqual([["lining-front", 0]]);
    expect(waists(skirt, bodiceLining)).toEqual([
      ["skirtFront", 0],
      ["lining-front", 0],
    ]);
    const facing = part("frontFacing", "facing", box("frontFacing", 250, 60, ["neck", "edge"]));
    expect(notchesOn(made([bodice, facing]), "seam", "neck")).toEqual([["frontFacing", [close(0)]]]);
    expect(notchesOn(made([facing]), "seam", "neck")).toEqual([["frontFacing", []]]);
  });

  it("are cut by her allowances and their own, or along the stitch line", () => {
    const parts = [part("skirtFront", "skirt", lower("skirtFront", 250, 600), { allowances: { hem: 40 } })];
    const boundsOf = ([piece]: readonly TruePiece[]) => {
      const [xs, ys] = [piece?.cutting.map(({ at }) => at.x) ?? [], piece?.cutting.map(({ at }) => at.y) ?? []];
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(
        (value) => Math.round(value * 10) / 10 + 0,
      );
    };
    expect(boundsOf(made(parts, { allowances: { side: 20, waist: 10, centre: 12, hem: 25 } }))).toEqual([
      -12, -10, 270, 640,
    ]);
    expect(boundsOf(made(parts, { allowances: null }))).toEqual([0, 0, 250, 600]);
  });

  it("are refused by name where an outline crosses itself", () => {
    const crossed = cornerPiece({
      name: "skirtBack",
      corners: [
        ["centreNeck", 0, 0, "waist"],
        ["underarm", 100, 0, "side"],
        ["centreWaist", 0, 100, "hem"],
        ["sideWaist", 100, 100, "centre"],
      ],
    });
    const parts = [part("skirtBack-right", "skirt", crossed, { half: "right", cut: one })];
    expect(truePartsOf({ parts, ids: ["skirtBack"], allowances: {}, closure: ZIP, liningOpen: null })).toEqual({
      ok: false,
      failure: { code: "paper/outline-refused", piece: "skirtBack", half: "right" },
    });
  });
});
