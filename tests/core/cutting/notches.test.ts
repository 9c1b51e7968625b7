/**
 * Notches meet: those with one number lie on two pieces, equally far along the sewn seam from where it begins, measured by
 * bezier-js on the pieces as they come out of any chain of alterations.
 */
import { STYLE_NAMES, type Closure } from "../../../src/core/decisions/pattern";
import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { piecesOf, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { cutNotch, notchesOfHalves, notchPlaces, ownNotches, type NotchPlace } from "../../../src/core/cutting/notches";
import { piecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Edge, type Piece, type PieceName, type SeamName } from "../../../src/core/pattern/piece";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import { radians } from "../../../src/core/units";
import { SHOULDER_EASE } from "../../../src/core/pattern/shoulderEase";
import { anyChainWork } from "../../support/anyChainWork";
import { boxPiece } from "../../support/boxPiece";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
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

const close = (value: number): unknown => expect.closeTo(value, 6);
const ZIP: Closure = { place: "side", belowWaist: 0 };

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
    const back = boxPiece("back", 100, 50);
    const basque = boxPiece("backBasque", 100, 50, ["waist", "hem"]);
    // 100 mm are notched at 0.42 of them.
    expect(notched([back, basque], "waist")).toEqual([
      ["back", "seam", close(42), close(50), [39, 45].map((x) => ["back", close(x), close(50)])],
      ["backBasque", "seam", close(42), close(0), [39, 45].map((x) => ["backBasque", close(x), close(0)])],
    ]);
    const front = [boxPiece("front", 100, 50), boxPiece("frontBasque", 100, 50, ["waist", "hem"])];
    expect(notched(front, "waist")).toEqual([
      ["front", "seam", close(42), close(50), undefined],
      ["frontBasque", "seam", close(42), close(0), undefined],
    ]);
  });

  it("are as far from the upper end on both pieces, in the same share where one is eased to the other", () => {
    expect(notched([boxPiece("back", 100, 200), boxPiece("front", 100, 190)], "side")).toEqual([
      ["back", "seam", close(100), close(84), undefined],
      ["front", "seam", close(100), close(84), undefined],
    ]);
    const back = boxPiece("back", 120 + SHOULDER_EASE, 50, ["shoulder", "waist"]);
    const front = boxPiece("front", 120, 50, ["shoulder", "waist"]);
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
      notched([darted(each), boxPiece("frontBasque", 2 * each, 50, ["waist", "hem"])], "waist").map(([, , x]) => x);
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
    // Of a bust point 20 below the upper end the first would lie beyond it: it is moved to 18 mm from there, by 48.
    const high = [panel("sideFront", 20), panel("centreFront", 20)];
    expect(notched(high, "princess").map(([, , , y]) => y)).toEqual([18, 18, 20, 20, 70, 70].map(close));
  });
});

describe("balance marks", () => {
  const marks = (...pieces: readonly Piece[]) =>
    notchPlaces(setOf(pieces), ZIP)
      .filter(({ kind }) => kind === "balance")
      .map(({ piece, at, number, seam, twins }) => [piece, at.x, number, seam, twins?.map((twin) => twin.at.x)]);
  const holed = (name: PieceName, width: number) => boxPiece(name, width, 30, ["armhole", "waist"]);

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

describe("notches of a piece that is alike on both halves", () => {
  /** A box whose side seam has a dart so far down, 20 mm wide: sewn, it is as long as without one. */
  const darted = (height: number, at: number): Piece =>
    cornerPiece({
      corners: [
        ["centreNeck", 0, 0, "neck"],
        ["underarm", 250, 0, "side"],
        ["sideDartInner", 250, at, "side", "sideDart"],
        ["sideDartOuter", 250, at + 20, "side"],
        ["sideWaist", 250, height + 20, "waist"],
        ["centreWaist", 0, height + 20, "centre"],
      ],
    });
  const zip: Closure = { place: "side", belowWaist: 0 };
  const sideOn = (places: readonly NotchPlace[]) =>
    ["back", "front"].map((name) =>
      places
        .filter(({ piece, seam, kind }) => kind === "seam" && seam === "side" && piece === name)
        .map(({ at }) => at.y),
    );

  it("stand where they are clear of what either half has there", () => {
    const back = boxPiece("back", 250, 400);
    const [left, right] = notchesOfHalves(
      [setOf([back, boxPiece("front", 250, 400)]), setOf([{ ...back }, darted(400, 115)])],
      zip,
    );
    // 0.3 of 400 is 120, and 18 mm clear of a dart at 115 in steps of 3 mm is 135; 0.64 is 256. Below the dart 20 mm more.
    expect(sideOn(left)).toEqual([
      [close(135), close(256)],
      [close(135), close(256)],
    ]);
    expect(sideOn(right)).toEqual([
      [close(135), close(256)],
      [close(155), close(276)],
    ]);
    // By itself the half without a dart has its own.
    expect(sideOn(notchPlaces(setOf([back, boxPiece("front", 250, 400)]), zip))[0]).toEqual([close(120), close(256)]);
  });

  it("keep one number on both halves, where they stand apart too", () => {
    const back = boxPiece("back", 250, 100);
    const halves = [30, 64].map((at) => setOf([back, darted(100, at)]));
    const [left, right] = notchesOfHalves([halves[0] ?? {}, halves[1] ?? {}], zip);
    // 0.42 of 100. A dart at 30 leaves free what is below 48, one at 64 what is above 46: no place is clear of both.
    expect([sideOn(left), sideOn(right)]).toEqual([
      [[close(48)], [close(68)]],
      [[close(42)], [close(42)]],
    ]);
    const numbers = [left, right].map((places) => places.map(({ number, piece }) => `${piece} ${number}`));
    expect(numbers[0]).toEqual(numbers[1]);
  });
});
