/**
 * Notches meet: those with one number lie on two pieces, equally far along the sewn seam from where it begins, measured by
 * bezier-js on the pieces as they come out of any chain of alterations.
 */
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { cutNotch, notchPlaces, ownNotches, type NotchPlace } from "../../../src/core/cutting/notches";
import { piecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Edge, type Piece, type PieceName, type SeamName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { radians } from "../../../src/core/units";
import { anyChainWork } from "../../support/anyChainWork";
import { planOf, testWork } from "../../support/works";

const RUNS = Number(process.env.CHAINS ?? 25);

const bezierOf = (piece: Piece, { from, to, curve }: Edge): Bezier => {
  const [a, b] = [pointOf(piece, from), pointOf(piece, to)];
  const third = (share: number) => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
  return curve === null ? new Bezier(a, third(1 / 3), third(2 / 3), b) : new Bezier(a, curve.c1, curve.c2, b);
};

/** The edges of a seam from its upper end (side, princess) or from the centre (all others), darts left out. */
function sewnEdges(piece: Piece, seam: SeamName): readonly Bezier[] {
  const count = piece.edges.length;
  const on = (index: number): boolean => piece.edges[(index + count) % count]?.seam === seam;
  const start = piece.edges.findIndex((_, index) => on(index) && !on(index - 1));
  const edges = Array.from({ length: count }, (_, k) => piece.edges[(Math.max(start, 0) + k) % count])
    .filter((edge) => edge !== undefined)
    .filter((edge) => edge.seam === seam && edge.mouthOf === null)
    .map((edge) => bezierOf(piece, edge));
  const [head, tail] = [edges[0]?.get(0), edges.at(-1)?.get(1)];
  if (head === undefined || tail === undefined) return [];
  const falls = seam === "side" || seam === "princess";
  const isBack = falls ? head.y > tail.y : head.x > tail.x;
  return isBack
    ? edges
        .toReversed()
        .map((edge) => new Bezier(...(edge.points.toReversed().map(({ x, y }) => ({ x, y })) as [Pt, Pt, Pt, Pt])))
    : edges;
}

interface Pt {
  readonly x: number;
  readonly y: number;
}

const TRIED = 2000;

/** By trying many places: the library's own search is too coarse on long edges. */
function nearest(edge: Bezier, { x, y }: Pt): { readonly t: number; readonly off: number } {
  let best = { t: 0, off: Infinity };
  for (let i = 0; i <= TRIED; i += 1) {
    const p = edge.get(i / TRIED);
    const off = Math.hypot(p.x - x, p.y - y);
    if (off < best.off) best = { t: i / TRIED, off };
  }
  return best;
}

/** How far along the seam of its side of the body a place lies, by the pieces of that side in order; null where it lies on none of them. */
function alongSeam(pieces: PieceSet, side: readonly PieceName[], seam: SeamName, place: NotchPlace): number | null {
  let along = 0;
  for (const name of side) {
    const piece = pieces[name];
    if (piece === undefined) continue;
    for (const edge of sewnEdges(piece, seam)) {
      if (name === place.piece) {
        const { t, off } = nearest(edge, place.at);
        if (off < 0.2) return along + (t === 0 ? 0 : edge.split(0, t).length());
      }
      along += edge.length();
    }
  }
  return null;
}

const FRONT: readonly PieceName[] = ["centreFront", "sideFront"];
/** The pieces of one side of a seam that runs over two of them. */
const sideOf = (name: PieceName, seam: SeamName): readonly PieceName[] =>
  FRONT.includes(name) && (seam === "waist" || seam === "shoulder") ? FRONT : [name];

const setOf = (pieces: readonly Piece[]): PieceSet => Object.fromEntries(pieces.map((piece) => [piece.name, piece]));

describe.each(STYLE_NAMES)("notches of any plan, %s", (style) => {
  it("meet on the two pieces that are sewn together", () => {
    let met = 0;
    fc.assert(
      fc.property(anyChainWork(style), (work) => {
        const plan = derivePlan(work);
        const pieces = setOf(
          plan.ok && plan.value.checks.every(({ name, ok }) => ok || (name !== "outlineClosed" && name !== "seamsWalk"))
            ? plan.value.left.pieces
            : [],
        );
        const places = notchPlaces(pieces, work.pattern.closure).filter(({ kind }) => kind === "seam");
        const numbers = [...new Set(places.map(({ number }) => number))];
        const apart = numbers.flatMap((number) => {
          const two = places.filter((place) => place.number === number);
          const [one, other] = two;
          if (two.length !== 2 || one === undefined || other === undefined || one.piece === other.piece)
            return [`${number} stands ${two.length} times`];
          met += 1;
          const [a, b] = [one, other].map((place) =>
            alongSeam(pieces, sideOf(place.piece, place.seam), place.seam, place),
          );
          if (a === null || b === null || a === undefined || b === undefined)
            return [`${number} is not on its ${one.seam} seam`];
          // The back shoulder's 6 mm of ease is spread over the way: at the most all of it. A princess seam is met at the bust.
          const ease = one.seam === "shoulder" ? 6 : 0;
          return Math.abs(a - b) > 0.6 + ease
            ? [`${number} on the ${one.seam} seam: ${a} on ${one.piece} and ${b} on ${other.piece}`]
            : [];
        });
        expect(apart).toEqual([]);
      }),
      { numRuns: RUNS },
    );
    expect(met).toBeGreaterThan(RUNS);
  }, 300_000);
});

describe("notches", () => {
  const plan = planOf(testWork);
  const set = setOf(plan.left.pieces);

  it("keep 18 mm away from corners and darts, where scissors would cut both", () => {
    const near = notchPlaces(set, testWork.pattern.closure).flatMap(({ piece, at, kind }) =>
      kind !== "seam"
        ? []
        : piecesOf(set).flatMap((other) =>
            other.name === piece
              ? other.darts.flatMap(({ inner, outer }) =>
                  [inner, outer].map((name) =>
                    Math.hypot(pointOf(other, name).x - at.x, pointOf(other, name).y - at.y),
                  ),
                )
              : [],
          ),
    );
    expect(Math.min(...near)).toBeGreaterThan(17);
  });

  it("mark where the centre back opening ends below the waist", () => {
    const work = {
      ...testWork,
      pattern: {
        ...testWork.pattern,
        length: "hip" as const,
        closure: { place: "centreBack" as const, belowWaist: 120 },
      },
    };
    const opening = notchPlaces(setOf(planOf(work).left.pieces), work.pattern.closure).filter(
      ({ kind }) => kind === "opening",
    );
    expect(opening.map(({ piece }) => piece)).toEqual(["backBasque"]);
    // The centre back of the basque is straight and upright from the waist down.
    const waist =
      planOf(work).left.pieces.find(({ name }) => name === "backBasque")?.points.centreWaist?.at.y ?? Number.NaN;
    expect(opening[0]?.at.y).toBeCloseTo(waist + 120, 6);
  });

  it("mark it on both edges of a side opening", () => {
    const work = {
      ...testWork,
      pattern: { ...testWork.pattern, length: "hip" as const, closure: { place: "side" as const, belowWaist: 120 } },
    };
    const opening = notchPlaces(setOf(planOf(work).left.pieces), work.pattern.closure).filter(
      ({ kind }) => kind === "opening",
    );
    expect(opening.map(({ piece }) => piece)).toEqual(["frontBasque", "backBasque"]);
  });

  it("snip both legs of every dart, and the centre line on the fold", () => {
    const front = plan.left.pieces.find(({ name }) => name === "front");
    const own = front === undefined ? [] : ownNotches(front, true);
    expect(own.filter(({ kind }) => kind === "dart")).toHaveLength(4);
    expect(own.filter(({ kind }) => kind === "centre").map(({ at }) => at.x)).toEqual([0, 0]);
  });

  it("end where the way out meets the cutting line", () => {
    const square = [
      [-20, -20],
      [120, -20],
      [120, 120],
      [-20, 120],
    ].map(([x = 0, y = 0]) => ({ at: piecePoint(x, y), corner: true }));
    const place: NotchPlace = {
      piece: "front",
      at: piecePoint(50, 0),
      outward: radians(-Math.PI / 2),
      kind: "seam",
      number: 1,
      seam: "waist",
    };
    const { stitch, cut } = cutNotch(place, square);
    expect([stitch.x, stitch.y]).toEqual([50, 0]);
    expect(cut.x).toBeCloseTo(50, 9);
    expect(cut.y).toBeCloseTo(-20, 9);
  });
});
