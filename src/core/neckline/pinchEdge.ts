/** The gape of a redrawn edge, and the pinch that cures it. mm. */
import type { PieceSet } from "../pattern/pieceSet";
import { withPiece } from "../pattern/pieceSet";
import { closeWedgeIntoDart, closeWedgeIntoPrincess, takesWedge } from "../surgery/closeWedge";
import { WORTH_NOTING } from "../tolerance";
import { trueAll } from "../truing/trueAll";
import type { Mm } from "../units";
import { nearestTo } from "./clearances";
import { frontLine, frontName } from "./drawEdges";
import { gapeOver, shapedAbout } from "./gapeOfEdge";

/** What the edge will gape on the half, over the bust. */
export function gapeOn(pieces: PieceSet, drawn: PieceSet): Mm {
  const name = frontName(pieces);
  const piece = name === null ? undefined : pieces[name];
  const [own, made] = [frontLine(pieces), frontLine(drawn)];
  const bust = piece?.points.bustPoint?.at;
  if (piece === undefined || own === null || made === null || bust === undefined) return 0;
  return gapeOver(bust, shapedAbout(piece, pieces), own, made);
}

/** The gape closed as a wedge to the bust point, before the edge is drawn: at the pattern's own edge it is that much wider. */
export function pinchedOn(
  pieces: PieceSet,
  drawn: PieceSet,
  gape: Mm,
): { readonly pieces: PieceSet; readonly pinched: Mm } | null {
  const name = frontName(pieces);
  const piece = name === null ? undefined : pieces[name];
  const [own, made] = [frontLine(pieces), frontLine(drawn)];
  const bust = piece?.points.bustPoint?.at;
  if (piece === undefined || own === null || made === null || bust === undefined || !takesWedge(piece, "neck"))
    return null;
  const wider = nearestTo(own, bust) / nearestTo(made, bust);
  const close = (amount: Mm) =>
    piece.points.princessBust === undefined
      ? closeWedgeIntoDart(piece, { seam: "neck", amount, point: bust })
      : closeWedgeIntoPrincess(piece, "neck", amount);
  const whole = close(gape * wider);
  const most = whole.ok ? null : whole.failure.code === "wedge/too-much" ? whole.failure.most : 0;
  const done = most === null ? whole : most / wider < WORTH_NOTING ? null : close(most);
  if (done === null || !done.ok) return null;
  const pinched = most === null ? gape : most / wider;
  return { pieces: trueAll(withPiece(pieces, done.value.piece)).pieces, pinched };
}
