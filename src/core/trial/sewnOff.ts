/** A toile that was not sewn as planned explains what is tight or loose there, before any alteration does. */
import { TOILE_LENGTHS, type ToileLength, type Trial, type TrialPlace, type TrialSign } from "../decisions/trial";
import type { Plan } from "../plan/plan";
import { CLOTH_READ, CLOTH_WORTH_ALTERING } from "../tolerance";
import { toileLengths } from "../toile/toileLengths";
import type { Mm } from "../units";
import type { ReadLine } from "./recordLines";
import type { SewnOff } from "./trialReading";

const TIGHT: readonly TrialSign[] = ["tight", "dragLines", "doesNotMeet", "cutsIn"];
const LOOSE: readonly TrialSign[] = ["foldAlong", "overlaps", "gapes"];
const SHORT: readonly TrialSign[] = ["ridesUp", "tight"];
const LONG: readonly TrialSign[] = ["drops", "foldAcross"];

/** Where it is seen that a length was sewn too small or too large, and how much of it is seen there. */
const SEEN_AT: Readonly<
  Record<
    ToileLength,
    {
      readonly places: readonly TrialPlace[];
      readonly small: readonly TrialSign[];
      readonly large: readonly TrialSign[];
    }
  >
> = {
  bustGirth: { places: ["bust", "underarm", "closureBust"], small: TIGHT, large: LOOSE },
  waistGirth: { places: ["sideSeam", "frontWaist", "backWaist", "closureWaist"], small: TIGHT, large: LOOSE },
  hipGirth: { places: ["sideHip", "frontHip", "backHip", "closureHip"], small: TIGHT, large: LOOSE },
  centreFront: { places: ["frontWaist", "frontAboveWaist"], small: SHORT, large: LONG },
  centreBack: { places: ["backWaist", "backAboveWaist"], small: SHORT, large: LONG },
  shoulder: { places: ["shoulder"], small: ["endsInside"], large: ["endsOutside"] },
};

const isGirth = (length: ToileLength): boolean => length.endsWith("Girth");

/**
 * What was measured of the toile against the plan.
 *
 * @returns lengths off by what is worth altering and more (a girth: by twice that, since it is of two halves), with the lines
 *          that they explain: those of the right kind there that were not measured, or not by more than the sewing is off
 */
export function sewnOffBy(
  { measured = {} }: Pick<Trial, "measured">,
  plan: Plan,
  lines: readonly ReadLine[],
): readonly SewnOff[] {
  const lengths = toileLengths(plan);
  return TOILE_LENGTHS.flatMap((length): SewnOff[] => {
    const [sewn, planned] = [measured[length], lengths[length]];
    if (sewn === undefined || planned === undefined) return [];
    const off = Math.abs(sewn - planned);
    if (off < CLOTH_WORTH_ALTERING * (isGirth(length) ? 2 : 1)) return [];
    const { places, small, large } = SEEN_AT[length];
    const signs = sewn < planned ? small : large;
    const isExplained = (line: ReadLine): boolean =>
      places.includes(line.place) && signs.includes(line.sign) && clothOf(line) <= off + CLOTH_READ;
    return [{ length, sewn, planned, explains: lines.filter(isExplained).map(({ id }) => id) }];
  });
}

const clothOf = ({ measured }: ReadLine): Mm =>
  measured === null ? 0 : measured.way === "pinched" ? 2 * measured.amount : measured.amount;
