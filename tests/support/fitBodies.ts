/**
 * Fitting the body model: the many-dimensional Student t distribution of the logarithms, by the usual reweighting
 * (expectation and maximisation; Lange, Little and Taylor 1989, from memory). The matrices are a general-purpose
 * library's (ml-matrix), not our own.
 */
import { inverse, Matrix } from "ml-matrix";
import type { MeasureName } from "../../src/core/measures/measure";
import { invariant } from "../../src/core/result";
import type { SurveyedWoman } from "./surveys";

const ROUNDS = 80;

export interface Fitted {
  readonly middle: readonly number[];
  readonly scatter: readonly (readonly number[])[];
}

export const logsOf = (women: readonly SurveyedWoman[], measures: readonly MeasureName[]): number[][] =>
  women.map((woman) => measures.map((name) => Math.log(invariant(woman.measures[name], name))));

/** Middle and scatter for given degrees of freedom (Infinity: the normal distribution). */
export function fitStudent(logs: readonly (readonly number[])[], freedom: number): Fitted {
  const size = invariant(logs[0], "a woman").length;
  let weights = logs.map(() => 1);
  let middle = Array.from({ length: size }, () => 0);
  let scatter = Matrix.eye(size);
  for (let round = 0; round < (freedom === Infinity ? 1 : ROUNDS); round += 1) {
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    middle = middle.map(
      (_, j) =>
        logs.reduce((sum, row, i) => sum + invariant(weights[i], "weight") * invariant(row[j], "log"), 0) / total,
    );
    const off = new Matrix(logs.map((row) => row.map((value, j) => value - invariant(middle[j], "middle"))));
    const weighted = off.clone().mulColumnVector(weights);
    scatter = off.transpose().mmul(weighted).div(logs.length);
    weights = distances(off, scatter).map((distance) =>
      freedom === Infinity ? 1 : (freedom + size) / (freedom + distance),
    );
  }
  return { middle, scatter: scatter.to2DArray() };
}

function distances(off: Matrix, scatter: Matrix): number[] {
  const half = off.mmul(inverse(scatter));
  return Array.from({ length: off.rows }, (_, i) => half.getRowVector(i).dot(off.getRowVector(i)));
}

/** Mean log density of some women under a fit: what the degrees of freedom are chosen by. */
export function meanLogDensity(
  logs: readonly (readonly number[])[],
  { middle, scatter }: Fitted,
  freedom: number,
): number {
  const size = middle.length;
  const off = new Matrix(logs.map((row) => row.map((value, j) => value - invariant(middle[j], "middle"))));
  const logDet = Math.log(Math.abs(determinantOf(scatter)));
  const terms = distances(off, new Matrix(scatter.map((row) => [...row]))).map(
    (d) => ((freedom + size) / 2) * Math.log1p(d / freedom),
  );
  const mean = terms.reduce((sum, term) => sum + term, 0) / terms.length;
  return (
    logGamma((freedom + size) / 2) -
    logGamma(freedom / 2) -
    (size / 2) * Math.log(freedom * Math.PI) -
    logDet / 2 -
    mean
  );
}

/** Product of pivots, scaled by itself: the scatter of thirteen logarithms has a determinant near 1e-35. */
const determinantOf = (scatter: Fitted["scatter"]): number => {
  let product = 1;
  const rows = scatter.map((row) => [...row]);
  for (let k = 0; k < rows.length; k += 1) {
    const pivot = invariant(invariant(rows[k], "row")[k], "pivot");
    product *= pivot;
    for (let i = k + 1; i < rows.length; i += 1) {
      const factor = invariant(invariant(rows[i], "row")[k], "entry") / pivot;
      for (let j = k; j < rows.length; j += 1)
        invariant(rows[i], "row")[j] =
          invariant(invariant(rows[i], "row")[j], "entry") - factor * invariant(invariant(rows[k], "row")[j], "entry");
    }
  }
  return product;
};

/** Stirling's series: good to 1e-10 from 4 on. */
function logGamma(x: number): number {
  if (x < 8) return logGamma(x + 1) - Math.log(x);
  return (
    (x - 0.5) * Math.log(x) - x + Math.log(2 * Math.PI) / 2 + 1 / (12 * x) - 1 / (360 * x ** 3) + 1 / (1260 * x ** 5)
  );
}
