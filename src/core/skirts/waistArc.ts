/**
 * The waist of a round skirt whose hem is level on a body that is not: every part of the hem lies as far from the pin, and the
 * waist so far from it as the skirt is not long there. A quarter's waist goes from its radius at the centre to that at the side,
 * level at both; it is marked at even angles, and straight in radius between two marks.
 */
import { SOLVER_ACCURACY } from "../tolerance";
import { radians, type Mm, type Radians } from "../units";

export interface WaistMark {
  readonly at: Radians;
  readonly radius: Mm;
}

/** Marks of a quarter, its ends among them. */
const STEPS = 8;
const ROUNDS = 30;

/** Along the waist from mark to mark. */
export const marksLength = (marks: readonly WaistMark[]): Mm =>
  marks.reduce((sum, mark, i) => {
    const before = marks[i - 1];
    return before === undefined ? 0 : sum + stretch(before.radius, mark.radius, mark.at - before.at);
  }, 0);

/** A part of a spiral; by Simpson's rule, which is exact enough for the hair by which it is none of a circle. */
function stretch(from: Mm, to: Mm, angle: number): Mm {
  const at = (radius: Mm): Mm => Math.hypot(radius * angle, to - from);
  return (at(from) + 4 * at((from + to) / 2) + at(to)) / 6;
}

export const marksOf = (from: Mm, to: Mm, angle: number): readonly WaistMark[] =>
  Array.from({ length: STEPS + 1 }, (_, i): WaistMark => {
    const share = i / STEPS;
    return { at: radians(angle * share), radius: from + (to - from) * share ** 2 * (3 - 2 * share) };
  });

/** The angle of a quarter whose waist is so long. */
export function angleOf(length: Mm, from: Mm, to: Mm): Radians {
  let angle = (2 * length) / (from + to);
  if (from === to) return radians(angle);
  for (let round = 0; round < ROUNDS; round += 1) {
    const drawn = marksLength(marksOf(from, to, angle));
    if (Math.abs(drawn - length) < SOLVER_ACCURACY) break;
    angle *= length / drawn;
  }
  return radians(angle);
}

export interface Arc {
  readonly waist: Mm;
  /** How long the skirt is at either end of it. */
  readonly lengths: readonly [Mm, Mm];
}

/** The radius of the hem at which all quarters together are so wide an angle: wider angles come of a smaller one. */
export function hemRadius(arcs: readonly Arc[], whole: Radians): Mm {
  const waist = arcs.reduce((sum, arc) => sum + arc.waist, 0);
  const mean = arcs.reduce((sum, arc) => sum + (arc.waist * (arc.lengths[0] + arc.lengths[1])) / 2, 0) / waist;
  let radius = waist / whole + mean;
  for (let round = 0; round < ROUNDS; round += 1) {
    const angle = arcs.reduce(
      (sum, arc) => sum + angleOf(arc.waist, radius - arc.lengths[0], radius - arc.lengths[1]),
      0,
    );
    const by = ((angle - whole) / whole) * (radius - mean);
    radius += by;
    if (Math.abs(by) < SOLVER_ACCURACY) break;
  }
  return radius;
}
