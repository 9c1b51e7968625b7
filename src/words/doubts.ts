/** What to look at before cutting: checks that do not hold, alterations left out, lines past the printed ones. */
import type { Plan, Slip } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { checkFailureSentence } from "./checks";
import { formatAmount } from "./length";
import { capital, levelWords, pieceWords } from "./names";
import { alterationTitle, slipFailureSentence } from "./slips";

/** Why an alteration is not in the order of work; null for one that is. */
export function refusedSentence(slip: Slip, unit: LengthUnit): string | null {
  if (slip.outcome.ok) return null;
  const { what } = slip;
  const asked =
    what.kind === "alteration"
      ? alterationTitle(what.alteration, unit)
      : what.kind === "bust"
        ? `Bust alteration of ${formatAmount(Math.abs(what.amount), unit)}`
        : `${capital(levelWords(what.level))} line`;
  return `Left out on the ${pieceWords(slip.piece)}: ${asked.charAt(0).toLowerCase()}${asked.slice(1)}. ${slipFailureSentence(slip.outcome.failure, unit)}`;
}

export interface Doubts {
  /** One sentence for each check that does not hold, or for each alteration left out. */
  readonly failing: readonly string[];
  /** Not wrong, but worth a trial garment first. */
  readonly notes: readonly string[];
}

export function planDoubts(plan: Plan, unit: LengthUnit): Doubts {
  const refused = plan.slips.flatMap((slip) => refusedSentence(slip, unit) ?? []);
  const failing = plan.checks
    .filter((check) => !check.ok)
    .flatMap((check) =>
      check.name === "slipsApplied" && refused.length > 0 ? refused : [checkFailureSentence(check, unit)],
    );
  const beyond = plan.levels
    .filter((level) => level.extrapolated)
    .map((level) => `The ${levelWords(level.level)} line lies past the last printed one, carried on by its step: sew a trial first.`);
  return { failing, notes: beyond };
}
