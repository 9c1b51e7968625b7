/** True-scale pieces of whole plans: what stands on them, halves that differ, and what is refused. */
import { alike } from "../../support/halves";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { Point } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { truePiecesOf } from "../../../src/core/cutting/truePieces";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { signedArea } from "../../../src/core/geometry/outline";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Plan } from "../../../src/core/plan/plan";
import { polygonOf } from "../../support/independent";
import { planOf, testWork, withAlterations } from "../../support/works";

const { closure } = testWork.pattern;

function piecesOfPlan(plan: Plan, size: string | null = null): readonly TruePiece[] {
  const made = truePiecesOf(plan, { names: PIECE_ORDER, size, allowances: {}, closure });
  expect(made.ok).toBe(true);
  return made.ok ? made.value : [];
}

const named = (pieces: readonly TruePiece[], key: string): TruePiece => {
  const found = pieces.find((piece) => piece.key === key);
  if (found === undefined) throw new Error(`no ${key} among ${pieces.map((piece) => piece.key).join(", ")}`);
  return found;
};

const stitchPolygon = (piece: TruePiece) =>
  polygonOf(piece.stitch.flatMap((edge) => Array.from({ length: 40 }, (_, i) => edgePointAt(edge, i / 40))));

describe.each(STYLE_NAMES)("true-scale pieces, %s", (style) => {
  const plan = planOf({ ...testWork, pattern: { ...testWork.pattern, style, length: "hip" } });
  const pieces = piecesOfPlan(plan);

  it("are all the pieces of the plan, each with a key of its own", () => {
    expect(pieces.map(({ name }) => name).toSorted()).toEqual(plan.left.pieces.map(({ name }) => name).toSorted());
    expect(new Set(pieces.map(({ key }) => key)).size).toBe(pieces.length);
  });

  it("have grain, title and dart ends on them", () => {
    const off = pieces.flatMap((piece) => {
      const polygon = stitchPolygon(piece);
      const { centre, width, height } = piece.title;
      const box = [-0.5, 0.5].flatMap((x) =>
        [-0.5, 0.5].map((y) => ({ x: centre.x + x * width, y: centre.y + y * height })),
      );
      return [...piece.grain, ...box, ...piece.drills.map(({ at }) => at)]
        .filter(({ x, y }) => !polygon.contains(new Point(x, y)))
        .map(({ x, y }) => `${piece.key}: ${x}, ${y}`);
    });
    expect(off).toEqual([]);
  });

  it("keep the grain upright, and the title clear of the darts", () => {
    for (const { grain, title, darts } of pieces) {
      expect(grain[0].x).toBe(grain[1].x);
      expect(grain[1].y - grain[0].y).toBeGreaterThan(10);
      const inTitle = darts
        .flatMap(({ legs }) => legs.flatMap((leg) => Array.from({ length: 50 }, (_, i) => edgePointAt(leg, i / 49))))
        .filter(
          ({ x, y }) =>
            Math.abs(x - title.centre.x) < title.width / 2 && Math.abs(y - title.centre.y) < title.height / 2,
        );
      expect(inTitle).toEqual([]);
    }
  });

  it("are cut on the fold or twice, a strap in two layers", () => {
    // A strap is two layers.
    for (const piece of pieces)
      expect(piece.cut).toEqual(
        piece.fold.length > 0 ? { onFold: true, count: 1 } : { onFold: false, count: piece.name === "strap" ? 4 : 2 },
      );
  });
});

describe("true-scale pieces of halves that differ", () => {
  const lower: Alteration = { kind: "fit", id: "a", fit: "shoulderSlope", amount: -8, half: "left" };
  const pieces = piecesOfPlan(planOf({ ...withAlterations(lower), pattern: { ...testWork.pattern, length: "waist" } }));

  it("are drawn for each half, once each, to be cut with the printed side up", () => {
    expect(pieces.map(({ key }) => key)).toEqual(["front-left", "front-right", "back-left", "back-right"]);
    expect(pieces.every(({ cut }) => cut.count === 1)).toBe(true);
  });

  it("lie as on a body seen from outside: fronts with the left half's side at the right, backs the other way round", () => {
    const side = (key: string): number => Math.sign(named(pieces, key).cutting.reduce((sum, { at }) => sum + at.x, 0));
    expect(["front-left", "front-right", "back-left", "back-right"].map(side)).toEqual([1, -1, -1, 1]);
  });

  it("go round the same way turned over", () => {
    for (const { stitch, cutting } of pieces) {
      expect(signedArea(stitch)).toBeGreaterThan(0);
      expect(
        cutting.reduce(
          (sum, { at }, i) =>
            sum +
            at.x * (cutting[(i + 1) % cutting.length]?.at.y ?? 0) -
            at.y * (cutting[(i + 1) % cutting.length]?.at.x ?? 0),
          0,
        ),
      ).toBeGreaterThan(0);
    }
  });

  it("show the amount: the left shoulder tip lies lower than the right one", () => {
    const top = (key: string): number =>
      Math.min(
        ...named(pieces, key)
          .stitch.filter(({ a, b }) => Math.abs(a.x) > 90 && Math.abs(b.x) > 60)
          .map(({ a }) => a.y),
      );
    expect(top("front-left")).toBeGreaterThan(top("front-right") + 3);
  });
});

describe("a printed size as a true-scale piece", () => {
  const plan = planOf(testWork);

  it("is the nest's own piece, with a key that says so", () => {
    const index = plan.nest.labels.indexOf("16");
    const printed = plan.nest.sizes[index]?.find(({ name }) => name === "back");
    const back = named(piecesOfPlan(plan, "16"), "back-size-16");
    expect(back.stitch[0]?.a).toEqual(printed?.points[printed.edges[0]?.from ?? "centreNeck"]?.at);
    expect(back.size).toBe("16");
  });
});

describe("a piece whose outline is none", () => {
  it("is refused by name", () => {
    const plan = planOf(testWork);
    const crossed = plan.left.pieces.map((piece) =>
      piece.name === "back"
        ? { ...piece, points: { ...piece.points, sideWaist: { at: piecePoint(-300, 100), level: "waist" as const } } }
        : piece,
    );
    const made = truePiecesOf(alike(plan, { pieces: crossed }), {
      names: PIECE_ORDER,
      size: null,
      allowances: {},
      closure,
    });
    expect(made).toEqual({ ok: false, failure: { code: "paper/outline-refused", piece: "back", half: null } });
  });

  it("is no matter where that piece is not wanted", () => {
    const plan = planOf(testWork);
    const crossed = plan.left.pieces.map((piece) =>
      piece.name === "back"
        ? { ...piece, points: { ...piece.points, sideWaist: { at: piecePoint(-300, 100), level: "waist" as const } } }
        : piece,
    );
    expect(
      truePiecesOf(alike(plan, { pieces: crossed }), { names: ["front"], size: null, allowances: {}, closure }).ok,
    ).toBe(true);
  });
});
