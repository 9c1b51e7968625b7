/** What is given up for a remnant, with lays stood in for: by what each is told to be, or by the area of what lies on it. mm. */
import { expect } from "vitest";
import type { ClothLay } from "../../src/core/cloth/cutting";
import { prepareLay } from "../../src/core/cloth/layCloth";
import type { Prepared } from "../../src/core/cloth/layPrepared";
import type { LayWanted } from "../../src/core/cloth/laySearch";
import { ringArea } from "../../src/core/geometry/ringArea";
import type { Cloth, Dress, Skirt } from "../../src/core/decisions/dress";
import type { LengthUnit, Work } from "../../src/core/decisions/work";
import { clothAskedOf } from "../../src/core/dress/dressCloth";
import { remnantOf, type GiveUp, type RemnantAnswer } from "../../src/core/dress/remnant";
import { tapesOf } from "../../src/core/measures/tape";
import { invariant } from "../../src/core/result";
import { testWork } from "./works";

export const byArea = ({ copies, width }: Prepared): number =>
  copies.reduce((sum, { ways: [way] }) => sum + ringArea(way?.ring ?? []), 0) / width;

/** With a lining of the bodice there is no facing and no binding: nothing but the skirt can be given up. */
export const BARE: Dress = { lining: { bodice: true } };
export const EDGED: Dress = { edges: { neck: "binding", armhole: "facing" } };

export interface Case {
  readonly skirt: Skirt;
  readonly of?: Dress;
  readonly main?: Cloth;
  readonly unit?: LengthUnit;
}

/** Of a gathered skirt the hip is left out, over which it would have to be wider. */
const HIPLESS = tapesOf({ bustGirth: 905, waistGirth: 752, bustPointWidth: 190, sideNeckToBustPoint: 268 });
const PATTERN: Work["pattern"] = { ...testWork.pattern, length: "waist" };

export const workOf = ({ skirt, of = BARE, main = {}, unit = "cm" }: Case): Work => ({
  ...testWork,
  pattern: PATTERN,
  tapes: skirt.kind === "gathered" || skirt.kind === "tiers" ? HIPLESS : testWork.tapes,
  unit,
  dress: { ...of, skirt, cloths: { main: { width: 1500, ...main } } },
});

/** By area. */
export function needed(like: Case): number {
  const prepared = prepareLay(invariant(clothAskedOf(workOf(like), "main"), "cloth"));
  if (!prepared.ok) throw new Error(prepared.failure.code);
  return byArea(prepared.value);
}

export type Rule = (wanted: LayWanted, index: number) => number;
export const AREA: Rule = ({ prepared }) => byArea(prepared);

interface Answered {
  readonly answer: RemnantAnswer;
  readonly sought: readonly LayWanted[];
}

export function answerOf(like: Case, has: number, rule: Rule): Answered {
  const search = remnantOf(workOf({ ...like, main: { ...like.main, length: has } }), "main");
  const sought: LayWanted[] = [];
  let step = search.next();
  while (step.done !== true) {
    const wanted = step.value;
    const lay: ClothLay = {
      cloth: "main",
      width: wanted.prepared.width,
      onFold: false,
      oneWay: false,
      parts: [],
      length: rule(wanted, sought.length),
      toBuy: 0,
      leastByArea: 0,
      leastByLongest: 0,
      used: 1,
    };
    sought.push(wanted);
    step = search.next(lay);
  }
  return { answer: invariant(step.value, "answer"), sought };
}

export const waysOf = (answer: RemnantAnswer): readonly (readonly GiveUp[])[] =>
  answer.goes ? [] : answer.ways.map(({ giveUps }) => giveUps);

export const HAS = 1000;
/** All but what is as she has it goes. */
export const easily: Rule = (_, index) => (index === 0 ? HAS + 1 : HAS);
export const never = (): number => 2 * HAS;

export const closely = (giveUp: GiveUp): unknown =>
  Object.fromEntries(
    Object.entries(giveUp).map(([key, value]) => [key, typeof value === "number" ? expect.closeTo(value, 6) : value]),
  );
export const inTurn = (...giveUps: readonly GiveUp[]): readonly unknown[] => giveUps.map((giveUp) => [closely(giveUp)]);

export const lengthFrom = (from: number, to: number): GiveUp => ({ code: "remnant/length", from, to });
export const ratioFrom = (from: number, to: number, tier: number | null = null): GiveUp => ({
  code: "remnant/ratio",
  tier,
  from,
  to,
});
