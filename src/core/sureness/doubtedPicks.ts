/** What of the picks rests on a reading that is doubted: no chance reckoned from such a reading is told. */
import type { Suspicion } from "../bodies/suspicion";
import type { MeasureName } from "../measures/measure";
import type { HowSure, Sureties } from "./howSure";

type PickName = keyof Sureties;

const SIZING = ["baseSize", "cup", "bust"] as const;

/** Frame, cup and bust go by the difference of two girths, each line by its own. */
const RESTS_ON: Readonly<Partial<Record<MeasureName, readonly PickName[]>>> = {
  bustGirth: SIZING,
  upperChestGirth: SIZING,
  waistGirth: ["waist"],
  hipGirth: ["hip"],
};

/** @param doubts open ones */
export const doubtedPicks = (doubts: readonly Pick<Suspicion, "measure">[]): readonly PickName[] => [
  ...new Set(doubts.flatMap(({ measure }) => RESTS_ON[measure] ?? [])),
];

/** How sure the picks are, with what is doubted said to be doubted and nothing else of it. */
export function withDoubts(sure: HowSure, doubts: readonly Pick<Suspicion, "measure">[]): HowSure {
  const doubted = doubtedPicks(doubts);
  const of = (pick: PickName) => (sure.surety[pick] !== null && doubted.includes(pick) ? "doubted" : sure.surety[pick]);
  return {
    ...sure,
    doubted,
    lines: sure.lines.filter(({ level }) => !doubted.includes(level)),
    surety: {
      baseSize: of("baseSize"),
      cup: of("cup"),
      bust: of("bust"),
      waist: of("waist"),
      hip: of("hip"),
    },
  };
}
