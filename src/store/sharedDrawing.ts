/**
 * The steps of a work share nearly all of it: a drawing and trials that are the work's own are left out of a step where it is
 * written as a text, and read as the work's.
 */
import type { Work } from "../core/decisions/work";
import { drawingIn, drawingsOnce, withDrawing } from "../document/drawingsOnce";

/** Stands in a step for the drawing, or the trials, of the work that it is kept with. */
const AS_IN_WORK = "as in the work";

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** A step without the drawing and the trials where they are the work's own. */
export function withoutSharedDrawing(step: Work | null, work: Work): unknown {
  if (step === null) return null;
  const drawing = work.pattern.own?.drawing;
  const isShared = drawing !== undefined && step.pattern.own?.drawing === drawing;
  const trials = step.trials !== undefined && step.trials === work.trials ? { trials: AS_IN_WORK } : {};
  const once = "trials" in trials ? step : drawingsOnce(step);
  const lean = isShared ? withDrawing(once, AS_IN_WORK) : once;
  return isObject(lean) ? { ...lean, ...trials } : lean;
}

/** A step as it lies there, with the drawing and the trials of the work where they were left out. */
export function withSharedDrawing(step: unknown, work: unknown): unknown {
  const drawn = drawingIn(step) === AS_IN_WORK ? withDrawing(step, drawingIn(work)) : step;
  if (!isObject(drawn) || drawn["trials"] !== AS_IN_WORK) return drawn;
  return { ...drawn, trials: isObject(work) ? work["trials"] : undefined };
}
