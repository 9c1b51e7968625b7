/** Neckline, straps and the finish of upper edges in words. */
import type { EdgeFinish, Neckline, NecklineShape, StrapKind, Straps } from "../core/decisions/dress";
import type { LengthUnit } from "../core/decisions/work";
import type { BothStraps, EdgeFigures, EdgesDraft, StrapFigures } from "../core/edges/edgesDraft";
import type { NecklineGape } from "../core/neckline/redrawNeckline";
import { formatAmount, formatLeast, formatLength } from "./terms/length";
import { halfWords } from "./fits";
import { capital, uncapital } from "./terms/names";
import { plural } from "./terms/language";

export const NECKLINE_WORDS: Readonly<Record<NecklineShape, string>> = {
  asPattern: "as the pattern",
  scoop: "scoop",
  vee: "V",
  square: "square",
  sweetheart: "sweetheart",
};

export const STRAP_KIND_WORDS: Readonly<Record<StrapKind, string>> = {
  plain: "straight",
  tied: "tied",
  crossed: "crossed at the back",
};

export const FINISH_WORDS: Readonly<Record<EdgeFinish | "lining", string>> = {
  facing: "facing",
  binding: "binding",
  lining: "lining",
};

/** What stands off, and the pinch that cures it; null where nothing does. */
export function gapeWords(side: "front" | "back", { gape, pinched }: NecklineGape, unit: LengthUnit): string | null {
  const amount = formatAmount(gape, unit);
  if (amount === formatAmount(0, unit)) return null;
  return pinched > 0
    ? `${capital(side)}: ${formatAmount(pinched, unit)} of each half is pinched out.`
    : `${capital(side)}: the edge will stand off by ${amount} on each half.`;
}

/** "Neck edge 78.4 cm: binding, 81.0 cm of bias, 32 mm wide". */
export function edgeFigureWords({ edge, length, finish, strip, at, half }: EdgeFigures, unit: LengthUnit): string {
  const armhole = half === undefined ? "Each armhole" : `Armhole, ${half}`;
  const name = edge === "armhole" ? armhole : at === undefined ? "Neck edge" : `Upper edge, ${at}`;
  const bias =
    strip === null
      ? ""
      : `, ${plural(strip.count, { one: "a bias strip", other: `${strip.count} bias strips` })} ${formatLength(strip.length, unit)} long, cut ${formatAmount(strip.width, unit)} wide`;
  return `${name} ${formatLength(length, unit)}: ${FINISH_WORDS[finish]}${bias}.`;
}

/** Where a facing or a binding is not as it was asked for: what can be had here. */
export function edgeLimitWords({ facing, binding }: EdgesDraft, unit: LengthUnit): readonly string[] {
  const limits = [
    ...(facing === null ? [] : [{ name: "Facings can be", asked: facing.asked, made: facing.depth, how: "deep" }]),
    ...(binding === null ? [] : [{ name: "Bindings can be", asked: binding.asked, made: binding.width, how: "wide" }]),
  ];
  return limits
    .filter(({ asked, made }) => formatAmount(asked, unit) !== formatAmount(made, unit))
    .map(({ name, asked, made, how }) => {
      const far = made < asked ? "most" : "least";
      return `${name} ${formatAmount(made, unit)} ${how} at the ${far} here: so they are drawn.`;
    });
}

export function strapFigureWords(strap: StrapFigures, unit: LengthUnit): string {
  const { kind, width, length, elastic, fromCentreBack } = strap;
  const elasticWords =
    elastic === null
      ? ""
      : ` ${formatLength(elastic.length, unit)} of elastic, ${formatAmount(elastic.width, unit)} wide, at the back.`;
  const each = kind === "tied" ? "each tie " : "";
  return `${formatAmount(width, unit)} wide, ${each}${formatLength(length, unit)} long; its middle sewn ${formatLength(fromCentreBack, unit)} from the centre back along the edge.${elasticWords}`;
}

/** A strap that is not as wide as the seams on cup and back; null: it is. */
export function strapSeamWords({ width, asked, seamWidth }: StrapFigures, unit: LengthUnit): string | null {
  const seam = formatAmount(seamWidth, unit);
  if (formatAmount(asked, unit) !== formatAmount(width, unit))
    return `Its seams on cup and back are ${seam} wide, and hold no wider strap.`;
  return formatAmount(width, unit) === seam
    ? null
    : `Its seams on cup and back are ${seam} wide: sew it in their middle, and finish the edge on either side.`;
}

/** Whether what is worn under it is covered; null: it was not asked. */
export function coverWords({ coversBra, coversFrom }: StrapFigures, unit: LengthUnit): string | null {
  if (coversBra === null || coversFrom === null) return null;
  return coversBra
    ? "It covers the strap under it."
    : `It does not cover the strap under it: that takes ${formatLeast(coversFrom, unit)}.`;
}

export interface StrapNote {
  readonly text: string;
  /** It is not as she wants it. */
  readonly isDoubt: boolean;
}

/** All that is told of straps; of each where they differ in it. */
export const strapNotes = (straps: BothStraps, unit: LengthUnit): readonly StrapNote[] =>
  [strapFigureWords, strapSeamWords, coverWords].flatMap((tell) =>
    ofEach(straps, (strap) => {
      const text = tell(strap, unit);
      return text === null ? null : { text, isDoubt: tell === coverWords && strap.coversBra === false };
    }),
  );

/** Whether what is worn under straps is covered; nothing where it was not asked. */
export const coverNotes = (straps: BothStraps, unit: LengthUnit): readonly string[] =>
  ofEach(straps, (strap) => {
    const text = coverWords(strap, unit);
    return text === null ? null : { text, isDoubt: false };
  }).map(({ text }) => text);

/** "Left half: 20 mm wide, …"; without the half where both are told alike. */
function ofEach({ left, right }: BothStraps, tell: (strap: StrapFigures) => StrapNote | null): readonly StrapNote[] {
  const [one, other] = [tell(left), tell(right)];
  if (one?.text === other?.text) return one === null ? [] : [one];
  return (
    [
      ["left", one],
      ["right", other],
    ] as const
  ).flatMap(([half, note]) =>
    note === null ? [] : [{ ...note, text: `${capital(halfWords(half))}: ${uncapital(note.text)}` }],
  );
}

/** "sweetheart, tied straps; edges: binding". */
export function necklineOutcome(neckline: Neckline, straps: Straps | undefined, { edges }: EdgesDraft): string {
  const finishes = [...new Set(edges.map(({ finish }) => FINISH_WORDS[finish]))];
  return [
    NECKLINE_WORDS[neckline.shape],
    ...(straps === undefined ? [] : [`${STRAP_KIND_WORDS[straps.kind]} straps`]),
    ...(finishes.length === 0 ? [] : [finishes.join(" and ")]),
  ].join(", ");
}
