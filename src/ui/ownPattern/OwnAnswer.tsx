import { useMemo } from "react";
import { easeFound } from "../../core/nest/easeFound";
import { basquesLeft, stillToSay, type StepToSay, type ToSay } from "../../core/ownPieces/stillToSay";
import { OWN_CORNERS } from "../../core/decisions/ownPattern";
import { withCup, withInUse } from "../../core/plan/ownEdit";
import {
  answerSentence,
  basquesLeftSentence,
  cupChoiceWords,
  easeSentence,
  missingWords,
  onlySentences,
  OWN_WORDS,
  stepWords,
} from "../../words/ownPattern";
import { Fractions } from "../fields/Fractions";
import { useRun, useSettledWork } from "../session/useWork";
import { sectionOf } from "./OwnSection";
import { useOwnView } from "./ownView";
import { useEditOwn, type OwnAndReading } from "./useOwn";

/** The answer first: what the plan is made on, or what is still to be said before it can be. */
export function OwnAnswer({ own, reading }: OwnAndReading) {
  const unit = useSettledWork((work) => work.unit);
  const pattern = useSettledWork((work) => work.pattern);
  const { chart } = pattern;
  const edit = useEditOwn();
  const run = useRun();
  const steps = useMemo(() => stillToSay(own, pattern, reading), [own, pattern, reading]);
  const isWhole = steps.every(({ missing }) => missing.length === 0);
  const nest = isWhole ? reading.nest : null;
  const basques = useMemo(() => basquesLeft(own, pattern, reading), [own, pattern, reading]);
  const ease = useMemo(() => (nest === null ? [] : easeFound(nest, pattern)), [nest, pattern]);
  const said = easeSentence(ease, unit);
  return (
    <div className="own-answer note" data-in-use={own.inUse === true && nest !== null ? "" : undefined}>
      {nest !== null && (
        <>
          <p className="own-pieces-said">
            <strong>{answerSentence(nest)}</strong>
            {said !== null && (
              <>
                {" "}
                <Fractions text={said} />
              </>
            )}
          </p>
          {onlySentences(nest, chart.cups.length, chart.sizes.length).map((sentence) => (
            <p key={sentence} className="aside">
              {sentence}
            </p>
          ))}
        </>
      )}
      {basques.length > 0 && (
        <div className="own-basques">
          <p>{basquesLeftSentence(basques)}</p>
          <button type="button" className="button small" onClick={() => run({ kind: "setLength", length: "hip" })}>
            {OWN_WORDS.toHip}
          </button>
        </div>
      )}
      {!isWhole && <StepList reading={reading} own={own} steps={steps} />}
      {own.inUse === true ? (
        <button type="button" className="button small" onClick={() => edit((now) => withInUse(now, false))}>
          {OWN_WORDS.standIn}
        </button>
      ) : (
        nest !== null && (
          <button type="button" className="button main" onClick={() => edit((now) => withInUse(now, true))}>
            {OWN_WORDS.use}
          </button>
        )
      )}
    </div>
  );
}

interface StepListProps extends OwnAndReading {
  readonly steps: readonly StepToSay[];
}

/** All that there is to say, in its order: what is done, what is next, and what is known of the rest. */
function StepList({ reading, own, steps }: StepListProps) {
  const unit = useSettledWork((work) => work.unit);
  const lead = useLead(reading);
  return (
    <>
      <h4>{OWN_WORDS.missing}</h4>
      <ol className="own-steps">
        {steps.map(({ step, state, missing }) => (
          <li key={step} data-state={state} aria-current={state === "next" ? "step" : undefined}>
            {missing.length === 0 ? (
              <span>
                {state === "done" && <span className="visually-hidden">{OWN_WORDS.done} </span>}
                <Fractions text={stepWords(step, state === "done", { own, reading, unit })} />
              </span>
            ) : (
              <ul className="own-missing">
                {missing.map((one) => {
                  const { text } = missingWords(one, unit);
                  return (
                    <li key={text}>
                      {one.code === "missing/chart" ? (
                        <a href="#envelope">
                          <Fractions text={text} />
                        </a>
                      ) : (
                        <button type="button" className="link-button" onClick={() => lead(one)}>
                          <Fractions text={text} />
                        </button>
                      )}
                      {one.code === "missing/cup" && <CupChoice proposed={one.proposed} />}
                    </li>
                  );
                })}
              </ul>
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

/** Said by one tap; the one that stands in the file first. */
function CupChoice({ proposed }: { readonly proposed: string | null }) {
  const cups = useSettledWork((work) => work.pattern.chart.cups);
  const edit = useEditOwn();
  const ordered = cups.toSorted((a, b) => Number(b.label === proposed) - Number(a.label === proposed));
  return (
    <span className="actions">
      {ordered.map(({ label }) => (
        <button
          key={label}
          type="button"
          className={label === proposed ? "button small main" : "button small"}
          onClick={() => edit((now) => withCup(now, label))}
        >
          {cupChoiceWords(label)}
        </button>
      ))}
    </span>
  );
}

/** Leads to where that is said: opens its part, and for a corner its piece, and begins to point. */
function useLead(reading: OwnAndReading["reading"]): (missing: ToSay) => void {
  const unit = useSettledWork((work) => work.unit);
  const open = useOwnView((view) => view.open);
  const look = useOwnView((view) => view.look);
  const point = useOwnView((view) => view.point);
  const showSize = useOwnView((view) => view.showSize);
  return (missing) => {
    const { where, piece: name } = missingWords(missing, unit);
    const section = sectionOf(where);
    if (section === null) return;
    open(section, true);
    const piece = name === null ? undefined : reading.pieces.find(({ said }) => said.name === name);
    if (piece !== undefined) {
      look(piece.id);
      if (missing.code === "missing/problem" && missing.problem.size !== "") showSize(missing.problem.size);
      const corner = cornerOf(missing);
      if (missing.code === "missing/bust-point") point({ for: "bustPoint", piece: piece.id });
      else if (corner !== undefined) point({ for: "corner", piece: piece.id, corner });
    }
    // Once it is on the page.
    requestAnimationFrame(() => {
      const place = document.querySelector<HTMLElement>(
        piece === undefined ? `[data-section="${section}"]` : `[data-piece="${CSS.escape(piece.id)}"]`,
      );
      place?.scrollIntoView({ block: "start" });
      place?.querySelector<HTMLElement>("select, input, button, summary")?.focus({ preventScroll: true });
    });
  };
}

function cornerOf(missing: ToSay) {
  const name =
    missing.code === "missing/corner"
      ? missing.corner
      : missing.code === "missing/problem" && missing.problem.code === "own/corner-missing"
        ? missing.problem.corner
        : null;
  return OWN_CORNERS.find((corner) => corner === name);
}
