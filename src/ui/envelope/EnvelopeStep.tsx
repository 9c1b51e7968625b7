import "./envelope.css";
import { useState } from "react";
import { STYLE_NAMES, type Closure, type PatternLength, type StrapStyle } from "../../core/decisions/pattern";
import { capital, styleWords } from "../../words/terms/names";
import { useRun, useSettledWork } from "../session/useWork";
import { Choice } from "../fields/Choice";
import { formatLength } from "../../words/terms/length";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { Term } from "../fields/Term";
import { FrontInSmall } from "../works/FrontInSmall";
import { useStylePictures } from "./stylePictures";
import { TextField } from "../fields/TextField";
import { ButtonsField } from "./ButtonsField";
import { ChartEditor } from "./ChartEditor";
import { ChartFit } from "./ChartFit";
import { CupEditor } from "./CupEditor";
import { DemoCharts } from "./DemoCharts";
import { LengthsSaid } from "./LengthsSaid";
import { PASTE_FIELD, PasteChart } from "./PasteChart";
import * as say from "../../words/envelopeStep";
import { Sentence } from "../fields/Sentence";

const LENGTHS: readonly { readonly value: PatternLength; readonly label: string }[] = [
  { value: "waist", label: say.toTheWaist },
  { value: "hip", label: say.toTheHip },
];

const STRAPS: readonly { readonly value: StrapStyle; readonly label: string }[] = [
  { value: "thin", label: "thin" },
  { value: "wide", label: say.strapsWide },
];

const PLACES: readonly { readonly value: Closure["place"]; readonly label: string }[] = [
  { value: "centreBack", label: say.centreBack },
  { value: "side", label: say.leftSide },
];

const EASE_LEVELS = ["bust", "waist", "hip"] as const;

export function EnvelopeStep() {
  const pattern = useSettledWork((work) => work.pattern);
  const run = useRun();
  // A paste begun and not taken is still there after a reload.
  const begun = useSettledWork((work) => work.unread[PASTE_FIELD] !== undefined);
  const [pasting, setPasting] = useState(begun);
  const { closure } = pattern;
  const pictures = useStylePictures();
  const styles = STYLE_NAMES.map((value) => ({
    value,
    label: (
      <span className="style-choice">
        <FrontInSmall front={pictures[value]} />
        {capital(styleWords(value))}
      </span>
    ),
  }));

  return (
    <>
      <header className="step-head">
        <h2>{say.envelope}</h2>
        <p>{say.about}</p>
      </header>

      <TextField
        label={say.pattern}
        field="pattern.name"
        value={pattern.name}
        set={(name) => ({ kind: "setPatternName", name })}
      />
      <DemoCharts />

      <section className="chart" aria-labelledby="chart-title">
        <div className="section-head">
          <h3 id="chart-title">{say.bodyMeasuresBySize}</h3>
          <button type="button" className="button small" aria-expanded={pasting} onClick={() => setPasting(!pasting)}>
            {pasting ? say.closePaste : say.pasteAChart}
          </button>
        </div>
        {pasting && <PasteChart onDone={() => setPasting(false)} />}
        <ChartEditor />
      </section>

      <CupEditor />
      <ChartFit />

      <DraftedEase />

      <LengthsSaid />

      <section className="make" aria-labelledby="make-title">
        <h3 id="make-title">{say.howItIsMade}</h3>
        <Choice
          legend={say.style}
          options={styles}
          value={pattern.style}
          onChange={(style) => run({ kind: "setStyle", style })}
        />
        {pattern.style === "midriff" && (
          <Choice
            legend={say.straps}
            options={STRAPS}
            value={pattern.strap}
            onChange={(strap) => run({ kind: "setStrap", strap })}
          />
        )}
        <Choice
          legend={say.length}
          options={LENGTHS}
          value={pattern.length}
          onChange={(length) => run({ kind: "setLength", length })}
        />
        <Choice
          legend={say.opensAtThe}
          options={PLACES}
          value={closure.place}
          onChange={(place) => run({ kind: "setClosure", closure: { ...closure, place } })}
        />
        <LengthField
          label={say.openingRunsBelowTheWaist}
          field="pattern.closure.belowWaist"
          value={closure.belowWaist}
          set={(belowWaist) => ({ kind: "setClosure", closure: { ...closure, belowWaist } })}
          hint={say.openingHint}
        />
        {closure.place === "centreBack" && <ButtonsField />}
      </section>
    </>
  );
}

/** How roomy the pattern was drawn, folded to its figures. */
function DraftedEase() {
  const ease = useSettledWork((work) => work.pattern.ease);
  const unit = useSettledWork((work) => work.unit);
  const unread = useSettledWork((work) =>
    EASE_LEVELS.some((level) => work.unread[`pattern.ease.${level}`] !== undefined),
  );
  // An entry that could not be read must not lie out of sight.
  const [open] = useState(unread);
  return (
    <section className="ease" aria-label={say.easeDrawnIn}>
      <details open={open}>
        <summary>
          <h3>{say.easeDrawnIn}</h3>{" "}
          <span className="aside">
            <Fractions text={EASE_LEVELS.map((level) => formatLength(ease[level], unit)).join(", ")} />
          </span>
        </summary>
        <p className="aside">
          <Sentence text={say.easeAbout} parts={{ ease: <Term name="ease">{say.easeTerm}</Term> }} />
        </p>
        <div className="field-row">
          {EASE_LEVELS.map((level) => (
            <LengthField
              key={level}
              label={say.atLevel(level)}
              field={`pattern.ease.${level}`}
              value={ease[level]}
              signed
              set={(value) => ({ kind: "setPatternEase", ease: { ...ease, [level]: value } })}
            />
          ))}
        </div>
      </details>
    </section>
  );
}
