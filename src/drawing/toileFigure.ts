/**
 * Her toile to tap on: from before, from either side and from behind, with the places of the record numbered on it, and what
 * she saw drawn as it is drawn by hand on the printed record.
 */
import type { Half } from "../core/decisions/alteration";
import type { Closure } from "../core/decisions/pattern";
import type { Observation, TrialPlace } from "../core/decisions/trial";
import { isBasque, isFrontPiece, isOnBody } from "../core/pattern/pieceGroups";
import { isSameDart, type DartRef, type PieceName } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import {
  placeNumber,
  toilePlaces,
  type PlaceOnToile,
  type ToileView,
  type ToileViewName,
} from "../core/toile/toilePlaces";
import type { Mm } from "../core/units";
import { boundsOf, type Box } from "./layout";
import { laid, trialFigure, type TrialHalf, type TrialView } from "./trialFigure";

/** A point of a drawing, mm: across from its centre line, down. */
interface Spot {
  readonly x: Mm;
  readonly y: Mm;
}

export interface ToileNumber {
  readonly place: TrialPlace;
  readonly number: number;
  /** The wearer's own; null on the centre line, which is of both. */
  readonly half: Half | null;
  readonly dart?: DartRef;
  /** Middle of the disc, which lies on no other; and the place itself. */
  readonly at: Spot;
  readonly of: Spot;
}

export interface ToileFigure {
  readonly view: ToileViewName;
  readonly box: Box;
  readonly halves: readonly TrialHalf[];
  readonly numbers: readonly ToileNumber[];
}

/** Radius of a number's disc, mm of the pieces. */
export const DISC: Mm = 16;
/** White round the drawing. */
const ROOM: Mm = DISC + 4;

/** Each view of a toile in the order in which it is walked round. */
export function toileFigures(plan: Plan, closure: Closure): readonly ToileFigure[] {
  const places: Readonly<Record<Half, readonly PlaceOnToile[]>> = {
    left: toilePlaces(plan.left, closure),
    right: toilePlaces(plan.right, closure),
  };
  const [front, back] = trialFigure(plan);
  return [
    figureOf("front", "front", wider(front.box), front.halves, places),
    sideFigure(plan, "left", places),
    sideFigure(plan, "right", places),
    figureOf("back", "back", wider(back.box), back.halves, places),
  ];
}

/** The numbers of a view of the printed record, which has the sides on its front and back. */
export const numbersOn = (plan: Plan, closure: Closure, { side, box, halves }: TrialView): readonly ToileNumber[] =>
  figureOf(side, side, box, halves, {
    left: toilePlaces(plan.left, closure),
    right: toilePlaces(plan.right, closure),
  }).numbers;

const wider = ({ x, y, width, height }: Box): Box => ({
  x: x - ROOM,
  y: y - ROOM,
  width: width + 2 * ROOM,
  height: height + 2 * ROOM,
});

/** A drawn piece's point on the drawing. */
function onDrawing(groups: readonly TrialHalf[], half: Half, piece: PieceName, { x, y }: Spot): Spot | null {
  for (const group of groups) {
    if (group.half !== half) continue;
    const drawn = group.pieces.find((one) => one.piece === piece);
    if (drawn === undefined) continue;
    const across = x + drawn.across;
    return { x: group.mirrored ? -across : across, y: y + drawn.down };
  }
  return null;
}

function figureOf(
  view: ToileViewName,
  seenFrom: ToileView,
  box: Box,
  halves: readonly TrialHalf[],
  places: Readonly<Record<Half, readonly PlaceOnToile[]>>,
): ToileFigure {
  const shown = [...new Set(halves.map(({ half }) => half))];
  const numbers = shown.flatMap((half, index) =>
    places[half].flatMap(({ place, isCentre, spots }) =>
      spots.flatMap((spot): ToileNumber[] => {
        // What lies on the centre line is there once.
        if (spot.view !== seenFrom || (isCentre && index > 0 && seenFrom !== "side")) return [];
        const of = onDrawing(halves, half, spot.piece, spot.at);
        if (of === null) return [];
        const dart = spot.dart === undefined ? {} : { dart: spot.dart };
        return [{ place, number: placeNumber(place), half: isCentre ? null : half, ...dart, at: of, of }];
      }),
    ),
  );
  return { view, box, halves, numbers: apart(numbers, box) };
}

/** How often discs push each other: enough for any crowd of them that a bodice has. */
const PUSHES = 80;

/** Discs moved off each other and into the box, each as little as may be; their places stay. */
function apart(numbers: readonly ToileNumber[], box: Box): readonly ToileNumber[] {
  let spots: readonly Spot[] = numbers.map(({ of }) => of);
  for (let push = 0; push < PUSHES; push += 1) {
    spots = spots.map((spot, index) => {
      let { x, y } = spot;
      for (const [other, { x: ox, y: oy }] of spots.entries()) {
        if (other === index) continue;
        const [dx, dy] = [spot.x - ox, spot.y - oy];
        const off = Math.hypot(dx, dy);
        const over = 2 * DISC + 1 - off;
        if (over <= 0) continue;
        // Where two lie on the same spot, the one with the higher number goes down.
        const [ux, uy] = off === 0 ? [0, index > other ? 1 : -1] : [dx / off, dy / off];
        x += (ux * over) / 2;
        y += (uy * over) / 2;
      }
      // The opening and what lies between the breasts stay on the centre line.
      if (numbers[index]?.half === null) ({ x } = spot);
      return {
        x: Math.min(box.x + box.width - DISC, Math.max(box.x + DISC, x)),
        y: Math.min(box.y + box.height - DISC, Math.max(box.y + DISC, y)),
      };
    });
  }
  return numbers.map((number, index) => ({ ...number, at: spots[index] ?? number.of }));
}

/** How far front and back are seen from the side seam, and how far above the underarm. */
const SIDE_REACH: Mm = 130;
const ABOVE_UNDERARM: Mm = 80;
/** Between a front and a back beside it: their seam is seen as two lines. */
const SEAM: Mm = 2.5;

/** One who stands at her left sees her front at the left, at her right at the right. */
function sideFigure(plan: Plan, half: Half, places: Readonly<Record<Half, readonly PlaceOnToile[]>>): ToileFigure {
  const { pieces } = plan[half];
  const group = (isFront: boolean): TrialHalf => {
    const of = pieces.filter(({ name }) => isOnBody(name) && isFrontPiece(name) === isFront);
    const sides = laid(of, plan).filter(({ drawn }) =>
      of.some(({ name, edges }) => name === drawn.piece && edges.some(({ seam }) => seam === "side")),
    );
    return {
      half,
      mirrored: isFront === (half === "right"),
      pieces: sides.map(({ drawn, box }) => ({ ...drawn, across: drawn.across - (box.x + box.width) - SEAM })),
    };
  };
  const halves = [group(true), group(false)];
  const drawn = halves.flatMap((one) => one.pieces);
  const spans = pieces.flatMap((piece) => {
    const at = drawn.find((one) => one.piece === piece.name);
    if (at === undefined) return [];
    const { y, height } = boundsOf(piece);
    const top = piece.points.underarm?.at.y;
    return [
      {
        top: top === undefined ? Infinity : top - ABOVE_UNDERARM + at.down,
        foot: y + height + at.down,
        isBasque: isBasque(piece.name),
      },
    ];
  });
  const tops = spans.map(({ top }) => top).filter(Number.isFinite);
  const top = tops.length === 0 ? 0 : Math.min(...tops);
  const foot = Math.max(top + 1, ...spans.map((span) => span.foot));
  const box: Box = { x: -SIDE_REACH, y: top, width: 2 * SIDE_REACH, height: foot - top + ROOM };
  return figureOf(half === "left" ? "leftSide" : "rightSide", "side", box, halves, places);
}

/** What she saw, drawn: `line` is its number on the record. */
export interface DrawnSign {
  readonly line: number;
  readonly id: string;
  readonly path: string;
}

/** Half as long as a fold or slit is drawn, and how high its waves are, mm of the pieces. */
const REACH: Mm = 34;
const WAVE: Mm = 5;
const GAP: Mm = 6;
const HEAD: Mm = 9;

/** What was seen in one view: a fold a wavy line, a slit two lines, drag lines an arrow to where they point, a mark a cross. */
export function drawnSigns(figure: ToileFigure, lines: readonly Observation[]): readonly DrawnSign[] {
  return lines.flatMap((line, index) =>
    spotsOf(figure, line).flatMap(({ of, half }): DrawnSign[] => {
      const path = signPath(figure, line, of, half);
      return path === "" ? [] : [{ line: index + 1, id: line.id, path }];
    }),
  );
}

const spotsOf = ({ numbers }: ToileFigure, { place, half, dart }: Observation): readonly ToileNumber[] =>
  numbers.filter(
    (number) =>
      number.place === place &&
      (half === undefined || number.half === null || number.half === half) &&
      (dart === undefined || number.dart === undefined || isSameDart(dart, number.dart)),
  );

function signPath(figure: ToileFigure, line: Observation, of: Spot, half: Half | null): string {
  const { sign, way, towards, mark } = line;
  /** Away from the centre line on this drawing. */
  const out = figure.halves.find((one) => one.half === half)?.mirrored === true ? -1 : 1;
  const to = figure.numbers.find(
    (number) => number.place === towards && (number.half === half || number.half === null || half === null),
  )?.of;
  if (sign === undefined) return "";
  switch (sign) {
    case "foldAcross":
      return way === "letOut" ? slit(of, "across") : wave(of, "across");
    case "foldAlong":
    case "gapes":
      return way === "letOut" ? slit(of, "along") : wave(of, "along");
    case "tight":
    case "flat":
      return slit(of, "along");
    case "dragLines":
      // What points at a place of another view is drawn where both are seen.
      return to !== undefined ? arrow(of, to) : towards === undefined ? wave(of, "across") : "";
    case "dartEnds":
    case "bustPoint":
      return cross({ x: of.x + out * (mark?.out ?? 0), y: of.y + (mark?.down ?? 0) });
    case "pointed":
      return `M${of.x - GAP} ${of.y + GAP}L${of.x} ${of.y - GAP}L${of.x + GAP} ${of.y + GAP}`;
    case "ridesUp":
      return arrow(of, { x: of.x, y: of.y - REACH });
    case "drops":
    case "slips":
      return arrow(of, { x: of.x, y: of.y + REACH });
    case "cutsIn":
    case "doesNotMeet":
      return slit(of, "along");
    case "overlaps":
      return wave(of, "along");
    case "endsOutside":
      return arrow(of, { x: of.x + out * REACH, y: of.y });
    case "endsInside":
      return arrow(of, { x: of.x - out * REACH, y: of.y });
    case "leansForward":
    case "leansBack":
      return arrow(of, { x: of.x + leaning(figure, sign, out) * REACH, y: of.y });
  }
}

/** To which side of a drawing forward is: towards her front. */
function leaning({ view }: ToileFigure, sign: "leansForward" | "leansBack", out: 1 | -1): number {
  const forward = view === "leftSide" ? -1 : view === "rightSide" ? 1 : view === "front" ? -out : out;
  return sign === "leansForward" ? forward : -forward;
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
const written = ({ x, y }: Spot): string => `${tenth(x)} ${tenth(y)}`;

function wave({ x, y }: Spot, run: "across" | "along"): string {
  const parts = Array.from({ length: 6 }, (_, index) => `q${step(run, index)}`).join("");
  return `M${written(run === "across" ? { x: x - REACH, y } : { x, y: y - REACH })}${parts}`;
}

/** A sixth of a wavy line. */
function step(run: "across" | "along", index: number): string {
  const third = tenth(REACH / 3);
  const side = index % 2 === 0 ? -2 * WAVE : 2 * WAVE;
  return run === "across" ? `${third / 2} ${side} ${third} 0` : `${side} ${third / 2} 0 ${third}`;
}

function slit({ x, y }: Spot, run: "across" | "along"): string {
  const [half, reach] = [GAP / 2, REACH];
  return run === "across"
    ? `M${tenth(x - reach)} ${tenth(y - half)}h${2 * reach}M${tenth(x - reach)} ${tenth(y + half)}h${2 * reach}`
    : `M${tenth(x - half)} ${tenth(y - reach)}v${2 * reach}M${tenth(x + half)} ${tenth(y - reach)}v${2 * reach}`;
}

function arrow(from: Spot, to: Spot): string {
  const angle = Math.atan2(to.y - from.y, to.x - from.x);
  const barb = (turn: number): Spot => ({
    x: to.x + HEAD * Math.cos(angle + turn),
    y: to.y + HEAD * Math.sin(angle + turn),
  });
  const [one, other] = [barb(Math.PI * 0.85), barb(-Math.PI * 0.85)];
  return `M${written(from)}L${written(to)}M${written(one)}L${written(to)}L${written(other)}`;
}

const cross = ({ x, y }: Spot): string => `M${tenth(x - 8)} ${tenth(y)}h16M${tenth(x)} ${tenth(y - 8)}v16`;
