/** What is drawn on a sewn front: its edges, the seams of its darts, the seam between its pieces, and the bust line. */
import { between, distance, type PiecePoint } from "../geometry/point";
import { pointOf, type DartName, type Piece, type SeamName } from "../pattern/piece";
import { invariant } from "../result";
import { ON_TRIANGLE } from "../tolerance";
import type { Mm } from "../units";
import type { FlatMesh } from "./flatMesh";
import type { Place } from "./spot";
import { becameOf, type Sewn } from "./stitch";

/** `edge`: raw or sewn to another piece of the garment. `centre`: the fold. `dart`, `princess`: sewn here. */
export interface SewnLine {
  readonly kind: "edge" | "centre" | "dart" | "princess" | "bust";
  readonly seam: SeamName | null;
  readonly dart: DartName | null;
  readonly places: readonly Place[];
}

export const linesOf = (meshes: readonly FlatMesh[], sewn: Sewn, places: readonly Place[]): readonly SewnLine[] => [
  ...seamLines(meshes, sewn, places),
  ...meshes.flatMap((mesh, meshIndex) => bustLines(mesh, meshIndex, sewn, places)),
];

/** Each sewn seam once, though two runs of nodes became it. */
function seamLines(meshes: readonly FlatMesh[], sewn: Sewn, places: readonly Place[]): readonly SewnLine[] {
  const drawn = new Set<string>();
  return meshes.flatMap(({ piece, ring }, meshIndex) =>
    ring.stretches.flatMap((stretch): readonly SewnLine[] => {
      const nodes = stretch.nodes.map((node) => becameOf(sewn, meshIndex, node));
      const key = nodes.toSorted((a, b) => a - b).join(" ");
      if (drawn.has(key)) return [];
      drawn.add(key);
      const line = { places: nodes.map((node) => invariant(places[node], "place")) };
      if (stretch.kind === "leg") return [{ kind: "dart", seam: stretch.dart.seam, dart: stretch.dart.name, ...line }];
      const { seam } = stretch.edge;
      const kind = seam === "princess" ? "princess" : seam === "centre" && piece.centreOnFold ? "centre" : "edge";
      return [{ kind, seam, dart: null, ...line }];
    }),
  );
}

/** mm between the places at which the bust line is looked up. */
const BUST_STEP: Mm = 6;

/** The bust line in the parts that lie on the cloth: where it crosses a dart it is broken. */
function bustLines(mesh: FlatMesh, meshIndex: number, sewn: Sewn, places: readonly Place[]): readonly SewnLine[] {
  const parts: Place[][] = [[]];
  for (const point of bustPoints(mesh.piece)) {
    const place = placeOn(mesh, meshIndex, sewn, places, point);
    if (place === null) parts.push([]);
    else invariant(parts.at(-1), "part").push(place);
  }
  return parts
    .filter((part) => part.length > 1)
    .map((part) => ({ kind: "bust", seam: null, dart: null, places: part }));
}

function bustPoints(piece: Piece): readonly PiecePoint[] {
  const line = piece.levelLines.find(({ level }) => level === "bust");
  if (line === undefined || !("points" in line.along)) return [];
  const chain = line.along.points
    .filter((name) => piece.points[name] !== undefined)
    .map((name) => pointOf(piece, name));
  return chain.flatMap((to, index) => {
    const from = chain[index - 1];
    if (from === undefined) return [to];
    const steps = Math.max(1, Math.ceil(distance(from, to) / BUST_STEP));
    return Array.from({ length: steps }, (_, step) => between(from, to, (step + 1) / steps));
  });
}

/** Where a point of the flat piece came to lie, or null where there is no cloth. */
function placeOn(
  mesh: FlatMesh,
  meshIndex: number,
  sewn: Sewn,
  places: readonly Place[],
  point: PiecePoint,
): Place | null {
  for (const triangle of mesh.triangles) {
    const [a, b, c] = triangle;
    const shares = sharesOf(
      point,
      invariant(mesh.nodes[a], "node"),
      invariant(mesh.nodes[b], "node"),
      invariant(mesh.nodes[c], "node"),
    );
    if (Math.min(...shares) < -ON_TRIANGLE) continue;
    const [p, q, r] = [a, b, c].map((node) => invariant(places[becameOf(sewn, meshIndex, node)], "place"));
    return blend(shares, invariant(p, "p"), invariant(q, "q"), invariant(r, "r"));
  }
  return null;
}

const cross = (from: PiecePoint, to: PiecePoint, at: PiecePoint): number =>
  (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);

type Shares = readonly [number, number, number];

function sharesOf(point: PiecePoint, p: PiecePoint, q: PiecePoint, r: PiecePoint): Shares {
  const whole = cross(p, q, r);
  return [cross(q, r, point) / whole, cross(r, p, point) / whole, cross(p, q, point) / whole];
}

const blend = ([u, v, w]: Shares, p: Place, q: Place, r: Place): Place => ({
  x: u * p.x + v * q.x + w * r.x,
  y: u * p.y + v * q.y + w * r.y,
  z: u * p.z + v * q.z + w * r.z,
});
