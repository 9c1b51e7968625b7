/** Every slip of the ledger could be applied. */
import type { CheckResult } from "./check";
import type { Check } from "./context";

export const slipsApplied: Check = ({ slips }) => {
  const refused = slips.filter((slip) => !slip.outcome.ok);
  return [
    {
      name: "slipsApplied",
      ok: refused.length === 0,
      measured: refused.length,
      expected: 0,
      tolerance: 0,
      unit: "faults",
      pieces: [...new Set(refused.map((slip) => slip.piece))],
    } satisfies CheckResult,
  ];
};
