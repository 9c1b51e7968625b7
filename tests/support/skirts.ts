/** Skirts for the tests of the core, on a waist that is as easily reckoned as the handbooks' own. */
import type { Skirt } from "../../src/core/decisions/dress";
import type { SectorPart } from "../../src/core/parts/part";
import type { SkirtAsked, SkirtDraft } from "../../src/core/skirts/skirtDraft";
import { draftSkirt } from "../../src/core/skirts/draftSkirt";

const half = { front: 185, back: 175 };

/** A waist of 720 mm all round, and a hip of 960. */
export const ASKED: Omit<SkirtAsked, "skirt"> = {
  waist: { halves: [half, half], whole: 720 },
  body: {
    waist: 690,
    bust: 900,
    hip: 960,
    height: 1680,
    hipDepth: 200,
    isHipDepthUsual: false,
    toFloor: null,
    shoulderGirth: null,
  },
  closure: { place: "centreBack", belowWaist: 180 },
  allowances: {},
  clothWidth: 1400,
};

export function skirtOn(skirt: Skirt, asked: Partial<SkirtAsked> = {}): SkirtDraft {
  const made = draftSkirt({ ...ASKED, ...asked, skirt });
  if (!made.ok) throw new Error(JSON.stringify(made.failure));
  return made.value;
}

/** Steps that a mark's stretch of a waist is followed by. */
const FINE = 200;

/** The waist of a sector by very many chords, its radius straight between two marks; what lies on the fold twice. */
export function waistByChords({ inner, angle, waistRadii, foldSides }: SectorPart): number {
  const marks = waistRadii ?? [
    { at: 0, radius: inner },
    { at: angle, radius: inner },
  ];
  let sum = 0;
  for (const [i, { at, radius }] of marks.entries()) {
    const before = marks[i - 1];
    if (before === undefined) continue;
    const place = (share: number) => {
      const r = before.radius + (radius - before.radius) * share;
      const a = before.at + (at - before.at) * share;
      return { x: r * Math.cos(a), y: r * Math.sin(a) };
    };
    for (let step = 0; step < FINE; step += 1) {
      const [p, q] = [place(step / FINE), place((step + 1) / FINE)];
      sum += Math.hypot(q.x - p.x, q.y - p.y);
    }
  }
  return sum * (1 + foldSides);
}

/** Across the cloth, its first side along it, allowances with it. */
export function sectorWidthByChords({ angle, outer, allowances, foldSides }: SectorPart): number {
  const reach = outer + allowances.outer;
  const xs = Array.from({ length: 2001 }, (_, i) => reach * Math.sin((angle * i) / 2000));
  const [least, most] = [Math.min(0, ...xs), Math.max(...xs)];
  return foldSides === 1 ? 2 * (Math.max(most, -least) + allowances.sides) : most - least + 2 * allowances.sides;
}
