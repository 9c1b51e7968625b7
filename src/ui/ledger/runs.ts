/** The slips as the ledger lists them: one line for each, in the order they are made, a heading where the phase changes. */
import { rankOf, type Phase } from "../../core/decisions/tradeOrder";
import type { PieceName } from "../../core/pattern/piece";
import type { PlannedAlteration } from "../../core/plan/plan";
import { ledgerGroup } from "../../words/ledger";

/** Slips that say the same of several pieces, as one. */
export interface Line {
  readonly group: string;
  readonly planned: PlannedAlteration;
  readonly pieces: readonly PieceName[];
}

export interface Run {
  readonly phase: Phase;
  readonly lines: readonly Line[];
}

/**
 * @param wishes ids of the wearer's slips in the order they are made: of uneven halves the plan has them apart
 */
export function runsOf(alterations: readonly PlannedAlteration[], order: readonly string[]): readonly Run[] {
  const groups = new Map<string, PlannedAlteration[]>();
  for (const planned of alterations) {
    const group = ledgerGroup(planned);
    const own = groups.get(group);
    if (own === undefined) groups.set(group, [planned]);
    else own.push(planned);
  }
  const lines = [...groups].flatMap(([group, own]): Line[] => {
    const [planned] = own;
    return planned === undefined ? [] : [{ group, planned, pieces: [...new Set(own.flatMap(piecesOfPlanned))] }];
  });
  const places = new Map(order.map((id, place) => [id, place]));
  const placeOf = ({ planned }: Line): number => places.get(planned.id) ?? -1;
  const from = (source: PlannedAlteration["source"]): readonly Line[] =>
    lines.filter(({ planned }) => planned.source === source);
  const wearers = from("wearer").toSorted((a, b) => placeOf(a) - placeOf(b));
  const after = wearers.findIndex(({ planned }) => rankOf(planned.phase) > rankOf("length"));
  const split = after < 0 ? wearers.length : after;
  return inRuns([...from("blend"), ...wearers.slice(0, split), ...from("bust"), ...wearers.slice(split)]);
}

/** The pieces that a slip changed; where it was left out or changed none, the one it is about. */
function piecesOfPlanned({ piece, outcome, source }: PlannedAlteration): readonly PieceName[] {
  if (!outcome.ok || source !== "wearer") return [piece];
  const changed = new Set(outcome.value.moved.map((moved) => moved.piece));
  changed.delete(piece);
  return [piece, ...changed];
}

function inRuns(lines: readonly Line[]): readonly Run[] {
  const runs: { phase: Phase; lines: Line[] }[] = [];
  for (const line of lines) {
    const last = runs.at(-1);
    if (last?.phase === line.planned.phase) last.lines.push(line);
    else runs.push({ phase: line.planned.phase, lines: [line] });
  }
  return runs;
}
