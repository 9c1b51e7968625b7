import { useState } from "react";
import { lengthsAskedOn, PRINTED_LENGTHS, type PrintedLength } from "../../core/decisions/pattern";
import { draftedFigures } from "../../core/draft/draftMeasures";
import type { Command } from "../../core/plan/commands";
import type { Mm } from "../../core/units";
import { draftHint } from "../../words/lengthsSaid";
import { measureRefusal, measureWords } from "../../words/measures";
import { capital } from "../../words/terms/names";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { useSettledWork } from "../session/useWork";
import { lengthField } from "./lengthFields";
import * as say from "../../words/envelopeStep";

/** What the pattern prints of lengths and widths, folded away: many print none of it. */
export function LengthsSaid() {
  const lengths = useSettledWork((work) => work.pattern.lengths);
  const style = useSettledWork((work) => work.pattern.style);
  // What was said before the style was another one must not lie out of sight.
  const unread = useSettledWork((work) =>
    PRINTED_LENGTHS.filter((measure) =>
      Object.keys(work.unread).some(
        (field) => field === `pattern.lengths.${measure}` || field.endsWith(`.lengths.${measure}`),
      ),
    ).join(" "),
  );
  const said = Object.keys(lengths ?? {}).length;
  const isAsked = (measure: PrintedLength): boolean =>
    lengthsAskedOn(style).includes(measure) || lengths?.[measure] !== undefined || unread.split(" ").includes(measure);
  return (
    <details className="lengths-said" open={said > 0 ? true : undefined}>
      <summary>
        {say.lengthsTitle} <span className="aside">{say.enteredOf(said)}</span>
      </summary>
      <div>
        <p className="aside">{say.lengthsAbout}</p>
        {PRINTED_LENGTHS.filter(isAsked).map((measure) => (
          <LengthSaid key={measure} measure={measure} />
        ))}
      </div>
    </details>
  );
}

function LengthSaid({ measure }: { readonly measure: PrintedLength }) {
  const unit = useSettledWork((work) => work.unit);
  const pattern = useSettledWork((work) => work.pattern);
  const hasUnread = useSettledWork(({ unread, pattern: { chart } }) =>
    chart.sizes.some((_, at) => unread[lengthField(at, measure)] !== undefined),
  );
  const { sizes } = pattern.chart;
  const { all, bySize } = pattern.lengths?.[measure] ?? {};
  const isBySize = bySize !== undefined || hasUnread;
  const [isAsked, setAsked] = useState(false);
  const isShown = (isBySize || isAsked) && sizes.length > 0;
  const name = capital(measureWords(measure).short);
  const put = (size: string | null, value: Mm | null): Command => ({ kind: "setPrintedLength", measure, size, value });
  const refuse = (value: Mm): string | null => measureRefusal(measure, value, unit);
  return (
    <div className="length-said">
      <LengthField
        label={name}
        field={`pattern.lengths.${measure}`}
        value={all}
        set={(value) => put(null, value)}
        clear={put(null, null)}
        refuse={refuse}
        feet={measure === "height"}
        {...(all === undefined && !isShown
          ? { hint: <Fractions text={draftHint(measure, draftedFigures(pattern, measure), unit)} /> }
          : {})}
      />
      {!isBySize && sizes.length > 0 && (
        <button
          type="button"
          className="link-button"
          aria-expanded={isShown}
          aria-label={say.aFigureForEachSize(name)}
          onClick={() => setAsked(!isAsked)}
        >
          {isShown ? say.oneForAll : say.bySize}
        </button>
      )}
      {isShown && (
        <ol className="length-sizes" aria-label={say.lengthBySize(name)}>
          {sizes.map(({ label }, at) => (
            <li key={at}>
              <LengthField
                label={
                  <>
                    <span className="visually-hidden">{say.figureOfSize(name)}</span>
                    {label}
                  </>
                }
                field={lengthField(at, measure)}
                value={bySize !== undefined && Object.hasOwn(bySize, label) ? bySize[label] : undefined}
                set={(value) => put(label, value)}
                clear={put(label, null)}
                refuse={refuse}
                feet={measure === "height"}
              />
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}
