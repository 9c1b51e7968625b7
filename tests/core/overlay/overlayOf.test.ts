/** Strips against closed forms, on a made-up piece of straight edges with one corner moved. */
import { describe, expect, it } from "vitest";
import { overlayOf, type OverlaidPlan } from "../../../src/core/overlay/overlayOf";
import type { Overlay, Patch } from "../../../src/core/overlay/overlay";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Edge, LevelName, Piece, PointName, SeamName } from "../../../src/core/pattern/piece";
import { invariant } from "../../../src/core/result";
import { planOfPieces } from "../../support/overlayPlans";

const A4_LONG = 277;
const TALL = 300;
const WIDE = 200;

const straight = (from: PointName, to: PointName, seam: SeamName): Edge => ({
  from,
  to,
  seam,
  curve: null,
  mouthOf: null,
});

/** Level lines that are printed from the centre to the side, and how far down. */
const LEVELS = [
  ["bust", "centreBust", "sideBust", 80],
  ["underBust", "underBustCentre", "sideUnderBust", 160],
  ["hip", "centreHip", "sideHip", 230],
] as const;

/** A back 200 wide and 300 high, its side waist `out` further out; all edges straight. */
function box({ out = 0, shift = 0 }: { readonly out?: number; readonly shift?: number }): Piece {
  const at = (x: number, y: number, level: LevelName) => ({ at: piecePoint(x + shift, y + shift), level });
  return {
    name: "back",
    points: {
      centreNeck: at(0, 0, "neck"),
      underarm: at(WIDE, 0, "neck"),
      sideWaist: at(WIDE + out, TALL, "waist"),
      centreWaist: at(0, TALL, "waist"),
      ...Object.fromEntries(
        LEVELS.flatMap(([level, centre, side, y]) => [
          [centre, at(0, y, level)],
          [side, at(WIDE + (out * y) / TALL, y, level)],
        ]),
      ),
    },
    edges: [
      straight("centreNeck", "underarm", "armhole"),
      straight("underarm", "sideBust", "side"),
      straight("sideBust", "sideUnderBust", "side"),
      straight("sideUnderBust", "sideHip", "side"),
      straight("sideHip", "sideWaist", "side"),
      straight("sideWaist", "centreWaist", "waist"),
      straight("centreWaist", "centreHip", "centre"),
      straight("centreHip", "underBustCentre", "centre"),
      straight("underBustCentre", "centreBust", "centre"),
      straight("centreBust", "centreNeck", "centre"),
    ],
    darts: [],
    levelLines: LEVELS.map(([level, centre, side]) => ({ level, along: { points: [centre, side] } })),
    centreOnFold: false,
  };
}

const planWith = (printed: Piece, final: Piece): OverlaidPlan => planOfPieces({ printed: [printed], final: [final] });
const overlay = (final: Piece, longest = A4_LONG): Overlay => overlayOf(planWith(box({}), final), ["back"], longest);

const ends = (patch: Patch) => {
  const edges = patch.changed.flatMap((line) => line.edges);
  return { start: invariant(edges[0], "edge").a, end: invariant(edges.at(-1), "edge").b };
};
const lengthOf = (patch: Patch): number =>
  patch.changed.flatMap((line) => line.edges).reduce((sum, { a, b }) => sum + Math.hypot(b.x - a.x, b.y - a.y), 0);

/** How much too early a change may be found on a side that leaves the print by 4 mm in 300: where it is 0.495 mm off. Never late. */
const EARLY = (0.005 * TALL) / 4 + 0.01;
const FOUND = 0.02;
const expectFoundAt = (y: number, exact: number): void => {
  expect(y).toBeGreaterThan(exact - EARLY);
  expect(y).toBeLessThan(exact + 1e-6);
};

describe("strips of a piece with one corner moved", () => {
  // The new side runs from (200, 0) to (204, 300): 0.5 mm off the printed x = 200 an eighth of the way down.
  const side = Math.hypot(TALL, 4);
  const { patches, same, tooMuch } = overlay(box({ out: 4 }), 400);
  const [patch, ...others] = patches;

  it("is one strip from 20 mm before the side leaves the print to 20 mm after the waist meets it again", () => {
    expect(others).toEqual([]);
    expect(same).toEqual([]);
    expect(tooMuch).toEqual([]);
    const { start, end } = ends(invariant(patch, "patch"));
    const share = (side / 8 - 20) / side;
    expectFoundAt(start.y, TALL * share);
    expect(start.x).toBeCloseTo(WIDE + (4 * start.y) / TALL, 9);
    expect(Math.abs(end.x - (WIDE + 0.5 - 20))).toBeLessThan(FOUND);
    expect(end.y).toBe(TALL);
  });

  it("is laid on by the printed points, not the wearer's own", () => {
    // It starts 17.5 mm below the underarm, which is past the 12 mm of paper round its lines.
    expect(invariant(patch, "patch").layOn).toEqual([
      { name: "sideWaist", at: piecePoint(WIDE, TALL) },
      { name: "sideBust", at: piecePoint(WIDE, 80) },
      { name: "sideUnderBust", at: piecePoint(WIDE, 160) },
      { name: "sideHip", at: piecePoint(WIDE, 230) },
    ]);
  });

  it("says which seam it is of", () => {
    expect(invariant(patch, "patch").of).toEqual([{ kind: "seam", seam: "side", from: "underarm", to: "sideWaist" }]);
  });
});

describe("strips longer than the page", () => {
  it.each([277, 240, 160])(
    "are parted into several that lie 20 mm over each other, each no longer than %d mm",
    (longest) => {
      const whole = invariant(overlay(box({ out: 4 }), 400).patches[0], "patch");
      const { patches } = overlay(box({ out: 4 }), longest);
      expect(patches.length).toBeGreaterThan(1);
      const sum = patches.reduce((total, patch) => total + lengthOf(patch), 0);
      expect(sum).toBeCloseTo(lengthOf(whole) + 20 * (patches.length - 1), 3);
      for (const { ring } of patches) {
        const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
        expect(Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))).toBeLessThanOrEqual(
          longest + 1e-9,
        );
      }
    },
  );
});

describe("pieces without strips", () => {
  it("are told as the same where nothing moved", () => {
    expect(overlay(box({}))).toMatchObject({ patches: [], same: [{ piece: "back", half: null }], tooMuch: [] });
  });

  it("are told as the same where the line moved by less than a pencil's width, and not where by more", () => {
    expect(overlay(box({ out: 0.49 })).same).toHaveLength(1);
    expect(overlay(box({ out: 0.6 })).same).toHaveLength(0);
  });

  it("are told as too much where all of it moved", () => {
    expect(overlay(box({ shift: 10 }))).toMatchObject({
      patches: [],
      same: [],
      tooMuch: [{ piece: "back", half: null, why: "mostMoved" }],
    });
  });

  it("are told as not printed where the tissue has no such piece", () => {
    const plan = planOfPieces({ printed: [], final: [box({})] });
    expect(overlayOf(plan, ["back"], A4_LONG).tooMuch).toEqual([{ piece: "back", half: null, why: "notPrinted" }]);
  });

  it("are left out where they are not chosen", () => {
    expect(overlayOf(planWith(box({}), box({ out: 4 })), ["front"], A4_LONG)).toMatchObject({
      patches: [],
      same: [],
      tooMuch: [],
    });
  });

  it("are laid by no strip where no two printed points can be had on the page", () => {
    expect(overlay(box({ out: 4 }), 60).tooMuch).toEqual([{ piece: "back", half: null, why: "noHold" }]);
  });
});

describe("halves that differ", () => {
  it("have strips of their own, and one for both where they are alike", () => {
    const plan = planWith(box({}), box({ out: 4 }));
    const right = (pieces: readonly Piece[]): OverlaidPlan => ({
      ...plan,
      right: { ...plan.left, pieces },
    });
    expect(overlayOf(right([box({ out: 6 })]), ["back"], 400).patches.map(({ key, half }) => [key, half])).toEqual([
      ["back-left-1", "left"],
      ["back-right-1", "right"],
    ]);
    expect(overlayOf(right([box({ out: 4 })]), ["back"], 400).patches.map(({ key, half }) => [key, half])).toEqual([
      ["back-1", null],
    ]);
  });
});
