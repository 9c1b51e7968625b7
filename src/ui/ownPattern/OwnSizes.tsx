import { useState } from "react";
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
  kindsTogether,
  kindWords,
  meaningKey,
  meaningOptions,
  meaningWords,
  notInChartWords,
  OWN_WORDS,
  saidByWords,
  unclosedHeading,
  unclosedWords,
} from "../../words/ownPattern";
import { capital } from "../../words/terms/names";
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
  // An entry that could not be read must not lie out of sight.
  const [hasUnread] = useState(useSettledWork((work) => work.unread["own.joinWithin"] !== undefined));
  const ways = [{ feature: sortedBy, values: lines.length }, ...features.filter(({ feature }) => feature !== sortedBy)];
  return (
    <>
      {chart.sizes.length === 0 && (
        <p className="field-warning">
          {OWN_WORDS.chart} <a href="#envelope">{OWN_WORDS.toChart}</a>
        </p>
      )}
      <ul className="own-rows own-kinds" aria-label={OWN_WORDS.sizes}>
        {together(lines).map((kinds) => {
          const [kind, more] = kinds;
          if (kind === undefined) return null;
          return more === undefined ? (
            <Kind key={kind.value} kind={kind} own={own} reading={reading} />
          ) : (
            <Kinds key={`all ${kind.value}`} kinds={kinds} kind={kind} own={own} reading={reading} />
          );
        })}
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
      <details className="own-how-read" open={hasUnread || own.sortBy !== undefined}>
        <summary>{OWN_WORDS.howRead}</summary>
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
        <AmountField
          label={OWN_WORDS.join}
          field="own.joinWithin"
          value={own.joinWithin ?? joinWithin}
          unit={unit}
          step={joinStep(unit)}
          set={(value) => [setOwn(withJoin(own, value > 0 ? value : null))]}
        />
      </details>
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

/** Kinds of lines found to be the same, together; what she says of one herself keeps its own row, where she left it. */
function together(lines: readonly SortedLines[]): readonly (readonly SortedLines[])[] {
  const byMeaning = new Map<string, SortedLines[]>();
  for (const kind of lines) {
    const key = kind.saidBy === "her" ? `of ${kind.value}` : meaningKey(kind.meaning);
    byMeaning.set(key, [...(byMeaning.get(key) ?? []), kind]);
  }
  return [...byMeaning.values()];
}

interface KindsProps extends KindProps {
  readonly kinds: readonly SortedLines[];
}

/** All kinds of lines of one size in one row; each of them once it is unfolded. */
function Kinds({ kinds, kind, own, reading }: KindsProps) {
  return (
    <li className="own-kinds-together" data-meaning={kind.meaning.of}>
      <details>
        <summary>
          <Swatch kind={kind} lines={reading.outlines.lines} />
          <span className="own-kind-name">{capital(meaningWords(kind.meaning))}</span>{" "}
          <span className="aside">{kindsTogether(kinds.length)}</span>
        </summary>
        <ul className="own-rows own-kinds">
          {kinds.map((each) => (
            <Kind key={each.value} kind={each} own={own} reading={reading} />
          ))}
        </ul>
      </details>
    </li>
  );
}

interface SwatchProps {
  readonly kind: SortedLines;
  readonly lines: readonly SortedLines[];
}

const Swatch = ({ kind, lines }: SwatchProps) => (
  <svg className="own-swatch kept-paper" viewBox="0 0 48 16" width="48" height="16" aria-hidden="true">
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
);

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
      <Swatch kind={kind} lines={lines} />
      <span className="own-kind-said">
        <span className="own-kind-name">{words}</span>
        <span className="aside">
          <Fractions text={kindAside(kind, scale.mm !== null, unit)} />
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
