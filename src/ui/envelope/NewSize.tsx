import { useCallback, useEffect, useId, useLayoutEffect, useRef } from "react";
import type { SizeRow } from "../../core/chart/sizeChart";
import type { Work } from "../../core/decisions/work";
import { parseLength } from "../../core/measures/length";
import { lengthFailureSentence } from "../../words/terms/length";
import { run } from "../../store/workStore";
import { useSettledWork, useWork, useWorkStore } from "../session/useWork";
import { useEntry } from "../fields/useEntry";
import * as say from "../../words/envelopeStep";

const COLUMNS = ["label", "bust", "waist", "hip"] as const;
type Column = (typeof COLUMNS)[number];
const LABELS: Readonly<Record<Column, string>> = {
  label: say.nameOfTheNewSize,
  bust: say.bustOfTheNewSize,
  waist: say.waistOfTheNewSize,
  hip: say.hipOfTheNewSize,
};
const GIRTHS = ["bust", "waist", "hip"] as const;

const field = (column: Column): string => `chart.new.${column}`;

/**
 * The empty line at the end of the chart. It is no size until all four entries are there and read well; until then it is
 * kept as typed. Enter moves on, and after the last entry the next empty line is ready. Whatever else ends the line, leaving
 * the step or printing too, makes a size of it where it is whole.
 */
export function NewSize() {
  const store = useWorkStore();
  const line = useRef<HTMLLIElement>(null);

  /** Makes a size of the line if it is whole; says whether it was. */
  const add = useCallback((): boolean => {
    const { work } = store.getState();
    const row = rowOf(work);
    if (row === null) return false;
    run(store, { kind: "setSizes", sizes: [...work.pattern.chart.sizes, row] });
    // No part of the step: taken back, it is no line that is being written.
    for (const column of COLUMNS) run(store, { kind: "clearUnread", field: field(column) });
    return true;
  }, [store]);

  const typed = useWork((work) => work.unread);
  const shown = useRef(typed);
  useEffect(() => {
    shown.current = typed;
  });
  // Before the next step is drawn, and so in time for a sheet that is printed.
  useLayoutEffect(
    () => () => {
      // Where another work has taken its place, the line was not this one's.
      if (store.getState().work.unread === shown.current) add();
    },
    [store, add],
  );

  const focusOn = (column: Column): void =>
    line.current?.querySelector<HTMLInputElement>(`[data-column="${column}"]`)?.focus();

  const goOn = (column: Column): void => {
    const { unread } = store.getState().work;
    const firstMissing = COLUMNS.find((other) => unread[field(other)] === undefined);
    const next = COLUMNS[COLUMNS.indexOf(column) + 1];
    if (firstMissing !== undefined) focusOn(next ?? firstMissing);
    else if (add()) focusOn("label");
  };

  return (
    <li ref={line} className="row size-row" data-new="">
      {COLUMNS.map((column) => (
        <Cell
          key={column}
          column={column}
          onEnter={() => goOn(column)}
          onLeave={(next) => {
            if (!(next instanceof Node && line.current?.contains(next) === true)) add();
          }}
        />
      ))}
      <span />
    </li>
  );
}

/** The size that a whole line says; null while something is missing or does not read. */
function rowOf({ unread, unit }: Work): SizeRow | null {
  const label = unread[field("label")] ?? "";
  const [bust, waist, hip] = GIRTHS.map((column) => parseLength(unread[field(column)] ?? "", unit));
  return label === "" || bust?.ok !== true || waist?.ok !== true || hip?.ok !== true
    ? null
    : { label, bust: bust.value, waist: waist.value, hip: hip.value };
}

interface CellProps {
  readonly column: Column;
  readonly onEnter: () => void;
  readonly onLeave: (next: EventTarget | null) => void;
}

function Cell({ column, onEnter, onLeave }: CellProps) {
  const id = useId();
  const unit = useSettledWork((work) => work.unit);
  const { input, reason } = useEntry({
    field: field(column),
    settled: "",
    read: (text) => {
      if (column === "label") return { isPart: true };
      const parsed = parseLength(text, unit);
      return parsed.ok ? { isPart: true } : { reason: lengthFailureSentence(parsed.failure, unit) };
    },
  });
  return (
    <>
      <input
        data-column={column}
        className="field-input"
        type="text"
        autoComplete="off"
        autoCapitalize={column === "label" ? "characters" : "none"}
        enterKeyHint="next"
        spellCheck={false}
        inputMode={column === "label" || unit === "in" ? "text" : "decimal"}
        aria-label={LABELS[column]}
        aria-invalid={reason !== null}
        aria-describedby={reason === null ? undefined : id}
        placeholder={column === "label" ? say.next : ""}
        {...input}
        onBlur={(event) => {
          input.onBlur();
          onLeave(event.relatedTarget);
        }}
        onKeyDown={(event) => {
          input.onKeyDown(event);
          if (event.key !== "Enter") return;
          event.preventDefault();
          onEnter();
        }}
      />
      {reason !== null && (
        <p id={id} className="field-error">
          {reason}
        </p>
      )}
    </>
  );
}
