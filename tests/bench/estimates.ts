/** How far estimates of body measures are out, for women the fit has not seen. Prints tables; mm throughout. */
import { SURVEYED_BODIES } from "../../src/core/bodies/bridges";
import { MEASURE_NAMES, type MeasureName } from "../../src/core/measures/measure";
import {
  asMeasured,
  byBustLine,
  byEstimates,
  byModel,
  byTrade,
  choices,
  errorsOf,
  GIVEN_SETS,
  overAll,
  readAtHome,
  type Errors,
  type GivenSet,
} from "../support/estimateTally";
import { heldBack1988, women2012 } from "../support/surveys";
import { furthestOut, percent } from "../support/surveyTally";
import { print } from "./table";

const mm = (value: number | undefined): string => (value === undefined ? "–" : value.toFixed(1));
const share = (value: number | undefined): string => (value === undefined ? "–" : percent(value));

const SAID_OF_GIVEN: Readonly<Record<keyof typeof GIVEN_SETS, string>> = {
  bust: "bust",
  girths: "bust, waist, hip",
  girthsAndHeight: "and height",
  others: "all others",
};
const SETS = Object.entries(GIVEN_SETS) as readonly (readonly [keyof typeof GIVEN_SETS, GivenSet])[];

/** mm. Two mean errors closer than this are no different: a tape shows whole millimetres at the best. */
const ALIKE = 0.2;

export function printEstimates(): void {
  const held = asMeasured(heldBack1988);
  const byGiven = new Map(SETS.map(([name, given]) => [name, errorsOf(held, given, byModel(SURVEYED_BODIES))]));
  const ours = (set: keyof typeof GIVEN_SETS, name: MeasureName): Errors | undefined => byGiven.get(set)?.get(name);
  const [trade, shifted, line] = [byTrade(false), byTrade(true), byBustLine()].map((rule) =>
    errorsOf(held, GIVEN_SETS.bust, rule),
  );
  const names = MEASURE_NAMES.filter((name) => name !== "acrossFront");

  print(
    `Mean error of an estimate, ${held.length} women held back, exact tape, as the survey measured them`,
    [
      "measure",
      "trade",
      "its bias",
      "less bias",
      "line on bust",
      ...SETS.map(([name]) => `given ${SAID_OF_GIVEN[name]}`),
      "best given the bust alone",
    ],
    names.map((name) => {
      const contenders = [
        ["trade less bias", shifted?.get(name)?.mean],
        ["line", line?.get(name)?.mean],
        ["model", ours("bust", name)?.mean],
      ] as const;
      const least = Math.min(...contenders.map(([, mean]) => mean ?? Infinity));
      const best = contenders.flatMap(([rule, mean]) => (mean !== undefined && mean < least + ALIKE ? [rule] : []));
      return [
        name,
        mm(trade?.get(name)?.mean),
        mm(trade?.get(name)?.bias),
        mm(shifted?.get(name)?.mean),
        mm(name === "bustGirth" ? undefined : line?.get(name)?.mean),
        ...SETS.map(([set]) => mm(ours(set, name)?.mean)),
        name === "bustGirth" ? "–" : best.length === contenders.length ? "alike" : best.join(", "),
      ];
    }),
  );
  print(
    "Half-width of the range of nine in ten, how many lie in it, and bias",
    ["measure", ...SETS.flatMap(([name]) => [`given ${SAID_OF_GIVEN[name]}: ±`, "in it", "bias"])],
    names.map((name) => [
      name,
      ...SETS.flatMap(([set]) => [
        mm(ours(set, name)?.half),
        share(ours(set, name)?.covered),
        mm(ours(set, name)?.bias),
      ]),
    ]),
  );

  const tenth = asMeasured(
    furthestOut(heldBack1988, Math.round(held.length / 10), ["bustGirth", "waistGirth", "hipGirth", "height"]),
  );
  print(
    `Otherwise chosen: mean over the measures; the tenth: the ${tenth.length} furthest out in bust, waist, hip and height, given these`,
    [
      "choice",
      "log density",
      ...SETS.flatMap(([name]) => [`given ${SAID_OF_GIVEN[name]}: error`, "in it"]),
      "the tenth: error",
      "±",
      "in it",
    ],
    choices().map(({ name, foretell, density }) => {
      const far = overAll(errorsOf(tenth, GIVEN_SETS.girthsAndHeight, foretell));
      return [
        name,
        density.toFixed(3),
        ...SETS.flatMap(([, given]) => {
          const all = overAll(errorsOf(held, given, foretell));
          return [mm(all.mean), share(all.covered)];
        }),
        mm(far.mean),
        mm(far.half),
        share(far.covered),
      ];
    }),
  );

  const read = readAtHome(heldBack1988);
  const toTruth = read.map(({ read: given, truth, age }) => ({ given, truth, age }));
  const toReading = read.map(({ read: given, age }) => ({ given, truth: given, age }));
  print(
    "Given readings of a home tape (simulated): mean over the measures",
    ["given", "the tape taken for", "error to the true value", "±", "true value in it", "another reading in it"],
    SETS.flatMap(([name, given]) =>
      [true, false].map((homeTape) => {
        const rule = byModel(SURVEYED_BODIES, homeTape);
        const truth = overAll(errorsOf(toTruth, given, rule));
        return [
          SAID_OF_GIVEN[name],
          homeTape ? "a home tape" : "exact",
          mm(truth.mean),
          mm(truth.half),
          share(truth.covered),
          share(overAll(errorsOf(toReading, given, rule)).covered),
        ];
      }),
    ),
  );

  const older = women2012.filter(({ age }) => age > 39);
  const rules = [
    ["as the survey of 1988 measured", byModel(SURVEYED_BODIES)],
    ["bridged", byEstimates(true, false)],
    ["bridged, widened by age", byEstimates(true, true)],
  ] as const;
  for (const [what, women] of [
    ["all", women2012],
    ["over 39", older],
    ["over 50", women2012.filter(({ age }) => age > 50)],
  ] as const) {
    const rows = rules.flatMap(([rule, foretell]) =>
      [...errorsOf(asMeasured(women), ["bustGirth", "height"], foretell)].map(
        ([name, { mean, bias, half, covered }]) => [name, rule, mm(mean), mm(bias), mm(half), share(covered)],
      ),
    );
    print(
      `Women of 2012, ${what} (${women.length}), given bust and height, exact tape`,
      ["measure", "rule", "error", "bias", "±", "in it"],
      rows.toSorted(([a = ""], [b = ""]) => a.localeCompare(b)),
    );
  }
}
