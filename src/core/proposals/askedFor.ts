/**
 * What her measures ask of the pieces, before it is looked at whether it can be made: how much of a length is length, how much
 * is the shape of the back or of the front, and where it belongs (common practice, no source).
 */
import type { FitName } from "../decisions/fitNames";
import type { PrintedLength } from "../decisions/pattern";
import { STANDS_BY } from "../tolerance";
import type { Mm } from "../units";
import type { Compared } from "./compare";

/** The alterations that a measure of a length or a width can ask for. */
export type ProposedFit = Extract<
  FitName,
  | "lengthAboveBust"
  | "lengthBelowBust"
  | "bandDepth"
  | "roundBack"
  | "swayBack"
  | "waistDropFront"
  | "bustPointLevel"
  | "strapLength"
  | "shoulderWidth"
  | "backWidth"
  | "chestWidth"
  | "sideSeamUnderBust"
>;

/** What is altered: by a fit alteration, by redrawing the ends of the bust darts further out or in, or by setting them as usual. */
export type Altered =
  | { readonly kind: "fit"; readonly fit: ProposedFit }
  | { readonly kind: "dartsOut" }
  | { readonly kind: "dartEnds" };

/** Why it is asked for just so. */
export type Reason =
  /** What back and front are both off by, or only one of them was measured: length. */
  | "length"
  /** The bust depth says that this much of the length belongs above the bust. */
  | "above"
  /** One of the two is off by itself. */
  | "backAlone"
  | "frontAlone"
  /** The bust lies so much lower or higher than length explains. */
  | "bustDepth"
  | "bustWidth"
  | "width";

export interface Asked {
  readonly altered: Altered;
  /** Of the alteration's own amount, signed as it is. */
  readonly by: Mm;
  readonly why: Reason;
  /** The measures it stands on. */
  readonly from: readonly Compared[];
  /** What it is the sum of. */
  readonly parts: readonly Part[];
  /** The measure that it brings nearer, where a wedge gives less there than at the line it is measured on. */
  readonly answers: PrintedLength | null;
}

export type ComparedBy = Readonly<Partial<Record<PrintedLength, Compared>>>;

/** One line of the sum that an amount is made of; signed as the amount is. */
export interface Part {
  readonly of:
    | "bothLengths"
    | "backLength"
    | "frontLength"
    | "length"
    | "above"
    | "strap"
    | "depth"
    | "halfWidth"
    | "width";
  readonly by: Mm;
}

/** What kind of garment it is, as far as lengths go. */
export interface GarmentKind {
  readonly hasStraps: boolean;
  readonly hasBand: boolean;
}

const fit = (name: ProposedFit): Altered => ({ kind: "fit", fit: name });
const sameWay = (a: Mm, b: Mm): boolean => Math.sign(a) === Math.sign(b);
const nearer = (a: Mm, b: Mm): Mm => (Math.abs(a) < Math.abs(b) ? a : b);

/** How far off one is, beyond its doubt. */
const offOf = ({ off, doubt }: Pick<Compared, "off" | "doubt">): Mm => (Math.abs(off) > doubt ? off : 0);

/** How much of the two lengths is length, and what is left of each for the shape of the back and of the front. */
interface Parted {
  readonly length: Mm;
  readonly back: Mm;
  readonly front: Mm;
}

/**
 * Back and front waist length together. Both end at one waist thread, so what they are apart is surer than either: they are off
 * alike where they are apart by no more than the smaller of their doubts, and where their mean, weighed by how sure each is, is
 * beyond its own doubt, length is what both bear: neither is ever pushed past where it agrees.
 *
 * @param front with what a longer strap gives taken off
 */
function partLengths(back: Compared | undefined, front: { readonly off: Mm; readonly doubt: Mm } | undefined): Parted {
  if (back === undefined || front === undefined) {
    const only = back ?? front;
    return { length: only === undefined ? 0 : offOf(only), back: 0, front: 0 };
  }
  const [ofBack, ofFront] = [offOf(back), offOf(front)];
  const both = sameWay(back.off, front.off) ? nearer(back.off, front.off) : 0;
  if (Math.abs(back.off - front.off) <= Math.min(back.doubt, front.doubt) && Math.abs(both) >= STANDS_BY) {
    const [forBack, forFront] = [1 / back.doubt ** 2, 1 / front.doubt ** 2];
    const mean = (back.off * forBack + front.off * forFront) / (forBack + forFront);
    const isOff = ofBack !== 0 || ofFront !== 0 || Math.abs(mean) > 1 / Math.sqrt(forBack + forFront);
    return { length: isOff ? both : 0, back: 0, front: 0 };
  }
  const length = sameWay(ofBack, ofFront) ? nearer(ofBack, ofFront) : 0;
  return { length, back: ofBack - length, front: ofFront - length };
}

/** How much of a length belongs above the bust: all or none of it where the other part would not be worth a cut. */
function partAbove(depthOff: Mm, length: Mm): Mm {
  const above = nearer(depthOff, length);
  if (Math.abs(above) < STANDS_BY) return 0;
  return Math.abs(length - above) < STANDS_BY ? length : above;
}

/** All that the measures ask for; what agrees asks for nothing. */
export function askedFor(by: ComparedBy, kind: GarmentKind): readonly Asked[] {
  return [...lengthsAsked(by, kind), ...widthsAsked(by)].filter(({ by: amount }) => Math.abs(amount) >= STANDS_BY);
}

const of = (...found: readonly (Compared | undefined)[]): readonly Compared[] =>
  found.filter((one) => one !== undefined);

const asked = (
  altered: Altered,
  parts: readonly Part[],
  why: Reason,
  from: readonly Compared[],
  answers: PrintedLength | null = null,
): Asked => ({
  altered,
  by: parts.reduce<Mm>((sum, { by }) => sum + by, 0),
  why,
  from,
  parts: parts.filter(({ by }) => by !== 0),
  answers,
});

function lengthsAsked(by: ComparedBy, { hasStraps, hasBand }: GarmentKind): readonly Asked[] {
  const { backWaistLength: back, frontWaistLength: front, sideNeckToBustPoint: depth } = by;
  const depthOff = depth === undefined || depth.agrees ? 0 : depth.off;
  // Straps carry the front alone, so their length answers the whole of the depth and is part of the front's length. They are
  // cut long and shortened on the body, where they are seen.
  const strap = hasStraps ? depthOff : 0;
  const below = front === undefined ? undefined : { off: front.off - strap, doubt: front.doubt };
  const parted = partLengths(back, below);
  const above = hasStraps || !sameWay(parted.length, depthOff) ? 0 : partAbove(depthOff, parted.length);
  const rest = hasStraps ? 0 : depthOff - above;
  const lengths = hasStraps ? of(back, front) : of(back, front, depth);
  const whole = {
    of: back === undefined ? "frontLength" : front === undefined ? "backLength" : "bothLengths",
    by: parted.length,
  } as const;
  const backIs = Math.sign(parted.back) || 1;
  const ofBack: readonly Part[] =
    parted.back === 0
      ? []
      : [
          { of: "backLength", by: backIs * (parted.back + parted.length) },
          { of: "length", by: 0 - backIs * parted.length },
        ];
  const ofFront: readonly Part[] =
    parted.front === 0
      ? []
      : [
          { of: "frontLength", by: parted.front + parted.length + strap },
          { of: "strap", by: 0 - strap },
          { of: "length", by: 0 - parted.length },
        ];
  return [
    asked(fit("lengthAboveBust"), [{ of: above === parted.length ? whole.of : "depth", by: above }], "above", lengths),
    asked(fit(hasBand ? "bandDepth" : "lengthBelowBust"), [whole, { of: "above", by: 0 - above }], "length", lengths),
    asked(fit(parted.back > 0 ? "roundBack" : "swayBack"), ofBack, "backAlone", of(back, front), "backWaistLength"),
    asked(fit("waistDropFront"), ofFront, "frontAlone", of(front, back), "frontWaistLength"),
    asked(fit("strapLength"), [{ of: "depth", by: Math.max(0, strap) }], "bustDepth", of(depth)),
    asked(
      fit("bustPointLevel"),
      [
        { of: "depth", by: rest + above },
        { of: "above", by: 0 - above },
      ],
      "bustDepth",
      of(depth),
      "sideNeckToBustPoint",
    ),
  ];
}

const width = (altered: Altered, one: Compared | undefined, why: Reason, share = 1): readonly Asked[] =>
  one === undefined || one.agrees
    ? []
    : [asked(altered, [{ of: share === 1 ? "width" : "halfWidth", by: one.off * share }], why, [one])];

function widthsAsked({
  bustPointWidth,
  acrossFront,
  acrossBack,
  shoulderLength,
  underBustGirth,
}: ComparedBy): readonly Asked[] {
  return [
    // Half of the width lies on each half of the body.
    ...width({ kind: "dartsOut" }, bustPointWidth, "bustWidth", 0.5),
    ...width(fit("chestWidth"), acrossFront, "width"),
    ...width(fit("backWidth"), acrossBack, "width"),
    ...width(fit("sideSeamUnderBust"), underBustGirth, "width"),
    ...width(fit("shoulderWidth"), shoulderLength, "width"),
  ];
}
