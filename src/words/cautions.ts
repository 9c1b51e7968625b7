/** Where this work can hurt someone: said on paper and on screen, before the work it belongs to. */
import { dressOf } from "../core/dress/dressOf";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { OPENING_NEAR } from "../core/tolerance";
import type { Mm } from "../core/units";
import { formatLength, formatMost } from "./terms/length";

export interface Caution {
  readonly code: "opening" | "pins" | "blades" | "iron" | "notMedical" | "helper";
  readonly title: string;
  readonly text: string;
}

/** What the opening lets through: of a dress with all that hangs on the bodice, else of the bodice. */
function passagesOf(work: Work, plan: Plan): readonly Passed[] {
  if (work.dress === undefined) return plan.checks.filter((check) => check.name === "openingPasses");
  const dress = dressOf(work);
  return dress.ok ? dress.value.checks.filter((check) => check.name === "opensEnough") : [];
}

interface Passed {
  readonly ok: boolean;
  readonly measured: Mm;
  readonly expected: Mm;
}

/** The way in, with a warning where a body would not pass. */
function openingCaution(work: Work, plan: Plan): Caution {
  const { place, belowWaist } = work.pattern.closure;
  const where = place === "centreBack" ? "centre back" : "side";
  const reach =
    (work.pattern.length === "hip" || work.dress?.skirt !== undefined) && belowWaist > 0
      ? `ends ${formatLength(belowWaist, work.unit)} below the waist seam`
      : "ends at the waist";
  const passages = passagesOf(work, plan);
  const spare = Math.min(...passages.map(({ measured, expected }) => measured - expected));
  const verdict = passages.some(({ ok }) => !ok)
    ? "It is too short to get into, see above. Lengthen it before you sew and do not force it: you could be caught " +
      "inside with your arms up, or fall stepping in."
    : spare < OPENING_NEAR
      ? `It has only ${formatMost(spare, work.unit)} to spare: try it on before you sew it in, and open it all the way.`
      : "Open it all the way to get in and out.";
  return { code: "opening", title: "Getting in", text: `The opening at the ${where} ${reach}. ${verdict}` };
}

export function cautions(work: Work, plan: Plan): readonly Caution[] {
  return [
    openingCaution(work, plan),
    {
      code: "pins",
      title: "Pins on a body",
      text:
        "Lay them flat, points away from the skin, none at the neck or under the arm. Do not sit, reach or undress " +
        "until every one is out; count them in and out.",
    },
    {
      code: "blades",
      title: "Scissors and rotary blade",
      text: "Cut away from your hand and from anyone wearing the cloth. Close the blade each time you lay it down.",
    },
    {
      code: "iron",
      title: "Iron",
      text: "Press on the board, never on a body. Stand the iron up, keep the flex out of the way and unplug it after.",
    },
    {
      code: "notMedical",
      title: "Not medical advice",
      text: "This sheet is about cloth. If a garment hurts, numbs or hinders breathing, take it off.",
    },
  ];
}
