/** Why there is no plan yet, in words, and where to go to put it right. */
import type { PlanFailure } from "../core/plan/planFailure";
import type { LengthUnit } from "../core/decisions/work";
import { formatLength } from "./terms/length";
import { levelWords } from "./terms/names";
import { listWords, plural } from "./terms/language";

export interface PlanFailureWords {
  readonly title: string;
  readonly text: string;
  /** The part of the work that holds the answer. */
  readonly where: "tape" | "envelope" | "blend";
}

const GIRTHS = { bustGirth: "bust", waistGirth: "waist", hipGirth: "hip" } as const;

function outsideChart(
  failure: Extract<PlanFailure, { code: "plan/outside-chart" }>,
  unit: LengthUnit,
): PlanFailureWords {
  const wanted = formatLength(failure.wanted, unit);
  const least = formatLength(failure.least, unit);
  const most = formatLength(failure.most, unit);
  const level = failure.level === "upperChest" ? "upper chest" : levelWords(failure.level);
  const garment = failure.level === "waist" || failure.level === "hip";
  const larger = failure.wanted > failure.most;
  return {
    title: `This pattern does not reach your ${level}`,
    text:
      `${garment ? `At the ${level} the garment should measure` : `Your ${level} measures`} ${wanted}; with two steps past ` +
      `its last printed line this pattern reaches from ${least} to ${most}. Carried further, its lines would no longer ` +
      `fit a body. ` +
      (garment ? `Check the measure and the ease wanted, then ` : "Check the measure and the chart, then ") +
      `look for the pattern in a ${larger ? "larger" : "smaller"} size range.`,
    where: garment ? "tape" : "envelope",
  };
}

/** @param sizes how many sizes the chart has: one with none is no faulty chart, only an empty one */
export function planFailureWords(failure: PlanFailure, unit: LengthUnit, sizes: number): PlanFailureWords {
  switch (failure.code) {
    case "plan/measure-missing": {
      const missing = failure.measures.map((measure) => GIRTHS[measure]);
      return {
        title: "Not enough on the tape yet",
        text:
          `The plan still needs your ${listWords(missing)} ${plural(missing.length, { one: "girth", other: "girths" })}.` +
          (failure.measures.includes("hipGirth")
            ? " Without the hip, set the pattern to waist length on Envelope."
            : ""),
        where: "tape",
      };
    }
    case "plan/chart-unusable":
      if (sizes === 0) {
        return {
          title: "No size chart yet",
          text: "The plan needs the pattern’s chart: type it in from the envelope, paste it, or take an invented one to try with.",
          where: "envelope",
        };
      }
      return {
        title: "The size chart needs a look",
        text: plural(failure.faults, {
          one: "One thing in the chart has to be put right before a size can be picked. It is marked beside its row.",
          other: `${failure.faults} things in the chart have to be put right before a size can be picked. They are marked beside their rows.`,
        }),
        where: "envelope",
      };
    case "plan/outside-chart":
      return outsideChart(failure, unit);
    case "plan/base-size-unknown":
      return {
        title: `There is no size ${failure.label} on this chart`,
        text: `You took ${failure.label} as the frame, and the chart no longer has it. Take another frame, or go back to the planner’s pick.`,
        where: "blend",
      };
    case "plan/cup-unknown":
      return {
        title: `There is no cup version ${failure.label} in this pattern`,
        text: `You took cup version ${failure.label}, and the pattern no longer has it. Take another, or go back to the planner’s pick.`,
        where: "blend",
      };
    case "plan/pieces-unready":
      return {
        title: "Your pieces are not ready",
        text: plural(failure.missing, {
          one: "One thing is missing from them.",
          other: `${failure.missing} things are missing from them.`,
        }),
        where: "envelope",
      };
    case "plan/one-size-traced":
      return {
        title: `Size ${failure.picked} is not among your pieces`,
        text: `They are in ${failure.traced.join(", ")} alone. Add size ${failure.picked}, or measure how far apart the lines lie, or take ${failure.traced[0] ?? ""} as the frame.`,
        where: "envelope",
      };
    case "plan/cup-undraftable":
      return {
        title:
          failure.label === ""
            ? "The chart’s cup difference is too small"
            : `Cup version ${failure.label} cannot be drafted`,
        text:
          `Its difference between bust and upper chest would close the bust dart altogether. ` +
          `Beside a usual draft it can be smaller by ${formatLength(Math.abs(failure.least), unit)} at the most. ` +
          `Check the difference on the envelope.`,
        where: "envelope",
      };
  }
}
