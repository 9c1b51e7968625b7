/**
 * Bodice length between bust and waist. A bodice is cut at one height above the waist all the way round, clear of the
 * darts that open on the side seam; where there is a midriff band, the band is cut.
 */
import { pointOf, type Piece, type PieceName } from "../../pattern/piece";
import { fail } from "../../result";
import { lengthenAll, type Line } from "../../surgery/lengthenAll";
import { acrossAt } from "../../surgery/lengthenAcross";
import type { Mm } from "../../units";
import type { PieceSet } from "../pieceSet";
import { bandLine } from "./bandLine";
import type { FitDefinition } from "./definition";

/** Share of the back's way from waist to bust line at which the cut is wanted (our own choice). */
const LINE = 0.4;

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
  const wanted = LINE * (pointOf(back, "centreWaist").y - pointOf(back, "centreBust").y);
  const height = Math.min(wanted, ...all.map((piece) => clearAbove(piece, back) / 2));
  const line = all.map((piece) => [piece.name, acrossAt(piece, waistOf(piece, back) - height)] as const);
  return line.flatMap(([name, across]) => (across === null ? [] : [[name, across] as const]));
}

const hasBodice = (pieces: PieceSet): boolean => bodicePieces(pieces).length > 1 && pieces.back?.points.centreWaist !== undefined;

const bodiceSteps = (first: string, dart: string, move: string, last: string): Partial<Record<PieceName, readonly string[]>> => {
  const line = "Draw a line straight across, square to the grain, between the bust line and the waist and below any dart in the side seam.";
  const front = [line, move, dart, last];
  const back = ["Draw a line straight across the back, as far above the waist as on the front.", move, dart, last];
  const centre = [line, move, "Draw the princess seam again in one smooth curve through the change.", first];
  const side = ["Draw the line across the side front at the same height as on the centre front, so that the two meet on the princess seam.", move, "Draw the princess seam and the side seam again in smooth curves.", last];
  return { front, centreFront: centre, sideFront: side, back };
};

const bandSteps = (move: string): readonly string[] => [
  "Draw a line along the middle of the band, from half-way down the centre to half-way down the side seam.",
  move,
  "Draw the centre straight and the side seam smooth through the change.",
];

const OPEN = "Cut along it. Slide the lower part straight down until the gap is {amount} all the way, and stick paper behind it.";
const FOLD = "Fold {amount} out along it: the lower part slides straight up, by the same all the way.";
const LEGS = "Draw the legs of the waist dart again from its end to the ends of its mouth; fold it shut and true the waist seam over it.";
const SIDE = "Draw the side seam smooth, and walk front and back side seams against each other.";
const CENTRE = "Draw the centre line straight.";

export const lengthBelowBust: FitDefinition = {
  phase: "length",
  words: {
    name: "Bodice length below the bust",
    seen: "The waist seam sits above the waist, or folds lie across above the waist because the bodice is too long.",
    amount: "Lengthen by",
    hint: "less than 0 shortens",
    more: {
      title: "Lengthen the bodice below the bust by {amount}",
      steps: { ...bodiceSteps(CENTRE, LEGS, OPEN, SIDE), frontBand: bandSteps(OPEN), backBand: bandSteps(OPEN) },
    },
    less: {
      title: "Shorten the bodice below the bust by {amount}",
      steps: { ...bodiceSteps(CENTRE, LEGS, FOLD, SIDE), frontBand: bandSteps(FOLD), backBand: bandSteps(FOLD) },
    },
  },
  range: { least: -60, most: 80 },
  applies: (pieces) => hasBodice(pieces) || bandLine(pieces).length > 0,
  apply: (pieces, amount) => {
    const line = hasBodice(pieces) ? bodiceLine(pieces) : bandLine(pieces);
    const wanted = hasBodice(pieces) ? bodicePieces(pieces).length : 2;
    if (line.length < wanted) return fail({ code: "slip/too-much", most: 0 });
    return lengthenAll(pieces, line, amount);
  },
};

