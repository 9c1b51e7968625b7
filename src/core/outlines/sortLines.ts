/** The lines of a file sorted: which size each is of, which are of all, and what is no outline. */
import type { FileDrawing, LineLook } from "../decisions/fileDrawing";
import { LINE_FEATURES, type LineFeature, type LineMeaning, type OwnPattern } from "../decisions/ownPattern";
import { joinBounds } from "../geometry/bounds";
import type { Mm } from "../units";
import { groupedBy } from "./groupedBy";
import type { OutlineReading, SortedLines } from "./outlineReading";
import { sizeNamed, sizeSaid } from "./sizeNames";
import type { Stroke } from "./strokes";

/** What a line does on its piece. */
export type LineRole = "outline" | "sew" | "inner";

export interface Sorting {
  readonly sortedBy: LineFeature;
  readonly features: OutlineReading["features"];
  readonly lines: readonly SortedLines[];
  readonly meaningOf: (stroke: Stroke) => LineMeaning;
  readonly roleOf: (stroke: Stroke) => LineRole;
  /** The layers are numbered as in the exchange standard of the apparel trade. */
  readonly isStandard: boolean;
}

/** A value of the feature, and its lines. */
interface Kind {
  readonly value: string;
  readonly strokes: readonly Stroke[];
  readonly length: Mm;
}

type Said = Pick<SortedLines, "meaning" | "saidBy">;

/** @source ASTM D6673, from memory */
const STANDARD_ROLES: Readonly<Record<string, LineRole>> = {
  "1": "outline",
  "14": "sew",
  "4": "inner",
  "5": "inner",
  "6": "inner",
  "7": "inner",
  "8": "inner",
  "9": "inner",
  "10": "inner",
  "11": "inner",
  "12": "inner",
  "13": "inner",
  "15": "inner",
};

/** Points of these layers only say where a boundary turns or bends. */
export const TURN_LAYERS: ReadonlySet<string> = new Set(["2", "3"]);

export const valueOf = (look: LineLook, feature: LineFeature): string => String(look[feature]);

/** Whether the layers are those of the standard: numbers of it alone, and lines of the boundary among them, in blocks. */
function followsStandard(drawing: FileDrawing): boolean {
  if (drawing.format !== "dxf") return false;
  const layers = drawing.lines.filter(({ paths }) => paths.length > 0).map(({ look }) => look.layer);
  const known = layers.filter((layer) => layer in STANDARD_ROLES || TURN_LAYERS.has(layer) || layer === "0");
  if (!layers.includes("1") || known.length < layers.length) return false;
  const says = drawing.writings.some(({ text }) =>
    /^\s*(?:piece name|style name|sample size|size|quantity)\s*[:=]/iu.test(text),
  );
  return says || drawing.lines.every(({ look }) => look.group !== "");
}

const SEW = /(?:^|[\s_/-])(?:sew|stitch|seam ?line|sewing)(?:$|[\s_/-]|line)/iu;
const INNER =
  /(?:^|[\s_/-])(?:grain|grainline|notch|notches|dart|darts|dart-?leg|dart-?fold|mark|marks|text|texts|internal|inner|drill|fold|label|labels|button|buttons|level|lengthen|gather|title|note)(?:$|[\s_/-]|\d)/iu;
const NOTHING =
  /(?:^|[\s_/-])(?:frame|border|legend|logo|page|pages|tile|tiles|test|square|scale|map|overlap|watermark)(?:$|[\s_/-]|\d)/iu;

/** What the name of a layer or a group says that its lines are. */
function roleNamed(look: LineLook): LineRole | "nothing" | null {
  for (const name of [look.layer, ...look.group.split(" / ").toReversed()]) {
    if (NOTHING.test(name)) return "nothing";
    if (INNER.test(name)) return "inner";
    if (SEW.test(name)) return "sew";
  }
  return null;
}

function kindsBy(feature: LineFeature, strokes: readonly Stroke[]): readonly Kind[] {
  const kinds = groupedBy(strokes, ({ look }) => valueOf(look, feature));
  return [...kinds].map(([value, all]) => ({
    value,
    strokes: all,
    length: all.reduce((sum, { length }) => sum + length, 0),
  }));
}

/** The size that the value names, or that is written in the block of that name. */
function namedBy(feature: LineFeature, value: string, labels: readonly string[], drawing: FileDrawing): string | null {
  if (feature === "colour" || feature === "width") return null;
  // Lengths of dashes are no sizes; the name of a line type may be.
  if (feature === "dash" && !/\p{L}/u.test(value)) return null;
  if (feature === "group") {
    const written = drawing.writings
      .filter(({ group }) => group !== "" && (group === value || group.startsWith(`${value} / `)))
      .map(({ text }) => sizeSaid(text))
      .find((text) => text !== null);
    if (written !== undefined && written !== null)
      return sizeNamed(written, labels) ?? (labels.length === 0 ? written : null);
  }
  return sizeNamed(value, labels);
}

/** How unlike in length and in extent the lines of two sizes may be (our own choice). */
const UNLIKE = 2.2;
/** The least that lines of a size are long, beside those of the longest. */
const LEAST = 0.2;

/** Of what is less than a millimetre, as straight lines are across, it is no matter how much less. */
const spread = (values: readonly number[]): number =>
  Math.log(Math.max(...values, 1) / Math.max(Math.min(...values), 1));

/** How much what is measured of some kinds differs, all measures together: 0 where they are equal. */
function unlike(kinds: readonly Kind[]): number {
  const boxes = kinds.map(({ strokes }) =>
    strokes.map(({ box }) => box).reduce((one, other) => joinBounds(one, other)),
  );
  return (
    spread(kinds.map(({ length }) => length)) +
    spread(boxes.map(({ min, max }) => max.x - min.x)) +
    spread(boxes.map(({ min, max }) => max.y - min.y))
  );
}

/** Values that may be a size each, for nothing in them is named so: alike in length and in how far they reach. */
function sizeKinds(kinds: readonly Kind[], count: number): readonly Kind[] {
  const outlines = kinds.filter(({ strokes }) => {
    const [first] = strokes;
    return first !== undefined && roleNamed(first.look) === null;
  });
  const longest = Math.max(0, ...outlines.map(({ length }) => length));
  let some: readonly Kind[] = outlines
    .filter(({ length }) => length >= LEAST * longest)
    .toSorted((p, q) => q.length - p.length)
    .slice(0, MOST_KINDS);
  // As many as there are sizes; while there are more, or they are too unlike, the one that is most unlike goes.
  const most = count > 1 ? count : some.length;
  for (let left = some.length; left > 2; left -= 1) {
    if (left <= most && unlike(some) <= Math.log(UNLIKE)) break;
    const without = some.map((kind) => some.filter((other) => other !== kind));
    some = without.reduce((one, other) => (unlike(other) < unlike(one) ? other : one));
  }
  return some.length >= 2 && unlike(some) <= Math.log(UNLIKE) ? some : [];
}

/** More kinds of line are no sizes. */
const MOST_KINDS = 40;

/**
 * Sorts by the feature that tells most sizes apart: by name where the file names them, else by how many kinds of line are
 * alike in length. What is said by her goes before all of it.
 *
 * @param strokes without those of test squares
 * @param labels  of the chart's sizes; none: the kinds' own values stand for sizes
 */
export function sortLines(
  own: Pick<OwnPattern, "drawing" | "sortBy" | "lines">,
  strokes: readonly Stroke[],
  labels: readonly string[],
): Sorting {
  const { drawing } = own;
  const isStandard = followsStandard(drawing);
  const byFeature = LINE_FEATURES.map((feature) => {
    const kinds = kindsBy(feature, strokes);
    const named = new Map(
      kinds.flatMap(({ value }) => {
        const size = isStandard && feature === "layer" ? null : namedBy(feature, value, labels, drawing);
        return size === null ? [] : [[value, size] as const];
      }),
    );
    return { feature, kinds, named, sizes: new Set(named.values()).size };
  });
  const most = Math.max(...byFeature.map(({ sizes }) => sizes));
  const alike = byFeature.map((one) => ({
    ...one,
    like: most === 0 && !(isStandard && one.feature === "layer") ? sizeKinds(one.kinds, labels.length) : [],
  }));
  const chosen =
    alike.find(({ feature }) => feature === own.sortBy) ??
    alike.toSorted((p, q) => q.sizes - p.sizes || q.like.length - p.like.length)[0];
  if (chosen === undefined) throw new RangeError("no feature");
  const { feature, kinds, named } = chosen;
  const like = chosen.sizes === 0 ? sizeKinds(kinds, labels.length) : [];
  const likeValues = new Set(isStandard && feature === "layer" ? [] : like.map(({ value }) => value));

  const namedKinds = kinds.filter(({ value }) => named.has(value));
  // Beside kinds that the chart names, one as long and as far-reaching as they is a size too: one that the chart does not name.
  const isSizeElsewhere = (kind: Kind): boolean =>
    namedKinds.length > 1 &&
    kind.strokes.every(({ look }) => roleNamed(look) === null) &&
    namedKinds.some((one) => unlike([kind, one]) <= Math.log(UNLIKE));
  const saidOf = (kind: Kind): Said => {
    const { value, strokes: some } = kind;
    const said = own.lines?.[value];
    if (said !== undefined) return { meaning: said, saidBy: "her" };
    const size = named.get(value);
    if (size !== undefined) return { meaning: { of: "size", size }, saidBy: "name" };
    const role = some[0] === undefined ? null : roleNamed(some[0].look);
    if (role === "nothing" || role === "inner") {
      const isAll = some.every(({ look }) => roleNamed(look) === role);
      if (isAll) return { meaning: { of: role }, saidBy: "name" };
    }
    if (likeValues.has(value)) return { meaning: { of: "size", size: value }, saidBy: "order" };
    if (value !== "" && isSizeElsewhere(kind)) return { meaning: { of: "size", size: value }, saidBy: "form" };
    return { meaning: { of: "all" }, saidBy: "form" };
  };
  const lines = kinds.map((kind): SortedLines => {
    const [first] = kind.strokes;
    return {
      value: kind.value,
      colour: first?.look.colour ?? "",
      dash: first?.look.dash ?? "",
      width: first?.look.width ?? 0,
      count: kind.strokes.length,
      length: kind.length,
      ...saidOf(kind),
    };
  });
  const meanings = new Map(lines.map(({ value, meaning }) => [value, meaning]));
  return {
    sortedBy: feature,
    features: byFeature
      .filter((one) => one.kinds.length > 1)
      .map((one) => ({ feature: one.feature, values: one.kinds.length })),
    lines,
    meaningOf: ({ look }) => {
      const meaning = meanings.get(valueOf(look, feature)) ?? { of: "all" };
      if (meaning.of === "nothing" || own.lines?.[valueOf(look, feature)] !== undefined) return meaning;
      return !isStandard && roleNamed(look) === "nothing" ? { of: "nothing" } : meaning;
    },
    roleOf: ({ look }) => {
      if (isStandard) return STANDARD_ROLES[look.layer] ?? "inner";
      const role = roleNamed(look);
      return role === "nothing" || role === null ? "outline" : role;
    },
    isStandard,
  };
}
