/** Which halves what is set of a dart is for, and asking for others. */
import { dartOfAlteration, isMadeOn, onHalves, otherHalf, type Alteration, type Half } from "../decisions/alteration";
import type { Work } from "../decisions/work";
import { isSameDart, type DartRef } from "../pattern/piece";
import type { Command } from "./commands";
import type { Halves } from "./fitEdit";
import type { Plan } from "./plan";

const alterationsOf = ({ alterations }: Work, dart: DartRef): readonly Alteration[] =>
  alterations.filter((a) => {
    const of = dartOfAlteration(a);
    return of !== null && isSameDart(of, dart);
  });

/** Whether anything made of a dart is for one half alone. */
const isApart = (work: Work, dart: DartRef): boolean =>
  alterationsOf(work, dart).some(({ half }) => half !== undefined);

const isOn = (plan: Plan, half: Half, dart: DartRef): boolean =>
  plan[half].darts.some(({ ref }) => isSameDart(ref, dart));

/**
 * The half that a change of a dart is for; undefined: both. For one alone where that is asked for, where something made of it is so
 * already, and where the other half has no such dart.
 *
 * @param shown the half that is looked at
 * @param alone whether it is asked for that half alone
 */
export function dartOn(work: Work, plan: Plan, dart: DartRef, shown: Half, alone: boolean): Half | undefined {
  const isOneOfTwo = plan.left !== plan.right && isOn(plan, shown, dart) && !isOn(plan, otherHalf(shown), dart);
  return alone || isApart(work, dart) || isOneOfTwo ? shown : undefined;
}

/**
 * What asking for other halves changes of a dart. For both: what the half looked at has is made on the other too, in place of what
 * that has. For one: nothing yet, since what stands is right there until it is changed.
 */
export function dartHalvesCommands(work: Work, dart: DartRef, shown: Half, to: Halves): readonly Command[] {
  if (to !== "both") return [];
  const own = alterationsOf(work, dart).filter(({ half }) => half !== undefined);
  const [here, there] = [own.filter((a) => isMadeOn(a, shown)), own.filter((a) => !isMadeOn(a, shown))];
  return [
    ...there.map(({ id }): Command => ({ kind: "removeAlteration", id })),
    ...here.map((a): Command => ({ kind: "putAlteration", alteration: onHalves(a, undefined) })),
  ];
}
