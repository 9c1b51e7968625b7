/** What is not known of the wearer's tissue and moves the finished waist: how wide its waist darts are in each size. */
import { mouthsNotMeasured, waistIfDartsAlike } from "../core/plan/printedDarts";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { HAND_AGREEMENT } from "../core/tolerance";
import { formatAmount } from "./terms/length";

/** null where it makes no difference that could be measured, or where she measured her darts. */
export function printedDartsNote(
  plan: Pick<Plan, "nest" | "levels" | "sizing">,
  { unit, pattern }: Pick<Work, "unit" | "pattern">,
): string | null {
  if (mouthsNotMeasured(plan.nest, pattern.tissue).length === 0) return null;
  const off = waistIfDartsAlike(plan);
  if (Math.abs(off) <= HAND_AGREEMENT) return null;
  return (
    "The waist is reckoned with waist darts that grow with the size, as we draft them. If your tissue prints them equally wide " +
    `in all sizes, the finished waist comes out ${formatAmount(Math.abs(off), unit)} ${off > 0 ? "larger" : "smaller"} than told: ` +
    `${off > 0 ? "take that in" : "let that out"} at the side seams.`
  );
}
