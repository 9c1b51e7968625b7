/** Reads the command line of `pieces`. */
import type { OwnPattern } from "../core/decisions/ownPattern";
import type { FilePlace } from "../core/decisions/fileDrawing";
import { LIMITS } from "../core/decisions/limits";
import { fail, ok, type Result } from "../core/result";

export const PIECES_USAGE = `Usage: npm run --silent pieces -- PATTERN [options]

Reads a file of outlines, SVG or DXF, and prints what is found in it: how large
it is and what proves it, its lines, its sizes, and its closed outlines with
their corners.

  PATTERN           an SVG file or a DXF file of the ASCII kind
  --known-length MM a length in it that you know, in millimetres;
                    goes with --from and --to
  --from X,Y        where that length begins, in the file's own units,
                    y downward
  --to X,Y          where it ends
  --chart FILE      a work file: sizes are matched with those of its chart
  --json            print it as JSON
  --help            print this and stop

Exit code 0 when the file is read; 2 when it cannot be, with one line on
standard error that says why.
`;

export interface PiecesCommand {
  readonly kind: "pieces";
  readonly file: string;
  readonly json: boolean;
  readonly known: OwnPattern["known"] | null;
  /** A work file; null: sizes are named by the pattern itself. */
  readonly chart: string | null;
}

const VALUED = ["--known-length", "--from", "--to", "--chart"] as const;
type Valued = (typeof VALUED)[number];

/** @returns the command, or one line that says what is wrong with the arguments */
export function readPiecesArguments(
  args: readonly string[],
): Result<PiecesCommand | { readonly kind: "help" }, string> {
  const end = args.indexOf("--");
  const before = end === -1 ? args : args.slice(0, end);
  if (before.includes("--help") || before.includes("-h")) return ok({ kind: "help" });
  const files = end === -1 ? [] : args.slice(end + 1);
  const values = new Map<Valued, string>();
  let json = false;
  const named: string[] = [];
  for (let i = 0; i < before.length; i += 1) {
    const arg = before[i] ?? "";
    if (!arg.startsWith("-") || arg === "-") {
      named.push(arg);
      continue;
    }
    if (arg === "--json") {
      json = true;
      continue;
    }
    const [, name = arg, joined] = /^(--[^=]+)=(.*)$/su.exec(arg) ?? [];
    const valued = VALUED.find((one) => one === name);
    if (valued === undefined) return fail(`Unknown option ${arg}. --help shows what there is.`);
    const value = joined ?? (before[i + 1]?.startsWith("--") === true ? undefined : before[i + 1]);
    if (value === undefined || value === "") return fail(`${valued} needs something behind it. --help shows what.`);
    if (values.has(valued)) return fail(`${valued} is there twice: once is enough.`);
    values.set(valued, value);
    if (joined === undefined) i += 1;
  }
  return commandOf([...named, ...files], values, json);
}

function commandOf(
  [file, second]: readonly string[],
  values: ReadonlyMap<Valued, string>,
  json: boolean,
): Result<PiecesCommand, string> {
  if (file === undefined || file === "") return fail("Name the file to read. --help shows how.");
  if (second !== undefined) return fail(`One file at a time: ${second} is one too many.`);
  const known = knownOf(values);
  if (!known.ok) return known;
  return ok({ kind: "pieces", file, json, known: known.value, chart: values.get("--chart") ?? null });
}

function knownOf(values: ReadonlyMap<Valued, string>): Result<OwnPattern["known"] | null, string> {
  const [said, from, to] = [values.get("--known-length"), values.get("--from"), values.get("--to")];
  if (said === undefined && from === undefined && to === undefined) return ok(null);
  if (said === undefined || from === undefined || to === undefined)
    return fail("A known length needs all three: --known-length, --from and --to.");
  const length = Number(said);
  if (!(length > 0 && length <= LIMITS.length))
    return fail(`${said} is no length: --known-length is in millimetres, as 100 or 25.4.`);
  const [begin, end] = [placeOf(from), placeOf(to)];
  if (begin === null) return fail(`${from} is no place: --from is x and y in the file's units, as 10,20.5.`);
  if (end === null) return fail(`${to} is no place: --to is x and y in the file's units, as 10,20.5.`);
  if (begin.x === end.x && begin.y === end.y) return fail("--from and --to are the same place.");
  return ok({ from: begin, to: end, length });
}

const within = (value: number): boolean => value >= -LIMITS.fileCoordinate && value <= LIMITS.fileCoordinate;

function placeOf(text: string): FilePlace | null {
  const [x, y, more] = text.split(",").map((part) => (part.trim() === "" ? NaN : Number(part)));
  return x === undefined || y === undefined || more !== undefined || !within(x) || !within(y) ? null : { x, y };
}
