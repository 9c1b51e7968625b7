import { planOf } from "../../core/plan/planOf";
import "./blend.css";
import { isFrontPiece } from "../../core/pattern/pieceGroups";
import { useMemo } from "react";
import type { Plan } from "../../core/plan/plan";
import type { Picks } from "../../core/decisions/decided";
import type { Work } from "../../core/decisions/work";
import { openDoubts } from "../../core/bodies/tapeDoubts";
import { withDoubts } from "../../core/sureness/doubtedPicks";
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
import { PrintedDarts } from "./PrintedDarts";
import { ProposalLines } from "./ProposalLines";
import * as say from "../../words/blendStep";

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
        <h2>{say.blend}</h2>
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
  const doubts = useMemo(() => openDoubts(work), [work]);
  const known = useMemo(() => howSure(work), [work]);
  const sure = useMemo(() => (known.ok ? withDoubts(known.value, doubts) : null), [known, doubts]);
  // What is doubted is settled before anything else is measured again.
  const next = useMemo(() => (doubts.length > 0 ? null : nextMeasure(work)), [work, doubts]);
  const chances = sure ?? { sizes: [], cups: [] };
  const surety = sure?.surety ?? null;
  return (
    <>
      <div className="picks">
        <BaseSizePickView
          work={work}
          pick={sizing.baseSize}
          sizes={chances.sizes}
          surety={surety?.baseSize ?? null}
          own={own("baseSize")}
          planners={planners}
        />
        <CupPickView
          work={work}
          pick={sizing.cup}
          cups={chances.cups}
          surety={surety?.cup ?? null}
          own={own("cup")}
          planners={planners}
        />
        <BustPickView
          work={work}
          sizing={sizing}
          surety={surety?.bust ?? null}
          own={own("bustAlteration")}
          planners={planners}
        />
        {plan.levels.map((level) =>
          level.level === "bust" ? null : (
            <LevelPickView
              key={level.level}
              work={work}
              level={level}
              name={level.level}
              line={plan.left.cutLines.find((line) => line.level === level.level && isFrontPiece(line.piece))}
              surety={surety?.[level.level] ?? null}
              own={own(level.level)}
              planners={planners?.levels.find((other) => other.level === level.level) ?? null}
              granted={level.level === "waist" ? <PrintedDarts work={work} plan={plan} /> : null}
            />
          ),
        )}
      </div>
      {sure !== null && <HowSurePanel work={work} sure={sure} next={next} />}
      <Alternatives sizing={sizing} />
      <ProposalLines plan={plan} work={work} />
    </>
  );
}
