/**
 * An edge so wide that it crosses a princess seam in the shoulder: it goes on over the side front, as one line when the seam is
 * sewn. Drawn with the two laid together at the top of the seam, cut where it crosses, each part on its own piece. mm.
 */
import {
  cubicEdge,
  edgeIntersections,
  edgeLength,
  edgeLengthBetween,
  edgeMap,
  edgeParameterAtLength,
  edgeSplit,
  edgeTangentAt,
  type EdgeCurve,
} from "../geometry/edgeCurve";
import { directionOf, distance, polar, rotateAbout, shift, turnBetween, type PiecePoint } from "../geometry/point";
import { pointOf, type Edge, type NamedPoint, type Piece, type PointName } from "../pattern/piece";
import { curveOf, edgeFrom, edgeTo } from "../pattern/ring";
import { stretchFrom, stretchTo, withoutPoints } from "../pattern/seamStretch";
import { invariant } from "../result";
import { SHORTEST_EDGE } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";
import type { EndMoved, NeckRun, NewCorner, NewEdge } from "./neckRun";

type Curve = EdgeCurve<"piece">;

/** How a side front lies against its centre front where their seam begins. */
interface Laid {
  readonly turn: Radians;
  readonly from: PiecePoint;
  readonly to: PiecePoint;
}

const laid = ({ turn, from, to }: Laid, point: PiecePoint): PiecePoint =>
  shift(rotateAbout(point, from, turn), to.x - from.x, to.y - from.y);

const back = ({ turn, from, to }: Laid): Laid => ({ turn: radians(-turn), from: to, to: from });

const UP = Math.PI;

/** The side front laid to the centre front with the tops of their seams together, running alike there. */
function laidAtTop(centreFront: Piece, sideFront: Piece): Laid {
  const down = edgeTangentAt(curveOf(centreFront, edgeAt(centreFront, edgeFrom(centreFront, "princessTop"))), 0);
  const up = edgeTangentAt(curveOf(sideFront, edgeAt(sideFront, edgeTo(sideFront, "princessTop"))), 1);
  return {
    turn: turnBetween(radians(up + UP), down),
    from: pointOf(sideFront, "princessTop"),
    to: pointOf(centreFront, "princessTop"),
  };
}

const edgeAt = (piece: Piece, index: number): Edge => invariant(piece.edges[index], "edge");

/** Places of a side front as they lie beside the centre front where the seam begins. */
export function besideCentre(
  centreFront: Piece,
  sideFront: Piece,
  places: readonly PiecePoint[],
): readonly PiecePoint[] {
  const at = laidAtTop(centreFront, sideFront);
  return places.map((place) => laid(at, place));
}

/** The end of an edge on the shoulder of a side front, as it lies beside the centre front. */
export function endBeside(centreFront: Piece, sideFront: Piece, end: EndMoved): Pick<EndMoved, "at" | "direction"> {
  const at = laidAtTop(centreFront, sideFront);
  return { at: laid(at, end.at), direction: radians(end.direction + at.turn) };
}

/** The seam of a side front as something whose end can be moved along the shoulder. */
export function seamRunOf(sideFront: Piece | undefined): NeckRun | null {
  if (sideFront === undefined) return null;
  const into = sideFront.edges.find(({ to, seam }) => to === "princessTop" && seam === "princess");
  const onto = sideFront.edges.find(({ from, seam }) => from === "princessTop" && seam === "shoulder");
  return into === undefined || onto === undefined ? null : { piece: sideFront, end: "princessTop", edges: [into] };
}

interface Crossing {
  /** Which curve of the edge crosses, and where on it. */
  readonly curve: number;
  readonly t: number;
  /** Which edge of the centre front's seam, counted from the top, and where on it. */
  readonly edge: number;
  readonly onEdge: number;
}

/** Where an edge crosses the seam above the bust; null where it does so never, or more than once. */
function crossingOf(curves: readonly Curve[], seam: readonly Curve[]): Crossing | null {
  const found = curves.flatMap((curve, at) =>
    seam.flatMap((own, edge) =>
      edgeIntersections(curve, own).map(({ t1, t2 }): Crossing => ({ curve: at, t: t1, edge, onEdge: t2 })),
    ),
  );
  const [only] = found;
  return found.length === 1 && only !== undefined ? only : null;
}

/** Both fronts with an edge drawn in the frame of the centre front, its end on the shoulder of the side front. */
export function drawnOver(
  run: NeckRun,
  sideFront: Piece,
  centre: EndMoved,
  end: EndMoved,
  { curves, corners }: NewEdge,
): { readonly centreFront: Piece; readonly sideFront: Piece } | null {
  const { piece: centreFront } = run;
  const [own, others] = [stretchFrom(centreFront, "princessTop"), stretchTo(sideFront, "princessTop")];
  const seam = own.map((index) => curveOf(centreFront, edgeAt(centreFront, index)));
  const met = crossingOf(curves, seam);
  if (met === null) return null;
  const crossed = invariant(seam[met.edge], "seam");
  const down =
    seam.slice(0, met.edge).reduce((sum, one) => sum + edgeLength(one), 0) + edgeLengthBetween(crossed, 0, met.onEdge);
  const trimmed = cutDown(sideFront, others, down);
  const left = edgeLength(crossed) - edgeLengthBetween(crossed, 0, met.onEdge);
  if (trimmed === null || left < SHORTEST_EDGE) return null;
  const [before, after] = edgeSplit(invariant(curves[met.curve], "curve"), met.t);
  const firsts = [...curves.slice(0, met.curve), before];
  const rests = [after, ...curves.slice(met.curve + 1)];
  const isOn = (at: number): boolean => at < met.curve;
  const onCentre = corners.filter((_, at) => isOn(at));
  const onSide = corners.filter((_, at) => !isOn(at));
  const made = centreWith(
    run,
    centre,
    { curves: firsts, corners: onCentre },
    {
      gone: own.slice(0, met.edge),
      edge: invariant(own[met.edge], "edge"),
      rest: edgeSplit(crossed, met.onEdge)[1],
    },
  );
  const lay = back({ ...laidAtTop(made, trimmed) });
  const moved = rests.map((curve) => edgeMap(curve, (place) => laid(lay, place)));
  const side = sideWith(trimmed, end, run, {
    curves: endingAt(moved, end.at),
    corners: onSide.map(({ name, at }): NewCorner => ({ name, at: laid(lay, at) })),
  });
  return { centreFront: made, sideFront: side };
}

/** The last of some curves brought to an end: the seams of the two pieces do not bend alike, so it lies a little off. */
function endingAt(curves: readonly Curve[], end: PiecePoint): readonly Curve[] {
  const last = invariant(curves.at(-1), "curve");
  const { a, b, curve } = last;
  const [dx, dy] = [end.x - b.x, end.y - b.y];
  if (curve !== null)
    return [...curves.slice(0, -1), cubicEdge({ a, c1: curve.c1, c2: shift(curve.c2, dx, dy), b: end })];
  // Beyond a corner it is as straight as before; at the seam it goes on as it came.
  if (curves.length > 1) return [...curves.slice(0, -1), { a, b: end, curve: null }];
  const third = distance(a, end) / 3;
  const c1 = polar(a, directionOf(a, b), third);
  return [cubicEdge({ a, c1, c2: polar(end, directionOf(c1, end), -third), b: end })];
}

/** The side front with its seam cut off so far below its top, where its top then is; null where that is too near an end. */
function cutDown(sideFront: Piece, stretch: readonly number[], down: Mm): Piece | null {
  let left = down;
  const gone: number[] = [];
  for (const index of stretch.toReversed()) {
    const edge = edgeAt(sideFront, index);
    const curve = curveOf(sideFront, edge);
    const length = edgeLength(curve);
    if (left > length - SHORTEST_EDGE) {
      if (index === stretch[0]) return null;
      left -= length;
      if (left < 0) return null;
      gone.push(index);
      continue;
    }
    const [kept] = edgeSplit(curve, edgeParameterAtLength(curve, length - left));
    const points = withoutPoints(
      sideFront,
      gone.map((one) => edgeAt(sideFront, one).from),
    ).points;
    const edges = sideFront.edges.flatMap((one, at): readonly Edge[] =>
      gone.includes(at) ? [] : at === index ? [{ ...one, to: "princessTop", curve: kept.curve }] : [one],
    );
    return {
      ...sideFront,
      edges,
      points: { ...points, princessTop: { ...invariant(points.princessTop, "princessTop"), at: kept.b } },
    };
  }
  return null;
}

interface SeamCut {
  /** Edges above the crossing, the crossed one, and what is left of it. */
  readonly gone: readonly number[];
  readonly edge: number;
  readonly rest: Curve;
}

/** The centre front as far as the seam: it has no shoulder any more. */
function centreWith(run: NeckRun, centre: EndMoved, { curves, corners }: NewEdge, cut: SeamCut): Piece {
  const { piece } = run;
  const taken = new Set<Edge>([
    ...run.edges,
    ...centre.replaced,
    ...cut.gone.map((index) => edgeAt(piece, index)),
    ...piece.edges.filter(({ seam }) => seam === "shoulder"),
  ]);
  const start = edgeFrom(piece, "centreNeck");
  const round = [...piece.edges.slice(start), ...piece.edges.slice(0, start)].filter((edge) => !taken.has(edge));
  const rest = round.map((edge): Edge =>
    edge === piece.edges[cut.edge] ? { ...edge, from: "princessTop", curve: cut.rest.curve } : edge,
  );
  const edges = [
    ...edgesAlong(["centreNeck", ...corners, "princessTop"], curves),
    ...rest,
    ...centre.kept.toReversed(),
  ];
  return withUsed(piece, edges, {
    centreNeck: centre.at,
    princessTop: cut.rest.a,
    ...Object.fromEntries(corners.map(({ name, at }) => [name, at])),
  });
}

/** The side front from the seam on: what is left of the shoulder begins on it. */
function sideWith(piece: Piece, end: EndMoved, run: NeckRun, { curves, corners }: NewEdge): Piece {
  const taken = new Set<Edge>(end.replaced.map((edge) => edgeAt(piece, edgeTo(piece, edge.to))));
  const [first, ...others] = end.kept;
  const shoulder = [{ ...invariant(first, "shoulder"), from: "sideNeck" as const }, ...others];
  const neck = edgesAlong(["princessTop", ...corners, "sideNeck"], curves);
  const into = edgeTo(piece, "princessTop");
  const from = (into + 1) % piece.edges.length;
  const round = [...piece.edges.slice(from), ...piece.edges.slice(0, from)].filter((edge) => !taken.has(edge));
  const edges = [...neck, ...shoulder, ...round];
  const points: Piece["points"] = { ...piece.points, sideNeck: invariant(run.piece.points.sideNeck, "sideNeck") };
  return withUsed({ ...piece, points }, edges, {
    sideNeck: end.at,
    ...Object.fromEntries(corners.map(({ name, at }) => [name, at])),
  });
}

const edgesAlong = (corners: readonly (PointName | NewCorner)[], curves: readonly Curve[]): readonly Edge[] => {
  const names = corners.map((corner) => (typeof corner === "string" ? corner : corner.name));
  return curves.map(({ curve }, index): Edge => ({
    from: invariant(names[index], "corner"),
    to: invariant(names[index + 1], "corner"),
    seam: "neck",
    curve,
    mouthOf: null,
  }));
};

/** A piece with another ring: corners put where they are told, those of the old ring that are on it no more gone. */
function withUsed(
  piece: Piece,
  edges: readonly Edge[],
  places: Readonly<Partial<Record<PointName, PiecePoint>>>,
): Piece {
  const used = new Set(edges.map(({ from }) => from));
  const gone = piece.edges.map(({ from }) => from).filter((name) => !used.has(name));
  const points: Partial<Record<PointName, NamedPoint>> = { ...withoutPoints(piece, gone).points };
  for (const name of used) {
    const at = places[name];
    if (at !== undefined) points[name] = { ...(points[name] ?? { level: "neck" as const }), at };
  }
  return { ...piece, points, edges };
}
