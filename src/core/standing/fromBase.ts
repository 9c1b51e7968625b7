/** A new work of the same pattern, begun from a base. */
import type { Trial } from "../decisions/trial";
import type { Work } from "../decisions/work";
import { without } from "../plan/workParts";

/**
 * Another dress of the same body, alterations and pattern as the base was sewn, and of the same unit, with no trials yet. Nothing
 * that was changed in the work since is in it, but what no toile of the bodice has: skirt, lining and cloth hung on it since.
 *
 * @param base a trial of that work
 * @param name what the new work is to be called
 */
export function workFromBase(work: Work, base: Trial, name: string): Work {
  const { wearer, invented, unit, paper, sheetFormat, printerMargin } = work;
  // The neckline is of the bodice: it stays as it was sewn.
  const dress = { ...without(work.dress ?? {}, "neckline"), ...base.sewn.dress };
  return {
    name,
    ...(wearer === undefined ? {} : { wearer }),
    invented,
    begunFrom: { name: work.name, ...(base.day === undefined ? {} : { day: base.day }) },
    unit,
    paper,
    ...base.sewn,
    ...(Object.keys(dress).length === 0 ? {} : { dress }),
    ...(sheetFormat === undefined ? {} : { sheetFormat }),
    ...(printerMargin === undefined ? {} : { printerMargin }),
    unread: {},
  };
}
