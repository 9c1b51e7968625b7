/**
 * Follows what is printed of the way from one version to another with the old pieces, a ruler and a pencil: what is said of
 * changes must lead from the pieces she has to those that are wanted. Pieces made anew are followed from the tissue.
 */
import type { Decided } from "../../src/core/decisions/decided";
import type { LengthUnit } from "../../src/core/decisions/work";
import { derivePlan } from "../../src/core/plan/derivePlan";
import { checklistSince } from "../../src/core/versions/checklistSince";
import { groupTitle } from "../../src/words/checklist";
import { sinceSaid, type SincePiece, type SinceSaid } from "../../src/words/versions";
import { cornersOff, missing, printedFor, seamsOff, type Arrival } from "./arrival";
import { follow, NotCovered, SheetAtFault, type Followed } from "./follow";
import { halfPrinted } from "./lengths";
import { jobsForHalf, type Job } from "./sheet";
import { paperOf, tissueOf, type Tissue } from "./tissue";

/** The old piece for the tissue: what the follower knows of print is said of it in other words. */
const AS_OF_TISSUE: readonly (readonly [RegExp, string])[] = [
  [/^Trace your old piece of the (.+?), stitch lines.*$/, "Trace the old line of the $1"],
  [/the old piece, grain on grain/g, "the tissue, grain on grain"],
  [/so far from where each was,/g, "so far from where each is printed,"],
  [/\bfrom where it was\b/g, "from where it is printed"],
  [/\bwhere it was\b/g, "where it is printed"],
  [/\b(from|at) the old /g, "$1 the printed "],
];

const onTissue = (text: string): string => AS_OF_TISSUE.reduce((said, [from, to]) => said.replace(from, to), text);

export interface Way {
  readonly arrival: Arrival;
  readonly said: SinceSaid;
}

/** null where one of the versions has no plan. */
export function wayFrom(
  from: Decided,
  to: Decided,
  unit: LengthUnit,
  change: (text: string) => string = (text) => text,
): Way | null {
  const [old, wanted] = [derivePlan(from), derivePlan(to)];
  if (!old.ok || !wanted.ok) return null;
  const said = sinceSaid(checklistSince(old.value, wanted.value), wanted.value, unit);
  const half = halfPrinted(unit);
  const tissue = tissueOf(printedFor(wanted.value));
  const all: Arrival = { corners: [], seams: [], onTheWay: [], notCovered: [], atFault: [] };
  const arrival = (["left", "right"] as const).reduce((sum, side): Arrival => {
    const { pieces } = wanted.value[side];
    const paper: Tissue = {
      paper: (name) => {
        const piece = old.value[side].pieces.find((one) => one.name === name);
        return piece === undefined ? null : paperOf(piece);
      },
    };
    const followed: Followed[] = [];
    const [notCovered, atFault]: [string[], string[]] = [[], []];
    const jobsOf = ({ lines }: SincePiece): readonly Job[] =>
      jobsForHalf(
        lines.map(({ text, moves }) => ({ text: change(text), moves: moves.map((move) => change(move)) })),
        side,
      );
    for (const group of said.pieces) {
      const isOld = group.anew === null;
      const jobs = jobsOf(group).map((job) =>
        isOld ? { text: onTissue(job.text), moves: job.moves.map(onTissue) } : job,
      );
      if (jobs.length === 0) continue;
      try {
        const title = groupTitle(group).toUpperCase();
        followed.push(follow({ title, jobs }, jobs, isOld ? paper : tissue).followed);
      } catch (error) {
        if (error instanceof NotCovered) notCovered.push(`${groupTitle(group)}: ${error.message}`);
        else if (error instanceof SheetAtFault) atFault.push(`${groupTitle(group)}: ${error.message}`);
        else throw error;
      }
    }
    // What is not spoken of stays as it is.
    for (const { name } of pieces) {
      const kept = followed.some((one) => one.name === name) ? null : paper.paper(name, "old", null);
      if (kept !== null && notCovered.length + atFault.length === 0)
        followed.push({ name, places: kept.places, lines: kept.lines, told: new Set() });
    }
    const isWhole = notCovered.length + atFault.length === 0;
    return {
      corners: [...sum.corners, ...followed.flatMap((one) => cornersOff(one, pieces, half))],
      seams: [...sum.seams, ...(isWhole ? seamsOff(followed, half, null) : [])],
      onTheWay: sum.onTheWay,
      notCovered: [...sum.notCovered, ...notCovered],
      atFault: [...sum.atFault, ...atFault, ...missing(followed, pieces, isWhole)],
    };
  }, all);
  return { arrival, said };
}
