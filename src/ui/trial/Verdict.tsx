import type { Trial } from "../../core/decisions/trial";
import { LIMITS } from "../../core/decisions/limits";
import { decidedIn } from "../../core/plan/trialCommands";
import { isSame } from "../../core/same";
import {
  BASE_ABOUT,
  BASE_AS_SEWN,
  BASE_KEPT,
  BASE_TAKE,
  REOPEN,
  VERDICT_TITLE,
  verdictWords,
} from "../../words/trialStep";
import { TRIAL_VERDICTS } from "../../core/decisions/trial";
import { TextField } from "../fields/TextField";
import { useRun, useSettledWork } from "../session/useWork";
import { trialField } from "./trialFields";
import * as say from "../../words/trialStep";

/** Keep it or try again, and why: that closes the trial. */
export function Verdict({ trial }: { readonly trial: Trial }) {
  const run = useRun();
  const { id, verdict, base } = trial;
  // Of the newest alone: a later one was sewn by what was decided since.
  const isChanged = useSettledWork((work) => work.trials?.[0]?.id === id && !isSame(decidedIn(work), trial.sewn));
  return (
    <section className="trial-verdict" aria-label={VERDICT_TITLE}>
      <h3>{VERDICT_TITLE}</h3>
      <div className="actions">
        {TRIAL_VERDICTS.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={verdict === one}
            onClick={() => run({ kind: "setVerdict", trial: id, verdict: one })}
          >
            {verdictWords(one)}
          </button>
        ))}
        {verdict !== undefined && (
          <button
            type="button"
            className="link-button"
            onClick={() => run({ kind: "setVerdict", trial: id, verdict: null })}
          >
            {REOPEN}
          </button>
        )}
      </div>
      <TextField
        label={say.because}
        className="field trial-because"
        field={trialField(trial, "because")}
        value={trial.because ?? ""}
        maxLength={LIMITS.text}
        set={(text) => ({ kind: "setTrialText", trial: id, of: "because", text })}
        clear={{ kind: "setTrialText", trial: id, of: "because", text: null }}
      />
      {verdict === "keep" && (
        <div className="trial-base" data-kept={base === true ? "" : undefined}>
          <p>
            {base === true ? BASE_KEPT : BASE_ABOUT} {isChanged && BASE_AS_SEWN}
          </p>
          <button
            type="button"
            className={base === true ? "link-button" : "button main"}
            onClick={() => run({ kind: "setBase", trial: id, isBase: base !== true })}
          >
            {base === true ? say.itIsNoBase : BASE_TAKE}
          </button>
        </div>
      )}
    </section>
  );
}
