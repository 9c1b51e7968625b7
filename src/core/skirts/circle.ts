/**
 * Round skirts: any share of a circle, and a short one, the peplum. The waist is an arc about the pin, and the hem another; the
 * allowances of a sector lie outside of its sides, so that the waist stays what it is. Only a closed ring has none beside it.
 */
import type { SectorPart } from "../parts/part";
import { allowanceOf, hemAllowanceOf } from "../parts/seamAllowance";
import { fail, ok, type Result } from "../result";
import { radians, type Mm } from "../units";
import { noPieces, overHip, pockets, toldRatio } from "./gathered";
import { divisionsOf, sectorsOf, type RoundQuarters, type Sector } from "./sectors";
import type { SkirtAsked, SkirtDraft, SkirtFailure, SkirtNote } from "./skirtDraft";
import { skirtLength } from "./skirtLength";
import {
  HANGS_FROM_SHARE,
  PEPLUM_RANGE,
  SELVAGE,
  SHARE_RANGE,
  USUAL_PEPLUM_LENGTH,
  USUAL_PEPLUM_SHARE,
  USUAL_SHARE,
  WIDTH_ROUNDED,
} from "./skirtPractice";
import { angleOf, hemRadius, marksOf } from "./waistArc";

export function circle(asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> {
  const length = skirtLength(asked);
  if (!length.ok) return length;
  const { side, level, notes } = length.value;
  const share = asked.skirt.share ?? USUAL_SHARE;
  const hangs: readonly SkirtNote[] = share >= HANGS_FROM_SHARE ? [{ code: "skirt/hang-before-hemming" }] : [];
  const lengths = { side, front: level?.front ?? side, back: level?.back ?? side };
  return draftRound(asked, { share, lengths, notes: [...notes, ...hangs, ...pockets(asked.skirt)] });
}

/** It follows the waist, not the floor. */
export function peplum(asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> {
  const length = asked.skirt.peplumLength ?? USUAL_PEPLUM_LENGTH;
  const { least, most } = PEPLUM_RANGE;
  if (!(length >= least && length <= most)) return fail({ code: "skirt/length-out-of-range", length, least, most });
  const share = asked.skirt.peplumShare ?? USUAL_PEPLUM_SHARE;
  return draftRound(asked, { share, lengths: { front: length, side: length, back: length }, notes: [] });
}

interface Round {
  readonly share: number;
  readonly lengths: SkirtDraft["lengths"];
  readonly notes: readonly SkirtNote[];
}

function draftRound(asked: SkirtAsked, { share, lengths, notes }: Round): Result<SkirtDraft, SkirtFailure> {
  const { skirt, waist, allowances, clothWidth, closure, clothOnFold = false } = asked;
  const over = overHip(asked);
  // One that ends above the hip need not go round it.
  const isOverHip = over !== null && lengths.side >= over.depth;
  const forHip = isOverHip ? toldRatio((over.girth - waist.whole) / (2 * Math.PI * over.depth)) : 0;
  const [least, most] = [Math.max(SHARE_RANGE.least, forHip), SHARE_RANGE.most];
  if (!(share >= least && share <= most)) return fail({ code: "skirt/share-out-of-range", share, least, most });

  const beside = allowanceOf(allowances, "side");
  const cut = {
    inner: allowanceOf(allowances, "waist"),
    outer: hemAllowanceOf(skirt, allowances),
    sides: beside,
  };
  const room = {
    folded: clothWidth - 2 * SELVAGE,
    single: clothWidth / (clothOnFold ? 2 : 1) - (clothOnFold ? 1 : 2) * SELVAGE,
  };
  const whole = 2 * Math.PI * share;
  const plain = quartersOf(asked, lengths, whole, 0);
  let narrowest: Mm = Number.POSITIVE_INFINITY;
  for (const division of divisionsOf(closure)) {
    const isOne = division.shape === "whole";
    if (isOne && share > 1) continue;
    const hasRoom = (angle: number): boolean => (2 * Math.PI - angle) * plain.least >= 2 * beside;
    const slash = isOne && !hasRoom(whole) ? beside : 0;
    const quarters = slash === 0 ? plain : quartersOf(asked, lengths, whole, slash);
    const sides = slash === 0 ? beside : 0;
    const sectors = sectorsOf(quarters, division).map((sector) =>
      placed(sector, quarters.radius + cut.outer, sides, room),
    );
    if (!isOne && sectors.some(({ sector }) => !hasRoom(sector.angle))) continue;
    narrowest = Math.min(narrowest, Math.max(...sectors.map(({ needed }) => needed)));
    if (sectors.some(({ fits }) => !fits)) continue;
    const hem = whole * quarters.radius - 2 * slash;
    return ok({
      kind: skirt.kind,
      lengths,
      hem,
      halves: noPieces,
      parts: sectors.map((sector) => partOf(sector, quarters.radius, { ...cut, sides }, slash)),
      levels: [
        { below: 0, girth: waist.whole },
        { below: closure.place === "centreBack" ? lengths.back : lengths.side, girth: hem },
      ],
      circle: {
        share,
        waistRadius: (waist.whole + 2 * slash) / whole,
        hemRadius: quarters.radius,
        seams: division.seams,
      },
      notes,
    });
  }
  return fail({
    code: "skirt/cloth-too-narrow",
    width: clothWidth,
    needed: WIDTH_ROUNDED * Math.ceil(narrowest / WIDTH_ROUNDED),
  });
}

/** The waist by quarters, as far from the pin as a level hem asks; `slash` is added where it opens, on both of its sides. */
function quartersOf(
  { waist, closure }: SkirtAsked,
  lengths: SkirtDraft["lengths"],
  whole: number,
  slash: Mm,
): RoundQuarters {
  const opensSide = closure.place === "side";
  const [left, right] = waist.halves;
  const arc = (side: "front" | "back", finished: Mm, opens: boolean) => ({
    waist: finished + (opens ? slash : 0),
    lengths: [lengths[side], lengths.side] as const,
  });
  const arcs = {
    leftFront: arc("front", left.front, opensSide),
    rightFront: arc("front", right.front, false),
    rightBack: arc("back", right.back, !opensSide),
    leftBack: arc("back", left.back, true),
  };
  const radius = hemRadius(Object.values(arcs), radians(whole));
  const drawn = ({ waist: length, lengths: [centre, side] }: ReturnType<typeof arc>) => {
    const [from, to] = [radius - centre, radius - side];
    return marksOf(from, to, angleOf(length, from, to));
  };
  const isLevel = lengths.front === lengths.side && lengths.back === lengths.side;
  return {
    leftFront: drawn(arcs.leftFront),
    rightFront: drawn(arcs.rightFront),
    rightBack: drawn(arcs.rightBack),
    leftBack: drawn(arcs.leftBack),
    radius,
    least: radius - Math.max(lengths.front, lengths.side, lengths.back),
    isRound: isLevel,
    areHalvesAlike: left === right,
    opens: closure.place,
  };
}

interface PlacedSector {
  readonly sector: Sector;
  readonly onFold: boolean;
  readonly fits: boolean;
  /** The width of cloth that it would take, selvages with it. */
  readonly needed: Mm;
}

/** Across the cloth without its selvages: for what lies on its fold, opened, and for what does not. */
interface Room {
  readonly folded: Mm;
  readonly single: Mm;
}

/** On the fold where the cloth is wide enough; else single, one side along the selvage, which takes less of its width. */
function placed(sector: Sector, outer: Mm, sides: Mm, room: Room): PlacedSector {
  const folded = 2 * (across(sector.angle / 2, outer) + sides);
  if (sector.folded !== null && folded <= room.folded) {
    return { sector, onFold: true, fits: true, needed: folded + 2 * SELVAGE };
  }
  const single = across(sector.angle, outer) + 2 * sides;
  const layers = room.single < room.folded ? 2 : 1;
  return { sector, onFold: false, fits: single <= room.single, needed: layers * single + 2 * SELVAGE };
}

/** How wide a sector lies across, its first side along the cloth. */
function across(angle: number, radius: Mm): Mm {
  if (angle <= Math.PI / 2) return radius * Math.sin(angle);
  if (angle <= Math.PI) return radius;
  return radius * (1 + Math.sin(Math.min(angle - Math.PI, Math.PI / 2)));
}

function partOf(
  { sector, onFold }: PlacedSector,
  outer: Mm,
  allowances: SectorPart["allowances"],
  slash: Mm,
): SectorPart {
  const { name, half, count, isRound } = sector;
  const marks = onFold && sector.folded !== null ? sector.folded : sector.marks;
  const part: SectorPart = {
    kind: "sector",
    key: half === null ? name : `${name}-${half}`,
    group: "skirt",
    cloth: "main",
    cut: { onFold, count },
    half,
    grain: "along",
    inner: Math.min(...marks.map(({ radius }) => radius)),
    outer,
    angle: radians(onFold ? sector.angle / 2 : sector.angle),
    allowances,
    foldSides: onFold ? 1 : 0,
  };
  const shaped = isRound ? part : { ...part, waistRadii: marks };
  return slash === 0 ? shaped : { ...shaped, slash };
}
