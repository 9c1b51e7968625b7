import { useMemo, useRef, useState } from "react";
import { readSizes, sortRows } from "../../core/chart/readChart";
import { MOST_SIZES, type SizeRow } from "../../core/chart/sizeChart";
import type { Command } from "../../core/plan/commands";
import type { Mm } from "../../core/units";
import { useRunAll } from "../session/useRunAll";
import { useRun, useSettledWork, useWorkStore } from "../session/useWork";
import { LengthField } from "../fields/LengthField";
import { TextField } from "../fields/TextField";
import { RemoveButton } from "./CupEditor";
import { Findings } from "./Findings";
import { lengthFieldsOf } from "./lengthFields";
import { nameRoom } from "./nameRoom";
import { NewSize } from "./NewSize";
import { takeAlong } from "./unreadRows";
import * as say from "../../words/envelopeStep";

const GIRTHS = ["bust", "waist", "hip"] as const;
const FINISHED = ["finishedBust", "finishedWaist", "finishedHip"] as const;
type Finished = (typeof FINISHED)[number];
type Column = (typeof GIRTHS)[number] | Finished;

const COLUMN_WORDS: Readonly<Record<Column, string>> = {
  bust: "Bust",
  waist: "Waist",
  hip: "Hip",
  finishedBust: say.finishedBust,
  finishedWaist: say.finishedWaist,
  finishedHip: say.finishedHip,
};

const field = (index: number, column: Column): string => `chart.${index}.${column}`;

const fieldsOf = (index: number): readonly string[] => [
  ...[...GIRTHS, ...FINISHED].map((column) => field(index, column)),
  ...lengthFieldsOf(index),
];

/** The chart, row by row; what is doubtful about a row is said under it. */
export function ChartEditor() {
  const sizes = useSettledWork((work) => work.pattern.chart.sizes);
  const run = useRun();
  const runAll = useRunAll();
  const store = useWorkStore();
  const printsFinished = sizes.some((row) => FINISHED.some((column) => row[column] !== undefined));
  const [finishedShown, setFinishedShown] = useState(false);
  const list = useRef<HTMLDivElement>(null);

  const findings = useMemo(() => readSizes(sizes), [sizes]);
  const outOfOrder = findings.some((finding) => finding.code === "chart/out-of-order");

  const changed = (index: number, row: SizeRow): Command => ({
    kind: "setSizes",
    sizes: sizes.map((old, at) => (at === index ? row : old)),
  });

  /** The rows that stood at these places, in this order; what could not be read goes along. */
  const keepRows = (from: readonly number[]): void =>
    runAll([
      { kind: "setSizes", sizes: from.flatMap((at) => sizes[at] ?? []) },
      ...takeAlong(store.getState().work.unread, sizes.length, from, fieldsOf),
    ]);
  const remove = (index: number): void => {
    keepRows([...sizes.keys()].filter((at) => at !== index));
    list.current?.focus();
  };

  const showsFinished = printsFinished || finishedShown;
  return (
    <div ref={list} tabIndex={-1} className="chart-rows" data-names={nameRoom(sizes.map(({ label }) => label))}>
      <Heads columns={GIRTHS} />
      <ol className="rows" aria-label={say.sizes} data-run="">
        {sizes.map((row, index) => (
          <li key={index} className="row size-row">
            <TextField
              label={say.nameOfSize(index + 1)}
              labelHidden
              maxLength={12}
              capitals="characters"
              field={`chart.${index}.label`}
              value={row.label}
              set={(label) => changed(index, { ...row, label })}
            />
            {GIRTHS.map((column) => (
              <ChartCell key={column} sizes={sizes} row={row} index={index} column={column} />
            ))}
            <RemoveButton label={say.removeSize(row.label)} onClick={() => remove(index)} />
            <Findings findings={findings.filter((finding) => finding.row === index)} />
          </li>
        ))}
        {sizes.length < MOST_SIZES && <NewSize />}
      </ol>

      {sizes.length === 0 ? (
        <p className="field-hint">{say.chartAbout}</p>
      ) : (
        <Findings findings={findings.filter((finding) => finding.row === null)} />
      )}
      {outOfOrder && (
        <button
          type="button"
          className="button small"
          onClick={() => keepRows(sortRows(sizes).map((row) => sizes.indexOf(row)))}
        >
          {say.putTheSizesInOrder}
        </button>
      )}
      {sizes.length > 0 && (
        <label className="tick">
          <input
            type="checkbox"
            checked={showsFinished}
            onChange={(event) => {
              setFinishedShown(event.target.checked);
              if (!event.target.checked && printsFinished) run({ kind: "setSizes", sizes: sizes.map(bodyOnly) });
            }}
          />
          {say.printsFinished}
        </label>
      )}
      {showsFinished && (
        <>
          <Heads columns={FINISHED} />
          <ol className="rows" aria-label={say.finishedMeasuresBySize} data-run="">
            {sizes.map((row, index) => (
              <li key={index} className="row size-row">
                <span className="row-label">{row.label}</span>
                {FINISHED.map((column) => (
                  <ChartCell key={column} sizes={sizes} row={row} index={index} column={column} />
                ))}
              </li>
            ))}
          </ol>
        </>
      )}
    </div>
  );
}

const bodyOnly = ({ label, bust, waist, hip }: SizeRow): SizeRow => ({ label, bust, waist, hip });

function Heads({ columns }: { readonly columns: readonly Column[] }) {
  return (
    <div className="row size-row row-heads" aria-hidden="true">
      <span>{say.size}</span>
      {columns.map((column) => (
        <span key={column}>{COLUMN_WORDS[column].replace("Finished ", "")}</span>
      ))}
    </div>
  );
}

interface ChartCellProps {
  readonly sizes: readonly SizeRow[];
  readonly row: SizeRow;
  readonly index: number;
  readonly column: Column;
}

function ChartCell({ sizes, row, index, column }: ChartCellProps) {
  const changed = (next: SizeRow): Command => ({
    kind: "setSizes",
    sizes: sizes.map((old, at) => (at === index ? next : old)),
  });
  return (
    <LengthField
      label={say.columnOfSize(COLUMN_WORDS[column], row.label)}
      labelHidden
      field={field(index, column)}
      value={row[column]}
      set={(value: Mm) => changed({ ...row, [column]: value })}
      {...(isFinished(column) ? { clear: changed(withoutFinished(row, column)) } : {})}
    />
  );
}

const isFinished = (column: Column): column is Finished => column.startsWith("finished");

function withoutFinished(row: SizeRow, column: Finished): SizeRow {
  const kept = FINISHED.filter((other) => other !== column && row[other] !== undefined).map((other) => [
    other,
    row[other],
  ]);
  return { ...bodyOnly(row), ...Object.fromEntries(kept) };
}
