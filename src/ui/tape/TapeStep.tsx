import { PLAN_NOTE } from "./planNotePart";
import { BODIES } from "./bodiesPart";
import "./tape.css";
import { useMemo, useState } from "react";
import { isAskedElsewhere, isOpen } from "../../core/bodies/answered";
import type { Estimates } from "../../core/bodies/estimate";
import type { Suspicion } from "../../core/bodies/suspicion";
import { MEASURE_NAMES, type MeasureName } from "../../core/measures/measure";
import { bodyOf } from "../../core/measures/tape";
import { measureWords } from "../../words/measures";
import { onceSureWords, tapeStateSentence } from "../../words/tape";
import { useSettledWork } from "../session/useWork";
import { TextField } from "../fields/TextField";
import { Fractions } from "../fields/Fractions";
import { useLaterState } from "../parts/later";
import { PartPlace } from "../parts/PartPlace";
import { InventedNote } from "../works/InventedNote";
import { MeasureField } from "./MeasureField";
import { PrintMeasureSheet } from "./PrintMeasureSheet";
import { TapeDays } from "./TapeDays";
import { TapeFigure } from "./TapeFigure";
import { TapeGuidance, TapeNotes } from "./TapeGuidance";
import * as say from "../../words/tapeStep";
import { Sentence } from "../fields/Sentence";

/** What a plan cannot do without, and the upper chest, without which a cup cannot be told. */
const FIRST: readonly MeasureName[] = ["bustGirth", "upperChestGirth", "waistGirth", "hipGirth"];
const MORE: readonly MeasureName[] = MEASURE_NAMES.filter((name) => !FIRST.includes(name));

/** Holds the line open. */
const NOT_YET = "\u00a0";
const NO_ESTIMATES: Estimates = {};
const NO_SUSPICIONS: readonly Suspicion[] = [];

export function TapeStep() {
  const [shown, setShown] = useState<MeasureName>("bustGirth");
  const tapes = useSettledWork((work) => work.tapes);
  const trusted = useSettledWork((work) => work.trusted);
  const wearer = useSettledWork((work) => work.wearer);
  const age = useSettledWork((work) => work.age);
  const unit = useSettledWork((work) => work.unit);
  const body = bodyOf(tapes);
  const bodies = useLaterState(BODIES);
  const model = bodies.kind === "here" ? bodies.value : null;
  const estimates = useMemo(() => model?.estimatesOf(bodyOf(tapes), age) ?? NO_ESTIMATES, [model, tapes, age]);
  const suspicions = useMemo(
    () => model?.suspicionsOf(bodyOf(tapes), age, unit, trusted) ?? NO_SUSPICIONS,
    [model, tapes, age, unit, trusted],
  );
  const taken = MORE.filter((name) => body[name] !== undefined).length;
  const doubted = suspicions.filter(isOpen).map(({ measure }) => measure);
  // What cannot be read, or should be looked at, must not lie out of sight.
  const unreadMore = useSettledWork((work) =>
    Object.keys(work.unread).some((field) => MORE.some((name) => `${field}.`.startsWith(`measure.${name}.`))),
  );
  const doubtedMore = doubted.some((name) => MORE.includes(name));

  const field = (name: MeasureName) => {
    const suspicion = suspicions.find(({ measure }) => measure === name);
    return (
      <MeasureField
        // Another set begins with what was asked for in none.
        key={`${name} ${tapes.length}`}
        name={name}
        estimate={estimates[name]}
        isAwaited={bodies.kind === "waiting" && Object.keys(body).length > 0}
        suspicion={suspicion}
        askedElsewhere={suspicion !== undefined && isAskedElsewhere(suspicions, suspicion)}
        onShow={setShown}
      />
    );
  };

  return (
    <>
      <header className="step-head">
        <h2>{say.tape}</h2>
        <p>{say.about}</p>
      </header>
      <InventedNote />
      <TextField
        label={say.whoseMeasuresTheseAre}
        field="wearer"
        value={wearer ?? ""}
        set={(name) => ({ kind: "setWearer", name })}
        clear={{ kind: "setWearer", name: null }}
        maxLength={40}
        capitals="words"
        otherwise={say.notSaid}
      />
      <TapeNotes />
      <TapeDays />
      <div className="tape-legend">
        <details>
          <summary>{say.readingsTitle}</summary>
          <p>
            <Sentence
              text={say.readingsAbout}
              parts={{
                measured: <b>{say.measuredWord}</b>,
                sure: <Fractions text={onceSureWords(unit)} />,
                guess: (
                  <span className="guess">
                    <b>{say.guessWord}</b>
                  </span>
                ),
              }}
            />
          </p>
        </details>
        <p className="tape-state" aria-live="polite">
          {model === null
            ? NOT_YET
            : tapeStateSentence(Object.keys(body).length, Object.keys(estimates).length, doubted)}
        </p>
      </div>
      <div className="tape">
        <div className="tape-fields" data-run="">
          <h3 className="tape-group">{say.theFour}</h3>
          {FIRST.map(field)}
          <details className="tape-more" open={doubtedMore || unreadMore ? true : undefined}>
            <summary>
              {say.moreMeasures} <span className="aside">{say.takenOf(taken, MORE.length)}</span>
            </summary>
            <div>
              <p className="aside">{say.moreAbout}</p>
              {MORE.map(field)}
            </div>
          </details>
          <PrintMeasureSheet />
        </div>
        <aside className="tape-guide" aria-label={say.whereTheTapeGoes} aria-live="polite">
          <h3>{measureWords(shown).name}</h3>
          <TapeFigure measure={shown} />
          <TapeGuidance measure={shown} />
        </aside>
      </div>
      <div className="part-own">
        <PartPlace part={BODIES} name={say.theGuesses} placeholder={null}>
          {({ WhoseBodies }) => <WhoseBodies />}
        </PartPlace>
      </div>
      <div className="part-own">
        <PartPlace part={PLAN_NOTE} name={say.planNeeds} placeholder={null}>
          {(PlanNote) => <PlanNote />}
        </PartPlace>
      </div>
    </>
  );
}
