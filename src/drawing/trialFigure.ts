/**
 * The toile as it is seen on the body, from the front and from behind, both halves: the plan's own pieces laid at the
 * centre line, basques under them, darts and seams shown. For paper, to draw pins and folds on.
 */
import type { Half } from "../core/decisions/alteration";
import { edgePointAt } from "../core/geometry/edgeCurve";
import { distance, midpoint, type PiecePoint } from "../core/geometry/point";
import { isBasque, isFrontPiece, isOnBody } from "../core/pattern/pieceGroups";
import type { Piece } from "../core/pattern/piece";
import { outlineOf } from "../core/pattern/ring";
import type { Plan } from "../core/plan/plan";
import type { Mm } from "../core/units";
import { boundsOf, type Box } from "./layout";
import { pieceMarks, polyline } from "./pieceMarks";

/** One piece of one half: path data in its own frame, mm. */
interface TrialPiece {
  readonly piece: Piece["name"];
  /** Closed, straight across the mouths. */
  readonly outline: string;
  readonly darts: string;
  readonly levels: string;
  /** Where a strap is sewn on: its two edges on the way over the shoulder; "" where there is none. */
  readonly strap: string;
  readonly bustPoint: PiecePoint | null;
  /** How far it is moved down, and away from the centre, to lie where it is sewn and over no other, mm. */
  readonly down: Mm;
  readonly across: Mm;
}

export interface TrialHalf {
  /** The wearer's own. */
  readonly half: Half;
  /** Drawn at the left of the centre line: its x runs the other way. */
  readonly mirrored: boolean;
  readonly pieces: readonly TrialPiece[];
}

export interface TrialView {
  readonly side: "front" | "back";
  /** Round both halves, the centre line at x = 0; mm. */
  readonly box: Box;
  /** As they stand from left to right on the paper. */
  readonly halves: readonly [TrialHalf, TrialHalf];
}

/** Between a bodice and what hangs under it, mm: the waist seam is seen as two lines that do not cross. */
const APART: Mm = 5;

/** The two views of a plan: whoever looks at the front has the wearer's right half at the left, at the back her left one. */
export function trialFigure(plan: Plan): readonly [TrialView, TrialView] {
  const pieces: Readonly<Record<Half, readonly Piece[]>> = {
    left: plan.left.pieces,
    right: plan.right.pieces,
  };
  const view = (side: TrialView["side"], halves: readonly [Half, Half]): TrialView => {
    const shown = (half: Half): readonly Piece[] =>
      pieces[half].filter(({ name }) => isOnBody(name) && isFrontPiece(name) === (side === "front"));
    const [first, second] = halves;
    return {
      side,
      box: boxRound([...laid(shown(first), plan), ...laid(shown(second), plan)]),
      halves: [
        { half: first, mirrored: true, pieces: laid(shown(first), plan).map(({ drawn }) => drawn) },
        { half: second, mirrored: false, pieces: laid(shown(second), plan).map(({ drawn }) => drawn) },
      ],
    };
  };
  return [view("front", ["right", "left"]), view("back", ["left", "right"])];
}

export interface Laid {
  readonly drawn: TrialPiece;
  readonly box: Box;
}

/** The pieces of one half that are seen from one side, each where it is drawn; mirrored if need be by who draws them. */
export function laid(pieces: readonly Piece[], plan: Plan): readonly Laid[] {
  const uppers = pieces.filter(({ name }) => !isBasque(name)).map(boundsOf);
  const foot = Math.max(0, ...uppers.map(({ y, height }) => y + height));
  return pieces.map((piece): Laid => {
    const marks = pieceMarks(piece);
    const strap = strapOf(piece);
    const bounds = boundsOf(piece);
    const down = isBasque(piece.name) ? foot + APART - bounds.y : 0;
    const inside = piece.name === "sideFront" ? pieces.find(({ name }) => name === "centreFront") : undefined;
    const across = inside === undefined ? 0 : asideOf(inside, piece);
    const top = Math.min(bounds.y, ...strap.map(({ y }) => y)) + down;
    return {
      drawn: {
        piece: piece.name,
        outline: marks.outline,
        darts: marks.darts.map(({ legs }) => legs).join(""),
        levels: marks.levels.join(""),
        strap: strap.length === 0 ? "" : polyline(strap.slice(0, 2)) + polyline(strap.slice(2)),
        bustPoint: piece.name === plan.bustPiece ? (plan.bustPoint.own ?? plan.bustPoint.printed) : null,
        down,
        across,
      },
      box: { x: bounds.x + across, y: top, width: bounds.width, height: bounds.y + bounds.height + down - top },
    };
  });
}

/** How finely two pieces beside one another are looked along, mm. */
const LEVEL: Mm = 4;

/** The furthest x of a piece on each level, one way or the other. */
function reachOf(of: Piece, most: (a: Mm, b: Mm) => Mm): ReadonlyMap<number, Mm> {
  const reach = new Map<number, Mm>();
  const points = outlineOf(of).flatMap((edge) => Array.from({ length: 80 }, (_, i) => edgePointAt(edge, i / 80)));
  for (const { x, y } of points) {
    const level = Math.round(y / LEVEL);
    reach.set(level, most(reach.get(level) ?? x, x));
  }
  return reach;
}

/** How far a piece goes aside so that at no level it comes nearer to the one inside it than two seam lines are seen apart. */
function asideOf(inside: Piece, piece: Piece): Mm {
  const outer = reachOf(inside, Math.max);
  const inner = reachOf(piece, Math.min);
  const overlaps = [...inner].map(([level, x]) => (outer.get(level) ?? -Infinity) - x);
  return Math.max(0, Math.max(...overlaps) + APART);
}

/** From each end of the strap's seam towards where it goes over the shoulder, as wide there as where it is sewn on. */
function strapOf({ points }: Piece): readonly PiecePoint[] {
  const [inner, outer, aim] = [points.strapInner?.at, points.strapOuter?.at, points.strapAim?.at];
  if (inner === undefined || outer === undefined || aim === undefined) return [];
  const middle = midpoint(inner, outer);
  const reach = distance(middle, aim);
  if (reach === 0) return [];
  const along = (from: PiecePoint): PiecePoint => ({
    ...from,
    x: from.x + aim.x - middle.x,
    y: from.y + aim.y - middle.y,
  });
  return [inner, along(inner), outer, along(outer)];
}

function boxRound(all: readonly Laid[]): Box {
  const side = Math.max(1, ...all.map(({ box }) => box.x + box.width));
  const top = Math.min(...all.map(({ box }) => box.y));
  const bottom = Math.max(...all.map(({ box }) => box.y + box.height));
  return { x: -side, y: top, width: 2 * side, height: bottom - top };
}
