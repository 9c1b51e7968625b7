/** Claims about the skirt, measured on what is cut: its pieces, rectangles and sectors. */
import { seamLength } from "../girth/seamLength";
import type { DressBody } from "../parts/dressBody";
import type { RectanglePart, SectorPart } from "../parts/part";
import type { PieceName, SeamName } from "../pattern/piece";
import type { PieceSet } from "../pattern/pieceSet";
import type { SewingAsked } from "../sewing/orderOfSewing";
import type { SkirtDraft } from "../skirts/skirtDraft";
import { marksLength } from "../skirts/waistArc";
import { HEM_LEVEL, SEWN_AGREEMENT } from "../tolerance";
import type { Mm } from "../units";
import type { DressCheck } from "./dressPlan";

export function checkSkirt({ skirt, waist }: SewingAsked, body: DressBody): readonly DressCheck[] {
  if (skirt === null) return [];
  return [waistWalks(skirt, waist), ...sidesWalk(skirt), ...tiersGather(skirt), ...hemLevel(skirt, body)];
}

const claim = (name: DressCheck["name"], measured: Mm, expected: Mm, tolerance: Mm): DressCheck => ({
  name,
  ok: Math.abs(measured - expected) <= tolerance,
  measured,
  expected,
  tolerance,
});

/** The one that is furthest off of several. */
const worst = (checks: readonly DressCheck[]): readonly DressCheck[] =>
  checks.toSorted((a, b) => Math.abs(b.measured - b.expected) - Math.abs(a.measured - a.expected)).slice(0, 1);

const along = (set: PieceSet, names: readonly PieceName[], seam: SeamName): Mm =>
  names.reduce((sum, name) => sum + seamOf(set, name, seam), 0);

function seamOf(set: PieceSet, name: PieceName, seam: SeamName): Mm {
  const piece = set[name];
  return piece === undefined ? 0 : seamLength(piece, seam);
}

const FRONT = ["skirtFront", "skirtSideFront"] as const;
const BACK = ["skirtBack", "skirtSideBack"] as const;

const isFitted = ({ halves }: SkirtDraft): boolean => halves[0].skirtFront !== undefined;

/** Quarter by quarter where it is fitted, so that the side seams meet; else all round. */
function waistWalks(skirt: SkirtDraft, waist: SewingAsked["waist"]): DressCheck {
  const off = isFitted(skirt)
    ? worst(
        skirt.halves.flatMap((set, at) => {
          const half = waist.halves[at] ?? waist.halves[0];
          return [
            claim("waistWalks", along(set, FRONT, "waist"), half.front, SEWN_AGREEMENT),
            claim("waistWalks", along(set, BACK, "waist"), half.back, SEWN_AGREEMENT),
          ];
        }),
      )
    : [];
  return off[0] ?? claim("waistWalks", roundWaist(skirt), waist.whole, SEWN_AGREEMENT);
}

/** As sewn: what a gathered one is drawn up to, or all the sectors' arcs without what a slash takes. */
function roundWaist({ parts, tiers }: SkirtDraft): Mm {
  const [first] = tiers ?? [];
  if (first !== undefined) return first.gatheredTo;
  return sectors(parts).reduce((sum, part) => sum + part.cut.count * arcOf(part) - 2 * (part.slash ?? 0), 0);
}

const sectors = (parts: SkirtDraft["parts"]): readonly SectorPart[] =>
  parts.filter((part): part is SectorPart => part.kind === "sector");

const rectangles = (parts: SkirtDraft["parts"]): readonly RectanglePart[] =>
  parts.filter((part): part is RectanglePart => part.kind === "rectangle");

const arcOf = ({ angle, inner, waistRadii, foldSides }: SectorPart): Mm =>
  (waistRadii === undefined ? angle * inner : marksLength(waistRadii)) * (1 + foldSides);

function sidesWalk(skirt: SkirtDraft): readonly DressCheck[] {
  if (!isFitted(skirt)) return [];
  const pairs = skirt.halves.flatMap((set) => [
    claim("skirtSidesWalk", along(set, FRONT, "side"), along(set, BACK, "side"), SEWN_AGREEMENT),
    claim("skirtSidesWalk", seamOf(set, "skirtSideFront", "panel"), seamOf(set, "skirtFront", "panel"), SEWN_AGREEMENT),
    claim("skirtSidesWalk", seamOf(set, "skirtSideBack", "panel"), seamOf(set, "skirtBack", "panel"), SEWN_AGREEMENT),
  ]);
  return worst(pairs);
}

/** Each tier's widths of cloth make up what it is to be, and the one above is what it is gathered to. */
function tiersGather({ tiers, parts }: SkirtDraft): readonly DressCheck[] {
  const cloth = rectangles(parts).map(({ width, cut }) => width * cut.count);
  return worst(
    (tiers ?? []).flatMap((tier, i) => {
      const made = claim("tiersGather", cloth[i] ?? 0, tier.width, SEWN_AGREEMENT);
      return i === 0 ? [made] : [made, claim("tiersGather", tier.gatheredTo, cloth[i - 1] ?? 0, SEWN_AGREEMENT)];
    }),
  );
}

/** From the floor to the hem at front, side and back, where waist to floor was measured; a peplum follows the waist. */
function hemLevel(skirt: SkirtDraft, { toFloor }: DressBody): readonly DressCheck[] {
  if (toFloor === null || skirt.kind === "peplum") return [];
  const cut = lengthsCut(skirt);
  const side = toFloor.side - cut.side;
  return worst([
    claim("hemLevel", toFloor.front - cut.front, side, HEM_LEVEL),
    claim("hemLevel", toFloor.back - cut.back, side, HEM_LEVEL),
  ]);
}

/** From the waist to the hem, as it is cut. */
function lengthsCut(skirt: SkirtDraft): SkirtDraft["lengths"] {
  const { halves, parts, lengths, vent = 0 } = skirt;
  const [set] = halves;
  if (isFitted(skirt)) {
    return {
      front: seamOf(set, "skirtFront", "centre"),
      side: along(set, FRONT, "side"),
      back: seamOf(set, "skirtBack", "centre") + vent,
    };
  }
  const tiers = rectangles(parts);
  const [first] = tiers;
  if (first !== undefined) {
    const deep = tiers.reduce((sum, { depth }) => sum + depth, 0);
    const edge = first.upperEdge ?? { front: 0, side: 0, back: 0 };
    return { front: deep - edge.front, side: deep - edge.side, back: deep - edge.back };
  }
  // All along the waist: where it is nearest to what is claimed of it, since a sector says not where on her it comes to lie.
  const cut = sectors(parts).flatMap(({ outer, inner, waistRadii }) =>
    waistRadii === undefined ? [outer - inner] : waistRadii.map(({ radius }) => outer - radius),
  );
  const nearest = (length: Mm): Mm =>
    cut.reduce((best, at) => (Math.abs(at - length) < Math.abs(best - length) ? at : best), Number.POSITIVE_INFINITY);
  return { front: nearest(lengths.front), side: nearest(lengths.side), back: nearest(lengths.back) };
}
