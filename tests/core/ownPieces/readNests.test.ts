/** Pieces read from the lines of a file: our own to the last digit, foreign ones corner by corner, half-done ones told. */
import { describe, expect, it } from "vitest";
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { STYLE_NAMES, type Pattern } from "../../../src/core/decisions/pattern";
import { edgeNearest, edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { draftBlocks, printNest } from "../../../src/core/nest/printedNest";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import { outlineOf } from "../../../src/core/pattern/ring";
import { pointOf, type Nest, type Piece } from "../../../src/core/pattern/piece";
import { chartOf } from "../../support/foreign/asTraced";
import { drawingOf, type DrawnHow } from "../../support/foreign/drawingOf";
import { foreignNest } from "../../support/foreign/foreignNest";
import type { ForeignOptions } from "../../support/foreign/foreignTypes";
import { pointAt } from "../../support/foreign/plane";
import { sampleWork } from "../../support/sampleWork";
import { drawnNest, ownOf, type DrawnPiece, type Line, type XY } from "./drawnNest";

const linesOf = (piece: Piece): Line[] =>
  outlineOf(piece).map(({ a, b, curve }) => ({ a, b, c: curve === null ? undefined : [curve.c1, curve.c2] }));

/** The pieces of a nest as they are drawn, legs of darts inside. */
const drawn = ({ sizes, labels }: Nest): DrawnPiece[] =>
  (sizes[0] ?? []).map(({ name }) => ({
    title: name,
    sizes: sizes.map((pieces, index) => {
      const piece = pieces.find((one) => one.name === name);
      if (piece === undefined) throw new Error(name);
      return {
        label: labels[index] ?? "",
        outline: linesOf(piece),
        inner: piece.darts.map(({ inner, apex, outer }) => [
          { a: pointOf(piece, inner), b: pointOf(piece, apex) },
          { a: pointOf(piece, apex), b: pointOf(piece, outer) },
        ]),
        marks: piece.points.bustPoint === undefined ? [] : [piece.points.bustPoint.at],
      };
    }),
  }));

const LAID: readonly ((p: XY) => XY)[] = [
  ({ x, y }) => ({ x: -x + 400, y }),
  ({ x, y }) => ({ x: y, y: -x }),
  ({ x, y }) => ({ x: -x, y: -y }),
  ({ x, y }) => ({ x: y, y: x }),
];

describe("our own pieces", () => {
  it.each(STYLE_NAMES)("come back as they were drawn, however they lie: %s", (style) => {
    const pattern: Pattern = { ...sampleWork.pattern, style, length: "hip" };
    const { nest } = printNest(pattern, draftBlocks(pattern), style === "sideDart" ? 75 : 50);
    const drawing = drawnNest(drawn(nest), { lay: (p, piece) => LAID[piece % LAID.length]?.(p) ?? p });
    const read = readOwn({ own: ownOf(drawing), pattern });
    expect(read.missing).toEqual([]);
    for (const [index, size] of (read.nest?.sizes ?? []).entries()) {
      for (const was of nest.sizes[index] ?? []) {
        const made = size.pieces.find(({ name }) => name === was.name);
        if (made === undefined) throw new Error(was.name);
        const first = was.edges[0]?.from ?? "centreNeck";
        const down = pointOf(made, first).y - pointOf(was, first).y;
        for (const { from } of was.edges) {
          // The hinge of a bust adjustment is only a bend to one who reads it.
          if (from === "armholeHinge") continue;
          const [is, wanted] = [pointOf(made, from), pointOf(was, from)];
          expect(Math.hypot(is.x - wanted.x, is.y - down - wanted.y), `${was.name} ${from}`).toBeLessThan(0.001);
          expect(made.points[from]?.level, `${was.name} ${from}`).toBe(was.points[from]?.level);
        }
        expect(new Set(made.darts.map(({ name, aimsAt }) => `${name} ${aimsAt ?? ""}`))).toEqual(
          new Set(was.darts.map(({ name, aimsAt }) => `${name} ${aimsAt ?? ""}`)),
        );
        expect(made.levelLines).toEqual(was.levelLines);
        expect(made.centreOnFold).toBe(was.centreOnFold);
      }
    }
    expect(read.nest?.sizes.map(({ label }) => label)).toEqual(nest.labels);
  });
});

const CORNERS = [
  "centreNeck",
  "sideNeck",
  "shoulderTip",
  "underarm",
  "sideWaist",
  "centreWaist",
  "sideHem",
  "centreHem",
];

function readForeign(options: ForeignOptions, how: DrawnHow) {
  const nest = foreignNest(options);
  const { drawing, truth } = drawingOf(nest, { seed: options.seed, titles: true, ...how });
  const pattern: Pattern = {
    ...sampleWork.pattern,
    chart: chartOf(nest),
    style: nest.style,
    length: nest.options.basque ? "hip" : "waist",
  };
  const own: OwnPattern = { file: "nest", drawing, pieces: [] };
  return { nest, truth, pattern, own, read: readOwn({ own, pattern }) };
}

/** A size of a piece laid on its truth by two corners: how far they leave each other, mm. */
function leaves(
  piece: Piece,
  ring: Parameters<typeof pointAt>[0][],
  one: readonly [XY, XY],
  other: readonly [XY, XY],
): number {
  const way = (p: readonly [XY, XY]): number => Math.atan2(p[1].y - p[0].y, p[1].x - p[0].x);
  const angle = way(one) - way(other);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const to = (p: XY): PiecePoint => {
    const [dx, dy] = [p.x - other[0].x, p.y - other[0].y];
    return piecePoint(one[0].x + dx * cos - dy * sin, one[0].y + dx * sin + dy * cos);
  };
  const edges = outlineOf(piece);
  const there = ring.flatMap((s) => [0.1, 0.35, 0.6, 0.85].map((t) => to(pointAt(s, t))));
  const truth = ring.map(({ a, b, c }) => ({
    a: to(a),
    b: to(b),
    curve: c === undefined ? null : { c1: to(c[0]), c2: to(c[1]) },
  }));
  const back = edges.flatMap((edge) => [0.1, 0.35, 0.6, 0.85].map((t) => edgePointAt(edge, t)));
  const off = (p: PiecePoint, chain: typeof edges): number =>
    Math.min(...chain.map((edge) => edgeNearest(edge, p).distance));
  return Math.max(...there.map((p) => off(p, edges)), ...back.map((p) => off(p, truth)));
}

const WAYS: readonly (readonly [string, DrawnHow])[] = [
  ["by layers", {}],
  ["with darts cut out", { darts: "cut" }],
  ["turned, in inches", { turn: 0.6, unit: 25.4 }],
  ["side by side", { layout: "side by side" }],
];

describe("foreign pieces", () => {
  describe.each(WAYS)("%s", (_, how) => {
    it.each([1, 2, 3, 4, 5, 6])("come back with the corners and darts that they have, nest %d", (seed) => {
      const { nest, truth, read } = readForeign({ seed }, how);
      expect(read.missing).toEqual([]);
      const unit = read.outlines.scale.mm ?? 1;
      for (const one of truth.filter(({ piece }) => piece !== "other1")) {
        const size = read.pieces
          .find(({ said }) => said.name === one.piece)
          ?.sizes.find((each) => each.size === one.size);
        for (const name of CORNERS.filter((corner) => one.corners[corner] !== undefined)) {
          const at = size?.corners.find((corner) => corner.name === name)?.at ?? { x: NaN, y: NaN };
          const wanted = one.corners[name] ?? { x: NaN, y: NaN };
          expect(
            Math.hypot(at.x * unit - wanted.x, at.y * unit - wanted.y),
            `${one.piece} ${one.size} ${name}`,
          ).toBeLessThan(0.05);
        }
        for (const dart of one.darts) {
          const found = size?.darts.find(({ name }) => name === dart.name);
          const at = found?.apex ?? { x: NaN, y: NaN };
          expect(
            Math.hypot(at.x * unit - dart.apex.x, at.y * unit - dart.apex.y),
            `${one.piece} ${dart.name}`,
          ).toBeLessThan(0.05);
        }
        if (how.darts === "cut" || nest.pieces.length === 0) continue;
        const made = read.nest?.sizes
          .find(({ label }) => label === one.size)
          ?.pieces.find(({ name }) => name === one.piece);
        const [a, b] = ["sideWaist", one.corners.underarm === undefined ? "centreHem" : "underarm"];
        const [from, to] = [one.corners[a ?? ""], one.corners[b ?? ""]];
        if (made === undefined || from === undefined || to === undefined) continue;
        const [p, q] = [made.points.sideWaist?.at, made.points[b === "underarm" ? "underarm" : "centreHem"]?.at];
        if (p === undefined || q === undefined) throw new Error(one.piece);
        expect(leaves(made, [...one.ring], [p, q], [from, to]), `${one.piece} ${one.size}`).toBeLessThan(0.05);
      }
    });
  });
});

describe("half-done work", () => {
  const { own, pattern, read, truth } = readForeign({ seed: 3, basque: false, front: "side" }, {});

  it("is told what is missing, in order, and nothing throws", () => {
    const without = (text: string): FileDrawing => ({
      ...own.drawing,
      writings: own.drawing.writings.filter((writing) => !writing.text.includes(text)),
    });
    expect(readOwn({ own: { ...own, drawing: { ...own.drawing, lines: [] } }, pattern }).missing).toEqual([
      { code: "missing/outlines", widest: null },
    ]);
    expect(readOwn({ own: { ...own, drawing: { ...own.drawing, unit: null } }, pattern }).missing[0]).toEqual({
      code: "missing/scale",
    });
    // Front and back are told from each other by their form.
    expect(readOwn({ own: { ...own, drawing: without("front") }, pattern }).missing).toEqual([]);
    const front = read.pieces.find(({ said }) => said.name === "front");
    const left = readOwn({ own: { ...own, pieces: [{ id: front?.id ?? "", name: null, leftOut: true }] }, pattern });
    expect(left.missing).toContainEqual({ code: "missing/piece", piece: "front" });
    expect(left.nest).toBeNull();
  });

  it("follows a corner put right in one size to all others", () => {
    const front = read.pieces.find(({ said }) => said.name === "front");
    const unit = read.outlines.scale.mm ?? 1;
    const sizes = truth.filter(({ piece }) => piece === "front");
    const middle = sizes[1];
    const along = middle?.ring[1] ?? middle?.ring[0];
    if (front === undefined || middle === undefined || along === undefined) throw new Error("front");
    const at = pointAt(along, 0.5);
    const moved = readOwn({
      own: {
        ...own,
        pieces: [
          {
            id: front.id,
            name: "front",
            corners: [{ name: "sideNeck", size: middle.size, at: { x: at.x / unit, y: at.y / unit } }],
          },
        ],
      },
      pattern,
    });
    const found = moved.pieces.find(({ said }) => said.name === "front")?.sizes;
    const corner = found?.find(({ size }) => size === middle.size)?.corners.find(({ name }) => name === "sideNeck");
    expect(corner?.by).toBe("her");
    expect(Math.hypot((corner?.at.x ?? 0) * unit - at.x, (corner?.at.y ?? 0) * unit - at.y)).toBeLessThan(5);
    const others = found?.filter(({ size }) => size !== middle.size) ?? [];
    for (const size of others) {
      const there = size.corners.find(({ name }) => name === "sideNeck");
      const shoulder = sizes.find((one) => one.size === size.size)?.ring[middle.ring.indexOf(along)];
      if (there === undefined || shoulder === undefined) throw new Error(size.size);
      expect(there.by).not.toBe("her");
      // Half-way along the same line of the other size, as neck and shoulder grow nearly alike.
      const wanted = pointAt(shoulder, 0.5);
      expect(Math.hypot(there.at.x * unit - wanted.x, there.at.y * unit - wanted.y)).toBeLessThan(6);
    }
  });

  it("blends what lies between two corners of unlike levels smoothly from one to the other", () => {
    const front = drawnNest(
      (["front", "back"] as const).map((name) => ({
        title: name,
        sizes: ["8", "10"].map((label, index) => {
          const k = 1 + index * 0.05;
          const corners = (
            name === "front"
              ? [
                  [0, 80],
                  [70, 0],
                  [180, 40],
                  [230, 200],
                  [220, 420],
                  [0, 420],
                ]
              : [
                  [0, 18],
                  [70, 0],
                  [190, 40],
                  [240, 210],
                  [225, 420],
                  [0, 420],
                ]
          ).map(([x = 0, y = 0]) => ({ x: x * k, y }));
          const outline = corners.map((a, at): Line => ({ a, b: corners[(at + 1) % corners.length] ?? a }));
          // One size has its side seam in three straight stretches, cornered a quarter and three quarters down.
          const side = outline[3];
          if (side === undefined) throw new Error("side");
          const bent = [0.25, 0.75].map((share) => ({
            x: side.a.x + (side.b.x - side.a.x) * share - 9,
            y: side.a.y + (side.b.y - side.a.y) * share,
          }));
          const [p, q] = bent;
          if (p === undefined || q === undefined) throw new Error("side");
          const cornered = [
            ...outline.slice(0, 3),
            { a: side.a, b: p },
            { a: p, b: q },
            { a: q, b: side.b },
            ...outline.slice(4),
          ];
          return { label, outline: cornered, inner: [], marks: [{ x: 95 * k, y: 260 }] };
        }),
      })),
    );
    const made = readOwn({ own: ownOf(front), pattern: { ...sampleWork.pattern, style: "sideDart", length: "waist" } });
    const piece = made.nest?.sizes[0]?.pieces.find(({ name }) => name === "front");
    const bends = Object.entries(piece?.points ?? {}).flatMap(([name, point]) =>
      name.startsWith("bend") ? [point] : [],
    );
    expect(bends.length).toBeGreaterThan(0);
    // The bust line parts the side seam; from underarm and from bust on, 3t² − 2t³ of the share of the way.
    const [underarm, bust, waist] = ["underarm", "sideBust", "sideWaist"].map(
      (name) => piece?.points[name as "underarm"]?.at,
    );
    if (underarm === undefined || bust === undefined || waist === undefined) throw new Error("side");
    for (const { at, level, towards } of bends) {
      const isAbove = at.y < bust.y;
      const [from, to] = isAbove ? [underarm, bust] : [bust, waist];
      const way = (a: XY, b: XY): number => Math.hypot(b.x - a.x, b.y - a.y);
      const t = way(from, at) / (way(from, at) + way(at, to));
      expect([level, towards?.level]).toEqual(isAbove ? ["underarm", "bust"] : ["bust", "waist"]);
      expect(towards?.share).toBeCloseTo(3 * t ** 2 - 2 * t ** 3, 6);
    }
  });

  it("lets a dart go that is none", () => {
    const front = read.pieces.find(({ said }) => said.name === "front");
    const gone = readOwn({
      own: { ...own, pieces: [{ id: front?.id ?? "", name: "front", notDarts: ["waistDart"] }] },
      pattern,
    });
    const darts = gone.pieces
      .find(({ said }) => said.name === "front")
      ?.sizes.flatMap((size) => size.darts.map(({ name }) => name));
    expect(new Set(darts)).toEqual(new Set(["sideDart"]));
  });

  it("gives the very same pieces where nothing of them was said anew", () => {
    const again = readOwn({ own: { ...own, inUse: true }, pattern });
    expect(again.nest?.sizes[0]?.pieces[0]).toBe(read.nest?.sizes[0]?.pieces[0]);
  });
});

describe("pieces drawn whole", () => {
  it("are halved where they are mirrored", () => {
    const pattern: Pattern = { ...sampleWork.pattern, style: "sideDart", length: "waist" };
    const { nest } = printNest(pattern, draftBlocks(pattern), 50);
    const whole = drawn(nest).map((piece): DrawnPiece => ({
      ...piece,
      sizes: piece.sizes.map((size) => {
        const half = size.outline.filter(({ a, b }) => Math.abs(a.x) > 1e-6 || Math.abs(b.x) > 1e-6);
        const over = ({ x, y }: XY): XY => ({ x: -x, y });
        const other = half.map(({ a, b, c }) => ({
          a: over(b),
          b: over(a),
          c: c === undefined ? undefined : ([over(c[1]), over(c[0])] as const),
        }));
        return { ...size, outline: [...half, ...other.toReversed()] };
      }),
    }));
    const read = readOwn({ own: ownOf(drawnNest(whole)), pattern });
    expect(read.pieces.map(({ said }) => said.extent)).toEqual(["whole", "whole"]);
    expect(read.missing).toEqual([]);
    for (const [index, size] of (read.nest?.sizes ?? []).entries()) {
      for (const was of nest.sizes[index] ?? []) {
        const made = size.pieces.find(({ name }) => name === was.name);
        if (made === undefined) throw new Error(was.name);
        const down = pointOf(made, "centreNeck").y - pointOf(was, "centreNeck").y;
        for (const corner of ["sideNeck", "underarm", "sideWaist", "centreWaist"] as const) {
          const [is, wanted] = [pointOf(made, corner), pointOf(was, corner)];
          expect(Math.hypot(is.x - wanted.x, is.y - down - wanted.y), `${was.name} ${corner}`).toBeLessThan(0.01);
        }
      }
    }
  });
});
