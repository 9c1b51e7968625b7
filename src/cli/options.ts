/** Parts a command line into files, options with something behind them, and options that stand alone. */
import { fail, ok, type Result } from "../core/result";
import * as say from "../words/doors/doorFiles";

export interface Given<V extends string, P extends string> {
  readonly files: readonly string[];
  readonly values: ReadonlyMap<V, string>;
  readonly flags: ReadonlySet<P>;
}

/**
 * What stands behind `--` are names of files, whatever they look like.
 *
 * @param valued options that need something behind them, as `--out PATH` or `--out=PATH`
 * @param plain options that stand alone
 * @returns what was given; or one line that says what is not understood
 */
export function readOptions<V extends string, P extends string>(
  args: readonly string[],
  valued: readonly V[],
  plain: readonly P[],
): Result<Given<V, P>, string> {
  const end = args.indexOf("--");
  const before = end === -1 ? args : args.slice(0, end);
  const files: string[] = [];
  const values = new Map<V, string>();
  const flags = new Set<P>();
  for (let i = 0; i < before.length; i += 1) {
    const arg = before[i] ?? "";
    if (!arg.startsWith("-") || arg === "-") {
      files.push(arg);
      continue;
    }
    const [, name = arg, joined] = /^(--[^=]+)=(.*)$/su.exec(arg) ?? [];
    const flag = plain.find((one) => one === name);
    const option = valued.find((one) => one === name);
    if (flag !== undefined && joined === undefined) {
      flags.add(flag);
    } else if (option === undefined) {
      return fail(say.unknownOption(arg));
    } else {
      const next = before[i + 1];
      const value = joined ?? (next?.startsWith("--") === true ? undefined : next);
      if (value === undefined || value === "") return fail(say.needsValue(option));
      if (values.has(option)) return fail(say.twice(option));
      values.set(option, value);
      if (joined === undefined) i += 1;
    }
  }
  return ok({ files: end === -1 ? files : [...files, ...args.slice(end + 1)], values, flags });
}

/** Whether that is asked for before a `--`. */
export function asksForHelp(args: readonly string[]): boolean {
  const end = args.indexOf("--");
  const before = end === -1 ? args : args.slice(0, end);
  return before.includes("--help") || before.includes("-h");
}

/** Whether a text is a day of the calendar, yyyy-mm-dd. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/u.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}
