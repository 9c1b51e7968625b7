import type { Picks } from "../../core/decisions/decided";
import { capital } from "../../words/terms/names";
import type { PlanFailureWords } from "../../words/plan";
import { usePageState } from "./pageState";
import { useRun } from "./useWork";
import * as say from "../../words/failureNote";

const PICK_WORDS: Readonly<Record<keyof Picks, string>> = {
  baseSize: "frame",
  cup: say.cupVersion,
  halfCups: say.cupVersionOfOneHalf,
  waist: say.waistLine,
  hip: say.hipLine,
  bustAlteration: say.bustAlteration,
};

const PICK_NAMES = ["baseSize", "cup", "halfCups", "bustAlteration", "waist", "hip"] as const;

export interface FailureNoteProps {
  readonly words: PlanFailureWords;
  /** Where the wearer's own picks may be the reason, they can be dropped right here. */
  readonly picks?: Picks;
}

/** Why there is no plan yet, and the way to what is missing. */
export function FailureNote({ words, picks = {} }: FailureNoteProps) {
  const step = usePageState((page) => page.step);
  const run = useRun();
  return (
    <div className="note doubt" role="status">
      <h3>{words.title}</h3>
      <p>{words.text}</p>
      {words.where !== step && (
        <p>
          <a className="button" href={`#${words.where}`}>
            {say.goTo(capital(words.where))}
          </a>
        </p>
      )}
      {PICK_NAMES.filter((pick) => picks[pick] !== undefined).map((pick) => (
        <p key={pick}>
          <button type="button" className="link-button" onClick={() => run({ kind: "clearPick", pick })}>
            {say.dropYourOwn(PICK_WORDS[pick])}
          </button>
        </p>
      ))}
    </div>
  );
}
