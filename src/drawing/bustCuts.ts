/** The bust alteration of one piece as two small drawings for paper: where to cut, and how the parts lie when moved. */
import type { AlterationTrace } from "../core/alterations/outcome/trace";
import type { PiecePoint } from "../core/geometry/point";
import type { PieceName } from "../core/pattern/piece";
import type { PlanHalf, PlannedAlteration } from "../core/plan/plan";
import type { SurgeryTrace } from "../core/surgery/cutAndMove";
import type { Mm } from "../core/units";
import { around, boundsOf, type Box } from "./layout";
import { alterationMarks, transformAt } from "./surgeryMarks";

export interface BustCuts {
  readonly piece: PieceName;
  /** Paper is let in; otherwise the parts lap. */
  readonly opens: boolean;
  /** mm on the half at the bust point, and how far the centre part is lengthened or shortened. */
  readonly spread: Mm;
  readonly drop: Mm;
  /** Round the piece before and after, mm. */
  readonly box: Box;
  readonly before: string;
  /** Legs of the darts, before. */
  readonly legs: readonly string[];
  readonly cuts: readonly string[];
  readonly hinges: readonly PiecePoint[];
  readonly after: string;
  /** The parts as they lie when moved: closed outlines, each with the move that lays it there. */
  readonly parts: readonly { readonly outline: string; readonly transform: string }[];
}

/** Of each piece that a bust alteration of one half cuts; none where none is made. */
export function bustCuts({ alterations }: Pick<PlanHalf, "alterations">): readonly BustCuts[] {
  return alterations.flatMap((planned) =>
    planned.what.kind === "bust" && planned.outcome.ok ? cutsOf(planned.what, planned.outcome.value) : [],
  );
}

type BustWhat = Extract<PlannedAlteration["what"], { kind: "bust" }>;

function cutsOf(what: BustWhat, trace: AlterationTrace): readonly BustCuts[] {
  return alterationMarks(trace).flatMap((marks): readonly BustCuts[] => {
    const stage = marks.stages.at(-1);
    const [old, made] = [trace.before[marks.piece], trace.after[marks.piece]];
    if (stage === undefined || old === undefined || made === undefined) return [];
    return [
      {
        piece: marks.piece,
        opens: areaOf(trace.surgery, marks.piece) > 0,
        spread: what.spread,
        drop: what.drop,
        box: around(boundsOf(old), boundsOf(made)),
        before: marks.before,
        legs: marks.legsBefore,
        cuts: stage.cuts,
        hinges: stage.hinges,
        after: marks.after,
        parts: stage.regions.map(({ outline, motion }) => ({ outline, transform: transformAt(motion, 1) })),
      },
    ];
  });
}

const areaOf = (surgery: readonly SurgeryTrace[], piece: PieceName): number =>
  surgery.filter((one) => one.piece === piece).reduce((sum, { area }) => sum + area, 0);
