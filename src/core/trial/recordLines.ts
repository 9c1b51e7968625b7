/** The lines of a record that can be read. */
import { HALVES, type Half } from "../decisions/alteration";
import type { Observation, TrialPlace, TrialSign, TrialWay } from "../decisions/trial";
import type { DartRef } from "../pattern/piece";
import { CLOTH_WORTH_ALTERING } from "../tolerance";
import type { Mm } from "../units";

export interface ReadLine {
  readonly id: string;
  readonly place: TrialPlace;
  readonly sign: TrialSign;
  readonly halves: readonly Half[];
  readonly dart: DartRef | null;
  /** What was measured, as it was measured; null: nothing. */
  readonly measured: { readonly way: TrialWay; readonly amount: Mm } | null;
  readonly mark: { readonly out: Mm; readonly down: Mm } | null;
}

/** How a sign is measured where the way was not said. */
const WAY_OF: Readonly<Partial<Record<TrialSign, TrialWay>>> = {
  foldAcross: "pinched",
  foldAlong: "pinched",
  gapes: "pinched",
  pointed: "pinched",
  tight: "letOut",
  flat: "letOut",
  dragLines: "letOut",
};

/** Lines with a place and a sign; a mark that was not measured says nothing yet, and one where it was sewn or drawn that all is well. */
export const readLines = (observations: readonly Observation[]): readonly ReadLine[] =>
  observations.flatMap(({ id, place, sign, half, dart = null, way, amount, mark = null }) => {
    if (place === undefined || sign === undefined) return [];
    const isMark = sign === "dartEnds" || sign === "bustPoint";
    if (isMark && (mark === null || Math.hypot(mark.out, mark.down) < CLOTH_WORTH_ALTERING)) return [];
    const measured =
      isMark || amount === undefined || amount === 0 ? null : { way: way ?? WAY_OF[sign] ?? "off", amount };
    return [{ id, place, sign, halves: half === undefined ? HALVES : [half], dart, measured, mark }];
  });
