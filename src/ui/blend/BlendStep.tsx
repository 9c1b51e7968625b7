import { planOf } from "../../core/plan/planOf";
import "./blend.css";
import { isFrontPiece } from "../../core/pattern/pieceGroups";
import { useMemo } from "react";
import type { Plan } from "../../core/plan/plan";
import type { Picks, Work } from "../../core/decisions/work";
import { howSure } from "../../core/sureness/howSure";
import { nextMeasure } from "../../core/sureness/nextMeasure";
import { planFailureWords } from "../../words/plan";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";
import { FailureNote } from "../session/FailureNote";
import { Alternatives } from "./Alternatives";
import { BustPickView } from "./BustPickView";
import { CupPickView } from "./CupPickView";
import { DoubtsHead } from "./DoubtsHead";
import { EaseFields } from "./EaseFields";
import { BaseSizePickView } from "./BaseSizePickView";
import { HowSurePanel } from "./HowSurePanel";
import { LevelPickView } from "./LevelPickView";

/** What the planner itself would pick, all of the wearer's picks laid aside; null where there is no such plan. */
function plannersPlan(work: Work): Plan | null {
  if (Object.keys(work.picks).length === 0) return null;
  const plan = planOf({ ...work, picks: {} });
  return plan.ok ? plan.value : null;
}

export function BlendStep() {
  const work = useSettledWork((current) => current);
  const result = useSettledPlan();
  const planners = useMemo(() => plannersPlan(work), [work]);

  return (
    <>
      <DoubtsHead />
      <header className="step-head">
        <h2>Blend</h2>
        <p>
          One size for the frame, a cup version, and a line of your own between the printed ones at the waist and the
          hip.
        </p>
      </header>
      {result.ok ? (
        <Picked work={work} plan={result.value} planners={planners} />
      ) : (
        <FailureNote
          words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)}
          picks={work.picks}
        />
      )}
      <EaseFields />
    </>
  );
}

interface PickedProps {
  readonly work: Work;
  readonly plan: Plan;
  readonly planners: Plan | null;
}

function Picked({ work, plan, planners }: PickedProps) {
  const own = (pick: keyof Picks): boolean => work.picks[pick] !== undefined;
  const { sizing } = plan;
  const sure = useMemo(() => howSure(work), [work]);
  const next = useMemo(() => nextMeasure(work), [work]);
  const chances = sure.ok ? sure.value : { sizes: [], cups: [] };
  return (
    <>
      {sure.ok && <HowSurePanel work={work} sure={sure.value} next={next} />}
      <div className="picks">
        <BaseSizePickView
          work={work}
          pick={sizing.baseSize}
          sizes={chances.sizes}
          own={own("baseSize")}
          planners={planners}
        />
        <CupPickView work={work} pick={sizing.cup} cups={chances.cups} own={own("cup")} planners={planners} />
        <BustPickView work={work} sizing={sizing} own={own("bustAlteration")} planners={planners} />
        {plan.levels.map((level) =>
          level.level === "bust" ? null : (
            <LevelPickView
              key={level.level}
              work={work}
              level={level}
              name={level.level}
              line={plan.left.cutLines.find((line) => line.level === level.level && isFrontPiece(line.piece))}
              own={own(level.level)}
              planners={planners?.levels.find((other) => other.level === level.level) ?? null}
            />
          ),
        )}
      </div>
      <Alternatives sizing={sizing} />
    </>
  );
}
