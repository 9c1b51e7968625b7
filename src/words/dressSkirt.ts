/** Skirts in words: their shapes, what each comes to, and what stands in the way of one. */
import type { Skirt, SkirtKind, TierCut } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import { piecesOf } from "../core/pattern/pieceSet";
import type { SkirtDraft, SkirtFailure, SkirtNote, SuppressionFigures, TierFigures } from "../core/skirts/skirtDraft";
import { degreesFrom, type Mm } from "../core/units";
import type { SumLine } from "./sumLine";
import { formatAmount, formatLength } from "./terms/length";
import { capital } from "./terms/names";
import { listWords, plural, percentWords } from "./terms/language";

const KINDS: Readonly<Record<SkirtKind, string>> = {
  gathered: "gathered",
  tiers: "tiers",
  circle: "circle",
  aLine: "A-line",
  straight: "straight",
  peplum: "peplum",
};

export const skirtKindWords = (kind: SkirtKind): string => KINDS[kind];

export const TIER_CUT_WORDS: Readonly<Record<TierCut, string>> = {
  even: "equal widths",
  wholeWidths: "whole widths of the cloth",
};

/** Common shares of a circle, the fullest first. */
export const CIRCLE_SHARES: readonly { readonly share: number; readonly words: string }[] = [
  { share: 1, words: "full" },
  { share: 0.75, words: "three quarters" },
  { share: 0.5, words: "half" },
  { share: 0.25, words: "quarter" },
];

export const RATIO_HINT = "1.3 is light, 1.5 usual, 2 full; sheer cloth takes up to 3.";
export const tierName = (at: number): string => `Tier ${at + 1}`;

/** The skirt in one line: "tiers, 62.0 cm long, hem 410.0 cm". */
export function skirtOutcome(
  skirt: Skirt | undefined,
  draft: Pick<SkirtDraft, "lengths" | "hem"> | null,
  unit: LengthUnit,
): string {
  if (skirt === undefined) return "none";
  const kind = skirtKindWords(skirt.kind);
  if (draft === null) return `${kind}: not yet`;
  return `${kind}, ${formatLength(draft.lengths.side, unit)} long, hem ${formatLength(draft.hem, unit)}`;
}

/** Which of her entries a failure speaks of. */
type SkirtField = "length" | "ratio" | "tiers" | "hip" | "cloth" | "waist" | "share";

export interface SkirtFailureWords {
  readonly beside: SkirtField;
  readonly text: string;
}

export function skirtFailureWords(failure: SkirtFailure, unit: LengthUnit): SkirtFailureWords {
  const length = (mm: Mm): string => formatLength(mm, unit);
  switch (failure.code) {
    case "skirt/hip-missing":
      return { beside: "hip", text: `A fitted skirt is drafted from the hip, which is not measured yet.` };
    case "skirt/length-missing":
      return { beside: "length", text: "Enter a length, or the height on Tape: the usual length follows from it." };
    case "skirt/length-out-of-range":
      return {
        beside: "length",
        text: `${length(failure.length)} cannot be made. Between ${length(failure.least)} and ${length(failure.most)} can.`,
      };
    case "skirt/ratio-out-of-range":
      return {
        beside: "ratio",
        text: `${plain(failure.ratio)} times cannot be gathered. Between ${plain(failure.least)} and ${plain(failure.most)} can.`,
      };
    case "skirt/share-out-of-range":
      return {
        beside: "share",
        text: `${percentWords(failure.share)} of a circle cannot be made on this waist and hip. Between ${percentWords(failure.least)} and ${percentWords(failure.most)} can.`,
      };
    case "skirt/tiers-deeper-than-skirt":
      return {
        beside: "tiers",
        text: `Together the tiers would be ${length(failure.depths)} deep, the skirt is ${length(failure.length)} long.`,
      };
    case "skirt/waist-over-hip":
      return {
        beside: "waist",
        text: `The finished waist, ${length(failure.waist)}, leaves nothing to take in to a hip of ${length(failure.hip)}. A gathered or round skirt hangs on it all the same.`,
      };
    case "skirt/darts-too-wide":
      return {
        beside: "waist",
        text: `The darts would have to take in ${formatAmount(failure.intake, unit)} each; ${formatAmount(failure.most, unit)} is the most that lies flat. Six panels, or less ease at the hip, take in less at each.`,
      };
    case "skirt/cloth-too-narrow":
      return {
        beside: "cloth",
        text: `It needs cloth ${length(failure.needed)} wide; yours is ${length(failure.width)}.`,
      };
  }
}

const plain = (value: number): string => String(Math.round(value * 100) / 100);

export function skirtNoteWords(note: SkirtNote, { tiers = [] }: Pick<SkirtDraft, "tiers">, unit: LengthUnit): string {
  const length = (mm: Mm): string => formatLength(mm, unit);
  switch (note.code) {
    case "skirt/hem-not-levelled":
      return "The skirt is equally long all round. Waist to floor at front, side and back makes it level.";
    case "skirt/no-step":
      return `${length(note.girth)} at the hem is too narrow to step; ${length(note.needed)} or a vent lets you walk.`;
    case "skirt/join-at-opening":
      return `The opening runs through ${tiers.length > 1 ? tierName(note.tier - 1).toLowerCase() : "the skirt"}: put a join there.`;
    case "skirt/hang-before-hemming":
      return "Let it hang for a day before you level the hem: cloth on the bias drops.";
    case "skirt/hip-depth-usual":
      return `Hip taken to lie ${length(note.depth)} below the waist, as is usual for your bust. Measure waist to hip.`;
    case "skirt/length-usual":
      return note.by === null
        ? `${length(note.length)} is taken to reach the knee. The height on Tape, or waist to floor, tells it better.`
        : `${length(note.length)} is to the knee, as is usual for your ${note.by === "height" ? "height" : "waist to floor"}.`;
    case "skirt/pockets":
      return "Pockets go into the side seams, before these are sewn.";
  }
}

/** Figures of a tier: its width, how it is gathered, and the widths of cloth that it is joined from. */
const tierFigure = ({ width, gatheredTo, panels, panelWidth }: TierFigures, unit: LengthUnit): string =>
  [
    `${formatLength(width, unit)} gathered to ${formatLength(gatheredTo, unit)}`,
    plural(panels, { one: "one width of cloth", other: `${panels} widths of ${formatLength(panelWidth, unit)}` }),
  ].join(", ");

/** What the shape comes to, for what is drawn by its figures. */
export function skirtFigures(draft: SkirtDraft, unit: LengthUnit): readonly SumLine[] {
  const length = (mm: Mm): string => formatLength(mm, unit);
  const { tiers = [], circle, suppression = [], flare, hem } = draft;
  return [
    ...tiers.map((tier, at) => ({
      words: `${tiers.length > 1 ? tierName(at) : "Width"}, ${length(tier.depth)} deep`,
      figure: tierFigure(tier, unit),
    })),
    ...(circle === undefined
      ? []
      : [
          { words: "Radius at the waist seam", figure: length(circle.waistRadius) },
          { words: "Radius at the hem", figure: length(circle.hemRadius) },
        ]),
    ...suppression.map((quarter) => ({
      words: `Taken in, each ${quarter.quarter} quarter`,
      figure: suppressionFigure(quarter, isPanelled(draft), unit),
    })),
    ...(flare === undefined || flare === 0
      ? []
      : [{ words: "Each side leans out by", figure: `${plain(degreesFrom(flare))}°` }]),
    { words: "Hem all round", figure: length(hem), total: true },
  ];
}

/** In six panels a seam runs through each quarter, and stands in a dart's place. */
const isPanelled = ({ halves: [left] }: SkirtDraft): boolean => piecesOf(left).length > 2;

function suppressionFigure(
  { atSide, inDarts, dartLength, shutInto }: SuppressionFigures,
  isInSeam: boolean,
  unit: LengthUnit,
): string {
  const amount = (mm: Mm): string => formatAmount(mm, unit);
  const darts =
    inDarts.length === 0
      ? []
      : [
          isInSeam
            ? `${listWords(inDarts.map(amount))} in the panel seam`
            : shutInto > 0
              ? `${listWords(inDarts.map(amount))} shut into the flare, ${amount(shutInto)} at the hem`
              : `${listWords(inDarts.map(amount))} in ${plural(inDarts.length, { one: "a dart", other: "darts" })} ${formatLength(dartLength, unit)} long`,
        ];
  return capital([`${amount(atSide)} at the side`, ...darts].join(", "));
}
