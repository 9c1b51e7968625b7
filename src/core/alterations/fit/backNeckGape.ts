/** Back neck gape: a wedge out of the centre back seam, from the neck to nothing at the bust line. */
import { edgeSplit, edgeTangentAt } from "../../geometry/edgeCurve";
import { directionOf, distance, turnBetween } from "../../geometry/point";
import { pointOf, type Edge, type Piece } from "../../pattern/piece";
import { fail, invariant, ok } from "../../result";
import { fitHandles } from "../../surgery/fitHandles";
import { curveOf, edgeFrom } from "../../pattern/ring";
import { placeAlong, smoothStretchAt, stretchFrom, stretchLength, withoutPoints } from "../../pattern/seamStretch";
import { edgeTurned } from "../../surgery/straightThrough";
import { SAME_POINT, SHORTEST_EDGE, SMOOTH_CORNER_DEGREES } from "../../tolerance";
import { radians, radiansFromDegrees, type Mm } from "../../units";
import { pieceIn, withPiece, type PieceSet } from "../../pattern/pieceSet";
import type { FitDefinition } from "../outcome/definition";

/** The back with a whole neck: its centre runs straight from the neck to the bust line. */
function backOf({ back }: PieceSet): Piece | null {
  if (back === undefined || !back.edges.some(({ from }) => from === "sideNeck")) return null;
  return back.edges.some(({ from, to }) => from === "centreBust" && to === "centreNeck") ? back : null;
}

/** The seam may bend at the bust line by as much as still sews as a smooth line; and some of the neck must be left. */
function mostOf(back: Piece): Mm {
  const height = distance(pointOf(back, "centreNeck"), pointOf(back, "centreBust"));
  const neck = stretchLength(back, stretchFrom(back, "centreNeck"));
  return (
    2 * Math.min(height * Math.sin(radiansFromDegrees(SMOOTH_CORNER_DEGREES)), neck / 2 - SHORTEST_EDGE - SAME_POINT)
  );
}

/** Half of the wedge off one half: the centre now leans, and the neck starts square to it again. */
function takenIn(back: Piece, half: Mm): Piece {
  const stretch = stretchFrom(back, "centreNeck");
  const length = stretchLength(back, stretch);
  const first = edgeFrom(back, "centreNeck");
  const curve = curveOf(back, invariant(back.edges[first], "neck"));
  const place = placeAlong(back, stretch, half);
  const edge = invariant(back.edges[place.index], "neck");
  const [, rest] = edgeSplit(curveOf(back, edge), place.t);
  const passed = stretch.slice(0, stretch.indexOf(place.index));
  const kept = withoutPoints(
    back,
    passed.map((at) => invariant(back.edges[at], "neck").to),
  );
  const edges = back.edges.flatMap((each, at): Edge[] =>
    passed.includes(at) ? [] : [at === place.index ? { ...each, from: "centreNeck", curve: rest.curve } : each],
  );
  const cut: Piece = {
    ...kept,
    edges,
    centreOnFold: false,
    points: { ...kept.points, centreNeck: { ...invariant(back.points.centreNeck, "centreNeck"), at: rest.a } },
  };
  const index = edgeFrom(cut, "centreNeck");
  const bust = pointOf(back, "centreBust");
  const lean = turnBetween(directionOf(bust, pointOf(back, "centreNeck")), directionOf(bust, rest.a));
  // Along the curve the direction has turned already: what is wanted is the old corner at the centre.
  const turned = turnBetween(edgeTangentAt(curve, 0), edgeTangentAt(rest, 0));
  const smooth = smoothStretchAt(cut, index);
  // What runs smooth of it is as long as it was cut.
  const wanted = smooth.length === 1 && stretch.length === 1 ? length - half : stretchLength(cut, smooth);
  return fitHandles(edgeTurned(cut, index, "start", radians(lean - turned)), [index], wanted);
}

export const backNeckGape: FitDefinition = {
  range: { least: 0, most: 30 },
  isWhole: true,
  madeOn: ["back"],
  applies: (pieces) => backOf(pieces) !== null,
  apply: (pieces, amount) => {
    const back = backOf(pieces) ?? pieceIn(pieces, "back");
    const most = mostOf(back);
    if (amount > most) return fail({ code: "alteration/too-much", most });
    return ok({ pieces: withPiece(pieces, takenIn(back, amount / 2)), traces: [], values: { half: amount / 2 } });
  },
};
