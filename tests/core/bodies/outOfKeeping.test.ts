/**
 * What is asked for once more, worked out plainly on many bodies: distances by a general-purpose library's inverse (ml-matrix).
 * The limits are our own choice, as written in src/core/bodies/outOfKeeping.ts.
 */
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import type { Known } from "../../../src/core/bodies/bodyModel";
import { SURVEYED_BODIES, TAPED_BODIES } from "../../../src/core/bodies/bridges";
import { readOf } from "../../../src/core/bodies/openBodies";
import { outOfKeeping } from "../../../src/core/bodies/outOfKeeping";
import { MEASURE_NAMES, type MeasureName } from "../../../src/core/measures/measure";
import { invariant } from "../../../src/core/result";
import { heldBack1988 } from "../../support/surveys";
import { bodyWith, tapedWomen } from "../../support/tapedWomen";

type Values = Readonly<Partial<Record<MeasureName, number>>>;

describe("what is out of keeping", () => {
  const GIRTHS: readonly MeasureName[] = ["bustGirth", "upperChestGirth", "underBustGirth", "waistGirth", "hipGirth"];
  const LIMITS: Values = { bustGirth: 3.02, waistGirth: 3.14, hipGirth: 2.82 };

  /** Each given all others: middle and scale of its logarithm, by regression on them with the library's inverse. */
  function foretoldIn(known: readonly Known[]) {
    return known.map(({ measure, log }, at) => {
      const others = known.filter((_, one) => one !== at);
      const [own, places] = [
        SURVEYED_BODIES.measures.indexOf(measure),
        others.map((one) => SURVEYED_BODIES.measures.indexOf(one.measure)),
      ];
      const scatter = new Matrix(SURVEYED_BODIES.scatter.map((row) => [...row]));
      const among = inverse(scatter.selection(places, places).add(Matrix.diag(others.map(({ variance }) => variance))));
      const across = scatter.selection([own], places);
      const middleOf = (name: MeasureName) =>
        invariant(TAPED_BODIES.middle[TAPED_BODIES.measures.indexOf(name)], "middle");
      const off = Matrix.columnVector(others.map((one) => one.log - middleOf(one.measure)));
      const weights = across.mmul(among);
      const middle = middleOf(measure) + weights.mmul(off).get(0, 0);
      const variance =
        scatter.get(own, own) + invariant(known[at], "known").variance - weights.mmul(across.transpose()).get(0, 0);
      // Three for each of the others: beyond that it knows few like them.
      const distance = off.transpose().mmul(among).mmul(off).get(0, 0) / others.length;
      const scale = Math.sqrt(variance) * Math.max(1, Math.sqrt(distance / 3));
      return { measure, middle, scale, away: Math.abs(log - middle) / scale };
    });
  }

  /** As the survey's women go together, some further out than others: each of their girths read more or less in turn. */
  const bodies = tapedWomen(heldBack1988.slice(0, 25)).flatMap(({ values }, at) =>
    ["bustGirth" as const, "waistGirth" as const, "hipGirth" as const, "upperChestGirth" as const].map(
      (name, which) => {
        const names = MEASURE_NAMES.filter((one, place) => one !== "acrossFront" && (place + at) % 4 !== 0);
        const by = [-110, 90, 120, -60, 140][(at + which) % 5] ?? 0;
        return readOf(bodyWith({ ...values, [name]: values[name] + by }, [...new Set([...names, name])]));
      },
    ),
  );

  it.each([
    ["nothing stands", []],
    ["bust and hip stand", ["bustGirth", "hipGirth"]],
    ["the waist stands", ["waistGirth"]],
  ] as const)("is the furthest of the girths that may be, where one is beyond its limit: %s", (_, standing) => {
    const stands = (measure: MeasureName): boolean => standing.some((one) => one === measure);
    const seen = { asked: 0, silent: 0 };
    for (const read of bodies) {
      const found = outOfKeeping(read, stands);
      const foretold = foretoldIn(read);
      const hasBeside = read.some(({ measure }) => measure === "upperChestGirth" || measure === "underBustGirth");
      const isOut = foretold.some(
        ({ measure, away }) =>
          away > (LIMITS[measure] ?? Infinity) && !stands(measure) && (measure !== "bustGirth" || hasBeside),
      );
      const furthest = foretold
        .filter(({ measure }) => GIRTHS.includes(measure) && !stands(measure))
        .toSorted((a, b) => b.away - a.away)[0];
      const expected = isOut && furthest !== undefined ? furthest : null;
      expect(found === null ? null : read[found.at]?.measure).toBe(expected?.measure ?? null);
      expect(found?.foretold.middle ?? 0).toBeCloseTo(expected?.middle ?? 0, 9);
      expect(found?.foretold.scale ?? 0).toBeCloseTo(expected?.scale ?? 0, 9);
      seen[found === null ? "silent" : "asked"] += 1;
    }
    expect(seen.asked).toBeGreaterThan(10);
    expect(seen.silent).toBeGreaterThan(10);
  });

  it("is nothing with fewer than two others, nor among what the survey lacks", () => {
    const read = (values: Values) => readOf(bodyWith(values));
    const none = (): boolean => false;
    expect(outOfKeeping(read({ hipGirth: 1300, waistGirth: 650 }), none)).toBeNull();
    expect(outOfKeeping(read({ hipGirth: 1300, waistGirth: 650, acrossFront: 330 }), none)).toBeNull();
    expect(outOfKeeping(read({ hipGirth: 1300, waistGirth: 650, bustGirth: 850 }), none)?.at).toBe(2);
    expect(outOfKeeping([], none)).toBeNull();
  });
});
