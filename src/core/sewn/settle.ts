/**
 * Lets a sewn surface settle: the cloth keeps its lengths, resists being bent, lies on the chest or off it, and its
 * edges are drawn softly to the chest. Places are corrected one after another (Gauss-Seidel) a fixed number of times.
 */
import type { Mm } from "../units";
import type { Chest } from "./chest";
import type { Spot } from "./spot";

export interface Link {
  readonly a: Spot;
  readonly b: Spot;
  readonly rest: Mm;
  /** It keeps from being stretched alone: gathered cloth. */
  readonly slack: boolean;
}

/** A spot with those round it, and the share that each has in its place where all of them lie flat. */
export interface Round {
  readonly spot: Spot;
  /** How stiff the cloth is there: 1, and less towards the tip of a dart, where it is bent sharply. */
  readonly stiff: number;
  readonly others: readonly { readonly spot: Spot; readonly share: number }[];
}

export interface Cloth {
  readonly spots: readonly Spot[];
  readonly links: readonly Link[];
  readonly rounds: readonly Round[];
  /** On the centre line: the other half of the front is its mirror image. */
  readonly centre: readonly Spot[];
  /** Edges drawn to the chest. */
  readonly held: readonly Spot[];
}

/** How often everything is corrected, and how often at the end the lengths alone. */
const TURNS = 150;
const LAST_TURNS = 50;
/** Share of a correction made at once: bending, at first and at the end, and the draw to the chest, which fades away. */
const BENDING = 0.18;
const BENDING_LEFT = 0.07;
const DRAW = 0.3;
/** mm out of the chest that the cloth is pushed at every turn, at first; it fades away. */
const PUSH: Mm = 0.18;

export function settle(cloth: Cloth, chest: Chest | null): void {
  const backwards = cloth.links.toReversed();
  const held = new Set(cloth.held);
  const free = cloth.spots.filter((spot) => !held.has(spot));
  for (let turn = 0; turn < TURNS + LAST_TURNS; turn += 1) {
    const left = Math.max(0, 1 - turn / TURNS);
    if (left > 0) {
      for (const round of cloth.rounds) unbend(round, round.stiff * (BENDING_LEFT + (BENDING - BENDING_LEFT) * left));
      if (chest !== null) {
        for (const spot of free) spot.z += PUSH * left;
        for (const spot of cloth.held) chest.draw(spot, DRAW * left);
        for (const spot of cloth.spots) chest.keepOut(spot);
      }
    }
    for (const link of turn % 2 === 0 ? cloth.links : backwards) keepLength(link);
    for (const spot of cloth.centre) spot.x = 0;
  }
}

/** Moves a spot towards where it would lie were the cloth round it flat. */
function unbend({ spot, others }: Round, share: number): void {
  let x = 0;
  let y = 0;
  let z = 0;
  for (const other of others) {
    x += other.share * other.spot.x;
    y += other.share * other.spot.y;
    z += other.share * other.spot.z;
  }
  spot.x += share * (x - spot.x);
  spot.y += share * (y - spot.y);
  spot.z += share * (z - spot.z);
}

/** Moves both ends alike, towards or from each other, so that their distance is right. */
function keepLength({ a, b, rest, slack }: Link): void {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const dz = b.z - a.z;
  const length = Math.sqrt(dx * dx + dy * dy + dz * dz);
  if (length === 0 || (slack && length < rest)) return;
  const move = (length - rest) / length / 2;
  a.x += dx * move;
  a.y += dy * move;
  a.z += dz * move;
  b.x -= dx * move;
  b.y -= dy * move;
  b.z -= dz * move;
}
