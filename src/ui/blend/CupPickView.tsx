import { bodyOf, measuresOf } from "../../core/measures/tape";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { Surety } from "../../core/sureness/surety";
import type { Chance } from "../../core/sureness/howSure";
import type { CupPick } from "../../core/sizing/sizing";
import { chanceNote, cupSum, cupVersionsSentence, marginSentence } from "../../words/blend";
import { formatLength } from "../../words/terms/length";
import { useRun } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { LengthText } from "../fields/LengthText";
import { Select } from "../fields/Select";
import { Sum } from "../fields/Sum";
import { Pick } from "./Pick";
import { Strip } from "./Strip";
import { chanceOf, sizingGirths } from "./chances";

export interface CupPickViewProps {
  readonly work: Work;
  readonly pick: CupPick;
  /** How likely each cup is. */
  readonly cups: readonly Chance[];
  readonly surety: Surety | null;
  readonly own: boolean;
  readonly planners: Plan | null;
}

export function CupPickView({ work, pick, cups: chances, surety, own, planners }: CupPickViewProps) {
  const run = useRun();
  const { cups } = work.pattern.chart;
  const body = bodyOf(work.tapes);
  const margin = own || surety === "doubted" ? null : marginSentence(pick, chanceOf(chances, pick.runnerUp), work.unit);
  const plannersCup = planners?.sizing.cup.label ?? null;
  return (
    <Pick
      title="Cup"
      answer={pick.label === null ? "as drafted" : `Version ${pick.label}`}
      surety={surety}
      pick="cup"
      own={own}
      planners={plannersCup === null ? null : `version ${plannersCup}`}
    >
      {pick.difference === null ? (
        <p>
          There is no upper chest on the tape, so your cup cannot be told. <a href="#tape">Measure it</a>: it makes the
          most difference of all.
        </p>
      ) : (
        <p>
          Your bust is <LengthText mm={pick.difference} /> larger than your upper chest.{" "}
          {cups.length > 0 && <Fractions text={cupVersionsSentence(cups, work.unit)} />}
        </p>
      )}
      {cups.length > 0 && pick.difference !== null && (
        <Strip
          ticks={cups.map((cup) => ({ label: cup.label, at: cup.difference }))}
          mark={pick.difference}
          {...(pick.label === null ? {} : { picked: pick.label })}
        />
      )}
      {margin !== null && (
        <p className="pick-margin">
          <Fractions text={margin} />
        </p>
      )}
      <Sum
        question={pick.label === null ? "Why no cup version?" : `Why ${pick.label}?`}
        lines={cupSum(pick, measuresOf(work.tapes).bustGirth ?? 0, work.unit)}
        {...(margin === null
          ? {}
          : {
              note: chanceNote(sizingGirths(body), work.unit),
            })}
      />
      {cups.length > 0 && pick.label !== null && (
        <Select
          label="Take another cup"
          value={pick.label}
          options={cups.map((cup) => ({
            value: cup.label,
            label: `${cup.label}, for a difference of ${formatLength(cup.difference, work.unit)}`,
          }))}
          onChange={(cup) => run({ kind: "setPick", picks: { cup } })}
        />
      )}
    </Pick>
  );
}
