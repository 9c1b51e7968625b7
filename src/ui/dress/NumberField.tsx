import type { ReactNode } from "react";
import type { Command } from "../../core/plan/commands";
import { notANumber, numberEntry, outsideWords, readNumber } from "../../words/dressStep";
import { EntryField } from "../fields/EntryField";
import { useEntry } from "../fields/useEntry";

export interface NumberFieldProps {
  readonly label: ReactNode;
  /** Key of the entry among those that could not be read. */
  readonly field: string;
  /** Absent: as it usually is. */
  readonly value: number | undefined;
  readonly set: (value: number) => Command;
  readonly clear: Command;
  /** Beyond these nothing is taken. */
  readonly least: number;
  readonly most: number;
  /** One press of an arrow key; with Shift ten of them. */
  readonly step: number;
  readonly isWhole?: boolean;
  readonly unit?: string;
  readonly hint?: string;
  /** What counts if nothing is entered. */
  readonly otherwise?: string;
  /** Said beside the field where what it asks for cannot be done. */
  readonly refusal?: string | null;
}

/** A plain number, how many times or how many: taken as it is typed, one visit one step of undo. */
export function NumberField(props: NumberFieldProps) {
  const { label, field, value, set, clear, least, most, step, isWhole = false, unit, hint, otherwise, refusal } = props;
  const isIn = (number: number): boolean => number >= least && number <= most;
  const entry = useEntry({
    field,
    settled: value === undefined ? "" : numberEntry(value),
    read: (text) => {
      const number = readNumber(text);
      if (number === null || (isWhole && !Number.isInteger(number))) return { reason: notANumber(text, isWhole) };
      return isIn(number) ? { commands: [set(number)] } : { reason: outsideWords(least, most) };
    },
    clear: () => [clear],
    step: (direction, isLarge, text) => {
      const from = readNumber(text) ?? readNumber(otherwise ?? "") ?? least;
      const next = Number((from + direction * step * (isLarge ? 10 : 1)).toFixed(2));
      return isIn(next) ? { commands: [set(next)], text: numberEntry(next) } : null;
    },
    endsWithKey: true,
  });
  return (
    <EntryField
      label={label}
      entry={entry}
      error={entry.isTyped ? null : (entry.reason ?? refusal ?? null)}
      inputMode={isWhole ? "numeric" : "decimal"}
      {...(unit === undefined ? {} : { unit })}
      {...(hint === undefined ? {} : { hint })}
      {...(otherwise === undefined ? {} : { otherwise })}
    />
  );
}
