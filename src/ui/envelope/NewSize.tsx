import { useId, useRef, type KeyboardEvent } from "react";
import type { SizeRow } from "../../core/chart/sizeChart";
import { parseLength } from "../../core/measures/length";
import { lengthFailureSentence } from "../../words/terms/length";
import { useRun, useWork, useWorkStore } from "../session/useWork";

const COLUMNS = ["label", "bust", "waist", "hip"] as const;
type Column = (typeof COLUMNS)[number];
const LABELS: Readonly<Record<Column, string>> = {
  label: "Name of the new size",
  bust: "Bust of the new size",
  waist: "Waist of the new size",
  hip: "Hip of the new size",
};
const GIRTHS = ["bust", "waist", "hip"] as const;

const field = (column: Column): string => `chart.new.${column}`;

/**
 * The empty line at the end of the chart. It is no size until all four entries are there and read well; until then it is
 * kept as typed. Enter moves on, and after the last entry the next empty line is ready.
 */
export function NewSize({ sizes }: { readonly sizes: readonly SizeRow[] }) {
  const unread = useWork((work) => work.unread);
  const unit = useWork((work) => work.unit);
  const run = useRun();
  const store = useWorkStore();
  const id = useId();
  const line = useRef<HTMLLIElement>(null);

  const focusOn = (column: Column): void =>
    line.current?.querySelector<HTMLInputElement>(`[data-column="${column}"]`)?.focus();

  const write = (column: Column, text: string): void => {
    if (text === "") run({ kind: "clearUnread", field: field(column) });
    else run({ kind: "setUnread", field: field(column), text });
  };

  /** Makes a size of the line if it is whole; says whether it was. */
  const add = (): boolean => {
    const { unread: typed } = store.getState().work;
    const label = (typed[field("label")] ?? "").trim();
    const [bust, waist, hip] = GIRTHS.map((column) => parseLength(typed[field(column)] ?? "", unit));
    if (label === "" || bust?.ok !== true || waist?.ok !== true || hip?.ok !== true) return false;
    run({ kind: "setSizes", sizes: [...sizes, { label, bust: bust.value, waist: waist.value, hip: hip.value }] });
    for (const column of COLUMNS) run({ kind: "clearUnread", field: field(column) });
    return true;
  };

  const onKeyDown = (event: KeyboardEvent, column: Column): void => {
    if (event.key !== "Enter") return;
    event.preventDefault();
    const firstMissing = COLUMNS.find((other) => (unread[field(other)] ?? "").trim() === "");
    const next = COLUMNS[COLUMNS.indexOf(column) + 1];
    if (firstMissing !== undefined) focusOn(next ?? firstMissing);
    else if (add()) focusOn("label");
  };

  const problems = GIRTHS.flatMap((column) => {
    const text = unread[field(column)];
    if (text === undefined) return [];
    const parsed = parseLength(text, unit);
    return parsed.ok ? [] : [{ column, reason: lengthFailureSentence(parsed.failure, unit) }];
  });

  return (
    <li ref={line} className="row size-row" data-new="">
      {COLUMNS.map((column) => {
        const problem = problems.find((other) => other.column === column);
        return (
          <input
            key={column}
            data-column={column}
            className="field-input"
            type="text"
            autoComplete="off"
            spellCheck={false}
            inputMode={column === "label" || unit === "in" ? "text" : "decimal"}
            aria-label={LABELS[column]}
            aria-invalid={problem !== undefined}
            aria-describedby={problem === undefined ? undefined : `${id}-${column}`}
            placeholder={column === "label" ? "next" : ""}
            value={unread[field(column)] ?? ""}
            onChange={(event) => write(column, event.target.value)}
            onKeyDown={(event) => onKeyDown(event, column)}
            onBlur={(event) => {
              const next = event.relatedTarget;
              if (!(next instanceof Node && line.current?.contains(next) === true)) add();
            }}
          />
        );
      })}
      <span />
      {problems.map(({ column, reason }) => (
        <p key={column} id={`${id}-${column}`} className="field-error">
          {reason}
        </p>
      ))}
    </li>
  );
}
