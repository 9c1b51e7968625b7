/** Reading a saved work as it lies in storage, whatever is there. */
import type { Work } from "../core/decisions/work";
import { fail, ok, type Result } from "../core/result";
import { readWorkData, type WorkFileFailure } from "../document/workFile";
import type { SavedWork, StorageFailure } from "./library";

/** The work parsed like any file. Steps of its history that no longer parse are dropped, the work itself is not. */
export function readSavedWork(id: string, stored: unknown): Result<SavedWork, StorageFailure> {
  const { stamp, version, work, past, future } = partsOf(stored);
  const read = (one: unknown): Result<Work, WorkFileFailure> => {
    try {
      // By way of a text, as in a file; but what the page itself has saved may be as large as it is.
      return readWorkData(JSON.parse(JSON.stringify({ bodicewright: "work", version, work: one })));
    } catch {
      // A record can hold what no text can.
      return fail({ code: "file/not-json" });
    }
  };
  const steps = (list: unknown): readonly Work[] =>
    (Array.isArray(list) ? list : []).flatMap((step: unknown) => {
      const one = read(step);
      return one.ok ? [one.value] : [];
    });
  const current = read(work);
  if (!current.ok) return fail({ code: "storage/damaged", id, why: current.failure });
  return ok({
    id,
    stamp: typeof stamp === "string" ? stamp : "",
    work: current.value,
    past: steps(past),
    future: steps(future),
  });
}

function partsOf(stored: unknown): Readonly<Record<string, unknown>> {
  return typeof stored === "object" && stored !== null ? { ...stored } : {};
}
