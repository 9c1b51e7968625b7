/** The pieces that a quarter of a fitted skirt is cut as: darts sewn, pleated or shut into flare, or two panels. */
import { edgeMap, edgeReverse, type EdgeCurve } from "../geometry/edgeCurve";
import { directionOf, piecePoint, rotateAbout, turnBetween, type PiecePoint } from "../geometry/point";
import { dartName } from "../pattern/dartNames";
import { controls, mouth, OUTWARD, type Points } from "../pattern/namedEdges";
import type { BendName, Dart, Edge, LevelName, Piece, PieceName, PointName, SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { radians, type Mm, type Radians } from "../units";
import { PLEAT_LENGTH } from "./skirtPractice";
import { hemLine, panelLine, sideLine, type Gap, type Quarter } from "./skirtQuarter";

/** How what the waist takes in is made. */
export type Shaping = "darts" | "pleats" | "shut";

export interface QuarterCut {
  readonly side: "front" | "back";
  readonly shaping: Shaping;
  readonly centreOnFold: boolean;
}

const NUMBERS = ["", "2", "3"] as const;

export function quarterPieces(quarter: Quarter, cut: QuarterCut): readonly Piece[] {
  if (quarter.asked.takenBy === "panel" && quarter.gaps.length > 0) return panels(quarter, cut);
  if (cut.shaping === "shut" && quarter.gaps.length > 0) return [shut(quarter, cut)];
  return [sewn(quarter, cut)];
}

const nameOf = ({ side }: QuarterCut): PieceName => (side === "front" ? "skirtFront" : "skirtBack");

/** A ring of edges, each ending where the next starts. */
class Ring {
  readonly points: Points = {};
  readonly edges: Edge[] = [];

  put(name: PointName, at: PiecePoint, level: LevelName): void {
    this.points[name] = { at, level };
  }

  along(from: PointName, to: PointName, seam: SeamName, { curve }: EdgeCurve<"piece">): void {
    this.edges.push({ from, to, seam, curve, mouthOf: null });
  }

  straight(from: PointName, to: PointName, seam: SeamName): void {
    this.edges.push({ from, to, seam, curve: null, mouthOf: null });
  }
}

function sewn(quarter: Quarter, cut: QuarterCut): Piece {
  const ring = new Ring();
  const darts = waistWithDarts(ring, quarter, cut.shaping);
  ring.put("sideHip", quarter.hip, "hip");
  ring.put("sideHem", quarter.sideHem, "hip");
  ring.along("sideWaist", "sideHip", "side", quarter.side);
  ring.straight("sideHip", "sideHem", "side");
  const hem = hemLine(piecePoint(0, quarter.centreLength), radians(0), quarter.sideHem, quarter.asked.flare);
  ring.along("sideHem", "centreHem", "hem", edgeReverse(hem));
  downCentre(ring, quarter);
  return pieceOf(nameOf(cut), ring, darts, cut.centreOnFold, ["centreHip", "sideHip"]);
}

function waistWithDarts(ring: Ring, { waist, gaps, asked, side }: Quarter, shaping: Shaping): Dart[] {
  const darts: Dart[] = [];
  let from: PointName = "centreWaist";
  ring.put("centreWaist", piecePoint(0, 0), "waist");
  for (const [i, { x, intake, y }] of gaps.entries()) {
    const name = dartName("waist", invariant(NUMBERS[i], "dart"));
    const [inner, outer, apex] = [`${name}Inner`, `${name}Outer`, `${name}Apex`] as const;
    ring.put(inner, piecePoint(x - intake / 2, y), "waist");
    ring.put(outer, piecePoint(x + intake / 2, y), "waist");
    ring.put(apex, piecePoint(x, y + (shaping === "pleats" ? PLEAT_LENGTH : asked.dartLength)), "hip");
    ring.along(from, inner, "waist", invariant(waist[i], "waist"));
    ring.edges.push(mouth(inner, outer, "waist", name));
    const dart: Dart = { name, seam: "waist", inner, outer, apex, aimsAt: null };
    darts.push(shaping === "pleats" ? { ...dart, gathered: true } : dart);
    from = outer;
  }
  ring.put("sideWaist", side.a, "waist");
  ring.along(from, "sideWaist", "waist", invariant(waist.at(-1), "waist"));
  return darts;
}

function downCentre(ring: Ring, { centreLength, hip }: Quarter): void {
  ring.put("centreHem", piecePoint(0, centreLength), "hip");
  ring.put("centreHip", piecePoint(0, hip.y), "hip");
  ring.straight("centreHem", "centreHip", "centre");
  ring.straight("centreHip", "centreWaist", "centre");
}

const pieceOf = (
  name: PieceName,
  { points, edges }: Ring,
  darts: readonly Dart[],
  centreOnFold: boolean,
  hip: readonly [PointName, PointName],
): Piece => ({
  name,
  points,
  edges,
  darts,
  levelLines: [
    { level: "waist", along: { seam: "waist" } },
    { level: "hip", along: { points: hip } },
  ],
  centreOnFold,
});

/** The two panels of a quarter, each where it lies in it; their edges mirror each other. */
function panels(quarter: Quarter, cut: QuarterCut): readonly Piece[] {
  const { asked, hip, sideHem, side, waist } = quarter;
  const gap = invariant(quarter.gaps[0], "panel seam");
  const below = asked.sideLength - asked.hipDepth;
  const [flare, down] = [asked.panelFlare, hip.y + below * Math.cos(asked.panelFlare)];
  const outwards = below * Math.sin(flare);
  const meet = piecePoint(gap.x, hip.y);

  const inner = new Ring();
  const innerHem = piecePoint(gap.x + outwards, down);
  inner.put("centreWaist", piecePoint(0, 0), "waist");
  inner.put("panelWaist", piecePoint(gap.x - gap.intake / 2, gap.y), "waist");
  inner.put("panelHip", meet, "hip");
  inner.put("panelHem", innerHem, "hip");
  inner.along("centreWaist", "panelWaist", "waist", invariant(waist[0], "waist"));
  inner.along("panelWaist", "panelHip", "panel", panelLine(quarter, gap));
  inner.straight("panelHip", "panelHem", "panel");
  const middleHem = hemLine(piecePoint(0, quarter.centreLength), radians(0), innerHem, flare);
  inner.along("panelHem", "centreHem", "hem", edgeReverse(middleHem));
  downCentre(inner, quarter);

  const outer = new Ring();
  const outerHem = piecePoint(gap.x - outwards, down);
  const outerWaist = piecePoint(gap.x + gap.intake / 2, gap.y);
  outer.put("panelWaist", outerWaist, "waist");
  outer.put("sideWaist", side.a, "waist");
  outer.put("sideHip", hip, "hip");
  outer.put("sideHem", sideHem, "hip");
  outer.put("panelHem", outerHem, "hip");
  outer.put("panelHip", meet, "hip");
  outer.along("panelWaist", "sideWaist", "waist", invariant(waist[1], "waist"));
  outer.along("sideWaist", "sideHip", "side", side);
  outer.straight("sideHip", "sideHem", "side");
  outer.along("sideHem", "panelHem", "hem", edgeReverse(hemLine(outerHem, flare, sideHem, asked.flare)));
  outer.straight("panelHem", "panelHip", "panel");
  outer.along("panelHip", "panelWaist", "panel", edgeReverse(mirrored(quarter, gap)));

  return [
    pieceOf(nameOf(cut), inner, [], cut.centreOnFold, ["centreHip", "panelHip"]),
    pieceOf(cut.side === "front" ? "skirtSideFront" : "skirtSideBack", outer, [], false, ["panelHip", "sideHip"]),
  ];
}

const mirrored = ({ hip, asked }: Quarter, { x, intake, y, lean }: Gap): EdgeCurve<"piece"> =>
  sideLine(piecePoint(x + intake / 2, y), lean, piecePoint(x, hip.y), asked.panelFlare, -1);

/** A point or a line turned as all that lies outside of a dart when it is shut, and so of every dart nearer the centre. */
type Turn = (p: PiecePoint) => PiecePoint;

/**
 * Darts shut into flare: each is cut from its end down to the hem, and what lies outside of it turned about its end until its
 * legs meet. The hem opens there by an arc about the dart's end, and is drawn smooth through the middle of each.
 */
function shut(quarter: Quarter, cut: QuarterCut): Piece {
  const { gaps, asked, waist, side, hip, sideHem, centreLength } = quarter;
  const apexes = gaps.map(({ x, y }) => piecePoint(x, y + asked.dartLength));
  const angles = gaps.map(({ x, intake, y }, i): Radians => {
    const apex = invariant(apexes[i], "apex");
    const legTo = (at: Mm) => directionOf(apex, piecePoint(at, y));
    return turnBetween(legTo(x + intake / 2), legTo(x - intake / 2));
  });
  /** Of what lies outside of the first `count` darts; the outermost is shut first. */
  const turnOf =
    (count: number): Turn =>
    (p) =>
      apexes.slice(0, count).reduceRight((at, apex, i) => rotateAbout(at, apex, invariant(angles[i], "angle")), p);

  const ring = new Ring();
  const all = turnOf(gaps.length);
  ring.put("centreWaist", piecePoint(0, 0), "waist");
  let from: PointName = "centreWaist";
  for (const [i, line] of waist.entries()) {
    const turned = edgeMap(line, turnOf(i));
    const to: PointName = i === gaps.length ? "sideWaist" : bend(i);
    ring.put(to, turned.b, "waist");
    ring.along(from, to, "waist", turned);
    from = to;
  }
  ring.put("sideHip", all(hip), "hip");
  ring.put("sideHem", all(sideHem), "hip");
  ring.along("sideWaist", "sideHip", "side", edgeMap(side, all));
  ring.straight("sideHip", "sideHem", "side");

  // Along the hem from the centre to the side, through the middle of each arc, and smooth in between.
  let hemFrom: { readonly name: PointName; readonly at: PiecePoint; readonly towards: Radians } = {
    name: "centreHem",
    at: piecePoint(0, centreLength),
    towards: OUTWARD,
  };
  let turn = 0;
  const hem: Edge[] = [];
  const along = (name: PointName, at: PiecePoint, towards: number): void => {
    const [c1, c2] = controls(hemFrom.at, hemFrom.towards, at, radians(towards));
    hem.unshift({ from: name, to: hemFrom.name, seam: "hem", curve: { c1: c2, c2: c1 }, mouthOf: null });
    hemFrom = { name, at, towards: radians(towards) };
  };
  for (const [i, apex] of apexes.entries()) {
    const angle = invariant(angles[i], "angle");
    const middle = turnOf(i)(rotateAbout(piecePoint(apex.x, centreLength), apex, radians(angle / 2)));
    ring.put(bend(gaps.length + i), middle, "hip");
    along(bend(gaps.length + i), middle, turn + angle / 2);
    turn += angle;
  }
  along("sideHem", all(sideHem), turn - asked.flare);
  ring.edges.push(...hem);
  downCentre(ring, quarter);
  return pieceOf(nameOf(cut), ring, [], cut.centreOnFold, ["centreHip", "sideHip"]);
}

const BENDS: readonly BendName[] = ["bend000", "bend001", "bend002", "bend003", "bend004", "bend005"];

const bend = (at: number): BendName => invariant(BENDS[at], "bend");
