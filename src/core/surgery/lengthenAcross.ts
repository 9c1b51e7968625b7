/** Cutting a piece straight across and sliding what lies below: lengthening and shortening at a level. */
import { edgeCrossingsAtY } from "../geometry/edgeCurve";
import { piecePoint, shift, type PiecePoint } from "../geometry/point";
import { shiftMotion } from "../geometry/rigid";
import { fail, must, ok, type Result } from "../result";
import { pointNames, pointOf, type Edge, type Piece, type PointName } from "../pattern/piece";
import { SHORTEST_EDGE } from "../tolerance";
import type { Mm } from "../units";
import { cutAndMove, partAt, type Operated } from "./cutAndMove";
import { curveOf, insertPoint } from "./ring";

/** The corners at the cut: on the edge that goes down through it, and on the one that comes up. */
const DOWN_CUT = ["cut1", "cut2"] as const;
const UP_CUT = ["cut3", "cut4"] as const;

export type LengthFailure = { readonly code: "length/no-room"; readonly least: Mm };

/**
 * Cuts the piece straight across at a height and slides everything below it by an amount.
 *
 * The cut must cross the outline twice, and no dart's mouth; darts that it crosses lengthwise keep their ends and mouths
 * and are redrawn between them. The two cut edges are redrawn straight on: they grow by the amount along their slope.
 *
 * @param y      height of the cut in the piece frame, mm
 * @param amount positive lengthens, negative shortens; mm
 * @returns the piece and its trace; or the least amount (most negative) that leaves its edges long enough
 */
export function lengthenAcross(piece: Piece, y: Mm, amount: Mm): Result<Operated, LengthFailure> {
  const crossed = piece.edges.flatMap((edge, index) =>
    edge.mouthOf === null ? edgeCrossingsAtY(curveOf(piece, edge), y).map((t) => ({ index, t, down: goesDown(piece, edge, y) })) : [],
  );
  const down = crossed.find((c) => c.down);
  const up = crossed.find((c) => !c.down);
  if (crossed.length !== 2 || down === undefined || up === undefined) return fail({ code: "length/no-room", least: 0 });
  const room = Math.min(...[down, up].map(({ index }) => roomBelow(piece, must(piece.edges[index], "edge"), y)));
  if (amount < -(room - SHORTEST_EDGE)) return fail({ code: "length/no-room", least: -(room - SHORTEST_EDGE) });

  // The later edge first, so that the index of the earlier one still holds.
  const [late, early] = down.index > up.index ? [down, up] : [up, down];
  const nameOf = (c: typeof down): typeof DOWN_CUT | typeof UP_CUT => (c === down ? DOWN_CUT : UP_CUT);
  const once = insertPoint(piece, late.index, late.t, nameOf(late)[0], "bust");
  const twice = insertPoint(once, early.index, early.t, nameOf(early)[0], "bust");
  const parted = partAt(partAt(twice, ...DOWN_CUT, null), ...UP_CUT, null);
  const right = pointOf(parted, DOWN_CUT[0]);
  const left = pointOf(parted, UP_CUT[1]);
  const inner = pointNames(parted).filter((name) => !isCorner(parted, name) && pointOf(parted, name).y > y);
  const moved = cutAndMove(
    parted,
    [
      {
        from: DOWN_CUT[1],
        to: UP_CUT[0],
        inside: [],
        carries: inner,
        motion: shiftMotion(piecePoint(0, 0), piecePoint(0, amount)),
      },
    ],
    { cuts: [[left, right]], hinges: [] },
  );
  const healed = heal(heal(moved.piece, piece, ...DOWN_CUT), piece, ...UP_CUT);
  return ok({ piece: healed, trace: moved.trace });
}

const isCorner = (piece: Piece, name: PointName): boolean => piece.edges.some((edge) => edge.from === name);

const goesDown = (piece: Piece, edge: Edge, y: Mm): boolean => pointOf(piece, edge.from).y < y && pointOf(piece, edge.to).y >= y;

const roomBelow = (piece: Piece, edge: Edge, y: Mm): Mm => Math.max(pointOf(piece, edge.from).y, pointOf(piece, edge.to).y) - y;

/** The three edges at a cut made one again: each control goes with its end, so the curve runs straight on. */
function heal(cut: Piece, before: Piece, a: PointName, b: PointName): Piece {
  const index = cut.edges.findIndex((edge) => edge.to === a);
  const start = must(cut.edges[index], "edge into the cut");
  const end = must(cut.edges[index + 2], "edge out of the cut");
  const original = must(
    before.edges.find((edge) => edge.from === start.from),
    "edge",
  );
  const carried = (control: PiecePoint, name: PointName): PiecePoint =>
    shift(control, pointOf(cut, name).x - pointOf(before, name).x, pointOf(cut, name).y - pointOf(before, name).y);
  const { curve } = original;
  const healed: Edge = {
    ...original,
    curve: curve === null ? null : { c1: carried(curve.c1, start.from), c2: carried(curve.c2, end.to) },
  };
  const edges = [...cut.edges];
  edges.splice(index, 3, healed);
  const { [a]: _a, [b]: _b, ...points } = cut.points;
  return { ...cut, edges, points };
}
