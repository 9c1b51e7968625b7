/** Works for the tests of the core. The chart is the worked size of the project's own draft with even steps about it. */
import type { Alteration } from "../../src/core/decisions/alteration";
import { tapesOf } from "../../src/core/measures/tape";
import type { Plan, PlannedDart } from "../../src/core/plan/plan";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Work } from "../../src/core/decisions/work";
import type { DartName, PieceName } from "../../src/core/pattern/piece";

const BUSTS = [760, 800, 840, 880, 920, 960, 1000, 1040, 1090, 1140, 1200, 1260];

export const testWork: Work = {
  name: "Test",
  invented: true,
  unit: "cm",
  paper: "A4",
  tapes: tapesOf({
    bustGirth: 905,
    upperChestGirth: 832,
    waistGirth: 752,
    hipGirth: 1034,
    bustPointWidth: 190,
    sideNeckToBustPoint: 268,
  }),
  pattern: {
    name: "Test pattern",
    chart: {
      sizes: BUSTS.map((bust, index) => ({ label: String(6 + 2 * index), bust, waist: bust - 180, hip: bust + 60 })),
      draftedDifference: 50,
      cups: [
        { label: "B", difference: 50 },
        { label: "C", difference: 75 },
        { label: "D", difference: 100 },
      ],
    },
    ease: { bust: 80, waist: 40, hip: 50 },
    length: "hip",
    closure: { place: "centreBack", belowWaist: 180 },
    style: "sideDart",
    strap: "wide",
  },
  easeWanted: {},
  picks: {},
  alterations: [],
  unread: {},
};

export const withAlterations = (...alterations: readonly Alteration[]): Work => ({ ...testWork, alterations });

export function planOf(work: Work): Plan {
  const plan = derivePlan(work);
  if (!plan.ok) throw new Error(JSON.stringify(plan.failure));
  return plan.value;
}

export function dartIn(plan: Plan, piece: PieceName, dart: DartName): PlannedDart {
  const found = plan.left.darts.find(({ ref }) => ref.piece === piece && ref.dart === dart);
  if (found === undefined) throw new Error(`no ${dart} on ${piece}`);
  return found;
}

export { ref } from "./dartRef";
