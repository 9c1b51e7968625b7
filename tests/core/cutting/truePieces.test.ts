/** True-scale pieces of whole plans: what stands on them, halves that differ, and what is refused. */
import { alike } from "../../support/halves";
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { Point } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { truePiecesOf } from "../../../src/core/cutting/truePieces";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import { edgePointAt } from "../../../src/core/geometry/edgeCurve";
import { signedArea } from "../../../src/core/geometry/outline";
import { piecePoint } from "../../../src/core/geometry/point";
import type { PieceName } from "../../../src/core/pattern/piece";
import type { Plan } from "../../../src/core/plan/plan";
import type { Work } from "../../../src/core/decisions/work";
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

  it("have their own notches on their own stitch line", () => {
    const off = pieces.flatMap((piece) => {
      const polygon = stitchPolygon(piece);
      return piece.notches
        .filter(({ stitch: { x, y } }) => polygon.distanceTo(new Point(x, y))[0] > 0.2)
        .map(({ kind, number }) => `${piece.key}: ${kind} ${number}`);
    });
    expect(off).toEqual([]);
    const bare = pieces.filter(({ notches, name }) => notches.length === 0 && name !== "strap");
    expect(bare.map(({ name }) => name)).toEqual([]);
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

describe("what stands on true-scale pieces", () => {
  const plan = planOf(testWork);
  /** Sizes with another name, and a piece that the planner has no name for: a back once more. */
  const labelled: Plan = {
    ...plan,
    nest: {
      ...plan.nest,
      labels: plan.nest.labels.map((label) => `US ${label} / +`),
      otherNames: { other1: "Yoke" },
      sizes: plan.nest.sizes.map((pieces) => [
        ...pieces,
        ...pieces.filter(({ name }) => name === "back").map((piece) => ({ ...piece, name: "other1" as const })),
      ]),
    },
  };

  it("is a key of letters, digits and hyphens, a number among all pieces, and her own word for a piece", () => {
    const told = (names: readonly PieceName[], size: string | null) => {
      const made = truePiecesOf(labelled, { names, size, allowances: {}, closure });
      return made.ok ? made.value.map(({ key, number, label, size: of }) => [key, number, label, of]) : made.failure;
    };
    expect(told(["other1", "front"], "US 16 / +")).toEqual([
      ["front-size-US-16-", [1, 5], undefined, "US 16 / +"],
      ["other1-size-US-16-", [5, 5], "Yoke", "US 16 / +"],
    ]);
    expect(told(["backBasque"], null)).toEqual([["backBasque", [4, 4], undefined, null]]);
    expect(told([], null)).toEqual([]);
    expect(told(["front"], "none such")).toEqual([]);
  });

  it("is her own bust point on her pieces, and each printed size's own on that", () => {
    const of = (size: string | null) => piecesOfPlan(plan, size).map(({ name, bustPoint }) => [name, bustPoint]);
    const own = plan.left.bustPoint.own ?? plan.left.bustPoint.printed;
    expect(own).not.toBeNull();
    expect(of(null)).toEqual([
      ["front", own],
      ["back", null],
      ["frontBasque", null],
      ["backBasque", null],
    ]);
    const printed = plan.nest.sizes[plan.nest.labels.indexOf("20")]?.find(({ name }) => name === "front");
    expect(of("20")[0]).toEqual(["front", printed?.points.bustPoint?.at]);
    expect(of("20")[0]).not.toEqual(of("8")[0]);
    // A front without one has none, and no line to lengthen it at.
    const bare: Plan = {
      ...plan,
      nest: {
        ...plan.nest,
        sizes: plan.nest.sizes.map((pieces) =>
          pieces.map((piece) => {
            const { bustPoint: _, ...points } = piece.points;
            return { ...piece, points };
          }),
        ),
      },
    };
    const without = piecesOfPlan(bare, "20");
    expect(without.map(({ bustPoint, lengthen }) => [bustPoint, lengthen])).toEqual(without.map(() => [null, []]));
  });

  it.each(STYLE_NAMES)("is where each is lengthened, from edge to edge: %s", (style) => {
    const pieces = piecesOfPlan(planOf({ ...testWork, pattern: { ...testWork.pattern, style } }));
    expect(pieces.filter(({ lengthen }) => lengthen.length > 0).length).toBeGreaterThan(1);
    for (const piece of pieces) {
      const polygon = stitchPolygon(piece);
      for (const [from, to] of piece.lengthen) {
        for (const { x, y } of [from, to]) expect(polygon.distanceTo(new Point(x, y))[0]).toBeLessThan(0.1);
        expect(Math.abs(to.x - from.x)).toBeGreaterThan(30);
      }
    }
  });

  it("is a dot at either end of a princess seam, and nowhere else", () => {
    const dotted = (style: StyleName) =>
      piecesOfPlan(planOf({ ...testWork, pattern: { ...testWork.pattern, style } })).flatMap(({ name, dots }) =>
        dots.length === 0 ? [] : [[name, dots.length]],
      );
    expect(dotted("sideDart")).toEqual([]);
    expect(dotted("princessArmhole")).toEqual([
      ["centreFront", 2],
      ["sideFront", 2],
    ]);
  });
});

describe("buttons on halves that differ elsewhere", () => {
  const work: Work = {
    ...withAlterations({ kind: "fit", id: "a", fit: "shoulderSlope", amount: -8, half: "left" }),
    pattern: { ...testWork.pattern, length: "hip", closure: { place: "centreBack", belowWaist: 120, buttons: 7 } },
  };
  const plan = planOf(work);
  const keys = (of: Plan, buttons?: number) => {
    const made = truePiecesOf(of, {
      names: PIECE_ORDER,
      size: null,
      allowances: {},
      closure: { place: "centreBack", belowWaist: 120, ...(buttons === undefined ? {} : { buttons }) },
    });
    return made.ok ? made.value.map(({ key }) => key) : [];
  };

  it("part a piece that is alike on both only where they come elsewhere on it", () => {
    const alikeBelow = ["front-left", "front-right", "back-left", "back-right", "frontBasque", "backBasque"];
    expect(keys(plan)).toEqual(alikeBelow);
    expect(keys(plan, 7)).toEqual(alikeBelow);
    // A back 20 mm shorter on the right half alone, its basque the same: the row is spread over less, and comes elsewhere there.
    const shorter = plan.right.pieces.map((piece) =>
      piece.name === "back"
        ? {
            ...piece,
            points: Object.fromEntries(
              Object.entries(piece.points).map(([name, point]) => [
                name,
                name === "centreNeck" ? { ...point, at: piecePoint(point.at.x, point.at.y + 20) } : point,
              ]),
            ),
          }
        : piece,
    );
    const uneven: Plan = { ...plan, right: { ...plan.right, pieces: shorter } };
    expect(keys(uneven)).toEqual(alikeBelow);
    expect(keys(uneven, 7)).toEqual([...alikeBelow.slice(0, 5), "backBasque-left", "backBasque-right"]);
  });
});

it("has the end of a side opening marked on the left side alone, where the halves are drawn apart", () => {
  const side = { place: "side", belowWaist: 120 } as const;
  const work: Work = {
    ...withAlterations({ kind: "fit", id: "hip", fit: "sideSeamHip", amount: 8, half: "right" }),
    pattern: { ...testWork.pattern, length: "hip", closure: side },
  };
  const made = truePiecesOf(planOf(work), { names: PIECE_ORDER, size: null, allowances: {}, closure: side });
  const marked = made.ok
    ? made.value.filter(({ notches }) => notches.some(({ kind }) => kind === "opening")).map(({ key }) => key)
    : [];
  expect(marked).toEqual(["frontBasque-left", "backBasque-left"]);
});

it("leaves a piece that is alike on both halves whole where a seam over it goes on over one that is not", () => {
  const narrower = withAlterations({ kind: "fit", id: "n", fit: "shoulderWidth", amount: -9, half: "right" });
  const plan = planOf({ ...narrower, pattern: { ...testWork.pattern, style: "princessShoulder" } });
  const pieces = piecesOfPlan(plan);
  const keys = pieces.map(({ key }) => key);
  expect(keys).toContain("centreFront");
  expect(keys).toContain("sideFront-left");
  // What has one number meets: on the shoulder of each half, one on a front piece and one on the back.
  for (const half of ["left", "right"] as const) {
    const own = pieces.filter((piece) => piece.half === null || piece.half === half);
    const numbers = own.flatMap(({ notches }) =>
      notches.flatMap(({ kind, number }) => (kind === "seam" ? [number] : [])),
    );
    const counts = numbers.map((number) => numbers.filter((one) => one === number).length);
    expect([...new Set(counts)]).toEqual([2]);
  }
});
