/**
 * Straps, facings and bindings of bodices made of straight lines, by hand. Numbers of the trade (depths, allowances, elastic) are
 * common practice, no source. mm.
 */
import { describe, expect, it } from "vitest";
import type { Edges, Straps } from "../../../src/core/decisions/dress";
import { stripLength, stripWidth } from "../../../src/core/edges/bindings";
import { draftEdges } from "../../../src/core/edges/draftEdges";
import { clearOfCorners } from "../../../src/core/edges/facingPiece";
import { facingsOf } from "../../../src/core/edges/facings";
import { draftStraps } from "../../../src/core/edges/straps";
import { centreDown, upperWalk } from "../../../src/core/edges/upperWalk";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import { mouth, named, straight } from "../../../src/core/pattern/namedEdges";
import type { Dart, Piece, PieceName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { invariant } from "../../../src/core/result";
import { seamByBezierJs } from "../../support/independent";

const close = (value: number): unknown => expect.closeTo(value, 6);

interface Box {
  readonly neck?: number;
  readonly shoulder?: number;
  readonly apexAt?: readonly [number, number];
  readonly centreOnFold?: boolean;
}

const dartIn = (seam: Dart["seam"], apex: Dart["apex"]): Dart => ({
  name: "waistDart",
  seam,
  inner: "waistDartInner",
  outer: "waistDartOuter",
  apex,
  aimsAt: null,
});

/** Neck and shoulder in one level line, the armhole 150 straight down, the side on to 400, the waist, the centre. */
function box(name: PieceName, { neck = 60, shoulder = 100, apexAt, centreOnFold = false }: Box = {}): Piece {
  const wide = neck + shoulder;
  const darted = apexAt !== undefined;
  return {
    name,
    points: {
      centreNeck: named(0, 0, "neck"),
      sideNeck: named(neck, 0, "neck"),
      shoulderTip: named(wide, 0, "shoulder"),
      underarm: named(wide, 150, "underarm"),
      sideWaist: named(wide, 400, "waist"),
      centreWaist: named(0, 400, "waist"),
      ...(apexAt === undefined
        ? {}
        : {
            waistDartApex: named(...apexAt, "bust"),
            waistDartInner: named(apexAt[0] - 10, 400, "waist"),
            waistDartOuter: named(apexAt[0] + 10, 400, "waist"),
          }),
    },
    edges: [
      straight("centreNeck", "sideNeck", "neck"),
      straight("sideNeck", "shoulderTip", "shoulder"),
      straight("shoulderTip", "underarm", "armhole"),
      straight("underarm", "sideWaist", "side"),
      ...(darted
        ? [
            straight("sideWaist", "waistDartOuter", "waist"),
            mouth("waistDartOuter", "waistDartInner", "waist", "waistDart"),
            straight("waistDartInner", "centreWaist", "waist"),
          ]
        : [straight("sideWaist", "centreWaist", "waist")]),
      straight("centreWaist", "centreNeck", "centre"),
    ],
    darts: darted ? [dartIn("waist", "waistDartApex")] : [],
    levelLines: [],
    centreOnFold,
  };
}

const bodice = (front: Box = {}, back: Box = {}): PieceSet => setOf([box("front", front), box("back", back)]);

const places = (walk: readonly { readonly curve: ReturnType<typeof lineEdge<"piece">>; readonly seam: string }[]) =>
  walk.map(({ curve: { a, b }, seam }) => [seam, a.x, a.y, b.x, b.y]);

const WALKED = [
  ["neck", 0, 0, 60, 0],
  ["shoulder", 60, 0, 160, 0],
  ["armhole", 160, 0, 160, 150],
  ["side", 160, 150, 160, 400],
];

describe("the upper edge", () => {
  it("goes from the centre down the side", () => {
    expect(places(upperWalk([box("front")], 60))).toEqual(WALKED);
  });

  it("has a dart in it shut about its end: what lies beyond comes to it", () => {
    // 20 wide in the shoulder, 100 long: all beyond turns by 2 atan 0.1, with the near side of the mouth staying.
    const plain = box("front");
    const darted: Piece = {
      ...plain,
      points: {
        ...plain.points,
        waistDartInner: named(100, 0, "shoulder"),
        waistDartOuter: named(120, 0, "shoulder"),
        waistDartApex: named(110, 100, "bust"),
      },
      edges: [
        straight("centreNeck", "sideNeck", "neck"),
        straight("sideNeck", "waistDartInner", "shoulder"),
        mouth("waistDartInner", "waistDartOuter", "shoulder", "waistDart"),
        straight("waistDartOuter", "shoulderTip", "shoulder"),
        ...plain.edges.slice(2),
      ],
      darts: [dartIn("shoulder", "waistDartApex")],
    };
    const walk = upperWalk([darted], 60);
    expect(walk.map(({ seam, from, to }) => [seam, from, to])).toEqual([
      ["neck", "centreNeck", "sideNeck"],
      ["shoulder", "sideNeck", "waistDartInner"],
      ["shoulder", "waistDartOuter", "shoulderTip"],
      ["armhole", "shoulderTip", "underarm"],
      ["side", "underarm", "sideWaist"],
    ]);
    const turn = 2 * Math.atan(0.1);
    // 40 of shoulder beyond the mouth, then 150 square to it.
    const tip = { x: 100 + 40 * Math.cos(turn), y: -40 * Math.sin(turn) };
    expect(walk[2]?.curve.a).toEqual({ x: close(100), y: close(0) });
    expect(walk[2]?.curve.b).toEqual({ x: close(tip.x), y: close(tip.y) });
    expect(walk[3]?.curve.b).toEqual({
      x: close(tip.x + 150 * Math.sin(turn)),
      y: close(tip.y + 150 * Math.cos(turn)),
    });
  });

  it("has the parts of a princess seam laid edge to edge, wherever each is drawn", () => {
    const of = (name: PieceName, x: number, y: number): Piece => ({
      name,
      points:
        name === "centreFront"
          ? {
              centreNeck: named(0, 0, "neck"),
              sideNeck: named(60, 0, "neck"),
              princessTop: named(110, 0, "shoulder"),
              princessWaist: named(110, 400, "waist"),
              centreWaist: named(0, 400, "waist"),
            }
          : {
              // Drawn turned by a quarter: its seam lies level.
              princessTop: named(x, y, "shoulder"),
              shoulderTip: named(x, y + 50, "shoulder"),
              underarm: named(x - 150, y + 50, "underarm"),
              sideWaist: named(x - 400, y + 50, "waist"),
              princessWaist: named(x - 400, y, "waist"),
            },
      edges:
        name === "centreFront"
          ? [
              straight("centreNeck", "sideNeck", "neck"),
              straight("sideNeck", "princessTop", "shoulder"),
              straight("princessTop", "princessWaist", "princess"),
              straight("princessWaist", "centreWaist", "waist"),
              straight("centreWaist", "centreNeck", "centre"),
            ]
          : [
              straight("princessWaist", "princessTop", "princess"),
              straight("princessTop", "shoulderTip", "shoulder"),
              straight("shoulderTip", "underarm", "armhole"),
              straight("underarm", "sideWaist", "side"),
              straight("sideWaist", "princessWaist", "waist"),
            ],
      darts: [],
      levelLines: [],
      centreOnFold: false,
    });
    const walk = places(upperWalk([of("centreFront", 0, 0), of("sideFront", 700, 30)], 60));
    expect(
      walk.map(([seam, ...at]) => [seam, ...at.map((value) => Math.round(Number(value) * 1e6) / 1e6 + 0)]),
    ).toEqual([
      ["neck", 0, 0, 60, 0],
      ["shoulder", 60, 0, 110, 0],
      ["shoulder", 110, 0, 160, 0],
      ["armhole", 160, 0, 160, 150],
      ["side", 160, 150, 160, 400],
    ]);
  });

  it("ends at the centre, which goes down as far as no dart opens on it", () => {
    expect(centreDown(box("front"))).toEqual([lineEdge(piecePoint(0, 0), piecePoint(0, 400))]);
    const plain = box("front");
    const darted: Piece = {
      ...plain,
      points: {
        ...plain.points,
        bend000: named(0, 40, "neck"),
        waistDartInner: named(0, 100, "bust"),
        waistDartOuter: named(0, 120, "bust"),
        waistDartApex: named(80, 110, "bust"),
      },
      edges: [
        ...plain.edges.slice(0, 5),
        straight("centreWaist", "waistDartOuter", "centre"),
        mouth("waistDartOuter", "waistDartInner", "centre", "waistDart"),
        straight("waistDartInner", "bend000", "centre"),
        { ...straight("bend000", "centreNeck", "centre"), curve: { c1: piecePoint(1, 30), c2: piecePoint(2, 10) } },
      ],
      darts: [dartIn("centre", "waistDartApex")],
    };
    expect(centreDown(darted)).toEqual([
      { a: piecePoint(0, 0), b: piecePoint(0, 40), curve: { c1: piecePoint(2, 10), c2: piecePoint(1, 30) } },
      { a: piecePoint(0, 40), b: piecePoint(0, 100), curve: null },
    ]);
  });
});

describe("a length along edges", () => {
  // Corners after 50 and 80 of one row, after 60 of another.
  const line = (from: number, to: number) => lineEdge(piecePoint(from, 0), piecePoint(to, 0));
  const rows = [[line(0, 50), line(50, 80)], [line(0, 60)]];

  it.each([
    [50, 50],
    [51.9, 50],
    [52, 52],
    [49.9, 49.9],
    [61, 60],
    [62.1, 62.1],
    [81.5, 80],
  ])("of %d ends at %d: no less than 2 beyond a corner", (wanted, found) => {
    expect(clearOfCorners(rows, wanted)).toBe(found);
  });
});

const both = { neck: "facing", armhole: "facing" } as const;

describe("facings", () => {
  const of = (
    half: PieceSet,
    depth = 60,
    finish: { neck: "facing" | "binding"; armhole: "facing" | "binding" } = both,
  ) => {
    const { pieces, ...made } = facingsOf({ halves: [half, half], ...finish, depth });
    return { ...made, pieces: pieces[0] };
  };
  const names = (half: PieceSet, depth = 60) => of(half, depth).pieces.map(({ name }) => name);

  it("of neck and armhole are one where less than 20 is left between them on the shoulder", () => {
    const apart = ["frontFacing", "backFacing", "frontArmholeFacing", "backArmholeFacing"];
    expect(names(bodice({ shoulder: 139 }, { shoulder: 139 }))).toEqual(["frontFacing", "backFacing"]);
    expect(names(bodice({ shoulder: 140 }, { shoulder: 140 }))).toEqual(apart);
    // The shorter shoulder decides.
    expect(of(bodice({ shoulder: 160 }, { shoulder: 139 })).inOne).toBe(true);
    expect(of(bodice({ shoulder: 160 }, { shoulder: 160 })).inOne).toBe(false);
    expect(names(bodice({ shoulder: 139 }, { shoulder: 139 }), 50)).toEqual(apart);
  });

  it("are those that are asked for", () => {
    const half = bodice();
    expect(of(half, 60, { neck: "facing", armhole: "binding" })).toMatchObject({
      inOne: false,
      pieces: [{ name: "frontFacing" }, { name: "backFacing" }],
    });
    expect(of(half, 60, { neck: "binding", armhole: "facing" }).pieces.map(({ name }) => name)).toEqual([
      "frontArmholeFacing",
      "backArmholeFacing",
    ]);
    expect(of(half, 60, { neck: "binding", armhole: "binding" })).toEqual({ pieces: [], depth: 60, inOne: false });
    expect(of(setOf([box("front")])).pieces).toEqual([]);
  });

  it.each([
    // The end of a dart below the neck, less 6, but 25 at the least.
    [[30, 70], 60],
    [[30, 50], 44],
    [[30, 29], 25],
    // Beside the armhole.
    [[120, 200], 58.03],
    [[125, 100], 29],
  ] as const)("keep clear of a dart that ends at %j: %d deep", (apexAt, depth) => {
    expect(of(bodice({ apexAt })).depth).toBeCloseTo(depth, 2);
    expect(of(bodice({}, { apexAt })).depth).toBeCloseTo(depth, 2);
  });

  it("of the neck take as much of the shoulder as they are deep, and leave 10 of it", () => {
    const neck = { neck: "facing", armhole: "binding" } as const;
    const shoulder = (wide: number): number[] =>
      of(bodice({ shoulder: wide }, { shoulder: wide }), 60, neck).pieces.map((piece) =>
        seamByBezierJs(piece, "shoulder"),
      );
    expect(shoulder(100)).toEqual([close(60), close(60)]);
    expect(shoulder(70)).toEqual([close(60), close(60)]);
    expect(shoulder(65)).toEqual([close(55), close(55)]);
  });

  it("of the neck are a band of its depth: along the edge, up the shoulder, square at the fold", () => {
    const [piece] = of(bodice({ centreOnFold: true }), 60, { neck: "facing", armhole: "binding" }).pieces;
    const { points, edges, ...rest } = invariant(piece, "facing");
    expect(rest).toEqual({ name: "frontFacing", darts: [], levelLines: [], centreOnFold: true });
    expect(edges.map(({ seam }) => seam).filter((seam, at, all) => seam !== all[at - 1])).toEqual([
      "neck",
      "shoulder",
      "edge",
      "centre",
    ]);
    expect(edges[0]).toMatchObject({ from: "centreNeck", to: "sideNeck", seam: "neck", curve: null });
    expect(edges[1]).toMatchObject({ from: "sideNeck", to: "facing1", seam: "shoulder" });
    expect(points.facing1).toEqual({ at: piecePoint(120, 0), level: "neck" });
    expect(points.facing2?.at).toEqual({ x: close(0), y: close(60) });
    const lower = edges.filter(({ seam }) => seam === "edge");
    // All between lie 60 below the neck, 25 apart at the least, from its end inwards.
    const bends = lower.slice(1).map(({ from }) => invariant(points[from], from).at);
    expect(bends.length).toBeGreaterThan(0);
    for (const { x, y } of bends) {
      expect(y).toBeCloseTo(60, 9);
      expect(x).toBeGreaterThanOrEqual(25);
      expect(x).toBeLessThan(60 + 1e-6);
    }
    expect(bends.map(({ x }) => x)).toEqual(bends.map(({ x }) => x).toSorted((a, b) => b - a));
    // It comes in level, a third of its last stretch before the fold.
    expect(lower.at(-1)?.curve?.c2.y).toBeCloseTo(60, 9);
    expect(lower.at(-1)?.curve?.c2.x).toBeCloseTo((bends.at(-1)?.x ?? 0) / 3, 9);
    expect(edges.at(-1)).toMatchObject({ from: "facing2", to: "centreNeck", seam: "centre" });
  });

  it("in one run round the corner of the shoulder at one depth, down the side as far", () => {
    const [piece] = of(bodice()).pieces;
    const { points, edges } = invariant(piece, "facing");
    expect(edges.map(({ seam }) => seam).filter((seam, at, all) => seam !== all[at - 1])).toEqual([
      "neck",
      "shoulder",
      "armhole",
      "side",
      "edge",
      "centre",
    ]);
    expect(points.facing1?.at).toEqual({ x: close(160), y: close(210) });
    const bends = edges
      .filter(({ seam }) => seam === "edge")
      .slice(1)
      .map(({ from }) => invariant(points[from], from).at);
    expect(bends.length).toBeGreaterThan(4);
    // Upright 60 inside the armhole, then level 60 below the neck.
    const off = bends.map(({ x, y }) => (y > 60.6 ? Math.abs(x - 100) : Math.abs(y - 60)));
    expect(Math.max(...off)).toBeLessThan(0.51);
    // Smooth from bend to bend.
    const lower = edges.filter(({ seam }) => seam === "edge");
    const corners = lower.slice(1).map((edge, at) => {
      const [into, out] = [invariant(lower[at]?.curve, "curve").c2, invariant(edge.curve, "curve").c1];
      const { x, y } = invariant(points[edge.from], edge.from).at;
      return Math.abs(Math.atan2(y - into.y, x - into.x) - Math.atan2(out.y - y, out.x - x));
    });
    expect(Math.max(...corners)).toBeLessThan(1e-9);
    const apart = bends.slice(1).map((p, at) => Math.hypot(p.x - (bends[at]?.x ?? 0), p.y - (bends[at]?.y ?? 0)));
    expect(Math.min(...apart)).toBeGreaterThanOrEqual(25);
  });

  it("go round a corner that is cut into the cloth, as far from it as from its sides", () => {
    const plain = box("front");
    const square: Piece = {
      ...plain,
      points: { ...plain.points, centreNeck: named(0, 50, "neck"), neckCorner: named(60, 50, "neck") },
      edges: [
        straight("centreNeck", "neckCorner", "neck"),
        straight("neckCorner", "sideNeck", "neck"),
        ...plain.edges.slice(1),
      ],
    };
    const half = setOf([square, box("back")]);
    const piece = invariant(of(half, 40, { neck: "facing", armhole: "binding" }).pieces[0], "facing");
    const bends = piece.edges
      .filter(({ seam }) => seam === "edge")
      .slice(1)
      .map(({ from }) => invariant(piece.points[from], from).at);
    // Beside the upright side 40 out, below the level one 40 down, and round the corner between.
    const off = bends.map(({ x, y }) => (y <= 50 ? x - 60 : x <= 60 ? y - 50 : Math.hypot(x - 60, y - 50)));
    for (const away of off) expect(away).toBeCloseTo(40, 6);
    expect(bends.filter(({ x, y }) => x > 61 && y > 51).length).toBeGreaterThan(0);
    expect(piece.points.facing2?.at).toEqual({ x: close(0), y: close(90) });
  });

  it("of an armhole end on the shoulder and on the side, and never lie on the fold", () => {
    const half = bodice({ shoulder: 160, centreOnFold: true }, { shoulder: 160 });
    const piece = invariant(of(half).pieces[2], "facing");
    expect(piece).toMatchObject({ name: "frontArmholeFacing", centreOnFold: false });
    expect(
      ["shoulder", "armhole", "side"].map((seam) => piece.edges.filter((edge) => edge.seam === seam).length),
    ).toEqual([1, 1, 1]);
    expect(seamByBezierJs(piece, "shoulder")).toBeCloseTo(60, 6);
    expect(seamByBezierJs(piece, "side")).toBeCloseTo(60, 6);
    // The part of the shoulder next to the armhole: from 160 to 220.
    expect(Math.min(...Object.values(piece.points).map(({ at }) => at.x))).toBeCloseTo(160, 6);
    expect(piece.points.shoulderTip?.at).toEqual(piecePoint(220, 0));
  });
});

/** Two halves, one on either side of the 140 of shoulder from which on neck and armhole are faced by themselves at 60. */
describe("facings of halves whose shoulders differ", () => {
  const [narrow, wide] = [bodice({ shoulder: 136 }, { shoulder: 138 }), bodice({ shoulder: 150 }, { shoulder: 152 })];
  const draft = (halves: readonly [PieceSet, PieceSet], edges: Edges = {}) =>
    draftEdges({
      edges,
      straps: null,
      bodice: halves,
      isLined: false,
      closure: { place: "centreBack", belowWaist: 0 },
      allowances: {},
    });
  const seamsOf = (parts: ReturnType<typeof draft>["parts"]) =>
    parts.flatMap((part) =>
      part.kind === "piece" && part.cloth === "main"
        ? [[part.key, part.cut.count, [...new Set(part.piece.edges.map(({ seam }) => seam))].join(" ")]]
        : [],
    );

  const whole = "neck shoulder armhole side edge centre";

  it.each([
    ["left", [narrow, wide]],
    ["right", [wide, narrow]],
  ] as const)("are all in one where the shoulder of the %s half is too short for two", (_, halves) => {
    const { parts, facing } = draft(halves);
    expect(facing).toEqual({ asked: 60, depth: 60, inOne: true });
    expect(seamsOf(parts)).toEqual([
      ["frontFacing-left", 1, whole],
      ["frontFacing-right", 1, whole],
      ["backFacing-left", 1, whole],
      ["backFacing-right", 1, whole],
    ]);
  });

  it("are all apart where both are long enough, those of the armhole for each half too", () => {
    const { parts, facing } = draft([bodice({ shoulder: 141 }, { shoulder: 141 }), wide]);
    expect(facing?.inOne).toBe(false);
    // Beside the neck all is alike: 60 of the shoulder. Beside the armhole too, but further out.
    expect(seamsOf(parts)).toEqual([
      ["frontFacing", 2, "neck shoulder edge centre"],
      ["backFacing", 2, "neck shoulder edge centre"],
      ["frontArmholeFacing-left", 1, "shoulder armhole side edge"],
      ["frontArmholeFacing-right", 1, "shoulder armhole side edge"],
      ["backArmholeFacing-left", 1, "shoulder armhole side edge"],
      ["backArmholeFacing-right", 1, "shoulder armhole side edge"],
    ]);
  });

  it.each([
    ["left", [bodice({ apexAt: [30, 50] }), bodice()]],
    ["right", [bodice(), bodice({ apexAt: [30, 50] })]],
  ] as const)("are as deep as the dart of the %s half leaves room for: 50 less 6", (_, halves) => {
    const { facing, parts } = draft(halves, { armhole: "binding" });
    expect(facing).toEqual({ asked: 60, depth: close(44), inOne: false });
    // On neither half more of the shoulder than of the other.
    const taken = parts.flatMap((part) => (part.kind === "piece" ? [seamByBezierJs(part.piece, "shoulder")] : []));
    expect(taken).toEqual(taken.map(() => close(44)));
    expect(taken.length).toBeGreaterThan(0);
  });

  it("leave 10 of the shorter shoulder on both halves", () => {
    const { parts } = draft([bodice({ shoulder: 65 }, { shoulder: 67 }), bodice()], { armhole: "binding" });
    const taken = parts.flatMap((part) => (part.kind === "piece" ? [seamByBezierJs(part.piece, "shoulder")] : []));
    expect(taken).toEqual(taken.map(() => close(55)));
  });

  it("of an edge that one half alone has are cut for that half", () => {
    const closed = (name: PieceName): Piece => ({
      ...box(name, { shoulder: 150 }),
      edges: box(name, { shoulder: 150 }).edges.map((edge) =>
        edge.seam === "armhole" ? { ...edge, seam: "side" } : edge,
      ),
    });
    const without = setOf([closed("front"), closed("back")]);
    const armholes = (halves: readonly [PieceSet, PieceSet]) =>
      draft(halves, { neck: "binding" }).parts.flatMap((part) =>
        part.kind === "piece" ? [[part.key, part.cloth, part.half, part.cut.count]] : [],
      );
    for (const half of ["left", "right"] as const)
      expect(armholes(half === "left" ? [wide, without] : [without, wide])).toEqual([
        [`frontArmholeFacing-${half}`, "main", half, 1],
        [`frontArmholeFacing-${half}-interfacing`, "interfacing", half, 1],
        [`backArmholeFacing-${half}`, "main", half, 1],
        [`backArmholeFacing-${half}-interfacing`, "interfacing", half, 1],
      ]);
  });
});

describe("edges", () => {
  const drafted = (edges: Edges, halves: readonly [PieceSet, PieceSet], more: { isLined?: boolean } = {}) =>
    draftEdges({
      edges,
      straps: null,
      bodice: halves,
      isLined: more.isLined ?? false,
      closure: { place: "centreBack", belowWaist: 0 },
      allowances: {},
    });
  const plain = bodice({ centreOnFold: true });

  it("are faced 60 deep where nothing is said, each facing with its interfacing", () => {
    const draft = drafted({}, [plain, plain]);
    expect(draft).toMatchObject({
      strap: null,
      bias: [],
      binding: null,
      facing: { asked: 60, depth: 60, inOne: true },
    });
    expect(draft.edges).toEqual([
      { edge: "neck", length: 240, finish: "facing", strip: null },
      { edge: "armhole", length: 300, finish: "facing", strip: null },
    ]);
    const once = { onFold: true, count: 1 };
    const twice = { onFold: false, count: 2 };
    expect(draft.parts.map(({ key, cloth, group, cut, half, grain }) => [key, cloth, group, cut, half, grain])).toEqual(
      [
        ["frontFacing", "main", "facing", once, null, "along"],
        ["frontFacing-interfacing", "interfacing", "facing", once, null, "along"],
        ["backFacing", "main", "facing", twice, null, "along"],
        ["backFacing-interfacing", "interfacing", "facing", twice, null, "along"],
      ],
    );
  });

  it("are bound with strips of 97 of 100 of them and 50, four times as wide", () => {
    expect([stripLength(240), stripWidth(8)]).toEqual([close(282.8), 32]);
    const draft = drafted({ neck: "binding", armhole: "binding" }, [plain, plain]);
    expect(draft.edges).toEqual([
      { edge: "neck", length: 240, finish: "binding", strip: { length: close(282.8), width: 32, count: 1 } },
      { edge: "armhole", length: 300, finish: "binding", strip: { length: 341, width: 32, count: 2 } },
    ]);
    expect(draft.bias).toEqual([{ width: 32, length: close(282.8 + 682) }]);
    expect([draft.facing, draft.binding]).toEqual([null, { asked: 8, width: 8 }]);
    expect(draft.parts).toEqual(
      [
        { key: "binding-1", count: 1, width: 282.8 },
        { key: "binding-2", count: 2, width: 341 },
      ].map(({ key, count, width }) => ({
        kind: "rectangle",
        key,
        group: "binding",
        cloth: "main",
        cut: { onFold: false, count },
        half: null,
        grain: "bias",
        name: "binding",
        width: close(width),
        depth: 32,
        allowances: { top: 0, bottom: 0, sides: 0 },
      })),
    );
  });

  it("are faced and bound no deeper and no wider than can be sewn, and say what was asked", () => {
    const depth = (facingDepth: number) => drafted({ facingDepth }, [plain, plain]).facing;
    expect([depth(10), depth(400)]).toMatchObject([
      { asked: 10, depth: 25 },
      { asked: 400, depth: 150 },
    ]);
    const width = (bindingWidth: number) => drafted({ neck: "binding", bindingWidth }, [plain, plain]).binding;
    expect([width(2), width(4), width(40), width(60)]).toEqual([
      { asked: 2, width: 4 },
      { asked: 4, width: 4 },
      { asked: 40, width: 40 },
      { asked: 60, width: 40 },
    ]);
  });

  it("that are not there are neither told nor faced", () => {
    const sleeved = (name: PieceName): Piece => ({
      ...box(name),
      edges: box(name).edges.map((edge) => (edge.seam === "armhole" ? { ...edge, seam: "side" } : edge)),
    });
    const half = setOf([sleeved("front"), sleeved("back")]);
    expect(drafted({}, [half, half]).edges.map(({ edge }) => edge)).toEqual(["neck"]);
    expect(facingsOf({ halves: [half, half], neck: "binding", armhole: "facing", depth: 60 }).pieces).toEqual([[], []]);
    const { centreNeck: _, ...headless } = box("front").points;
    const open = setOf([{ ...box("front"), points: headless }, box("back")]);
    expect(facingsOf({ halves: [open, open], ...both, depth: 60 }).pieces).toEqual([[], []]);
  });

  it("of halves that differ are told apart: armholes each, facings each", () => {
    const other = bodice({ centreOnFold: true, neck: 70, shoulder: 90 }, { shoulder: 110 });
    const draft = drafted({}, [plain, other]);
    // Armholes are alike, necks 120 and 130.
    expect(draft.edges).toMatchObject([
      { edge: "neck", length: 250 },
      { edge: "armhole", length: 300 },
    ]);
    expect(draft.parts.map(({ key, cut, half }) => [key, cut.onFold, cut.count, half])).toEqual([
      ["frontFacing", false, 1, null],
      ["frontFacing-interfacing", false, 1, null],
      ["backFacing-left", false, 1, "left"],
      ["backFacing-left-interfacing", false, 1, "left"],
      ["backFacing-right", false, 1, "right"],
      ["backFacing-right-interfacing", false, 1, "right"],
    ]);
    expect(drafted({}, [plain, other], { isLined: true })).toMatchObject({ parts: [], facing: null });
  });
});

describe("straps", () => {
  const piece = (name: PieceName, points: Piece["points"], edges: Piece["edges"]): Piece => ({
    name,
    points,
    edges,
    darts: [],
    levelLines: [],
    centreOnFold: false,
  });
  /** With a seam from one place of its level edge to another, and a place on the shoulder where the strap aims at. */
  const strapped = (name: "cup" | "back", inner: number, outer: number, aim: readonly [number, number]): Piece =>
    piece(
      name,
      {
        centreNeck: named(0, 0, "neck"),
        strapInner: named(inner, 0, "neck"),
        strapOuter: named(outer, 0, "neck"),
        strapAim: named(...aim, "neck"),
      },
      [
        straight("centreNeck", "strapInner", "neck"),
        straight("strapInner", "strapOuter", "strap"),
        straight("strapOuter", "centreNeck", "waist"),
      ],
    );
  const strapOf = (wide: number, long: number): Piece =>
    piece(
      "strap",
      {
        strapBackInner: named(0, 0, "shoulder"),
        strapBackOuter: named(wide, 0, "shoulder"),
        strapFrontOuter: named(wide, long, "shoulder"),
        strapFrontInner: named(0, long, "shoulder"),
      },
      [
        straight("strapBackInner", "strapBackOuter", "strap"),
        straight("strapBackOuter", "strapFrontOuter", "armhole"),
        straight("strapFrontOuter", "strapFrontInner", "strap"),
        straight("strapFrontInner", "strapBackInner", "neck"),
      ],
    );
  /** Its seam 30 wide about x = 115, and 200 from there to the shoulder. */
  const cup = strapped("cup", 100, 130, [115, -200]);
  /** Its seam 34 wide about x = 97, 80 from the centre; 50 from there to the shoulder, 30 nearer the centre and 40 up. */
  const back = strapped("back", 80, 114, [67, -40]);
  const strap = strapOf(20, 240);
  const set = setOf([cup, back, strap]);
  const draft = (straps: Straps, allowances = {}) => {
    const { figures, parts } = invariant(draftStraps([set, set], straps, allowances), "straps");
    expect(figures.right).toBe(figures.left);
    return { figures: figures.left, parts };
  };
  const strip = {
    kind: "rectangle",
    group: "strap",
    cloth: "main",
    half: null,
    grain: "along",
    width: 40,
    allowances: { top: 15, bottom: 15, sides: 6 },
  };

  it("are as the pattern's where nothing is said: 20 wide, 10 shorter than their way of 250", () => {
    expect(draft({ kind: "plain" })).toEqual({
      figures: {
        kind: "plain",
        width: 20,
        seamWidth: 30,
        asked: 20,
        length: 240,
        way: 250,
        coversBra: null,
        coversFrom: null,
        elastic: null,
        fromCentreBack: 97,
      },
      parts: [{ ...strip, key: "strap-strip", name: "strap", cut: { onFold: false, count: 2 }, depth: 240 }],
    });
  });

  it("crossed, go over the centre back: 97 and 67 across, 40 up", () => {
    const way = 200 + Math.hypot(97 + 67, 40);
    expect(draft({ kind: "crossed" }).figures).toMatchObject({ way: close(way), length: close(way - 10) });
  });

  it("tied, are half of that and 300 each, cut four times, with no elastic", () => {
    const { figures, parts } = draft({ kind: "tied", elastic: true }, { strap: 10 });
    expect(figures).toMatchObject({ length: 420, elastic: null });
    expect(parts).toEqual([
      {
        ...strip,
        key: "tie",
        name: "tie",
        cut: { onFold: false, count: 4 },
        depth: 420,
        allowances: { top: 10, bottom: 10, sides: 6 },
      },
    ]);
  });

  it("with elastic, end in a casing of 150 over 110 of it, 3 narrower than they are but 4 at the least", () => {
    const { figures, parts } = draft({ kind: "plain", elastic: true });
    expect(figures.elastic).toEqual({ length: 110, width: 17 });
    expect(parts).toMatchObject([
      { key: "strap-strip", name: "strap", depth: 140, cut: { count: 2 } },
      { key: "elastic-casing", name: "elasticCasing", depth: 150, width: 40, cut: { onFold: false, count: 2 } },
    ]);
    expect(draft({ kind: "plain", elastic: true, width: 6 }).figures.elastic?.width).toBe(4);
    // Of 250 − 170 there is nothing left before the casing.
    expect(draft({ kind: "plain", elastic: true, ease: -170 }).parts).toMatchObject([{ depth: 25 }, { depth: 150 }]);
    expect(draft({ kind: "plain", elastic: false }).figures.elastic).toBeNull();
  });

  it("are no wider than the narrower of their seams, 5 at the least, and half of their way long", () => {
    const width = (wide: number) => draft({ kind: "plain", width: wide }).figures;
    expect([width(55), width(30), width(3)]).toMatchObject([
      { width: 30, asked: 55 },
      { width: 30, asked: 30 },
      { width: 5, asked: 3 },
    ]);
    expect(draft({ kind: "plain", width: 10 }).parts).toMatchObject([{ width: 20, allowances: { sides: 5 } }]);
    expect(draft({ kind: "plain", ease: -200 }).figures.length).toBe(125);
    expect(draft({ kind: "plain", ease: 12 }).figures.length).toBe(262);
  });

  it("cover what is 10 narrower", () => {
    expect(draft({ kind: "plain", braStrap: 10 }).figures).toMatchObject({ coversBra: true, coversFrom: 20 });
    expect(draft({ kind: "plain", braStrap: 11 }).figures).toMatchObject({ coversBra: false, coversFrom: 21 });
  });

  describe("of halves that differ", () => {
    // The seam of the right cup 24 wide about x = 115, 203 below the shoulder; that of its back 28 wide about 105, 45 beside and
    // 60 below: 75. Its strap 22 wide and 250 long.
    const other = setOf([
      strapped("cup", 103, 127, [115, -203]),
      strapped("back", 91, 119, [60, -60]),
      strapOf(22, 250),
    ]);
    const each = (straps: Straps, halves: readonly [PieceSet, PieceSet] = [set, other]) =>
      invariant(draftStraps(halves, straps, {}), "straps");

    it("are each by its own: one strip for the left, one for the right", () => {
      const { figures, parts } = each({ kind: "plain" });
      expect(figures).toMatchObject({
        left: { width: 20, seamWidth: 30, length: 240, way: 250, fromCentreBack: 97 },
        right: { width: 22, seamWidth: 24, length: 250, way: 278, fromCentreBack: 105 },
      });
      const once = { ...strip, name: "strap", cut: { onFold: false, count: 1 } };
      const left = { ...once, key: "strap-strip-left", half: "left", width: 40, depth: 240 };
      const right = { ...once, key: "strap-strip-right", half: "right", width: 44, depth: 250 };
      expect(parts).toEqual([left, right]);
      // The other way round each goes with its half.
      expect(each({ kind: "plain" }, [other, set]).parts).toMatchObject([
        { key: "strap-strip-left", half: "left", width: 44, depth: 250 },
        { key: "strap-strip-right", half: "right", width: 40, depth: 240 },
      ]);
    });

    it("of a width that one of them cannot hold, differ in that alone", () => {
      const { figures, parts } = each({ kind: "plain", width: 26, ease: -28 });
      expect([figures.left, figures.right]).toMatchObject([
        { width: 26, asked: 26, length: 222 },
        { width: 24, asked: 26, length: 250 },
      ]);
      expect(parts).toMatchObject([{ width: 52 }, { width: 48 }]);
    });

    it("crossed, go from their own shoulder to the back of the other half", () => {
      const { figures } = each({ kind: "crossed" });
      const [left, right] = [200 + Math.hypot(67 + 105, 40), 203 + Math.hypot(60 + 97, 60)];
      // Shorter than that by as much as each is of its plain way: 10 and 28.
      expect(figures).toMatchObject({
        left: { seamWidth: 28, way: close(left), length: close(left - 10), fromCentreBack: 105 },
        right: { seamWidth: 24, way: close(right), length: close(right - 28), fromCentreBack: 97 },
      });
    });

    it("tied, are two of each; with elastic, each has its casing", () => {
      const cut = ({ parts }: ReturnType<typeof each>) =>
        parts.flatMap((part) =>
          part.kind === "rectangle" ? [[part.key, part.half, part.cut.count, part.width, part.depth]] : [],
        );
      expect(cut(each({ kind: "tied" }))).toEqual([
        ["tie-left", "left", 2, 40, 420],
        ["tie-right", "right", 2, 44, 425],
      ]);
      const elastic = each({ kind: "plain", elastic: true });
      expect(cut(elastic)).toEqual([
        ["strap-strip-left", "left", 1, 40, 140],
        ["elastic-casing-left", "left", 1, 40, 150],
        ["strap-strip-right", "right", 1, 44, 150],
        ["elastic-casing-right", "right", 1, 44, 150],
      ]);
      expect([elastic.figures.left.elastic, elastic.figures.right.elastic]).toEqual([
        { length: 110, width: 17 },
        { length: 110, width: 19 },
      ]);
    });

    it("are cut alike where they are only sewn elsewhere, and told apart all the same", () => {
      // Seam and shoulder both 2 further from the centre.
      const aside = setOf([cup, strapped("back", 82, 116, [69, -40]), strap]);
      const { figures, parts } = each({ kind: "plain" }, [set, aside]);
      expect([figures.left.fromCentreBack, figures.right.fromCentreBack]).toEqual([97, 99]);
      expect(parts).toMatchObject([{ key: "strap-strip", half: null, cut: { count: 2 }, depth: 240 }]);
    });

    it("are one and the same where the halves differ in nothing that they follow from", () => {
      const { figures, parts } = each({ kind: "plain" }, [set, setOf([cup, back, strapOf(20, 240.000_05)])]);
      expect(figures.right).toBe(figures.left);
      expect(parts.map(({ key, half }) => [key, half])).toEqual([["strap-strip", null]]);
      const longer = each({ kind: "plain" }, [set, setOf([cup, back, strapOf(20, 240.001)])]);
      expect(longer.parts.map(({ key }) => key)).toEqual(["strap-strip-left", "strap-strip-right"]);
    });

    it("of one width and two lengths have that very width, and elastic for it", () => {
      const { figures } = each({ kind: "plain", elastic: true }, [set, setOf([cup, back, strapOf(20.000_05, 260)])]);
      expect(figures.right).toMatchObject({
        width: figures.left.width,
        length: 260,
        elastic: { length: 110, width: 17 },
      });
      expect(each({ kind: "plain" }, [set, other]).figures.right.elastic).toBeNull();
    });

    it("are none where one of them has none", () => {
      for (const halves of [
        [set, setOf([cup, back])],
        [setOf([cup, back]), set],
      ] as const)
        expect(draftStraps(halves, { kind: "plain" }, {})).toBeNull();
    });
  });

  it("are none where a piece of them is missing, or where it says not where they go", () => {
    const without = (pieces: readonly Piece[]) => draftStraps([setOf(pieces), setOf(pieces)], { kind: "plain" }, {});
    expect([without([cup, back]), without([cup, strap]), without([back, strap])]).toEqual([null, null, null]);
    const { strapAim: _, ...aimless } = back.points;
    expect(without([cup, { ...back, points: aimless }, strap])).toBeNull();
    const { strapInner: __, ...seamless } = cup.points;
    expect(without([{ ...cup, points: seamless }, back, strap])).toBeNull();
  });
});
