/**
 * The moves of each alteration, followed alone on a size as printed: they lead to the corners that the plan has, so that what
 * is done on the way and the places told at the end are one.
 */
import type { Alteration } from "../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../src/core/decisions/fitNames";
import type { StyleName } from "../../src/core/decisions/pattern";
import { fitOf } from "../../src/core/alterations/fit/index";
import { checklistText } from "../../src/cli/text";
import { describe, expect, it } from "vitest";
import { planOf, testWork } from "../support/works";
import { NotCovered, PIECES } from "./follow";
import { halfPrinted } from "./lengths";
import { followMoves, FOLLOWED_BY_MOVES } from "./moves";
import { readSheet, type Job } from "./sheet";
import { paperOf } from "./tissue";

/** Moves that nothing follows yet: where they lead is held by the places alone. */
const NOT_FOLLOWED_BY_MOVES: readonly FitName[] = ["bustPointLevel", "necklineGape", "edgeGape", "armholeGape"];

/** mm. A pencil and a ruler. */
const CORNER = 1;

const STYLE_OF: Readonly<Partial<Record<string, StyleName>>> = {
  bandDepth: "midriff",
  strapLength: "midriff",
  strapWidth: "midriff",
  strapPlace: "midriff",
  edgeGape: "midriff",
  sideSeamUnderBust: "midriff",
};

/** The alteration alone, on a size that is traced as it is printed. */
function planWith(name: string, amount: number, unit: "cm" | "in") {
  const fit = FIT_NAMES.find((one) => one === name);
  const alterations: readonly Alteration[] = fit === undefined ? [] : [{ kind: "fit", id: "a", fit, amount }];
  const work = {
    ...testWork,
    unit,
    pattern: { ...testWork.pattern, style: STYLE_OF[name] ?? "sideDart", length: "hip" as const },
    picks: { baseSize: "14", waist: 4, hip: 4, bustAlteration: fit === undefined ? amount : 0 },
    alterations,
  };
  const plan = planOf(work);
  expect(plan.ledger.every(({ outcome }) => outcome.ok)).toBe(true);
  return { plan, jobs: readSheet(checklistText(work, plan)) };
}

/** Jobs that are an alteration's own. */
const isOwn = ({ text }: Job): boolean =>
  !/^(?:Trace|Level|At the|Lay the|Fold the|Draw the|Check the|Redraw|Walk)/.test(text);

function amountsOf(name: string): readonly number[] {
  const fit = FIT_NAMES.find((one) => one === name);
  if (fit === undefined) return [24, -24];
  const { least, most } = fitOf(fit).range;
  return [Math.min(most / 2, 11), Math.max(least / 2, -11)].filter((amount) => amount !== 0);
}

const cases = (names: readonly string[]) =>
  names.flatMap((name) =>
    amountsOf(name).flatMap((amount) => (["cm", "in"] as const).map((unit) => ({ name, amount, unit }))),
  );

describe("the moves", () => {
  it.each(cases(FOLLOWED_BY_MOVES))(
    "of $name by $amount mm lead to the plan's corners, told in $unit",
    ({ name, amount, unit }) => {
      const { plan, jobs } = planWith(name, amount, unit);
      let followed = 0;
      for (const group of jobs) {
        for (const job of group.jobs.filter(isOwn)) {
          const piece = PIECES[group.title];
          const [traced, made] = [plan.printed, plan.left.pieces].map((all) => all.find((one) => one.name === piece));
          if (traced === undefined || made === undefined) continue;
          const { places, told } = followMoves(paperOf(traced), job);
          const due = paperOf(made);
          const allowed = CORNER + told * halfPrinted(unit);
          const far = due.lines.flatMap(({ from }) => {
            const [is, should] = [places.get(from), due.places.get(from)];
            const off = is === undefined || should === undefined ? 0 : Math.hypot(is.x - should.x, is.y - should.y);
            return off <= allowed
              ? []
              : [`${group.title} ${from}: ${off.toFixed(2)} off, ${allowed.toFixed(2)} allowed`];
          });
          expect(far).toEqual([]);
          followed += 1;
        }
      }
      expect(followed).toBeGreaterThan(0);
    },
  );

  it.each(cases(NOT_FOLLOWED_BY_MOVES))("of $name by $amount mm are said not to be followed", ({ name, amount }) => {
    const { plan, jobs } = planWith(name, amount, "cm");
    const own = jobs.flatMap((group) =>
      plan.printed
        .filter((one) => one.name === PIECES[group.title])
        .flatMap((traced) => group.jobs.filter(isOwn).map((job) => ({ traced, job }))),
    );
    expect(own.length).toBeGreaterThan(0);
    for (const { traced, job } of own) expect(() => followMoves(paperOf(traced), job)).toThrow(NotCovered);
  });

  it("are followed, or said not to be, of every alteration of the Fit step and of the bust adjustment", () => {
    const all = [...FOLLOWED_BY_MOVES, ...NOT_FOLLOWED_BY_MOVES];
    expect(all.toSorted()).toEqual(["bust", ...FIT_NAMES].toSorted());
  });
});
