/** What a change to a work makes fail that held before. */
import type { CheckResult } from "../checks/check";
import type { Decided } from "../decisions/decided";
import { planOf } from "./planOf";

/** Checks of the later work that do not hold, and held (or were not asked) of the earlier; none where either has no plan. */
export function newlyFailing(before: Decided, after: Decided): readonly CheckResult[] {
  const [was, is] = [planOf(before), planOf(after)];
  if (!was.ok || !is.ok) return [];
  const failed = new Map(was.value.checks.filter(({ ok }) => !ok).map((check) => [placeOf(check), check]));
  return is.value.checks.filter((check) => {
    if (check.ok) return false;
    const known = failed.get(placeOf(check));
    if (known === undefined) return true;
    // One more alteration left out is a fault more, and one on another piece is another.
    return (
      check.unit === "faults" &&
      (check.measured > known.measured || check.pieces.some((piece) => !known.pieces.includes(piece)))
    );
  });
}

/** Of what is left out there is one check, whichever pieces it would have been made on. */
const placeOf = ({ name, pieces, level, seam, dart, point, half }: CheckResult): string =>
  [name, name === "alterationsMade" ? "" : pieces.join("+"), level, seam, dart, point, half].join(" ");
