import { measuresOf } from "../../core/measures/tape";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { Surety } from "../../core/sureness/surety";
import type { Sizing } from "../../core/sizing/sizing";
import { bustSentence, bustSum } from "../../words/blend";
import { formatSigned } from "../../words/terms/length";
import { useRun } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { Sum } from "../fields/Sum";
import { Pick } from "./Pick";
import * as say from "../../words/blendStep";

export interface BustPickViewProps {
  readonly work: Work;
  readonly sizing: Sizing;
  readonly surety: Surety | null;
  readonly own: boolean;
  readonly planners: Plan | null;
}

export function BustPickView({ work, sizing, surety, own, planners }: BustPickViewProps) {
  const run = useRun();
  const { bust } = sizing;
  return (
    <Pick
      title={say.bust}
      answer={bust.alteration === 0 ? say.noAlteration : <Fractions text={formatSigned(bust.alteration, work.unit)} />}
      surety={surety}
      pick="bustAlteration"
      own={own}
      planners={planners === null ? null : `${formatSigned(planners.sizing.bust.alteration, work.unit)} altogether`}
    >
      <p>
        <Fractions text={bustSentence(bust, work.unit)} />
      </p>
      <Sum question={say.whyThisMuch} lines={bustSum(sizing, measuresOf(work.tapes).bustGirth ?? 0, work.unit)} />
      <LengthField
        label={say.setTheBustAlteration}
        field="pick.bustAlteration"
        value={bust.asked}
        signed
        set={(bustAlteration) => ({ kind: "setPick", picks: { bustAlteration } })}
        hint={say.bustAlterationHint}
      />
      {bust.asked !== 0 && (
        <button
          type="button"
          className="link-button"
          onClick={() => run({ kind: "setPick", picks: { bustAlteration: 0 } })}
        >
          {say.leaveTheBustAsPrinted}
        </button>
      )}
    </Pick>
  );
}
