/**
 * A nest drafted by a house that is not ours, with all that is true of it: corners, darts, lengths, finished girths.
 *
 *     const foreign = foreignNest({ seed: 7, front: "french", neck: "square" });
 *     const traced = tracedOf(foreign);          // as a reading gives it (asTraced.ts)
 *     const chart = chartOf(foreign);            // the chart it is printed with
 *
 * What is not asked for is drawn by lot from the seed. Nothing here but asTraced.ts imports from src. Front and back side
 * seams, front and back waist and basque, and both princess seams are equally long to 1e-9 mm, darts sewn shut; finished bust and
 * waist are closed form (each piece is solved for them), hip by its draft.
 */
import { basqueOutline, collarOutline } from "./basque";
import { backOutline, sideLength } from "./bodiceBack";
import { frontOutline } from "./bodiceFront";
import type { ForeignName, ForeignNest, ForeignOptions, ForeignOutline, ForeignPiece } from "./foreignTypes";
import { habitOf } from "./habit";
import { princessOutlines } from "./princess";

export function foreignNest(given: ForeignOptions): ForeignNest {
  const habit = habitOf(given);
  const { options, sizes, ease } = habit;
  const backs = sizes.map((n) => backOutline(habit, n));
  const pieces: ForeignPiece[] = [];
  const add = (name: ForeignName, centreOnFold: boolean, all: readonly ForeignOutline[]): void => {
    const steps = all.map((outline, index): ForeignOutline => ({
      ...outline,
      tape: { ...outline.tape, ...stepsTo(outline, all[index + 1]) },
    }));
    pieces.push({ name, centreOnFold, sizes: steps });
  };
  const isPrincess = options.front === "princessArmhole" || options.front === "princessShoulder";
  if (isPrincess) {
    const both = sizes.map((n, index) => princessOutlines(habit, n, sideLength(backs[index] ?? { ring: [] })));
    add(
      "centreFront",
      true,
      both.map(({ centreFront }) => centreFront),
    );
    add(
      "sideFront",
      false,
      both.map(({ sideFront }) => sideFront),
    );
  } else
    add(
      "front",
      true,
      sizes.map((n, index) => frontOutline(habit, n, sideLength(backs[index] ?? { ring: [] }))),
    );
  add("back", false, backs);
  if (options.basque) {
    const fronts = sizes.map((n) => basqueOutline(habit, n, "front", null));
    add("frontBasque", true, fronts);
    add(
      "backBasque",
      false,
      sizes.map((n, index) => basqueOutline(habit, n, "back", sideLength(fronts[index] ?? { ring: [] }))),
    );
  }
  if (options.other) add("other1", true, sizes.map(collarOutline));
  return {
    options,
    style: isPrincess ? (options.front === "princessArmhole" ? "princessArmhole" : "princessShoulder") : "sideDart",
    chart: sizes.map(({ row }) => row),
    ease,
    pieces,
    finished: sizes.map(({ row }) => ({
      bust: row.bust + ease.bust,
      waist: row.waist + ease.waist,
      hip: options.basque ? row.hip + ease.hip : null,
    })),
    shoulderEase: habit.shoulderEase,
  };
}

/** Straight across to the line of the next size. */
function stepsTo(outline: ForeignOutline, next: ForeignOutline | undefined): Record<string, number> {
  if (next === undefined) return {};
  const x = (of: ForeignOutline, corner: string): number | undefined =>
    of.ring.find(({ from }) => from === corner)?.segments[0]?.a.x;
  const steps: Record<string, number> = {};
  for (const [name, corner] of [
    ["bustStep", "sideBust"],
    ["waistStep", "sideWaist"],
    ["hipStep", "sideHip"],
  ] as const) {
    const [here, there] = [x(outline, corner), x(next, corner)];
    if (here !== undefined && there !== undefined) steps[name] = there - here;
  }
  const mouth = next.tape.waistDartMouth;
  return mouth === undefined ? steps : { ...steps, waistDartMouthNext: mouth };
}
