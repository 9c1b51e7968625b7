/** The girths of a plan: between which lines each runs, what is wanted, what the pattern claims and the pieces give. */
import { HALVES } from "../decisions/alteration";
import type { Picks } from "../decisions/decided";
import { levelWidth } from "../girth/levelWidth";
import { neighbours } from "../blend/blendPiece";
import type { LevelName, Nest } from "../pattern/piece";
import { isBasque } from "../pattern/pieceGroups";
import { piecesOf } from "../pattern/pieceSet";
import { normalBelow } from "../statistics/normal";
import { BORDERLINE } from "../tolerance";
import type { Mm } from "../units";
import type { AlterationsMade } from "./makeAlterations";
import { lines } from "./cutLines";
import type { Picked, PickedLevel } from "./pickSizes";
import type { PlannedLevel } from "./plan";

/** @param halves both halves of the body, each of which brings half of every whole girth */
export function planLevels(
  picked: Picked,
  picks: Picks,
  chartDifference: Mm,
  halves: readonly [AlterationsMade, AlterationsMade],
): readonly PlannedLevel[] {
  const { sizing, nest, row, ease, alike } = picked;
  const { baseSize } = sizing;
  const inCups = HALVES.map((half) => picked.halves[half]);
  /** What alterations change a whole girth by, on purpose. */
  const changeAt = (level: PlannedLevel["level"]): Mm => sum(halves.map(({ girths }) => (girths[level] ?? 0) / 2));
  const finishedAt = (level: LevelName): Mm =>
    sum(
      halves.flatMap(({ pieces }) =>
        piecesOf(pieces).map((piece) =>
          level === "waist" && isBasque(piece.name) ? 0 : (levelWidth(piece, level) ?? 0),
        ),
      ),
    );
  const blended = (level: "waist" | "hip", { size, girth, finished, body, spread }: PickedLevel): PlannedLevel => {
    const target = body + ease[level];
    return {
      level,
      ...lines(nest, size),
      ...untracedAt(nest, size),
      ...(alike.has(level) ? { isHeld: true } : {}),
      size,
      extrapolated: size < 0 || size > finished.length - 1,
      body,
      ease: ease[level],
      target,
      claim: (picks[level] === undefined && !alike.has(level) ? target : girth) + changeAt(level),
      finished: finishedAt(level),
      ...lineMargin(finished, target, spread),
    };
  };
  return [
    {
      level: "bust",
      ...lines(nest, baseSize.index),
      ...untracedAt(nest, baseSize.index),
      size: baseSize.index,
      extrapolated: false,
      body: picked.bust,
      ease: ease.bust,
      target: picked.bust + ease.bust,
      claim:
        row.bust -
        chartDifference +
        sum(inCups.map(({ sizing: { cup, bust }, drafted }) => (cup.drafted + drafted.bust + bust.alteration) / 2)) +
        changeAt("bust"),
      finished: finishedAt("bust"),
      spread: baseSize.spread,
      margin: baseSize.margin,
      probability: baseSize.probability,
      borderline: baseSize.borderline,
    },
    blended("waist", picked.waist),
    ...(picked.hip === null ? [] : [blended("hip", picked.hip)]),
  ];
}

/** The lines that a place stands on of which there are no outlines. */
function untracedAt({ traced, labels }: Nest, size: number): Pick<PlannedLevel, "untraced"> {
  if (traced === undefined) return {};
  const { lower, share } = neighbours(size, labels.length);
  const on = share === 0 ? [lower] : share === 1 ? [lower + 1] : [lower, lower + 1];
  const untraced = on.flatMap((index) => (traced[index] === false ? (labels[index] ?? []) : []));
  return untraced.length === 0 ? {} : { untraced };
}

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** How near a target is to the next printed line, and how likely a tape would have put it on that line's other side. */
function lineMargin(finished: readonly Mm[], target: Mm, spread: Mm) {
  const margin = Math.min(...finished.map((girth) => Math.abs(girth - target)));
  const probability = normalBelow(-margin / spread);
  return { spread, margin, probability, borderline: probability > BORDERLINE };
}
