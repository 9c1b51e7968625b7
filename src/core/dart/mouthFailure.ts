/** Why the mouth of a dart cannot be moved so far. */
import type { DartRef } from "../pattern/piece";
import type { Mm } from "../units";

/** `dart` where it is not the altered one but the one that was to give back. */
export type MouthFailure =
  | { readonly code: "alteration/dart-vanishes"; readonly smallest: Mm; readonly would: Mm; readonly dart?: DartRef }
  /** `most`: the furthest that stays on the seam. */
  | { readonly code: "alteration/off-the-seam"; readonly most: Mm; readonly dart?: DartRef };
