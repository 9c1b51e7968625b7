/** The lining fits what it is sewn to: its waist the finished waist less the room for the closure, its seams each other, its hip hers. */
import type { Closure } from "../decisions/pattern";
import { distance } from "../geometry/point";
import { seamLength } from "../girth/seamLength";
import { FREE_END } from "../lining/leaveFree";
import type { LiningDraft } from "../lining/liningDraft";
import { isBasque, isFrontPiece } from "../pattern/pieceGroups";
import { pointOf, type PieceName, type SeamName } from "../pattern/piece";
import { pieceIn, piecesOf, type PieceSet } from "../pattern/pieceSet";
import { seamPairsOf } from "../pattern/sewnTogether";
import type { SewingAsked } from "../sewing/orderOfSewing";
import { GIRTH_AGREEMENT, SEWN_AGREEMENT, FREE_ENDS_ALIKE } from "../tolerance";
import type { Mm } from "../units";
import type { DressCheck } from "./dressPlan";

export function checkLining({
  lining,
  waist,
  closure,
}: Pick<SewingAsked, "lining" | "waist" | "closure">): readonly DressCheck[] {
  if (lining === null) return [];
  const isAlike = lining.bodice[0] === lining.bodice[1] && lining.skirt[0] === lining.skirt[1];
  const halves = isAlike && waist.halves[0] === waist.halves[1] ? ([0] as const) : ([0, 1] as const);
  const walks = halves.flatMap((at) => {
    // The left side alone opens, or the centre back of both halves.
    const isOpen = (side: "front" | "back"): boolean => (closure.place === "side" ? at === 0 : side === "back");
    return [lining.bodice[at], lining.skirt[at]]
      .filter((pieces) => piecesOf(pieces).length > 0)
      .flatMap((pieces) => [
        ...(["front", "back"] as const).map((side) =>
          near(
            "liningWaistWalks",
            waistOf(pieces, side),
            waist.halves[at][side] - (isOpen(side) ? lining.beside : 0),
            SEWN_AGREEMENT,
          ),
        ),
        ...sides(pieces),
      ]);
  });
  return [...walks, ...overHip(lining, closure)];
}

function near(name: DressCheck["name"], measured: Mm, expected: Mm, tolerance: Mm): DressCheck {
  return { name, ok: Math.abs(measured - expected) <= tolerance, measured, expected, tolerance };
}

const waistOf = (pieces: PieceSet, side: "front" | "back"): Mm =>
  piecesOf(pieces)
    .filter(({ name }) => !isBasque(name) && isFrontPiece(name) === (side === "front"))
    .reduce((sum, piece) => sum + seamLength(piece, "waist"), 0);

/** Every seam of a lining that is sewn to another: sides, princess and under-bust seams, shoulders. */
const sides = (pieces: PieceSet): readonly DressCheck[] =>
  seamPairsOf(pieces).map(({ seam, first, second, ease }) =>
    near(
      "liningSidesWalk",
      lengthOf(pieces, first, seam),
      lengthOf(pieces, second, seam) + ease,
      isPartlyFree(pieces, [...first, ...second], seam) ? FREE_ENDS_ALIKE : SEWN_AGREEMENT,
    ),
  );

/** Whether a stretch of a seam is left free of the zip. */
const isPartlyFree = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): boolean =>
  names.some((name) => pieceIn(pieces, name).edges.some((edge) => edge.seam === seam && edge.from === FREE_END));

const lengthOf = (pieces: PieceSet, names: readonly PieceName[], seam: SeamName): Mm =>
  names.reduce((sum, name) => sum + seamLength(pieceIn(pieces, name), seam), 0);

/** On its pieces, at the hip line; beside a zip in the side that goes further down, its ends are still apart there. */
function overHip({ skirt, skirtFigures }: LiningDraft, { place }: Closure): readonly DressCheck[] {
  if (skirtFigures === null) return [];
  const measured = skirt
    .flatMap((half) => piecesOf(half))
    .flatMap((piece) =>
      piece.levelLines.flatMap(({ level, along }) =>
        level === "hip" && "points" in along ? [{ piece, points: along.points }] : [],
      ),
    )
    .reduce((sum, { piece, points }) => {
      const places = points.map((name) => pointOf(piece, name));
      return sum + places.slice(1).reduce((wide, at, index) => wide + distance(at, places[index] ?? at), 0);
    }, 0);
  const { hipLeast, hipDepth, free } = skirtFigures;
  const apart = free === null || place !== "side" ? 0 : 2 * free.beside * Math.max(0, 1 - hipDepth / free.below);
  const expected = hipLeast - apart;
  return [
    {
      name: "liningOverHip",
      ok: measured >= expected - GIRTH_AGREEMENT,
      measured,
      expected,
      tolerance: GIRTH_AGREEMENT,
    },
  ];
}
