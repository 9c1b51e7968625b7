/**
 * The lines of a file are by far the largest part of a work, and all its steps share them: they are written once, read once, and
 * are one object afterwards, so that what is remembered by them holds for every step.
 */
import type { FileDrawing } from "../core/decisions/fileDrawing";
import type { Work } from "../core/decisions/work";
import { ok, type Result } from "../core/result";
import type { WorkFileFailure } from "../document/workFile";

/** Stands in a step for the drawing of the work that it is kept with. */
const AS_IN_WORK = "as in the work";

const EMPTY: FileDrawing = { format: "svg", unit: null, lines: [], points: [], writings: [], hiddenLayers: [] };

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;

/** The drawing of a step, whatever lies there. */
function drawingIn(step: unknown): unknown {
  const pattern = isObject(step) ? step["pattern"] : undefined;
  const own = isObject(pattern) ? pattern["own"] : undefined;
  return isObject(own) ? own["drawing"] : undefined;
}

function withDrawing(step: unknown, drawing: unknown): unknown {
  if (!isObject(step) || !isObject(step["pattern"]) || !isObject(step["pattern"]["own"])) return step;
  return { ...step, pattern: { ...step["pattern"], own: { ...step["pattern"]["own"], drawing } } };
}

/** A step without the drawing where it is the work's own. */
export function withoutSharedDrawing(step: Work | null, work: Work): unknown {
  const drawing = work.pattern.own?.drawing;
  return drawing !== undefined && step?.pattern.own?.drawing === drawing ? withDrawing(step, AS_IN_WORK) : step;
}

/** A step as it lies there, with the drawing of the work where it was left out. */
export const withSharedDrawing = (step: unknown, work: unknown): unknown =>
  drawingIn(step) === AS_IN_WORK ? withDrawing(step, drawingIn(work)) : step;

/** Drawings read so far. */
export interface Drawings {
  /** Reads a step by way of a reader; what is known of its drawing is not read again. */
  readonly during: (step: unknown, read: StepReader) => ReturnType<StepReader>;
}

type StepReader = (step: unknown) => Result<Work, WorkFileFailure>;

export function createDrawings(): Drawings {
  const byObject = new Map<unknown, FileDrawing>();
  const byText = new Map<string, FileDrawing>();
  return {
    during: (step, read) => {
      const raw = drawingIn(step);
      if (!isObject(raw)) return read(step);
      const text = byObject.has(raw) ? "" : JSON.stringify(raw);
      const known = byObject.get(raw) ?? byText.get(text);
      const done = read(known === undefined ? step : withDrawing(step, EMPTY));
      if (!done.ok) return done;
      const { pattern } = done.value;
      if (pattern.own === undefined) return done;
      const drawing = known ?? pattern.own.drawing;
      byObject.set(raw, drawing);
      if (text !== "") byText.set(text, drawing);
      return ok({ ...done.value, pattern: { ...pattern, own: { ...pattern.own, drawing } } });
    },
  };
}
