import type { DressPlan } from "../../core/dress/dressPlan";
import { isButtoned } from "../../core/opening/gettingIn";
import {
  CLOSURE_PLACES,
  closureOutcome,
  levelMarkWords,
  openingWords,
  wayWords,
  ZIP_KINDS,
  zipSoldWords,
} from "../../words/dressClosure";
import { ButtonsField } from "../envelope/ButtonsField";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { useRun, useSettledWork } from "../session/useWork";
import { DressFoldView } from "./DressFolds";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

/** Where it opens and how far, what that lets through, and the zip it takes. */
export function ClosureFold({ dress: { closure: reading } }: { readonly dress: DressPlan }) {
  const { zip } = useDressDecided();
  const closure = useSettledWork((work) => work.pattern.closure);
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const notes = reading === null ? [] : [zipSoldWords(reading, closure, unit), levelMarkWords(reading, closure, unit)];
  return (
    <DressFoldView
      fold="closure"
      outcome={closureOutcome(closure, reading, unit)}
      isDoubt={reading !== null && !reading.passes}
    >
      <Choice
        legend={say.opensAtThe}
        options={CLOSURE_PLACES}
        value={closure.place}
        onChange={(place) => run({ kind: "setClosure", closure: { ...closure, place } })}
      />
      <div className="field-row">
        <LengthField
          label={say.openingRunsBelowTheWaist}
          field="pattern.closure.belowWaist"
          value={closure.belowWaist}
          set={(belowWaist) => ({ kind: "setClosure", closure: { ...closure, belowWaist } })}
        />
        {closure.place === "centreBack" && <ButtonsField />}
      </div>
      {!isButtoned(closure) && (
        <Choice
          legend={say.zip}
          options={ZIP_KINDS}
          value={zip ?? "invisible"}
          onChange={(value) => run({ kind: "setDress", part: "zip", value: value === "invisible" ? null : value })}
        />
      )}
      {reading !== null && (
        <>
          <p className={reading.passes ? undefined : "note doubt"} role="status">
            <Fractions text={openingWords(reading, unit)} />
          </p>
          <ul className="dress-notes">
            {reading.ways.map((way) => (
              <li key={way.way} data-doubt={way.passes ? undefined : ""}>
                <Fractions text={wayWords(way, unit)} />
              </li>
            ))}
            {notes
              .filter((note) => note !== null)
              .map((note) => (
                <li key={note}>
                  <Fractions text={note} />
                </li>
              ))}
          </ul>
        </>
      )}
    </DressFoldView>
  );
}
