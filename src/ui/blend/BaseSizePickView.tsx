import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { Surety } from "../../core/sureness/surety";
import { bodyOf } from "../../core/measures/tape";
import type { Chance } from "../../core/sureness/howSure";
import type { BaseSizePick } from "../../core/sizing/sizing";
import { formatAmount, formatLength } from "../../words/terms/length";
import { chanceNote, baseSizeSum, marginSentence } from "../../words/blend";
import { useRun } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { Select } from "../fields/Select";
import { Sum } from "../fields/Sum";
import { Pick } from "./Pick";
import { Strip } from "./Strip";
import { chanceOf, sizingGirths } from "./chances";
import * as say from "../../words/blendStep";
import { Sentence } from "../fields/Sentence";

export interface BaseSizePickViewProps {
  readonly work: Work;
  readonly pick: BaseSizePick;
  /** How likely each size is. */
  readonly sizes: readonly Chance[];
  readonly surety: Surety | null;
  readonly own: boolean;
  readonly planners: Plan | null;
}

export function BaseSizePickView({ work, pick, sizes, surety, own, planners }: BaseSizePickViewProps) {
  const run = useRun();
  const { chart } = work.pattern;
  const row = chart.sizes[pick.index];
  // The chart speaks of busts; looked up by the upper chest, each size stands at its bust less what it is drafted for.
  const drafted = row === undefined ? 0 : row.bust - pick.chartValue;
  // How near another size was says nothing of a base size that the wearer took herself, or by a reading that is doubted.
  const margin = own || surety === "doubted" ? null : marginSentence(pick, chanceOf(sizes, pick.runnerUp), work.unit);
  return (
    <Pick
      title={say.frame}
      answer={`Size ${pick.label}`}
      surety={surety}
      pick="baseSize"
      own={own}
      planners={planners === null ? null : `size ${planners.sizing.baseSize.label}`}
    >
      <p>
        {say.cutOnLine(pick.label, own ? null : pick.byBust ? "bust" : "both")}
        {pick.beyond > 0 && (
          <>
            {" "}
            <b>
              <Sentence
                text={say.beyondChart}
                parts={{ amount: <Fractions text={formatAmount(pick.beyond, work.unit)} /> }}
              />
            </b>
          </>
        )}
      </p>
      <Strip
        ticks={chart.sizes.map((size) => ({ label: size.label, at: size.bust - drafted }))}
        mark={pick.lookedUp}
        covers={[pick.from, pick.to]}
        picked={pick.label}
      />
      {margin !== null && (
        <p className="pick-margin">
          <Fractions text={margin} />
        </p>
      )}
      <Sum
        question={say.whyThis(pick.label)}
        lines={baseSizeSum(pick, drafted, work.unit)}
        note={chanceNote(sizingGirths(bodyOf(work.tapes)), work.unit)}
      />
      <Select
        label={say.takeAnotherFrame}
        value={pick.label}
        options={chart.sizes.map((size) => ({
          value: size.label,
          label: say.frameChoice(
            size.label,
            pick.byBust ? "bust" : "chest",
            formatLength(size.bust - drafted, work.unit),
          ),
        }))}
        onChange={(baseSize) => run({ kind: "setPick", picks: { baseSize } })}
      />
    </Pick>
  );
}
