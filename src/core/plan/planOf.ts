/** The plan of a work and the nest under it, worked out once: a work never changes in place. */
import type { Decided } from "../decisions/decided";
import type { Neckline } from "../decisions/dress";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import type { Result } from "../result";
import { derivePlan } from "./derivePlan";
import type { Plan } from "./plan";
import type { PlanFailure } from "./planFailure";
import { derivePrintedNest, type NestInputs } from "./printed";

/** All of a work that a plan follows from: of the rest of the dress its neckline, and whether there is one. */
type PlanInputs = Omit<Decided, "dress"> & { readonly neckline?: Neckline | undefined; readonly isDressed: boolean };

/** A skirt, a lining or a cloth is chosen on a bodice that stays as it is. */
const planOfBodice = remember(
  [
    "pattern",
    "tapes",
    "trusted",
    "age",
    "easeWanted",
    "bustRadius",
    "picks",
    "alterations",
    "seen",
    "allowances",
    "neckline",
    "isDressed",
  ],
  ({ neckline, isDressed, ...work }: PlanInputs) =>
    derivePlan(isDressed ? { ...work, dress: neckline === undefined ? {} : { neckline } } : work),
);

const planFrom = remember(["work"], ({ work: { dress, ...work } }: { readonly work: Decided }) =>
  planOfBodice({ ...work, neckline: dress?.neckline, isDressed: dress !== undefined }),
);

export const planOf = (work: Decided): Result<Plan, PlanFailure> => planFrom({ work });

/** The printed pieces, there even before there is a plan. */
export const printedNestOf: (work: NestInputs) => Result<Nest, PlanFailure> = remember(
  ["tapes", "pattern", "picks"],
  derivePrintedNest,
);
