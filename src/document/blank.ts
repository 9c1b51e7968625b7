/** A work with nothing in it yet, for one's own measures and pattern. */
import type { Pattern } from "../core/decisions/pattern";
import { USUAL_DRAFTED_DIFFERENCE } from "../core/chart/sizeChart";
import type { LengthUnit, Work } from "../core/decisions/work";

/** Ease of a fitted woven bodice (common practice, no source). */
const FITTED = { bust: 60, waist: 30, hip: 50 } as const;

export const blankPattern = (): Pattern => ({
  name: "My pattern",
  chart: { sizes: [], draftedDifference: USUAL_DRAFTED_DIFFERENCE, cups: [] },
  ease: FITTED,
  length: "waist",
  closure: { place: "centreBack", belowWaist: 180 },
  style: "sideDart",
  strap: "wide",
});

export const blankWork = (unit: LengthUnit = "cm", pattern: Pattern = blankPattern()): Work => ({
  name: "My bodice",
  invented: false,
  unit,
  paper: unit === "cm" ? "A4" : "Letter",
  tapes: [{ readings: {} }],
  pattern,
  easeWanted: {},
  picks: {},
  alterations: [],
  unread: {},
});
