/** Reads the command line. */
import { fail, ok, type Result } from "../core/result";

export const USAGE = `Usage: npm run --silent plan -- FILE [--json]

Reads a saved Bodicewright work file and prints its alteration checklist.

  FILE     a work file, as "Download this work" writes it
  --json   print the plan as JSON instead: lengths in mm, angles in degrees
  --help   print this and stop

Exit code 0 when there is a plan; 2 when the file cannot be read or gives no
plan, with one line on standard error that says why.
`;

export type Command =
  | { readonly kind: "help" }
  | { readonly kind: "plan"; readonly file: string; readonly json: boolean };

/** @returns the command, or one line that says what is wrong with the arguments */
export function readArguments(args: readonly string[]): Result<Command, string> {
  const end = args.indexOf("--");
  const options = (end === -1 ? args : args.slice(0, end)).filter((arg) => arg.startsWith("-") && arg !== "-");
  const files = args.filter((arg, index) => index !== end && ((end !== -1 && index > end) || !options.includes(arg)));
  if (options.includes("--help") || options.includes("-h")) return ok({ kind: "help" });
  const unknown = options.find((option) => option !== "--json");
  if (unknown !== undefined) return fail(`Unknown option ${unknown}. --help shows what there is.`);
  const [file, second] = files;
  if (file === undefined || file === "") return fail("Name the work file to read. --help shows how.");
  if (second !== undefined) return fail(`One work file at a time: ${second} is one too many.`);
  return ok({ kind: "plan", file, json: options.includes("--json") });
}
