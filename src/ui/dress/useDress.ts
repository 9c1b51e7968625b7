/** Hooks over the dress that follows from the open work. They bring the whole engine along, as those of the plan do. */
import { dressOf } from "../../core/dress/dressOf";
import type { Dress } from "../../core/decisions/dress";
import type { DressPlan } from "../../core/dress/dressPlan";
import type { PlanFailure } from "../../core/plan/planFailure";
import type { Result } from "../../core/result";
import { useSettledWork } from "../session/useWork";

const NONE: Dress = {};

/** It follows once a field is left: what is said of it stands still while she types. */
export const useDress = (): Result<DressPlan, PlanFailure> => useSettledWork(dressOf);

/** What she decided of it before the visit to a field that is going on. */
export const useDressDecided = (): Dress => useSettledWork((work) => work.dress ?? NONE);
