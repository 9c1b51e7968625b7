/** The upper edge redrawn on the plan's own pieces. mm. */
import type { Neckline } from "../decisions/dress";
import type { PieceSet } from "../pattern/pieceSet";
import { remember } from "../remember";
import { fail, ok, type Result } from "../result";
import { WORTH_NOTING } from "../tolerance";
import type { Mm } from "../units";
import { drawnOn, lengthOf, runsOn, type Asked } from "./drawEdges";
import { whyNot } from "./edgeLimits";
import type { NecklineFailure } from "./necklineFailure";
import { gapeOn, pinchedOn } from "./pinchEdge";

/** How an edge will stand off this body, and what cures it. */
export interface NecklineGape {
  /** mm of the edge of one half that has no body to lie on. */
  readonly gape: Mm;
  /** Pinched out of it, where that was chosen. */
  readonly pinched: Mm;
}

export interface RedrawnNeckline {
  readonly pieces: PieceSet;
  /** What the edge was drawn on: the pieces as they were given, pinched where that was chosen. */
  readonly under: PieceSet;
  /** Finished edge of this half before and after. */
  readonly before: Mm;
  readonly after: Mm;
  readonly front: NecklineGape;
  readonly back: NecklineGape;
}

const NO_GAPE: NecklineGape = { gape: 0, pinched: 0 };

const redrawn = remember(["pieces", "neckline"], ({ pieces, neckline }: Inputs) => redraw(pieces, neckline));

interface Inputs {
  readonly pieces: PieceSet;
  readonly neckline: Neckline;
}

/**
 * The edge redrawn, and pinched where that was chosen.
 *
 * @param pieces the final pieces of one half
 * @returns pieces whose shoulders still walk, whose edge runs straight on over the shoulder seam, and square to the centre where
 *          the shape is round or square; the very same pieces where nothing is asked
 */
export const redrawNeckline = (pieces: PieceSet, neckline: Neckline): Result<RedrawnNeckline, NecklineFailure> =>
  redrawn({ pieces, neckline });

function redraw(pieces: PieceSet, neckline: Neckline): Result<RedrawnNeckline, NecklineFailure> {
  const runs = runsOn(pieces);
  const { shape, deeper = 0, wider = 0, backDeeper = 0, pinched = false } = neckline;
  if (shape === "asPattern") {
    const before = runs === null ? 0 : lengthOf(pieces);
    return ok({ pieces, under: pieces, before, after: before, front: NO_GAPE, back: NO_GAPE });
  }
  if (runs === null) return fail({ code: "neckline/not-on-style" });
  const asked: Asked = { shape, deeper, wider, backDeeper };
  const done = drawnOn(pieces, asked);
  if (done === null) return fail(whyNot(pieces, asked));
  const gape = gapeOn(pieces, done);
  const before = lengthOf(pieces);
  const plain = {
    pieces: done,
    under: pieces,
    before,
    after: lengthOf(done),
    front: { gape, pinched: 0 },
    back: NO_GAPE,
  };
  if (!pinched || gape < WORTH_NOTING) return ok(plain);
  const closed = pinchedOn(pieces, done, gape);
  const again = closed === null ? null : drawnOn(closed.pieces, asked);
  if (closed === null || again === null) return ok(plain);
  return ok({
    ...plain,
    pieces: again,
    under: closed.pieces,
    after: lengthOf(again),
    front: { gape, pinched: closed.pinched },
  });
}
