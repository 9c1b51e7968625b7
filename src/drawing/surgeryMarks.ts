/** What one alteration did to a piece as marks to draw, before, after and on the way: path data in the piece frame, mm. */
import type { AlterationTrace } from "../core/alterations/outcome/trace";
import { pointLike, type PiecePoint } from "../core/geometry/point";
import type { Rigid } from "../core/geometry/rigid";
import { outlinePath } from "../core/geometry/svgPath";
import { pointOf, type Edge, type Piece, type PieceName } from "../core/pattern/piece";
import { piecesOf } from "../core/pattern/pieceSet";
import type { SurgeryTrace } from "../core/surgery/cutAndMove";
import { partway } from "../core/surgery/partway";
import { outlineOf } from "../core/pattern/ring";
import { polyline } from "./pieceMarks";

/** What lies still or moves as one in an operation: its closed outline before. */
interface RegionMarks {
  readonly outline: string;
  /** null: it stays. */
  readonly motion: Rigid<"piece"> | null;
}

/** One operation. Several are made one after the other, each on what the one before left. */
export interface StageMarks {
  readonly cuts: readonly string[];
  readonly hinges: readonly PiecePoint[];
  readonly regions: readonly RegionMarks[];
}

export interface AlterationMarks {
  readonly piece: PieceName;
  /** Closed outlines. */
  readonly before: string;
  readonly after: string;
  /** Legs of the darts: mouth end, apex, mouth end. */
  readonly legsBefore: readonly string[];
  readonly legsAfter: readonly string[];
  /** None where a line was only redrawn. */
  readonly stages: readonly StageMarks[];
  /** The outline on the way; null where the rings differ and nothing lies between them. */
  readonly outlineAt: (share: number) => string | null;
}

/** The marks of each piece that an alteration changed and that was there before. */
export function alterationMarks({
  before,
  after,
  surgery,
}: Pick<AlterationTrace, "before" | "after" | "surgery">): readonly AlterationMarks[] {
  return piecesOf(after).flatMap((piece): AlterationMarks[] => {
    const old = before[piece.name];
    if (old === undefined) return [];
    return [
      {
        piece: piece.name,
        before: outlinePath(outlineOf(old)),
        after: outlinePath(outlineOf(piece)),
        legsBefore: legsOf(old),
        legsAfter: legsOf(piece),
        stages: surgery.filter((trace) => trace.piece === piece.name && trace.parts.length > 0).map(stageOf),
        outlineAt: (share) => outlineBetween(old, piece, share),
      },
    ];
  });
}

const stageOf = ({ cuts, hinges, parts, rest }: SurgeryTrace): StageMarks => ({
  cuts: cuts.map(polyline),
  hinges,
  regions: [
    ...(rest.length === 0 ? [] : [{ outline: outlinePath(rest), motion: null }]),
    ...parts.map((part) => ({ outline: outlinePath(part.before), motion: part.motion })),
  ],
});

const legsOf = (piece: Piece): readonly string[] =>
  piece.darts.map(({ inner, apex, outer }) => polyline([inner, apex, outer].map((name) => pointOf(piece, name))));

/** Which of several operations is going on at a share of the whole, and how far it is: each takes its turn. */
export function stageAt(count: number, share: number): { readonly stage: number; readonly share: number } {
  const stage = Math.min(count - 1, Math.max(0, Math.floor(share * count)));
  return { stage, share: Math.min(1, Math.max(0, share * count - stage)) };
}

/** A motion on its way as the transform of an SVG group. */
export function transformAt(motion: Rigid<"piece"> | null, share: number): string {
  if (motion === null) return "matrix(1 0 0 1 0 0)";
  const { cosine, sine, origin } = partway(motion, share);
  return `matrix(${[cosine, sine, -sine, cosine, origin.x, origin.y].map(plain).join(" ")})`;
}

const plain = (value: number): number => Math.round(value * 1e6) / 1e6;

/** Each point and control on the straight way from where it was to where it is; null where the edges are not the same. */
function outlineBetween(before: Piece, after: Piece, share: number): string | null {
  if (!areSameRings(before.edges, after.edges)) return null;
  const old = outlineOf(before);
  return outlinePath(
    outlineOf(after).map((edge, index) => {
      const was = old[index] ?? edge;
      const curve =
        edge.curve === null || was.curve === null
          ? null
          : { c1: between(was.curve.c1, edge.curve.c1, share), c2: between(was.curve.c2, edge.curve.c2, share) };
      return { a: between(was.a, edge.a, share), b: between(was.b, edge.b, share), curve };
    }),
  );
}

const areSameRings = (before: readonly Edge[], after: readonly Edge[]): boolean =>
  before.length === after.length &&
  after.every((edge, index) => {
    const was = before[index];
    return was?.from === edge.from && was.to === edge.to && (was.curve === null) === (edge.curve === null);
  });

const between = (a: PiecePoint, b: PiecePoint, share: number): PiecePoint =>
  pointLike(a, a.x + share * (b.x - a.x), a.y + share * (b.y - a.y));
