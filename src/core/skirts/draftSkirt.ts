/** Any one skirt, drafted on the finished waist. To add one: a file beside this, and a line here. */
import type { Result } from "../result";
import { fail } from "../result";
import type { SkirtAsked, SkirtDraft, SkirtFailure } from "./skirtDraft";

export function draftSkirt({ skirt }: SkirtAsked): Result<SkirtDraft, SkirtFailure> {
  return fail({ code: "skirt/length-missing", kind: skirt.kind });
}
