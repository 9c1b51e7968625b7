/** Cutting a piece across and sliding what lies below straight down or up: lengthening and shortening at a level. */
import { edgeCrossingsAtY, edgePointAt } from "../geometry/edgeCurve";
import { piecePoint } from "../geometry/point";
import { shiftMotion } from "../geometry/rigid";
import { fail, invariant, ok, type Result } from "../result";
import { pointOf, type Piece } from "../pattern/piece";
import { SHORTEST_DART } from "../tolerance";
import type { Mm } from "../units";
import { moveBeyondCut, type OutlinePlace } from "./beyondCut";
import type { Operated } from "./cutAndMove";
import { curveOf } from "../pattern/ring";
import { endsOf, stretchAt } from "../pattern/seamStretch";

/** `least`: the most that can come out, 0 or negative. */
export interface LengthFailure {
  readonly code: "length/no-room";
  readonly least: Mm;
}

/** What must be left of the height of an edge that is cut, to be drawn smooth (our own choice). */
const LEFT_OF_EDGE: Mm = 20;

/** What must be left of the length of a dart that is cut across (our own choice: shorter, it bends its seam). */
const LEFT_OF_DART = 0.6;

/** Where a cut goes across a piece: where the outline comes down through it, and where it comes up again. */
export interface Across {
  readonly down: OutlinePlace;
  readonly up: OutlinePlace;
}

/** Where a level cuts the outline: null unless it does so twice, and not in the mouth of a dart. */
export function acrossAt(piece: Piece, y: Mm): Across | null {
  const crossed = piece.edges.flatMap((edge, index) =>
    edgeCrossingsAtY(curveOf(piece, edge), y).map((t) => ({
      index,
      t,
      isMouth: edge.mouthOf !== null,
      down: goesDown(piece, index, y),
    })),
  );
  const down = crossed.find((c) => c.down);
  const up = crossed.find((c) => !c.down);
  if (crossed.length !== 2 || down === undefined || up === undefined || crossed.some((c) => c.isMouth)) return null;
  return { down: { index: down.index, t: down.t }, up: { index: up.index, t: up.t } };
}

/**
 * Cuts the piece across, from one edge to another, and slides everything below the cut straight down by an amount. Darts
 * that it crosses keep their ends and mouths, and are redrawn between them. The two edges that were cut are redrawn in
 * one; every other edge stays as it was.
 *
 * @param across where to cut; see `acrossAt` for a level line
 * @param amount positive lengthens, negative shortens; mm
 * @returns the piece and its trace; or `length/no-room` with the most that can come out (0 or negative)
 */
export function lengthenBetween(piece: Piece, { down, up }: Across, amount: Mm): Result<Operated, LengthFailure> {
  const least = -roomOf(piece, { down, up });
  if (amount < least) return fail({ code: "length/no-room", least: Math.min(0, least) });
  return ok(
    moveBeyondCut(piece, { into: down, outOf: up, motion: shiftMotion(piecePoint(0, 0), piecePoint(0, amount)) }),
  );
}

const goesDown = (piece: Piece, index: number, y: Mm): boolean => {
  const edge = invariant(piece.edges[index], "edge");
  return pointOf(piece, edge.from).y < y && pointOf(piece, edge.to).y >= y;
};

/** How much can be folded out: what is left of the edges cut must still be sewn, and the darts crossed pressed flat. */
function roomOf(piece: Piece, { down, up }: Across): Mm {
  const height = ({ index }: OutlinePlace): Mm => {
    const { from, to } = endsOf(piece, stretchAt(piece, index));
    return Math.abs(pointOf(piece, to).y - pointOf(piece, from).y);
  };
  const y = (heightAt(piece, down) + heightAt(piece, up)) / 2;
  const darts = piece.darts.flatMap(({ apex, inner, outer }) => {
    const end = pointOf(piece, apex).y;
    const mouths = [pointOf(piece, inner).y, pointOf(piece, outer).y];
    return mouths.some((mouth) => mouth > y !== end > y)
      ? mouths.map((mouth) =>
          Math.min(Math.abs(mouth - end) * (1 - LEFT_OF_DART), Math.abs(mouth - end) - SHORTEST_DART),
        )
      : [];
  });
  return Math.min(height(down) - LEFT_OF_EDGE, height(up) - LEFT_OF_EDGE, ...darts);
}

function heightAt(piece: Piece, { index, t }: OutlinePlace): Mm {
  return edgePointAt(curveOf(piece, invariant(piece.edges[index], "edge")), t).y;
}
