/** Every alteration of the ledger could be applied. */
import type { CheckResult } from "./check";
import type { Check } from "./context";

export const alterationsMade: Check = ({ alterations }) => {
  const refused = alterations.filter((planned) => !planned.outcome.ok);
  return [
    {
      name: "alterationsMade",
      ok: refused.length === 0,
      measured: refused.length,
      expected: 0,
      tolerance: 0,
      unit: "faults",
      pieces: [...new Set(refused.map((planned) => planned.piece))],
    } satisfies CheckResult,
  ];
};
