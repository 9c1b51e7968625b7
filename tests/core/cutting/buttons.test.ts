/**
 * Buttons down the centre back: closed forms on straight centres of known length, and their distances measured by bezier-js
 * along the centre line, over the borders of pieces, as any chain of alterations leaves them.
 */
import { type Closure, STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { Point } from "@flatten-js/core";
import { Bezier } from "bezier-js";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PIECE_ORDER, type PieceSet } from "../../../src/core/pattern/pieceSet";
import { buttonPlaces, buttonRow, buttonsOnMeasured } from "../../../src/core/cutting/buttons";
import { truePiecesOf } from "../../../src/core/cutting/truePieces";
import type { Drill, TruePiece } from "../../../src/core/cutting/truePiece";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import { pointOf, type Piece, type PieceName, type SeamName } from "../../../src/core/pattern/piece";
import { LIMITS } from "../../../src/core/decisions/limits";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import type { Work } from "../../../src/core/decisions/work";
import { anyAmount } from "../../support/amounts";
import { anyChainWork } from "../../support/anyChainWork";
import { boxPiece } from "../../support/boxPiece";
import { polygonOf } from "../../support/independent";
import { planOf, testWork } from "../../support/works";

const RUNS = Number(process.env.CHAINS ?? 25);

const setOf = (pieces: readonly Piece[]): PieceSet => Object.fromEntries(pieces.map((piece) => [piece.name, piece]));

/** A box with its centre line from one height to another. */
function box(name: PieceName, top: number, bottom: number, upper: SeamName, lower: SeamName): Piece {
  const at = (x: number, y: number) => ({ at: piecePoint(x, y), level: "waist" as const });
  const edge = { curve: null, mouthOf: null };
  return {
    name,
    points: { centreNeck: at(0, top), sideNeck: at(100, top), sideWaist: at(100, bottom), centreWaist: at(0, bottom) },
    edges: [
      { from: "centreNeck", to: "sideNeck", seam: upper, ...edge },
      { from: "sideNeck", to: "sideWaist", seam: "side", ...edge },
      { from: "sideWaist", to: "centreWaist", seam: lower, ...edge },
      { from: "centreWaist", to: "centreNeck", seam: "centre", ...edge },
    ],
    darts: [],
    levelLines: [],
    centreOnFold: false,
  };
}

const back = (length: number): Piece => box("back", 20, 20 + length, "neck", "waist");
const basque = (length: number): Piece => box("backBasque", 0, length, "waist", "hem");
const buttons = (count: number, belowWaist = 0): Closure => ({ place: "centreBack", belowWaist, buttons: count });
const heights = (pieces: PieceSet, closure: Closure) =>
  buttonPlaces(pieces, closure).map(({ piece, at }) => [piece, at.x, Math.round(at.y * 1e6) / 1e6]);

describe("buttons on a straight centre back", () => {
  it("stand evenly from 12 mm below the neck to 12 mm above the end", () => {
    // 400 mm less 2 × 12 is 376, in four parts of 94; the neck lies at 20.
    expect(heights(setOf([back(400)]), buttons(5))).toEqual([32, 126, 220, 314, 408].map((y) => ["back", 0, y]));
    expect(heights(setOf([back(400)]), buttons(2))).toEqual([32, 408].map((y) => ["back", 0, y]));
  });

  it("go on into the basque as far as it opens", () => {
    // 400 + 150 less 2 × 12 is 526, in five parts of 105.2.
    expect(heights(setOf([back(400), basque(200)]), buttons(6, 150))).toEqual([
      ...[32, 137.2, 242.4, 347.6].map((y) => ["back", 0, y]),
      ...[32.8, 138].map((y) => ["backBasque", 0, y]),
    ]);
  });

  it("go on down the back of a skirt as far as it opens, and as far into one that is given by its measures", () => {
    const above = [32, 137.2, 242.4, 347.6].map((y) => ["back", 0, y]);
    // As into a basque: 400 + 150 less 2 × 12 is 526, in five parts of 105.2; two of the six come below the waist.
    expect(heights(setOf([back(400), box("skirtBack", 0, 600, "waist", "hem")]), buttons(6, 150))).toEqual([
      ...above,
      ...[32.8, 138].map((y) => ["skirtBack", 0, y]),
    ]);
    const bodice = setOf([back(400)]);
    expect(buttonPlaces(bodice, buttons(6, 150), bodice, 640).map(({ piece, at }) => [piece, at.x, at.y])).toEqual(
      above.map(([piece, x, y]) => [piece, x, expect.closeTo(Number(y), 6)]),
    );
    expect(buttonsOnMeasured(bodice, buttons(6, 150), 640)).toEqual([expect.closeTo(32.8, 6), expect.closeTo(138, 6)]);
    // Of three along 300 + 300 the middle one keeps 8 mm clear of the waist seam, though nothing is walked below it.
    expect(buttonsOnMeasured(setOf([back(300)]), buttons(3, 300), 640)).toEqual([272]);
    expect(buttonsOnMeasured(bodice, buttons(6, 0), 640)).toEqual([]);
    expect(buttonsOnMeasured(bodice, { ...buttons(6, 150), place: "side" }, 640)).toEqual([]);
  });

  it("end with a skirt that is shorter than its opening: 400 + 100 less 2 × 12 is 476, in four parts of 119", () => {
    const bodice = setOf([back(400)]);
    expect(buttonPlaces(bodice, buttons(5, 200), bodice, 100).map(({ at }) => at.y)).toEqual(
      [32, 151, 270, 389].map((y) => expect.closeTo(y, 6)),
    );
    expect(buttonsOnMeasured(bodice, buttons(5, 200), 100)).toEqual([expect.closeTo(88, 6)]);
  });

  it("end with the basque where the opening would go further, and at the waist where it goes nowhere below", () => {
    expect(heights(setOf([back(400), basque(200)]), buttons(2, 900)).at(-1)).toEqual(["backBasque", 0, 188]);
    expect(heights(setOf([back(400), basque(200)]), buttons(2, -50)).at(-1)).toEqual(["back", 0, 408]);
  });

  it("go over a band between back and basque", () => {
    const pieces = setOf([
      box("back", 20, 320, "neck", "underBust"),
      box("backBand", 320, 420, "underBust", "waist"),
      basque(200),
    ]);
    expect(heights(pieces, buttons(3, 100))).toEqual([
      ["back", 0, 32],
      ["back", 0, 270],
      ["backBasque", 0, 88],
    ]);
  });

  it("keep 8 mm clear of the waist seam, evenly still", () => {
    // 300 + 300: the middle one of three would lie on the seam. 8 mm off it takes 16 mm at one end.
    const row = buttonRow(setOf([back(300), basque(400)]), buttons(3, 300));
    expect(row).toEqual({ along: [12, 292, 572], spacing: 280, ends: [12, 28] });
  });

  it("stay where they are where no row is clear of it", () => {
    // 20 buttons along 60 mm lie hardly 2 mm apart.
    const row = buttonRow(setOf([back(30), basque(400)]), buttons(20, 30));
    expect(row?.ends).toEqual([12, 12]);
    expect(row?.spacing).toBeCloseTo(36 / 19, 9);
  });

  it.each<[string, PieceSet, Closure]>([
    ["it opens at the side", setOf([back(400)]), { place: "side", belowWaist: 0, buttons: 5 }],
    ["it has a zip", setOf([back(400)]), { place: "centreBack", belowWaist: 0 }],
    ["the back lies on the fold", setOf([{ ...back(400), centreOnFold: true }]), buttons(5)],
    ["there is no room for two", setOf([back(24)]), buttons(5)],
    ["there is no back", setOf([basque(200)]), buttons(5, 100)],
  ])("are none where %s", (_, pieces, closure) => {
    expect(buttonPlaces(pieces, closure)).toEqual([]);
    expect(buttonRow(pieces, closure)).toBeNull();
  });
});

interface Place {
  readonly x: number;
  readonly y: number;
}

/** The centre line of a piece from above, by bezier-js. */
function centreOf(piece: Piece): readonly Bezier[] {
  const edges = piece.edges
    .filter(({ seam, mouthOf }) => seam === "centre" && mouthOf === null)
    .map(({ from, to, curve }) => {
      const ends = [pointOf(piece, from), pointOf(piece, to)] as const;
      const [a, b] = ends[0].y < ends[1].y ? ends : ([ends[1], ends[0]] as const);
      const third = (share: number): Place => ({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
      if (curve === null) return new Bezier(a, third(1 / 3), third(2 / 3), b);
      return ends[0].y < ends[1].y ? new Bezier(a, curve.c1, curve.c2, b) : new Bezier(a, curve.c2, curve.c1, b);
    });
  return edges.toSorted((p, q) => p.get(0).y - q.get(0).y);
}

/** Parameter of the nearest place, tried coarsely and then finely about the best. */
function nearest(edge: Bezier, { x, y }: Place): { readonly t: number; readonly off: number } {
  let best = { t: 0, off: Infinity };
  const look = (from: number, to: number): void => {
    for (let i = 0; i <= 500; i += 1) {
      const t = Math.min(Math.max(from + ((to - from) * i) / 500, 0), 1);
      const p = edge.get(t);
      const off = Math.hypot(p.x - x, p.y - y);
      if (off < best.off) best = { t, off };
    }
  };
  look(0, 1);
  look(best.t - 1 / 500, best.t + 1 / 500);
  return best;
}

const BACKS: readonly PieceName[] = ["back", "backBand", "backBasque"];

/** How far from the neck a place lies along the joined centre line; no number where it lies on none of it. */
function alongCentre(pieces: PieceSet, name: PieceName, at: PiecePoint): number {
  let along = 0;
  for (const one of BACKS) {
    const piece = pieces[one];
    for (const edge of piece === undefined ? [] : centreOf(piece)) {
      const { t, off } = nearest(edge, at);
      if (one === name && off < 0.01) return along + (t === 0 ? 0 : edge.split(0, t).length());
      along += edge.length();
    }
  }
  return Number.NaN;
}

const lengthOf = (pieces: PieceSet, names: readonly PieceName[]): number =>
  names
    .flatMap((name) => (pieces[name] === undefined ? [] : centreOf(pieces[name])))
    .reduce((sum, edge) => sum + edge.length(), 0);

const anyButtons = fc.record({
  place: fc.constant("centreBack" as const),
  belowWaist: anyAmount(0, 300),
  buttons: fc.integer({ min: LIMITS.buttons.least, max: LIMITS.buttons.most }),
});

describe.each(STYLE_NAMES)("buttons of any plan, %s", (style) => {
  it("lie evenly along the centre line from end to end, and clear of the waist seam", () => {
    let rows = 0;
    fc.assert(
      fc.property(anyChainWork(style), anyButtons, (work, closure) => {
        const plan = derivePlan(work);
        const sound =
          plan.ok &&
          plan.value.checks.every(({ name, ok }) => ok || (name !== "outlineClosed" && name !== "seamsWalk"));
        fc.pre(sound);
        const pieces = setOf(sound ? plan.value.left.pieces : []);
        const above = lengthOf(pieces, ["back", "backBand"]);
        const opening = Math.min(above + closure.belowWaist, lengthOf(pieces, BACKS));
        const found = buttonPlaces(pieces, closure).map(({ piece, at }) => alongCentre(pieces, piece, at));
        expect(found).toHaveLength(closure.buttons);
        rows += 1;
        const [first, last] = [found[0] ?? Number.NaN, found.at(-1) ?? Number.NaN];
        const step = (last - first) / (closure.buttons - 1);
        expect(Math.max(...found.map((along, index) => Math.abs(along - first - index * step)))).toBeLessThan(0.1);
        expect(first).toBeGreaterThan(11.9);
        expect(first).toBeLessThan(28.1);
        expect(opening - last).toBeGreaterThan(11.9);
        expect(opening - last).toBeLessThan(28.1);
        // With one seam to mind and 40 mm between buttons there is always a row that is clear of it.
        const crossed = pieces.backBand === undefined && pieces.backBasque !== undefined && step > 40 ? [above] : [];
        expect(found.filter((along) => crossed.some((seam) => Math.abs(along - seam) < 7.95))).toEqual([]);
      }),
      { numRuns: RUNS },
    );
    expect(rows).toBe(RUNS);
  }, 300_000);
});

type Button = Extract<Drill, { readonly what: "button" }>;
const buttonsOn = (piece: TruePiece): readonly Button[] => piece.drills.filter((drill) => drill.what === "button");
const work = (style: Work["pattern"]["style"], more: Partial<Work> = {}): Work => ({
  ...testWork,
  pattern: { ...testWork.pattern, style, length: "hip", closure: buttons(9, 180) },
  ...more,
});

function trueOf(plan: Plan, { pattern }: Work, size: string | null = null): readonly TruePiece[] {
  const made = truePiecesOf(plan, { names: PIECE_ORDER, size, allowances: { centre: 30 }, closure: pattern.closure });
  return made.ok ? made.value : [];
}

describe.each(STYLE_NAMES)("true-scale pieces that button, %s", (style) => {
  const wanted = work(style);
  const plan = planOf(wanted);

  it.each([null, "12"])("have them on the back pieces alone (size %s)", (size) => {
    const pieces = trueOf(plan, wanted, size);
    expect(pieces.reduce((sum, piece) => sum + buttonsOn(piece).length, 0)).toBe(9);
    expect(pieces.filter(({ name }) => !BACKS.includes(name)).flatMap(buttonsOn)).toEqual([]);
  });

  it("have buttonholes from 3 mm beyond the stitch line, 15 mm long, inwards", () => {
    for (const piece of trueOf(plan, wanted)) {
      const sewn = polygonOf(
        piece.stitch.flatMap((edge) => Array.from({ length: 40 }, (_, i) => edgePointAt(edge, i / 40))),
      );
      const cut = polygonOf(piece.cutting.map(({ at }) => at));
      const isIn = (polygon: typeof cut, { x, y }: Place): boolean => polygon.contains(new Point(x, y));
      for (const {
        at,
        hole: [outer, inner],
      } of buttonsOn(piece)) {
        expect(Math.hypot(outer.x - at.x, outer.y - at.y)).toBeCloseTo(3, 6);
        expect(Math.hypot(outer.x - inner.x, outer.y - inner.y)).toBeCloseTo(15, 6);
        expect([isIn(sewn, outer), isIn(sewn, inner), isIn(cut, outer)]).toEqual([false, true, true]);
      }
    }
  });

  it("keep their title clear of the buttonholes", () => {
    const crossed = trueOf(plan, wanted).flatMap((piece) =>
      buttonsOn(piece).filter(
        ({ hole: [, inner] }) =>
          Math.abs(inner.x - piece.title.centre.x) < piece.title.width / 2 &&
          Math.abs(inner.y - piece.title.centre.y) < piece.title.height / 2,
      ),
    );
    expect(crossed).toEqual([]);
  });
});

describe("halves that differ", () => {
  const uneven = work("sideDart", {
    alterations: [{ kind: "fit", id: "s", fit: "backWidth", amount: 8, half: "left" }],
  });
  const plan = planOf(uneven);
  const pieces = trueOf(plan, uneven);
  const sets = { left: setOf(plan.left.pieces), right: setOf(plan.right.pieces) };

  it("have a buttonhole for every button, in the same share of the way", () => {
    const rowOf = (half: "left" | "right") =>
      pieces
        .filter(({ name, half: own }) => BACKS.includes(name) && (own === half || own === null))
        // A back is drawn as the right half; the left one is turned over.
        .flatMap((piece) =>
          buttonsOn(piece).map(({ at }) =>
            alongCentre(sets[half], piece.name, piecePoint(piece.half === "left" ? -at.x : at.x, at.y)),
          ),
        );
    const [left, right] = [rowOf("left"), rowOf("right")];
    // The backs differ across, and are sewn to each other all the same.
    expect(lengthOf(sets.left, ["back"])).toBeCloseTo(lengthOf(sets.right, ["back"]), 1);
    expect([left.length, right.length]).toEqual([9, 9]);
    const [first, last] = [left[0] ?? 0, left.at(-1) ?? 0];
    expect(right[0]).toBeCloseTo(first, 1);
    const span = (right.at(-1) ?? 0) - first;
    left.forEach((along, index) =>
      expect((along - first) / (last - first)).toBeCloseTo(((right[index] ?? 0) - first) / span, 3),
    );
  });

  it("have the buttonholes of both run out to the edge of the stand", () => {
    const away = pieces
      .filter(({ half, name }) => half !== null && BACKS.includes(name))
      .flatMap((piece) =>
        buttonsOn(piece).map(
          ({ hole: [outer, inner] }) => Math.sign(outer.x - inner.x) * (piece.half === "left" ? 1 : -1),
        ),
      );
    expect(new Set(away)).toEqual(new Set([1]));
  });
});

describe("buttons clear of a seam", () => {
  const rowOf = (upper: number, lower: number, count: number) =>
    buttonRow(setOf([boxPiece("back", 100, upper), boxPiece("backBasque", 100, lower, ["waist", "hem"])]), {
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

  it("are none where but one piece of the centre back lies on the fold", () => {
    const folded = { ...boxPiece("backBasque", 100, 310, ["waist", "hem"]), centreOnFold: true };
    const closure = { place: "centreBack", belowWaist: 310, buttons: 3 } as const;
    expect(buttonRow(setOf([boxPiece("back", 100, 300), folded]), closure)).toBeNull();
  });

  it("stand in the row of the half that they meet, spread over their own", () => {
    const own = setOf([boxPiece("back", 100, 620)]);
    const row = { place: "centreBack", belowWaist: 0, buttons: 3 } as const;
    const met = setOf([boxPiece("back", 100, 300), boxPiece("backBasque", 100, 310, ["waist", "hem"])]);
    // Its ends are 18 and 12 with what is below the waist open, 12 and 12 without.
    expect(buttonPlaces(own, row, met).map(({ at }) => at.y)).toEqual([12, 310, 608].map((y) => expect.closeTo(y, 6)));
    expect(buttonPlaces(own, { ...row, belowWaist: 310 }, met).map(({ at }) => at.y)).toEqual(
      [18, 313, 608].map((y) => expect.closeTo(y, 6)),
    );
    expect(buttonPlaces(setOf([boxPiece("back", 100, 29)]), { ...row, belowWaist: 310 }, met)).toEqual([]);
  });
});
