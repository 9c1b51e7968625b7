import "./envelope.css";
import { useState } from "react";
import {
  STYLE_NAMES,
  type Closure,
  type PatternLength,
  type StrapStyle,
  type StyleName,
} from "../../core/decisions/pattern";
import { capital, styleWords } from "../../words/terms/names";
import { useRun, useSettledWork } from "../session/useWork";
import { Choice } from "../fields/Choice";
import { LengthField } from "../fields/LengthField";
import { TextField } from "../fields/TextField";
import { ButtonsField } from "./ButtonsField";
import { ChartEditor } from "./ChartEditor";
import { ChartFit } from "./ChartFit";
import { CupEditor } from "./CupEditor";
import { DemoCharts } from "./DemoCharts";
import { LengthsSaid } from "./LengthsSaid";
import { PASTE_FIELD, PasteChart } from "./PasteChart";

const LENGTHS: readonly { readonly value: PatternLength; readonly label: string }[] = [
  { value: "waist", label: "To the waist" },
  { value: "hip", label: "With a basque to the hip" },
];

const STYLES: readonly { readonly value: StyleName; readonly label: string }[] = STYLE_NAMES.map((value) => ({
  value,
  label: capital(styleWords(value)),
}));

const STRAPS: readonly { readonly value: StrapStyle; readonly label: string }[] = [
  { value: "thin", label: "thin" },
  { value: "wide", label: "wide, over what is worn under it" },
];

const PLACES: readonly { readonly value: Closure["place"]; readonly label: string }[] = [
  { value: "centreBack", label: "Centre back" },
  { value: "side", label: "Left side" },
];

const EASE_LEVELS = ["bust", "waist", "hip"] as const;

export function EnvelopeStep() {
  const pattern = useSettledWork((work) => work.pattern);
  const run = useRun();
  // A paste begun and not taken is still there after a reload.
  const begun = useSettledWork((work) => work.unread[PASTE_FIELD] !== undefined);
  const [pasting, setPasting] = useState(begun);
  const { closure } = pattern;

  return (
    <>
      <header className="step-head">
        <h2>Envelope</h2>
        <p>What the pattern’s envelope or first sheet says: its sizes, its cups, and how roomy it was drawn.</p>
      </header>

      <TextField
        label="Pattern"
        field="pattern.name"
        value={pattern.name}
        set={(name) => ({ kind: "setPatternName", name })}
      />
      <DemoCharts />

      <section className="chart" aria-labelledby="chart-title">
        <div className="section-head">
          <h3 id="chart-title">Body measures by size</h3>
          <button type="button" className="button small" aria-expanded={pasting} onClick={() => setPasting(!pasting)}>
            {pasting ? "Close paste" : "Paste a chart"}
          </button>
        </div>
        {pasting && <PasteChart onDone={() => setPasting(false)} />}
        <ChartEditor />
      </section>

      <CupEditor />
      <ChartFit />

      <section className="ease" aria-labelledby="drafted-ease-title">
        <h3 id="drafted-ease-title">Ease drawn in</h3>
        <p className="aside">
          Used where the chart prints no finished measures. Often on the envelope, or measured on the pieces.
        </p>
        <div className="field-row">
          {EASE_LEVELS.map((level) => (
            <LengthField
              key={level}
              label={`At the ${level}`}
              field={`pattern.ease.${level}`}
              value={pattern.ease[level]}
              signed
              set={(value) => ({ kind: "setPatternEase", ease: { ...pattern.ease, [level]: value } })}
            />
          ))}
        </div>
      </section>

      <LengthsSaid />

      <section className="make" aria-labelledby="make-title">
        <h3 id="make-title">How it is made</h3>
        <Choice
          legend="Style"
          options={STYLES}
          value={pattern.style}
          onChange={(style) => run({ kind: "setStyle", style })}
        />
        {pattern.style === "midriff" && (
          <Choice
            legend="Straps"
            options={STRAPS}
            value={pattern.strap}
            onChange={(strap) => run({ kind: "setStrap", strap })}
          />
        )}
        <Choice
          legend="Length"
          options={LENGTHS}
          value={pattern.length}
          onChange={(length) => run({ kind: "setLength", length })}
        />
        <Choice
          legend="Opens at the"
          options={PLACES}
          value={closure.place}
          onChange={(place) => run({ kind: "setClosure", closure: { ...closure, place } })}
        />
        <LengthField
          label="Opening runs below the waist seam by"
          field="pattern.closure.belowWaist"
          value={closure.belowWaist}
          set={(belowWaist) => ({ kind: "setClosure", closure: { ...closure, belowWaist } })}
          hint="0 if it ends at the waist. An opening that is too short cannot be stepped into."
        />
        {closure.place === "centreBack" && <ButtonsField />}
      </section>
    </>
  );
}
