/** Pieces as drawn, judged by the path data alone: where they lie, and that every line is closed. */
import { describe, expect, it } from "vitest";
import { piecePoint, type PiecePoint } from "../../src/core/geometry/point";
import type { Piece } from "../../src/core/pattern/piece";
import { demoWorks } from "../../src/document/demo";
import { pieceMarks, placePieces, type PieceMarks } from "../../src/drawing/index";
import { planOf, ref, testWork, withAlterations } from "../support/works";

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The points of a path of absolute moves, lines and curves; a curve lies within its points. */
const spotsOf = (path: string): readonly Spot[] => {
  const numbers = (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
  return numbers.flatMap((x, at) => (at % 2 === 0 ? [{ x, y: numbers[at + 1] ?? NaN }] : []));
};

const near = (a: Spot | undefined, b: Spot | undefined): boolean =>
  a !== undefined && b !== undefined && Math.hypot(a.x - b.x, a.y - b.y) < 0.02;

const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

const altered = withAlterations({
  kind: "dartEnd",
  id: "a",
  dart: ref("front", "waistDart"),
  shorten: 30,
  across: 12,
  hold: "fullness",
  giveBack: { sideSeam: 1 },
});

const works = [
  ...demoWorks(),
  { ...testWork, name: "to the waist", pattern: { ...testWork.pattern, length: "waist" as const } },
  { ...altered, name: "with a slip" },
  { ...testWork, name: "with a fuller bust", picks: { bustAlteration: 60 } },
].map((work) => [work.name, planOf(work)] as const);

/** The piece drawn wider, its centre line where it was. */
function widened(piece: Piece, times: number): Piece {
  const wide = ({ x, y }: PiecePoint): PiecePoint => piecePoint(x * times, y);
  return {
    ...piece,
    points: Object.fromEntries(
      Object.entries(piece.points).map(([name, point]) => [name, { ...point, at: wide(point.at) }]),
    ),
    edges: piece.edges.map((edge) =>
      edge.curve === null ? edge : { ...edge, curve: { c1: wide(edge.curve.c1), c2: wide(edge.curve.c2) } },
    ),
  };
}

it("a basque wider than its bodice does not reach under the back", () => {
  const { pieces } = planOf(testWork).left;
  const hippy = pieces.map((piece) => (piece.name === "frontBasque" ? widened(piece, 2) : piece));
  const places = placePieces([pieces, hippy]);
  const sidesOf = (name: string) => {
    const piece = hippy.find((one) => one.name === name);
    const dx = places.find((place) => place.piece === name)?.dx ?? NaN;
    const xs = piece === undefined ? [] : spotsOf(pieceMarks(piece).stitch).map(({ x }) => x + dx);
    return { left: Math.min(...xs), right: Math.max(...xs) };
  };
  expect(sidesOf("frontBasque").right).toBeGreaterThan(sidesOf("front").right + 150);
  expect(sidesOf("frontBasque").right).toBeLessThan(sidesOf("backBasque").left);
  expect(sidesOf("frontBasque").right).toBeLessThan(sidesOf("back").left);
});

/** Of a cap, which is alike on both sides of the dart's middle, the spot in the middle. */
function tipOf({ cap }: { readonly cap: string }): Spot {
  const spots = spotsOf(cap);
  const tip = spots[(spots.length - 1) / 2];
  if (tip === undefined) throw new Error("no cap");
  return tip;
}

describe.each(works)("the pieces of “%s”", (_, plan) => {
  const sizes = [...plan.nest.sizes, plan.left.pieces];
  const places = placePieces(sizes);
  const marks = sizes.flat().map(pieceMarks);

  it("lie apart on the table, in every size", () => {
    const areas = new Map<string, { left: number; right: number; top: number; bottom: number }>();
    for (const { piece, stitch } of marks) {
      const place = places.find((other) => other.piece === piece);
      if (place === undefined) throw new Error(`no place for the ${piece}`);
      const area = areas.get(piece) ?? { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
      for (const { x, y } of spotsOf(stitch)) {
        area.left = Math.min(area.left, x + place.dx);
        area.right = Math.max(area.right, x + place.dx);
        area.top = Math.min(area.top, y + place.dy);
        area.bottom = Math.max(area.bottom, y + place.dy);
      }
      areas.set(piece, area);
    }
    const all = [...areas];
    const meetings = all.flatMap(([one, a], at) =>
      all
        .slice(at + 1)
        .filter(([, b]) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
        .map(([other]) => `${one} and ${other}`),
    );
    expect(all.length).toBe(plan.left.pieces.length);
    expect(meetings).toEqual([]);
  });

  it("lie with the waists of front and back level, each basque under its own", () => {
    const at = (name: string) => places.find(({ piece }) => piece === name);
    const fronts = ["front", "centreFront", "sideFront", "cup"].map(at).filter((place) => place !== undefined);
    expect(new Set([...fronts, at("back")].map((place) => place?.dy)).size).toBe(1);
    expect(at("frontBasque")?.dx).toBe(at("frontBasque") === undefined ? undefined : fronts[0]?.dx);
    expect(at("backBasque")?.dx).toBe(at("backBasque") === undefined ? undefined : at("back")?.dx);
  });

  it.each<keyof PieceMarks & ("outline" | "stitch")>(["outline", "stitch"])(
    "have one %s that ends where it began",
    (line) => {
      const open = marks.filter((mark) => {
        const spots = spotsOf(mark[line]);
        // Z joins the last point to the first: where they are apart it would draw a line that is no seam.
        return mark[line].lastIndexOf("M") !== 0 || !mark[line].endsWith("Z") || !near(spots[0], spots.at(-1));
      });
      expect(marks.length).toBeGreaterThan(sizes.length);
      expect(open.map(({ piece }) => piece)).toEqual([]);
    },
  );

  it("have the cap of every dart in the stitch line, between its mouth ends, and not in the outline", () => {
    let caps = 0;
    for (const mark of marks) {
      const stitch = spotsOf(mark.stitch);
      for (const dart of mark.darts) {
        const cap = spotsOf(dart.cap);
        const tip = tipOf(dart);
        const [from, to] = [dart.inner, dart.outer].map((end) => stitch.findIndex((spot) => near(spot, end)));
        const between = stitch.slice(Math.min(from ?? -1, to ?? -1), Math.max(from ?? -1, to ?? -1) + 1);
        // All of the cap, and nothing else, from one mouth end to the other.
        expect(between).toHaveLength(cap.length);
        for (const spot of cap) expect(between.some((other) => near(spot, other))).toBe(true);
        for (const [end, spot] of [
          [dart.inner, cap[0]],
          [dart.outer, cap.at(-1)],
        ] as const)
          expect(near(spot, end)).toBe(true);
        expect(spotsOf(mark.outline).some((spot) => near(spot, tip))).toBe(false);
        // Folded paper must reach past the mouth, or the seam would have a notch in it.
        expect(apart(dart.apex, tip)).toBeGreaterThan(apart(dart.apex, dart.mouth));
        caps += 1;
      }
    }
    expect(caps).toBeGreaterThanOrEqual(2 * sizes.length);
  });

  it("have darts with legs of one length, folded from the end to the tip of the cap", () => {
    for (const { darts } of plan.left.pieces.map(pieceMarks)) {
      for (const dart of darts) {
        const [inner, apex, outer] = spotsOf(dart.legs);
        if (inner === undefined || apex === undefined || outer === undefined) throw new Error("no legs");
        expect(Math.abs(apart(inner, apex) - apart(apex, outer))).toBeLessThan(0.1);
        const [from, to] = spotsOf(dart.fold);
        expect(near(from, apex)).toBe(true);
        expect(near(to, tipOf(dart))).toBe(true);
      }
    }
  });
});
