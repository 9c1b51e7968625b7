/** The legs of each dart lie within the piece and cross no other dart's: one that does cannot be folded. */
import { edgeIntersections, type EdgeCurve } from "../geometry/edgeCurve";
import { isInOutline } from "../geometry/outline";
import { distance, type PiecePoint } from "../geometry/point";
import { pointOf, type Dart, type Piece } from "../pattern/piece";
import { piecesOf } from "../pattern/pieceSet";
import { outlineOf } from "../pattern/ring";
import { remember } from "../remember";
import { SAME_LINE } from "../tolerance";
import type { CheckResult } from "./check";
import type { Check } from "./context";

type Leg = EdgeCurve<"piece">;

/** From the mouth to the end; a bow of some millimetres is left out. */
const legsOf = (piece: Piece, { inner, outer, apex }: Dart): readonly Leg[] =>
  [inner, outer].map((mouth) => ({ a: pointOf(piece, mouth), b: pointOf(piece, apex), curve: null }));

/** Whether they meet anywhere but where both end, or one begins. */
const cross = (leg: Leg, line: Leg, shared: readonly PiecePoint[]): boolean =>
  edgeIntersections(leg, line).some(({ point }) => shared.every((end) => distance(end, point) > SAME_LINE));

function faultsOfDart(piece: Piece, dart: Dart, others: readonly Dart[]): number {
  const outline = outlineOf(piece);
  const legs = legsOf(piece, dart);
  const isOutside = !isInOutline(outline, pointOf(piece, dart.apex));
  const overSeams = legs.filter((leg) => outline.some((edge) => cross(leg, edge, [leg.a])));
  const overDarts = others.filter((other) => {
    const theirs = legsOf(piece, other);
    return legs.some((leg) => theirs.some((line) => cross(leg, line, [leg.a, line.a, leg.b, line.b])));
  });
  return (isOutside ? 1 : 0) + overSeams.length + overDarts.length;
}

/** Most pieces are no others than in the plan before. */
const dartsOf = remember(["piece"], ({ piece }: { readonly piece: Piece }) => {
  // Gathers have no legs.
  const folded = piece.darts.filter(({ gathered }) => gathered !== true);
  return folded.map((dart) => ({
    dart: dart.name,
    faults: faultsOfDart(
      piece,
      dart,
      folded.filter((other) => other !== dart),
    ),
  }));
});

export const dartsClear: Check = ({ pieces }) =>
  piecesOf(pieces).flatMap((piece) =>
    dartsOf({ piece }).map(({ dart, faults }): CheckResult => ({
      name: "dartsClear",
      ok: faults === 0,
      measured: faults,
      expected: 0,
      tolerance: 0,
      unit: "faults",
      pieces: [piece.name],
      dart,
    })),
  );
