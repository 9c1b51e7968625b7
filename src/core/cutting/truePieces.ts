/** Pieces of a plan at true scale: cutting lines, notches, darts, grain and the rest, made anew from the pieces as they are. */
import type { Half } from "../decisions/alteration";
import type { Closure } from "../decisions/pattern";
import { isSamePiece, PIECE_ORDER, piecesOf, type PieceSet, setOf } from "../pattern/pieceSet";
import { dartCap } from "../dart/dartCap";
import { legsOf } from "../dart/bowedLegs";
import { edgeFlatten, edgeMap, edgeReverse, type EdgeCurve } from "../geometry/edgeCurve";
import { validateOutline } from "../geometry/outline";
import { between, directionOf, distance, piecePoint, type PiecePoint } from "../geometry/point";
import { pointOf, type Dart, type Piece, type PieceName, type SeamName } from "../pattern/piece";
import { isBasque, isBelowWaist, isFrontPiece } from "../pattern/pieceGroups";
import type { Plan, PlanHalf } from "../plan/plan";
import { fail, invariant, ok, type Result } from "../result";
import { outlineOf } from "../pattern/ring";
import { lineDistance } from "../geometry/segment";
import { CUTTING_ACCURACY, ON_FOLD, SAME_LINE } from "../tolerance";
import type { Allowances } from "../decisions/allowances";
import { buttonholeAt, buttonPlaces, type Below } from "./buttons";
import { cuttingLine } from "../allowance/cuttingLine";
import { cutNotch, notchesOfHalves, ownNotches, type NotchPlace, type OfHalves } from "./notches";
import { lengthenLines, type LengthenLine } from "./lengthenLines";
import { grainLine, titleBox, type Lines } from "./room";
import type { Stretch } from "../allowance/cutStretch";
import { stretchesOf } from "./stretches";
import { tackingRows } from "./tacking";
import { isTurnedOver } from "./turnedOver";
import { radians } from "../units";
import type { CutCount, Drill, RingPoint, SeamRun, TrueDart, TruePiece } from "./truePiece";
import type { WalkedPlace } from "./walk";

export interface TrueOptions {
  /** Those wanted; a piece that is not there is passed over. */
  readonly names: readonly PieceName[];
  /** Label of a printed size; null: the wearer's own pieces. */
  readonly size: string | null;
  /** null: cut along the stitch line. */
  readonly allowances: Allowances | null;
  readonly closure: Closure;
  /**
   * What else is sewn to the wearer's own pieces, her left half first: panels of a skirt, facings. They are notched together,
   * and what hangs there takes the place of a basque.
   */
  readonly sewnOn?: readonly [PieceSet, PieceSet];
  /** Pieces that the dress is cut without, where other pieces or parts take their place. */
  readonly replaced?: readonly PieceName[];
  /** The skirt that hangs on the wearer's own pieces: buttons go on down its centre back. */
  readonly skirt?: Skirted | null;
}

/** The shell of a skirt: its panels, her left half first; without panels it is given by its measures. */
export interface Skirted {
  readonly panels: readonly [PieceSet, PieceSet];
  readonly below: Below;
}

/** The outline of a piece crosses itself, is open or not finite. */
export interface OutlineRefused {
  readonly code: "paper/outline-refused";
  readonly piece: PieceName;
  readonly half: Half | null;
}

/** All pieces wanted, in the order of the pattern; both halves of those that differ, the left one first. */
export function truePiecesOf(plan: Plan, options: TrueOptions): Result<readonly TruePiece[], OutlineRefused> {
  const { size, closure } = options;
  const left = setOf(size === null ? plan.left.pieces : (plan.nest.sizes[plan.nest.labels.indexOf(size)] ?? []));
  const isOne = plan.right === plan.left && options.sewnOn?.[0] === options.sewnOn?.[1];
  const right = size === null && !isOne ? setOf(plan.right.pieces) : null;
  const bustPointOf = (set: PieceSet, { bustPoint }: PlanHalf): PiecePoint | null =>
    size === null ? (bustPoint.own ?? bustPoint.printed) : (set[plan.bustPiece]?.points.bustPoint?.at ?? null);
  const { sewnOn, replaced = [], skirt = null } = size === null ? options : {};
  const [here, there] = [0, 1].map((half): Cut => {
    const pieces = half === 1 && right !== null ? right : left;
    const hung = sewnOn?.[half];
    const hangs = hung !== undefined && piecesOf(hung).some(({ name }) => isBelowWaist(name));
    const kept = setOf(piecesOf(pieces).filter(({ name }) => !replaced.includes(name) && !(hangs && isBasque(name))));
    return {
      pieces,
      sewn: { ...kept, ...hung },
      backs: { ...kept, ...skirt?.panels[half] },
      below: skirt?.below ?? "drafted",
    };
  });
  const [own, other] = [invariant(here, "half"), invariant(there, "half")];
  const [leftNotches, rightNotches] = notchesOn([own, other], closure);
  const marks = marksOf(own, closure, { notches: leftNotches, bustPoint: bustPointOf(left, plan.left) });
  const rightMarks =
    right === null
      ? marks
      : marksOf(other, closure, { notches: rightNotches, bustPoint: bustPointOf(right, plan.right), meets: own });
  const names = PIECE_ORDER.filter((name) => left[name] !== undefined || right?.[name] !== undefined);
  const made: TruePiece[] = [];
  for (const name of PIECE_ORDER) {
    const [one, two] = [left[name], right?.[name]];
    if (!options.names.includes(name) || one === undefined) continue;
    const even = two === undefined || (isSamePiece(one, two) && areSameMarks(marks, rightMarks, name));
    const halves: readonly (readonly [Piece, Half | null, Marks])[] = even
      ? [[one, null, marks]]
      : [
          [one, "left", marks],
          [two, "right", rightMarks],
        ];
    for (const [piece, half, { notches, buttons, lengthen }] of halves) {
      if (isRefused(piece)) return fail({ code: "paper/outline-refused", piece: name, half });
      const bustPoint = name === plan.bustPiece ? bustPointOf({ [name]: piece }, plan[half ?? "left"]) : null;
      const on = <P extends WalkedPlace>(places: readonly P[]): readonly P[] =>
        places.filter((place) => place.piece === name);
      const drawn = truePiece(piece, {
        size,
        allowances: options.allowances,
        closure,
        key: keyOf(name, half, size),
        half,
        label: labelOf(plan, name),
        number: [names.indexOf(name) + 1, names.length],
        notches: on(notches),
        buttons: on(buttons),
        lengthen: lengthen.filter((line) => line.piece === name),
        bustPoint,
        cut: cutCount(piece, half),
      });
      if (drawn.cutting.length < 3) return fail({ code: "paper/outline-refused", piece: name, half });
      made.push(isTurnedOver(name, half) ? turnedOver(drawn) : drawn);
    }
  }
  return ok(made);
}

/** What is placed along seams of several pieces at once. */
interface Marks {
  readonly notches: readonly NotchPlace[];
  readonly buttons: readonly WalkedPlace[];
  readonly lengthen: readonly LengthenLine[];
}

/** Whether buttons and notches come at the same places on both halves: about a piece that is alike on both, these may differ. */
function areSameMarks(one: Marks, other: Marks, name: PieceName): boolean {
  const on = <P extends WalkedPlace>(places: readonly P[]): readonly P[] =>
    places.filter(({ piece }) => piece === name);
  return areSamePlaces(on(one.buttons), on(other.buttons)) && areSamePlaces(on(one.notches), on(other.notches));
}

/** Whether marks of one piece come at the same places on both halves. */
export const areSamePlaces = (these: readonly WalkedPlace[], those: readonly WalkedPlace[]): boolean =>
  these.length === those.length &&
  these.every(({ at }, index) => distance(at, invariant(those[index], "mark").at) < SAME_LINE);

/** Pieces of one half; what of them is sewn, with what hangs there, and what buttons go down: without what the dress is cut without. */
interface Cut {
  readonly pieces: PieceSet;
  readonly sewn: PieceSet;
  readonly backs: PieceSet;
  readonly below: Below;
}

interface MarksFrom {
  readonly notches: readonly NotchPlace[];
  readonly bustPoint: PiecePoint | null;
  /** Another half whose buttons these meet. */
  readonly meets?: Cut;
}

function marksOf(own: Cut, closure: Closure, { notches, bustPoint, meets = own }: MarksFrom): Marks {
  const { pieces, backs, below } = own;
  return {
    notches,
    buttons: [
      ...buttonPlaces(backs, closure, meets.backs, below),
      ...(isBeside(own) ? buttonPlaces(pieces, closure, meets.pieces).filter(({ piece }) => isBasque(piece)) : []),
    ],
    lengthen: bustPoint === null ? [] : lengthenLines(pieces, bustPoint),
  };
}

/** A basque that is printed beside what takes its place is marked as it is without that. */
const isBeside = ({ pieces, sewn }: Cut): boolean =>
  piecesOf(pieces).some(({ name }) => isBasque(name) && sewn[name] === undefined);

/** Notches of both halves, the left one first. */
function notchesOn([left, right]: OfHalves<Cut>, closure: Closure): OfHalves<readonly NotchPlace[]> {
  const [these, those] = notchesOfHalves([left.sewn, right.sewn], closure);
  if (!isBeside(left)) return [these, those];
  const [one, other] = notchesOfHalves([left.pieces, right.pieces], closure).map((places) =>
    places.filter(({ piece }) => isBasque(piece)),
  );
  return [
    [...these, ...(one ?? [])],
    [...those, ...(other ?? [])],
  ];
}

/** An edge too short to sew is a doubt, told elsewhere; an outline that is not one cannot be cut. */
export const isRefused = (piece: Piece): boolean =>
  validateOutline(outlineOf(piece)).some(({ code }) => code !== "outline/short-edge");

const labelOf = ({ nest }: Plan, name: PieceName): string | undefined =>
  Object.entries(nest.otherNames ?? {}).find(([other]) => other === name)?.[1];

/** Of one piece: what is drawn on it from elsewhere. */
export interface OneOptions extends Pick<TrueOptions, "size" | "allowances" | "closure"> {
  readonly key: string;
  readonly label: string | undefined;
  readonly half: Half | null;
  readonly number: TruePiece["number"];
  readonly lengthen: readonly LengthenLine[];
  readonly notches: readonly NotchPlace[];
  readonly buttons: readonly WalkedPlace[];
  readonly bustPoint: PiecePoint | null;
  readonly cut: CutCount;
}

const keyOf = (name: PieceName, half: Half | null, size: string | null): string =>
  [name, half, size === null ? null : `size-${size.replaceAll(/[^A-Za-z0-9]+/gu, "-")}`]
    .filter((part) => part !== null)
    .join("-");

/** One piece with all that is drawn on it, as its printed side shows it where it is not turned over. */
export function truePiece(
  piece: Piece,
  { key, size, allowances, closure, half, label, number, notches, buttons, lengthen, bustPoint, cut }: OneOptions,
): TruePiece {
  const stretches = stretchesOf(piece, allowances);
  const cutting = cuttingLine(stretches);
  const stitch = stretches.map(({ curve }) => curve);
  const darts = piece.darts.map((dart) => trueDart(piece, dart, cutting));
  const ventFold = ventFoldOf(piece, cutting);
  const levels = piece.levelLines.flatMap(({ level, along }) =>
    "points" in along ? [{ level, points: along.points.map((point) => pointOf(piece, point)) }] : [],
  );
  const ring = ringOf(stitch);
  const drills: readonly Drill[] = [
    ...darts.filter(({ gathered }) => !gathered).map(({ end }): Drill => ({ what: "dartEnd", at: end })),
    ...buttons.map((place): Drill => ({ what: "button", at: place.at, hole: buttonholeAt(place) })),
  ];
  const lines = linesOn({ darts, ventFold, levels, bustPoint, drills });
  // It may cross the balance lines, as it does on any pattern.
  const grain = grainLine(ring, linesOn({ darts, ventFold, levels: [], bustPoint, drills }));
  const title = titleBox(ring, [...lines, grain]);
  return {
    key,
    name: piece.name,
    ...(label === undefined ? {} : { label }),
    half,
    size,
    number,
    cutting,
    stitch,
    fold: stretches.filter(({ fold }) => fold).map(({ curve }) => curve),
    centreSeam: stretches.filter(({ fold, seam, cap }) => seam === "centre" && !fold && !cap).map(({ curve }) => curve),
    seams: seamRuns(stretches).map((run): SeamRun => ({ ...run, opens: opensBy(run.seam, piece, half, closure) })),
    lengthen: lengthen.map(({ from, to }) => [from, to] as const),
    darts,
    ventFold,
    notches: [
      // The right side stays shut.
      ...notches.filter(({ kind }) => kind !== "opening" || closure.place !== "side" || half !== "right"),
      ...ownNotches(piece, piece.centreOnFold),
    ].map((place) => cutNotch(place, cutting)),
    grain,
    levels,
    bustPoint,
    drills,
    dots: DOTTED.flatMap((name) => piece.points[name]?.at ?? []),
    cut,
    tacking:
      half === null ? [] : tackingRows(half, ring, [...lines, grain, ...boxLines(title)], between(...grain, TACKED_AT)),
    title,
  };
}

/** Tacking stands as near as can be to this share of the grain line from above. */
const TACKED_AT = 0.75;
/** mm. No row of tacking is as short. */
const TACKED_CLEAR = 8;

/** A box as lines that nothing fits between. */
const boxLines = ({ centre: { x, y }, width, height }: TruePiece["title"]): Lines =>
  Array.from({ length: Math.ceil(height / TACKED_CLEAR) + 1 }, (_, row) => {
    const level = y - height / 2 + Math.min(height, row * TACKED_CLEAR);
    return [piecePoint(x - width / 2, level), piecePoint(x + width / 2, level)];
  });

/** Stretches of one seam that follow one another, darts and folds left out; the ring may begin in the middle of one. */
function seamRuns(stretches: readonly Stretch[]): readonly Pick<SeamRun, "seam" | "edges">[] {
  const runs: { seam: SeamName; edges: EdgeCurve<"piece">[] }[] = [];
  const sewn = stretches.map((stretch) => (stretch.fold || stretch.cap ? null : stretch));
  const start = sewn.findIndex((stretch, index) => stretch?.seam !== sewn.at(index - 1)?.seam);
  let last: SeamName | null = null;
  for (const stretch of [...sewn.slice(Math.max(0, start)), ...sewn.slice(0, Math.max(0, start))]) {
    if (stretch !== null && stretch.seam === last) runs.at(-1)?.edges.push(stretch.curve);
    else if (stretch !== null) runs.push({ seam: stretch.seam, edges: [stretch.curve] });
    last = stretch?.seam ?? null;
  }
  return runs;
}

/** How a seam opens: at the centre back, or on the left side (common practice, no source); below the waist as far as it is said to. */
function opensBy(
  seam: SeamName,
  { name, centreOnFold }: Piece,
  half: Half | null,
  { place, belowWaist, buttons }: Closure,
): SeamRun["opens"] {
  if (isBelowWaist(name) && belowWaist <= 0) return null;
  if (place === "side") return seam === "side" && half !== "right" ? "zip" : null;
  const opens = seam === "centre" && !centreOnFold && !isFrontPiece(name);
  return opens ? (buttons === undefined ? "zip" : "buttons") : null;
}

/** A princess seam is sharp at one piece's end and blunt at the other's. */
const DOTTED = ["princessTop", "princessWaist"] as const;

/** A strap is two layers, sewn along both edges and turned: a single one would have raw edges. */
function cutCount({ name, centreOnFold }: Piece, half: Half | null): CutCount {
  if (centreOnFold) return { onFold: true, count: 1 };
  const layers = name === "strap" ? 2 : 1;
  return { onFold: false, count: half === null ? (layers === 2 ? 4 : 2) : layers };
}

const ringOf = (stitch: readonly EdgeCurve<"piece">[]): readonly PiecePoint[] =>
  stitch.flatMap((curve) => edgeFlatten(curve, CUTTING_ACCURACY).slice(1));

/** Half the width that a bust point's cross takes. */
const CROSS = 8;

/** What a title must not cross. */
const linesOn = ({
  darts,
  ventFold,
  levels,
  bustPoint,
  drills,
  tacking = [],
}: Pick<TruePiece, "darts" | "ventFold" | "levels" | "bustPoint" | "drills"> &
  Partial<Pick<TruePiece, "tacking">>): Lines => [
  ...tacking,
  ...(ventFold === null ? [] : [ventFold]),
  ...drills.flatMap((drill) => (drill.what === "button" ? [drill.hole] : [])),
  ...darts.flatMap(({ legs, fold }) => [
    ...legs.map((leg) => edgeFlatten(leg, CUTTING_ACCURACY)),
    ...(fold === null ? [] : [fold]),
  ]),
  ...levels.map(({ points }) => points),
  ...(bustPoint === null
    ? []
    : [
        [piecePoint(bustPoint.x - CROSS, bustPoint.y), piecePoint(bustPoint.x + CROSS, bustPoint.y)],
        [piecePoint(bustPoint.x, bustPoint.y - CROSS), piecePoint(bustPoint.x, bustPoint.y + CROSS)],
      ]),
];

/** The piece with its title moved clear of some more lines, the borders of pages, where there is room enough for it. */
export function titledClearOf(piece: TruePiece, borders: Lines): TruePiece {
  const title = titleBox(ringOf(piece.stitch), [...linesOn(piece), piece.grain, ...borders]);
  return roomOf(title) >= roomOf(piece.title) * LEAST_TITLE ? { ...piece, title } : piece;
}

const roomOf = ({ width, height }: TruePiece["title"]): number => width * height;

/** A title parted by a page's border is easier to read than one of less than this share of its room. */
const LEAST_TITLE = 0.3;

function trueDart(piece: Piece, dart: Dart, cutting: readonly RingPoint[]): TrueDart {
  const end = pointOf(piece, dart.apex);
  const mouth = [pointOf(piece, dart.inner), pointOf(piece, dart.outer)] as const;
  if (dart.gathered === true) return { name: dart.name, legs: [], fold: null, end, mouth, gathered: true };
  const legs = legsOf(piece, dart.name);
  const [, tip] = dartCap(piece, dart.name);
  const fold = cutNotch(
    { piece: piece.name, kind: "dart", number: 0, seam: dart.seam, at: tip, outward: directionOf(end, tip) },
    cutting,
  );
  return {
    name: dart.name,
    legs: [legs.inner.curve, legs.outer.curve],
    fold: [end, fold.cut],
    end,
    mouth,
    gathered: false,
  };
}

/** Carried on over the hem allowance, as the fold of a dart is over the seam's. */
function ventFoldOf({ name, points }: Piece, cutting: readonly RingPoint[]): TruePiece["ventFold"] {
  const [top, hem] = [points.ventTop?.at, points.centreHem?.at];
  if (top === undefined || hem === undefined) return null;
  const outward = directionOf(top, hem);
  const { cut } = cutNotch({ piece: name, kind: "dart", number: 0, seam: "hem", at: hem, outward }, cutting);
  return [top, cut];
}

const acrossCentre = ({ x, y }: PiecePoint): PiecePoint => piecePoint(-x, y);

/** The piece seen from its other side. */
export function turnedOver(piece: TruePiece): TruePiece {
  const at = acrossCentre;
  const curve = (edge: EdgeCurve<"piece">): EdgeCurve<"piece"> => edgeMap(edge, at);
  return {
    ...piece,
    // Turned over, a ring that went clockwise goes the other way; it is read backwards, so that it goes clockwise again.
    cutting: piece.cutting.map(({ at: p, corner }) => ({ at: at(p), corner })).toReversed(),
    stitch: piece.stitch.map((edge) => edgeReverse(curve(edge))).toReversed(),
    fold: piece.fold.map(curve),
    centreSeam: piece.centreSeam.map(curve),
    seams: piece.seams.map(({ edges, ...run }) => ({
      ...run,
      edges: edges.map((edge) => edgeReverse(curve(edge))).toReversed(),
    })),
    lengthen: piece.lengthen.map(([from, to]) => [at(from), at(to)] as const),
    darts: piece.darts.map(({ name, legs, fold, end, mouth, gathered }) => ({
      name,
      legs: legs.map(curve),
      fold: fold === null ? null : [at(fold[0]), at(fold[1])],
      end: at(end),
      mouth: [at(mouth[0]), at(mouth[1])],
      gathered,
    })),
    ventFold: piece.ventFold === null ? null : [at(piece.ventFold[0]), at(piece.ventFold[1])],
    notches: piece.notches.map((notch) => ({
      ...notch,
      outward: radians(Math.PI - notch.outward),
      stitch: at(notch.stitch),
      cut: at(notch.cut),
      ...(notch.twins === undefined
        ? {}
        : {
            twins: [
              { stitch: at(notch.twins[0].stitch), cut: at(notch.twins[0].cut) },
              { stitch: at(notch.twins[1].stitch), cut: at(notch.twins[1].cut) },
            ] as const,
          }),
    })),
    grain: [at(piece.grain[0]), at(piece.grain[1])],
    levels: piece.levels.map(({ level, points }) => ({ level, points: points.map(at) })),
    bustPoint: piece.bustPoint === null ? null : at(piece.bustPoint),
    drills: piece.drills.map((drill): Drill =>
      drill.what === "dartEnd"
        ? { ...drill, at: at(drill.at) }
        : { ...drill, at: at(drill.at), hole: [at(drill.hole[0]), at(drill.hole[1])] },
    ),
    dots: piece.dots.map(at),
    tacking: piece.tacking.map(([from, to]) => [at(from), at(to)] as const),
    title: { ...piece.title, centre: at(piece.title.centre) },
  };
}

/**
 * The fold of a piece from one end of its cutting line to the other, allowances and all, upper end first; null where none
 * of it lies on a fold or is joined to another half.
 */
export function foldOf({
  fold,
  cutting,
}: Pick<TruePiece, "fold" | "cutting">): readonly [PiecePoint, PiecePoint] | null {
  const [first, last] = [fold[0], fold.at(-1)];
  if (first === undefined || last === undefined) return null;
  const way = directionOf(first.a, last.b);
  const on = [first.a, last.b, ...cutting.map(({ at }) => at)]
    .filter((p) => Math.abs(lineDistance(p, first.a, last.b)) < ON_FOLD)
    .toSorted((p, q) => (p.x - q.x) * Math.cos(way) + (p.y - q.y) * Math.sin(way));
  const ends = [invariant(on[0], "end of a fold"), invariant(on.at(-1), "end of a fold")] as const;
  return ends[0].y <= ends[1].y ? ends : [ends[1], ends[0]];
}
