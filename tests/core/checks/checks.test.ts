/** Every check holds on a sound plan and fails on the fault it is there for. */
import { describe, expect, it } from "vitest";
import { CHECKS } from "../../../src/core/checks/index";
import type { CheckName, CheckResult } from "../../../src/core/checks/check";
import type { CheckContext } from "../../../src/core/checks/context";
import { shift } from "../../../src/core/geometry/point";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import type { Plan } from "../../../src/core/plan/plan";
import { invariant } from "../../../src/core/result";
import { seamByBezierJs } from "../../support/independent";
import { planOf, testWork } from "../../support/works";

const plan = planOf(testWork);

const contextOf = ({ left: { pieces, levels, darts, alterations } }: Plan): CheckContext => ({
  pieces: setOf(pieces),
  halves: [setOf(pieces), setOf(pieces)],
  levels,
  darts,
  alterations,
  closure: testWork.pattern.closure,
  body: { bust: 905, hip: 1034 },
});

const sound = contextOf(plan);
/** The style with straps: cut 15 mm shorter than their way, so 14 mm less is more than they may give. */
const strapped = contextOf(planOf({ ...testWork, pattern: { ...testWork.pattern, style: "midriff" } }));
const strap = invariant(strapped.pieces.strap, "strap");

/** One named point moved, the lines beside it left as they were. */
function moved(piece: Piece, name: PointName, dx: number, dy: number): Piece {
  const point = invariant(piece.points[name], name);
  return { ...piece, points: { ...piece.points, [name]: { ...point, at: shift(point.at, dx, dy) } } };
}

const front = invariant(sound.pieces.front, "front");
const withFront = (piece: Piece): CheckContext => ({ ...sound, pieces: { ...sound.pieces, front: piece } });
const [bust, ...otherLevels] = sound.levels;
/** Halves that differ, and can be sewn to each other. */
const uneven = { ...sound, halves: [sound.pieces, { ...sound.pieces }] as const };
const sideDart = invariant(
  plan.left.darts.find(({ ref }) => ref.dart === "sideDart"),
  "side dart",
);
const otherDarts = plan.left.darts.filter((dart) => dart !== sideDart);

const FAULTS: Readonly<Record<CheckName, CheckContext>> = {
  girthAsClaimed: {
    ...sound,
    levels: [{ ...invariant(bust, "bust"), finished: invariant(bust, "bust").claim + 0.06 }, ...otherLevels],
  },
  seamsWalk: withFront(moved(front, "sideWaist", 0, 4)),
  halvesWalk: { ...sound, halves: [sound.pieces, { ...sound.pieces, front: moved(front, "centreWaist", 0, 2) }] },
  dartLegsEqual: {
    ...sound,
    darts: [{ ...sideDart, drawn: { ...sideDart.drawn, legInner: sideDart.drawn.legInner + 0.06 } }, ...otherDarts],
  },
  dartEndShortOfBustPoint: {
    ...sound,
    darts: [{ ...sideDart, drawn: { ...sideDart.drawn, end: { along: -3, across: 0 } } }, ...otherDarts],
  },
  // At the usual distance along, an inch and more to the side.
  dartPointsAtBustPoint: {
    ...sound,
    darts: [{ ...sideDart, drawn: { ...sideDart.drawn, end: { along: 30, across: -26 } } }, ...otherDarts],
  },
  cornersSquare: withFront(moved(front, "centreWaist", 4, 0)),
  joinedCornersStraight: withFront(moved(front, "shoulderTip", 0, 12)),
  seamsSmooth: withFront(moved(front, "sideBust", 8, 0)),
  strapsReach: {
    ...strapped,
    pieces: { ...strapped.pieces, strap: moved(moved(strap, "strapFrontInner", 0, -14), "strapFrontOuter", 0, -14) },
  },
  openingPasses: { ...sound, closure: { place: "centreBack", belowWaist: 20 } },
  outlineClosed: withFront(moved(front, "sideNeck", 300, 200)),
  // Far out to the side, past the side seam.
  dartsClear: withFront(moved(front, "waistDartApex", 200, 0)),
  alterationsMade: {
    ...sound,
    alterations: [
      {
        ...invariant(sound.alterations[0], "alteration"),
        outcome: { ok: false, failure: { code: "alteration/too-short", most: 10 } },
      },
    ],
  },
};

const names = Object.keys(CHECKS) as CheckName[];

describe.each(names)("%s", (name) => {
  it("holds on a sound plan", () => {
    const results = CHECKS[name](name === "strapsReach" ? strapped : name === "halvesWalk" ? uneven : sound);
    expect(results.length).toBeGreaterThan(0);
    expect(results.filter(({ ok }) => !ok)).toEqual([]);
  });

  it("fails on its planted fault, and says so under its own name", () => {
    const bad = CHECKS[name](FAULTS[name]).filter(({ ok }) => !ok);
    expect(bad.length).toBeGreaterThan(0);
    expect(new Set(bad.map((check) => check.name))).toEqual(new Set([name]));
  });
});

/**
 * What each planted fault must be measured as, worked out by hand from the fault alone: the amount planted, or the angle
 * that a move of so many millimetres makes on the edge beside it.
 */
const steep = (across: number, along: number): number => (Math.atan2(across, along) * 180) / Math.PI;
const lengthOf = (from: PointName, to: PointName): number => {
  const [a, b] = [pointOf(front, from), pointOf(front, to)];
  return Math.hypot(b.x - a.x, b.y - a.y);
};
const measuredIn = (name: CheckName): number =>
  invariant(
    CHECKS[name](FAULTS[name]).find(({ ok }) => !ok),
    name,
  ).measured;
const soundly = (name: CheckName, which: (check: CheckResult) => boolean): number =>
  invariant(CHECKS[name](sound).find(which), name).measured;

describe("the numbers of the planted faults", () => {
  it("girthAsClaimed: 0.06 mm more than claimed", () => {
    const { measured, expected, tolerance } = invariant(CHECKS.girthAsClaimed(FAULTS.girthAsClaimed)[0], "bust");
    expect(measured - expected).toBeCloseTo(0.06, 9);
    expect(tolerance).toBe(0.05);
  });

  it("halvesWalk: a centre waist 2 mm lower on the right, the left that much shorter; and 1 mm aside, the fold bent by that", () => {
    expect(measuredIn("halvesWalk")).toBeCloseTo(-2, 6);
    const aside = moved(front, "centreBust", 1, 0);
    const [, fold] = CHECKS.halvesWalk({ ...sound, halves: [sound.pieces, { ...sound.pieces, front: aside }] });
    expect(fold).toMatchObject({ ok: false, measured: expect.closeTo(1, 6) });
  });

  it("dartLegsEqual: 0.06 mm between the legs", () => {
    expect(Math.abs(measuredIn("dartLegsEqual"))).toBeCloseTo(0.06, 3);
  });

  it("dartEndShortOfBustPoint: 3 mm beyond, where 10 short of it is the least; and 60 the most", () => {
    expect(CHECKS.dartEndShortOfBustPoint(FAULTS.dartEndShortOfBustPoint)[0]).toMatchObject({
      measured: -3,
      expected: 10,
      ok: false,
    });
    const far = { ...sound, darts: [{ ...sideDart, drawn: { ...sideDart.drawn, end: { along: 61, across: 0 } } }] };
    expect(CHECKS.dartEndShortOfBustPoint(far)).toMatchObject([{ measured: 61, expected: 60, ok: false }]);
  });

  it("dartEndShortOfBustPoint: 22 mm beside the bust point and level with it is not short of it at all", () => {
    const beside = { ...sound, darts: [{ ...sideDart, drawn: { ...sideDart.drawn, end: { along: 0, across: 22 } } }] };
    expect(CHECKS.dartEndShortOfBustPoint(beside)).toMatchObject([{ measured: 0, expected: 10, ok: false }]);
  });

  it("dartPointsAtBustPoint: 26 mm below its line, where 25 to either side is the most", () => {
    expect(CHECKS.dartPointsAtBustPoint(FAULTS.dartPointsAtBustPoint)[0]).toMatchObject({
      measured: -26,
      expected: 0,
      tolerance: 25,
      ok: false,
    });
    const near = { ...sound, darts: [{ ...sideDart, drawn: { ...sideDart.drawn, end: { along: 30, across: 25 } } }] };
    expect(CHECKS.dartPointsAtBustPoint(near)).toMatchObject([{ ok: true }]);
  });

  it("cornersSquare: the centre line slants by 4 mm over its length, and so does the corner", () => {
    expect(Math.abs(measuredIn("cornersSquare") - 90)).toBeGreaterThan(
      steep(4, lengthOf("centreBust", "centreWaist")) - 1.2,
    );
    expect(Math.abs(measuredIn("cornersSquare") - 90)).toBeGreaterThan(1);
  });

  it("joinedCornersStraight: the shoulder tip 12 mm lower turns the shoulder by that over its length, at the neck", () => {
    const at = (check: CheckResult): boolean => check.point === "sideNeck";
    const changed =
      invariant(CHECKS.joinedCornersStraight(FAULTS.joinedCornersStraight).find(at), "neck").measured -
      soundly("joinedCornersStraight", at);
    const slope = Math.atan2(
      pointOf(front, "shoulderTip").y - pointOf(front, "sideNeck").y,
      pointOf(front, "shoulderTip").x - pointOf(front, "sideNeck").x,
    );
    const lowered = Math.atan2(
      pointOf(front, "shoulderTip").y + 12 - pointOf(front, "sideNeck").y,
      pointOf(front, "shoulderTip").x - pointOf(front, "sideNeck").x,
    );
    expect(Math.abs(changed)).toBeCloseTo(((lowered - slope) * 180) / Math.PI, 6);
  });

  it("seamsWalk: the side of the front as bezier-js measures it, against the back", () => {
    const bad = invariant(
      CHECKS.seamsWalk(FAULTS.seamsWalk).find(({ seam, pieces }) => seam === "side" && pieces[1] === "front"),
      "side",
    );
    const changed = invariant(FAULTS.seamsWalk.pieces.front, "front");
    expect(bad.measured).toBeCloseTo(
      seamByBezierJs(invariant(sound.pieces.back, "back"), "side") - seamByBezierJs(changed, "side"),
      4,
    );
    expect(bad).toMatchObject({ expected: 0, tolerance: 0.05, unit: "mm" });
  });

  it.each([
    [0.1, false],
    [0.06, false],
    [0.04, true],
  ])("seamsWalk: a basque's side %d mm longer than the other, its hem being that much lower", (lower, holds) => {
    const basque = invariant(sound.pieces.frontBasque, "frontBasque");
    const pieces = { ...sound.pieces, frontBasque: moved(basque, "sideHem", 0, lower) };
    const side = invariant(
      CHECKS.seamsWalk({ ...sound, pieces }).find(
        ({ seam, pieces: of }) => seam === "side" && of.includes("frontBasque"),
      ),
      "side of the basque",
    );
    // The side runs plumb from the hip to the hem, so that it grows by just what the hem goes down.
    expect(side.measured).toBeCloseTo(-lower, 4);
    expect(side.ok).toBe(holds);
  });

  it("openingPasses: the waist by bezier-js and twice the 20 mm below it, for the hip's 1034 and 20 or 905 and 60", () => {
    const waist = (["frontBasque", "backBasque"] as const).reduce(
      (sum, name) => sum + 2 * seamByBezierJs(invariant(sound.pieces[name], name), "waist"),
      0,
    );
    const bad = invariant(
      CHECKS.openingPasses(FAULTS.openingPasses).find(({ ok }) => !ok),
      "opening",
    );
    expect(bad.measured).toBeCloseTo(waist + 40, 1);
    expect(bad.expected).toBe(965);
  });

  it("seamsSmooth, outlineClosed, slipsApplied: a corner of more than 5°, faults counted, one slip left out", () => {
    expect(measuredIn("seamsSmooth")).toBeGreaterThan(5);
    expect(measuredIn("outlineClosed")).toBeGreaterThanOrEqual(1);
    expect(measuredIn("alterationsMade")).toBe(1);
  });
});

describe("openingPasses", () => {
  it("finds a side opening under a closed neck too small for a head", () => {
    const bad = CHECKS.openingPasses({ ...sound, closure: { place: "side", belowWaist: 180 } }).filter(({ ok }) => !ok);
    expect(bad).toMatchObject([{ level: "neck", expected: 570 }]);
  });

  it("asks nothing of a garment that opens to its end", () => {
    expect(CHECKS.openingPasses({ ...sound, closure: { place: "centreBack", belowWaist: 400 } })).toEqual([]);
  });
});

it("the bust point lies where the wearer measured it", () => {
  const own = invariant(plan.bustPoint.own, "own bust point");
  expect(own.x).toBeCloseTo(95, 9);
  const neck = pointOf(front, "sideNeck");
  expect(Math.hypot(own.x - neck.x, own.y - neck.y)).toBeCloseTo(268, 9);
});
