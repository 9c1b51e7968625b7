/** Any one skirt, drafted on the finished waist. To add one: a file beside this, and a line here. */
import type { SkirtKind } from "../decisions/dress";
import type { Result } from "../result";
import { circle, peplum } from "./circle";
import { aLine, straight } from "./fitted";
import { gathered, tiers } from "./gathered";
import type { SkirtAsked, SkirtDraft, SkirtFailure } from "./skirtDraft";

const SHAPES: Readonly<Record<SkirtKind, (asked: SkirtAsked) => Result<SkirtDraft, SkirtFailure>>> = {
  gathered,
  tiers,
  circle,
  aLine,
  straight,
  peplum,
};

export const draftSkirt = (asked: SkirtAsked): Result<SkirtDraft, SkirtFailure> => SHAPES[asked.skirt.kind](asked);
