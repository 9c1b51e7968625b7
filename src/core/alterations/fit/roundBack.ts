/**
 * High round back: a wedge across the shoulder blades is let in at the centre back, nothing at the armhole. The neck
 * comes up and forward; neckline and shoulder keep their lengths, so the centre back becomes a seam that bends over the blades.
 */
import { edgeCrossingsAtY } from "../../geometry/edgeCurve";
import { between, piecePoint } from "../../geometry/point";
import { fail, must, ok } from "../../result";
import { pointOf, type Piece } from "../../pattern/piece";
import { moveBeyondCut, type OutlinePlace } from "../../surgery/beyondCut";
import type { Operated } from "../../surgery/cutAndMove";
import { curveOf, edgeFrom, edgeTo } from "../../pattern/ring";
import { pointAt, turnAbout, wedgeTurn } from "../../surgery/wedge";
import type { Mm } from "../../units";
import { withPiece } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";

/** How far above the fullest turn of the armhole the blades lie, as a share of its depth below (common practice, no source). */
const ABOVE_TURN = 0.2;

const applies = (back: Piece | undefined): back is Piece =>
  back?.points.shoulderTip !== undefined &&
  back.points.armholeTouch !== undefined &&
  back.points.centreBust !== undefined;

function roundUp(back: Piece, amount: Mm): Operated | null {
  const ready = withCurvedCentre(back);
  const touch = pointOf(ready, "armholeTouch").y;
  const y = touch - ABOVE_TURN * (pointOf(ready, "underarm").y - touch);
  const [centre, armhole] = [
    placeAt(ready, edgeTo(ready, "centreNeck"), y),
    placeAt(ready, edgeFrom(ready, "shoulderTip"), y),
  ];
  if (centre === null || armhole === null) return null;
  const hinge = pointAt(ready, armhole);
  // Measured at the straight centre line, so that taking out later undoes what was let in.
  const turn = wedgeTurn(hinge, piecePoint(pointOf(ready, "centreBust").x, y), amount, true);
  const done = moveBeyondCut(ready, { into: centre, outOf: armhole, motion: turnAbout(hinge, turn) });
  return { ...done, piece: { ...done.piece, centreOnFold: false } };
}

function placeAt(piece: Piece, index: number, y: Mm): OutlinePlace | null {
  const t = edgeCrossingsAtY(curveOf(piece, must(piece.edges[index], "edge")), y)[0];
  return t === undefined ? null : { index, t };
}

/** The straight centre above the bust line as a curve that can bend: it leaves the bust line straight and stays square to the neck. */
function withCurvedCentre(back: Piece): Piece {
  const index = edgeTo(back, "centreNeck");
  const edge = must(back.edges[index], "edge");
  if (edge.curve !== null) return back;
  const [a, b] = [pointOf(back, edge.from), pointOf(back, edge.to)];
  return {
    ...back,
    edges: back.edges.with(index, { ...edge, curve: { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) } }),
  };
}

const LINE = "Draw a line from the centre back straight across at the shoulder blades, to the armhole.";
const CENTRE =
  "Draw the centre back in one smooth curve from the bust line to the neck, square to the neckline. The centre back is now a shaped seam: cut two, with an allowance.";
const KEEP = "Neckline and shoulder keep their lengths. Draw the armhole smooth over the point that was turned about.";

export const roundBack: FitDefinition = {
  phase: "length",
  words: {
    name: "High round back",
    seen: "The back pulls up from the waist, the neckline stands off or drags down behind, and folds run from the blades to the armholes.",
    amount: "Let in at the centre back",
    hint: "less than 0 takes out, for a very straight back",
    more: {
      title: "Let {amount} in across the shoulder blades",
      steps: {
        back: [
          LINE,
          "Cut along it from the centre back to the armhole, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there. Turn the upper part about that point until the gap at the centre back is {amount}, and stick paper behind it.",
          CENTRE,
          KEEP,
        ],
      },
    },
    less: {
      title: "Take {amount} out across the shoulder blades",
      steps: {
        back: [
          LINE,
          "Cut along it from the centre back to the armhole, to within a thread of the seam line; snip the allowance to it, so that the paper hinges there. Turn the upper part about that point until it laps {amount} over the lower one at the centre back; tape it down.",
          CENTRE,
          KEEP,
        ],
      },
    },
    caution:
      "If you pin the fold on the body first, have somebody help, and take the pins out before the garment comes off.",
  },
  range: { least: -15, most: 25 },
  applies: ({ back }) => applies(back),
  apply: (pieces, amount) => {
    const done = roundUp(must(pieces.back, "back"), amount);
    if (done === null) return fail({ code: "slip/too-much", most: 0 });
    return ok({ pieces: withPiece(pieces, done.piece), traces: [done.trace], values: {} });
  },
};
