import { LINE_FEATURES } from "../../core/decisions/ownPattern";
import { isCupSaid } from "../../core/ownPieces/drawnCup";
import type { SortedLines } from "../../core/outlines/outlineReading";
import { withCup, withJoin, withLines, withSortBy } from "../../core/plan/ownEdit";
import { dashPixels, widthPixels } from "../../drawing/ownSheet";
import { readableOnPaper } from "../../drawing/readableOnPaper";
import {
  featureWords,
  hiddenSentence,
  joinStep,
  kindAside,
  kindWords,
  meaningKey,
  meaningOptions,
  notInChartWords,
  OWN_WORDS,
  saidByWords,
  unclosedHeading,
  unclosedWords,
} from "../../words/ownPattern";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { Select } from "../fields/Select";
import { useSettledWork } from "../session/useWork";
import { LightButton } from "./LightButton";
import { setOwn, useEditOwn, type OwnAndReading } from "./useOwn";

/** Which lines are which size. */
export function OwnSizes({ own, reading }: OwnAndReading) {
  const unit = useSettledWork((work) => work.unit);
  const chart = useSettledWork((work) => work.pattern.chart);
  const edit = useEditOwn();
  const { features, sortedBy, lines, joinWithin, unclosed, scale } = reading.outlines;
  const ways = [{ feature: sortedBy, values: lines.length }, ...features.filter(({ feature }) => feature !== sortedBy)];
  return (
    <>
      {chart.sizes.length === 0 && (
        <p className="field-warning">
          {OWN_WORDS.chart} <a href="#envelope">{OWN_WORDS.toChart}</a>
        </p>
      )}
      {ways.length > 1 && (
        <Choice
          legend={OWN_WORDS.sortBy}
          options={LINE_FEATURES.flatMap((feature) => {
            const way = ways.find((each) => each.feature === feature);
            return way === undefined ? [] : [{ value: feature, label: featureWords(feature, way.values) }];
          })}
          value={own.sortBy ?? sortedBy}
          onChange={(feature) => edit((now) => withSortBy(now, feature))}
        />
      )}
      <ul className="own-rows own-kinds" aria-label={OWN_WORDS.sizes}>
        {lines.map((kind) => (
          <Kind key={kind.value} kind={kind} own={own} reading={reading} />
        ))}
      </ul>
      {chart.cups.length > 1 && (
        <Select
          label={OWN_WORDS.cup}
          value={isCupSaid(own, chart) ? (own.cup ?? "") : ""}
          options={[
            { value: "", label: OWN_WORDS.notSaid },
            ...chart.cups.map(({ label }) => ({ value: label, label })),
          ]}
          onChange={(cup) => edit((now) => withCup(now, cup === "" ? null : cup))}
        />
      )}
      <AmountField
        label={OWN_WORDS.join}
        field="own.joinWithin"
        value={own.joinWithin ?? joinWithin}
        unit={unit}
        step={joinStep(unit)}
        set={(value) => [setOwn(withJoin(own, value > 0 ? value : null))]}
      />
      {unclosed.length > 0 && (
        <details className="own-unclosed">
          <summary>{unclosedHeading(unclosed.length)}</summary>
          <ul className="own-rows">
            {unclosed.map((one, at) => (
              <li key={one.line.id}>
                <span>
                  <Fractions text={unclosedWords(one, at, unit)} />
                </span>
                <LightButton lit={{ kind: "open", id: one.line.id }} of={unclosedWords(one, at, unit)} />
              </li>
            ))}
          </ul>
        </details>
      )}
      {own.drawing.hiddenLayers.length > 0 && <p className="aside">{hiddenSentence(own.drawing.hiddenLayers)}</p>}
      {scale.mm === null && <p className="aside">{OWN_WORDS.notScaled}</p>}
    </>
  );
}

interface KindProps extends OwnAndReading {
  readonly kind: SortedLines;
}

function Kind({ kind, own, reading }: KindProps) {
  const unit = useSettledWork((work) => work.unit);
  const sizes = useSettledWork((work) => work.pattern.chart.sizes);
  const edit = useEditOwn();
  const { sortedBy, lines, scale } = reading.outlines;
  const options = meaningOptions(sizes.map(({ label }) => label));
  const words = kindWords(kind, sortedBy);
  const key = meaningKey(own.lines?.[kind.value] ?? kind.meaning);
  return (
    <li data-meaning={kind.meaning.of}>
      <svg className="own-swatch" viewBox="0 0 48 16" width="48" height="16" aria-hidden="true">
        <path
          d="M2 8H46"
          stroke={readableOnPaper(kind.colour)}
          strokeDasharray={dashPixels(kind.dash) ?? undefined}
          strokeWidth={widthPixels(
            kind.width,
            lines.map(({ width }) => width),
          )}
        />
      </svg>
      <span className="own-kind-said">
        <span className="own-kind-name">{words}</span>
        <span className="aside">
          {kindAside(kind, scale.mm !== null, unit)}
          {kind.saidBy === "her" ? "" : `; ${saidByWords(kind.saidBy)}`}
        </span>
      </span>
      <Select
        label={`${words}: ${OWN_WORDS.isWhat}`}
        labelHidden
        value={key}
        // A size that is not in the chart any more is still what she said.
        options={
          options.some(({ value }) => value === key)
            ? options
            : [
                {
                  value: key,
                  label: kind.meaning.of === "size" ? notInChartWords(kind.meaning.size, sizes.length > 0) : key,
                },
                ...options,
              ]
        }
        onChange={(value) => {
          const meaning = options.find((option) => option.value === value)?.meaning;
          if (meaning !== undefined) edit((now) => withLines(now, kind.value, meaning));
        }}
      />
      <LightButton lit={{ kind: "lines", value: kind.value }} of={words} />
    </li>
  );
}
