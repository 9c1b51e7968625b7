/** Every check holds on a sound plan and fails on the fault it is there for. */
import { describe, expect, it } from "vitest";
import { CHECKS } from "../../../src/core/checks/index";
import type { CheckName } from "../../../src/core/checks/check";
import type { CheckContext } from "../../../src/core/checks/context";
import { shift } from "../../../src/core/geometry/point";
import { pointOf, type Piece, type PointName } from "../../../src/core/pattern/piece";
import { must } from "../../../src/core/result";
import { planOf, testWork } from "../../support/works";

const plan = planOf(testWork);
const sound: CheckContext = {
  pieces: Object.fromEntries(plan.pieces.map((piece) => [piece.name, piece])),
  levels: plan.levels,
  darts: plan.darts,
  slips: plan.slips,
  closure: testWork.pattern.closure,
  body: { bust: 905, hip: 1034 },
};

/** One named point moved, the lines beside it left as they were. */
function moved(piece: Piece, name: PointName, dx: number, dy: number): Piece {
  const point = must(piece.points[name], name);
  return { ...piece, points: { ...piece.points, [name]: { ...point, at: shift(point.at, dx, dy) } } };
}

const front = must(sound.pieces.front, "front");
const withFront = (piece: Piece): CheckContext => ({ ...sound, pieces: { ...sound.pieces, front: piece } });
const [bust, ...otherLevels] = sound.levels;
const sideDart = must(
  plan.darts.find(({ ref }) => ref.dart === "sideDart"),
  "side dart",
);
const otherDarts = plan.darts.filter((dart) => dart !== sideDart);

const FAULTS: Readonly<Record<CheckName, CheckContext>> = {
  girthAsClaimed: { ...sound, levels: [{ ...must(bust, "bust"), finished: must(bust, "bust").claim + 1.2 }, ...otherLevels] },
  seamsWalk: withFront(moved(front, "sideWaist", 0, 4)),
  dartLegsEqual: { ...sound, darts: [{ ...sideDart, drawn: { ...sideDart.drawn, legInner: sideDart.drawn.legInner + 1.5 } }, ...otherDarts] },
  dartEndShortOfBustPoint: { ...sound, darts: [{ ...sideDart, drawn: { ...sideDart.drawn, apexToBustPoint: -3 } }, ...otherDarts] },
  cornersSquare: withFront(moved(front, "centreWaist", 4, 0)),
  joinedCornersStraight: withFront(moved(front, "shoulderTip", 0, 12)),
  seamsSmooth: withFront(moved(front, "sideBust", 8, 0)),
  openingPasses: { ...sound, closure: { place: "centreBack", belowWaist: 20 } },
  outlineClosed: withFront(moved(front, "sideNeck", 300, 200)),
  slipsApplied: { ...sound, slips: [{ ...must(sound.slips[0], "slip"), outcome: { ok: false, failure: { code: "slip/too-short", most: 10 } } }] },
};

const names = Object.keys(CHECKS) as CheckName[];

describe.each(names)("%s", (name) => {
  it("holds on a sound plan", () => {
    const results = CHECKS[name](sound);
    expect(results.length).toBeGreaterThan(0);
    expect(results.filter(({ ok }) => !ok)).toEqual([]);
  });

  it("fails on its planted fault, and says so under its own name", () => {
    const bad = CHECKS[name](FAULTS[name]).filter(({ ok }) => !ok);
    expect(bad.length).toBeGreaterThan(0);
    expect(new Set(bad.map((check) => check.name))).toEqual(new Set([name]));
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
  const own = must(plan.bustPoint.own, "own bust point");
  expect(own.x).toBeCloseTo(95, 9);
  const neck = pointOf(front, "sideNeck");
  expect(Math.hypot(own.x - neck.x, own.y - neck.y)).toBeCloseTo(268, 9);
});
