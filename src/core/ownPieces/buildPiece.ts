/** A traced piece made a piece of the plan in every size: all points that alterations ask for, edges matched size by size. */
import type { OwnPieceSaid } from "../decisions/ownPattern";
import { extentOf } from "../geometry/bounds";
import { edgeCrossingsAtY, edgeLength, edgePart } from "../geometry/edgeCurve";
import { isInOutline } from "../geometry/outline";
import { midpoint, piecePoint, polar, shift, directionOf, type PiecePoint } from "../geometry/point";
import type { Mark } from "../outlines/outlineReading";
import { homeOf } from "../pattern/dartNames";
import type { Dart, Edge, LevelName, NamedPoint, Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import { isFrontPiece } from "../pattern/pieceGroups";
import { invariant } from "../result";
import { DART_ASIDE_MOST, SAME_POINT } from "../tolerance";
import { lineDistance } from "../geometry/segment";
import { radians, type Mm } from "../units";
import { bustPointsOf, type FoundBustPoint } from "./bustPoints";
import { matchSizes } from "./matchSizes";
import type { PieceProblem } from "./ownReading";
import { jointsOf, partOn, pointOn, wayFrom, type Chain, type TracedRing } from "./tracedRing";
import type { TracedPiece, TracedSize } from "./tracePiece";

/** What other pieces say of this one, by size. */
export interface FromOthers {
  /** How far below the underarm the front's side seam passes the bust line, along it. */
  readonly sideDepth: ReadonlyMap<string, Mm>;
  /** The centre front's bust point, and how far below the top of the princess seam it lies along that. */
  readonly bustPoint: ReadonlyMap<string, PiecePoint>;
  readonly princessUpper: ReadonlyMap<string, Mm>;
  readonly strapLength: ReadonlyMap<string, Mm>;
}

export const NOTHING_KNOWN: FromOthers = {
  sideDepth: new Map(),
  bustPoint: new Map(),
  princessUpper: new Map(),
  strapLength: new Map(),
};

export interface BuiltPiece {
  /** By size, in the order of what was traced. */
  readonly pieces: readonly Piece[];
  readonly traced: readonly TracedSize[];
  readonly bustPoints: readonly (FoundBustPoint | null)[];
  /** Corners that come of levels and shares, on the ring. */
  readonly derived: readonly { readonly name: PointName; readonly at: readonly PiecePoint[] }[];
  readonly deviations: readonly Mm[];
  readonly problems: readonly PieceProblem[];
}

/** A place on the ring that has a name. */
interface MarkOn {
  readonly name: PointName;
  readonly level: LevelName;
  readonly s: Mm;
}

const UNDER_BUST = 0.41;
/** The bust level lies at least this far below the underarm, so that the two stay apart; and so far above a dart there. */
const CLEAR: Mm = 10;
/** Of a strap's way over the shoulder, with what it is cut shorter by. */
const TAKE_UP: Mm = 15;
const STRAP_SHARE = { front: 0.43, back: 0.57 };
const USUAL_STRAP: Mm = 320;
const USUAL_WAIST_TO_HIP: Mm = 200;

export function buildPiece(
  traced: TracedPiece,
  name: PieceName,
  given: {
    readonly said: OwnPieceSaid | undefined;
    readonly marks: readonly Mark[];
    readonly bustSaid: ReadonlyMap<string, PiecePoint>;
    readonly others: FromOthers;
  },
): BuiltPiece {
  const { sizes, corners } = traced;
  const problems: PieceProblem[] = [];
  if (sizes.length === 0) return { pieces: [], traced: [], bustPoints: [], derived: [], deviations: [], problems };
  const hasBust = name === "front" || name === "cup" || name === "centreFront";
  const found = hasBust
    ? bustPointsOf(sizes, given.marks, given.bustSaid, name === "centreFront")
    : sizes.map((): FoundBustPoint | null => null);
  const bustPoints = found.map((bust, index) =>
    name === "centreFront" ? onSeam(invariant(sizes[index], "size"), bust) : bust,
  );
  for (const [index, bust] of bustPoints.entries())
    if (hasBust && (bust === null || bust.by === "darts"))
      problems.push({ code: "own/no-bust-point", size: invariant(sizes[index], "size").label });

  for (const { ring, darts, label } of sizes)
    for (const dart of darts)
      if (!isInOutline(ring.edges, dart.apex)) problems.push({ code: "own/dart-no-end", dart: dart.name, size: label });

  const levelOf = new Map(corners.map((corner) => [corner.name, corner.level]));
  const marks = sizes.map((size): MarkOn[] => [
    ...size.corners.map((corner) => ({ name: corner.name, s: corner.s, level: levelOf.get(corner.name) ?? "bust" })),
    ...size.darts.flatMap((dart): MarkOn[] => {
      const home = homeOf(dart.name);
      const level: LevelName = home === "shoulder" ? "shoulder" : home === "neck" ? "neck" : "bust";
      const [inner, outer] = dart.innerFirst ? [dart.first, dart.second] : [dart.second, dart.first];
      return [
        { name: `${dart.name}Inner`, s: inner, level },
        { name: `${dart.name}Outer`, s: outer, level },
      ];
    }),
  ]);
  const add = (mark: PointName, level: LevelName, places: readonly (Mm | null)[]): void => {
    const known = places.filter((s): s is Mm => s !== null);
    if (known.length < sizes.length) return;
    for (const [index, s] of snapped(sizes, marks, known).entries())
      invariant(marks[index], "size").push({ name: mark, level, s });
  };
  addLevels(name, sizes, bustPoints, given.others, add);
  const derived = deriveOf(marks, sizes);

  const ordered = marks.map((own, index) => {
    const { ring, corners: all } = invariant(sizes[index], "size");
    const start = invariant(all[0], "corner").s;
    return own.toSorted((p, q) => wayFrom(ring, start, p.s) - wayFrom(ring, start, q.s));
  });
  const model = invariant(ordered[0], "size");
  const isSame = ordered.every(
    (own) => own.length === model.length && own.every((mark, k) => mark.name === model[k]?.name),
  );
  if (!isSame) {
    for (const size of sizes) problems.push({ code: "own/sizes-unlike", size: size.label });
    return { pieces: [], traced: sizes, bustPoints, derived, deviations: sizes.map(() => 0), problems };
  }

  const seams = seamsOf(model, corners);
  const fitted = sizes.map((): Mm => 0);
  const edges = sizes.map((): Edge[] => []);
  const points = sizes.map((): Partial<Record<PointName, NamedPoint>> => ({}));
  const levels = given.said?.levels ?? { top: "bust" as const, bottom: "bust" as const };
  const heights = sizes.map(({ ring }) => heightsOf(ring));
  const pointFor = (size: number, at: PiecePoint, own: Omit<NamedPoint, "at">): NamedPoint => {
    if (!name.startsWith("other")) return { at, ...own };
    const { top, bottom } = invariant(heights[size], "height");
    return { at, ...betweenLevels(levels.top, levels.bottom, (at.y - top) / (bottom - top)) };
  };
  let bends = 0;
  for (const [index, from] of model.entries()) {
    const next = (index + 1) % model.length;
    const to = invariant(model[next], "mark");
    const mouthOf = sizes[0]?.darts.find(
      (dart) =>
        (from.name === `${dart.name}Inner` && to.name === `${dart.name}Outer`) ||
        (from.name === `${dart.name}Outer` && to.name === `${dart.name}Inner`),
    );
    const chains = sizes.map(({ ring }, size): Chain => {
      const own = invariant(ordered[size], "size");
      return partOn(ring, invariant(own[index], "mark").s, invariant(own[next], "mark").s);
    });
    const seam = invariant(seams[index], "seam");
    if (chains.some((chain) => chain.length === 0)) {
      for (const [size, chain] of chains.entries())
        if (chain.length === 0)
          problems.push({ code: "own/corner-missing", corner: to.name, size: invariant(sizes[size], "size").label });
      return { pieces: [], traced: sizes, bustPoints, derived, deviations: fitted, problems };
    }
    const matched = matchSizes(chains);
    const count = invariant(matched.edges[0], "size").length;
    const names: PointName[] = [from.name];
    for (let k = 1; k < count; k += 1) {
      names.push(`bend${String(bends).padStart(3, "0")}` as PointName);
      bends += 1;
    }
    names.push(to.name);
    for (const [size, chain] of matched.edges.entries()) {
      fitted[size] = Math.max(invariant(fitted[size], "size"), invariant(matched.deviations[size], "size"));
      const whole = chain.reduce((sum, edge) => sum + edgeLength(edge), 0);
      let along: Mm = 0;
      for (const [k, edge] of chain.entries()) {
        const at = invariant(names[k], "name");
        invariant(points[size], "size")[at] = pointFor(
          size,
          edge.a,
          k === 0 ? { level: from.level } : betweenLevels(from.level, to.level, smooth(along / whole)),
        );
        invariant(edges[size], "size").push({
          from: at,
          to: invariant(names[k + 1], "name"),
          seam,
          curve: edge.curve,
          mouthOf: mouthOf?.name ?? null,
        });
        along += edgeLength(edge);
      }
    }
  }
  if (bends > MOST_BENDS) {
    const [first] = edges;
    const bendsOf = (seam: SeamName): number => (first ?? []).filter((edge) => edge.seam === seam).length;
    const seam = [...new Set(seams)].reduce((most, one) => (bendsOf(one) > bendsOf(most) ? one : most), "edge");
    problems.push({ code: "own/seam-too-long", seam, size: "" });
    return { pieces: [], traced: sizes, bustPoints, derived, deviations: fitted, problems };
  }
  const pieces = sizes.map((size, index): Piece => {
    const own = invariant(points[index], "size");
    const bust = bustPoints[index] ?? null;
    return withPlace(
      {
        name,
        points: { ...own, ...insidePoints(name, size, own, bust, given.others) },
        edges: invariant(edges[index], "size"),
        darts: size.darts.map((dart) => dartOf(dart, size, name, bust)),
        levelLines: levelLinesOf(name, {
          ...own,
          ...(bust === null ? {} : { bustPoint: { at: bust.at, level: "bust" } }),
        }),
        centreOnFold: traced.centreOnFold && corners.some(({ seam }) => seam === "centre"),
      },
      size.label,
      given.others,
    );
  });
  const deviations = sizes.map(({ ring }, size) => ring.off + invariant(fitted[size], "size"));
  return { pieces, traced: sizes, bustPoints, derived, deviations, problems };
}

/** Names of bends have three digits. */
const MOST_BENDS = 300;
const smooth = (share: number): number => share * share * (3 - 2 * share);

const betweenLevels = (from: LevelName, to: LevelName, share: number): Omit<NamedPoint, "at"> =>
  from === to || share <= 0
    ? { level: from }
    : share >= 1
      ? { level: to }
      : { level: from, towards: { level: to, share } };

/** The seam from each mark on to the next. */
function seamsOf(marks: readonly MarkOn[], corners: TracedPiece["corners"]): readonly SeamName[] {
  let seam: SeamName = invariant(corners.at(-1), "corner").seam;
  return marks.map(({ name }) => {
    seam = corners.find((corner) => corner.name === name)?.seam ?? seam;
    return seam;
  });
}

function heightsOf({ edges }: TracedRing): { readonly top: Mm; readonly bottom: Mm } {
  const { y, height } = extentOf(edges.map(({ a }) => a));
  return { top: y, bottom: y + Math.max(height, 1) };
}

/** The bust point of a centre front lies on its princess seam. */
function onSeam(size: TracedSize, bust: FoundBustPoint | null): FoundBustPoint | null {
  if (bust === null) return null;
  const [top, low] = [sOf(size, "princessTop"), sOf(size, "princessWaist")];
  if (top === null || low === null) return bust;
  const s = nearestBetween(size.ring, top, low, bust.at);
  return { ...bust, at: pointOn(size.ring, s) };
}

const sOf = ({ corners }: TracedSize, name: PointName): Mm | null =>
  corners.find((corner) => corner.name === name)?.s ?? null;

function nearestBetween(ring: TracedRing, from: Mm, to: Mm, p: PiecePoint): Mm {
  const span = wayFrom(ring, from, to);
  let best = { s: from, off: Infinity };
  let [low, high, steps] = [0, span, COARSE];
  for (let round = 0; round < 4; round += 1) {
    for (let i = 0; i <= steps; i += 1) {
      const along = low + ((high - low) * i) / steps;
      const at = pointOn(ring, from + along);
      const off = Math.hypot(at.x - p.x, at.y - p.y);
      if (off < best.off) best = { s: along, off };
    }
    const step = (high - low) / steps;
    [low, high, steps] = [Math.max(0, best.s - step), Math.min(span, best.s + step), FINE];
  }
  return (from + best.s) % ring.length;
}
const COARSE = 120;
const FINE = 24;

/** Where a stretch of the ring first comes to a height; the end nearer to it where it does not. */
function atHeight(ring: TracedRing, from: Mm, to: Mm, y: Mm): Mm {
  let along: Mm = 0;
  for (const edge of partOn(ring, from, to)) {
    const [t] = edgeCrossingsAtY(edge, y);
    if (t !== undefined) return (from + along + (t === 0 ? 0 : edgeLength(edgePart(edge, 0, t)))) % ring.length;
    along += edgeLength(edge);
  }
  return Math.abs(pointOn(ring, from).y - y) < Math.abs(pointOn(ring, to).y - y) ? from : to;
}

const spanOf = (size: TracedSize, from: PointName, to: PointName): readonly [Mm, Mm] | null => {
  const [a, b] = [sOf(size, from), sOf(size, to)];
  return a === null || b === null ? null : [a, b];
};

const shareOf = (size: TracedSize, seam: readonly [Mm, Mm] | null, at: number): Mm | null =>
  seam === null ? null : (seam[0] + wayFrom(size.ring, seam[0], seam[1]) * at) % size.ring.length;

type AddMark = (name: PointName, level: LevelName, places: readonly (Mm | null)[]) => void;

/** The points of the ring that come of levels: where the body's bust and hip lines meet it, where an armhole turns. */
function addLevels(
  name: PieceName,
  sizes: readonly TracedSize[],
  bustPoints: readonly (FoundBustPoint | null)[],
  others: FromOthers,
  add: AddMark,
): void {
  const each = (place: (size: TracedSize, index: number) => Mm | null): readonly (Mm | null)[] => sizes.map(place);
  const lowSide: PointName =
    name === "cup" || sizes[0]?.corners.some((c) => c.name === "sideUnderBust") === true
      ? "sideUnderBust"
      : "sideWaist";
  if (name === "front" || name === "back" || name === "sideFront") {
    const top: PointName =
      sizes[0]?.corners.some((c) => c.name === "shoulderTip") === true ? "shoulderTip" : "princessTop";
    const spans = sizes.map((size) => spanOf(size, top, "underarm"));
    const share = touchShare(sizes, spans);
    add(
      "armholeTouch",
      "shoulder",
      each(({ ring }, index) => {
        const own = spans[index];
        return own === null || own === undefined
          ? null
          : (own[0] + wayFrom(ring, own[0], own[1]) * share) % ring.length;
      }),
    );
    // What a bust adjustment hinges on, named wherever it lies, so that it is not put anew right beside where two curves meet.
    if (name === "front")
      add(
        "armholeHinge",
        "shoulder",
        each(({ ring }, index) => {
          const own = spans[index];
          return own === null || own === undefined
            ? null
            : (own[0] + wayFrom(ring, own[0], own[1]) * (share + HINGE_BELOW * (1 - share))) % ring.length;
        }),
      );
  }
  if (name === "front" || name === "cup" || name === "back" || name === "sideFront") {
    const places = each((size, index) => {
      const side = spanOf(size, "underarm", lowSide);
      if (side === null) return null;
      const bust = bustPoints[index];
      const depth = others.sideDepth.get(size.label);
      const wanted =
        bust !== null && bust !== undefined
          ? atHeight(size.ring, side[0], side[1], bust.at.y)
          : side[0] + (depth ?? Math.min(USUAL_DEPTH, wayFrom(size.ring, side[0], side[1]) * 0.6));
      return clearOf(size, side, wanted);
    });
    add("sideBust", "bust", places);
  }
  if (name === "centreFront" || name === "sideFront") {
    add(
      "princessBust",
      "bust",
      each((size, index) => {
        const [top, low] = [sOf(size, "princessTop"), sOf(size, "princessWaist")];
        if (top === null || low === null) return null;
        const bust = bustPoints[index];
        if (bust !== null && bust !== undefined) return nearestBetween(size.ring, top, low, bust.at);
        const whole = wayFrom(size.ring, low, top);
        const upper = others.princessUpper.get(size.label) ?? whole * 0.5;
        return (low + Math.max(whole * 0.1, whole - upper)) % size.ring.length;
      }),
    );
  }
  const centre: readonly [PointName, PointName] | null =
    name === "front" || name === "centreFront"
      ? ["centreWaist", "centreNeck"]
      : name === "cup"
        ? ["underBustCentre", "centreNeck"]
        : name === "back"
          ? [lowSide === "sideUnderBust" ? "underBustCentre" : "centreWaist", "centreNeck"]
          : null;
  if (centre !== null)
    add(
      "centreBust",
      "bust",
      each((size, index) => {
        const line = spanOf(size, centre[0], centre[1]);
        if (line === null) return null;
        const y = bustPoints[index]?.at.y ?? sideBustHeight(size, others);
        const s =
          y === null ? line[0] + wayFrom(size.ring, line[0], line[1]) * 0.4 : atHeight(size.ring, line[0], line[1], y);
        return clearOf(size, line, s);
      }),
    );
  if (name === "frontBasque" || name === "backBasque") {
    const hip = (size: TracedSize, seam: readonly [Mm, Mm] | null): Mm | null => {
      const waist = sOf(size, "centreWaist");
      if (seam === null || waist === null) return null;
      const { bottom } = heightsOf(size.ring);
      const top = pointOn(size.ring, waist).y;
      return clearOf(
        size,
        seam,
        atHeight(size.ring, seam[0], seam[1], top + Math.min(USUAL_WAIST_TO_HIP, (bottom - top) * 0.87)),
      );
    };
    add(
      "sideHip",
      "hip",
      each((size) => hip(size, spanOf(size, "sideWaist", "sideHem"))),
    );
    add(
      "centreHip",
      "hip",
      each((size) => hip(size, spanOf(size, "centreHem", "centreWaist"))),
    );
  }
  if (name === "frontBand" || name === "backBand") {
    add(
      "bandTopMiddle",
      "bust",
      each((size) => shareOf(size, spanOf(size, "underBustCentre", "sideUnderBust"), 0.4)),
    );
    add(
      "waistMiddle",
      "bust",
      each((size) => shareOf(size, spanOf(size, "sideWaist", "centreWaist"), 0.6)),
    );
  }
}
const USUAL_DEPTH: Mm = 30;
/** How far down from where an armhole turns to the underarm it is hinged, as a share: about the lower third of the whole. */
const HINGE_BELOW = 0.2;

/** The height of the bust line at the side, by the front's side seam. */
function sideBustHeight(size: TracedSize, others: FromOthers): Mm | null {
  const underarm = sOf(size, "underarm");
  const depth = others.sideDepth.get(size.label) ?? USUAL_DEPTH;
  return underarm === null ? null : pointOn(size.ring, underarm + depth).y;
}

/** Where an armhole comes nearest to the centre, as a share of it that all sizes have: the middle one of theirs. */
function touchShare(sizes: readonly TracedSize[], spans: readonly (readonly [Mm, Mm] | null)[]): number {
  const shares = sizes.map(({ ring }, index) => {
    const span = spans[index];
    if (span === null || span === undefined) return USUAL_TOUCH;
    const long = wayFrom(ring, span[0], span[1]);
    let best = { share: 0, x: Infinity };
    for (let i = 0; i <= TOUCHES; i += 1) {
      const { x } = pointOn(ring, span[0] + (long * i) / TOUCHES);
      if (x < best.x) best = { share: i / TOUCHES, x };
    }
    return best.share > FIRST_TOUCH && best.share < 1 - FIRST_TOUCH ? best.share : USUAL_TOUCH;
  });
  return invariant(shares.toSorted((p, q) => p - q)[Math.floor(shares.length / 2)], "size");
}
const TOUCHES = 80;
const FIRST_TOUCH = 0.12;
const USUAL_TOUCH = 0.45;

/** A place moved clear of the ends of its seam and of the darts on it, towards the upper end of both. */
function clearOf(size: TracedSize, [from, to]: readonly [Mm, Mm], wanted: Mm): Mm {
  const { ring, darts } = size;
  const span = wayFrom(ring, from, to);
  let at = wayFrom(ring, from, wanted);
  if (at > span) at = span / 2;
  const blocks = darts
    .map(({ first, second }) => [wayFrom(ring, from, first), wayFrom(ring, from, second)] as const)
    .filter(([a, b]) => a < b && b <= span)
    .toSorted(([a], [b]) => a - b);
  let [low, high] = [0, span];
  for (const [a, b] of blocks) {
    // In a mouth, or less than clear below it: above it.
    if (at < b + CLEAR) {
      high = a;
      break;
    }
    low = b;
  }
  const clear = Math.min(CLEAR, (high - low) / 3);
  return (from + Math.min(Math.max(at, low + clear), high - clear)) % ring.length;
}

/**
 * Places taken at where edges meet, where every size has such a place: what was drawn in two there is kept as drawn. Of one such
 * between the marks beside it, it is that; of some, the nearest.
 */
function snapped(
  sizes: readonly TracedSize[],
  marks: readonly (readonly MarkOn[])[],
  places: readonly Mm[],
): readonly Mm[] {
  const found = sizes.map(({ ring }, index) => {
    const at = invariant(places[index], "place");
    const own = invariant(marks[index], "size");
    const before = Math.min(...own.map(({ s }) => wayFrom(ring, s, at)));
    const after = Math.min(...own.map(({ s }) => wayFrom(ring, at, s)));
    const start = at - before;
    const joints = jointsOf(ring).filter(({ s }) => {
      const along = wayFrom(ring, start, s);
      return along > SAME_POINT && along < before + after - SAME_POINT;
    });
    return {
      joints: joints.map(({ s }) => s).toSorted((p, q) => wayFrom(ring, start, p) - wayFrom(ring, start, q)),
      span: before + after,
    };
  });
  const middle = Math.floor(sizes.length / 2);
  const count = found[middle]?.joints.length ?? 0;
  if (count === 0 || count > FEW_JOINTS || found.some(({ joints }) => joints.length !== count)) return places;
  const ring = invariant(sizes[middle], "size").ring;
  const wanted = invariant(places[middle], "place");
  const off = (s: Mm): Mm => Math.min(wayFrom(ring, s, wanted), wayFrom(ring, wanted, s));
  const { joints, span } = invariant(found[middle], "size");
  const nearest = joints.reduce((best, s, k) => (off(s) < off(invariant(joints[best], "joint")) ? k : best), 0);
  const within = count === 1 ? Math.min(ONLY_JOINT, span * 0.7) : Math.max(NEAR_JOINT, span / 4);
  return off(invariant(joints[nearest], "joint")) > within
    ? places
    : found.map(({ joints: own }) => invariant(own[nearest], "joint"));
}
const FEW_JOINTS = 4;
const ONLY_JOINT: Mm = 75;
const NEAR_JOINT: Mm = 28;

const deriveOf = (marks: readonly (readonly MarkOn[])[], sizes: readonly TracedSize[]): BuiltPiece["derived"] => {
  const [first] = marks;
  const known = new Set(sizes[0]?.corners.map(({ name }) => name));
  return (first ?? [])
    .filter(({ name }) => !known.has(name) && !name.includes("Dart"))
    .map(({ name }) => ({
      name,
      at: marks.map((own, index) =>
        pointOn(invariant(sizes[index], "size").ring, own.find((one) => one.name === name)?.s ?? 0),
      ),
    }));
};

/** Points that lie on no edge. */
function insidePoints(
  name: PieceName,
  size: TracedSize,
  own: Piece["points"],
  bust: FoundBustPoint | null,
  others: FromOthers,
): Piece["points"] {
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const dart of size.darts) points[`${dart.name}Apex`] = { at: dart.apex, level: "bust" };
  if (bust !== null) {
    points.bustPoint = { at: bust.at, level: "bust" };
    if (name !== "centreFront") {
      points.bustLineInner = points.bustPoint;
      points.bustLineOuter = points.bustPoint;
    }
  }
  const [atBust, atWaist] = [own.centreBust?.at, own.centreWaist?.at];
  if (atBust !== undefined && atWaist !== undefined && own.underBustCentre === undefined) {
    const y = atBust.y + UNDER_BUST * (atWaist.y - atBust.y);
    points.underBustCentre = { at: piecePoint(atBust.x + UNDER_BUST * (atWaist.x - atBust.x), y), level: "underBust" };
  }
  const [inner, outer] = [own.strapInner?.at, own.strapOuter?.at];
  if (inner !== undefined && outer !== undefined) {
    const share = isFrontPiece(name) ? STRAP_SHARE.front : STRAP_SHARE.back;
    const long = ((others.strapLength.get(size.label) ?? USUAL_STRAP) + TAKE_UP) * share;
    // Square to its seam, upwards.
    const towards = radians(directionOf(inner, outer) - Math.PI / 2);
    points.strapAim = { at: polar(midpoint(inner, outer), towards, long), level: "shoulder" };
  }
  return points;
}

function dartOf(
  dart: TracedSize["darts"][number],
  { ring }: TracedSize,
  name: PieceName,
  bust: FoundBustPoint | null,
): Dart {
  const middle = midpoint(pointOn(ring, dart.first), pointOn(ring, dart.second));
  const aims =
    bust !== null && isFrontPiece(name) && Math.abs(lineDistance(bust.at, middle, dart.apex)) < DART_ASIDE_MOST * 2;
  return {
    name: dart.name,
    seam: dart.seam,
    inner: `${dart.name}Inner`,
    outer: `${dart.name}Outer`,
    apex: `${dart.name}Apex`,
    aimsAt: aims ? "bustPoint" : null,
  };
}

function levelLinesOf(name: PieceName, points: Piece["points"]): Piece["levelLines"] {
  const has = (...names: readonly PointName[]): boolean => names.every((one) => points[one] !== undefined);
  const line = (level: LevelName, ...along: readonly PointName[]): Piece["levelLines"] =>
    has(...along.filter((one) => !one.startsWith("bustLine"))) ? [{ level, along: { points: along } }] : [];
  const waist: Piece["levelLines"] = [{ level: "waist", along: { seam: "waist" } }];
  switch (name) {
    case "front":
    case "cup":
      return [
        ...(has("bustPoint")
          ? line("bust", "centreBust", "bustLineInner", "bustLineOuter", "sideBust")
          : line("bust", "centreBust", "sideBust")),
        ...(name === "cup" ? [] : waist),
      ];
    case "back":
      return [...line("bust", "centreBust", "sideBust"), ...(has("centreWaist") ? waist : [])];
    case "centreFront":
      return [...line("bust", "centreBust", "princessBust"), ...waist];
    case "sideFront":
      return [...line("bust", "princessBust", "sideBust"), ...waist];
    case "frontBand":
    case "backBand":
      return [{ level: "underBust", along: { seam: "underBust" } }, ...waist];
    case "frontBasque":
    case "backBasque":
      return [...waist, ...line("hip", "centreHip", "sideHip")];
    default:
      return [];
  }
}

/** A side front laid where its bust point is the centre front's: without a centre line of its own, that says where it lies. */
function withPlace(piece: Piece, label: string, others: FromOthers): Piece {
  const to = others.bustPoint.get(label);
  const from = piece.points.princessBust?.at;
  if (piece.name !== "sideFront" || to === undefined || from === undefined) return piece;
  const move = (p: PiecePoint): PiecePoint => shift(p, to.x - from.x, to.y - from.y);
  const points: Partial<Record<PointName, NamedPoint>> = {};
  for (const [name, point] of Object.entries(piece.points))
    points[name as PointName] = { ...point, at: move(point.at) };
  return {
    ...piece,
    points,
    edges: piece.edges.map((edge) => ({
      ...edge,
      curve: edge.curve === null ? null : { c1: move(edge.curve.c1), c2: move(edge.curve.c2) },
    })),
  };
}
