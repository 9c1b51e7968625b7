/** Reads the command line of `pieces`. */
import type { OwnPattern } from "../core/decisions/ownPattern";
import type { FilePlace } from "../core/decisions/fileDrawing";
import { LIMITS } from "../core/decisions/limits";
import { fail, ok, type Result } from "../core/result";
import * as say from "../words/doors/piecesDoor";

export const PIECES_USAGE = say.help;

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
    if (valued === undefined) return fail(say.unknownOption(arg));
    const value = joined ?? (before[i + 1]?.startsWith("--") === true ? undefined : before[i + 1]);
    if (value === undefined || value === "") return fail(say.needsValue(valued));
    if (values.has(valued)) return fail(say.twice(valued));
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
  if (file === undefined || file === "") return fail(say.noFileNamed);
  if (second !== undefined) return fail(say.oneFileTooMany(second));
  const known = knownOf(values);
  if (!known.ok) return known;
  return ok({ kind: "pieces", file, json, known: known.value, chart: values.get("--chart") ?? null });
}

function knownOf(values: ReadonlyMap<Valued, string>): Result<OwnPattern["known"] | null, string> {
  const [said, from, to] = [values.get("--known-length"), values.get("--from"), values.get("--to")];
  if (said === undefined && from === undefined && to === undefined) return ok(null);
  if (said === undefined || from === undefined || to === undefined) return fail(say.knownLengthNeedsAll);
  const length = Number(said);
  if (!(length > 0 && length <= LIMITS.length)) return fail(say.noLength(said));
  const [begin, end] = [placeOf(from), placeOf(to)];
  if (begin === null) return fail(say.noPlaceFrom(from));
  if (end === null) return fail(say.noPlaceTo(to));
  if (begin.x === end.x && begin.y === end.y) return fail(say.samePlace);
  return ok({ from: begin, to: end, length });
}

const within = (value: number): boolean => value >= -LIMITS.fileCoordinate && value <= LIMITS.fileCoordinate;

function placeOf(text: string): FilePlace | null {
  const [x, y, more] = text.split(",").map((part) => (part.trim() === "" ? NaN : Number(part)));
  return x === undefined || y === undefined || more !== undefined || !within(x) || !within(y) ? null : { x, y };
}
