/** The survey model as fitted afresh, and as the text of its file. */
import { MEASURE_NAMES, type MeasureName } from "../../src/core/measures/measure";
import { invariant } from "../../src/core/result";
import { fitStudent, logsOf, meanLogDensity } from "./fitBodies";
import { fitted1988, women1988 } from "./surveys";

/** All that the survey has, in the order of our measures. */
export const SURVEYED: readonly MeasureName[] = MEASURE_NAMES.filter((name) => name !== "acrossFront");

/** Degrees of freedom tried, and what a heavier tail may cost in mean log density before it is not taken. */
const FREEDOMS = [8, 12, 16, 20, 25, 30, 40, 60, 100];
const WORTH = 0.01;

/** The heaviest tails that cost next to nothing, judged on a part of the fitted women held back from them in turn. */
function chosenFreedom(): number {
  const inner = logsOf(
    fitted1988.filter((_, at) => at % 4 !== 2),
    SURVEYED,
  );
  const judged = logsOf(
    fitted1988.filter((_, at) => at % 4 === 2),
    SURVEYED,
  );
  const densities = FREEDOMS.map((freedom) => meanLogDensity(judged, fitStudent(inner, freedom), freedom));
  const best = Math.max(...densities);
  return invariant(FREEDOMS[densities.findIndex((density) => density > best - WORTH)], "degrees of freedom");
}

const PLACES = 8;
const rounded = (value: number): number => Number(value.toFixed(PLACES));

const quantile = (values: readonly number[], share: number): number =>
  invariant(values.toSorted((a, b) => a - b)[Math.round(share * (values.length - 1))], "value");

export function surveyModelText(): string {
  const freedom = chosenFreedom();
  const { middle, scatter } = fitStudent(logsOf(fitted1988, SURVEYED), freedom);
  const lines = scatter.map(
    (row, at) =>
      `    [${row
        .slice(0, at + 1)
        .map(rounded)
        .join(", ")}],`,
  );
  const inMost = (name: MeasureName): string => {
    const values = women1988.map((woman) => invariant(woman.measures[name], name));
    return `    ${name}: { least: ${quantile(values, 0.01)}, most: ${quantile(values, 0.99)} },`;
  };
  return `/**
 * The body survey as fitted: made by \`npm run fit-bodies\` from tests/reference-data/women-1988.csv (1988 survey of women of
 * the US Army, public domain), never by hand. Logarithms of millimetres, as the survey measured them.
 */
import type { MeasureName } from "../measures/measure";

export const SURVEY = {
  /** Women measured, and those that the fit stands on; every fourth was held back to judge it. */
  women: ${women1988.length},
  fitted: ${fitted1988.length},
  /** Years: from, to, and above which only few were measured. */
  ages: { least: ${Math.min(...women1988.map(({ age }) => age))}, most: ${Math.max(...women1988.map(({ age }) => age))}, few: ${quantile(
    women1988.map(({ age }) => age),
    0.97,
  )} },
  measures: [${SURVEYED.map((name) => `"${name}"`).join(", ")}] satisfies readonly MeasureName[] as readonly MeasureName[],
  freedom: ${freedom},
  middle: [${middle.map(rounded).join(", ")}],
  /** The lower triangle of the scatter. */
  scatter: [
${lines.join("\n")}
  ],
  /** mm. All but one in a hundred lie above, and all but one in a hundred below. */
  nearlyAll: {
${SURVEYED.map(inMost).join("\n")}
  } satisfies Partial<Record<MeasureName, { readonly least: number; readonly most: number }>>,
} as const;
`;
}
