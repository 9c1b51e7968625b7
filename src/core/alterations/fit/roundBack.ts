/**
 * High round back: a wedge across the shoulder blades is let in at the centre back, nothing at the armhole. The neck
 * comes up and forward; neckline and shoulder keep their lengths, so the centre back becomes a seam that bends over the blades.
 */
import { edgeCrossingsAtY } from "../../geometry/edgeCurve";
import { between, piecePoint } from "../../geometry/point";
import { fail, invariant, ok } from "../../result";
import { pointOf, type Piece } from "../../pattern/piece";
import { moveBeyondCut, type OutlinePlace } from "../../surgery/beyondCut";
import { drawnFurther, type Operated } from "../../surgery/cutAndMove";
import { curveOf, edgeTo } from "../../pattern/ring";
import { stretchFrom, stretchTo, type Stretch } from "../../pattern/seamStretch";
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

/** The height of the blades on a back. */
function bladesOf(back: Piece): Mm {
  const touch = pointOf(back, "armholeTouch").y;
  return touch - ABOVE_TURN * (pointOf(back, "underarm").y - touch);
}

function roundUp(back: Piece, amount: Mm): Operated | null {
  const ready = withCurvedCentre(back);
  const y = bladesOf(back);
  const [centre, armhole] = [
    placeAtHeight(ready, stretchTo(ready, "centreNeck"), y),
    placeAtHeight(ready, stretchFrom(ready, "shoulderTip"), y),
  ];
  if (centre === null || armhole === null) return null;
  const hinge = pointAt(ready, armhole);
  // Measured at the straight centre line, so that taking out later undoes what was let in.
  const turn = wedgeTurn(hinge, piecePoint(pointOf(ready, "centreBust").x, y), amount, true);
  const done = moveBeyondCut(ready, { into: centre, outOf: armhole, motion: turnAbout(hinge, turn) });
  return drawnFurther(done, { ...done.piece, centreOnFold: false });
}

function placeAtHeight(piece: Piece, stretch: Stretch, y: Mm): OutlinePlace | null {
  for (const index of stretch) {
    const t = edgeCrossingsAtY(curveOf(piece, invariant(piece.edges[index], "edge")), y)[0];
    if (t !== undefined) return { index, t };
  }
  return null;
}

/** The straight centre above the bust line as a curve that can bend: it leaves the bust line straight and stays square to the neck. */
function withCurvedCentre(back: Piece): Piece {
  const index = edgeTo(back, "centreNeck");
  const edge = invariant(back.edges[index], "edge");
  if (edge.curve !== null) return back;
  const [a, b] = [pointOf(back, edge.from), pointOf(back, edge.to)];
  return {
    ...back,
    edges: back.edges.with(index, { ...edge, curve: { c1: between(a, b, 1 / 3), c2: between(a, b, 2 / 3) } }),
  };
}

export const roundBack: FitDefinition = {
  range: { least: -15, most: 25 },
  madeOn: ["back"],
  applies: ({ back }) => applies(back),
  apply: (pieces, amount) => {
    const back = invariant(pieces.back, "back");
    const done = roundUp(back, amount);
    if (done === null) return fail({ code: "alteration/too-much", most: 0 });
    const values = { below: bladesOf(back) - pointOf(back, "centreNeck").y };
    return ok({ pieces: withPiece(pieces, done.piece), traces: [done.trace], values });
  },
};
