/** Why a size could not be picked. */
import type { Mm } from "../units";

export type SizingFailure =
  | {
      readonly code: "plan/outside-chart";
      /** The girth that the base size is picked by: the bust, or the upper chest. */
      readonly level: "bust" | "upperChest" | "waist" | "hip";
      /** Body girth (bust, upper chest) or garment target (waist, hip), mm, and the range that can be reached. */
      readonly wanted: Mm;
      readonly least: Mm;
      readonly most: Mm;
    }
  | { readonly code: "plan/base-size-unknown"; readonly label: string }
  | { readonly code: "plan/cup-unknown"; readonly label: string };
