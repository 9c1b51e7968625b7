/**
 * The overlay of a plan: strips with the changed stretches of the chosen pieces, to be laid on the printed tissue, or on the
 * pieces of another version of the work.
 */
import type { Half } from "../decisions/alteration";
import { areBoundsNear } from "../geometry/bounds";
import { edgeFlatten, edgeNearest, type EdgeCurve } from "../geometry/edgeCurve";
import { outlineBounds } from "../geometry/outline";
import type { Rigid } from "../geometry/rigid";
import { directionOf, distance, type PiecePoint } from "../geometry/point";
import {
  pointOf,
  type DartName,
  type Nest,
  type Piece,
  type PieceName,
  type PointName,
  type SeamName,
} from "../pattern/piece";
import type { CutLine, PlanGarment, PlanHalf, PlannedAlteration } from "../plan/plan";
import { invariant } from "../result";
import { outlineOf } from "../pattern/ring";
import { LEVEL_KEPT, PLACED_ACCURACY, SAME_POINT } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import { changesOf, inParts, together, type Draft, type DraftOf } from "./drafts";
import { CROSS_ROOM, holdBy, printedPoints } from "./layOn";
import type {
  NeighbourLine,
  Overlay,
  OverlayPiece,
  Patch,
  PatchAmount,
  PatchLine,
  PatchOf,
  TooMuchWhy,
} from "./overlay";
import { nearestOfAll } from "./nearestOfAll";
import { ringLength } from "./ringParts";
import { levelLinesOf, sewnLegs, sewnRing, type SewnLine } from "./sewnLines";
import { isInStrip, partsInStrip, stripArea, stripRing, uprightBox, widened, type Strip } from "./strip";
import { along, longEnough, placeTitle } from "./titlePlace";

/** Of the stitch line's length, and of the paper the piece takes: where there is more, strips are no better than the piece. */
const MOST_MOVED = 0.6;
const MOST_PAPER = 2 / 3;

/** mm. How long strips may be where it is judged whether they are worth their paper: an A4 page inside its usual edges. */
const JUDGED: Mm = 271;

/** mm. A printed line further off than this is not beside the wearer's own. */
const BESIDE: Mm = 60;

/** mm. How finely lines are sampled to find room for them. */
const SAMPLE: Mm = 3;

/** mm. Lines end so far within the paper, not at its very edge. */
const INSET: Mm = 2;

/** Paper about the lines of a strip, mm: the narrow one where it is else too long for the page. */
const WIDE_MARGIN: Mm = 12;
const MARGINS: readonly Mm[] = [WIDE_MARGIN, CROSS_ROOM];

/** A strip is parted into so many at the most. */
const MOST_PARTS = 8;

/** What strips are laid on: the sizes picked, and what is printed of them. */
interface LaidOn extends Pick<PlanGarment, "nest" | "printed"> {
  readonly sizing: { readonly baseSize: { readonly label: string }; readonly cup: { readonly label: string | null } };
}

interface OverlaidHalf extends LaidOn, Pick<PlanHalf, "pieces" | "alterations" | "cutLines"> {}

/** What of a plan its strips follow from. */
export interface OverlaidPlan extends LaidOn {
  readonly left: OverlaidHalf;
  readonly right: OverlaidHalf;
}

/** The pieces of another version: the very same object twice where its halves are alike. */
interface OldPieces {
  readonly left: Pick<PlanHalf, "pieces">;
  readonly right: Pick<PlanHalf, "pieces">;
}

/**
 * The strips for the chosen pieces.
 *
 * @param longest how far a strip may reach, mm: the longer side of what can be printed on one page
 * @param old the version whose pieces she has on paper; null: she has the printed tissue
 * @returns every stretch of the final stitch line and dart legs that lies more than `SAME_LINE` off the base size as
 *          printed (or off the old piece) is on a strip, but for the pieces told as too much
 */
export function overlayOf(
  plan: OverlaidPlan,
  names: readonly PieceName[],
  longest: Mm,
  old: OldPieces | null = null,
): Overlay {
  const sheet: Sheet = { plan, longest, old };
  const told = halfPieces(sheet, names).map((one): Told => stripsOf(sheet, one));
  return {
    baseSize: {
      label: old === null ? plan.sizing.baseSize.label : null,
      size: plan.nest.labels.indexOf(plan.sizing.baseSize.label),
    },
    patches: told.flatMap(({ patches }) => patches.map((patch) => called(patch, plan.nest))),
    same: told.flatMap(({ of, why, patches }) => (why === null && patches.length === 0 ? [called(of, plan.nest)] : [])),
    tooMuch: told.flatMap(({ of, why }) => (why === null ? [] : [{ ...called(of, plan.nest), why }])),
  };
}

/** With her own word for a piece that has no name. */
function called<Of extends OverlayPiece>(of: Of, { otherNames }: Nest): Of {
  const label = Object.entries(otherNames ?? {}).find(([name]) => name === of.piece)?.[1];
  return label === undefined ? of : { ...of, label };
}

interface Sheet {
  readonly plan: OverlaidPlan;
  readonly longest: Mm;
  readonly old: OldPieces | null;
}

interface Told {
  readonly of: OverlayPiece;
  readonly why: TooMuchWhy | null;
  readonly patches: readonly Patch[];
}

interface HalfPiece {
  readonly final: Piece;
  readonly half: Half | null;
  readonly alterations: readonly PlannedAlteration[];
  readonly cutLines: readonly CutLine[];
}

const onHalf = ({ pieces, alterations, cutLines }: OverlaidHalf) =>
  pieces.map((final) => ({ final, alterations, cutLines }));

/** The chosen pieces in the plan's order; both halves of a piece where they differ, or did. */
function halfPieces({ plan, old }: Sheet, names: readonly PieceName[]): readonly HalfPiece[] {
  const left = onHalf(plan.left);
  if (plan.right === plan.left && old?.right === old?.left)
    return left.flatMap((one): HalfPiece[] => (names.includes(one.final.name) ? [{ ...one, half: null }] : []));
  const ofRight = onHalf(plan.right);
  return names.flatMap((name): HalfPiece[] => {
    const [ofLeft, ofOther] = [
      left.find(({ final }) => final.name === name),
      ofRight.find(({ final }) => final.name === name),
    ];
    if (ofLeft !== undefined && ofOther !== undefined && isAlike(ofLeft.final, ofOther.final) && wasAlike(old, name))
      return [{ ...ofLeft, half: null }];
    return [
      ...(ofLeft === undefined ? [] : [{ ...ofLeft, half: "left" as const }]),
      ...(ofOther === undefined ? [] : [{ ...ofOther, half: "right" as const }]),
    ];
  });
}

/** Whether a piece of the old version was the same on both halves. */
function wasAlike(old: Sheet["old"], name: PieceName): boolean {
  if (old === null) return true;
  const [left, right] = [old.left, old.right].map(({ pieces }) => pieces.find((piece) => piece.name === name));
  return left === undefined || right === undefined ? left === right : isAlike(left, right);
}

/** Whether two pieces are drawn alike: their lines follow one another within SAME_POINT. */
function isAlike(a: Piece, b: Piece): boolean {
  if (a === b) return true;
  const [ofA, ofB] = [
    [...sewnRing(a), ...sewnLegs(a)],
    [...sewnRing(b), ...sewnLegs(b)],
  ];
  return (
    ofA.length === ofB.length &&
    ofA.every(({ curve }, index) => {
      const other = ofB[index]?.curve;
      if (other === undefined || !isNear(curve.a, other.a) || !isNear(curve.b, other.b)) return false;
      if (curve.curve === null || other.curve === null) return curve.curve === other.curve;
      return isNear(curve.curve.c1, other.curve.c1) && isNear(curve.curve.c2, other.curve.c2);
    })
  );
}

const isNear = (p: PiecePoint, q: PiecePoint): boolean => distance(p, q) <= SAME_POINT;

/** What is printed on the tissue for a piece: the same, or the front that the wearer parted by a seam. */
const tissueOf = (printed: readonly Piece[], name: PieceName): Piece | undefined =>
  printed.find((piece) => piece.name === name) ??
  (name === "centreFront" || name === "sideFront" ? printed.find((piece) => piece.name === "front") : undefined);

function stripsOf({ plan, longest, old }: Sheet, one: HalfPiece): Told {
  const { final, half, alterations } = one;
  // A half with a cup of its own is laid on the tissue of that cup.
  const own = half === null ? plan : plan[half];
  const cup = half === null || plan.left.sizing.cup.label === plan.right.sizing.cup.label ? null : own.sizing.cup.label;
  const of: OverlayPiece = { piece: final.name, half, ...(cup === null || old !== null ? {} : { cup }) };
  const tissue =
    old === null
      ? tissueOf(own.printed, final.name)
      : old[half ?? "left"].pieces.find(({ name }) => name === final.name);
  if (tissue === undefined) return { of, why: "notPrinted", patches: [] };
  // How parts were moved is known from the printed piece alone.
  const motions = old === null ? motionsOf(alterations, final.name) : [];
  const tooMuch = { of, why: motions.length > 0 ? "cutAndMoved" : "mostMoved", patches: [] } as const;
  const { share, drafts } = changesOf(final, tissue);
  // Where parts were turned, as by a bust adjustment, the new line is not easily had from the tissue: there strips are worth
  // all their paper. What only slid apart is cut and moved on the tissue itself.
  const isWanted = motions.some(({ angle }) => angle !== 0);
  if (share > MOST_MOVED && !isWanted) return tooMuch;
  const [seams, legs] = [sewnRing(tissue), sewnLegs(tissue)];
  const print: Print = {
    nest: own.nest,
    tissue,
    seams,
    legs,
    besides: new Map(),
    points: printedPoints(tissue),
    others: old === null ? neighboursOf(own, one) : [],
    isOld: old !== null,
    more: of.cup === undefined ? 0 : 1,
  };
  const strips = stripsFor(drafts, print, longest);
  if (strips === null) return { of, why: "noHold", patches: [] };
  // On small paper strips are parted more often and lie over each other more: what is worth having is so on any paper.
  const isTooMuch = (laid: readonly Laid[] | null): boolean =>
    laid === null || laid.reduce((sum, { strip }) => sum + stripArea(strip), 0) > MOST_PAPER * paperOf(final);
  if (!isWanted && isTooMuch(strips) && (longest >= JUDGED || isTooMuch(stripsFor(drafts, print, JUDGED))))
    return tooMuch;
  const patches = strips.map((laid, index): Patch => {
    const base = `${final.name}${half === null ? "" : `-${half}`}`;
    return {
      ...patchOf(laid, one, print),
      ...(of.cup === undefined ? {} : { cup: of.cup }),
      key: `${base}-${index + 1}`,
      number: index + 1,
      count: strips.length,
    };
  });
  return { of, why: null, patches };
}

/** All strips for what changed; null where one of them cannot be laid on. */
function stripsFor(drafts: readonly Draft[], print: Print, longest: Mm): readonly Laid[] | null {
  const single: Laid[] = [];
  for (const draft of drafts) {
    const laid = layInParts(draft, print, longest);
    if (laid === null) return null;
    single.push(...laid);
  }
  return joined(single, print, longest);
}

/** mm². The upright box about a piece. */
function paperOf(piece: Piece): number {
  const { min, max } = outlineBounds(outlineOf(piece));
  return (max.x - min.x) * (max.y - min.y);
}

/** Strips that take less paper as one are made one, those that save most first. */
function joined(single: readonly Laid[], print: Print, longest: Mm): readonly Laid[] {
  let strips = [...single];
  // Every two are laid as one only once: both are there in many rounds.
  const known = new Map<Laid, Map<Laid, Joined | null>>();
  const pairOf = (a: Laid, b: Laid): Joined | null => {
    const ofA = known.get(a) ?? new Map<Laid, Joined | null>();
    known.set(a, ofA);
    const pair = ofA.get(b);
    if (pair !== undefined) return pair;
    const made = asOne(a, b, print, longest);
    ofA.set(b, made);
    return made;
  };
  // Every round leaves one strip less.
  for (let count = single.length; count > 1; count -= 1) {
    const pairs = strips.flatMap((a, index) => strips.slice(index + 1).flatMap((b) => pairOf(a, b) ?? []));
    const best = pairs.toSorted((p, q) => q.saved - p.saved)[0];
    if (best === undefined) return strips;
    strips = strips.flatMap((strip) => (strip === best.a ? [best.both] : strip === best.b ? [] : [strip]));
  }
  return strips;
}

interface Joined {
  readonly a: Laid;
  readonly b: Laid;
  readonly both: Laid;
  readonly saved: number;
}

function asOne(a: Laid, b: Laid, print: Print, longest: Mm): Joined | null {
  // Strips that lie apart hardly save paper as one: no more than room for words, and the strip is the longer to lay.
  if (!areBoundsNear(uprightBox(a.strip), uprightBox(b.strip), 0)) return null;
  const both = layOne(together(a.draft, b.draft), print, { longest, margin: WIDE_MARGIN });
  if (both === null) return null;
  const saved = stripArea(a.strip) + stripArea(b.strip) - stripArea(both.strip);
  return saved > 0 ? { a, b, both, saved } : null;
}

/** How the piece's parts were moved, cut apart, by what was done to it. */
const motionsOf = (alterations: readonly PlannedAlteration[], piece: PieceName): readonly Rigid<"piece">[] =>
  alterations.flatMap(({ outcome }) =>
    outcome.ok
      ? outcome.value.surgery
          .filter((trace) => trace.piece === piece)
          .flatMap(({ parts }) => parts.map(({ motion }) => motion))
      : [],
  );

interface Print {
  readonly nest: Nest;
  readonly tissue: Piece;
  /** Its sewn lines. */
  readonly seams: readonly SewnLine[];
  readonly legs: readonly SewnLine[];
  /** What was found beside lines of hers: they lie on many strips that are tried. */
  readonly besides: Map<SewnLine, readonly PiecePoint[]>;
  readonly points: ReturnType<typeof printedPoints>;
  /** Places in the chart of the printed lines that the wearer's runs between. */
  readonly others: readonly number[];
  /** The tissue is a piece of her own, as it was before. */
  readonly isOld: boolean;
  /** Lines that are written beyond the usual: a cup version of its own. */
  readonly more: number;
}

/** The printed sizes that the wearer's own line runs between, without the base size's. */
function neighboursOf({ nest, sizing }: LaidOn, { final, cutLines }: HalfPiece): readonly number[] {
  const labels = cutLines
    .filter(({ piece, level }) => piece === final.name && level !== "bust")
    .flatMap(({ between }) => between);
  return [...new Set(labels)]
    .filter((label) => label !== sizing.baseSize.label)
    .map((label) => nest.labels.indexOf(label));
}

interface Laid {
  readonly draft: Draft;
  /** The paper before it was widened for the words: lines are drawn this far. */
  readonly inked: Strip;
  readonly strip: Strip;
  readonly layOn: Patch["layOn"];
  readonly title: Patch["title"];
}

/** The strip, or so many that each is no longer than may be; null where printed points to hold them by are too far. */
function layInParts(draft: Draft, print: Print, longest: Mm): readonly Laid[] | null {
  for (let count = 1; count <= MOST_PARTS; count += 1) {
    const parts = count === 1 ? [draft] : inParts(draft, count);
    for (const margin of MARGINS) {
      const laid: Laid[] = [];
      for (const part of parts) {
        const one = layOne(part, print, { longest, margin });
        if (one === null) break;
        laid.push(one);
      }
      if (laid.length === parts.length) return laid;
    }
  }
  return null;
}

interface Paper {
  readonly longest: Mm;
  readonly margin: Mm;
}

function layOne(draft: Draft, print: Print, { longest, margin }: Paper): Laid | null {
  const lines = [...draft.seams, ...draft.legs];
  const points = lines.flatMap(({ curve }) => edgeFlatten(curve, PLACED_ACCURACY));
  const held = holdBy([...points, ...besideOf(draft, print)], print.points, turnsOf(draft), { longest, margin });
  if (held === null) return null;
  const inked = longEnough(held.strip);
  const drawn = [
    ...lines.map(({ curve }) => curve),
    ...baseSizeLines(print, inked),
    ...otherLines(draft, print, inked).map(({ curve }) => curve),
  ];
  const layOn = print.points.filter(({ at }) => isInStrip(widened(inked, -CROSS_ROOM), at));
  const obstacles = [...drawn.flatMap(sampled), ...layOn.flatMap(({ at }) => crossCorners(at))];
  const titled = placeTitle(inked, obstacles, { longest, more: print.more });
  return titled === null ? null : { draft, inked, ...titled, layOn };
}

/** Half a cross. */
const CROSS: Mm = 4;
const crossCorners = (at: PiecePoint): readonly PiecePoint[] =>
  [-CROSS, CROSS].flatMap((dx) => [-CROSS, CROSS].map((dy): PiecePoint => ({ ...at, x: at.x + dx, y: at.y + dy })));

/** Upright, and along the strip: along its first leg where it has any, else from the start of its seams to their end. */
function turnsOf({ seams, legs }: Draft): readonly Radians[] {
  const [first, last] = legs.length > 0 ? [legs[0], legs[0]] : [seams[0], seams.at(-1)];
  if (first === undefined || last === undefined) return [radians(0)];
  const quarter = Math.PI / 2;
  const slant = directionOf(first.curve.a, last.curve.b);
  return [radians(0), radians(slant - quarter * Math.round(slant / quarter))];
}

/** The printed points beside the wearer's line: where the base size's own line runs. */
function besideOf(
  { seams, legs }: Draft,
  { seams: printedSeams, legs: printedLegs, besides }: Print,
): readonly PiecePoint[] {
  const besideLine = (line: SewnLine, isSame: (printed: SewnLine) => boolean, all: readonly SewnLine[]) => {
    const found = besides.get(line) ?? beside(line, all.filter(isSame));
    besides.set(line, found);
    return found;
  };
  return [
    ...seams.flatMap((line) => besideLine(line, ({ seam }) => seam === line.seam, printedSeams)),
    ...legs.flatMap((line) => besideLine(line, ({ dart }) => dart === line.dart, printedLegs)),
  ];
}

const beside = (line: SewnLine, all: readonly SewnLine[]): readonly PiecePoint[] => {
  const nearestOf = nearestOfAll(all.map(({ curve }) => curve));
  return sampled(line.curve).flatMap((at) => {
    const near = nearestOf(at);
    return near !== null && near.distance <= BESIDE ? [near.point] : [];
  });
};

const sampled = (curve: EdgeCurve<"piece">): readonly PiecePoint[] => {
  const points = edgeFlatten(curve, PLACED_ACCURACY);
  return points.slice(1).flatMap((b, index) => along(invariant(points[index], "point"), b, SAMPLE));
};

/** All that is printed of the base size within the paper. */
const baseSizeLines = (print: Print, strip: Strip): readonly EdgeCurve<"piece">[] =>
  baseSizeParts(print, strip).flatMap(({ edges }) => edges);

/** The seams as they are printed: how a dart is folded shut at its mouth our own draft shows, and a file of hers need not. */
const printedSeams = ({ source }: Nest, seams: readonly SewnLine[], isOld: boolean): readonly SewnLine[] =>
  seams.filter(({ dart }) => isOld || source !== "own" || dart === null);

function baseSizeParts({ nest, tissue, seams, legs, isOld }: Print, strip: Strip): readonly PatchLine[] {
  const within = widened(strip, -INSET);
  const cut = (kind: PatchLine["kind"], curves: readonly EdgeCurve<"piece">[]): readonly PatchLine[] =>
    chained(curves.flatMap((curve) => partsInStrip(curve, within))).map((edges) => ({ kind, edges }));
  return [
    ...cut(
      "seam",
      printedSeams(nest, seams, isOld).map(({ curve }) => curve),
    ),
    ...cut(
      "dartLeg",
      legs.map(({ curve }) => curve),
    ),
    ...cut("level", levelLinesOf(tissue)),
  ];
}

interface OtherLine {
  readonly size: number;
  readonly curve: EdgeCurve<"piece">;
}

/** The same seams in the printed sizes on either side; none on the strip of a dart. */
function otherLines({ of, seams }: Draft, { nest, tissue, others }: Print, strip: Strip): readonly OtherLine[] {
  if (of.every(({ kind }) => kind === "dart")) return [];
  const within = widened(strip, -INSET);
  return others.flatMap((size) => {
    const printed = nest.sizes[size]?.find(({ name }) => name === tissue.name);
    if (printed === undefined) return [];
    return printedSeams(nest, sewnRing(printed), false)
      .filter((line) => seams.some(({ seam }) => seam === line.seam))
      .flatMap(({ curve }) => partsInStrip(curve, within).map((part) => ({ size, curve: part })));
  });
}

/** Edges that follow one another, joined into chains. */
function chained(edges: readonly EdgeCurve<"piece">[]): readonly (readonly EdgeCurve<"piece">[])[] {
  const chains: EdgeCurve<"piece">[][] = [];
  for (const edge of edges) {
    const end = chains.at(-1)?.at(-1);
    if (end !== undefined && distance(end.b, edge.a) <= SAME_POINT) chains.at(-1)?.push(edge);
    else chains.push([edge]);
  }
  return chains;
}

function patchOf(
  { draft, inked, strip, layOn, title }: Laid,
  one: HalfPiece,
  print: Print,
): Omit<Patch, "key" | "number" | "count"> {
  const { final, half } = one;
  const seams = chained(draft.seams.map(({ curve }) => curve)).map((edges): PatchLine => ({ kind: "seam", edges }));
  const legs = draft.legs.map(({ curve }): PatchLine => ({ kind: "dartLeg", edges: [curve] }));
  const others = otherLines(draft, print, inked);
  const neighbours = print.others.flatMap((size) =>
    chained(others.filter((line) => line.size === size).map(({ curve }) => curve)).map((edges): NeighbourLine => ({
      kind: "seam",
      edges,
      size,
      label: invariant(print.nest.labels[size], "label"),
    })),
  );
  return {
    piece: final.name,
    tissue: print.tissue.name,
    half,
    of: draft.of.map((of) => whatOf(of, final)),
    changed: [...seams, ...legs],
    ends: endsOn(draft, final),
    baseSize: baseSizeParts(print, inked),
    neighbours,
    layOn,
    amounts: amountsOn(draft, one, print),
    ring: stripRing(strip),
    title,
  };
}

function whatOf(of: DraftOf, final: Piece): PatchOf {
  if (of.kind === "dart") return of;
  const seam = mainSeam(of.lines);
  const main = of.lines.filter((line) => line.seam === seam);
  const named = printedPoints(final).filter(({ name }) =>
    final.edges.some((edge) => edge.seam === seam && (edge.from === name || edge.to === name)),
  );
  const nearest = (at: PiecePoint): PointName =>
    invariant(named.toSorted((p, q) => distance(p.at, at) - distance(q.at, at))[0], "a named point of the seam").name;
  return {
    kind: "seam",
    seam,
    from: nearest(invariant(main[0], "line").curve.a),
    to: nearest(invariant(main.at(-1), "line").curve.b),
  };
}

/** The seam that most of the lines are of. */
function mainSeam(lines: readonly SewnLine[]): SeamName {
  const seams = [...new Set(lines.map(({ seam }) => seam))];
  const lengthOf = (seam: SeamName): Mm => ringLength(lines.filter((line) => line.seam === seam));
  return invariant(seams.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0], "seam");
}

/** Ends of darts that a leg on the strip runs to. */
function endsOn({ legs }: Draft, final: Piece): readonly PiecePoint[] {
  const reached = new Set(legs.flatMap(({ dart, to }): DartName[] => (dart !== null && to !== null ? [dart] : [])));
  return final.darts.filter(({ name }) => reached.has(name)).map(({ apex }) => pointOf(final, apex));
}

/** How far off the lower printed line the final one runs, where that level is on the strip. */
function amountsOn(
  { seams }: Draft,
  { final, cutLines }: HalfPiece,
  { nest, tissue, isOld }: Print,
): readonly PatchAmount[] {
  // Told from printed lines, of which an old piece has none.
  if (isOld) return [];
  return cutLines.flatMap(({ piece, level, between }): PatchAmount[] => {
    const name: PointName = level === "hip" ? "sideHip" : "sideWaist";
    const at = final.points[name]?.at;
    if (piece !== final.name || level === "bust" || at === undefined) return [];
    const isOn = seams.some(({ seam, curve }) => seam === "side" && edgeNearest(curve, at).distance <= SAME_POINT);
    const lower = nest.sizes[nest.labels.indexOf(between[0])]?.find((one) => one.name === tissue.name)?.points[name]
      ?.at;
    // Another height, after a change of length, is not beside the printed line.
    if (!isOn || lower === undefined || Math.abs(lower.y - at.y) > LEVEL_KEPT) return [];
    return [{ level, at, between, offset: at.x - lower.x }];
  });
}
