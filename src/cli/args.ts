/** Reads the command line of `plan`. */
import type { Half } from "../core/decisions/alteration";
import { TRIAL_VERDICTS, type TrialVerdict } from "../core/decisions/trial";
import { fail, ok, type Result } from "../core/result";
import type { Mm } from "../core/units";
import { asksForHelp, isDay, readOptions, type Given } from "./options";

export const USAGE = `Usage: npm run --silent plan -- FILE [--json]
       npm run --silent plan -- FILE [what to do] --out NEXT

Reads a saved Bodicewright work file and prints its alteration checklist, or
does one turn of a trial garment and writes the next work.

  FILE              a work file, as "Download this work" writes it
  --json            print the plan as JSON instead: lengths in mm, angles in
                    degrees
  --widths MM,MM    with --json: lay the dress on cloths of these widths too
  --seen SEEN       lines of a trial's record from a JSON file, put into the
                    open trial; without --out they count for this print alone
  --take N          take that answer of the open trial: 1 is the first
  --half HALF       with --take: try it on the left or the right half alone
  --keep-half HALF  left or right: what that half has, both have;
                    mean: the amounts between, where only these differ
  --close VERDICT   close the open trial: keep or again
  --base            with --close keep: it is the base for other works
  --begin-trial     what is decided now is sewn: a new trial begins
  --day YYYY-MM-DD  with --begin-trial: its day; else today
  --out NEXT        the work file to write, in place of what is there;
                    - for standard output
  --help            print this and stop

Several at once are done in the order they stand in here. Exit code 0 when
there is a plan, or the next work is written; 2 when not, with one line on
standard error that says why: nothing is written then.
`;

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
  if (file === undefined || file === "") return fail("Name the work file to read. --help shows how.");
  if (second !== undefined) return fail(`One work file at a time: ${second} is one too many.`);
  const asked: readonly (Valued | Plain)[] = [...values.keys(), ...flags];
  const has = (option: Valued | Plain): boolean => asked.includes(option);
  const idle = LEANS.find(([option, needs]) => has(option) && !has(needs));
  if (idle !== undefined) return fail(`${idle[0]} goes with ${idle[1]} alone. --help shows how.`);
  const out = values.get("--out");
  const does = DOES.find(has);
  const seen = values.get("--seen") ?? null;
  if (out === undefined) {
    if (does !== undefined) return fail(`${does} makes another work: say where to write it with --out.`);
    const widths = widthsIn(values.get("--widths"));
    if (widths === null) return fail(`--widths is widths of cloth in mm, as 1140,1500, not ${values.get("--widths")}.`);
    return ok({ kind: "plan", file, json: flags.has("--json"), widths, ...(seen === null ? {} : { seen }) });
  }
  if (does === undefined && seen === null) return fail("Say what to do before --out writes it. --help shows what.");
  if (flags.has("--json")) return fail("--json prints a plan and --out writes a work: leave one out.");
  const turn = turnOf(values, flags);
  return turn.ok ? ok({ kind: "turn", file, turn: turn.value, out }) : turn;
}

function turnOf(values: ReadonlyMap<Valued, string>, flags: ReadonlySet<Plain>): Result<Turn, string> {
  const take = values.get("--take");
  const answer = Number(take);
  if (take !== undefined && !/^[1-9]\d{0,3}$/u.test(take))
    return fail(`${take} is no number of an answer: --take 1 takes the first.`);
  const half = oneOf(HALVES, values.get("--half"));
  if (half === undefined) return fail(`--half is left or right, not ${values.get("--half")}.`);
  const keepHalf = oneOf(KEPT, values.get("--keep-half"));
  if (keepHalf === undefined) return fail(`--keep-half is left, right or mean, not ${values.get("--keep-half")}.`);
  const verdict = oneOf(TRIAL_VERDICTS, values.get("--close"));
  if (verdict === undefined) return fail(`--close is keep or again, not ${values.get("--close")}.`);
  const isBase = flags.has("--base");
  if (isBase && verdict !== "keep") return fail("Only a trial that is kept is a base: --base goes with --close keep.");
  const day = values.get("--day") ?? null;
  if (day !== null && !isDay(day)) return fail(`${day} is no day: --day is year, month and day, as 2026-11-25.`);
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
