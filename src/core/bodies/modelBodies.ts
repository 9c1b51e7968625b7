/**
 * The body survey's women as a chart needs them: bust, upper chest, waist and hip as a dressmaker's tape would read them.
 *
 * The women themselves are not shipped; a fixed set of bodies made from the model stands for them. Where the survey's tape
 * ran elsewhere, all of them are moved by the middle of the bridge; its doubt is the same for all of them, and no scatter
 * between one woman and the next.
 */
import type { MeasureName } from "../measures/measure";
import { remember } from "../remember";
import { invariant } from "../result";
import type { Mm } from "../units";
import type { BodyModel } from "./bodyModel";
import { SURVEYED_BODIES, TAPED_BODIES } from "./bridges";
import { cholesky, partOf } from "../statistics/linear";
import { normalQuantile } from "../statistics/normalQuantile";

export interface ModelBody {
  readonly bust: Mm;
  readonly upperChest: Mm;
  readonly waist: Mm;
  readonly hip: Mm;
}

const GIRTHS = ["bustGirth", "upperChestGirth", "waistGirth", "hipGirth"] as const satisfies readonly MeasureName[];

/** The four girths: middles as taped, scatter as surveyed. */
export const GIRTH_BODIES: BodyModel = {
  measures: GIRTHS,
  middle: GIRTHS.map((name) => invariant(TAPED_BODIES.middle[TAPED_BODIES.measures.indexOf(name)], name)),
  scatter: scatterOf(GIRTHS),
  freedom: SURVEYED_BODIES.freedom,
};

function scatterOf(names: readonly MeasureName[]) {
  const places = names.map((name) => SURVEYED_BODIES.measures.indexOf(name));
  return partOf(SURVEYED_BODIES.scatter, places, places);
}

const COUNT = 1024;

const bodiesFrom = remember(["model"], ({ model }: { readonly model: BodyModel }) => bodiesOf(model, COUNT));

/** The same 1024 bodies every time, each as likely as the next. The first hundred or so are spread evenly too. */
export const modelBodies = (): readonly ModelBody[] => bodiesFrom({ model: GIRTH_BODIES });

/**
 * Evenly spread points of a cube, taken through the normal distribution, the model's scatter and the length of Student's t.
 *
 * @source the Halton sequence in the first five primes for the points, its digits multiplied (the multipliers are our
 *   own choice); middle + L z √(ν/χ²) for a multivariate t; chi-square by Abramowitz and Stegun 26.4.17
 */
function bodiesOf({ middle, scatter, freedom }: BodyModel, count: number): readonly ModelBody[] {
  const lower = cholesky(scatter);
  return Array.from({ length: count }, (_, at) => {
    const normals = BASES.map(([base, times]) => normalQuantile(mirrored(at + 1, base, times)));
    const length = Math.sqrt(freedom / chiSquare(invariant(normals.at(-1), "normal"), freedom));
    const girths = middle.map((value, row) =>
      Math.exp(
        value +
          length *
            invariant(lower[row], "row").reduce(
              (sum, entry, column) => sum + entry * invariant(normals[column], "normal"),
              0,
            ),
      ),
    );
    const [bust, upperChest, waist, hip] = girths;
    return {
      bust: invariant(bust, "bust"),
      upperChest: invariant(upperChest, "upper chest"),
      waist: invariant(waist, "waist"),
      hip: invariant(hip, "hip"),
    };
  });
}

/** A base for each girth and one for the length, and what its digits are multiplied by, so that no two run along together. */
const BASES = [
  [2, 1],
  [3, 2],
  [5, 3],
  [7, 3],
  [11, 7],
] as const;

/** A whole number mirrored at the point, in a base: 6 in base 2 is 110, and becomes 0.011. */
function mirrored(whole: number, base: number, times: number): number {
  let value = 0;
  let part = 1 / base;
  for (let left = whole; left > 0; left = Math.floor(left / base)) {
    value += (((left % base) * times) % base) * part;
    part /= base;
  }
  return value;
}

/** The chi-square value with as much below it as the normal one has. */
const chiSquare = (normal: number, freedom: number): number => {
  const part = 2 / (9 * freedom);
  return freedom * (1 - part + normal * Math.sqrt(part)) ** 3;
};

export type Girth = "bust" | "waist" | "hip";

const PLACE: Readonly<Record<Girth, number>> = { bust: 0, waist: 2, hip: 3 };

/**
 * The line that holds a share of all bodies by two of their girths: an ellipse of their logarithms, and so bent a little here.
 *
 * @param share between 0 and 1
 * @param count points on it
 * @returns points of (across, up), mm, once round
 * @source two-dimensional Student's t: a share p lies within the squared distance d with (1 + d/ν)^(−ν/2) = 1 − p
 */
export function ringOf(across: Girth, up: Girth, share: number, count = 72): readonly (readonly [Mm, Mm])[] {
  const { middle, scatter, freedom } = GIRTH_BODIES;
  const places = [PLACE[across], PLACE[up]];
  const lower = cholesky(partOf(scatter, places, places));
  const reach = Math.sqrt(ringDistance(share, freedom));
  const [first, second] = places.map((at) => invariant(middle[at], "middle"));
  const entry = (row: number, column: number): number => invariant(invariant(lower[row], "row")[column], "entry");
  return Array.from({ length: count }, (_, at) => {
    const turn = (2 * Math.PI * at) / count;
    const [x, y] = [reach * Math.cos(turn), reach * Math.sin(turn)];
    return [
      Math.exp(invariant(first, "middle") + entry(0, 0) * x),
      Math.exp(invariant(second, "middle") + entry(1, 0) * x + entry(1, 1) * y),
    ];
  });
}

/** Squared distance within which a share of a two-dimensional Student's t lies. */
export const ringDistance = (share: number, freedom: number): number => freedom * ((1 - share) ** (-2 / freedom) - 1);
