/** One alteration on one piece in small, for paper: where it is cut and turned, and how the piece lies when it is made. */
import type { AlterationTrace } from "../core/alterations/outcome/trace";
import { distance, type PiecePoint } from "../core/geometry/point";
import { pointNames, pointOf, type Piece, type PieceName } from "../core/pattern/piece";
import type { Mm } from "../core/units";
import { around, boundsOf, type Box } from "./layout";
import { alterationMarks, transformAt } from "./surgeryMarks";

export interface AlterationSketch {
  readonly piece: PieceName;
  /** Round the piece before and after, mm. */
  readonly box: Box;
  /** Closed outlines, with the legs of darts. */
  readonly before: string;
  readonly after: string;
  readonly cuts: readonly string[];
  readonly hinges: readonly PiecePoint[];
  /** Parts that move, as they lie when moved. */
  readonly moved: readonly { readonly outline: string; readonly transform: string }[];
  /** Where its amount is seen: at the open end of the cut, or at the corner that moves furthest. */
  readonly at: PiecePoint | null;
}

/** null where the piece was not there before, or is not changed. */
export function alterationSketch(trace: AlterationTrace, name: PieceName): AlterationSketch | null {
  const marks = alterationMarks(trace).find(({ piece }) => piece === name);
  const [old, made] = [trace.before[name], trace.after[name]];
  if (marks === undefined || old === undefined || made === undefined) return null;
  // Where several operations follow one another, the first is the cut that is told; the rest only draw again.
  const stage = marks.stages[0];
  return {
    piece: name,
    box: around(boundsOf(old), boundsOf(made)),
    before: marks.before + marks.legsBefore.join(""),
    after: marks.after + marks.legsAfter.join(""),
    cuts: stage?.cuts ?? [],
    hinges: stage?.hinges ?? [],
    moved: (stage?.regions ?? []).flatMap(({ outline, motion }) =>
      motion === null ? [] : [{ outline, transform: transformAt(motion, 1) }],
    ),
    at: openEnd(trace, name) ?? furthestMoved(old, made),
  };
}

/** The end of the first cut that lies furthest from its hinge. */
function openEnd({ surgery }: AlterationTrace, name: PieceName): PiecePoint | null {
  const trace = surgery.find(({ piece, parts }) => piece === name && parts.length > 0);
  const [cut, hinge] = [trace?.cuts[0], trace?.hinges[0]];
  if (cut === undefined) return null;
  const ends = [cut[0], cut.at(-1)].filter((one) => one !== undefined);
  if (hinge === undefined) return ends[0] ?? null;
  return ends.toSorted((a, b) => distance(b, hinge) - distance(a, hinge))[0] ?? null;
}

function furthestMoved(before: Piece, after: Piece): PiecePoint | null {
  let furthest: PiecePoint | null = null;
  let most: Mm = 0;
  for (const name of pointNames(after)) {
    const was = before.points[name]?.at;
    const is = pointOf(after, name);
    if (was === undefined || distance(was, is) <= most) continue;
    furthest = is;
    most = distance(was, is);
  }
  return furthest;
}
