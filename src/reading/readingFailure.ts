/** Why a file of outlines could not be read. */
import { fail, ok, type Result } from "../core/result";

export type ReadingFailure =
  | { readonly code: "reading/too-large"; readonly bytes: number; readonly most: number }
  | {
      readonly code: "reading/other-format";
      readonly format: "pdf" | "picture" | "packed" | "binaryDxf" | "dwg" | "unknown";
    }
  /** The file ends before its drawing does. */
  | { readonly code: "reading/cut-short" }
  /** Something in it cannot be read; in which of its lines, counted from 1. */
  | { readonly code: "reading/damaged"; readonly line: number }
  | {
      readonly code: "reading/too-many";
      readonly of: "lines" | "looks" | "marks" | "objects" | "letters" | "copies";
      readonly count: number;
      readonly most: number;
    }
  /** A symbol, a copied part or a block that holds itself. */
  | { readonly code: "reading/endless"; readonly name: string }
  | { readonly code: "reading/too-deep"; readonly most: number }
  /** A coordinate that is no number, or lies where no pattern does. */
  | { readonly code: "reading/out-of-reach"; readonly most: number }
  | { readonly code: "reading/empty" };

/** Thrown where reading ends, however deep in the file, and caught by `refusable` alone. */
class Refusal extends Error {
  constructor(readonly failure: ReadingFailure) {
    super(failure.code);
  }
}

export function refuse(failure: ReadingFailure): never {
  throw new Refusal(failure);
}

export function refusable<T>(read: () => T): Result<T, ReadingFailure> {
  try {
    return ok(read());
  } catch (error) {
    if (error instanceof Refusal) return fail(error.failure);
    throw error;
  }
}
