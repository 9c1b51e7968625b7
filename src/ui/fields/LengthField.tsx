import { useRef } from "react";
import { parseLength } from "../../core/measures/length";
import type { Command } from "../../core/plan/commands";
import { ON_A_MARK } from "../../core/tolerance";
import { MM_PER_INCH, type Mm } from "../../core/units";
import { formatLengthEntry, lengthFailureSentence } from "../../words/terms/length";
import { useWork } from "../session/useWork";
import { EntryField, type EntryLook } from "./EntryField";
import { useEntry, type Stepped } from "./useEntry";
import { untilThen } from "../../words/page";

export interface LengthFieldProps extends EntryLook {
  /** Key of the entry among those that could not be read. */
  readonly field: string;
  readonly value: Mm | undefined;
  /** What an entry of this length does to the work as it is before she types. */
  readonly set: (value: Mm) => Command;
  /** What else belongs to an entry, as one step with it. */
  readonly also?: () => readonly Command[];
  /** What emptying the field does; without it an emptied field goes back to its value. */
  readonly clear?: Command;
  /** Why a length that reads well cannot be taken all the same. */
  readonly refuse?: (value: Mm) => string | null;
  /** Takes lengths below nothing, as for an alteration that makes smaller. */
  readonly signed?: boolean;
  /** Takes feet and inches, as heights are told in. */
  readonly feet?: boolean;
  readonly onFocus?: () => void;
}

/** One press of an arrow key, and one with Shift. */
const STEPS = {
  cm: { small: 1, large: 10 },
  in: { small: MM_PER_INCH / 16, large: MM_PER_INCH / 2 },
} as const;

/**
 * A length as typed and a length as understood: what reads well is taken at every key, and what cannot be read stays in the
 * field as it was typed, beside the reason once the field is left.
 */
export function LengthField(props: LengthFieldProps) {
  const { field, value, set, also, clear, refuse, signed = false, feet = false, onFocus, ...look } = props;
  const unit = useWork((work) => work.unit);
  const settled = value === undefined ? "" : formatLengthEntry(value, unit);
  /** Where the last press of an arrow key came to: its text may be rounded. */
  const last = useRef<{ readonly text: string; readonly value: Mm } | null>(null);

  /** Why this text cannot be taken, or the length it says. */
  const lengthOf = (text: string): { readonly length: Mm } | { readonly reason: string } => {
    const parsed = parseLength(text, unit, { signed, feet });
    if (!parsed.ok) return { reason: lengthFailureSentence(parsed.failure, unit) };
    const reason = refuse?.(parsed.value) ?? null;
    return reason === null ? { length: parsed.value } : { reason };
  };

  const step = (direction: 1 | -1, isLarge: boolean, text: string): Stepped | null => {
    const typed = lengthOf(text.trim());
    const from =
      text === settled
        ? value
        : text === last.current?.text
          ? last.current.value
          : "length" in typed
            ? typed.length
            : value;
    if (from === undefined) return null;
    const size = isLarge ? STEPS[unit].large : STEPS[unit].small;
    // To the next mark of the tape in that direction, so that a value between two marks meets them.
    const marks = from / STEPS[unit].small;
    const onMark = direction === 1 ? Math.floor(marks + ON_A_MARK) : Math.ceil(marks - ON_A_MARK);
    const next = Math.round((onMark * STEPS[unit].small + direction * size) * 1e6) / 1e6;
    if ((next < 0 && !signed) || (refuse?.(next) ?? null) !== null) return null;
    last.current = { text: formatLengthEntry(next, unit), value: next };
    return { commands: [set(next)], text: last.current.text };
  };

  const entry = useEntry({
    field,
    settled,
    read: (text) => {
      const read = lengthOf(text);
      return "length" in read ? { commands: [set(read.length)] } : read;
    },
    ...(also === undefined ? {} : { also }),
    ...(clear === undefined ? {} : { clear: () => [clear] }),
    step,
    endsWithKey: true,
  });
  const kept = value === undefined ? "" : untilThen(settled, unit);
  return (
    <EntryField
      {...look}
      entry={entry}
      unit={unit}
      error={entry.reason === null ? null : `${entry.reason}${kept}`}
      inputMode={unit === "cm" ? "decimal" : "text"}
      {...(unit === "in" && feet ? {} : { lacking: { parts: unit === "in", sign: signed } })}
      onFocus={onFocus}
    />
  );
}
