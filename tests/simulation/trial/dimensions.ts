/**
 * What a garment measures on one half of the body, in dimensions chosen so that each is altered by one thing at a time. Taken from
 * named points and seams of the pieces alone, so that whatever is altered is measured afresh; nothing of the alterations' own code.
 *
 * All in mm of cloth on the half. A part turned by a wedge, as the yoke of a round back or what lies beside a closed gape, is turned
 * back first: sewn, it lies where it lay.
 */
import { edgeLength } from "../../../src/core/geometry/edgeCurve";
import { levelWidth } from "../../../src/core/girth/levelWidth";
import { seamLength } from "../../../src/core/girth/seamLength";
import { homeOf } from "../../../src/core/pattern/dartNames";
import type { Dart, Piece, PointName, SeamName } from "../../../src/core/pattern/piece";
import type { PieceSet } from "../../../src/core/pattern/pieceSet";
import { curveOf } from "../../../src/core/pattern/ring";

export const DIMENSIONS = [
  /** From the side neck down to the bust line, at the back. */
  "lengthAbove",
  /** From the bust line, or of a band from the under-bust, down to the waist, at the side seam. */
  "lengthBelow",
  /** What the centre front and the centre back have down to the waist beyond the side. */
  "frontCentre",
  "backCentre",
  /** Of the basque: side seam from waist to hip, and what its centres have beyond the side seam. */
  "lengthBasque",
  "basqueFront",
  "basqueBack",
  /** What the centre back has above the bust line beyond the side. */
  "roundBack",
  /** How far the shoulder's end lies below the side neck, and how far more on the front than on the back, halved. */
  "slope",
  "forward",
  "shoulderWidth",
  /** How low the underarm lies. */
  "armhole",
  "chest",
  "backWidth",
  /** Edges: the front armhole against the back's, front neck or edge of a cup, back neck. */
  "armholeFront",
  "neckFront",
  "neckBack",
  /** What the front has of the bust line beyond the back, and twice the back. */
  "cup",
  "bustSides",
  "underBust",
  "waist",
  "hip",
  /** How low, and how far out, the bust darts aim; of a front with a side dart, where both darts end. */
  "bustLevel",
  "bustOut",
  "sideDartOut",
  "waistDartLevel",
  /** How much the sharpest bust dart opens, at `SHARP_AT` from its end. */
  "sharp",
  "strapLength",
  /** How near the straps sit to the neck. */
  "strapPlace",
] as const;
export type Dimension = (typeof DIMENSIONS)[number];
export type Dimensions = Readonly<Partial<Record<Dimension, number>>>;

/** Where a dart's opening is stated: about as far as a bust dart is long. */
export const SHARP_AT = 120;

/** A shoulder falls by about 21 degrees: what goes down the armhole goes down by so much. */
const COS_OF_FALL = 0.93;

/** How much of what goes down the armhole is seen straight from its upper to its lower end. */
const ALONG_ARMHOLE = 0.85;

/** How much more the straight line over an armhole loses than what is folded out where the armhole is nearest to the bust point. */
const OVER_ARMHOLE = 1.37;

/** How much shorter the neck edge of a cup is, and how much longer its armhole, for each mm that its strap sits nearer the neck. */
const ALONG_EDGE = { neck: 0.55, armhole: 0.95 } as const;

/** How much longer the armhole of a cup is for each mm that the underarm lies lower, and for each that the side lies further out. */
const DOWN_ARMHOLE = 0.5;
const OUT_AT_SIDE = 0.4;

/** How much longer the straight lines over an armhole are that a princess seam meets, for each mm that the shoulder is wider. */
const OUT_AT_SHOULDER = 0.42;

/** A shoulder's usual length: its fall is stated over it, so that a wider one of the same fall falls no more. */
const SHOULDER = 125;

/** The blades: above the armhole's fullest turn, as a share of what lies below it (common practice, no source). */
const BLADES_ABOVE = 0.2;

interface Place {
  readonly x: number;
  readonly y: number;
}

const at = (piece: Piece | undefined, name: PointName): Place | undefined => piece?.points[name]?.at;
const apart = (a: Place, b: Place): number => Math.hypot(a.x - b.x, a.y - b.y);

/** How much of the way from a to b goes along the direction from one place to another. */
function along(a: Place, b: Place, from: Place, to: Place): number {
  return ((b.x - a.x) * (to.x - from.x) + (b.y - a.y) * (to.y - from.y)) / apart(from, to);
}

/** How far a place lies beside the line from one place to another, positive on the left of one who walks down it. */
function beside(p: Place, from: Place, to: Place): number {
  return ((p.x - from.x) * (to.y - from.y) - (p.y - from.y) * (to.x - from.x)) / apart(from, to);
}

/** Turned about a place; positive from right to down. */
function turned(p: Place, about: Place, angle: number): Place {
  const [x, y] = [p.x - about.x, p.y - about.y];
  return {
    x: about.x + x * Math.cos(angle) - y * Math.sin(angle),
    y: about.y + x * Math.sin(angle) + y * Math.cos(angle),
  };
}

/** Sewn length of a seam from one corner of it to another, going the way of the ring. */
function part(piece: Piece, from: PointName, to: PointName): number | undefined {
  const { edges } = piece;
  let index = edges.findIndex((edge) => edge.from === from);
  if (index < 0 || !edges.some((edge) => edge.to === to)) return undefined;
  let sum = 0;
  for (let steps = 0; steps < edges.length; steps += 1) {
    const edge = edges[index % edges.length];
    if (edge === undefined) return undefined;
    if (edge.mouthOf === null) sum += edgeLength(curveOf(piece, edge));
    if (edge.to === to) return sum;
    index += 1;
  }
  return undefined;
}

const of = <T>(piece: Piece | undefined, found: (piece: Piece) => T | null | undefined): T | undefined =>
  piece === undefined ? undefined : (found(piece) ?? undefined);

const seamOf = (piece: Piece | undefined, seam: SeamName): number | undefined => {
  const length = piece === undefined ? 0 : seamLength(piece, seam);
  return length === 0 ? undefined : length;
};

/** A sum or difference of what is there; undefined where any is not. */
function reckon(
  values: readonly (number | undefined)[],
  how: (a: number, b: number, c: number) => number,
): number | undefined {
  const [a = NaN, b = 0, c = 0] = values;
  return values.some((value) => value === undefined) ? undefined : how(a, b, c);
}

const sum = (values: readonly (number | undefined)[]): number | undefined =>
  values.length === 0 || values.some((value) => value === undefined)
    ? undefined
    : values.reduce<number>((all, value) => all + (value ?? 0), 0);

/**
 * How far the yoke above the blades is turned, radians. A centre seam that bends there has turned at the neck by all of it, and
 * from bust line to neck by as much of it as lies above the bend; one that only leans has turned by the same at both.
 */
function yokeTurn(back: Piece): number {
  const edge = back.edges.find(({ to, seam }) => to === "centreNeck" && seam === "centre");
  const [neck, bust, touch, underarm] = (["centreNeck", "centreBust", "armholeTouch", "underarm"] as const).map(
    (name) => at(back, name),
  );
  if (edge?.curve == null || neck === undefined || bust === undefined || touch === undefined || underarm === undefined)
    return 0;
  const lean = (from: Place): number => Math.atan2(neck.x - from.x, from.y - neck.y);
  const blades = touch.y - BLADES_ABOVE * (underarm.y - touch.y);
  return (lean(edge.curve.c2) - lean(bust)) / (1 - (blades - neck.y) / (bust.y - neck.y));
}

/** How far the shoulder's end lies below the side neck on the back, its yoke turned back. */
function backDrop(back: Piece): number | undefined {
  const [neck, tip] = [at(back, "sideNeck"), at(back, "shoulderTip")];
  return neck === undefined || tip === undefined ? undefined : turned(tip, neck, -yokeTurn(back)).y - neck.y;
}

/** The same on the front: along the line from the side neck to the bust point, or down a princess seam on either side of it. */
function frontDrop({ front, centreFront, sideFront }: PieceSet): number | undefined {
  const piece = front ?? centreFront;
  const [neck, bust, tip] = (["sideNeck", "bustPoint", "shoulderTip"] as const).map((name) => at(piece, name));
  if (neck === undefined || bust === undefined) return undefined;
  if (tip !== undefined) return along(neck, tip, neck, bust);
  const [top, through] = [at(centreFront, "princessTop"), at(centreFront, "princessBust")];
  const [topOfSide, throughSide, tipOfSide] = (["princessTop", "princessBust", "shoulderTip"] as const).map((name) =>
    at(sideFront, name),
  );
  if (top === undefined || through === undefined || topOfSide === undefined) return undefined;
  if (throughSide === undefined || tipOfSide === undefined) return undefined;
  return along(neck, top, top, through) + along(topOfSide, tipOfSide, topOfSide, throughSide);
}

/** Straight from the upper to the lower end of the armhole, piece by piece. */
function frontArmhole({ front, centreFront, sideFront }: PieceSet): number | undefined {
  const pieces = front === undefined ? [centreFront, sideFront] : [front];
  return sum(
    pieces.flatMap((piece) => {
      const edges = piece?.edges.filter(({ seam }) => seam === "armhole") ?? [];
      const [from, to] = [edges.at(0), edges.at(-1)].map((edge, end) =>
        edge === undefined ? undefined : at(piece, end === 0 ? edge.from : edge.to),
      );
      return from === undefined || to === undefined ? [] : [apart(from, to)];
    }),
  );
}

/** The same whatever the width of the shoulder: where a princess seam meets the armhole, its upper part lies aslant. */
const frontArmholeAlone = (pieces: PieceSet, shoulder: number | undefined): number | undefined =>
  at(pieces.centreFront, "shoulderTip") === undefined
    ? frontArmhole(pieces)
    : reckon([frontArmhole(pieces), shoulder], (armhole, width) => armhole - OUT_AT_SHOULDER * width);

/** Where the shoulder of a back ends, its yoke turned back about where the blades' level meets the armhole. */
function flatTip(back: Piece): Place | undefined {
  const [tip, touch, underarm] = (["shoulderTip", "armholeTouch", "underarm"] as const).map((name) => at(back, name));
  if (tip === undefined || touch === undefined || underarm === undefined) return undefined;
  return turned(tip, { x: touch.x, y: touch.y - BLADES_ABOVE * (underarm.y - touch.y) }, -yokeTurn(back));
}

function backArmhole(back: Piece): number | undefined {
  const [tip, underarm] = [flatTip(back), at(back, "underarm")];
  return tip === undefined || underarm === undefined ? undefined : apart(tip, underarm);
}

/**
 * How far out the fullest turn of the front armhole lies: from the line of side neck and bust point, or from where the princess seam
 * passes the bust point.
 */
function chestOf({ front, sideFront }: PieceSet): number | undefined {
  const [touch, neck, bust] = [at(front, "armholeTouch"), at(front, "sideNeck"), at(front, "bustPoint")];
  if (touch !== undefined && neck !== undefined && bust !== undefined) return beside(touch, neck, bust);
  return reckon([at(sideFront, "armholeTouch")?.x, at(sideFront, "princessBust")?.x], (a, b) => a - b);
}

const isOfBust = ({ aimsAt, gathered }: Dart): boolean => aimsAt === "bustPoint" && gathered !== true;
const opensAtWaist = ({ name }: Dart): boolean => homeOf(name) === "waist";

/** The bust darts but for one from the waist; all where there is no other. */
export function mainDarts(pieces: PieceSet): readonly (readonly [Piece, Dart])[] {
  const all = [pieces.front, pieces.cup].flatMap((piece) =>
    piece === undefined ? [] : piece.darts.filter(isOfBust).map((dart) => [piece, dart] as const),
  );
  const others = all.filter(([, dart]) => !opensAtWaist(dart));
  return others.length > 0 ? others : all;
}

/** The dart from the waist of a front that has another one too. */
export function waistDartOf(pieces: PieceSet): readonly [Piece, Dart] | undefined {
  const { front } = pieces;
  const dart = front?.darts.find((one) => isOfBust(one) && opensAtWaist(one));
  return front === undefined || dart === undefined || front.darts.filter(isOfBust).length < 2
    ? undefined
    : [front, dart];
}

/** How long the legs of a dart are. */
export function legOf(piece: Piece, dart: Dart): number {
  const [end, a, b] = [at(piece, dart.apex), at(piece, dart.inner), at(piece, dart.outer)];
  return end === undefined || a === undefined || b === undefined ? 0 : (apart(end, a) + apart(end, b)) / 2;
}

/** How much a dart opens at its end; a leg bowed into it by b at its middle leaves the end straighter by four times b over its length. */
function opening(piece: Piece, dart: Dart): number {
  const [a, b, leg] = [at(piece, dart.inner), at(piece, dart.outer), legOf(piece, dart)];
  if (a === undefined || b === undefined || leg === 0) return 0;
  return 2 * Math.asin(Math.min(1, apart(a, b) / (2 * leg))) - (8 * (dart.bow ?? 0)) / leg;
}

/** On the back: a cup's is turned when a gape beside it is closed. */
const strapPlace = ({ back }: PieceSet): number | undefined =>
  reckon([at(back, "strapInner")?.x, at(back, "strapOuter")?.x], (a, b) => -(a + b) / 2);

/** The edge of a front, or of a cup as it would be with its strap where it cannot go. */
function edgeOf(piece: Piece | undefined, seam: "neck" | "armhole", place: number | undefined): number | undefined {
  const edge = seamOf(piece, seam);
  const times = seam === "neck" ? ALONG_EDGE.neck : -ALONG_EDGE.armhole;
  return place === undefined ? edge : reckon([edge], (length) => length + times * place);
}

/** All that the pieces of one half have; what a style has not is absent. */
export function measure(pieces: PieceSet): Dimensions {
  const { front, centreFront, sideFront, cup, back, frontBand, backBand, frontBasque, backBasque, strap } = pieces;
  const breast = front ?? centreFront ?? cup;
  const bodice = [front, centreFront, sideFront, frontBand, back, backBand].filter((piece) => piece !== undefined);
  const dropBack = of(back, backDrop);
  const dropFront = frontDrop(pieces);
  const shoulderWidth = reckon(
    [sum([front, centreFront, sideFront].flatMap((p) => seamOf(p, "shoulder") ?? [])), seamOf(back, "shoulder")],
    (a, b) => (a + b) / 2,
  );
  const slope = reckon([dropFront, dropBack, shoulderWidth], (a, b, width) => ((a + b) / 2) * (SHOULDER / width));
  const forward = reckon([dropFront, dropBack], (a, b) => (a - b) / 2 / COS_OF_FALL);
  const lengthAbove = reckon(
    [at(back, "sideBust")?.y, of(back, flatTip)?.y, dropBack],
    (bust, tip, drop) => bust - tip + drop,
  );
  const lengthBelow =
    backBand === undefined ? of(back, (p) => part(p, "sideBust", "sideWaist")) : seamOf(backBand, "side");
  const upperCentre = of(back, (p) => part(p, "centreBust", "centreNeck"));
  const lowerCentre =
    backBand === undefined ? of(back, (p) => part(p, "centreWaist", "centreBust")) : seamOf(backBand, "centre");
  const sideAbove = of(back, (p) => part(p, "underarm", "sideBust"));
  const frontBust = sum(
    [front, centreFront, sideFront, cup].flatMap((p) => of(p, (one) => levelWidth(one, "bust")) ?? []),
  );
  const backBust = of(back, (p) => levelWidth(p, "bust"));
  const place = strapPlace(pieces);
  const mains = mainDarts(pieces);
  const [mainPiece, main] = mains[0] ?? [undefined, undefined];
  const mainEnd = main === undefined ? undefined : at(mainPiece, main.apex);
  const waistDart = waistDartOf(pieces);
  const waistEnd = waistDart === undefined ? undefined : at(waistDart[0], waistDart[1].apex);
  const top = at(front ?? centreFront, "sideNeck");
  const aim = mainEnd ?? at(centreFront, "princessBust");
  const fromTop = (p: Place | undefined): number | undefined =>
    cup === undefined
      ? reckon([p?.y, top?.y, lengthAbove], (y, from, above) => y - from - above)
      : reckon([p?.y, at(cup, "centreBust")?.y], (y, from) => y - from);
  const found: Record<Dimension, number | undefined> = {
    lengthAbove,
    lengthBelow,
    frontCentre:
      frontBand === undefined
        ? reckon([seamOf(breast, "centre"), lengthAbove, lengthBelow], (all, above, below) => all - above - below)
        : reckon([seamOf(frontBand, "centre"), lengthBelow], (a, b) => a - b),
    backCentre: reckon([lowerCentre, lengthBelow], (a, b) => a - b),
    lengthBasque: of(backBasque, (p) => part(p, "sideWaist", "sideHip")),
    basqueFront: reckon([seamOf(frontBasque, "centre"), seamOf(frontBasque, "side")], (a, b) => a - b),
    basqueBack: reckon([seamOf(backBasque, "centre"), seamOf(backBasque, "side")], (a, b) => a - b),
    roundBack: reckon([upperCentre, lengthAbove], (a, b) => a - b),
    slope,
    forward,
    shoulderWidth,
    armhole:
      cup === undefined ? reckon([sideAbove, slope], (above, drop) => -above - drop) : reckon([sideAbove], (a) => -a),
    chest: chestOf(pieces),
    backWidth: at(back, "armholeTouch")?.x,
    armholeFront:
      cup === undefined
        ? reckon(
            [frontArmholeAlone(pieces, shoulderWidth), of(back, backArmhole), forward],
            (a, b, f) => (a - b + 2 * ALONG_ARMHOLE * f) / OVER_ARMHOLE,
          )
        : reckon(
            [edgeOf(cup, "armhole", place), sideAbove, backBust],
            (edge, above, bust) => edge + DOWN_ARMHOLE * above - 2 * OUT_AT_SIDE * bust,
          ),
    neckFront: edgeOf(breast, "neck", place),
    neckBack: back?.points.sideNeck === undefined ? undefined : seamOf(back, "neck"),
    cup: reckon([frontBust, backBust], (a, b) => a - b),
    bustSides: reckon([backBust], (b) => 2 * b),
    underBust: sum([frontBand, backBand].flatMap((p) => seamOf(p, "underBust") ?? [])),
    waist: sum(bodice.flatMap((p) => seamOf(p, "waist") ?? [])),
    hip: sum([frontBasque, backBasque].flatMap((p) => of(p, (one) => levelWidth(one, "hip")) ?? [])),
    bustLevel: fromTop(aim),
    bustOut: waistEnd?.x ?? aim?.x,
    sideDartOut: waistEnd === undefined ? undefined : mainEnd?.x,
    waistDartLevel: fromTop(waistEnd),
    sharp: mains.length === 0 ? undefined : SHARP_AT * Math.max(...mains.map(([piece, dart]) => opening(piece, dart))),
    strapLength: seamOf(strap, "neck"),
    strapPlace: place,
  };
  return Object.fromEntries(DIMENSIONS.flatMap((name) => (found[name] === undefined ? [] : [[name, found[name]]])));
}
