import type { FitName } from "../../core/decisions/fitNames";
import { useCallback, useEffect, useId, useMemo, useRef, useState } from "react";
import { tryOnOther } from "../../core/plan/halfEdit";
import { otherHalf, type Half } from "../../core/decisions/alteration";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import { FIT_WORDS } from "../../words/alterations/index";
import { fitAmountLabel } from "../../words/fits";
import { anotherWayWords, ON_WHICH_HALF, WHICH_HALVES } from "../../words/halves";
import { fitUse } from "../../words/fitStep";
import { refusedSentence } from "../../words/doubts";
import { alterationFailureSentence } from "../../words/planned";
import { leftOutBy } from "../../core/plan/leftOutBy";
import { useRun } from "../session/useWork";
import { useRunAll } from "../session/useRunAll";
import { useViewState } from "../session/viewState";
import { snapStep } from "../../core/plan/dartEdit";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { amountCommand, halvesCommands, halvesAsked, useOn, usesOf, type Halves } from "../../core/plan/fitEdit";
import * as say from "../../words/fitStep";
import { Fractions } from "../fields/Fractions";

export interface FitRowProps {
  readonly fit: FitName;
  readonly plan: Plan;
  readonly work: Work;
}

/** One fit alteration: what is seen, and once opened how much of it and on which half. */
export function FitRow({ fit, plan, work }: FitRowProps) {
  const id = useId();
  const [isOpen, setOpen] = useState(false);
  const open = useCallback(() => setOpen(true), []);
  const words = FIT_WORDS[fit];
  const uses = usesOf(work, fit);
  const isSought = useViewState((view) => view.sought === fit);
  const isRefused = uses.some((use) => refusalOf(plan, use.id) !== null);
  return (
    <li className="fit" data-used={uses.length > 0 ? "" : undefined} data-refused={isRefused ? "" : undefined}>
      <button
        type="button"
        className="fit-face"
        aria-expanded={isOpen || isSought}
        aria-controls={`${id}-body`}
        onClick={() => setOpen(!isOpen)}
      >
        <span className="fit-name">{words.name}</span>
        {uses.length > 0 && (
          <span className="fit-use">
            <span className="visually-hidden">{say.inUse}</span>
            <Fractions text={fitUse(uses, work.unit)} />
            {isRefused && say.leftOut}
          </span>
        )}
        <span className="fit-seen">{words.seen}</span>
      </button>
      <div id={`${id}-body`} className="fit-body" hidden={!(isOpen || isSought)}>
        {(isOpen || isSought) && <FitControls fit={fit} plan={plan} work={work} onFound={open} />}
      </div>
    </li>
  );
}

function refusalOf(plan: Plan, id: string) {
  const outcome = plan.ledger.find((planned) => planned.id === id)?.outcome;
  return outcome === undefined || outcome.ok ? null : outcome.failure;
}

function FitControls({ fit, plan, work, onFound }: FitRowProps & { readonly onFound: () => void }) {
  const { unit } = work;
  const run = useRun();
  const runAll = useRunAll();
  const showHalf = useViewState((view) => view.showHalf);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const uses = usesOf(work, fit);
  const [first] = uses;
  const [asked, setAsked] = useState<Halves>(first === undefined ? "both" : halvesAsked(first));
  // After an undo what is asked for may stand elsewhere; a half that holds nothing is shown only while she asks for it.
  // What is made on both is spoken of as both.
  const isWhole = uses.some(({ half }) => half === undefined);
  const halves = isWhole ? "both" : asked === "both" && first !== undefined ? halvesAsked(first) : asked;
  const use = useOn(uses, fit, halves);
  const words = FIT_WORDS[fit];
  const failure = refusalOf(plan, use.id);
  const crowded = useMemo(() => leftOutBy(work, use.id), [work, use.id]);

  const body = useRef<HTMLDivElement>(null);
  const half = useViewState((view) => view.half);
  const isSought = useViewState((view) => view.sought === fit);
  const seek = useViewState((view) => view.seek);
  // Asked for from elsewhere: the field of that half is shown, and has the keys.
  if (isSought && asked !== half) setAsked(half);
  useEffect(() => {
    if (!isSought || asked !== half) return;
    body.current?.querySelector("input")?.focus();
    onFound();
    seek(null);
  }, [isSought, seek, onFound, asked, half]);

  const tryOn = (id: string, on: Half): void => {
    runAll(tryOnOther(work, id, on));
    showHalf(on);
    seek(fit);
  };
  const setHalves = (to: Halves): void => {
    const commands = halvesCommands(uses, fit, halves, to);
    setAsked(to);
    if (commands.length > 0) runAll(commands);
    if (to !== "both") showHalf(to);
  };

  return (
    <>
      <div className="fit-controls" ref={body}>
        <AmountField
          key={halves}
          label={fitAmountLabel(fit, halves === "both" ? undefined : halves)}
          // By what it is, since an id can be as long as a key may be.
          field={`fit.fit-${fit}${halves === "both" ? "" : `-${halves}`}`}
          value={use.amount}
          unit={unit}
          step={snapStep(unit)}
          set={(amount) => [amountCommand(use, amount)]}
          onStart={() => lightAlteration(use.id)}
          refusal={failure === null ? null : alterationFailureSentence(failure, unit)}
          {...(words.hint === undefined ? {} : { hint: words.hint })}
        />
        <Choice legend={ON_WHICH_HALF} options={WHICH_HALVES} value={halves} onChange={setHalves} />
      </div>
      {crowded.map((planned) => (
        <p key={planned.id} className="field-warning">
          <Fractions text={refusedSentence(planned, unit) ?? ""} />
        </p>
      ))}
      {words.caution !== undefined && <p className="field-warning">{words.caution}</p>}
      {halves === "both" && use.amount !== 0 && (
        <p className="fit-actions">
          <button type="button" className="link-button" onClick={() => tryOn(use.id, otherHalf(half))}>
            {anotherWayWords(otherHalf(half))}
          </button>
        </p>
      )}
      {use.amount !== 0 && (
        <p className="fit-actions">
          <button type="button" className="link-button" onClick={() => lightAlteration(use.id)}>
            {say.showItOnTheTable}
          </button>
          <button
            type="button"
            className="link-button"
            aria-label={say.takeOutOf(words.name)}
            onClick={() => run(amountCommand(use, 0))}
          >
            {say.takeOut}
          </button>
        </p>
      )}
    </>
  );
}
