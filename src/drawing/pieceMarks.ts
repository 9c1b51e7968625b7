/** One piece as marks to draw: path data in the piece frame, mm. */
import { legsOf } from "../core/dart/bowedLegs";
import { dartCapOf, type DartCap } from "../core/dart/dartCap";
import { isInOutline } from "../core/geometry/outline";
import { distance, midpoint, piecePoint, type PiecePoint } from "../core/geometry/point";
import { edgeReverse } from "../core/geometry/edgeCurve";
import { outlinePath, chainPath } from "../core/geometry/svgPath";
import { pointOf, type DartName, type Piece, type PieceName } from "../core/pattern/piece";
import { curveOf, outlineOf } from "../core/pattern/ring";
import { remember } from "../core/remember";
import { invariant } from "../core/result";
import { SAME_POINT } from "../core/tolerance";
import { boundsOf } from "./layout";

interface DartMarks {
  readonly dart: DartName;
  /** Inner mouth end, apex, outer mouth end. */
  readonly legs: string;
  /** Apex to the tip of the cap: the fold. */
  readonly fold: string;
  readonly cap: string;
  readonly apex: PiecePoint;
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
  readonly mouth: PiecePoint;
}

export interface PieceMarks {
  readonly piece: PieceName;
  /** Closed, straight across the mouths. */
  readonly outline: string;
  /** Closed, with the dart caps: the stitch line. */
  readonly stitch: string;
  /** The centre line, to be drawn as a fold where it lies on one. */
  readonly centre: string;
  readonly centreOnFold: boolean;
  readonly darts: readonly DartMarks[];
  /** Bust and hip lines. */
  readonly levels: readonly string[];
  readonly grain: { readonly from: PiecePoint; readonly to: PiecePoint };
  /** Where the piece's name goes. */
  readonly title: PiecePoint;
}

/** The marks of one piece, worked out once: a piece never changes in place, and one that is not moved stays the very same. */
export const pieceMarks = (piece: Piece): PieceMarks => marksOf({ piece });

const marksOf = remember(["piece"], ({ piece }: { readonly piece: Piece }): PieceMarks => {
  const caps = new Map(piece.darts.map(({ name }) => [name, dartCapOf(piece, name)]));
  const darts = piece.darts.map((dart): DartMarks => {
    const { halves } = invariant(caps.get(dart.name), "cap");
    const apex = pointOf(piece, dart.apex);
    const inner = pointOf(piece, dart.inner);
    const outer = pointOf(piece, dart.outer);
    const tip = invariant(halves[1][0], "cap").a;
    return {
      dart: dart.name,
      legs: dart.gathered === true ? gathersOf(inner, outer) : legsPath(piece, dart.name),
      fold: dart.gathered === true ? "" : polyline([apex, tip]),
      // Of most pieces it is drawn with the stitch line alone.
      get cap() {
        return chainPath(halves.flat());
      },
      apex,
      inner,
      outer,
      mouth: midpoint(inner, outer),
    };
  });
  const outline = outlineOf(piece);
  const box = boundsOf(piece);
  const at = (x: number, y: number): PiecePoint => piecePoint(box.x + x * box.width, box.y + y * box.height);
  const bodice = piece.points.underarm !== undefined;
  return {
    piece: piece.name,
    outline: outlinePath(outline),
    stitch: stitchPath(piece, caps),
    centre: piece.edges
      .filter((edge) => edge.seam === "centre")
      .map((edge) => chainPath([curveOf(piece, edge)]))
      .join(""),
    centreOnFold: piece.centreOnFold,
    darts,
    levels: piece.levelLines.flatMap(({ along }) =>
      "points" in along ? [polyline(along.points.map((name) => pointOf(piece, name)))] : [],
    ),
    grain: grainOf(outline, at, bodice),
    title: at(...titleAt(piece.name, bodice)),
  };
});

/** Where the name of a piece stands, as shares of its box; beside a strap, which is too narrow for it. */
function titleAt(name: PieceName, bodice: boolean): readonly [number, number] {
  switch (name) {
    case "centreFront":
      return [0.2, 0.5];
    case "sideFront":
      return [0.32, 0.55];
    case "frontBand":
    case "backBand":
      return [0.08, 0.42];
    case "strap":
      return [1.3, 0.4];
    default:
      return bodice ? [0.2, 0.36] : [0.42, 0.72];
  }
}

/** Both legs as they are sewn, from mouth end to mouth end over the dart's end. */
function legsPath(piece: Piece, name: DartName): string {
  const { inner, outer } = legsOf(piece, name);
  return chainPath([inner.curve, edgeReverse(outer.curve)]);
}

/** How gathers are marked: a wavy line along the mouth. */
const GATHER = { length: 7, depth: 2 };

function gathersOf(a: PiecePoint, b: PiecePoint): string {
  const span = Math.hypot(b.x - a.x, b.y - a.y);
  const count = Math.max(2, Math.round(span / GATHER.length));
  const square = { x: -(b.y - a.y) / span, y: (b.x - a.x) / span };
  return polyline(
    Array.from({ length: count + 1 }, (_, i): PiecePoint => {
      const off = i === 0 || i === count ? 0 : i % 2 === 0 ? GATHER.depth : -GATHER.depth;
      const share = i / count;
      return piecePoint(a.x + (b.x - a.x) * share + square.x * off, a.y + (b.y - a.y) * share + square.y * off);
    }),
  );
}

/** Shares of the box where a grain line may stand: the first from the left that stays on the piece. */
const GRAIN_X = [0.13, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7];
const GRAIN_Y = [
  [0.4, 0.85],
  [0.5, 0.8],
  [0.3, 0.6],
] as const;

/** The grain line: upright, on the piece over its whole length. */
function grainOf(outline: ReturnType<typeof outlineOf>, at: (x: number, y: number) => PiecePoint, bodice: boolean) {
  const isOn = ({ from, to }: PieceMarks["grain"]): boolean =>
    [from, midpoint(from, to), to].every((p) => isInOutline(outline, p));
  const usual = { from: at(0.13, bodice ? 0.4 : 0.3), to: at(0.13, 0.85) };
  if (isOn(usual)) return usual;
  for (const [top, bottom] of GRAIN_Y)
    for (const x of GRAIN_X) {
      const tried = { from: at(x, top), to: at(x, bottom) };
      if (isOn(tried)) return tried;
    }
  return usual;
}

/** The stitch line all round: seams, and the cap across each dart's mouth. */
function stitchPath(piece: Piece, caps: ReadonlyMap<DartName, DartCap>): string {
  const chain = piece.edges.flatMap((edge) => {
    const curve = curveOf(piece, edge);
    if (edge.mouthOf === null) return [curve];
    const cap = invariant(caps.get(edge.mouthOf), "cap").halves.flat();
    const isAlong = distance(invariant(cap[0], "cap").a, curve.a) < SAME_POINT;
    return isAlong ? cap : cap.map((one) => edgeReverse(one)).toReversed();
  });
  return `${chainPath(chain)}Z`;
}

export const polyline = (points: readonly PiecePoint[]): string => {
  const [first, ...rest] = points;
  return first === undefined ? "" : `M${written(first)}${rest.map((p) => `L${written(p)}`).join("")}`;
};

const hundredth = (value: number): number => Math.round(value * 100) / 100;
const written = ({ x, y }: PiecePoint): string => `${hundredth(x)} ${hundredth(y)}`;
