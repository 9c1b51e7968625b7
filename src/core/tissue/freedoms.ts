/**
 * In what patterns differ from our stand-in: each freedom moves a few named points together, by so much of a millimetre for
 * each, and has the spread that it usually has. All else of a piece follows its points. The spreads are our own choice, held
 * against test nests of another drafting (`npm run tissue`).
 */
import type { Dart, Piece, PieceName, PointName } from "../pattern/piece";
import { directionOf, midpoint } from "../geometry/point";
import { pointOf } from "../pattern/piece";
import type { Mm } from "../units";
import { dartFromBelow, dartToBust } from "./tapeWays";

/** x and y of a point for each millimetre of the freedom. */
export type Moves = Partial<Record<PointName, readonly [number, number]>>;

/** What a freedom grows with: it is nothing in the size measured, and one for the step to the next size. */
export type Grade = "bust" | "waist" | "hip";

export interface Freedom {
  readonly name: string;
  /** One standard deviation, mm. */
  readonly spread: Mm;
  readonly grade: Grade | null;
  /** null: does not touch that piece. */
  readonly movesOf: (piece: Piece) => Moves | null;
}

const FRONT: readonly PieceName[] = ["front", "centreFront", "sideFront", "cup", "frontBand"];
const BACK: readonly PieceName[] = ["back", "backBand"];
const BASQUE: readonly PieceName[] = ["frontBasque", "backBasque"];
const BODICE = [...FRONT, ...BACK];

type Weights = Readonly<Partial<Record<PointName, number>>>;

const alongX = (weights: Weights, share = 1): Moves =>
  Object.fromEntries(Object.entries(weights).map(([name, weight]) => [name, [weight * share, 0]]));
const alongY = (weights: Weights): Moves =>
  Object.fromEntries(Object.entries(weights).map(([name, weight]) => [name, [0, weight]]));

const freedom = (
  name: string,
  spread: Mm,
  pieces: readonly PieceName[],
  moves: Moves | ((piece: Piece) => Moves | null),
  grade: Grade | null = null,
): Freedom => ({
  name,
  spread,
  grade,
  movesOf: (piece) => (!pieces.includes(piece.name) ? null : typeof moves === "function" ? moves(piece) : moves),
});

/** One freedom that both halves share and one for each alone. */
const both = (
  name: string,
  [together, front, back]: readonly [Mm, Mm, Mm],
  moves: Moves | ((piece: Piece) => Moves | null),
  grade: Grade | null = null,
): readonly Freedom[] => [
  freedom(name, together, BODICE, moves, grade),
  freedom(`${name}Front`, front, FRONT, moves, grade),
  freedom(`${name}Back`, back, BACK, moves, grade),
];

const onEach = (
  pieces: readonly PieceName[],
  name: string,
  spread: Mm,
  moves: Moves | ((piece: Piece) => Moves | null),
  grade: Grade | null = null,
): readonly Freedom[] => pieces.map((piece) => freedom(`${name}:${piece}`, spread, [piece], moves, grade));

// The side of a piece goes along with the bust line at its upper end and with the waist at its lower one.
const SIDE_AT_BUST: Weights = {
  underarm: 1,
  sideBust: 1,
  sideDartInner: 0.8,
  sideDartOuter: 0.7,
  sideUnderBust: 0.5,
};
const SIDE_AT_WAIST: Weights = {
  sideWaist: 1,
  sideDartInner: 0.2,
  sideDartOuter: 0.3,
  sideUnderBust: 0.5,
};
const SHOULDERS: Weights = {
  sideNeck: 1,
  shoulderTip: 1,
  strapInner: 1,
  strapOuter: 1,
  strapAim: 1,
  centreNeck: 1,
};
const BUST_POINT: readonly PointName[] = ["bustPoint", "bustLineInner", "bustLineOuter", "princessBust"];

/** The ends of all darts that aim at the bust point, and the mouth of the one from below: they go along with it. */
function withBustDarts(piece: Piece, x: number, y: number): Moves {
  const moves: Moves = {};
  for (const name of BUST_POINT) moves[name] = [x, y];
  for (const dart of piece.darts) if (dart.aimsAt !== null) moves[dart.apex] = [x, y];
  return moves;
}

const lengthOf = (piece: Piece, dart: Dart | undefined): Moves | null => {
  if (dart === undefined) return null;
  const way = directionOf(midpoint(pointOf(piece, dart.inner), pointOf(piece, dart.outer)), pointOf(piece, dart.apex));
  return { [dart.apex]: [Math.cos(way), Math.sin(way)] };
};

/** A dart from below opened wider: what it takes is added at the side, so that the sewn seam stays. */
const mouthOf = (piece: Piece): Moves | null => {
  const dart = dartFromBelow(piece);
  if (dart === undefined) return null;
  const side: PointName = dart.seam === "waist" ? "sideWaist" : "sideUnderBust";
  return { [dart.inner]: [-0.5, 0], [dart.outer]: [0.5, 0], [side]: [1, 0] };
};

/** A dart from below set further out. */
const placeOf = (piece: Piece): Moves | null => {
  const dart = dartFromBelow(piece);
  return dart === undefined ? null : { [dart.inner]: [1, 0], [dart.outer]: [1, 0], [dart.apex]: [1, 0] };
};

const mouthEnds = (
  piece: Piece,
  moves: readonly [readonly [number, number], readonly [number, number]],
): Moves | null => {
  const dart = dartFromBelow(piece);
  return dart === undefined ? null : { [dart.inner]: moves[0], [dart.outer]: moves[1] };
};

/** A dart from the side moved along it: it turns about its end, so that its legs stay. */
const turnedAboutEnd = (piece: Piece): Moves | null => {
  const dart = dartToBust(piece);
  if (dart === undefined) return null;
  const end = pointOf(piece, dart.apex);
  const turned = (name: PointName): readonly [number, number] => {
    const { x, y } = pointOf(piece, name);
    return [x === end.x ? 0 : -(y - end.y) / (x - end.x), 1];
  };
  return { [dart.inner]: turned(dart.inner), [dart.outer]: turned(dart.outer) };
};

const withDart = (find: (piece: Piece) => Dart | undefined, moves: (dart: Dart) => Moves) => (piece: Piece) => {
  const dart = find(piece);
  return dart === undefined ? null : moves(dart);
};

const PRINCESS: readonly PieceName[] = ["centreFront", "sideFront"];

/** A princess seam that takes more at the waist, the sewn seam kept. */
const princessIntake = (piece: Piece): Moves | null => {
  if (piece.name === "centreFront") return { princessWaist: [-0.5, 0] };
  return piece.name === "sideFront" ? { princessWaist: [0.5, 0], sideWaist: [1, 0] } : null;
};

export const FREEDOMS: readonly Freedom[] = [
  // Heights, from the waist at the centre.
  ...both("length", [18, 17, 26], {
    ...alongY(SHOULDERS),
    ...alongY({ princessTop: 1, armholeTouch: 0.6, underarm: 0.4, sideBust: 0.5, bustPoint: 0.5, bustLineInner: 0.5 }),
    ...alongY({ bustLineOuter: 0.5, centreBust: 0.5, princessBust: 0.5, sideDartInner: 0.4, sideDartOuter: 0.3 }),
    ...alongY({ underBustCentre: 0.25, sideUnderBust: 0.25, sideDartApex: 0.5, waistDartApex: 0.3 }),
    ...alongY({ bandTopMiddle: 0.25, underBustDartInner: 0.25, underBustDartOuter: 0.25, underBustDartApex: 0.4 }),
  }),
  ...both("underarm", [22, 12, 6], alongY({ underarm: 1, sideBust: 0.1, armholeTouch: 0.3 })),
  ...both("neckDepth", [6, 20, 18], alongY({ centreNeck: 1 })),
  ...both("neckRise", [0.5, 5, 4], alongY({ sideNeck: 1, princessTop: 0.5 })),
  ...both("slope", [11, 20, 6], alongY({ shoulderTip: 1, armholeTouch: 0.5, princessTop: 0.5 })),
  ...both("touch", [10, 30, 10], alongY({ armholeTouch: 1 })),
  ...both("bustHeight", [18, 14, 8], (piece) => ({
    ...withBustDarts(piece, 0, 1),
    ...alongY({
      centreBust: 1,
      sideBust: 1,
      underarm: 0.8,
      armholeTouch: 0.5,
      sideDartInner: 1,
      sideDartOuter: 1,
    }),
  })),
  ...both("sideWaist", [3, 13, 2], alongY({ sideWaist: 1 })),
  ...both("underBust", [9, 1, 1], {
    ...alongY({ underBustCentre: 1, sideUnderBust: 1, bandTopMiddle: 1, underBustDartInner: 1, underBustDartOuter: 1 }),
  }),
  ...onEach(["cup", "back", "frontBand", "backBand"], "sideUnderBust", 4, alongY({ sideUnderBust: 1 })),
  ...onEach(["frontBand", "backBand"], "bandMiddle", 3, alongY({ bandTopMiddle: 1 })),
  ...onEach(["frontBand", "backBand"], "waistMiddle", 3, alongY({ waistMiddle: 1 })),
  ...onEach(["frontBand", "backBand"], "middlesAcross", 6, alongX({ waistMiddle: 1, bandTopMiddle: 1 })),
  // Widths.
  freedom("bustGirth", 4.2, BODICE, alongX(SIDE_AT_BUST)),
  freedom("bustShared", 5, BODICE, (piece) => alongX(SIDE_AT_BUST, FRONT.includes(piece.name) ? 1 : -1)),
  ...both("sideBust", [1, 2, 2], alongX({ sideBust: 1, sideDartInner: 0.8, sideDartOuter: 0.7 })),
  freedom("waistGirth", 2.9, [...BODICE, ...BASQUE], alongX(SIDE_AT_WAIST)),
  freedom("waistShared", 8, [...BODICE, ...BASQUE], (piece) =>
    alongX(SIDE_AT_WAIST, FRONT.includes(piece.name) || piece.name === "frontBasque" ? 1 : -1),
  ),
  freedom("hipGirth", 3, BASQUE, alongX({ sideHip: 1, sideHem: 1 })),
  freedom("hipShared", 4, BASQUE, (piece) => alongX({ sideHip: 1, sideHem: 1 }, piece.name === "frontBasque" ? 1 : -1)),
  ...onEach(["cup", "back", "frontBand", "backBand"], "underBustWidth", 4, (piece) =>
    piece.edges.some(({ seam }) => seam === "underBust") ? alongX({ sideUnderBust: 1 }) : null,
  ),
  ...both("underarmAcross", [1, 12, 4], alongX({ underarm: 1 })),
  ...both("neckWidth", [14, 3, 3], alongX({ sideNeck: 1, princessTop: 0.5 })),
  ...both(
    "shoulderWidth",
    [16, 6, 4],
    alongX({ shoulderTip: 1, armholeTouch: 0.6, princessTop: 0.5, strapInner: 1, strapOuter: 1 }),
  ),
  ...both("across", [0.5, 9, 4], alongX({ armholeTouch: 1 })),
  ...onEach(["cup", "back"], "strapHeight", 12, alongY({ strapInner: 1, strapOuter: 1 })),
  // The bust point and the darts.
  freedom("bustPoint", 6, FRONT, (piece) => {
    const dart = dartFromBelow(piece);
    const mouth: Moves = dart === undefined ? {} : { [dart.inner]: [1, 0], [dart.outer]: [1, 0] };
    return { ...withBustDarts(piece, 1, 0), ...mouth, princessWaist: [1, 0] };
  }),
  ...onEach(["front", "cup", "back"], "dartMouth", 9, mouthOf),
  ...onEach(BASQUE, "dartMouth", 6, mouthOf),
  ...onEach(["front", "cup", "back"], "dartPlace", 12, placeOf),
  ...onEach(BASQUE, "dartPlace", 8, placeOf),
  ...onEach(
    ["front", "cup", "back", ...BASQUE],
    "dartLean",
    4,
    withDart(dartFromBelow, ({ apex }) => ({ [apex]: [1, 0] })),
  ),
  ...onEach(["front", "cup", "back", ...BASQUE], "dartLength", 13, (piece) => lengthOf(piece, dartFromBelow(piece))),
  ...onEach(["front", "cup", "back", ...BASQUE], "dartFall", 2.6, (piece) =>
    mouthEnds(piece, [
      [0, 1],
      [0, 1],
    ]),
  ),
  ...onEach(["front", "cup", "back", ...BASQUE], "dartLegs", 2, (piece) =>
    mouthEnds(piece, [
      [0, -0.5],
      [0, 0.5],
    ]),
  ),
  ...onEach(
    ["front", "cup"],
    "bustDartMouth",
    9,
    withDart(dartToBust, ({ inner, outer }) => ({
      underarm: [0, -0.4],
      sideBust: [0, -0.4],
      [inner]: [0, -0.5],
      [outer]: [0, 0.5],
      sideWaist: [0, 0.5],
    })),
  ),
  ...onEach(["front", "cup"], "bustDartPlace", 24, turnedAboutEnd),
  ...onEach(
    ["front", "cup"],
    "bustDartAcross",
    11,
    withDart(dartToBust, ({ inner, outer }) => ({ [inner]: [1, 0], [outer]: [1, 0] })),
  ),
  ...onEach(
    ["front", "cup"],
    "bustDartSide",
    8,
    withDart(dartToBust, ({ inner }) => ({ [inner]: [1, 0] })),
  ),
  ...onEach(
    ["front", "cup"],
    "bustDartLegs",
    16,
    withDart(dartToBust, ({ outer }) => ({ [outer]: [1, 0] })),
  ),
  ...onEach(["front", "cup"], "bustDartLength", 13, (piece) => lengthOf(piece, dartToBust(piece))),
  ...onEach(
    ["front", "cup"],
    "bustDartAim",
    6,
    withDart(dartToBust, ({ apex }) => ({ [apex]: [0, 1] })),
  ),
  // Princess seams.
  freedom("princessPlace", 6, PRINCESS, alongX({ princessWaist: 1 })),
  freedom("princessTopPlace", 9, PRINCESS, alongX({ princessTop: 1 })),
  freedom("princessTopHeight", 15, PRINCESS, alongY({ princessTop: 1 })),
  freedom("princessIntake", 9, PRINCESS, princessIntake),
  freedom("sideFrontLean", 10, ["sideFront"], alongX({ princessWaist: 1, sideWaist: 1 })),
  freedom("sideFrontShoulder", 25, ["sideFront"], alongY({ shoulderTip: 1 })),
  freedom("sideFrontTop", 28, ["sideFront"], alongY({ princessTop: 1, shoulderTip: 0.8, armholeTouch: 0.3 })),
  freedom("sideFrontTurn", 8, ["sideFront"], alongX({ princessTop: 1, shoulderTip: 0.8 })),
  ...onEach(PRINCESS, "princessFall", 3, alongY({ princessWaist: 1 })),
  ...onEach(PRINCESS, "princessBust", 2, alongY({ princessBust: 1 })),
  ...onEach(PRINCESS, "princessTop", 6, alongY({ princessTop: 1 })),
  // Below the waist.
  freedom("hipHeight", 9, BASQUE, alongY({ centreHip: 1, sideHip: 1, centreHem: 0.5, sideHem: 0.5 })),
  freedom("hem", 20, BASQUE, alongY({ centreHem: 1, sideHem: 1 })),
  freedom("sideRise", 10, BASQUE, alongY({ sideWaist: 1 })),
  ...onEach(BASQUE, "sideRise", 2, alongY({ sideWaist: 1 })),
  ...onEach(BASQUE, "sideHip", 3, alongY({ sideHip: 1, sideHem: 1 })),
  ...onEach(BASQUE, "basqueWaist", 1.5, alongX({ sideWaist: 1 })),
  ...onEach(BASQUE, "hemWidth", 5, alongX({ sideHem: 1 })),
  freedom("strapLength", 15, ["strap"], alongY({ strapFrontInner: 1, strapFrontOuter: 1 })),
  // From size to size.
  ...both("bustGrade", [0.5, 1.2, 1.2], alongX(SIDE_AT_BUST), "bust"),
  freedom("waistGrade", 0.5, [...BODICE, ...BASQUE], alongX(SIDE_AT_WAIST), "waist"),
  freedom(
    "waistGradeShared",
    1.2,
    [...BODICE, ...BASQUE],
    (piece) => alongX(SIDE_AT_WAIST, FRONT.includes(piece.name) || piece.name === "frontBasque" ? 1 : -1),
    "waist",
  ),
  freedom("hipGrade", 1, BASQUE, alongX({ sideHip: 1, sideHem: 1 }), "hip"),
  freedom(
    "hipGradeShared",
    1.2,
    BASQUE,
    (piece) => alongX({ sideHip: 1, sideHem: 1 }, piece.name === "frontBasque" ? 1 : -1),
    "hip",
  ),
  freedom("intakeGrade", 0.6, BODICE, (piece) => mouthOf(piece) ?? princessIntake(piece), "waist"),
  ...onEach(["front", "cup", "back", ...BASQUE], "dartMouthGrade", 1.3, mouthOf, "waist"),
  freedom("princessIntakeGrade", 1.3, PRINCESS, princessIntake, "waist"),
];
