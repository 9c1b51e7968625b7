/**
 * The chest a front is held to so that it looks worn: a half tube, elliptical in section, as wide round as the sewn
 * front is at the chest and at the waist, and leaning back above the armhole. It has no bust: that is the darts' doing.
 * Frame: x from the centre to the side, y down, z out of the chest, mm.
 */
import { edgeLength } from "../geometry/edgeCurve";
import { pointOf, type Piece, type PointName } from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import type { Mm } from "../units";
import type { Place, Spot } from "./spot";

/** Depth of the chest for its width (our own choice, between a flat and a round chest). */
const DEPTH_FOR_WIDTH = 0.72;
/** How far in the body itself begins: the front is worn with ease (our own choice). */
const WITHIN = 0.94;
/** mm back for each mm up above the armhole: the chest leans back towards the neck (our own choice). */
const LEAN = 0.32;
/** Steps into which a quarter of the section is cut to measure along it. */
const SECTION_STEPS = 64;

export interface Chest {
  /** Where a place of the flat front lies when it is wrapped round, `out` mm off the chest. */
  wrap(flat: { readonly x: Mm; readonly y: Mm }, out: Mm): Place;
  /** Moves a spot towards the chest, straight from or to its axis, by a share of the way. */
  draw(spot: Spot, share: number): void;
  /** Moves a spot that lies inside the chest out to it; above the armhole the cloth hangs free. */
  keepOut(spot: Spot): void;
}

const SIDE_CORNERS: readonly PointName[] = ["underarm", "sideBust", "sideUnderBust", "sideWaist"];

/** The chest under the pieces of one front. */
export function chestUnder(pieces: readonly Piece[]): Chest {
  const corners = pieces.flatMap((piece) =>
    SIDE_CORNERS.filter((name) => piece.points[name] !== undefined).map((name) => pointOf(piece, name)),
  );
  const all = pieces.flatMap((piece) => piece.edges.map((edge) => pointOf(piece, edge.from)));
  const side = corners.length > 0 ? corners : all;
  const upper = Math.min(...side.map(({ y }) => y));
  const lower = Math.max(...all.map(({ y }) => y));
  const widest = Math.max(...side.filter(({ y }) => y === upper).map(({ x }) => x));
  const lowest = Math.max(...side.map(({ x, y }) => (y === Math.max(...side.map((p) => p.y)) ? x : 0)));
  const seam = sewnLength(pieces);
  const roundAt = (y: Mm): { flat: Mm; chest: Mm } => {
    const share = Math.min(1, Math.max(0, (y - upper) / Math.max(1, lower - upper)));
    return {
      flat: widest + (lowest - widest) * share,
      chest: widest + (Math.min(seam ?? lowest, widest) - widest) * share,
    };
  };
  const leanAt = (y: Mm): Mm => LEAN * Math.max(0, upper - y);
  const halfWidth = (y: Mm): Mm => roundAt(y).chest / QUARTER;
  const reachOf = ({ x, y, z }: Spot): number => Math.hypot(x, (z + leanAt(y)) / DEPTH_FOR_WIDTH) / halfWidth(y);
  const draw = (spot: Spot, share: number): void => {
    const reach = reachOf(spot);
    if (reach === 0) return;
    const lean = leanAt(spot.y);
    const grow = 1 + share * (1 / reach - 1);
    spot.x *= grow;
    spot.z = (spot.z + lean) * grow - lean;
  };

  return {
    wrap: (flat, out) => {
      const { flat: across, chest } = roundAt(flat.y);
      const a = halfWidth(flat.y);
      const turn = turnAt(((flat.x / across) * chest) / a);
      const [nx, nz] = [DEPTH_FOR_WIDTH * Math.sin(turn), Math.cos(turn)];
      const size = Math.hypot(nx, nz);
      return {
        x: a * Math.sin(turn) + (out * nx) / size,
        y: flat.y,
        z: a * DEPTH_FOR_WIDTH * Math.cos(turn) - leanAt(flat.y) + (out * nz) / size,
      };
    },
    draw,
    keepOut: (spot) => {
      const reach = reachOf(spot);
      if (spot.y > upper && reach < WITHIN) draw(spot, (WITHIN - reach) / (1 - reach));
    },
  };
}

/** The seam at the lower edge, less the darts' mouths; null where there is none. */
function sewnLength(pieces: readonly Piece[]): Mm | null {
  const waist = pieces.flatMap((piece) =>
    piece.edges
      .filter(({ seam, mouthOf }) => (seam === "waist" || seam === "underBust") && mouthOf === null)
      .map((edge) => edgeLength(curveOf(piece, edge))),
  );
  return waist.length === 0 ? null : waist.reduce((sum, length) => sum + length, 0);
}

/** Lengths along a quarter of the section of half-width 1, from the middle, at even turns. */
const ALONG: readonly Mm[] = (() => {
  const lengths = [0];
  let reached = 0;
  for (let index = 1; index <= SECTION_STEPS; index += 1) {
    const turn = (Math.PI / 2) * ((index - 1 / 2) / SECTION_STEPS);
    reached += (Math.PI / 2 / SECTION_STEPS) * Math.hypot(Math.cos(turn), DEPTH_FOR_WIDTH * Math.sin(turn));
    lengths.push(reached);
  }
  return lengths;
})();

const QUARTER = ALONG.at(-1) ?? 1;

/** The turn at which a quarter section of half-width 1 is that long; it goes on evenly past the side. */
function turnAt(length: Mm): number {
  const index = ALONG.findIndex((reached) => reached >= length);
  if (index < 0) return (Math.PI / 2) * (length / QUARTER);
  const before = ALONG[index - 1] ?? 0;
  const after = ALONG[index] ?? 0;
  return (Math.PI / 2) * ((index - 1 + (after > before ? (length - before) / (after - before) : 1)) / SECTION_STEPS);
}
