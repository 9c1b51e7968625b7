import type { Lining } from "../../core/decisions/dress";
import type { DressPlan } from "../../core/dress/dressPlan";
import { snapStep } from "../../core/plan/dartEdit";
import {
  USUAL_BODICE_EASE,
  USUAL_FREE_BELOW,
  USUAL_FREE_BESIDE,
  USUAL_LINING_HIP_EASE,
  USUAL_SHORTER,
} from "../../core/lining/usualLining";
import { without } from "../../core/plan/workParts";
import {
  isLiningDoubt,
  LINED_WORDS,
  linedOf,
  liningFailureWords,
  liningFigures,
  liningNoteWords,
  NOTHING_TO_LINE,
  SHAPING_WORDS,
  SKIRT_LINING_ABOUT,
  type Lined,
} from "../../words/dressLining";
import { usualLength } from "../../words/dressStep";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { useRun, useSettledWork } from "../session/useWork";
import { setLining } from "./dressCommands";
import { DressFigures } from "./DressFigures";
import { DressFoldView } from "./DressFolds";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

const NONE: Lining = {};

const LINED = (["nothing", "bodice", "skirt", "both"] as const).map((value) => ({ value, label: LINED_WORDS[value] }));
const SHAPINGS = (["darts", "pleats"] as const).map((value) => ({ value, label: SHAPING_WORDS[value] }));

/** What is lined; of the skirt's lining what hangs free, and whether it passes over the hips. */
export function LiningFold({ dress }: { readonly dress: DressPlan }) {
  const { lining = NONE, skirt } = useDressDecided();
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const lined = linedOf(lining);
  const draft = dress.lining;
  const made = draft?.ok === true ? draft.value : null;
  const failure = draft?.ok === false ? liningFailureWords(draft.failure, unit) : null;
  const notes = made?.notes ?? [];
  const choose = (value: Lined): void => {
    const others = without(without(lining, "bodice"), "skirt");
    run(
      setLining({
        ...others,
        ...(value === "bodice" || value === "both" ? { bodice: true } : {}),
        ...(value === "skirt" || value === "both" ? { skirt: true } : {}),
      }),
    );
  };
  const amount = { unit, step: snapStep(unit) };
  const linesSkirt = lined === "skirt" || lined === "both";
  return (
    <DressFoldView fold="lining" outcome={LINED_WORDS[lined]} isDoubt={failure !== null || notes.some(isLiningDoubt)}>
      <Choice legend={say.whatIsLined} options={LINED} value={lined} onChange={choose} />
      {linesSkirt && <p className="aside">{skirt === undefined ? NOTHING_TO_LINE : SKIRT_LINING_ABOUT}</p>}
      {lined !== "nothing" && (
        <div className="field-row">
          {lined !== "skirt" && (
            <AmountField
              label={say.moreEaseInLining}
              field="dress.lining.bodiceEase"
              value={lining.bodiceEase}
              otherwise={USUAL_BODICE_EASE}
              set={(bodiceEase) => [setLining({ ...lining, bodiceEase })]}
              clear={() => [setLining(without(lining, "bodiceEase"))]}
              {...amount}
            />
          )}
          {linesSkirt && (
            <>
              <AmountField
                label={say.liningEaseAtHip}
                field="dress.lining.hipEase"
                value={lining.hipEase}
                otherwise={USUAL_LINING_HIP_EASE}
                set={(hipEase) => [setLining({ ...lining, hipEase })]}
                clear={() => [setLining(without(lining, "hipEase"))]}
                {...amount}
              />
              <LengthField
                label={say.liningHem}
                field="dress.lining.hemGirth"
                value={lining.hemGirth}
                set={(hemGirth) => setLining({ ...lining, hemGirth })}
                clear={setLining(without(lining, "hemGirth"))}
                {...(made?.skirtFigures == null ? {} : { otherwise: usualLength(made.skirtFigures.hem, unit) })}
              />
              <AmountField
                label={say.shorterThanTheSkirtBy}
                field="dress.lining.shorter"
                value={lining.shorter}
                otherwise={USUAL_SHORTER}
                set={(shorter) => [setLining({ ...lining, shorter })]}
                clear={() => [setLining(without(lining, "shorter"))]}
                {...amount}
              />
              <AmountField
                label={say.freeBelowZip}
                field="dress.lining.freeBelow"
                value={lining.freeBelow}
                otherwise={USUAL_FREE_BELOW}
                set={(freeBelow) => [setLining({ ...lining, freeBelow })]}
                clear={() => [setLining(without(lining, "freeBelow"))]}
                {...amount}
              />
              <AmountField
                label={say.freeBesideZip}
                field="dress.lining.freeBeside"
                value={lining.freeBeside}
                otherwise={USUAL_FREE_BESIDE}
                set={(freeBeside) => [setLining({ ...lining, freeBeside })]}
                clear={() => [setLining(without(lining, "freeBeside"))]}
                {...amount}
              />
            </>
          )}
        </div>
      )}
      {linesSkirt && (
        <Choice
          legend={say.liningWaistTaken}
          options={SHAPINGS}
          value={lining.shaping ?? "darts"}
          onChange={(shaping) => run(setLining({ ...lining, shaping }))}
        />
      )}
      {failure !== null && (
        <p className="note doubt" role="status">
          <Fractions text={failure} />
        </p>
      )}
      {made?.skirtFigures != null && (
        <DressFigures lines={liningFigures(made.skirtFigures, unit)} label={say.liningComesTo} />
      )}
      {notes.length > 0 && (
        <ul className="dress-notes">
          {notes.map((note) => (
            <li key={note.code} data-doubt={isLiningDoubt(note) ? "" : undefined}>
              <Fractions text={liningNoteWords(note, unit)} />
            </li>
          ))}
        </ul>
      )}
    </DressFoldView>
  );
}
