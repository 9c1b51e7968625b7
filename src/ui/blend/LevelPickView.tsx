import type { ReactNode } from "react";
import type { CutLine, PlannedLevel } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { Surety } from "../../core/sureness/surety";
import { EXTRAPOLATION_STEPS, READS_AS_NOTHING } from "../../core/tolerance";
import { followsSentence, levelSum, lineSentence, shareWords, shortShareWords } from "../../words/blend";
import { capital } from "../../words/terms/names";
import { useWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { Slider } from "../fields/Slider";
import { Sum } from "../fields/Sum";
import { Pick } from "./Pick";
import { Strip } from "./Strip";
import * as say from "../../words/blendStep";

export interface LevelPickViewProps {
  readonly work: Work;
  readonly level: PlannedLevel;
  readonly name: "waist" | "hip";
  readonly line: CutLine | undefined;
  readonly surety: Surety | null;
  readonly own: boolean;
  readonly planners: PlannedLevel | null;
  /** What it takes for granted of her tissue; null: nothing. */
  readonly granted: ReactNode;
}

/** A twentieth of a step: finer than a pencil line between two printed ones. */
const STEP = 0.05;

/** The two lines a fractional size lies between, and the share of the way. */
function placeBetween(
  size: number,
  labels: readonly string[],
): { readonly between: readonly [string, string]; readonly share: number } {
  const lower = Math.min(Math.max(Math.floor(size), 0), labels.length - 2);
  return { between: [labels[lower] ?? "", labels[lower + 1] ?? ""], share: size - lower };
}

export function LevelPickView({ work, level, name, line, surety, own, planners, granted }: LevelPickViewProps) {
  const labels = work.pattern.chart.sizes.map((size) => size.label);
  const gap = level.finished - level.target;
  return (
    <Pick
      title={capital(name)}
      answer={capital(shortShareWords(level.between, level.share))}
      surety={surety}
      pick={name}
      own={own}
      planners={planners === null ? null : say.theLine(shareWords(planners.between, planners.share))}
    >
      <p>
        <Fractions text={lineSentence(level, line, work.unit)} />
      </p>
      {level.extrapolated && (
        <p className="pick-margin doubt">
          <span className="tag doubt">{say.pastThePrintedLines}</span> {say.pastLinesAbout}
        </p>
      )}
      <Strip
        ticks={labels.map((label, at) => ({ label, at }))}
        mark={level.size}
        reach={[-EXTRAPOLATION_STEPS, labels.length - 1 + EXTRAPOLATION_STEPS]}
        {...(level.share === 0 ? { picked: level.between[0] } : {})}
      >
        <LinePosition name={name} size={level.size} labels={labels} />
      </Strip>
      {own && Math.abs(gap) >= READS_AS_NOTHING && (
        <p className="follows">
          <Fractions text={followsSentence(level, work.unit)} />
        </p>
      )}
      {granted}
      <Sum question={say.whyThisLine} lines={levelSum(level, work.unit)} />
    </Pick>
  );
}

interface LinePositionProps {
  readonly name: "waist" | "hip";
  readonly size: number;
  readonly labels: readonly string[];
}

/** Slides the line along the printed ones. */
function LinePosition({ name, size, labels }: LinePositionProps) {
  const picked = useWork((work) => work.picks[name]) ?? size;
  const { between, share } = placeBetween(picked, labels);
  return (
    <label className="line-position">
      <span className="field-label">{say.setTheLineYourself(name)}</span>
      <Slider
        min={-EXTRAPOLATION_STEPS}
        max={labels.length - 1 + EXTRAPOLATION_STEPS}
        step={STEP}
        value={picked}
        valueText={shareWords(between, share)}
        set={(at) => [{ kind: "setPick", picks: { [name]: Math.round(at / STEP) * STEP } }]}
      />
    </label>
  );
}
