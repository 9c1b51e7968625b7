import { useState } from "react";
import { HALVES } from "../../core/decisions/alteration";
import { bodyOf, measuresOf } from "../../core/measures/tape";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { Surety } from "../../core/sureness/surety";
import type { Chance } from "../../core/sureness/howSure";
import type { CupPick } from "../../core/sizing/sizing";
import { chanceNote, cupSum, cupVersionsSentence, marginSentence } from "../../words/blend";
import { CUP_AS_BOTH, HALF_CUP_HEAD, HALF_CUP_NOTE, halfCupLabel } from "../../words/halves";
import { formatLength } from "../../words/terms/length";
import { useRun } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { LengthText } from "../fields/LengthText";
import { Select } from "../fields/Select";
import { Sum } from "../fields/Sum";
import { Pick } from "./Pick";
import { Strip } from "./Strip";
import { chanceOf, sizingGirths } from "./chances";
import * as say from "../../words/blendStep";
import { Sentence } from "../fields/Sentence";

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
      title={say.cup}
      answer={pick.label === null ? say.asDrafted : `Version ${pick.label}`}
      surety={surety}
      pick="cup"
      own={own}
      planners={plannersCup === null ? null : `version ${plannersCup}`}
    >
      {pick.difference === null ? (
        <p>
          <Sentence text={say.noUpperChest} parts={{ measure: <a href="#tape">{say.measureIt}</a> }} />
        </p>
      ) : (
        <p>
          <Sentence text={say.bustLarger} parts={{ amount: <LengthText mm={pick.difference} /> }} />{" "}
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
        question={pick.label === null ? say.whyNoCupVersion : say.whyThis(pick.label)}
        lines={cupSum(pick, measuresOf(work.tapes).bustGirth ?? 0, work.unit)}
        {...(margin === null
          ? {}
          : {
              note: chanceNote(sizingGirths(body), work.unit),
            })}
      />
      {cups.length > 0 && pick.label !== null && (
        <Select
          label={say.takeAnotherCup}
          value={pick.label}
          options={cups.map((cup) => ({
            value: cup.label,
            label: say.forADifferenceOf(cup.label, formatLength(cup.difference, work.unit)),
          }))}
          onChange={(cup) => run({ kind: "setPick", picks: { cup } })}
        />
      )}
      {cups.length > 0 && pick.label !== null && <HalfCups work={work} />}
    </Pick>
  );
}

const AS_BOTH = "";

/** Another cup on one half: breasts are seldom alike. */
function HalfCups({ work }: { readonly work: Work }) {
  const run = useRun();
  const { halfCups } = work.picks;
  const { cups } = work.pattern.chart;
  const [open] = useState(halfCups !== undefined);
  return (
    <details className="half-cups" open={open}>
      <summary>{HALF_CUP_HEAD}</summary>
      <div className="field-row">
        {HALVES.map((half) => (
          <Select
            key={half}
            label={halfCupLabel(half)}
            value={halfCups?.[half] ?? AS_BOTH}
            options={[{ value: AS_BOTH, label: CUP_AS_BOTH }, ...cups.map(({ label }) => ({ value: label, label }))]}
            onChange={(cup) =>
              run(
                cup === AS_BOTH
                  ? { kind: "clearPick", pick: "halfCups", half }
                  : { kind: "setPick", picks: { halfCups: { [half]: cup } } },
              )
            }
          />
        ))}
      </div>
      <p className="field-hint">{HALF_CUP_NOTE}</p>
    </details>
  );
}
