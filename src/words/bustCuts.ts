/** What stands under the small drawings of a bust alteration. */
import type { PieceName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatAmount } from "./terms/length";

export const WHERE_TO_CUT = "Cut the dashed lines; the rings are hinges";
export const WHERE_TO_FOLD = "Fold along the dashed line";

interface Moved {
  readonly piece: PieceName;
  readonly spread: Mm;
  readonly drop: Mm;
}

/** "Open 11 mm at the bust point; centre part 5 mm longer", "Lap 7 mm at the bust line", "6 mm shorter". */
export function movedWords({ piece, spread, drop }: Moved, unit: LengthUnit): string {
  const fuller = spread > 0;
  const [across, along] = [spread, drop].map((value) => formatAmount(Math.abs(value), unit));
  const way = fuller ? "longer" : "shorter";
  const turned = fuller ? "Open" : "Lap";
  switch (piece) {
    case "centreFront":
      return `${along ?? ""} ${way}`;
    case "sideFront":
      return `${turned} ${across ?? ""} at the bust line`;
    case "cup":
      return `${turned} ${across ?? ""} at the bust point; ${along ?? ""} ${way} at the dart`;
    default:
      return `${turned} ${across ?? ""} at the bust point; centre part ${along ?? ""} ${way}`;
  }
}
