/**
 * One half of a bodice as it is seen worn, from the front or from behind, its darts shut: x from the centre outward, y down from
 * the waist, mm. Heights are those of the pieces; across, a girth is seen as wide as an ellipse of that girth.
 */
import { walkAlong } from "../core/cutting/walk";
import { levelWidth } from "../core/girth/levelWidth";
import { seamLength } from "../core/girth/seamLength";
import { edgePointAt } from "../core/geometry/edgeCurve";
import { pointOf, type Dart, type Piece, type SeamName } from "../core/pattern/piece";
import { isBasque, isFrontPiece, isOnBody } from "../core/pattern/pieceGroups";
import { piecesOf, type PieceSet } from "../core/pattern/pieceSet";
import type { Mm } from "../core/units";
import type { Spot } from "./figure";
import { smoothOut, smoothThrough } from "./smoothLine";

export type Side = "front" | "back";

/**
 * Half of the width that a girth is seen with, as a share of the girth: that of an ellipse 0.72 as deep as it is wide.
 *
 * @source the perimeter of an ellipse after Ramanujan; how deep a trunk is to its width: common practice, no source
 */
export const SEEN: number = seenShare(0.72);

function seenShare(depth: number): number {
  const h = ((1 - depth) / (1 + depth)) ** 2;
  return 1 / (Math.PI * (1 + depth) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h))));
}

/** Shoulders are nearly square to the eye: so much of a piece is seen of its width there (our own choice). */
const SHOULDER_SEEN = 0.95;
/** Of the bust's width at the underarm: it goes in a little above the bust (our own choice). */
const UNDERARM_SEEN = 0.985;
/** A line between two heights is drawn in so many stretches. */
const STRETCHES = 24;
const FLATTENED = 12;

interface ShapedDart {
  readonly line: readonly Spot[];
  readonly gathered: boolean;
}

export interface BodiceHalf {
  /** The upper edge from the centre to the underarm, by its stretches. */
  readonly neck: readonly Spot[];
  readonly shoulder: readonly Spot[];
  readonly armhole: readonly Spot[];
  /** Whether the shoulder stretch is the seam of a strap. */
  readonly hasStrap: boolean;
  /** Where the strap goes over the shoulder. */
  readonly strapAim: Spot | null;
  /** From the underarm down to the waist. */
  readonly side: readonly Spot[];
  readonly waist: { readonly centre: Spot; readonly side: Spot };
  readonly seams: readonly (readonly Spot[])[];
  readonly darts: readonly ShapedDart[];
}

/** The upper pieces of one half that are seen from one side, from the centre outward, a band after what it hangs under. */
const seenPieces = (pieces: PieceSet, side: Side): readonly Piece[] =>
  piecesOf(pieces).filter(({ name }) => isOnBody(name) && !isBasque(name) && isFrontPiece(name) === (side === "front"));

const other = (side: Side): Side => (side === "front" ? "back" : "front");

/** Widths of one side of one half at the levels that it has, darts shut. */
interface Widths {
  readonly bust: Mm;
  readonly underBust: Mm | null;
  readonly waist: Mm;
}

function widthsOf(pieces: readonly Piece[]): Widths {
  const sumOf = (width: (piece: Piece) => Mm): Mm => pieces.reduce((sum, piece) => sum + width(piece), 0);
  const hasBand = pieces.some(({ name }) => name === "frontBand" || name === "backBand");
  const waist = sumOf((piece) => seamLength(piece, "waist"));
  const bust = sumOf((piece) => levelWidth(piece, "bust") ?? 0);
  return {
    bust: bust > 0 ? bust : waist,
    underBust: hasBand ? sumOf((piece) => (piece.name.endsWith("Band") ? seamLength(piece, "underBust") : 0)) : null,
    waist,
  };
}

/** How wide one half of the body of the garment is seen, at its levels. */
export interface SeenWidths {
  readonly bust: Mm;
  readonly underBust: Mm | null;
  readonly waist: Mm;
}

/** A half's girth, its front and its back, as wide as half of the whole is seen. */
const seenOfHalf = (a: Mm, b: Mm): Mm => 2 * (a + b) * SEEN;

/** Both sides of one half together: each half is drawn by its own girth. */
export function seenWidths(pieces: PieceSet): SeenWidths {
  const [front, back] = [widthsOf(seenPieces(pieces, "front")), widthsOf(seenPieces(pieces, "back"))];
  return {
    bust: seenOfHalf(front.bust, back.bust),
    underBust: front.underBust === null || back.underBust === null ? null : seenOfHalf(front.underBust, back.underBust),
    waist: seenOfHalf(front.waist, back.waist),
  };
}

/** The lines of a seam over several pieces, one joined to the other as they are sewn, darts shut; each from its inner or upper end. */
function joined(pieces: readonly Piece[], seam: SeamName, start: Spot | null): readonly Spot[] {
  const spots: Spot[] = [];
  let shift: Spot = { x: 0, y: 0 };
  for (const { curve } of walkAlong(pieces, seam).steps) {
    const last = spots.at(-1) ?? start;
    if (last !== null) shift = { x: last.x - curve.a.x, y: last.y - curve.a.y };
    for (let i = spots.length === 0 ? 0 : 1; i <= FLATTENED; i += 1) {
      const { x, y } = edgePointAt(curve, i / FLATTENED);
      spots.push({ x: x + shift.x, y: y + shift.y });
    }
  }
  return spots;
}

/** A line moved so that its ends come where they belong, what lies between by its share of the way. */
export function held(spots: readonly Spot[], start: Spot, end: Spot): readonly Spot[] {
  const [first, last] = [spots[0], spots.at(-1)];
  if (first === undefined || last === undefined) return [];
  const along: Mm[] = [0];
  for (let i = 1; i < spots.length; i += 1) {
    const [a, b] = [spots[i - 1] ?? first, spots[i] ?? first];
    along.push((along.at(-1) ?? 0) + Math.hypot(b.x - a.x, b.y - a.y));
  }
  const whole = along.at(-1) ?? 0;
  return spots.map(({ x, y }, i) => {
    const share = whole === 0 ? 0 : (along[i] ?? 0) / whole;
    return {
      x: x + (1 - share) * (start.x - first.x) + share * (end.x - last.x),
      y: y + (1 - share) * (start.y - first.y) + share * (end.y - last.y),
    };
  });
}

const isUpper = ({ name }: Piece): boolean => !name.endsWith("Band");

/** Across at the waist or the under-bust seam, so far along it from the centre. */
const atSeam = (along: Mm, whole: Mm, wide: Mm): Mm => (whole === 0 ? 0 : (along / whole) * wide);

/** One half of a bodice from one side; null where it has no pieces there. */
export function bodiceHalf(pieces: PieceSet, side: Side): BodiceHalf | null {
  const seen = seenPieces(pieces, side);
  const behind = seenPieces(pieces, other(side));
  if (seen.length === 0 || behind.length === 0) return null;
  const own = widthsOf(seen);
  const out = seenWidths(pieces);
  const foot = Math.max(...seen.flatMap(({ points }) => points.centreWaist?.at.y ?? points.sideWaist?.at.y ?? []));
  if (!Number.isFinite(foot)) return null;
  const uppers = seen.filter(isUpper);
  const sides = behind.length === 0 ? [] : seen;
  const sideLength = Math.max(
    sides.reduce((sum, piece) => sum + seamLength(piece, "side"), 0),
    behind.reduce((sum, piece) => sum + seamLength(piece, "side"), 0),
  );
  const underarm: Spot = { x: out.bust * UNDERARM_SEEN, y: -sideLength };
  const bustY = Math.max(levelOf(uppers, "centreBust") ?? underarm.y * 0.8 + foot, underarm.y + foot + 1) - foot;
  const underBustY = out.underBust === null ? null : (levelOf(uppers, "underBustCentre") ?? foot) - foot;
  const silhouette = smoothOut([
    underarm,
    { x: out.bust, y: bustY },
    ...(out.underBust === null || underBustY === null ? [] : [{ x: out.underBust, y: underBustY }]),
    { x: out.waist, y: 0 },
  ]);
  const top = Math.min(
    ...uppers.flatMap(({ points }) => [points.shoulderTip?.at.y ?? Infinity, points.strapAim?.at.y ?? Infinity]),
  );
  /** How much is seen of the width of a piece at a height. */
  const share = smoothOut([
    ...(Number.isFinite(top) ? [{ x: SHOULDER_SEEN, y: top - foot }] : []),
    { x: out.bust / own.bust, y: bustY },
    { x: out.waist / own.waist, y: 0 },
  ]);
  const placed = ({ x, y }: Spot): Spot => ({ x: x * share(y - foot), y: y - foot });

  const neck = joined(uppers, "neck", null);
  const strapSeam = joined(uppers, "strap", neck.at(-1) ?? null);
  const hasStrap = strapSeam.length > 0;
  const shoulder = hasStrap ? strapSeam : joined(uppers, "shoulder", neck.at(-1) ?? null);
  const armhole = joined(uppers, "armhole", shoulder.at(-1) ?? neck.at(-1) ?? null);
  const neckSeen = neck.map(placed);
  const first = neckSeen[0];
  // The neck edge begins on the centre line.
  const neckHeld = first === undefined ? [] : held(neckSeen, { x: 0, y: first.y }, neckSeen.at(-1) ?? first);
  const shoulderSeen = shoulder.map(placed);
  const armholeSeen = armhole.map(placed);
  const armholeStart = armholeSeen[0] ?? shoulderSeen.at(-1) ?? underarm;
  const aim = uppers.find(({ points }) => points.strapAim !== undefined)?.points.strapAim?.at ?? null;

  const centre: Spot = { x: 0, y: 0 };
  const seams: (readonly Spot[])[] = [];
  if (out.underBust !== null && underBustY !== null)
    seams.push([
      { x: 0, y: underBustY },
      { x: out.underBust, y: underBustY },
    ]);
  const princess = uppers.find(({ name, points }) => name === "centreFront" && points.princessTop !== undefined);
  if (princess !== undefined) {
    const { princessTop, princessBust } = princess.points;
    const inner = seamLength(princess, "waist");
    seams.push(
      smoothThrough([
        ...(princessTop === undefined
          ? []
          : [onUpperEdge(placed(princessTop.at), [...shoulderSeen, ...held(armholeSeen, armholeStart, underarm)])]),
        ...(princessBust === undefined ? [] : [placed(princessBust.at)]),
        { x: atSeam(inner, own.waist, out.waist), y: 0 },
      ]),
    );
  }
  const stretches = Array.from({ length: STRETCHES + 1 }, (_, i) => underarm.y * (1 - i / STRETCHES));
  return {
    neck: neckHeld,
    shoulder: shoulderSeen,
    armhole: held(armholeSeen, armholeStart, underarm),
    hasStrap,
    strapAim: aim === null ? null : placed(aim),
    side: stretches.map((y) => ({ x: silhouette(y), y })),
    waist: { centre, side: { x: out.waist, y: 0 } },
    seams,
    darts: uppers.flatMap((piece) =>
      piece.darts.map((dart): ShapedDart => {
        const end = placed(pointOf(piece, dart.apex));
        const mouth = dartMouth(piece, dart, {
          placed,
          silhouette,
          underarm: underarm.y,
          waist: (along) => ({ x: atSeam(along, own.waist, out.waist), y: 0 }),
          underBust: (along) => ({
            x: atSeam(along, own.underBust ?? own.bust, out.underBust ?? out.bust),
            y: underBustY ?? 0,
          }),
        });
        return { line: [mouth, end], gathered: dart.gathered === true };
      }),
    ),
  };
}

const levelOf = (pieces: readonly Piece[], point: "centreBust" | "underBustCentre"): Mm | null =>
  pieces.map(({ points }) => points[point]?.at.y).find((y) => y !== undefined) ?? null;

/** The place of a line that is nearest to another. */
function onUpperEdge(spot: Spot, spots: readonly Spot[]): Spot {
  let nearest = spot;
  let least = Infinity;
  for (const one of spots) {
    const off = Math.hypot(one.x - spot.x, one.y - spot.y);
    if (off < least) [nearest, least] = [one, off];
  }
  return nearest;
}

interface MouthPlaces {
  readonly placed: (spot: Spot) => Spot;
  readonly silhouette: (y: Mm) => Mm;
  readonly underarm: Mm;
  readonly waist: (along: Mm) => Spot;
  readonly underBust: (along: Mm) => Spot;
}

/** Where a shut dart meets its seam. */
function dartMouth(piece: Piece, dart: Dart, { placed, silhouette, underarm, waist, underBust }: MouthPlaces): Spot {
  const inner = pointOf(piece, dart.inner);
  switch (dart.seam) {
    case "waist":
      return waist(beforeMouth(piece, dart));
    case "underBust":
      return underBust(beforeMouth(piece, dart));
    case "side": {
      const y = underarm + beforeMouth(piece, dart);
      return { x: silhouette(y), y };
    }
    default:
      return placed(inner);
  }
}

/** Of the seam of a dart, what lies between its upper or inner end and the mouth, other darts shut. */
function beforeMouth(piece: Piece, dart: Dart): Mm {
  const inner = pointOf(piece, dart.inner);
  const isBefore = ({ x, y }: Spot): boolean => (dart.seam === "side" ? y < inner.y : x < inner.x);
  return walkAlong([piece], dart.seam)
    .steps.filter(({ curve }) => isBefore(edgePointAt(curve, 0.5)))
    .reduce((sum, { length }) => sum + length, 0);
}
