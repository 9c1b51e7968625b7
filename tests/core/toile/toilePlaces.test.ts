import { describe, expect, it } from "vitest";
import { STYLE_NAMES } from "../../../src/core/decisions/pattern";
import { TRIAL_PLACES, TRIAL_SIGNS, type TrialPlace } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { derivePlan } from "../../../src/core/plan/derivePlan";
import type { Plan } from "../../../src/core/plan/plan";
import { SIGNS_AT, waysAt } from "../../../src/core/toile/signsAt";
import { placeNumber, placeOfNumber, toilePlaces } from "../../../src/core/toile/toilePlaces";
import { toileLengths } from "../../../src/core/toile/toileLengths";
import { RULES } from "../../../src/core/trial/rules";
import { sampleWork } from "../../support/sampleWork";

function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(plan.failure.code);
  return plan.value;
}

const { pattern } = sampleWork;
const plain: Work = { ...sampleWork, alterations: [] };
const placesOf = (work: Work): readonly TrialPlace[] =>
  toilePlaces(planOf(work).left, work.pattern.closure).map(({ place }) => place);
const without = (...gone: readonly TrialPlace[]): readonly TrialPlace[] =>
  TRIAL_PLACES.filter((place) => !gone.includes(place));

const BELOW_WAIST: readonly TrialPlace[] = ["frontHip", "frontHem", "sideHip", "backHip", "backHem", "closureHip"];
const OF_THE_SHOULDER: readonly TrialPlace[] = ["neckPoint", "shoulder", "chest", "blades"];

describe("toilePlaces", () => {
  it("numbers places from 1 in their order, both ways", () => {
    expect([placeNumber("neckPoint"), placeNumber("bust"), placeNumber("closureHip")]).toEqual([1, 7, 27]);
    expect([placeOfNumber(1), placeOfNumber(27), placeOfNumber(0), placeOfNumber(28)]).toEqual([
      "neckPoint",
      "closureHip",
      undefined,
      undefined,
    ]);
  });

  it("has of each garment what it has, and no more", () => {
    expect(placesOf(plain)).toEqual(without("strap"));
    expect(placesOf({ ...plain, pattern: { ...pattern, style: "midriff" } })).toEqual(without(...OF_THE_SHOULDER));
    expect(placesOf({ ...plain, pattern: { ...pattern, length: "waist" } })).toEqual(without("strap", ...BELOW_WAIST));
    // The princess seams leave no dart in front, and one behind.
    const princess = planOf({ ...plain, pattern: { ...pattern, style: "princessArmhole" } });
    const ends = toilePlaces(princess.left, pattern.closure).find(({ place }) => place === "dartEnd");
    expect(ends?.spots.map(({ view, dart }) => [view, dart?.piece])).toEqual([["back", "back"]]);
  });

  it("has a hip of the closure only where it opens so far", () => {
    const closure = { ...pattern.closure, belowWaist: 0 };
    expect(placesOf({ ...plain, pattern: { ...pattern, closure } })).toEqual(without("strap", "closureHip"));
  });

  it("has the closure on the centre back, of both halves, or on a side seam", () => {
    const closures = (place: "centreBack" | "side") =>
      toilePlaces(planOf(plain).left, { place, belowWaist: 180 })
        .filter((one) => one.place.startsWith("closure"))
        .map(({ isCentre, spots }) => [isCentre, spots[0].view]);
    expect(closures("centreBack")).toEqual(Array.from({ length: 3 }, () => [true, "back"]));
    expect(closures("side")).toEqual(Array.from({ length: 3 }, () => [false, "side"]));
  });

  it.each(STYLE_NAMES)("lays every place of a %s on a piece of its own side, within or on its box", (style) => {
    const plan = planOf({ ...plain, pattern: { ...pattern, style } });
    for (const { place, spots } of toilePlaces(plan.left, pattern.closure)) {
      for (const { view, piece, at } of spots) {
        const on = plan.left.pieces.find(({ name }) => name === piece);
        const isBack = piece.startsWith("back");
        expect([place, view, isBack]).toEqual([place, view, view === "back"]);
        const corners = Object.values(on?.points ?? {}).map((point) => point.at);
        const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
        expect([place, at.x > Math.min(...xs) - 5, at.x < Math.max(...xs) + 5]).toEqual([place, true, true]);
        expect([place, at.y > Math.min(...ys) - 5, at.y < Math.max(...ys) + 5]).toEqual([place, true, true]);
      }
    }
  });

  it("has the bust at her own bust point", () => {
    const plan = planOf(plain);
    const bust = toilePlaces(plan.left, pattern.closure).find(({ place }) => place === "bust");
    // Half of the 196 mm between her bust points.
    expect(bust?.spots[0].at.x).toBeCloseTo(98, 6);
  });
});

describe("signs at a place", () => {
  it("holds every sign that any row of the table looks for, told in a way that row reads", () => {
    const missing = RULES.flatMap(({ name, shows }) =>
      shows.flatMap(({ place, sign, tells }) => {
        const isThere = SIGNS_AT[place].includes(sign);
        const ways = waysAt(sign, place);
        const isRead = tells === undefined || ways.length === 0 || ways.some((way) => tells[way] !== undefined);
        return isThere && isRead ? [] : [`${name}: ${place} ${sign}`];
      }),
    );
    expect(missing).toEqual([]);
  });

  it("names no sign twice, and each at some place", () => {
    for (const signs of Object.values(SIGNS_AT)) expect(new Set(signs).size).toBe(signs.length);
    expect(new Set(Object.values(SIGNS_AT).flat())).toEqual(new Set(TRIAL_SIGNS));
  });

  it("tells marks by how far out and down, so in no way, and a fold by its depth", () => {
    expect(waysAt("dartEnds", "dartEnd")).toEqual([]);
    expect(waysAt("bustPoint", "bust")).toEqual([]);
    expect(waysAt("foldAcross", "backAboveWaist")).toEqual(["pinched"]);
    expect(waysAt("dragLines", "neckPoint")[0]).toBe("pinched");
    expect(waysAt("dragLines", "bust")[0]).toBe("letOut");
  });
});

describe("toileLengths", () => {
  it("gives whole girths as the plan has them, and lengths of one half along the stitch line", () => {
    const plan = planOf(plain);
    const lengths = toileLengths(plan);
    const girth = (of: "bust" | "waist" | "hip") => plan.levels.find(({ level }) => level === of)?.finished;
    expect([lengths.bustGirth, lengths.waistGirth, lengths.hipGirth]).toEqual(
      (["bust", "waist", "hip"] as const).map(girth),
    );
    // The centre lines of a draft are straight and upright: the distance of their ends.
    const ends = (piece: "front" | "back"): number => {
      const points = plan.left.pieces.find(({ name }) => name === piece)?.points;
      return (points?.centreWaist?.at.y ?? 0) - (points?.centreNeck?.at.y ?? 0);
    };
    expect(lengths.centreFront).toBeCloseTo(ends("front"), 6);
    expect(lengths.centreBack).toBeCloseTo(ends("back"), 6);
    const front = plan.left.pieces.find(({ name }) => name === "front")?.points;
    const [neck, tip] = [front?.sideNeck?.at, front?.shoulderTip?.at];
    if (neck === undefined || tip === undefined) throw new Error("a front with a shoulder");
    // Its shoulder is straight, or all but.
    expect(Math.abs((lengths.shoulder ?? 0) - Math.hypot(neck.x - tip.x, neck.y - tip.y))).toBeLessThan(1);
  });

  it("asks for no shoulder of cups and no hip of what ends at the waist", () => {
    const cups = planOf({ ...plain, pattern: { ...pattern, style: "midriff", length: "waist" } });
    expect(Object.keys(toileLengths(cups))).toEqual(["bustGirth", "waistGirth", "centreFront", "centreBack"]);
  });
});
