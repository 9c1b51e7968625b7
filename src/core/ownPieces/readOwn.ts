/**
 * Her own pattern, read: from the outlines of its file and from what she said of them, pieces in every size, and what is still
 * missing. What she did not say is proposed; nothing half-done throws.
 */
import type { SizeChart } from "../chart/sizeChart";
import type { FilePlace } from "../decisions/fileDrawing";
import type { OwnPattern, OwnPieceSaid } from "../decisions/ownPattern";
import type { Pattern, StyleName } from "../decisions/pattern";
import { selfCrossings } from "../geometry/outline";
import { distance, piecePoint, type PiecePoint } from "../geometry/point";
import type { ClosedOutline, OpenLine, OutlineGroup, OutlineReading } from "../outlines/outlineReading";
import { readOutlines } from "../outlines/readOutlines";
import { OTHER_PIECES, PIECE_ORDER } from "../pattern/pieceSet";
import type { OtherPiece, Piece, PieceName } from "../pattern/piece";
import { outlineOf } from "../pattern/ring";
import { remember } from "../remember";
import { invariant } from "../result";
import type { Mm } from "../units";
import { buildPiece, NOTHING_KNOWN, type BuiltPiece, type FromOthers } from "./buildPiece";
import { contextOf } from "./fromOthers";
import { namedBy, otherWord } from "./nameOfPiece";
import type { Missing, OwnReading, PieceProblem, PieceReading, TracedNest } from "./ownReading";
import { ontoSheet } from "./placement";
import { unsoundIn } from "./soundNest";
import { pointOn } from "./tracedRing";
import {
  likeness,
  lineOf,
  sizesOf,
  tracePiece,
  USUAL_ALLOWANCE,
  type TracedPiece,
  type TracedSize,
} from "./tracePiece";

/** The pieces that a style is made of, the one with the bust point first. */
const STYLE_PIECES: Readonly<Record<StyleName, readonly PieceName[]>> = {
  sideDart: ["front", "back"],
  midriff: ["cup", "frontBand", "back", "backBand", "strap"],
  princessArmhole: ["centreFront", "sideFront", "back"],
  princessShoulder: ["centreFront", "sideFront", "back"],
};

/** The pieces that a plan on this pattern needs. */
export const piecesNeeded = ({ style, length }: Pick<Pattern, "style" | "length">): readonly PieceName[] => [
  ...STYLE_PIECES[style],
  ...(length === "hip" ? (["frontBasque", "backBasque"] as const) : []),
];

interface Drawn extends Pick<OwnPattern, "drawing"> {
  readonly known: OwnPattern["known"] | undefined;
  readonly joinWithin: Mm | undefined;
  readonly sortBy: OwnPattern["sortBy"] | undefined;
  readonly lines: OwnPattern["lines"] | undefined;
  readonly labels: readonly string[];
}

const outlinesOf = remember(
  ["drawing", "known", "joinWithin", "sortBy", "lines", "labels"],
  ({ drawing, known, joinWithin, sortBy, lines, labels }: Drawn) =>
    readOutlines({
      own: {
        file: "",
        drawing,
        pieces: [],
        ...(known === undefined ? {} : { known }),
        ...(joinWithin === undefined ? {} : { joinWithin }),
        ...(sortBy === undefined ? {} : { sortBy }),
        ...(lines === undefined ? {} : { lines }),
      },
      labels,
    }),
);

/** The outlines of her file, as they are read for the pieces: what takes longest of it, to be had by itself. */
export function outlinesFor(own: OwnPattern, chart: SizeChart): OutlineReading {
  const { drawing, known, joinWithin, sortBy, lines } = own;
  return outlinesOf({ drawing, known, joinWithin, sortBy, lines, labels: labelsOf(chart, own) });
}

/** The lines that close nothing: the very same list as long as the reading is. */
const looseOf = remember(["reading"], ({ reading }: { readonly reading: OutlineReading }): readonly OpenLine[] =>
  reading.unclosed.map(({ line }) => line),
);

const byId = remember(
  ["reading"],
  ({ reading }: { readonly reading: OutlineReading }): ReadonlyMap<string, ClosedOutline> =>
    new Map(reading.outlines.map((outline) => [outline.id, outline])),
);

interface Traced {
  readonly group: OutlineGroup;
  readonly outlines: ReadonlyMap<string, ClosedOutline>;
  readonly loose: readonly OpenLine[];
  readonly said: OwnPieceSaid | undefined;
  readonly name: PieceName;
  readonly style: StyleName;
  readonly labels: readonly string[];
  readonly scale: Mm;
}

const TRACE_INPUTS = ["group", "outlines", "loose", "said", "name", "style", "labels", "scale"] as const;

const BETWEEN = "\u0000";
const apart = remember(
  ["drawing", "joined"],
  ({ joined }: { readonly drawing: OwnPattern["drawing"]; readonly joined: string }): readonly string[] =>
    joined === "" ? [] : joined.split(BETWEEN),
);

/**
 * The labels of the chart, each once and none empty: two rows of one name are one to the file. The very same list as long as they
 * are the same, whatever else is typed into it.
 */
const labelsOf = (chart: SizeChart, { drawing }: OwnPattern): readonly string[] =>
  apart({
    drawing,
    joined: [...new Set(chart.sizes.map(({ label }) => label))].filter((label) => label.trim() !== "").join(BETWEEN),
  });

const traced = remember(TRACE_INPUTS, (input: Traced): TracedPiece => tracePiece(input));

/** Each group is looked at as each piece of the style once. */
const MOST_NAMES = 12;
const likenessOf = remember(TRACE_INPUTS, (input: Traced): number => likeness(input), MOST_NAMES);

const built = remember(
  ["trace", "group", "said", "name", "scale", "others"],
  ({
    trace,
    group,
    said,
    name,
    scale,
    others,
  }: {
    readonly trace: TracedPiece;
    readonly group: OutlineGroup;
    readonly said: OwnPieceSaid | undefined;
    readonly name: PieceName;
    readonly scale: Mm;
    readonly others: FromOthers;
  }): BuiltPiece => {
    const bustSaid = new Map<string, PiecePoint>();
    const bust = said?.bustPoint;
    if (bust !== undefined) bustSaid.set(bust.size, piecePoint(bust.at.x * scale, bust.at.y * scale));
    return buildPiece(trace, name, { said, marks: group.marks, bustSaid, others });
  },
);

interface NamedGroup {
  readonly group: OutlineGroup;
  readonly said: OwnPieceSaid | undefined;
  readonly name: PieceName | null;
  readonly label: string;
  readonly leftOut: boolean;
}

/** A piece is proposed by its form only where it comes at least so near to it. */
const FORM_AT_MOST = 3.5;
/** And only where no other piece is as near, but for so much. */
const AS_WELL = 1.4;

/**
 * How much is looked at to propose names, in edges and steps along outlines, once for each group and name: a sheet of forty
 * pieces is a fourth of it. What goes beyond is left for her to name.
 */
const MOST_LOOKED_AT = 250_000;
/** mm. */
const LOOKED_STEP: Mm = 2;

/** What it costs to look at a group once. */
function lookingAt(
  group: OutlineGroup,
  outlines: ReadonlyMap<string, ClosedOutline>,
  labels: readonly string[],
): number {
  const own = sizesOf(group, labels);
  const id = group.outlines[own[Math.floor(own.length / 2)] ?? ""] ?? "";
  const edges = outlines.get(id)?.edges ?? [];
  return edges.reduce((sum, { a, b }) => sum + 1 + distance(a, b) / LOOKED_STEP, 0);
}

/** What each group is: as she said, by what stands on it, by its form; in this order, no piece twice where she did not say so. */
function nameGroups(
  own: OwnPattern,
  pattern: Pattern,
  reading: OutlineReading,
  scale: Mm,
): {
  readonly groups: readonly NamedGroup[];
  /** Not all was looked at. */
  readonly isCut: boolean;
} {
  const needed = piecesNeeded(pattern);
  const taken = new Set<PieceName>();
  const names = new Map<string, { readonly name: PieceName; readonly label: string }>();
  const saidOf = (group: OutlineGroup): OwnPieceSaid | undefined => own.pieces.find(({ id }) => id === group.id);
  const isLeftOut = (group: OutlineGroup): boolean => {
    const said = saidOf(group);
    return said?.leftOut ?? (said?.name == null && (group.isSquare || group.isFrame === true));
  };
  const give = (group: OutlineGroup, name: PieceName, label = ""): void => {
    names.set(group.id, { name, label });
    taken.add(name);
  };
  const freeOther = (): OtherPiece | undefined => OTHER_PIECES.find((one) => !taken.has(one));
  const open = reading.groups.filter((group) => !isLeftOut(group));
  for (const group of open) {
    const said = saidOf(group);
    if (said?.name != null) give(group, said.name, said.label ?? "");
  }
  for (const group of open) {
    if (names.has(group.id)) continue;
    for (const text of [group.nameInFile, ...group.writings.map((writing) => writing.text)]) {
      const found = namedBy(text, needed);
      const name = found === "other" ? freeOther() : found;
      if (name === null || name === undefined || taken.has(name)) continue;
      give(group, name, found === "other" ? otherWord(text) : "");
      break;
    }
  }
  const outlines = byId({ reading });
  const loose = looseOf({ reading });
  const { style, chart } = pattern;
  const labels = labelsOf(chart, own);
  const unnamed = open.filter((group) => !names.has(group.id) && sizesOf(group, labels).length > 0);
  const wanted = needed.filter((name) => !taken.has(name));
  let looked = 0;
  const seen = unnamed.filter((group) => {
    looked += wanted.length * lookingAt(group, outlines, labels);
    return looked <= MOST_LOOKED_AT;
  });
  const pairs = seen
    .flatMap((group) =>
      wanted.map((name) => ({
        group,
        name,
        cost: likenessOf({ group, outlines, loose, said: saidOf(group), name, style, labels, scale }),
      })),
    )
    .filter(({ cost }) => cost <= FORM_AT_MOST)
    .toSorted((p, q) => p.cost - q.cost);
  // The surest first; one that could as well be another piece that is still to be found is left to her.
  for (let round = 0; round < open.length; round += 1) {
    const left = pairs.filter(({ group, name }) => !names.has(group.id) && !taken.has(name));
    const sure = left.find((pair) =>
      left.every((other) => other.group !== pair.group || other === pair || other.cost > AS_WELL * pair.cost),
    );
    if (sure === undefined) break;
    give(sure.group, sure.name);
  }
  const groups = reading.groups.map((group) => ({
    group,
    said: saidOf(group),
    name: names.get(group.id)?.name ?? null,
    label: names.get(group.id)?.label ?? "",
    leftOut: isLeftOut(group),
  }));
  return { groups, isCut: seen.length < unnamed.length };
}

/**
 * Reads her own pattern.
 *
 * @param own     the file and what she said of it
 * @param pattern its chart, style and length: what the plan needs
 * @returns lengths in mm, places in the file's own units. The nest only where nothing that the plan needs is missing
 */
export function readOwn({ own, pattern }: { readonly own: OwnPattern; readonly pattern: Pattern }): OwnReading {
  const { chart, style } = pattern;
  const labels = labelsOf(chart, own);
  const outlines = outlinesFor(own, chart);
  const scale = outlines.scale.mm;
  if (scale === null) return { outlines, pieces: [], missing: [{ code: "missing/scale" }], nest: null };
  const { groups, isCut } = nameGroups(own, pattern, outlines, scale);
  const map = byId({ reading: outlines });
  const loose = looseOf({ reading: outlines });
  const read: ReadGroup[] = [];
  let others: FromOthers = NOTHING_KNOWN;
  // Those first that others go by: the piece with the bust point and the strap.
  const rank = (name: PieceName | null): number =>
    name === "strap"
      ? -1
      : name === STYLE_PIECES[style][0]
        ? 0
        : name === null
          ? PIECE_ORDER.length + 1
          : 1 + PIECE_ORDER.indexOf(name);
  for (const one of groups.toSorted((p, q) => rank(p.name) - rank(q.name))) {
    const { group, said, name, leftOut } = one;
    if (name === null || leftOut || sizesOf(group, labels).length === 0) {
      read.push({ ...one, trace: null, made: null });
      continue;
    }
    const trace = traced({ group, outlines: map, loose, said, name, style, labels, scale });
    const made = built({ trace, group, said, name, scale, others });
    read.push({ ...one, trace, made });
    if (rank(name) <= 0) others = contextOf({ made, others });
  }
  const inOrder = groups.map(({ group }) =>
    invariant(
      read.find((one) => one.group === group),
      "group",
    ),
  );
  const pieces = inOrder.map((one) => readingOf(one, scale));
  const missing = missingOf(own, pattern, outlines, isCut || outlines.isCut === true, inOrder, pieces);
  return { outlines, pieces, missing, nest: missing.length > 0 ? null : nestOf(own, pattern, inOrder) };
}

interface ReadGroup extends NamedGroup {
  readonly trace: TracedPiece | null;
  readonly made: BuiltPiece | null;
}

function readingOf({ group, said, name, label, leftOut, trace, made }: ReadGroup, scale: Mm): PieceReading {
  const line = lineOf(group, said);
  const base: PieceReading["said"] = {
    id: group.id,
    ...said,
    name,
    ...(label === "" ? {} : { label }),
    ...(leftOut ? { leftOut: true } : {}),
    extent: trace?.extent ?? said?.extent ?? "half",
    turns: trace?.turns ?? said?.turns ?? 0,
    turnedOver: trace?.turnedOver ?? said?.turnedOver ?? false,
    line,
    centreOnFold: trace?.centreOnFold ?? said?.centreOnFold ?? false,
    ...(line === "cutting" && trace !== null ? { allowances: allowancesOf(trace, said) } : {}),
  };
  if (trace === null || made === null) return { id: group.id, said: base, sizes: [], problems: [] };
  return {
    id: group.id,
    said: base,
    sizes: trace.sizes.map((size, index) => {
      const inFile = fileOf(size, scale);
      return {
        size: size.label,
        corners: [
          ...size.corners.map(({ name: corner, s, by }) => ({ name: corner, at: inFile(pointOn(size.ring, s)), by })),
          ...made.derived.flatMap(({ name: corner, at }) => {
            const place = at[index];
            return place === undefined ? [] : [{ name: corner, at: inFile(place), by: "level" as const }];
          }),
        ],
        darts: size.darts.map(({ name: dart, first, second, apex, by, innerFirst }) => {
          const [a, b] = [inFile(pointOn(size.ring, first)), inFile(pointOn(size.ring, second))];
          return { name: dart, inner: innerFirst ? a : b, outer: innerFirst ? b : a, apex: inFile(apex), by };
        }),
        bustPoint: made.bustPoints[index] == null ? null : inFile(made.bustPoints[index].at),
        deviation: made.deviations[index] ?? 0,
      };
    }),
    problems: problemsOf(trace, made),
  };
}

/** Each problem once, and what is wrong with the pieces made. */
const problemsOf = (trace: TracedPiece, made: BuiltPiece): readonly PieceProblem[] => {
  const all = [...trace.problems, ...made.problems, ...crossings({ made })];
  const seen = new Set<string>();
  return all.filter((problem) => {
    const key = JSON.stringify(problem);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
};

const crossings = remember(["made"], ({ made }: { readonly made: BuiltPiece }): readonly PieceProblem[] =>
  made.pieces.flatMap((piece, index): PieceProblem[] =>
    selfCrossings(outlineOf(piece)).length > 0
      ? [{ code: "own/crosses-itself", size: invariant(made.traced[index], "size").label }]
      : [],
  ),
);

const allowancesOf = (trace: TracedPiece, said: OwnPieceSaid | undefined): NonNullable<OwnPieceSaid["allowances"]> => ({
  ...Object.fromEntries(
    trace.corners.map(({ seam }) => [seam, seam === "centre" && trace.centreOnFold ? 0 : USUAL_ALLOWANCE]),
  ),
  ...said?.allowances,
});

/** From the piece frame back into the file. */
function fileOf(size: TracedSize, scale: Mm): (p: PiecePoint) => FilePlace {
  return (p) => {
    const { x, y } = ontoSheet(size.place, p);
    return { x: x / scale, y: y / scale };
  };
}

/** Corners are told by themselves, and a bust point where there is none at all. */
const isInTheWay = ({ code }: PieceProblem): boolean => code !== "own/corner-missing" && code !== "own/no-bust-point";

/** In the order to do it, only what the plan uses. */
function missingOf(
  own: OwnPattern,
  pattern: Pattern,
  outlines: OutlineReading,
  isCut: boolean,
  read: readonly ReadGroup[],
  pieces: readonly PieceReading[],
): readonly Missing[] {
  const labels = labelsOf(pattern.chart, own);
  const missing: Missing[] = [];
  const open = read.filter(({ leftOut }) => !leftOut);
  // What was not looked at may be what is missing.
  const cut: readonly Missing[] = isCut ? [{ code: "missing/too-much" }] : [];
  if (open.length === 0 && isCut) return cut;
  if (open.length === 0 || outlines.outlines.length === 0)
    return [{ code: "missing/outlines", widest: widestGap(outlines) }];
  if (open.every(({ group }) => sizesOf(group, labels).length === 0)) return [...cut, { code: "missing/sizes" }];
  const needed = piecesNeeded(pattern);
  const found = (piece: PieceName): readonly ReadGroup[] => open.filter(({ name }) => name === piece);
  if (needed.some((piece) => found(piece).length === 0) && outlines.unclosed.length > 0)
    missing.push({ code: "missing/outlines", widest: widestGap(outlines) });
  if (needed.some((piece) => found(piece).length === 0)) missing.push(...cut);
  for (const piece of [...needed, ...OTHER_PIECES]) {
    const groups = found(piece);
    const [group, more] = groups;
    if (group === undefined) {
      if (needed.includes(piece)) missing.push({ code: "missing/piece", piece });
      continue;
    }
    if (more !== undefined) {
      missing.push({ code: "missing/piece-twice", piece });
      continue;
    }
    if (sizesOf(group.group, labels).length === 0) {
      missing.push({ code: "missing/sizes" });
      continue;
    }
    const problems = pieces.find(({ id }) => id === group.group.id)?.problems ?? [];
    const corners = new Set<string>();
    for (const problem of problems) {
      if (problem.code !== "own/corner-missing" || corners.has(problem.corner)) continue;
      corners.add(problem.corner);
      missing.push({ code: "missing/corner", piece, corner: problem.corner });
    }
    const isBustPiece = piece === STYLE_PIECES[pattern.style][0];
    if (isBustPiece && group.made !== null && group.made.bustPoints.some((one) => one === null))
      missing.push({ code: "missing/bust-point", piece });
    const first = problems.find(isInTheWay);
    if (first !== undefined) missing.push({ code: "missing/problem", piece, problem: first });
  }
  if (missing.length > 0) return missing;
  const nest = nestOf(own, pattern, read);
  return nest.sizes.length < 2 ? [{ code: "missing/second-size" }] : unsoundIn(nest, pattern.chart);
}

const widestGap = ({ unclosed }: OutlineReading): Mm | null =>
  unclosed.length === 0 ? null : unclosed.reduce((most, { gap }) => Math.max(most, gap), 0);

/** The sizes of which every piece is there, in the order of the chart. */
function nestOf(own: OwnPattern, pattern: Pattern, read: readonly ReadGroup[]): TracedNest {
  const used = PIECE_ORDER.flatMap((name) =>
    read.filter((one) => one.name === name && !one.leftOut && one.made !== null),
  ).filter(({ name }) => name !== null && (piecesNeeded(pattern).includes(name) || name.startsWith("other")));
  const sizes = labelsOf(pattern.chart, own).flatMap((label) => {
    const pieces = used.flatMap(({ made }): readonly Piece[] => {
      const index = made?.traced.findIndex((size) => size.label === label) ?? -1;
      const piece = made?.pieces[index];
      return piece === undefined ? [] : [piece];
    });
    return used.length > 0 && pieces.length === used.length ? [{ label, pieces }] : [];
  });
  const labels: Partial<Record<OtherPiece, string>> = {};
  for (const { name, label } of used) {
    const other = OTHER_PIECES.find((one) => one === name);
    if (other !== undefined && label !== "") labels[other] = label;
  }
  const { cups, draftedDifference } = pattern.chart;
  return {
    sizes,
    cup: own.cup ?? cups.find(({ difference }) => difference === draftedDifference)?.label ?? null,
    labels,
  };
}
