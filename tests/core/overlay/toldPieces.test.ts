/** Which pieces have strips, for which half, laid on what; and why there are none: by hand, on boxes with one side further out. */
import { describe, expect, it } from "vitest";
import { overlayOf, type OverlaidPlan } from "../../../src/core/overlay/overlayOf";
import type { Overlay } from "../../../src/core/overlay/overlay";
import type { Piece, PieceName, PointName } from "../../../src/core/pattern/piece";
import type { CutLine, PlannedAlteration } from "../../../src/core/plan/plan";
import { piecePoint } from "../../../src/core/geometry/point";
import { rigidMotion } from "../../../src/core/geometry/rigid";
import { noSurgery } from "../../../src/core/surgery/cutAndMove";
import { radians } from "../../../src/core/units";
import { boxPiece } from "../../support/boxPiece";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { planOfPieces } from "../../support/overlayPlans";

const A3 = 400;

type Half = OverlaidPlan["left"];
/** The plan with other things on one half. */
const withRight = (plan: OverlaidPlan, change: Partial<Half>): OverlaidPlan => ({
  ...plan,
  right: { ...plan.right, ...change },
});
const withLeft = (plan: OverlaidPlan, change: Partial<Half>): OverlaidPlan => ({
  ...plan,
  left: { ...plan.left, ...change },
});

const told = ({ patches, same, tooMuch }: Overlay) => ({
  patches: patches.map(({ key }) => key),
  same: same.map(({ piece, half }) => [piece, half]),
  tooMuch: tooMuch.map(({ piece, half, why }) => [piece, half, why]),
});
/** What of it is not printed, so that no strips are made: the pieces asked about, and for which half. */
const asked = (plan: OverlaidPlan, names: readonly PieceName[], old: Parameters<typeof overlayOf>[3] = null) =>
  told(overlayOf(plan, names, A3, old)).tooMuch.map(([piece, half]) => [piece, half]);
const crosses = ({ patches }: Overlay) => patches.map(({ half, layOn }) => [half, ...layOn.map(({ at }) => at.x)]);

describe("the pieces that are asked about", () => {
  const [front, back, strap] = [boxPiece("front", 200, 300), boxPiece("back", 200, 300), boxPiece("strap", 40, 300)];

  it("are told in the plan's order where both halves are alike, the others left out", () => {
    const plan = planOfPieces({ printed: [], final: [front, back, strap] });
    expect(asked(plan, ["strap", "front"])).toEqual([
      ["front", null],
      ["strap", null],
    ]);
  });

  it("are told in the order asked where the halves differ, and once where a piece is alike on both", () => {
    const plan = withRight(planOfPieces({ printed: [], final: [front, back, strap] }), {
      pieces: [boxPiece("front", 200, 300), boxPiece("back", 201, 300)],
    });
    // The strap is on the left alone.
    expect(asked(plan, ["strap", "back", "front"])).toEqual([
      ["strap", "left"],
      ["back", "left"],
      ["back", "right"],
      ["front", null],
    ]);
    const other = withLeft(planOfPieces({ printed: [], final: [front, back, strap] }), { pieces: [] });
    expect(asked(other, ["back", "cup"])).toEqual([["back", "right"]]);
  });

  it("are as her own words call them", () => {
    const [one, two] = [boxPiece("other1", 200, 300), boxPiece("other2", 200, 300)];
    const plan = planOfPieces({
      printed: [one, two],
      final: [one, boxPiece("other2", 210, 300), boxPiece("other3", 200, 300), back],
      nest: { otherNames: { other1: "collar", other2: "cuff", other3: "facing" } },
    });
    const { patches, same, tooMuch } = overlayOf(plan, ["other1", "other2", "other3", "back"], A3);
    expect(patches.map(({ piece, label }) => [piece, label])).toEqual([["other2", "cuff"]]);
    expect(same).toEqual([{ piece: "other1", half: null, label: "collar" }]);
    expect(tooMuch).toEqual([
      { piece: "other3", half: null, label: "facing", why: "notPrinted" },
      { piece: "back", half: null, why: "notPrinted" },
    ]);
  });
});

describe("whether a piece is drawn alike on both halves", () => {
  const NECK: PointName = "centreNeck";
  const bowed = (c1: readonly [number, number], c2: readonly [number, number]): Piece => ({
    ...cornerPiece({
      name: "back",
      corners: [
        [NECK, 0, 0, "neck"],
        ["underarm", 200, 0, "side"],
        ["sideWaist", 200, 300, "waist"],
        ["waistDartOuter", 120, 300, "waist", "waistDart"],
        ["waistDartInner", 100, 300, "waist"],
        ["centreWaist", 0, 300, "centre"],
      ],
      curves: { [NECK]: [c1, c2] },
      inside: { waistDartApex: [110, 200] },
      darts: [dartFor("waistDart", "waist")],
    }),
  });
  const piece = bowed([60, 20], [140, 20]);
  const moved = (name: PointName, dx: number, dy: number): Piece => {
    const point = piece.points[name];
    if (point === undefined) throw new Error(name);
    const at = piecePoint(point.at.x + dx, point.at.y + dy);
    return { ...piece, points: { ...piece.points, [name]: { ...point, at } } };
  };
  const halvesOf = (right: Piece, left = piece) =>
    asked(withRight(planOfPieces({ printed: [], final: [left] }), { pieces: [right] }), ["back"]).map(
      ([, half]) => half,
    );

  it("is so where its lines follow one another, to a ten-thousandth of a millimetre", () => {
    expect(halvesOf(piece)).toEqual([null]);
    expect(halvesOf(bowed([60, 20], [140, 20]))).toEqual([null]);
    expect(halvesOf(moved("underarm", 0.00009, 0))).toEqual([null]);
    expect(halvesOf(bowed([60, 20.00009], [140, 20]))).toEqual([null]);
  });

  it.each([
    ["a corner", moved("underarm", 0.001, 0)],
    ["the corner that the ring starts at", moved(NECK, 0, 0.001)],
    ["the end of a dart", moved("waistDartApex", 0, 0.001)],
    ["the first control of a curve", bowed([60, 20.001], [140, 20])],
    ["its second control", bowed([60, 20], [140.001, 20])],
    ["a straight edge for the curve", { ...piece, edges: piece.edges.map((edge) => ({ ...edge, curve: null })) }],
    ["gathers for the dart", { ...piece, darts: piece.darts.map((dart) => ({ ...dart, gathered: true as const })) }],
  ])("is not so where another is %s", (_what, other) => {
    expect(halvesOf(other)).toEqual(["left", "right"]);
    expect(halvesOf(piece, other)).toEqual(["left", "right"]);
  });
});

describe("strips laid on the pieces of another version", () => {
  const [narrow, wide, final] = [boxPiece("back", 200, 300), boxPiece("back", 204, 300), boxPiece("back", 210, 300)];
  const plan = planOfPieces({ printed: [], final: [final] });
  const old = (left: readonly Piece[], right: readonly Piece[]) =>
    withRight(planOfPieces({ printed: [], final: left }), { pieces: right });

  it("are for both halves where those were alike, and for each half where they were not", () => {
    const both = overlayOf(plan, ["back"], A3, planOfPieces({ printed: [], final: [narrow] }));
    expect(both.baseSize).toEqual({ label: null, size: 1 });
    expect(crosses(both)).toEqual([[null, 200, 200]]);
    expect(crosses(overlayOf(plan, ["back"], A3, old([narrow], [boxPiece("back", 200, 300)])))).toEqual([
      [null, 200, 200],
    ]);
    expect(crosses(overlayOf(plan, ["back"], A3, old([narrow], [wide])))).toEqual([
      ["left", 200, 200],
      ["right", 204, 204],
    ]);
  });

  it("are for the half alone that had the piece, and of a piece that neither had for none", () => {
    const one = overlayOf(plan, ["back"], A3, old([], [narrow]));
    expect(told(one)).toEqual({ patches: ["back-right-1"], same: [], tooMuch: [["back", "left", "notPrinted"]] });
    const other = overlayOf(plan, ["back"], A3, old([narrow], []));
    expect(told(other)).toEqual({ patches: ["back-left-1"], same: [], tooMuch: [["back", "right", "notPrinted"]] });
    expect(told(overlayOf(plan, ["back"], A3, old([], [])))).toEqual({
      patches: [],
      same: [],
      tooMuch: [["back", null, "notPrinted"]],
    });
  });

  it("are laid on the piece of the same name", () => {
    const front = boxPiece("front", 190, 300);
    const was = planOfPieces({ printed: [], final: [front, narrow] });
    expect(crosses(overlayOf(plan, ["back"], A3, was))).toEqual([[null, 200, 200]]);
    // The fronts of both halves differ, which is nothing to the backs.
    expect(crosses(overlayOf(plan, ["back"], A3, old([front, narrow], [boxPiece("front", 195, 300), narrow])))).toEqual(
      [[null, 200, 200]],
    );
  });

  it("are for each half where the halves differ now, laid on the one piece that both had", () => {
    const now = withRight(plan, { pieces: [boxPiece("back", 212, 300)] });
    const was = planOfPieces({ printed: [], final: [narrow] });
    expect(crosses(overlayOf(now, ["back"], A3, was))).toEqual([
      ["left", 200, 200],
      ["right", 200, 200],
    ]);
  });

  it("have no lines of sizes beside them, and no amounts", () => {
    const cutLines: readonly CutLine[] = [
      {
        piece: "back",
        level: "waist",
        between: ["12", "14"],
        share: 0.5,
        offset: 0,
        alterationMove: 0,
        at: piecePoint(0, 0),
      },
    ];
    const print = { printed: [narrow], final: [final], also: { cutLines } };
    const [patch] = overlayOf(planOfPieces(print), ["back"], A3, planOfPieces(print)).patches;
    expect(patch).toBeUndefined();
    const laid = overlayOf(planOfPieces(print), ["back"], A3, planOfPieces({ printed: [], final: [narrow] })).patches;
    expect(laid.map(({ neighbours, amounts }) => [neighbours, amounts])).toEqual([[[], []]]);
    const onTissue = overlayOf(planOfPieces(print), ["back"], A3).patches;
    expect(onTissue.map(({ neighbours, amounts }) => [neighbours.length, amounts.length])).toEqual([[1, 1]]);
  });
});

describe("halves with cups of their own", () => {
  const [ofB, ofD] = [boxPiece("back", 200, 300), boxPiece("back", 204, 300)];
  const plan = planOfPieces({ printed: [ofB], final: [boxPiece("back", 210, 300)] });
  const cupOf = (label: string) => ({ sizing: { ...plan.sizing, cup: { label } } });
  const uneven = withRight(withLeft(plan, cupOf("B")), {
    ...cupOf("D"),
    pieces: [boxPiece("back", 216, 300)],
    printed: [ofD],
    nest: { ...plan.nest, sizes: plan.nest.sizes.map(() => [ofD]) },
  });

  it("have each its strips on the tissue of its cup, with a line of words more: 3.75 mm", () => {
    const overlay = overlayOf(uneven, ["back"], A3);
    expect(crosses(overlay)).toEqual([
      ["left", 200, 200],
      ["right", 204, 204],
    ]);
    expect(overlay.patches.map(({ cup, title }) => [cup, title.height])).toEqual([
      ["B", 32.75],
      ["D", 32.75],
    ]);
  });

  it("are told by them where there are no strips", () => {
    const same = overlayOf(withLeft(uneven, { pieces: [ofB] }), ["back"], A3).same;
    expect(same).toEqual([{ piece: "back", half: "left", cup: "B" }]);
    const none = withRight(withLeft(uneven, { printed: [] }), { printed: [] });
    expect(overlayOf(none, ["back"], A3).tooMuch).toEqual([
      { piece: "back", half: "left", cup: "B", why: "notPrinted" },
      { piece: "back", half: "right", cup: "D", why: "notPrinted" },
    ]);
  });

  it("are not told by them where a piece is alike on both, or both have one cup", () => {
    const [patch] = overlayOf(withRight(uneven, { pieces: uneven.left.pieces }), ["back"], A3).patches;
    expect([patch?.half, patch?.cup]).toEqual([null, undefined]);
    const oneCup = withRight(uneven, cupOf("B"));
    expect(overlayOf(oneCup, ["back"], A3).patches.map(({ half, cup, title }) => [half, cup, title.height])).toEqual([
      ["left", undefined, 29],
      ["right", undefined, 29],
    ]);
  });

  it("are not told by them on strips for pieces of hers, which are of no cup version", () => {
    const old = planOfPieces({ printed: [], final: [ofB] });
    const { patches, tooMuch } = overlayOf(uneven, ["back"], A3, old);
    expect(patches.map(({ cup, title }) => [cup, title.height])).toEqual([
      [undefined, 29],
      [undefined, 29],
    ]);
    expect(tooMuch).toEqual([]);
  });
});

describe("a front that the wearer parted by a seam", () => {
  const panel = (name: PieceName) => boxPiece(name, 210, 300);
  const printed = [boxPiece("front", 200, 300), boxPiece("back", 200, 300)];

  it.each(["centreFront", "sideFront"] as const)("has the strips of its %s on the front as printed", (name) => {
    const [patch] = overlayOf(planOfPieces({ printed, final: [panel(name)] }), [name], A3).patches;
    expect(patch).toMatchObject({ key: `${name}-1`, piece: name, tissue: "front" });
    expect(patch?.layOn.map(({ at }) => at.x)).toEqual([200, 200]);
  });

  it("has them on a panel of its own where that is printed, and other pieces on none", () => {
    const own = planOfPieces({ printed: [...printed, boxPiece("sideFront", 204, 300)], final: [panel("sideFront")] });
    const [patch] = overlayOf(own, ["sideFront"], A3).patches;
    expect([patch?.tissue, patch?.layOn[0]?.at.x]).toEqual(["sideFront", 204]);
    const cup = planOfPieces({ printed, final: [panel("cup")] });
    expect(told(overlayOf(cup, ["cup"], A3)).tooMuch).toEqual([["cup", null, "notPrinted"]]);
  });
});

describe("where strips are no better than the piece", () => {
  const out = (width: number, height: number, down = 0): Piece =>
    cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, -down, "neck"],
        ["underarm", width + 10, -down, "side"],
        ["sideWaist", width + 10, height + down, "waist"],
        ["centreWaist", 0, height + down, "centre"],
      ],
    });
  const overlay = (printed: Piece, final: Piece, longest = A3, also: Partial<Half> = {}) =>
    overlayOf(planOfPieces({ printed: [printed], final: [final], also }), ["back"], longest);
  const whyOf = (of: Overlay) => told(of).tooMuch.map(([, , why]) => why);

  it("is told where more than three fifths of the stitch line moved", () => {
    // All but the centre moves by 10 mm, and 9.5 of that at either end: 310 + 310 + h + 20 + 19 of 2 · (310 + h + 20).
    const at = (height: number) => overlay(boxPiece("back", 300, height), out(300, height, 10), 1500);
    // (659 + 1310) / 3280 = 0.6003, (659 + 1320) / 3300 = 0.5997.
    expect(whyOf(at(1310))).toEqual(["mostMoved"]);
    expect(whyOf(at(1320))).toEqual([]);
    expect(at(1320).patches).not.toEqual([]);
  });

  it("is told where the strips take more than two thirds of the paper of the piece", () => {
    // 31.5 mm inside the old side to 22 outside it, and 4 for the words: 57.5 by 324, against two thirds of w + 10 by 300.
    const at = (width: number) => overlay(boxPiece("back", width, 300), out(width, 300));
    // 57.5 · 324 = 18 630; 93 · 200 = 18 600, 94 · 200 = 18 800.
    expect(whyOf(at(83))).toEqual(["mostMoved"]);
    expect(whyOf(at(84))).toEqual([]);
    // Wherever it lies.
    const away = (piece: Piece): Piece => ({
      ...piece,
      points: Object.fromEntries(
        Object.entries(piece.points).map(([name, point]) => [
          name,
          { ...point, at: piecePoint(point.at.x + 500, point.at.y + 700) },
        ]),
      ),
    });
    const further = (width: number) => overlay(away(boxPiece("back", width, 300)), away(out(width, 300)));
    expect(whyOf(further(83))).toEqual(["mostMoved"]);
    expect(whyOf(further(84))).toEqual([]);
  });

  /** A line across it at 120 mm, by which two short strips can be laid. */
  const levelled = (width: number): Piece => ({
    ...cornerPiece({
      name: "back",
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", width, 0, "side"],
        ["sideBust", width, 120, "side"],
        ["sideWaist", width, 240, "waist"],
        ["centreWaist", 0, 240, "centre"],
        ["centreBust", 0, 120, "centre"],
      ],
      levelLines: [{ level: "bust", along: { points: ["centreBust", "sideBust"] } }],
    }),
  });

  it("is judged on a page of A4, however small the paper", () => {
    // On 160 mm two strips, each half of 299 mm of line and 10 more: 57.5 by 154, 17 710 mm² for both. On 271 mm one: 57.5 by 264,
    // 15 180. Two thirds of 240 mm by 105 are 16 800, by 94 15 040.
    const at = (width: number, longest: number) => overlay(levelled(width), out(width, 240), longest);
    expect(at(95, 160).patches.map(({ number, count }) => [number, count])).toEqual([
      [1, 2],
      [2, 2],
    ]);
    expect(at(95, 271).patches).toHaveLength(1);
    expect(whyOf(at(84, 160))).toEqual(["mostMoved"]);
    expect(whyOf(at(84, 271))).toEqual(["mostMoved"]);
    // By 112: two are less than 17 920.
    expect(at(102, 160).patches).toHaveLength(2);
  });

  const trace = (piece: PieceName, angle: number): PlannedAlteration => {
    const value = {
      piece,
      values: {},
      before: {},
      after: {},
      moved: [],
      seam: null,
      seamBefore: 0,
      seamUngiven: 0,
      seamAfter: 0,
      given: [],
      notes: [],
      surgery: [
        {
          ...noSurgery(boxPiece(piece, 200, 300)),
          parts: [{ before: [], after: [], motion: rigidMotion(piecePoint(0, 0), radians(angle), 10, 0) }],
        },
      ],
    };
    return {
      id: "a",
      source: "wearer",
      phase: "length",
      piece,
      what: { kind: "alteration", alteration: { kind: "fit", id: "a", fit: "swayBack", amount: 1 } },
      outcome: { ok: true, value },
    };
  };
  const failed: PlannedAlteration = {
    ...trace("back", 0),
    outcome: { ok: false, failure: { code: "alteration/no-such-dart", dart: { piece: "back", dart: "waistDart" } } },
  };

  it("is told as cut and moved where parts only slid, and strips are made all the same where one was turned", () => {
    const at = (...alterations: readonly PlannedAlteration[]) =>
      overlay(boxPiece("back", 83, 300), out(83, 300), A3, { alterations });
    expect(whyOf(at())).toEqual(["mostMoved"]);
    expect(whyOf(at(failed))).toEqual(["mostMoved"]);
    expect(whyOf(at(trace("front", 0)))).toEqual(["mostMoved"]);
    expect(whyOf(at(trace("front", 0.1)))).toEqual(["mostMoved"]);
    expect(whyOf(at(trace("back", 0)))).toEqual(["cutAndMoved"]);
    expect(at(trace("back", 0.1)).patches).toHaveLength(1);
    expect(at(trace("back", 0), trace("back", -0.1)).patches).toHaveLength(1);
    // Of most of the line moved the same holds.
    const most = (...alterations: readonly PlannedAlteration[]) =>
      overlay(boxPiece("back", 200, 150), out(200, 150, 10), A3, { alterations });
    expect(whyOf(most(trace("back", 0)))).toEqual(["cutAndMoved"]);
    expect(whyOf(most(trace("back", 0.1)))).toEqual([]);
  });

  it("is told as much moved of a piece of hers as it was before, however it was cut", () => {
    const plan = planOfPieces({ printed: [], final: [out(83, 300)], also: { alterations: [trace("back", 0.1)] } });
    const old = planOfPieces({ printed: [], final: [boxPiece("back", 83, 300)] });
    expect(whyOf(overlayOf(plan, ["back"], A3, old))).toEqual(["mostMoved"]);
  });
});
