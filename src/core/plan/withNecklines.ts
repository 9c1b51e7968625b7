/** The last stage of a plan: the neckline that was chosen, drawn on the pieces of both halves. */
import type { Half } from "../decisions/alteration";
import type { Decided } from "../decisions/decided";
import { levelWidth } from "../girth/levelWidth";
import type { NecklineFailure } from "../neckline/necklineFailure";
import { redrawNeckline, type RedrawnNeckline } from "../neckline/redrawNeckline";
import { piecesOf, type PieceSet } from "../pattern/pieceSet";
import type { Result } from "../result";
import type { Mm } from "../units";
import type { AlterationsMade } from "./makeAlterations";
import type { PlanHalf } from "./plan";

type Halves<T> = Readonly<Record<Half, T>>;
type Redrawn = Result<RedrawnNeckline, NecklineFailure>;

interface Drawn {
  /** As they were, or pinched for the neckline: what it is drawn on. */
  readonly made: Halves<AlterationsMade>;
  /** null: as the pattern has it. What cannot be had on one half is drawn on neither. */
  readonly necklines: Halves<Redrawn | null>;
}

export function withNecklines({ dress }: Decided, made: Halves<AlterationsMade>): Drawn {
  const neckline = dress?.neckline;
  if (neckline === undefined || neckline.shape === "asPattern") return { made, necklines: { left: null, right: null } };
  const left = redrawNeckline(made.left.pieces, neckline);
  const right = made.right === made.left ? left : redrawNeckline(made.right.pieces, neckline);
  const failed = [left, right].find(({ ok }) => !ok);
  if (failed !== undefined) return { made, necklines: { left: failed, right: failed } };
  const pinchedLeft = pinched(made.left, left);
  return {
    made: {
      left: pinchedLeft,
      right: made.right === made.left ? pinchedLeft : pinched(made.right, right),
    },
    necklines: { left, right },
  };
}

/** With what was pinched out for the neckline; the very same where nothing was. */
function pinched(made: AlterationsMade, neckline: Redrawn): AlterationsMade {
  if (!neckline.ok || neckline.value.under === made.pieces) return made;
  const { under } = neckline.value;
  const bust = (made.girths.bust ?? 0) + 2 * (bustOf(under) - bustOf(made.pieces));
  return { ...made, pieces: under, girths: { ...made.girths, bust } };
}

/** Off the bust point's own height, turning a part about it alters the width there by a fraction of the amount. */
const bustOf = (pieces: PieceSet): Mm =>
  piecesOf(pieces).reduce((sum, piece) => sum + (levelWidth(piece, "bust") ?? 0), 0);

/** A half with its neckline. */
export const onNeckline = (half: PlanHalf, neckline: Redrawn | null): PlanHalf => ({
  ...half,
  pieces: neckline?.ok === true ? piecesOf(neckline.value.pieces) : half.pieces,
  neckline,
});
