/** Reads the command line of `plan`. */
import type { Half } from "../core/decisions/alteration";
import { TRIAL_VERDICTS, type TrialVerdict } from "../core/decisions/trial";
import { fail, ok, type Result } from "../core/result";
import type { Mm } from "../core/units";
import { asksForHelp, isDay, readOptions, type Given } from "./options";
import * as say from "../words/doors/planDoor";

export const USAGE = say.help;

/** What is done to the work, in this order. */
export interface Turn {
  /** A file of lines for the open trial. */
  readonly seen: string | null;
  /** An answer of the open trial by its number, from 1, on one half alone or as it is. */
  readonly take: { readonly answer: number; readonly half: Half | null } | null;
  readonly keepHalf: Half | "mean" | null;
  readonly close: { readonly verdict: TrialVerdict; readonly isBase: boolean } | null;
  /** The day, yyyy-mm-dd; null: today. */
  readonly begin: { readonly day: string | null } | null;
}

export type Command =
  | { readonly kind: "help" }
  /** `seen`: lines that count for this print alone. */
  | {
      readonly kind: "plan";
      readonly file: string;
      readonly json: boolean;
      readonly seen?: string;
      readonly widths: readonly Mm[];
    }
  | { readonly kind: "turn"; readonly file: string; readonly turn: Turn; readonly out: string };

const VALUED = ["--widths", "--seen", "--take", "--half", "--keep-half", "--close", "--day", "--out"] as const;
const PLAIN = ["--json", "--base", "--begin-trial"] as const;
type Valued = (typeof VALUED)[number];
type Plain = (typeof PLAIN)[number];

/** What changes the work, so that there must be a place to write it. */
const DOES = ["--take", "--keep-half", "--close", "--begin-trial"] as const;
/** What says nothing without another option. */
const LEANS = [
  ["--widths", "--json"],
  ["--half", "--take"],
  ["--base", "--close"],
  ["--day", "--begin-trial"],
] as const;

const HALVES: readonly Half[] = ["left", "right"];
const KEPT: readonly (Half | "mean")[] = [...HALVES, "mean"];

/** @returns the command, or one line that says what is wrong with the arguments */
export function readArguments(args: readonly string[]): Result<Command, string> {
  if (asksForHelp(args)) return ok({ kind: "help" });
  const given = readOptions(args, VALUED, PLAIN);
  return given.ok ? commandOf(given.value) : given;
}

function commandOf({ files, values, flags }: Given<Valued, Plain>): Result<Command, string> {
  const [file, second] = files;
  if (file === undefined || file === "") return fail(say.noFileNamed);
  if (second !== undefined) return fail(say.oneFileTooMany(second));
  const asked: readonly (Valued | Plain)[] = [...values.keys(), ...flags];
  const has = (option: Valued | Plain): boolean => asked.includes(option);
  const idle = LEANS.find(([option, needs]) => has(option) && !has(needs));
  if (idle !== undefined) return fail(say.goesWithAlone(idle[0], idle[1]));
  const out = values.get("--out");
  const does = DOES.find(has);
  const seen = values.get("--seen") ?? null;
  if (out === undefined) {
    if (does !== undefined) return fail(say.sayWhereToWrite(does));
    const widths = widthsIn(values.get("--widths"));
    if (widths === null) return fail(say.noWidths(values.get("--widths")));
    return ok({ kind: "plan", file, json: flags.has("--json"), widths, ...(seen === null ? {} : { seen }) });
  }
  if (does === undefined && seen === null) return fail(say.nothingToDo);
  if (flags.has("--json")) return fail(say.jsonOrOut);
  const turn = turnOf(values, flags);
  return turn.ok ? ok({ kind: "turn", file, turn: turn.value, out }) : turn;
}

function turnOf(values: ReadonlyMap<Valued, string>, flags: ReadonlySet<Plain>): Result<Turn, string> {
  const take = values.get("--take");
  const answer = Number(take);
  if (take !== undefined && !/^[1-9]\d{0,3}$/u.test(take)) return fail(say.noAnswerNumber(take));
  const half = oneOf(HALVES, values.get("--half"));
  if (half === undefined) return fail(say.noHalf(values.get("--half")));
  const keepHalf = oneOf(KEPT, values.get("--keep-half"));
  if (keepHalf === undefined) return fail(say.noHalfToKeep(values.get("--keep-half")));
  const verdict = oneOf(TRIAL_VERDICTS, values.get("--close"));
  if (verdict === undefined) return fail(say.noVerdict(values.get("--close")));
  const isBase = flags.has("--base");
  if (isBase && verdict !== "keep") return fail(say.baseIsKept);
  const day = values.get("--day") ?? null;
  if (day !== null && !isDay(day)) return fail(say.noDay(day));
  return ok({
    seen: values.get("--seen") ?? null,
    take: take === undefined ? null : { answer, half },
    keepHalf,
    close: verdict === null ? null : { verdict, isBase },
    begin: flags.has("--begin-trial") ? { day } : null,
  });
}

/** mm. No cloth is sold narrower or wider. */
const CLOTH_WIDTHS = { least: 200, most: 4000 } as const;

/** Each once, in order; null: they are none. */
function widthsIn(text: string | undefined): readonly Mm[] | null {
  if (text === undefined) return [];
  const widths = text.split(",").map((one) => (/^\d+(?:\.\d+)?$/u.test(one.trim()) ? Number(one) : Number.NaN));
  return widths.every((width) => width >= CLOTH_WIDTHS.least && width <= CLOTH_WIDTHS.most)
    ? [...new Set(widths)].toSorted((a, b) => a - b)
    : null;
}

/** null: nothing was given; undefined: what was given is none of them. */
const oneOf = <T extends string>(all: readonly T[], given: string | undefined): T | null | undefined =>
  given === undefined ? null : all.find((one) => one === given.toLowerCase());
