/**
 * One half of a front with its darts, and the seam between its pieces, sewn shut, as a surface over the chest. Cloth
 * neither stretches nor shrinks: the surface keeps the lengths of the flat pieces, so what a dart takes out round its
 * apex stands as a cone there (the angle taken out is the curvature of the tip).
 */
import { edgeLength } from "../geometry/edgeCurve";
import { angleAt } from "../geometry/point";
import type { DartName, Piece, PieceName, SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { curveOf, outlineOf } from "../pattern/ring";
import { radians, type Mm, type Radians } from "../units";
import { chestUnder } from "./chest";
import type { Triangle } from "./delaunay";
import { flatMesh, ringArea, type FlatMesh } from "./flatMesh";
import type { PartsOf } from "./flatRing";
import { gatheredLinks } from "./gathers";
import { linesOf, type SewnLine } from "./lines";
import { heightOver, peaksOf } from "./peaks";
import { roundsOf } from "./rounds";
import { settle, type Link } from "./settle";
import { angleBetween, meanOf, span, type Place, type Spot } from "./spot";
import { becameOf, nodesOn, stitch, type Sewn } from "./stitch";

export interface SewnTip {
  readonly piece: PieceName;
  readonly dart: DartName;
  readonly place: Place;
  /** The angle the dart takes out. */
  readonly angle: Radians;
  /** From the axis of the cone at the tip to its side: a right angle is flat, the smaller the more pointed. */
  readonly halfApex: Radians;
  /** The corners of the triangles round the tip, added up; 2π less the dart's angle where the cloth kept its lengths. */
  readonly around: Radians;
}

export interface SewnFront {
  readonly places: readonly Place[];
  readonly triangles: readonly Triangle[];
  readonly lines: readonly SewnLine[];
  readonly tips: readonly SewnTip[];
  /** Mean and greatest share by which a side of a triangle differs from its length in the flat; gathers apart. */
  readonly strain: { readonly mean: number; readonly most: number };
}

export interface SewnOptions {
  /** `chest`: worn, the centre held to the middle. `table`: free, nothing but the cloth itself. */
  readonly on: "chest" | "table";
}

/** How many nodes inside a front the step is chosen for. */
const NODES_INSIDE = 380;

/**
 * Half the angle at the point of the cone that a dart makes.
 *
 * @param angle the dart's angle, radians, 0 to 2π
 * @returns radians, π/2 where nothing is taken out
 * @source a disc less a sector of angle θ closes to a cone of base radius R (1 − θ/2π) and slant R
 */
export const coneHalfApex = (angle: Radians): Radians => radians(Math.asin(Math.max(0, 1 - angle / (2 * Math.PI))));

/** The sewn front of one half: a front alone, a cup, or the pieces of a front that a princess seam joins. */
export function sewFront(pieces: readonly Piece[], options: SewnOptions = { on: "chest" }): SewnFront {
  const meshes = meshesOf(pieces);
  const sewn = stitch(meshes);
  const peaks = peaksOf(meshes, sewn);
  const chest = options.on === "chest" ? chestUnder(pieces) : null;
  const spots = sewn.nodes.map(({ flat }): Spot => {
    const x = meanOf(flat.map((p) => p.x));
    const y = meanOf(flat.map((p) => p.y));
    const out = heightOver(peaks, { x, y });
    const place = chest === null ? { x, y, z: out } : chest.wrap({ x, y }, out);
    return { x: place.x, y: place.y, z: place.z };
  });
  const spotOf = (index: number): Spot => invariant(spots[index], "spot");
  const gathered = gatheredLinks(meshes, sewn);
  const links = sewn.links.map(({ a, b }, index): Link => ({
    a: spotOf(a),
    b: spotOf(b),
    ...invariant(gathered[index], "link"),
  }));
  const onSeams = (seams: readonly SeamName[]): readonly Spot[] =>
    [...new Set(nodesOn(meshes, sewn, seams))].map(spotOf);
  // On the centre line the mirrored half lies on the other side: the spots there are inside the whole front.
  const centre = new Set(chest === null ? [] : nodesOn(meshes, sewn, ["centre"]));
  settle(
    {
      spots,
      links,
      rounds: roundsOf(meshes, sewn, spots, tipNodes(meshes, sewn), centre),
      centre: [...centre].map(spotOf),
      held: onSeams(["shoulder", "strap", "side", "waist", "underBust"]),
    },
    chest,
  );
  const places: readonly Place[] = spots;
  return {
    places,
    triangles: sewn.triangles,
    lines: linesOf(meshes, sewn, places),
    tips: tipsOf(meshes, sewn, places),
    strain: strainOf(links),
  };
}

function meshesOf(pieces: readonly Piece[]): readonly FlatMesh[] {
  const area = pieces.reduce((sum, piece) => sum + ringArea(outlineOf(piece).map(({ a }) => a)), 0);
  const step = Math.sqrt((2 * area) / Math.sqrt(3) / NODES_INSIDE);
  const princess = new Map<string, number>();
  for (const piece of pieces) {
    for (const edge of piece.edges) {
      if (edge.seam !== "princess") continue;
      const key = [edge.from, edge.to].toSorted().join(" ");
      princess.set(key, Math.max(princess.get(key) ?? 1, partsFor(edgeLength(curveOf(piece, edge)), step)));
    }
  }
  const partsOf: PartsOf = (edge, length) =>
    princess.get([edge.from, edge.to].toSorted().join(" ")) ?? partsFor(length, step);
  return pieces.map((piece) => flatMesh(piece, step, partsOf));
}

const partsFor = (length: Mm, step: Mm): number => Math.max(1, Math.round(length / step));

const tipNodes = (meshes: readonly FlatMesh[], sewn: Sewn): ReadonlySet<number> =>
  new Set(meshes.flatMap(({ ring }, meshIndex) => ring.tips.map(({ node }) => becameOf(sewn, meshIndex, node))));

function strainOf(links: readonly Link[]): SewnFront["strain"] {
  const strains = links.filter(({ slack }) => !slack).map(({ a, b, rest }) => Math.abs(span(a, b) - rest) / rest);
  return { mean: meanOf(strains), most: Math.max(...strains) };
}

function tipsOf(meshes: readonly FlatMesh[], sewn: Sewn, places: readonly Place[]): readonly SewnTip[] {
  const placeOf = (index: number): Place => invariant(places[index], "place");
  return meshes.flatMap(({ piece, ring }, meshIndex) =>
    ring.tips.map(({ dart, node, at, inner, outer }): SewnTip => {
      const tip = becameOf(sewn, meshIndex, node);
      const angle = angleAt(at, inner, outer);
      let around = 0;
      for (const [a, b, c] of sewn.triangles) {
        if (a === tip) around += angleBetween(placeOf(a), placeOf(b), placeOf(c));
        if (b === tip) around += angleBetween(placeOf(b), placeOf(c), placeOf(a));
        if (c === tip) around += angleBetween(placeOf(c), placeOf(a), placeOf(b));
      }
      return {
        piece: piece.name,
        dart: dart.name,
        place: placeOf(tip),
        angle,
        halfApex: coneHalfApex(angle),
        around: radians(around),
      };
    }),
  );
}
