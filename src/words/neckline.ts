/** The neckline in words: why one cannot be had, its job on the paper, and what it gapes. */
import type { LengthUnit } from "../core/decisions/work";
import type { NecklineFailure } from "../core/neckline/necklineFailure";
import type { ChecklistStep } from "../core/plan/plan";
import type { NecklineLine } from "../core/plan/necklineJob";
import { movedWords } from "./places";
import type { Mm } from "../core/units";
import { formatAmount, markingStep } from "./terms/length";
import { drawn, small, type Context, type Said } from "./terms/jobText";
import { capital, centreWords } from "./terms/names";
import { tissueWords } from "./terms/points";

/** Beside the field: what can be had. */
export function necklineFailureWords(failure: NecklineFailure, unit: LengthUnit): string {
  switch (failure.code) {
    case "neckline/not-on-style":
      return "This bodice’s neckline can’t be redrawn: a dart or a seam begins in it.";
    case "neckline/too-deep":
      return `Too low${failure.of === "back" ? " at the back" : ""}. ${deepest(told(failure.most, unit), unit)}`;
    case "neckline/too-wide":
      return told(failure.most, unit) <= 0
        ? "There is no room to widen it here."
        : `Too wide. Up to ${formatAmount(told(failure.most, unit), unit)} leaves room at the shoulder.`;
    case "neckline/too-high":
      return `Too high. Up to ${formatAmount(told(failure.most, unit), unit)} leaves room for the neck.`;
  }
}

/** What is told has to be had once it is typed: it is never rounded up. */
const told = (most: Mm, unit: LengthUnit): Mm => Math.floor(most / markingStep(unit)) * markingStep(unit);

const deepest = (most: Mm, unit: LengthUnit): string =>
  most < 0
    ? `This shape has to begin ${formatAmount(-most, unit)} higher than the pattern’s.`
    : `Up to ${formatAmount(most, unit)} keeps clear of bust, darts and seams.`;

/** The job on one piece. */
export function necklineSaid(
  { places, lines, wider, pinched }: Extract<ChecklistStep, { kind: "neckline" }>,
  context: Context,
): Said {
  const name = (point: NecklineLine["from"]): string => tissueWords(point, context.pieceName);
  const done = drawn(pinched, context)
    ? ` The ${small(pinched, context)} that it would gape are pinched out in the places above.`
    : "";
  return {
    text: `Draw the new neckline on the finished piece, each point from where it lies now, square to the grain and along it.${done}`,
    moves: [
      ...places.flatMap((place) => {
        const moved = movedWords(place, context);
        const along =
          place.point === "sideNeck" && drawn(wider, context) ? ` (${small(wider, context)} along the shoulder)` : "";
        if (place.point !== place.from)
          return `${capital(name(place.point))}: ${moved === null ? "at" : `${moved} from`} the old ${name(place.from)}.`;
        return moved === null ? [] : `${capital(name(place.point))}: ${moved}${along}.`;
      }),
      ...lines.map((line) => lineWords(line, name, context)),
    ],
  };
}

function lineWords(line: NecklineLine, name: (point: NecklineLine["from"]) => string, context: Context): string {
  const between = `Draw the neckline from the ${name(line.from)} to the ${name(line.to)}`;
  const square = line.isSquare ? `, square to the ${centreWords(context.pieceName)}` : "";
  if (line.hollow === 0) return `${between} in a straight line${square}.`;
  const bow = drawn(line.hollow, context)
    ? `, ${line.hollow > 0 ? "hollowed" : "rounded out"} ${small(line.hollow, context)} at its middle`
    : "";
  return `${between} in a smooth line ${small(line.length, context)} long${bow}${square}.`;
}
