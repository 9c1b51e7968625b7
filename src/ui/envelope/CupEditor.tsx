import { useMemo } from "react";
import { readCups } from "../../core/chart/readChart";
import { nextCup, usualCups, usualDraftedDifference, type CupVersion } from "../../core/chart/sizeChart";
import { formatLength } from "../../words/terms/length";
import { useRunAll } from "../session/useRunAll";
import { useRun, useSettledWork, useWorkStore } from "../session/useWork";
import { LengthField } from "../fields/LengthField";
import { Term } from "../fields/Term";
import { TextField } from "../fields/TextField";
import { Findings } from "./Findings";
import { nameRoom } from "./nameRoom";
import { takeAlong } from "./unreadRows";
import * as say from "../../words/envelopeStep";
import { Sentence } from "../fields/Sentence";

export function CupEditor() {
  const cups = useSettledWork((work) => work.pattern.chart.cups);
  const drafted = useSettledWork((work) => work.pattern.chart.draftedDifference);
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const runAll = useRunAll();
  const store = useWorkStore();
  const findings = useMemo(() => readCups(cups), [cups]);
  const change = (index: number, cup: CupVersion): readonly CupVersion[] =>
    cups.map((old, at) => (at === index ? cup : old));
  const remove = (index: number): void => {
    const from = [...cups.keys()].filter((at) => at !== index);
    runAll([
      { kind: "setCups", cups: from.flatMap((at) => cups[at] ?? []) },
      ...takeAlong(store.getState().work.unread, cups.length, from, (at) => [`cups.${at}`]),
    ]);
  };

  return (
    <section className="cups" aria-labelledby="cups-title">
      <div className="section-head">
        <h3 id="cups-title">{say.cupVersions}</h3>
        <div className="actions">
          {cups.length === 0 && (
            <button
              type="button"
              className="button small"
              onClick={() => run({ kind: "setCups", cups: usualCups(drafted, unit) })}
            >
              {say.aToD}
            </button>
          )}
          <button
            type="button"
            className="button small"
            onClick={() => run({ kind: "setCups", cups: [...cups, nextCup(cups, drafted, unit)] })}
          >
            {say.addAVersion}
          </button>
        </div>
      </div>
      <p className="aside">
        <Sentence text={say.cupsAbout} parts={{ drafted: <Term name="drafted">{say.eachVersionDrafted}</Term> }} />
      </p>
      <ol className="rows" data-names={nameRoom(cups.map(({ label }) => label))}>
        {cups.map((cup, index) => (
          <li key={index} className="row cup-row">
            <TextField
              label={say.nameOfCupVersion(index + 1)}
              labelHidden
              field={`cups.${index}.label`}
              value={cup.label}
              maxLength={20}
              set={(label) => ({ kind: "setCups", cups: change(index, { ...cup, label }) })}
            />
            <LengthField
              label={say.differenceOf(cup.label)}
              labelHidden
              field={`cups.${index}`}
              value={cup.difference}
              signed
              set={(difference) => ({ kind: "setCups", cups: change(index, { ...cup, difference }) })}
            />
            <RemoveButton label={say.removeCupVersion(cup.label)} onClick={() => remove(index)} />
            <Findings findings={findings.filter((finding) => finding.row === index)} />
          </li>
        ))}
      </ol>
      <LengthField
        label={say.chartDifference}
        field="chart.draftedDifference"
        value={drafted}
        signed
        set={(value) => ({ kind: "setDraftedDifference", value })}
        hint={say.chartDifferenceHint(formatLength(usualDraftedDifference(unit), unit))}
      />
    </section>
  );
}

export function RemoveButton({ label, onClick }: { readonly label: string; readonly onClick: () => void }) {
  return (
    <button type="button" className="button quiet icon remove" aria-label={label} title={label} onClick={onClick}>
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
        <path d="M4 4 L12 12 M12 4 L4 12" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" />
      </svg>
    </button>
  );
}
