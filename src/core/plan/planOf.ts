/** The plan of a work and the nest under it, worked out once: a work never changes in place. */
import type { Decided } from "../decisions/decided";
import type { Nest } from "../pattern/piece";
import { remember } from "../remember";
import type { Result } from "../result";
import { derivePlan } from "./derivePlan";
import type { Plan } from "./plan";
import type { PlanFailure } from "./planFailure";
import { derivePrintedNest, type NestInputs } from "./printed";

const planFrom = remember(["work"], ({ work }: { readonly work: Decided }) => derivePlan(work));

export const planOf = (work: Decided): Result<Plan, PlanFailure> => planFrom({ work });

/** The printed pieces, there even before there is a plan. */
export const printedNestOf: (work: NestInputs) => Result<Nest, PlanFailure> = remember(
  ["tapes", "pattern", "picks"],
  derivePrintedNest,
);
