/** Where the words of a strip stand: clear of its lines. The strip is widened on one side where there is no room. */
import { pointLike, type PiecePoint } from "../geometry/point";
import { radians, type Mm } from "../units";
import type { SlantBox } from "./overlay";
import {
  SIDES,
  slantBoxOf,
  stripArea,
  stripHeight,
  stripReach,
  stripWidth,
  toStrip,
  widened,
  type Strip,
} from "./strip";

/** Room for five short lines of writing, mm; and for each line more. */
const TITLE = { width: 76, height: 29 } as const;
const LINE: Mm = 3.75;

/** From the words to the edge of the paper, and to a line. */
const EDGE: Mm = 3;
const CLEAR: Mm = 2.5;

/** How finely a place is looked for. */
const STEP: Mm = 4;

/** A strip must be so long at the least that the words go along it. */
const TITLED_LENGTH: Mm = TITLE.width + 2 * EDGE;

export interface Titled {
  readonly strip: Strip;
  readonly title: SlantBox;
}

/**
 * The strip, widened as little as need be, and the place for its words.
 *
 * @param lines points along all that is drawn, closer together than the words are high
 * @param more lines of writing beyond the usual
 * @returns null where it would then reach further than `longest`
 */
export function placeTitle(
  strip: Strip,
  lines: readonly PiecePoint[],
  { longest, more }: { readonly longest: Mm; readonly more: number },
): Titled | null {
  const room = TITLE.height + more * LINE;
  const growths = Array.from({ length: Math.ceil((room + EDGE + CLEAR) / STEP) + 1 }, (_, index) => index * STEP);
  const wider = growths
    .flatMap((by) => (by === 0 ? [strip] : SIDES.map((side) => widened(strip, by, side))))
    .filter((one) => stripReach(one) <= longest)
    .toSorted((a, b) => stripArea(a) - stripArea(b));
  // From left to right, so that each level of a strip is gone along once.
  const obstacles = lines.map((p) => toStrip(p, strip.turn)).toSorted((p, q) => p.x - q.x);
  for (const one of wider) {
    const title = freeBox(one, obstacles, room);
    if (title !== null) return { strip: one, title };
  }
  return null;
}

function freeBox(strip: Strip, obstacles: readonly PiecePoint[], room: Mm): SlantBox | null {
  for (const isAcross of [true, false]) {
    const [width, height] = isAcross ? [TITLE.width, room] : [room, TITLE.width];
    const [lastU, lastV] = [strip.u[1] - EDGE - width, strip.v[1] - EDGE - height];
    for (let v = strip.v[0] + EDGE; v <= lastV; v += STEP) {
      const level = obstacles.filter(({ y }) => y >= v - CLEAR && y <= v + height + CLEAR);
      let next = 0;
      for (let u = strip.u[0] + EDGE; u <= lastU; u += STEP) {
        // The first that is not left of the words: where it is not right of them either, it is in their way.
        for (let i = next; i < level.length && (level[i]?.x ?? Infinity) < u - CLEAR; i += 1) next = i + 1;
        if ((level[next]?.x ?? Infinity) <= u + width + CLEAR) continue;
        const box = slantBoxOf({ turn: strip.turn, u: [u, u + width], v: [v, v + height] });
        // Words up a strip are read from its right.
        return isAcross ? box : { ...box, width: box.height, height: box.width, turn: radians(box.turn - Math.PI / 2) };
      }
    }
  }
  return null;
}

/** The strip, made long enough for words along it. */
export function longEnough(strip: Strip): Strip {
  const [width, height] = [stripWidth(strip), stripHeight(strip)];
  if (Math.max(width, height) >= TITLED_LENGTH) return strip;
  const by = (TITLED_LENGTH - Math.max(width, height)) / 2;
  return width >= height ? widened(widened(strip, by, "u0"), by, "u1") : widened(widened(strip, by, "v0"), by, "v1");
}

/** Points along a straight stretch, `apart` mm from one another at the most. */
export const along = (a: PiecePoint, b: PiecePoint, apart: Mm): readonly PiecePoint[] => {
  const count = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / apart));
  return Array.from({ length: count + 1 }, (_, i) =>
    pointLike(a, a.x + ((b.x - a.x) * i) / count, a.y + ((b.y - a.y) * i) / count),
  );
};
