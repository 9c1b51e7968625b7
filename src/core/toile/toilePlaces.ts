/** Where each place of a trial's record lies on the pieces of one half, by the view in which it is seen. */
import type { Closure } from "../decisions/pattern";
import { TRIAL_PLACES, type TrialPlace } from "../decisions/trial";
import { edgeParameterAtLength, edgeLength, edgePointAt } from "../geometry/edgeCurve";
import { between, piecePoint, type PiecePoint } from "../geometry/point";
import { isBasque, isFrontPiece, isOnBody } from "../pattern/pieceGroups";
import type { DartRef, Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import type { Mm } from "../units";

/** From before, from the side, from behind. */
export type ToileView = "front" | "side" | "back";

interface ToileSpot {
  readonly view: ToileView;
  readonly piece: PieceName;
  /** In the piece's own frame. */
  readonly at: PiecePoint;
  /** Whose end it is, of `dartEnd`. */
  readonly dart?: DartRef;
}

/** The drawings of a toile, in the order in which it is walked round: the side is seen from her left and from her right. */
export const TOILE_VIEWS = ["front", "leftSide", "rightSide", "back"] as const;
export type ToileViewName = (typeof TOILE_VIEWS)[number];

/** A place that this garment has, and where; it is seen in one view at least. */
export interface PlaceOnToile {
  readonly place: TrialPlace;
  /** On the centre line, so of both halves together. */
  readonly isCentre: boolean;
  readonly spots: readonly [ToileSpot, ...ToileSpot[]];
}

/** What is asked of a half of a plan. */
export interface ToileHalf {
  readonly pieces: readonly Piece[];
  readonly bustPiece: PieceName;
  readonly bustPoint: { readonly printed: PiecePoint; readonly own: PiecePoint | null };
}

/** The number of a place, the same on the screen and on the printed record. */
export const placeNumber = (place: TrialPlace): number => TRIAL_PLACES.indexOf(place) + 1;

/** The place of that number; undefined where there is none. */
export const placeOfNumber = (number: number): TrialPlace | undefined => TRIAL_PLACES[number - 1];

/** Above the waist and under the bust line, where a fold that runs across lies, mm. */
const ABOVE_WAIST: Mm = 45;
const UNDER_BUST: Mm = 75;

/**
 * The places that a half of a garment has, in the order of their numbers.
 *
 * @param half its finished pieces and bust point, in the pieces' own frames
 */
export function toilePlaces(half: ToileHalf, closure: Closure): readonly PlaceOnToile[] {
  return TRIAL_PLACES.flatMap((place): PlaceOnToile[] => {
    const spots = SPOTS[place](sidesOf(half), closure);
    const [first, ...more] = spots;
    return first === undefined ? [] : [{ place, isCentre: isAtCentre(place, closure), spots: [first, ...more] }];
  });
}

/** The opening of a centre back, and what lies between the breasts, are of no half. */
const isAtCentre = (place: TrialPlace, { place: opening }: Closure): boolean =>
  place === "betweenBusts" || (place.startsWith("closure") && opening === "centreBack");

/** The pieces of one side of the body that are not straps, and what is told of them. */
interface Sides {
  readonly front: readonly Piece[];
  readonly back: readonly Piece[];
  readonly bustPiece: PieceName;
  readonly bust: PiecePoint;
}

function sidesOf({ pieces, bustPiece, bustPoint }: ToileHalf): Sides {
  const onBody = pieces.filter(({ name }) => isOnBody(name));
  return {
    front: onBody.filter(({ name }) => isFrontPiece(name)),
    back: onBody.filter(({ name }) => !isFrontPiece(name)),
    bustPiece,
    bust: bustPoint.own ?? bustPoint.printed,
  };
}

/** Where a named point lies: on the first piece of the list that has it. */
function pointIn(pieces: readonly Piece[], name: PointName): Omit<ToileSpot, "view"> | null {
  for (const piece of pieces) {
    const at = piece.points[name]?.at;
    if (at !== undefined) return { piece: piece.name, at };
  }
  return null;
}

/** So far along a seam of the first piece that has it, as a share of its length, darts left out. */
function alongSeam(pieces: readonly Piece[], seam: SeamName, share: number): Omit<ToileSpot, "view"> | null {
  for (const piece of pieces) {
    const curves = piece.edges
      .filter((edge) => edge.seam === seam && edge.mouthOf === null)
      .map((edge) => curveOf(piece, edge));
    const lengths = curves.map((curve) => edgeLength(curve));
    let left = share * lengths.reduce((sum, length) => sum + length, 0);
    for (const [index, curve] of curves.entries()) {
      const own = lengths[index] ?? 0;
      if (left <= own || index === curves.length - 1)
        return { piece: piece.name, at: edgePointAt(curve, edgeParameterAtLength(curve, Math.min(left, own))) };
      left -= own;
    }
  }
  return null;
}

const uppers = (pieces: readonly Piece[]): readonly Piece[] => pieces.filter(({ name }) => !isBasque(name));
const basques = (pieces: readonly Piece[]): readonly Piece[] => pieces.filter(({ name }) => isBasque(name));

const seen = (view: ToileView, ...spots: readonly (Omit<ToileSpot, "view"> | null)[]): readonly ToileSpot[] =>
  spots.flatMap((spot) => (spot === null ? [] : [{ view, ...spot }]));

/** Waist corners of the piece that the centre line is on, above the waist. */
function waistOf(pieces: readonly Piece[]): { readonly piece: PieceName; readonly centre: PiecePoint } | null {
  const found = pointIn(uppers(pieces), "centreWaist");
  return found === null ? null : { piece: found.piece, centre: found.at };
}

/** On the piece of the centre, so far from it and above its waist. */
function aboveWaist(pieces: readonly Piece[], out: Mm): Omit<ToileSpot, "view"> | null {
  const waist = waistOf(pieces);
  return waist === null ? null : { piece: waist.piece, at: piecePoint(out, waist.centre.y - ABOVE_WAIST) };
}

/** Over the waist seam, half way from the centre to what cuts it. */
function onWaist(pieces: readonly Piece[]): Omit<ToileSpot, "view"> | null {
  for (const piece of uppers(pieces)) {
    const edge = piece.edges.find(
      ({ seam, from, to }) => seam === "waist" && (from === "centreWaist" || to === "centreWaist"),
    );
    if (edge !== undefined) return { piece: piece.name, at: edgePointAt(curveOf(piece, edge), 0.5) };
  }
  return null;
}

/** Half way across the hip line of a basque. */
function onHip(pieces: readonly Piece[]): Omit<ToileSpot, "view"> | null {
  const [centre, side] = [pointIn(basques(pieces), "centreHip"), pointIn(basques(pieces), "sideHip")];
  return centre === null || side === null ? null : { piece: centre.piece, at: between(centre.at, side.at, 0.5) };
}

/** Between two points of a piece, where it has both. */
function midway(pieces: readonly Piece[], a: PointName, b: PointName, share = 0.5): Omit<ToileSpot, "view"> | null {
  for (const piece of pieces) {
    const [first, second] = [piece.points[a]?.at, piece.points[b]?.at];
    if (first !== undefined && second !== undefined) return { piece: piece.name, at: between(first, second, share) };
  }
  return null;
}

/** Where a strap leaves the edge it is sewn to. */
function onStrap(pieces: readonly Piece[]): Omit<ToileSpot, "view"> | null {
  const foot = midway(pieces, "strapInner", "strapOuter");
  const aim = pointIn(pieces, "strapAim");
  return foot === null || aim === null ? null : { piece: foot.piece, at: between(foot.at, aim.at, 0.35) };
}

/** The ends of the darts that are sewn, those of the bust first. */
function dartEnds(view: ToileView, pieces: readonly Piece[]): readonly ToileSpot[] {
  return uppers(pieces).flatMap((piece) =>
    piece.darts.flatMap(({ name, apex, gathered }) => {
      const at = piece.points[apex]?.at;
      return at === undefined || gathered === true
        ? []
        : [{ view, piece: piece.name, at, dart: { piece: piece.name, dart: name } }];
    }),
  );
}

/** A closure on its centre line or on the side seam. */
const closed =
  (back: PointName, side: PointName, below: boolean) =>
  ({ front, back: behind }: Sides, { place, belowWaist }: Closure): readonly ToileSpot[] => {
    if (below && belowWaist === 0) return [];
    const level = below ? basques : uppers;
    return place === "centreBack"
      ? seen("back", pointIn(level(behind), back))
      : seen("side", pointIn(level(front), side));
  };

/** Above the bust: on a front that goes up to the shoulder. */
function onChest({ front, bust }: Sides): Omit<ToileSpot, "view"> | null {
  const touch = pointIn(front, "armholeTouch");
  const neck = pointIn(front, "centreNeck");
  if (touch === null || neck === null || pointIn(front, "shoulderTip") === null) return null;
  const y = (neck.at.y + bust.y) / 2;
  return { piece: neck.piece, at: piecePoint(bust.x * 0.6, y) };
}

function onBlades({ back }: Sides): Omit<ToileSpot, "view"> | null {
  const touch = pointIn(back, "armholeTouch");
  return touch === null || pointIn(back, "shoulderTip") === null
    ? null
    : { piece: touch.piece, at: piecePoint(touch.at.x * 0.55, touch.at.y) };
}

/** Of a cup the seam under it; of another front as far below the bust point as such a seam lies. */
function underBust({ front, bust, bustPiece }: Sides): Omit<ToileSpot, "view"> | null {
  const seam = alongSeam(uppers(front), "underBust", 0.5);
  if (seam !== null) return midway(uppers(front), "underBustCentre", "underBustDartInner", 0.7) ?? seam;
  return { piece: bustPiece, at: piecePoint(bust.x * 0.75, bust.y + UNDER_BUST) };
}

const waistSides = (pieces: readonly Piece[], share: number): Omit<ToileSpot, "view"> | null =>
  midway(uppers(pieces), "sideBust", "sideWaist", share) ?? midway(uppers(pieces), "sideUnderBust", "sideWaist", share);

const SPOTS: Readonly<Record<TrialPlace, (sides: Sides, closure: Closure) => readonly ToileSpot[]>> = {
  neckPoint: ({ front, back }) => [
    ...seen("front", pointIn(front, "sideNeck")),
    ...seen("back", pointIn(back, "sideNeck")),
  ],
  frontNeck: ({ front }) => seen("front", alongSeam(front, "neck", 0.5)),
  shoulder: ({ front, back }) => [
    ...seen("front", pointIn(front, "shoulderTip")),
    ...seen("back", pointIn(back, "shoulderTip")),
  ],
  strap: ({ front, back }) => [...seen("front", onStrap(front)), ...seen("back", onStrap(back))],
  frontArmhole: ({ front }) =>
    seen("front", pointIn(front, "armholeTouch") ?? alongSeam(uppers(front), "armhole", 0.5)),
  chest: (sides) => seen("front", onChest(sides)),
  bust: ({ bust, bustPiece }) => seen("front", { piece: bustPiece, at: bust }),
  dartEnd: ({ front, back }) => [...dartEnds("front", front), ...dartEnds("back", back)],
  betweenBusts: ({ front }) => seen("front", pointIn(front, "centreBust")),
  underBust: (sides) => seen("front", underBust(sides)),
  frontAboveWaist: ({ front, bust }) => seen("front", aboveWaist(front, bust.x * 0.45)),
  frontWaist: ({ front }) => seen("front", onWaist(front)),
  frontHip: ({ front }) => seen("front", onHip(front)),
  frontHem: ({ front }) => seen("front", alongSeam(basques(front), "hem", 0.5)),
  underarm: ({ front, back }) => [
    ...seen("side", pointIn(front, "underarm")),
    ...seen("front", pointIn(front, "underarm")),
    ...seen("back", pointIn(back, "underarm")),
  ],
  sideSeam: ({ front, back }) => [
    ...seen("side", waistSides(front, 0.55)),
    ...seen("front", waistSides(front, 0.55)),
    ...seen("back", waistSides(back, 0.55)),
  ],
  sideHip: ({ front, back }) => [
    ...seen("side", pointIn(basques(front), "sideHip")),
    ...seen("front", pointIn(basques(front), "sideHip")),
    ...seen("back", pointIn(basques(back), "sideHip")),
  ],
  backNeck: ({ back }) => seen("back", alongSeam(back, "neck", 0.5)),
  backArmhole: ({ back }) => seen("back", pointIn(back, "armholeTouch") ?? alongSeam(uppers(back), "armhole", 0.5)),
  blades: (sides) => seen("back", onBlades(sides)),
  backAboveWaist: ({ back, bust }) => seen("back", aboveWaist(back, bust.x * 0.45)),
  backWaist: ({ back }) => seen("back", onWaist(back)),
  backHip: ({ back }) => seen("back", onHip(back)),
  backHem: ({ back }) => seen("back", alongSeam(basques(back), "hem", 0.5)),
  closureBust: closed("centreBust", "sideBust", false),
  closureWaist: closed("centreWaist", "sideWaist", false),
  closureHip: closed("centreHip", "sideHip", true),
};
