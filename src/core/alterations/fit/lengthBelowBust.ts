/**
 * Bodice length between bust and waist. A bodice is cut at one height above the waist all the way round, clear of the
 * darts that open on the side seam.
 */
import { pointOf, type Piece } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import type { SurgeryTrace } from "../../surgery/cutAndMove";
import { lengthenAll, type Line } from "./lengthenAll";
import { acrossAt } from "../../surgery/lengthenAcross";
import type { Mm } from "../../units";
import type { PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";
import { walkedBy } from "./whatChanged";

/** Share of the back's way from waist to bust line at which the cut is wanted (our own choice). */
const WANTED = 0.4;

const bodicePieces = ({ front, centreFront, sideFront, back }: PieceSet): Piece[] =>
  [front, centreFront, sideFront, back].filter((piece) => piece !== undefined);

/** The height of the waist that the cut is measured from: at the centre, and at the side as much higher up as on the back. */
function waistOf(piece: Piece, back: Piece): Mm {
  const centre = piece.points.centreWaist;
  if (centre !== undefined) return centre.at.y;
  return pointOf(piece, "sideWaist").y + pointOf(back, "centreWaist").y - pointOf(back, "sideWaist").y;
}

/** How far above the waist there is no mouth of a dart on any side seam. */
function clearAbove(piece: Piece, back: Piece): Mm {
  const mouths = piece.darts.filter(({ seam }) => seam !== "waist").flatMap(({ inner, outer }) => [inner, outer]);
  return Math.min(...mouths.map((name) => waistOf(piece, back) - pointOf(piece, name).y).filter((above) => above > 0));
}

function bodiceLine(pieces: PieceSet): Line {
  const { back } = pieces;
  if (back === undefined || back.points.centreWaist === undefined) return [];
  const all = bodicePieces(pieces);
  const wanted = WANTED * (pointOf(back, "centreWaist").y - pointOf(back, "centreBust").y);
  const height = Math.min(wanted, ...all.map((piece) => clearAbove(piece, back) / 2));
  const line = all.map((piece) => [piece.name, acrossAt(piece, waistOf(piece, back) - height)] as const);
  return line.flatMap(([name, across]) => (across === null ? [] : [[name, across] as const]));
}

/** How far the cut on the back lies above the waist at the centre. */
function heightOf({ back }: PieceSet, traces: readonly SurgeryTrace[]): Mm {
  const cut = invariant(traces.find(({ piece }) => piece === "back")?.cuts[0]?.[0], "cut on the back");
  return pointOf(invariant(back, "back"), "centreWaist").y - cut.y;
}

/** A bodice down to the waist: above a midriff band it is the band's depth that is altered. */
const hasBodice = (pieces: PieceSet): boolean =>
  pieces.frontBand === undefined && bodicePieces(pieces).length > 1 && pieces.back?.points.centreWaist !== undefined;

export const lengthBelowBust: FitDefinition = {
  range: { least: -60, most: 80 },
  madeOn: ["front", "centreFront", "sideFront", "back"],
  applies: hasBodice,
  apply: (pieces, amount) => {
    const line = bodiceLine(pieces);
    if (line.length < bodicePieces(pieces).length) return fail({ code: "alteration/too-much", most: 0 });
    const done = lengthenAll(pieces, line, amount);
    if (!done.ok) return done;
    const { pieces: after, traces } = done.value;
    const walked = Math.abs(walkedBy(pieces, after, amount));
    return ok({ ...done.value, values: { height: heightOf(pieces, traces), walked } });
  },
};
