/** A toile sewn off its plan: from when on it is told, and what of the record it explains. */
import { describe, expect, it } from "vitest";
import {
  TOILE_LENGTHS,
  TRIAL_PLACES,
  TRIAL_SIGNS,
  type Observation,
  type ToileLength,
  type TrialPlace,
  type TrialSign,
} from "../../../src/core/decisions/trial";
import { invariant } from "../../../src/core/result";
import { toileLengths } from "../../../src/core/toile/toileLengths";
import { readLines } from "../../../src/core/trial/recordLines";
import { sewnOffBy } from "../../../src/core/trial/sewnOff";
import { planOf, sewnAs } from "../../support/trials";

const plan = planOf(sewnAs("sideDart"));
const planned = (length: ToileLength): number => invariant(toileLengths(plan)[length], length);
const told = (length: ToileLength, by: number, seen: readonly Observation[] = []) =>
  sewnOffBy({ measured: { [length]: planned(length) + by } }, plan, readLines(seen));

/** Every sign at every place, not measured. */
const ALL: readonly Observation[] = TRIAL_PLACES.flatMap((place) =>
  TRIAL_SIGNS.filter((sign) => sign !== "dartEnds" && sign !== "bustPoint").map((sign) => ({
    id: `${place} ${sign}`,
    place,
    sign,
  })),
);

interface Shows {
  readonly at: readonly TrialPlace[];
  readonly small: readonly TrialSign[];
  readonly large: readonly TrialSign[];
}

/** By the trade: a girth shows at its level, as tight or as loose; a length at its end, as short or as long. */
const GIRTH = {
  small: ["tight", "dragLines", "doesNotMeet", "cutsIn"],
  large: ["foldAlong", "overlaps", "gapes"],
} as const;
const LENGTH = { small: ["ridesUp", "tight"], large: ["drops", "foldAcross"] } as const;
const SHOWS: Readonly<Record<ToileLength, Shows>> = {
  bustGirth: { at: ["bust", "underarm", "closureBust"], ...GIRTH },
  waistGirth: { at: ["sideSeam", "frontWaist", "backWaist", "closureWaist"], ...GIRTH },
  hipGirth: { at: ["sideHip", "frontHip", "backHip", "closureHip"], ...GIRTH },
  centreFront: { at: ["frontWaist", "frontAboveWaist"], ...LENGTH },
  centreBack: { at: ["backWaist", "backAboveWaist"], ...LENGTH },
  shoulder: { at: ["shoulder"], small: ["endsInside"], large: ["endsOutside"] },
};

describe.each(TOILE_LENGTHS)("the %s", (length) => {
  // What is worth altering is 4 mm, of a girth on each half.
  const least = length.endsWith("Girth") ? 8 : 4;

  it(`is off from ${least} mm on, to either side`, () => {
    for (const way of [1, -1]) {
      expect(told(length, way * (least - 0.01))).toEqual([]);
      const sewn = planned(length) + way * (least + 0.01);
      expect(told(length, way * (least + 0.01))).toEqual([{ length, sewn, planned: planned(length), explains: [] }]);
    }
  });

  it.each(["small", "large"] as const)("sewn too %s, explains what is seen of that there, and nothing else", (kind) => {
    const { at } = SHOWS[length];
    const wanted = at.flatMap((place) => SHOWS[length][kind].map((sign) => `${place} ${sign}`));
    const [off] = told(length, kind === "small" ? -20 : 20, ALL);
    expect(off?.explains.toSorted()).toEqual(wanted.toSorted());
  });
});

describe("what was measured at a line", () => {
  // The waist is sewn 20 too large or too small; a tape reads cloth to 5 mm.
  const folded = (amount: number): Observation => ({ id: "a", place: "sideSeam", sign: "foldAlong", amount });
  const tight = (amount: number): Observation => ({ id: "a", place: "sideSeam", sign: "tight", amount });

  it("is explained where it is no more than what the sewing is off by, a fold counted twice", () => {
    expect(told("waistGirth", 20, [folded(12.4)])[0]?.explains).toEqual(["a"]);
    expect(told("waistGirth", 20, [folded(12.6)])[0]?.explains).toEqual([]);
    expect(told("waistGirth", -20, [tight(24.9)])[0]?.explains).toEqual(["a"]);
    expect(told("waistGirth", -20, [tight(25.1)])[0]?.explains).toEqual([]);
  });
});

it("tells lengths in their order, and of none that was not measured or that the garment has not", () => {
  expect(sewnOffBy({}, plan, [])).toEqual([]);
  expect(
    sewnOffBy({ measured: { shoulder: 10, waistGirth: 10, bustGirth: planned("bustGirth") } }, plan, []).map(
      ({ length }) => length,
    ),
  ).toEqual(["waistGirth", "shoulder"]);
  const strapped = planOf(sewnAs("midriff"));
  expect(toileLengths(strapped).shoulder).toBeUndefined();
  expect(sewnOffBy({ measured: { shoulder: 10 } }, strapped, [])).toEqual([]);
});
