/** A work with nothing in it yet, for one's own measures and pattern; in inches its figures are those of an inch tape. */
import { INCH_ALLOWANCES } from "../core/cutting/usualAllowances";
import type { Pattern } from "../core/decisions/pattern";
import { usualDraftedDifference } from "../core/chart/sizeChart";
import type { LengthUnit, Work } from "../core/decisions/work";
import type { Command } from "../core/plan/commands";
import { isSame } from "../core/same";
import { MM_PER_INCH, type Mm } from "../core/units";

/** As an entry keeps it: to 0.1 mm. */
const inches = (value: number): Mm => Math.round(value * MM_PER_INCH * 10) / 10;

/** Ease of a fitted woven bodice (common practice, no source). */
const FITTED = {
  cm: { bust: 60, waist: 30, hip: 50 },
  in: { bust: inches(2.375), waist: inches(1.25), hip: inches(2) },
} as const;

/** How far an opening runs below the waist seam (common practice, no source). */
const OPENING: Readonly<Record<LengthUnit, Mm>> = { cm: 180, in: inches(7) };

export const blankPattern = (unit: LengthUnit = "cm"): Pattern => ({
  name: "My pattern",
  chart: { sizes: [], draftedDifference: usualDraftedDifference(unit), cups: [] },
  ease: FITTED[unit],
  length: "waist",
  closure: { place: "centreBack", belowWaist: OPENING[unit] },
  style: "sideDart",
  strap: "wide",
});

const paperOf = (unit: LengthUnit): Work["paper"] => (unit === "cm" ? "A4" : "Letter");

export const blankWork = (unit: LengthUnit = "cm", pattern: Pattern = blankPattern(unit)): Work => ({
  name: "My bodice",
  invented: false,
  unit,
  paper: paperOf(unit),
  tapes: [{ readings: {} }],
  pattern,
  easeWanted: {},
  picks: {},
  alterations: [],
  unread: {},
  ...(unit === "in" ? { allowances: INCH_ALLOWANCES } : {}),
});

/** What stands for a value: the next one, where it still was what stood for it before. */
const follow = <T>(value: T, old: T, next: T): T => (isSame(value, old) ? next : value);

/**
 * Another unit for a work. While its chart is empty, the figures that stand for what was not decided become those of the
 * unit; what was decided stays as it is.
 */
export function changeUnit(work: Work, unit: LengthUnit): readonly Command[] {
  const set: Command = { kind: "setUnit", unit };
  const { pattern } = work;
  if (unit === work.unit || pattern.chart.sizes.length + pattern.chart.cups.length > 0) return [set];
  const [before, after] = [blankWork(work.unit), blankWork(unit)];
  const { ease, chart, closure } = pattern;
  const followed: Pattern = {
    ...pattern,
    chart: {
      ...chart,
      draftedDifference: follow(
        chart.draftedDifference,
        before.pattern.chart.draftedDifference,
        after.pattern.chart.draftedDifference,
      ),
    },
    ease: {
      bust: follow(ease.bust, before.pattern.ease.bust, after.pattern.ease.bust),
      waist: follow(ease.waist, before.pattern.ease.waist, after.pattern.ease.waist),
      hip: follow(ease.hip, before.pattern.ease.hip, after.pattern.ease.hip),
    },
    closure: {
      ...closure,
      belowWaist: follow(closure.belowWaist, before.pattern.closure.belowWaist, after.pattern.closure.belowWaist),
    },
  };
  const seams = Object.keys(INCH_ALLOWANCES).filter(isSeam);
  return [
    set,
    { kind: "setPaper", paper: follow(work.paper, before.paper, after.paper) },
    { kind: "setPattern", pattern: followed },
    ...seams.flatMap((seam): readonly Command[] => {
      if (work.allowances?.[seam] !== before.allowances?.[seam]) return [];
      const value = after.allowances?.[seam];
      return [value === undefined ? { kind: "clearAllowance", seam } : { kind: "setAllowance", seam, value }];
    }),
  ];
}

const isSeam = (name: string): name is keyof typeof INCH_ALLOWANCES => Object.hasOwn(INCH_ALLOWANCES, name);
