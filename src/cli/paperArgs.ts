/** Reads the command line of `paper`. */
import { SHEET_FORMATS, type SheetFormat } from "../core/decisions/paperChoice";
import { fail, ok, type Result } from "../core/result";
import { asksForHelp, isDay, readOptions, type Given } from "./options";
import * as say from "../words/doors/paperDoor";

export const PAPER_USAGE = say.help;

export type PaperKind = "pdf" | "svg" | "dxf" | "checklist";

/** What can be printed by itself of a dress. */
export const PARTS_NAMED = ["bodice", "skirt", "lining", "facings", "straps"] as const;
export type PartsNamed = (typeof PARTS_NAMED)[number];

export interface PaperCommand {
  readonly kind: "paper";
  readonly file: string;
  readonly as: PaperKind;
  /** "-": standard output. */
  readonly out: string;
  /** null: the work's own. */
  readonly paper: SheetFormat | null;
  /** Label of a printed size; null: the wearer's own line. */
  readonly size: string | null;
  readonly allSizes: boolean;
  /** null: all that there is. */
  readonly parts: readonly PartsNamed[] | null;
  readonly allowances: boolean;
  readonly toile: boolean;
  readonly overlay: boolean;
  /** yyyy-mm-dd; null: today. */
  readonly day: string | null;
}

const KINDS: readonly PaperKind[] = ["pdf", "svg", "dxf", "checklist"];
const KINDS_SAID = say.kindsOfPaper;

const VALUED = ["--as", "--out", "--paper", "--size", "--parts", "--day"] as const;
const PLAIN = ["--all-sizes", "--no-allowances", "--toile", "--overlay"] as const;
type Valued = (typeof VALUED)[number];
type Plain = (typeof PLAIN)[number];

/** @returns the command, or one line that says what is wrong with the arguments */
export function readPaperArguments(args: readonly string[]): Result<PaperCommand | { readonly kind: "help" }, string> {
  if (asksForHelp(args)) return ok({ kind: "help" });
  const given = readOptions(args, VALUED, PLAIN);
  return given.ok ? commandOf(given.value) : given;
}

function commandOf({ files, values, flags }: Given<Valued, Plain>): Result<PaperCommand, string> {
  const [file, second] = files;
  if (file === undefined || file === "") return fail(say.noFileNamed);
  if (second !== undefined) return fail(say.oneFileTooMany(second));

  const asked = values.get("--as");
  if (asked === undefined) return fail(say.sayKind(KINDS_SAID));
  const as = KINDS.find((kind) => kind === asked.toLowerCase());
  if (as === undefined) return fail(say.noSuchKind(asked, KINDS_SAID));

  const out = values.get("--out");
  if (out === undefined) return fail(say.sayWhereToWrite);

  const overlay = flags.has("--overlay");
  const misplaced = misplacedIn(as, overlay, [...values.keys(), ...flags]);
  if (misplaced !== null) return fail(misplaced);

  const named = values.get("--paper");
  const paper = named === undefined ? null : formatNamed(named);
  if (paper === undefined) return fail(say.noSuchPaper(named, SHEET_FORMATS.map(handle).join(", ")));

  const day = values.get("--day") ?? null;
  if (day !== null && !isDay(day)) return fail(say.noDay(day));

  const partsAsked = values.get("--parts")?.toLowerCase().split(",");
  const parts = partsAsked === undefined ? null : PARTS_NAMED.filter((name) => partsAsked.includes(name));
  const unknown = partsAsked?.find((name) => !PARTS_NAMED.some((one) => one === name));
  if (unknown !== undefined) return fail(say.noSuchParts(unknown, PARTS_NAMED.join(", ")));

  return ok({
    kind: "paper",
    file,
    as,
    out,
    paper,
    size: values.get("--size") ?? null,
    allSizes: flags.has("--all-sizes"),
    parts,
    allowances: !flags.has("--no-allowances"),
    toile: flags.has("--toile"),
    overlay,
    day,
  });
}

/**
 * Says which option asks for what there is none of; null where each has its use. `--paper` and `--day` go with every kind, so
 * that one line can ask for all of them: what lies on no pages is the same on any paper.
 */
function misplacedIn(as: PaperKind, overlay: boolean, options: readonly (Valued | Plain)[]): string | null {
  const has = (option: Valued | Plain): boolean => options.includes(option);
  if (as === "checklist") {
    const idle = (["--size", "--all-sizes", "--parts", "--no-allowances", "--toile", "--overlay"] as const).find(has);
    return idle === undefined ? null : say.idleOfChecklist(idle);
  }
  if (overlay) {
    const idle = (["--size", "--all-sizes", "--parts", "--no-allowances", "--toile"] as const).find(has);
    return idle === undefined ? null : say.idleOfOverlay(idle);
  }
  if (has("--all-sizes") && has("--size")) return say.oneSizeOrAll;
  if (has("--parts") && (has("--all-sizes") || has("--size")))
    return say.partsOrSizes(has("--size") ? "--size" : "--all-sizes");
  if (has("--toile") && (has("--all-sizes") || has("--no-allowances")))
    return say.idleOfToile(has("--all-sizes") ? "--all-sizes" : "--no-allowances");
  return null;
}

const plainName = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]/gu, "");

/** The name without spaces, as it is typed on a command line. */
const handle = (format: SheetFormat): string => format.replaceAll(" ", "-");

const formatNamed = (name: string): SheetFormat | undefined =>
  SHEET_FORMATS.find((format) => plainName(format) === plainName(name));
