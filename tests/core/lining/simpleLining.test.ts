/** Linings of a bodice of straight lines, whose every corner is known by hand; what opens, and how its pieces are cut. mm. */
import { describe, expect, it } from "vitest";
import { bodiceLining, type HalfAsked } from "../../../src/core/lining/bodiceLining";
import { liningParts } from "../../../src/core/lining/liningParts";
import { openAt, openSeamOf } from "../../../src/core/lining/openSeam";
import { pointNames, pointOf, type Piece, type PieceName, type PointName } from "../../../src/core/pattern/piece";
import { pieceIn, setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { cornerPiece, dartFor, type CornerOf } from "../../support/cornerPiece";
import { closed, draftedOn } from "../../support/linings";

const about = (x: number, y: number): unknown => [expect.closeTo(x, 3), expect.closeTo(y, 3)];
const placesOf = (piece: Piece): Partial<Record<PointName, readonly [number, number]>> =>
  Object.fromEntries(pointNames(piece).map((name) => [name, [pointOf(piece, name).x, pointOf(piece, name).y]]));

const piece = (name: PieceName, corners: readonly CornerOf[], centreOnFold = false): Piece => ({
  ...cornerPiece({ name, corners }),
  centreOnFold,
});

/** 100 wide, 300 deep, its neck straight from the centre to the underarm. */
const block = (name: PieceName, centreOnFold = false): Piece =>
  piece(
    name,
    [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 100, 0, "side"],
      ["sideWaist", 100, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ],
    centreOnFold,
  );

const bodice = setOf([block("front", true), block("back")]);
const lined = (pieces: PieceSet, more: Partial<HalfAsked> = {}): PieceSet =>
  bodiceLining({ pieces, at: null, ease: 0, beside: 6, below: 205, ...more });

describe("the lining of a bodice of a front and a back", () => {
  const shut = {
    centreNeck: about(0, 1.5),
    underarm: about(100, 1.5),
    sideWaist: about(100, 300),
    centreWaist: about(0, 300),
  };
  const beside = { ...shut, centreNeck: about(6, 1.5), centreWaist: about(6, 300) };
  const atSide = { ...shut, underarm: about(94, 1.5), sideWaist: about(94, 300) };

  it("lies 1.5 inside its neck, 6 beside what opens, and is else the shell's", () => {
    const all = (of: PieceSet) => [placesOf(pieceIn(of, "front")), placesOf(pieceIn(of, "back"))];
    expect(all(lined(bodice))).toEqual([shut, shut]);
    expect(all(lined(bodice, { at: "centreBack" }))).toEqual([shut, beside]);
    expect(all(lined(bodice, { at: "side" }))).toEqual([atSide, atSide]);
    expect(all(lined(bodice, { at: "side", ease: 4 }))).toEqual([atSide, atSide]);
    expect(all(lined(setOf([block("front"), block("back", true)]), { at: "centreBack" }))).toEqual([shut, shut]);
    expect(lined(bodice).back?.edges.map((edge) => edge.curve)).toEqual([null, null, null, null]);
  });

  it("has its ease in the sides that stay shut, front and back alike", () => {
    const eased = lined(bodice, { ease: 4, at: "centreBack" });
    expect([placesOf(pieceIn(eased, "front")), placesOf(pieceIn(eased, "back"))]).toEqual([
      { ...shut, underarm: [expect.closeTo(100, 0), expect.closeTo(1.5, 3)] },
      { ...beside, underarm: [expect.closeTo(100, 0), expect.closeTo(1.5, 3)] },
    ]);
    for (const name of ["front", "back"] as const) {
      const curve = eased[name]?.edges[1]?.curve;
      // 9/4 of it, a third down: 9; of the side that begins 1.5 lower a little less.
      expect(curve?.c1.x).toBeGreaterThan(108.5);
      expect(curve?.c1.x).toBeLessThan(109.1);
      expect(curve?.c1.y).toBeCloseTo(101, 0);
      expect(curve?.c2).toEqual({ x: expect.closeTo(100, 1), y: expect.closeTo(200.5, 0) });
    }
  });

  it("keeps clear of the closure alone where an upper edge is too short to be set back", () => {
    // A strap of 1.6 between a neck and an armhole that fall away from it at 60 degrees: 1.5 off both takes more than that.
    const fall = 60 * Math.tan(Math.PI / 3);
    const back = piece("back", [
      ["centreNeck", 0, fall, "neck"],
      ["strapInner", 60, 0, "strap"],
      ["strapOuter", 61.6, 0, "armhole"],
      ["underarm", 121.6, fall, "side"],
      ["sideWaist", 121.6, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ]);
    const at = lined(setOf([{ ...back, name: "front", centreOnFold: true }, back]), { at: "centreBack" });
    expect(placesOf(pieceIn(at, "front"))).toEqual(placesOf(back));
    expect(placesOf(pieceIn(at, "back"))).toEqual({
      ...placesOf(back),
      centreNeck: about(6, fall - 6 * Math.tan(Math.PI / 3)),
      centreWaist: about(6, 300),
    });
  });
});

describe("a lining that cannot be walked as it is drawn", () => {
  /** Whether it kept its ease, and whether it kept clear of the closure above the waist. */
  const kept = (pieces: PieceSet, ease: number) => {
    const { back } = lined(pieces, { at: "centreBack", ease });
    return { isEased: back?.edges[1]?.curve !== null, clear: back?.points.centreNeck?.at.x };
  };
  /** A back whose side is longer than the front's. */
  const longer = (by: number, [top, foot]: readonly [PointName, PointName] = ["underarm", "sideWaist"]): PieceSet =>
    setOf(
      (["front", "back"] as const).map((name) =>
        piece(
          name,
          [
            ["centreNeck", 0, 0, "neck"],
            [top, 100, 0, "side"],
            [foot, 100, name === "back" ? 300 + by : 300, "waist"],
            ["centreWaist", 0, 300, "centre"],
          ],
          name === "front",
        ),
      ),
    );

  it("gives up its ease, and then the way to the closure: no corner moves by 6", () => {
    // Each gives half of what they differ by, at the underarm.
    expect(kept(longer(11.8), 4)).toEqual({ isEased: true, clear: expect.closeTo(6, 5) });
    expect(kept(longer(11.98), 0)).toEqual({ isEased: false, clear: expect.closeTo(6, 5) });
    expect(kept(longer(12.02), 0)).toEqual({ isEased: false, clear: expect.closeTo(0, 5) });
    expect(kept(longer(14), 4)).toEqual({ isEased: false, clear: expect.closeTo(0, 5) });
  });

  it("gives up its ease alone where that is what moved them: 60 beside a dart", () => {
    const darted: Piece = {
      ...cornerPiece({
        corners: [
          ["centreNeck", 0, 0, "neck"],
          ["underarm", 100, 0, "side"],
          ["sideDartInner", 100, 120, "side", "sideDart"],
          ["sideDartOuter", 100, 140, "side"],
          ["sideWaist", 100, 320, "waist"],
          ["centreWaist", 0, 320, "centre"],
        ],
        inside: { sideDartApex: [40, 130] },
        darts: [dartFor("sideDart", "side")],
      }),
    };
    const pieces = setOf([darted, block("back")]);
    expect(kept(pieces, 10)).toEqual({ isEased: true, clear: expect.closeTo(6, 5) });
    expect(kept(pieces, 60)).toEqual({ isEased: false, clear: expect.closeTo(6, 5) });
  });

  it("gives up both where a seam has no end that is free to move, and so does not walk", () => {
    const numbered = ["corner01", "corner02"] as const;
    expect(kept(longer(0, numbered), 4)).toEqual({ isEased: true, clear: expect.closeTo(6, 5) });
    expect(kept(longer(5, numbered), 4)).toEqual({ isEased: false, clear: expect.closeTo(0, 5) });
  });
});

describe("the lining of a bodice that is in two above the waist", () => {
  /** Cups and upper backs 120 deep over bands of 180. */
  const upper = (name: PieceName): Piece =>
    piece(name, [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 100, 0, "side"],
      ["sideUnderBust", 100, 120, "underBust"],
      ["underBustCentre", 0, 120, "centre"],
    ]);
  const band = (name: PieceName): Piece =>
    piece(name, [
      ["underBustCentre", 0, 120, "underBust"],
      ["sideUnderBust", 100, 120, "side"],
      ["sideWaist", 100, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ]);

  it("has ease that goes on over the seam between them", () => {
    const eased = lined(setOf([upper("cup"), band("frontBand"), upper("back"), band("backBand")]), { ease: 3 });
    // Two fifths down: 27/4 × 0.4 × 0.36 of 3.
    const out = 100 + 3 * (27 / 4) * 0.4 * 0.36;
    for (const name of ["cup", "back", "frontBand", "backBand"] as const)
      expect(pointOf(pieceIn(eased, name), "sideUnderBust")).toEqual({
        x: expect.closeTo(out, 3),
        y: expect.closeTo(120, 3),
      });
    for (const name of ["frontBand", "backBand"] as const)
      expect(pointOf(pieceIn(eased, name), "sideWaist")).toEqual({
        x: expect.closeTo(100, 3),
        y: expect.closeTo(300, 3),
      });
  });
});

describe("basques", () => {
  const basque = (name: PieceName): Piece =>
    piece(name, [
      ["centreWaist", 0, 300, "waist"],
      ["sideWaist", 100, 300, "side"],
      ["sideHem", 100, 500, "hem"],
      ["centreHem", 0, 500, "centre"],
    ]);

  it("are as the shell's, but free of the zip where they open", () => {
    const both = setOf([block("front", true), block("back"), basque("frontBasque"), basque("backBasque")]);
    const at = lined(both, { at: "centreBack", below: 120, ease: 5 });
    expect(at.frontBasque).toEqual(both.frontBasque);
    expect(placesOf(pieceIn(at, "backBasque"))).toEqual({
      ...placesOf(basque("backBasque")),
      centreWaist: about(6, 300),
      cut1: about(0, 420),
    });
    expect(lined(both, { below: 120, ease: 5 }).backBasque).toEqual(both.backBasque);
  });
});

describe("gathers", () => {
  it("are sewn as a dart, and no dart is another for that", () => {
    const front: Piece = {
      ...cornerPiece({
        corners: [
          ["centreNeck", 0, 0, "neck"],
          ["underarm", 100, 0, "side"],
          ["sideWaist", 100, 300, "waist"],
          ["waistDartOuter", 60, 300, "waist", "waistDart"],
          ["waistDartInner", 40, 300, "waist"],
          ["centreWaist", 0, 300, "centre"],
        ],
        inside: { waistDartApex: [50, 100] },
        darts: [dartFor("waistDart", "waist")],
      }),
    };
    const gathered: Piece = { ...front, darts: front.darts.map((dart) => ({ ...dart, gathered: true })) };
    const as = (one: Piece): Piece => pieceIn(lined(setOf([one, block("back")])), "front");
    expect(as(gathered).darts).toEqual(front.darts);
    expect(as(front).darts).toEqual(front.darts);
  });
});

describe("what opens", () => {
  it("is the left side alone, or the centre back of both halves", () => {
    expect(openAt("left", closed("side", 100))).toBe("side");
    expect(openAt("right", closed("side", 100))).toBeNull();
    expect(openAt("left", closed("centreBack", 100))).toBe("centreBack");
    expect(openAt("right", closed("centreBack", 100))).toBe("centreBack");
  });

  it("is a seam of a piece that has it", () => {
    const inner = piece("centreFront", [
      ["centreNeck", 0, 0, "neck"],
      ["princessTop", 60, 0, "princess"],
      ["princessWaist", 60, 300, "waist"],
      ["centreWaist", 0, 300, "centre"],
    ]);
    const outer = piece("sideFront", [
      ["princessTop", 60, 0, "armhole"],
      ["underarm", 100, 0, "side"],
      ["sideWaist", 100, 300, "waist"],
      ["princessWaist", 60, 300, "princess"],
    ]);
    expect([block("front"), block("back", true), inner, outer].map((one) => openSeamOf(one, "side"))).toEqual([
      "side",
      "side",
      null,
      "side",
    ]);
    const atBack = [block("back"), block("back", true), block("front"), { ...outer, name: "back" as const }];
    expect(atBack.map((one) => openSeamOf(one, "centreBack"))).toEqual(["centre", null, null, null]);
    expect(atBack.map((one) => openSeamOf(one, null))).toEqual([null, null, null, null]);
  });
});

describe("parts of a lining", () => {
  it("are its pieces: on the fold once, else a pair; halves that differ one each, or open where a fold joins them", () => {
    const cut = (parts: ReturnType<typeof liningParts>) =>
      parts.map(({ kind, key, group, cloth, cut: { onFold, count }, half, grain, piece: of }) => [
        kind,
        key,
        group,
        cloth,
        onFold,
        count,
        half,
        grain,
        of.name,
      ]);
    expect(cut(liningParts([bodice, bodice], "bodiceLining"))).toEqual([
      ["piece", "lining-front", "bodiceLining", "lining", true, 1, null, "along", "front"],
      ["piece", "lining-back", "bodiceLining", "lining", false, 2, null, "along", "back"],
    ]);
    const other = lined(bodice, { at: "side" });
    const parts = liningParts([bodice, other], "skirtLining");
    expect(cut(parts)).toEqual([
      ["piece", "lining-front", "skirtLining", "lining", false, 1, null, "along", "front"],
      ["piece", "lining-back-left", "skirtLining", "lining", false, 1, "left", "along", "back"],
      ["piece", "lining-back-right", "skirtLining", "lining", false, 1, "right", "along", "back"],
    ]);
    expect(parts.map(({ piece: of, otherHalf }) => [of, otherHalf])).toEqual([
      [bodice.front, other.front],
      [bodice.back, undefined],
      [other.back, undefined],
    ]);
    expect(cut(liningParts([setOf([block("back")]), {}], "bodiceLining"))).toHaveLength(1);
  });
});

describe("how much ease, and how far free", () => {
  const sideOf = (pieces: PieceSet, name: PieceName): number => pieces[name]?.edges[1]?.curve?.c1.x ?? 100;

  it("is 10 all round, a quarter of it at each side seam of either piece; the one side that stays shut takes half", () => {
    // c1 lies 9/4 of it out, but for a hundredth that the neck takes off above.
    const quarters = draftedOn([bodice, bodice], { bodice: true });
    expect(quarters.bodice[1]).toBe(quarters.bodice[0]);
    expect((sideOf(quarters.bodice[0], "back") - 100) / 2.25).toBeCloseTo(2.5, 0);
    const most = draftedOn([bodice, bodice], { bodice: true, bodiceEase: 24 });
    expect((sideOf(most.bodice[0], "front") - 100) / 2.25).toBeCloseTo(6, 0);
    const {
      bodice: [left, right],
    } = draftedOn([bodice, bodice], { bodice: true, bodiceEase: 24 }, closed("side", 150));
    expect(sideOf(left, "front")).toBe(100);
    expect((sideOf(right, "front") - 100) / 2.25).toBeCloseTo(12, 0);
    expect(placesOf(pieceIn(left, "back")).sideWaist).toEqual(about(94, 300));
    expect(placesOf(pieceIn(right, "back")).sideWaist).toEqual(about(100, 300));
  });

  it("is of each half by its own pieces", () => {
    const deeper = setOf([block("front", true), { ...block("back"), points: { ...block("back").points } }]);
    const {
      bodice: [left, right],
      parts,
    } = draftedOn([bodice, deeper], { bodice: true, freeBeside: 9 });
    expect(right).toEqual(left);
    expect(placesOf(pieceIn(left, "back")).centreWaist).toEqual(about(9, 300));
    expect(parts.map(({ key }) => key)).toEqual(["lining-front", "lining-back"]);
  });

  it("is nothing at all where nothing is lined", () => {
    expect(draftedOn([bodice, bodice], {})).toEqual({
      bodice: [{}, {}],
      skirt: [{}, {}],
      free: null,
      skirtFigures: null,
      beside: 0,
      levels: [],
      parts: [],
      notes: [],
    });
    // The bodice alone: nothing of a skirt is told.
    expect(draftedOn([bodice, bodice], { bodice: true })).toMatchObject({
      free: null,
      beside: 6,
      skirt: [{}, {}],
      skirtFigures: null,
      levels: [],
      notes: [],
    });
  });

  it("is free 25 below the zip's end, no less than 5 below the waist, whatever was entered", () => {
    const basque = piece("backBasque", [
      ["centreWaist", 0, 300, "waist"],
      ["sideWaist", 100, 300, "side"],
      ["sideHem", 100, 500, "hem"],
      ["centreHem", 0, 500, "centre"],
    ]);
    const both = setOf([block("front", true), block("back"), basque]);
    const end = (belowWaist: number, freeBelow?: number): number | undefined =>
      draftedOn(
        [both, both],
        { bodice: true, ...(freeBelow === undefined ? {} : { freeBelow }) },
        closed("centreBack", belowWaist),
      ).bodice[0].backBasque?.points.cut1?.at.y;
    expect([end(100), end(100, 40), end(0), end(-50), end(0, 2), end(0, -90), end(100, -30)]).toEqual(
      [425, 440, 325, 325, 305, 305, 370].map((y) => expect.closeTo(y, 4)),
    );
  });
});
