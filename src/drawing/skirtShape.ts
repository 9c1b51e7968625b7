/** A skirt as it is seen worn: x from the centre outward, y down from the waist seam, mm. */
import type { Piece, SeamName } from "../core/pattern/piece";
import { pointOf } from "../core/pattern/piece";
import { seamLength } from "../core/girth/seamLength";
import { walkAlong } from "../core/cutting/walk";
import { edgePointAt } from "../core/geometry/edgeCurve";
import type { SkirtDraft, SkirtLevel } from "../core/skirts/skirtDraft";
import type { Mm } from "../core/units";
import { SEEN } from "./bodiceShape";
import type { Spot } from "./figure";
import { smoothOut } from "./smoothLine";

/** Worn, cloth beyond the body's own girth falls in folds: the more there is, the less of it is seen as width. So much is half seen, mm (our own choice). */
const HALF_SEEN: Mm = 1800;
/** Gathers hang straighter than cloth that is cut round (our own choice). */
const GATHERS_SEEN = 0.75;
/** A skirt is drawn in so many stretches from waist to hem. */
const STRETCHES = 48;

/** One tier, or the whole skirt. */
interface ShapedTier {
  readonly top: Mm;
  readonly foot: Mm;
  /** Whether it is gathered at its top. */
  readonly gathered: boolean;
}

export interface SkirtShape {
  /** Half of its width at a depth. */
  readonly out: (y: Mm) => Mm;
  readonly length: Mm;
  readonly tiers: readonly ShapedTier[];
  /** Folds that it falls in at the hem, all across; 0 where it lies smooth. */
  readonly folds: number;
}

/** The body under it. */
export interface BodyBelow {
  readonly waist: Mm;
  readonly hip: Mm | null;
  readonly hipDepth: Mm;
}

/** Where the hip is not known, so much of the waist (common practice, no source). */
const USUAL_HIP = 1.35;

export function skirtShape(skirt: SkirtDraft, body: BodyBelow): SkirtShape {
  const length = skirt.lengths.side;
  const girth = girthAt(skirt.levels);
  switch (skirt.kind) {
    case "aLine":
    case "straight": {
      const out = smoothOut(skirt.levels.map(({ below, girth: wide }) => ({ x: SEEN * wide, y: below })));
      return { out, length, tiers: [{ top: 0, foot: length, gathered: false }], folds: 0 };
    }
    default: {
      const bodyAt = smoothOut([
        { x: body.waist, y: 0 },
        { x: Math.max(body.hip ?? body.waist * USUAL_HIP, body.waist), y: Math.max(1, body.hipDepth) },
      ]);
      const isGathered = skirt.kind === "gathered" || skirt.kind === "tiers";
      const tiers = tiersOf(skirt, length, isGathered);
      const out = isGathered ? gathersOut(skirt, tiers, bodyAt) : roundOut(girth, bodyAt, length);
      return { out, length, tiers, folds: foldsOf(skirt.hem - bodyAt(length)) };
    }
  }
}

/** Even between two levels. */
function girthAt(levels: readonly SkirtLevel[]): (y: Mm) => Mm {
  return (y) => {
    const [first, last] = [levels[0], levels.at(-1)];
    if (first === undefined || last === undefined) return 0;
    const after = levels.findIndex(({ below }) => below > y);
    if (after === 0) return first.girth;
    const [from, to] = [levels[after - 1], levels[after]];
    if (from === undefined || to === undefined) return last.girth;
    return from.girth + ((to.girth - from.girth) * (y - from.below)) / (to.below - from.below);
  };
}

const seenOf = (more: Mm): Mm => (more <= 0 ? 0 : more / (1 + more / HALF_SEEN));

function tiersOf({ tiers }: SkirtDraft, length: Mm, gathered: boolean): readonly ShapedTier[] {
  if (tiers === undefined || tiers.length === 0) return [{ top: 0, foot: length, gathered }];
  const whole = tiers.reduce((sum, { depth }) => sum + depth, 0);
  let top = 0;
  return tiers.map(({ depth }): ShapedTier => {
    const from = top;
    top += (depth / whole) * length;
    return { top: from, foot: top, gathered: true };
  });
}

/** So far below its seam, as a share of its depth, a gathered tier has so much of what it spreads by (our own choice). */
const SPREAD_AT = 0.22;
const SPREAD_BY = 0.6;

/** Each tier goes on from the width that the one above it ends with. */
function gathersOut(
  { tiers: figures, hem }: SkirtDraft,
  tiers: readonly ShapedTier[],
  bodyAt: (y: Mm) => Mm,
): (y: Mm) => Mm {
  const places: Spot[] = [{ x: SEEN * bodyAt(0), y: 0 }];
  for (const [i, { top, foot }] of tiers.entries()) {
    const from = places.at(-1)?.x ?? 0;
    const more = seenOf((figures?.[i]?.width ?? hem) - bodyAt(foot));
    const to = Math.max(from, SEEN * (bodyAt(foot) + GATHERS_SEEN * more));
    places.push({ x: from + SPREAD_BY * (to - from), y: top + SPREAD_AT * (foot - top) }, { x: to, y: foot });
  }
  return smoothOut(places);
}

/** Cut round, it falls from the waist to the hem in a straight line, unless the hip holds it off. */
function roundOut(girth: (y: Mm) => Mm, bodyAt: (y: Mm) => Mm, length: Mm): (y: Mm) => Mm {
  const [from, to] = [SEEN * bodyAt(0), SEEN * (bodyAt(length) + seenOf(girth(length) - bodyAt(length)))];
  return (y) => Math.max(from + ((to - from) * y) / length, SEEN * Math.min(girth(y), bodyAt(y)));
}

const foldsOf = (more: Mm): number => (more <= 0 ? 4 : Math.min(13, 4 + Math.round(more / 260)));

/** From the waist to the hem along the side. */
export const sideOf = ({ out, length }: SkirtShape): readonly Spot[] =>
  Array.from({ length: STRETCHES + 1 }, (_, i) => {
    const y = (length * i) / STRETCHES;
    return { x: out(y), y };
  });

/** How far a line that runs level round the body dips in the middle, as it is seen from a little above, mm of its half width. */
const DIP = 0.05;
const MOST_DIP: Mm = 16;

/** A line round the body at a depth, from one side to the other. */
export function levelLine(y: Mm, left: Mm, right: Mm): readonly Spot[] {
  const dip = Math.min(MOST_DIP, DIP * Math.max(left, right));
  return Array.from({ length: 2 * STRETCHES + 1 }, (_, i) => {
    const x = -left + ((left + right) * i) / (2 * STRETCHES);
    const share = x < 0 ? x / left : x / right;
    return { x, y: y + dip * (1 - share * share) };
  });
}

/** How deep the folds of a hem are seen, as a share of the skirt's length. */
const FOLD_DEPTH = 0.022;
const MOST_FOLD: Mm = 14;
/** A fold is drawn in so many stretches. */
const FOLD_STRETCHES = 12;

/** The hem from one side to the other: in folds where it is full. */
export function hemLine(shape: SkirtShape, left: Mm, right: Mm): readonly Spot[] {
  const level = levelLine(shape.length, left, right);
  if (shape.folds === 0) return level;
  const deep = Math.min(MOST_FOLD, FOLD_DEPTH * shape.length);
  const dip = Math.min(MOST_DIP, DIP * Math.max(left, right));
  const count = shape.folds * FOLD_STRETCHES;
  return Array.from({ length: count + 1 }, (_, i) => {
    const x = -left + ((left + right) * i) / count;
    const share = x < 0 ? x / left : x / right;
    return {
      x,
      y: shape.length + dip * (1 - share * share) + deep * Math.abs(Math.sin((Math.PI * i) / FOLD_STRETCHES)),
    };
  });
}

/** Where the folds of a hem turn: shares of the way from one side to the other. */
export const foldShares = ({ folds }: SkirtShape): readonly number[] =>
  Array.from({ length: Math.max(0, folds - 1) }, (_, i) => (i + 1) / folds);

/** A line drawn on a fitted skirt: a dart, or a seam between panels, of one half from one side. */
export interface FittedLine {
  readonly role: "dart" | "seam";
  readonly spots: readonly Spot[];
}

/** Darts and seams of the panels of one half, from the centre outward. */
export function fittedLines(panels: readonly Piece[], out: (y: Mm) => Mm, length: Mm): readonly FittedLine[] {
  const waist = panels.reduce((sum, piece) => sum + seamLength(piece, "waist"), 0);
  const hem = panels.reduce((sum, piece) => sum + seamLength(piece, "hem"), 0);
  if (waist === 0 || hem === 0) return [];
  let [atWaist, atHem] = [0, 0];
  const lines: FittedLine[] = [];
  for (const [index, piece] of panels.entries()) {
    for (const dart of piece.darts) {
      if (dart.seam !== "waist") continue;
      const mouth = atWaist + beforeMouth(piece, pointOf(piece, dart.inner).x, "waist");
      const deep = pointOf(piece, dart.apex).y - pointOf(piece, dart.inner).y;
      const share = mouth / waist;
      lines.push({
        role: "dart",
        spots: [
          { x: share * out(0), y: 0 },
          { x: share * out(0) + (out(deep) - out(0)) * share * 0.6, y: deep },
        ],
      });
    }
    atWaist += seamLength(piece, "waist");
    atHem += seamLength(piece, "hem");
    if (index + 1 < panels.length) {
      const [top, foot] = [atWaist / waist, atHem / hem];
      lines.push({
        role: "seam",
        spots: Array.from({ length: STRETCHES + 1 }, (_, i) => {
          const y = (length * i) / STRETCHES;
          return { x: (top + (foot - top) * Math.min(1, y / length)) * out(y), y };
        }),
      });
    }
  }
  return lines;
}

function beforeMouth(piece: Piece, x: Mm, seam: SeamName): Mm {
  return walkAlong([piece], seam)
    .steps.filter(({ curve }) => edgePointAt(curve, 0.5).x < x)
    .reduce((sum, step) => sum + step.length, 0);
}
