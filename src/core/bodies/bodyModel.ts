/**
 * How body measures go together: the logarithms of all measures as one many-dimensional Student t distribution, and that
 * distribution given some of them.
 *
 * Logarithms, because bodies differ by shares and not by millimetres; Student's t and not the normal, because then the
 * ranges widen by themselves for a body that is unusual in what was measured. Both were chosen by how well they foretell
 * women held back (DEVELOPERS.md).
 */
import type { MeasureName } from "../measures/measure";
import { invariant } from "../result";
import { cholesky, dot, entry, partOf, solveLower, type Matrix } from "../statistics/linear";

export interface BodyModel {
  readonly measures: readonly MeasureName[];
  /** Middle of each logarithm (of mm), and their scatter: n and n × n. */
  readonly middle: readonly number[];
  readonly scatter: Matrix;
  /** Degrees of freedom of the t distribution. */
  readonly freedom: number;
}

/** A measure that is known: the logarithm of its mm, and the variance of reading it (of the logarithm; 0: exact). */
export interface Known {
  readonly measure: MeasureName;
  readonly log: number;
  readonly variance: number;
}

export interface Foretold {
  readonly middle: number;
  /** Scale of the t distribution of this logarithm, given what is known. */
  readonly scale: number;
  readonly freedom: number;
}

export interface Conditioned {
  readonly of: (measure: MeasureName) => Foretold;
  /** Squared distance of what is known from the middle, in its own scatter; 0 where nothing is known. */
  readonly distance: number;
  readonly known: number;
}

/**
 * The distribution of every measure of a model, given some. A measure that is given gets the distribution of its true
 * value; measures that the model lacks are passed over.
 *
 * @source conditional of a multivariate t: middle as for the normal distribution, scatter times (ν + d)/(ν + p), with
 *   ν + p degrees of freedom (Kotz and Nadarajah, Multivariate t Distributions, 2004; from memory)
 */
export function conditionOn(model: BodyModel, given: readonly Known[]): Conditioned {
  const known = given.filter(({ measure }) => model.measures.includes(measure));
  const places = known.map(({ measure }) => model.measures.indexOf(measure));
  const scatter = partOf(model.scatter, places, places).map((row, i) =>
    row.map((value, j) => (i === j ? value + invariant(known[i], "known").variance : value)),
  );
  const lower = cholesky(scatter);
  const off = solveLower(
    lower,
    known.map(({ log }, i) => log - invariant(model.middle[invariant(places[i], "place")], "middle")),
  );
  const distance = dot(off, off);
  const freedom = model.freedom + known.length;
  const widening = (model.freedom + distance) / freedom;
  return {
    distance,
    known: known.length,
    of: (measure) => {
      const at = model.measures.indexOf(measure);
      const across = solveLower(
        lower,
        places.map((place) => entry(model.scatter, at, place)),
      );
      const left = Math.max(0, entry(model.scatter, at, at) - dot(across, across));
      return {
        middle: invariant(model.middle[at], "middle") + dot(across, off),
        scale: Math.sqrt(left * widening),
        freedom,
      };
    },
  };
}
