/** A vent in the centre back seam: an extension cut on to the back below it, its upper edge aslant so that it hangs. */
import { piecePoint } from "../geometry/point";
import { straight, type Points } from "../pattern/namedEdges";
import type { Edge, Piece } from "../pattern/piece";
import { pointOf } from "../pattern/piece";
import type { Mm } from "../units";
import { VENT_SLANT, VENT_WIDTH } from "./skirtPractice";

/** @param above how high above the hem it starts; below the hip and above nothing else in the seam */
export function withVent(back: Piece, above: Mm): Piece {
  const { x, y } = pointOf(back, "centreHem");
  const top = y - above;
  const points: Points = {
    ...back.points,
    ventTop: { at: piecePoint(x, top), level: "hip" },
    ventOut: { at: piecePoint(x - VENT_WIDTH, top + VENT_SLANT), level: "hip" },
    ventHem: { at: piecePoint(x - VENT_WIDTH, y), level: "hip" },
  };
  const edges = back.edges.flatMap((edge): Edge[] => {
    if (edge.from !== "centreHem") return [edge];
    return [
      straight("centreHem", "ventHem", "hem"),
      straight("ventHem", "ventOut", "edge"),
      straight("ventOut", "ventTop", "edge"),
      straight("ventTop", edge.to, "centre"),
    ];
  });
  return { ...back, points, edges };
}
