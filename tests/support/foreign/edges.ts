/** Necklines, hems and side seams of foreign nests. */
import type { Habit } from "./habit";
import { apart, bowed, cubic, line, lines, mix, quarter, xy, type Segment, type XY } from "./plane";

/** Bumps or teeth over a straight line, to the left of the way it goes. */
function bumps(a: XY, b: XY, count: number, deep: number, round: boolean): Segment[] {
  const long = apart(a, b);
  const off = (p: XY): XY => xy(p.x + ((b.y - a.y) / long) * deep, p.y - ((b.x - a.x) / long) * deep);
  return Array.from({ length: count }, (_, i) => i).flatMap((i) => {
    const [from, to] = [mix(a, b, i / count), mix(a, b, (i + 1) / count)];
    return round
      ? [cubic(from, off(mix(from, to, 0.1)), off(mix(from, to, 0.9)), to)]
      : lines(from, off(mix(from, to, 0.5)), to);
  });
}

/** From the centre to the side neck. `isUnlike`: in this size the corner is cut off. */
export function necklineOf(habit: Habit, centre: XY, side: XY, isUnlike: boolean): Segment[] {
  const corner = xy(side.x, centre.y);
  switch (habit.options.neck) {
    case "round":
      return quarter(centre, corner, side, 1);
    case "scoop":
      return quarter(centre, corner, side, habit.scoopParts);
    case "v":
      return isUnlike
        ? lines(centre, xy(centre.x + (side.x - centre.x) * 0.5, centre.y + (side.y - centre.y) * 0.45), side)
        : lines(centre, side);
    case "square": {
      const at = xy(centre.x + (side.x - centre.x) * 0.82, centre.y - 4);
      return isUnlike ? lines(centre, mix(centre, at, 0.85), mix(at, side, 0.12), side) : lines(centre, at, side);
    }
    case "sweetheart": {
      const cusp = xy(centre.x + (side.x - centre.x) * 0.75, centre.y - (centre.y - side.y) * 0.35);
      return [
        cubic(centre, xy(centre.x + 8, centre.y - 22), xy(cusp.x - 20, cusp.y - 8), cusp),
        cubic(cusp, mix(cusp, side, 0.3), mix(cusp, side, 0.7), side),
      ];
    }
    case "scalloped":
      return bumps(centre, side, 5, -7, true);
    case "zigzag":
      return bumps(centre, side, 6, -6, false);
  }
}

/** From side to centre. */
export const hemOf = (habit: Habit, side: XY, centre: XY): Segment[] =>
  habit.options.hem === "plain" ? [line(side, centre)] : bumps(side, centre, 6, 9, habit.options.hem === "scalloped");

/** A part of a side seam, going down; hollow by `bow`. */
export function sideOf(habit: Habit, a: XY, b: XY, bow: number): Segment[] {
  if (habit.options.side === "straight") return [line(a, b)];
  if (habit.options.side === "curved") return [bowed(a, b, bow)];
  // Two cubics, smooth where they meet.
  const long = apart(a, b);
  const [nx, ny] = [-(b.y - a.y) / long, (b.x - a.x) / long];
  const at = (t: number, off: number): XY => {
    const p = mix(a, b, t);
    return xy(p.x + nx * off, p.y + ny * off);
  };
  return [
    cubic(a, at(0.15, bow * 0.2), at(0.3, bow), at(0.45, bow * 1.1)),
    cubic(at(0.45, bow * 1.1), at(0.65, bow * (1.1 + 0.1 * (0.2 / 0.15))), at(0.85, bow * 0.8), b),
  ];
}

/** From the touch to the underarm. */
export const lowerArmhole = (habit: Habit, touch: XY, underarm: XY, isUnlike: boolean): Segment[] =>
  quarter(touch, xy(touch.x, underarm.y), underarm, habit.armholeParts + (isUnlike ? 1 : 0));

/** From the shoulder tip to the touch, which it comes into going down. */
export const upperArmhole = (tip: XY, touch: XY, slope: number): Segment[] => {
  const long = apart(tip, touch);
  return [
    cubic(
      tip,
      xy(tip.x - Math.sin(slope) * long * 0.3, tip.y + Math.cos(slope) * long * 0.3),
      xy(touch.x, touch.y - long * 0.35),
      touch,
    ),
  ];
};
