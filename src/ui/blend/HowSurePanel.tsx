import "./sure.css";
import { bodyOf } from "../../core/measures/tape";
import type { Work } from "../../core/decisions/work";
import type { HowSure } from "../../core/sureness/howSure";
import type { NextMeasure } from "../../core/sureness/nextMeasure";
import {
  besideLikeliestSentence,
  bustDoneSentence,
  chestBaseSizeSentence,
  cupSentence,
  doubtedLinesSentence,
  linesSentence,
  nextWords,
  NOTHING_NEXT,
  runnerUpWords,
  SURE_NOTE,
  sureBars,
  sureSum,
  sizeSentence,
  type SureBars,
} from "../../words/sure";
import { useRun } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { Sum } from "../fields/Sum";
import * as say from "../../words/blendStep";

export interface HowSurePanelProps {
  readonly work: Work;
  readonly sure: HowSure;
  readonly next: readonly NextMeasure[] | null;
}

/** How far the measures settle the picks, what else they could be, and what to measure next. */
export function HowSurePanel({ work, sure, next }: HowSurePanelProps) {
  const { unit, pattern } = work;
  const sentences = [
    sizeSentence(sure),
    chestBaseSizeSentence(sure),
    cupSentence(sure),
    bustDoneSentence(sure),
    besideLikeliestSentence(sure),
    linesSentence(sure.lines, unit),
    doubtedLinesSentence(sure),
  ].filter((one) => one !== null);
  return (
    <section className="sure" aria-label={say.howSureThisIs}>
      <NextToTake next={next} hasCups={pattern.chart.cups.length > 0} unit={unit} />
      <details>
        <summary>
          <h3>{say.howSureThisIs}</h3>
        </summary>
        <div className="sure-inside">
          {sentences.map((sentence, at) => (
            <p key={sentence} className={at === 0 ? "sure-first" : undefined}>
              <Fractions text={sentence} />
            </p>
          ))}
          {sureBars(sure).map((chart) => (
            <Bars key={chart.caption} chart={chart} />
          ))}
          <RunnerUp sure={sure} />
          {sure.doubted.length === 0 && (
            <Sum question={say.whyNoSurer} lines={sureSum(sure, bodyOf(work.tapes), unit)} note={SURE_NOTE} />
          )}
        </div>
      </details>
    </section>
  );
}

/** The planner's own way is solid, the others hatched. */
function Bars({ chart }: { readonly chart: SureBars }) {
  return (
    <figure className="sure-bars">
      <figcaption>{chart.caption}</figcaption>
      <ol>
        {chart.bars.map(({ label, chance, said, picked }) => (
          <li key={label} data-picked={picked ? "" : undefined}>
            <span className="sure-label">{label}</span>
            <span className="sure-track" aria-hidden="true">
              <span style={{ inlineSize: `${(100 * chance).toFixed(1)}%` }} />
            </span>
            <span className="sure-said">{said}</span>
          </li>
        ))}
      </ol>
    </figure>
  );
}

/** The likeliest other way, one tap away. */
function RunnerUp({ sure }: { readonly sure: HowSure }) {
  const run = useRun();
  const { runnerUp } = sure;
  const words = runnerUpWords(sure);
  if (runnerUp === null || words === null) return null;
  const { size: baseSize, cup } = runnerUp;
  return (
    <p>
      <button
        type="button"
        className="link-button"
        onClick={() => run({ kind: "setPick", picks: cup === null ? { baseSize } : { baseSize, cup } })}
      >
        {words}
      </button>
    </p>
  );
}

interface NextToTakeProps {
  readonly next: readonly NextMeasure[] | null;
  readonly hasCups: boolean;
  readonly unit: Work["unit"];
}

function NextToTake({ next, hasCups, unit }: NextToTakeProps) {
  if (next === null) return null;
  const first = next[0];
  if (first === undefined) return <p className="follows">{NOTHING_NEXT}</p>;
  const { ask, why } = nextWords(first, hasCups, unit);
  return (
    <p className="follows">
      <a href="#tape">{ask}</a>: <Fractions text={why} />
    </p>
  );
}
