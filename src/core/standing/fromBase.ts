/** A new work of the same pattern, begun from a base. */
import type { Trial } from "../decisions/trial";
import type { Work } from "../decisions/work";

/**
 * Another dress of the same body, alterations and pattern as the base was sewn, and of the same unit, with no trials yet. Nothing
 * that was changed in the work since is in it, but what was measured of her for its skirt; the skirt itself is to be chosen.
 *
 * @param base a trial of that work
 * @param name what the new work is to be called
 */
export function workFromBase(work: Work, base: Trial, name: string): Work {
  const { wearer, invented, unit, paper, sheetFormat, printerMargin } = work;
  const measures = work.dress?.measures;
  return {
    name,
    ...(wearer === undefined ? {} : { wearer }),
    invented,
    begunFrom: { name: work.name, ...(base.day === undefined ? {} : { day: base.day }) },
    unit,
    paper,
    ...base.sewn,
    ...(measures === undefined ? {} : { dress: { ...base.sewn.dress, measures } }),
    ...(sheetFormat === undefined ? {} : { sheetFormat }),
    ...(printerMargin === undefined ? {} : { printerMargin }),
    unread: {},
  };
}
