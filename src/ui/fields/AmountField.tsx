import { useRef, type ReactNode } from "react";
import { parseAmount } from "../../core/measures/length";
import type { Command } from "../../core/plan/commands";
import type { LengthUnit } from "../../core/decisions/work";
import type { Mm } from "../../core/units";
import { formatAmount, lengthFailureSentence } from "../../words/terms/length";
import { EntryField } from "./EntryField";
import { useEntry, type Stepped } from "./useEntry";
import { amountUnit } from "../../words/page";

export interface AmountFieldProps {
  readonly label: ReactNode;
  /** Key of the entry among those that could not be read. */
  readonly field: string;
  /** Absent: none is entered. */
  readonly value: Mm | undefined;
  /** What this amount does to the work as it is before she types. */
  readonly set: (value: Mm) => readonly Command[];
  /** What emptying the field does; without it, what an amount of nothing does. */
  readonly clear?: () => readonly Command[];
  /** Why an amount that reads well cannot be taken all the same. */
  readonly refuse?: (value: Mm) => string | null;
  readonly unit: LengthUnit;
  /** One press of an arrow key; with Shift ten of them. */
  readonly step: Mm;
  /** Called when a visit begins to change something. */
  readonly onStart?: () => void;
  readonly hint?: string;
  /** What counts if nothing is entered. */
  readonly otherwise?: Mm;
  /** Said beside the field where what it asks for cannot be done; not while it is being typed. */
  readonly refusal?: string | null;
}

/** The amount as it stands in the field: millimetres to 0.1, or inches with their fraction. */
const entryOf = (value: Mm, unit: LengthUnit): string =>
  unit === "cm" ? String(Math.round(value * 10) / 10).replace("-", "−") : formatAmount(value, unit).replace(/ in$/, "");

/**
 * A small amount to move by: typed, or stepped with the arrow keys; one visit that changed something is one step of undo.
 * What cannot be read stays as it was typed, beside the reason, until it is put right or Escape takes it back.
 */
export function AmountField(props: AmountFieldProps) {
  const { label, field, value, set, clear, refuse, unit, step, onStart, hint, otherwise, refusal = null } = props;
  const settled = value === undefined ? "" : entryOf(value, unit);
  /** Where the last press of an arrow key came to: its text may be rounded. */
  const last = useRef<{ readonly text: string; readonly value: Mm } | null>(null);

  const stepped = (direction: 1 | -1, isLarge: boolean, text: string): Stepped & { readonly value: Mm } => {
    const typed = parseAmount(text, unit);
    const from =
      text === settled
        ? (value ?? 0)
        : text === last.current?.text
          ? last.current.value
          : typed.ok
            ? typed.value
            : (value ?? 0);
    const next = from + direction * step * (isLarge ? 10 : 1);
    last.current = { text: entryOf(next, unit), value: next };
    return { commands: set(next), ...last.current };
  };

  const entry = useEntry({
    field,
    settled,
    read: (text) => {
      const parsed = parseAmount(text, unit);
      if (!parsed.ok) return { reason: lengthFailureSentence(parsed.failure, unit) };
      const reason = refuse?.(parsed.value) ?? null;
      return reason === null ? { commands: set(parsed.value) } : { reason };
    },
    clear: clear ?? (() => set(0)),
    step: (direction, isLarge, text) => {
      const next = stepped(direction, isLarge, text);
      return (refuse?.(next.value) ?? null) === null ? next : null;
    },
    ...(onStart === undefined ? {} : { onStart }),
  });
  return (
    <EntryField
      label={label}
      entry={entry}
      unit={amountUnit(unit)}
      error={entry.isTyped ? null : (entry.reason ?? refusal)}
      inputMode="text"
      lacking={{ parts: unit === "in", sign: true }}
      {...(hint === undefined ? {} : { hint })}
      {...(otherwise === undefined ? {} : { otherwise: entryOf(otherwise, unit) })}
    />
  );
}
