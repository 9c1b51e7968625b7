/** Outlines from a file read as the pieces of a pattern. */
import type { OwnPattern } from "../decisions/ownPattern";
import type { Pattern } from "../decisions/pattern";
import type { OwnReading } from "./ownReading";

export interface OwnInputs {
  readonly own: OwnPattern;
  readonly pattern: Pattern;
}

export function readOwn(_: OwnInputs): OwnReading {
  return {
    outlines: { state: "unread" } as never,
    pieces: [],
    missing: [{ code: "missing/outlines", widest: null }],
    nest: null,
  };
}
