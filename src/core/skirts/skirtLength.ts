/** How long a skirt is at the side, front and back, for a hem that is level on her body. */
import { fail, ok, type Result } from "../result";
import type { Mm } from "../units";
import type { SkirtAsked, SkirtFailure, SkirtNote } from "./skirtDraft";
import { LENGTH_RANGE, TO_KNEE_OF_FLOOR, TO_KNEE_OF_HEIGHT, USUAL_LENGTH, USUAL_ROUNDED } from "./skirtPractice";

export interface SkirtLength {
  readonly side: Mm;
  /** By waist to floor; null: not measured. */
  readonly level: { readonly front: Mm; readonly back: Mm } | null;
  readonly notes: readonly SkirtNote[];
}

/** @param own what the skirt's own parts add up to, where they say it all: then the length follows from them */
export function skirtLength({ skirt, body }: SkirtAsked, own: Mm | null = null): Result<SkirtLength, SkirtFailure> {
  const side = own ?? skirt.length ?? usualLength(body.height, body.toFloor?.side ?? null);
  const { least, most } = LENGTH_RANGE;
  if (!(side >= least && side <= most)) return fail({ code: "skirt/length-out-of-range", length: side, least, most });
  const notes: SkirtNote[] = [];
  const { toFloor, height } = body;
  if (own === null && skirt.length === undefined) {
    const by = height !== null ? "height" : toFloor !== null ? "toFloor" : null;
    notes.push({ code: "skirt/length-usual", length: side, by });
  }
  if (toFloor === null) return ok({ side, level: null, notes: [...notes, { code: "skirt/hem-not-levelled" }] });
  const level = { front: side + toFloor.front - toFloor.side, back: side + toFloor.back - toFloor.side };
  for (const length of [level.front, level.back])
    if (!(length >= least && length <= most)) return fail({ code: "skirt/length-out-of-range", length, least, most });
  return ok({ side, level, notes });
}

/** To the knee. */
function usualLength(height: Mm | null, toFloor: Mm | null): Mm {
  if (height === null && toFloor === null) return USUAL_LENGTH;
  const exact = height === null ? TO_KNEE_OF_FLOOR * (toFloor ?? 0) : TO_KNEE_OF_HEIGHT * height;
  return USUAL_ROUNDED * Math.round(exact / USUAL_ROUNDED);
}
