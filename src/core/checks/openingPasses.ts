/**
 * The garment can be got on: what stays closed when it is open passes over the girth it must go over. Nothing here is
 * knitted: no stretch is counted.
 */
import { piecesOf } from "../pattern/pieceSet";
import { seamLength } from "../girth/seamLength";
import { widthAtHeight } from "../girth/levelWidth";
import { pointOf } from "../pattern/piece";
import type { Mm } from "../units";
import type { CheckResult } from "./check";
import type { Check } from "./context";

/** Head girth that a closed neck must pass (common practice, no source). */
const HEAD_GIRTH: Mm = 570;
/** Over the bust with the shoulders and one arm raised (common practice, no source). */
const OVERHEAD_OVER_BUST: Mm = 60;

export const openingPasses: Check = ({ pieces, closure, body }) => {
  const results: CheckResult[] = [];
  if (closure.place === "side") {
    // A strap's inner edge goes from the neck edge in front to the one behind.
    const round = piecesOf(pieces).filter((piece) => piece.edges.some(({ seam }) => seam === "neck"));
    const neck = 2 * round.reduce((sum, piece) => sum + seamLength(piece, "neck"), 0);
    results.push(
      passes(
        neck,
        HEAD_GIRTH,
        round.map(({ name }) => name),
        "neck",
      ),
    );
  }
  const front = pieces.frontBasque;
  const back = pieces.backBasque;
  // A bodice that ends at the waist opens to its end; so does a basque with an opening down to the hem.
  if (front !== undefined && back !== undefined && closure.belowWaist < pointOf(front, "centreHem").y) {
    const height = Math.max(closure.belowWaist, 0);
    const closed = 2 * (widthAtHeight(front, height) + widthAtHeight(back, height));
    const steppingIn = body.hip ?? Infinity;
    const overhead = body.bust + OVERHEAD_OVER_BUST;
    results.push(passes(closed, Math.min(steppingIn, overhead), ["frontBasque", "backBasque"], "hip"));
  }
  return results;
};

function passes(measured: Mm, needed: Mm, pieces: CheckResult["pieces"], level: "neck" | "hip"): CheckResult {
  return {
    name: "openingPasses",
    ok: measured >= needed,
    measured,
    expected: needed,
    tolerance: 0,
    unit: "mm",
    pieces,
    level,
  };
}
