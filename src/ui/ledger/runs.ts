/** The slips as the ledger lists them: one line for each, in the order they are made, a heading where the phase changes. */
import { rankOf, type Phase } from "../../core/decisions/tradeOrder";
import type { PieceName } from "../../core/pattern/piece";
import type { Slip } from "../../core/plan/plan";
import { slipGroup } from "../../words/ledger";

/** Slips that say the same of several pieces, as one. */
export interface Line {
  readonly group: string;
  readonly slip: Slip;
  readonly pieces: readonly PieceName[];
}

export interface Run {
  readonly phase: Phase;
  readonly lines: readonly Line[];
}

/**
 * @param wishes ids of the wearer's slips in the order they are made: of uneven halves the plan has them apart
 */
export function runsOf(slips: readonly Slip[], wishes: readonly string[]): readonly Run[] {
  const groups = [...new Set(slips.map(slipGroup))];
  const lines = groups.flatMap((group): Line[] => {
    const own = slips.filter((slip) => slipGroup(slip) === group);
    const [slip] = own;
    return slip === undefined ? [] : [{ group, slip, pieces: [...new Set(own.flatMap(piecesOfSlip))] }];
  });
  const from = (source: Slip["source"]): readonly Line[] => lines.filter(({ slip }) => slip.source === source);
  const wearers = from("wearer").toSorted((a, b) => wishes.indexOf(a.group) - wishes.indexOf(b.group));
  const after = wearers.findIndex(({ slip }) => rankOf(slip.phase) > rankOf("length"));
  const split = after < 0 ? wearers.length : after;
  return inRuns([...from("blend"), ...wearers.slice(0, split), ...from("bust"), ...wearers.slice(split)]);
}

/** The pieces that a slip changed; where it was left out or changed none, the one it is about. */
function piecesOfSlip({ piece, outcome, source }: Slip): readonly PieceName[] {
  if (!outcome.ok || source !== "wearer") return [piece];
  const changed = new Set(outcome.value.moved.map((moved) => moved.piece));
  changed.delete(piece);
  return [piece, ...changed];
}

function inRuns(lines: readonly Line[]): readonly Run[] {
  const runs: { phase: Phase; lines: Line[] }[] = [];
  for (const line of lines) {
    const last = runs.at(-1);
    if (last?.phase === line.slip.phase) last.lines.push(line);
    else runs.push({ phase: line.slip.phase, lines: [line] });
  }
  return runs;
}
