/** Reading a saved work as it lies in storage, whatever is there. */
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { readWorkData, type WorkFileFailure } from "../document/workFile";
import type { SavedWork, StorageFailure } from "./library";
import { createDrawings, type Drawings } from "../document/drawingsOnce";
import { withSharedDrawing } from "./sharedDrawing";

/** The work parsed like any file. Steps of its history that no longer parse are dropped, the work itself is not. */
export function readSavedWork(
  id: string,
  stored: unknown,
  history: unknown,
  drawings: Drawings = createDrawings(),
): Result<SavedWork, StorageFailure> {
  const current = readStoredWork(id, stored, drawings);
  if (!current.ok) return current;
  const { stamp, work } = fieldsOf(stored);
  const { version, past, future } = fieldsOf(history);
  const steps = (list: unknown): readonly Work[] =>
    (Array.isArray(list) ? list : []).flatMap((step: unknown) => {
      const one = readOne(version, withSharedDrawing(step, work), drawings);
      return one.ok ? [one.value] : [];
    });
  return ok({
    id,
    stamp: typeof stamp === "string" ? stamp : "",
    work: current.value,
    past: steps(past),
    future: steps(future),
  });
}

/** The work alone. */
export function readStoredWork(
  id: string,
  stored: unknown,
  drawings: Drawings = createDrawings(),
): Result<Work, StorageFailure> {
  const { version, work } = fieldsOf(stored);
  const read = readOne(version, work, drawings);
  return read.ok ? read : fail({ code: "storage/damaged", id, why: read.failure });
}

function readOne(version: unknown, work: unknown, drawings: Drawings): Result<Work, WorkFileFailure> {
  try {
    // By way of a text, as in a file; but what the page itself has saved may be as large as it is.
    return drawings.during(work, (step) =>
      readWorkData(JSON.parse(JSON.stringify({ bodicewright: "work", version, work: step }))),
    );
  } catch {
    // A record can hold what no text can.
    return fail({ code: "file/not-json" });
  }
}

export const fieldsOf = (stored: unknown): Readonly<Record<string, unknown>> =>
  typeof stored === "object" && stored !== null ? { ...stored } : {};
