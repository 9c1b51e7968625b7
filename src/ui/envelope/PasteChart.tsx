import { Fragment, useEffect, useId, useMemo, useRef } from "react";
import { pasteChart, type PastedChart, type PasteFinding } from "../../core/chart/pasteChart";
import { BODY_COLUMNS, FINISHED_COLUMNS, readSizes, type ChartColumn } from "../../core/chart/readChart";
import type { SizeRow } from "../../core/chart/sizeChart";
import { PRINTED_LENGTHS } from "../../core/decisions/pattern";
import type { Command } from "../../core/plan/commands";
import { columnWords, pasteFindingSentence } from "../../words/chart";
import { formatLengthEntry } from "../../words/terms/length";
import { capital } from "../../words/terms/names";
import { useRunAll } from "../session/useRunAll";
import { useRun, useSettledWork, useWork, useWorkStore } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { Findings } from "./Findings";
import * as say from "../../words/envelopeStep";

export const PASTE_FIELD = "chart.paste";

const SEVERITY_WORDS: Readonly<Record<PasteFinding["severity"], string>> = {
  blocks: say.toPutRightHead,
  warns: say.toLookAtHead,
  notes: "Note",
};

/** A chart as copied from elsewhere, and beside it how it reads; nothing is taken before she says so. */
export function PasteChart({ onDone }: { readonly onDone: () => void }) {
  const text = useWork((work) => work.unread[PASTE_FIELD] ?? "");
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const runAll = useRunAll();
  const store = useWorkStore();
  const id = useId();
  const entry = useRef<HTMLTextAreaElement>(null);
  const pasted = useMemo(() => (text.trim() === "" ? null : pasteChart(text, unit)), [text, unit]);

  useEffect(() => entry.current?.focus(), []);

  const forget = (): void => {
    run({ kind: "clearUnread", field: PASTE_FIELD });
    onDone();
  };

  const take = ({ rows, lengths = {} }: PastedChart): void => {
    const printed = PRINTED_LENGTHS.flatMap((measure) =>
      Object.entries(lengths[measure]?.bySize ?? {}).map(([size, value]): Command => ({
        kind: "setPrintedLength",
        measure,
        size,
        value,
      })),
    );
    // What could not be read of the rows before was of those.
    const ofRows = Object.keys(store.getState().work.unread).filter((field) => /^chart\.\d/u.test(field));
    runAll([
      { kind: "setSizes", sizes: rows },
      ...printed,
      ...ofRows.map((field): Command => ({ kind: "clearUnread", field })),
    ]);
    forget();
  };

  const write = (typed: string): void =>
    run(
      typed === ""
        ? { kind: "clearUnread", field: PASTE_FIELD }
        : { kind: "setUnread", field: PASTE_FIELD, text: typed },
    );

  return (
    <div className="paste">
      <label htmlFor={id} className="field-label">
        {say.pasteTheChartHere}
      </label>
      <textarea
        id={id}
        ref={entry}
        spellCheck={false}
        value={text}
        aria-describedby={`${id}-hint`}
        onChange={(event) => write(event.target.value)}
      />
      <p id={`${id}-hint`} className="field-hint">
        {say.pasteAbout}
      </p>
      {pasted !== null && <PastePreview rows={pasted.rows} findings={pasted.findings} />}
      <div className="actions">
        {pasted !== null && pasted.rows.length > 0 && (
          <button type="button" className="button main" onClick={() => take(pasted)}>
            {say.takeSizes(pasted.rows.length)}
          </button>
        )}
        <button type="button" className="button" onClick={forget}>
          {say.leaveIt}
        </button>
      </div>
    </div>
  );
}

interface PastePreviewProps {
  readonly rows: readonly SizeRow[];
  readonly findings: readonly PasteFinding[];
}

function PastePreview({ rows, findings }: PastePreviewProps) {
  const unit = useSettledWork((work) => work.unit);
  const judged = useMemo(() => readSizes(rows), [rows]);
  const finished = FINISHED_COLUMNS.map(({ column }) => column).filter((column) =>
    rows.some((row) => row[column] !== undefined),
  );
  const columns: readonly Exclude<ChartColumn, "label">[] = [...BODY_COLUMNS, ...finished];
  const labels = new Set(rows.map((row) => row.label));
  // A size that could not be taken has no row of its own to stand beside.
  const general = findings.filter((finding) => finding.size === null || !labels.has(finding.size));
  const caption = say.sizesAsReadIn(unit === "cm" ? say.centimetres : say.inches);
  return (
    <div role="group" aria-label={say.howItReads}>
      <PasteFindings findings={general} />
      {rows.length > 0 && (
        // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it scrolls, by keys too
        <div className="paste-preview" role="group" aria-label={caption} tabIndex={0}>
          <table>
            <caption>{caption}</caption>
            <thead>
              <tr>
                <th scope="col">{say.size}</th>
                {columns.map((column) => (
                  <th key={column} scope="col">
                    {capital(columnWords(column))}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {rows.map((row, index) => {
                const own = findings.filter((finding) => finding.size === row.label);
                const said = judged.filter((finding) => finding.row === index);
                return (
                  <Fragment key={index}>
                    <tr>
                      <th scope="row">{row.label}</th>
                      {columns.map((column) => {
                        const value = row[column];
                        return (
                          <td key={column}>
                            {value !== undefined && <Fractions text={formatLengthEntry(value, unit)} />}
                          </td>
                        );
                      })}
                    </tr>
                    {own.length + said.length > 0 && (
                      <tr>
                        <td colSpan={columns.length + 1}>
                          <PasteFindings findings={own} />
                          <Findings findings={said} />
                        </td>
                      </tr>
                    )}
                  </Fragment>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
      {rows.length > 0 && <Findings findings={judged.filter((finding) => finding.row === null)} />}
    </div>
  );
}

function PasteFindings({ findings }: { readonly findings: readonly PasteFinding[] }) {
  const unit = useSettledWork((work) => work.unit);
  return findings.map((finding, index) => (
    <p key={`${finding.code} ${index}`} className="finding" data-severity={finding.severity}>
      {SEVERITY_WORDS[finding.severity]}: <Fractions text={pasteFindingSentence(finding, unit)} />
    </p>
  ));
}
