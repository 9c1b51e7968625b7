/** Reads the command line of `paper`. */
import { SHEET_FORMATS, type SheetFormat } from "../core/decisions/paperChoice";
import { fail, ok, type Result } from "../core/result";
import { asksForHelp, isDay, readOptions, type Given } from "./options";

export const PAPER_USAGE = `Usage: npm run --silent paper -- FILE --as KIND --out PATH [options]

Reads a saved Bodicewright work file and writes its paper.

  FILE              a work file, as "Download this work" writes it
  --as KIND         pdf, svg or dxf: the altered pieces at true scale;
                    checklist: the alteration checklist as plain text
  --out PATH        the file to write, in place of what is there;
                    - for standard output
  --paper NAME      pages of the pdf: A4, A3, Letter, Tabloid, A0-roll or
                    36-in-roll; else the paper that the work itself has.
                    What lies on no pages is the same on any paper
  --size LABEL      the pieces of one printed size in place of your own line
  --all-sizes       every printed size, one in another, at the stitch line
  --parts NAMES     what to print of a work with a dress, with commas between:
                    bodice, skirt, lining, facings, straps; else all of it
  --no-allowances   end the pieces at the stitch line
  --toile           wide allowances where a toile may have to be let out
  --overlay         strips with only what changes, to lay on the tissue
                    (pdf or svg)
  --day YYYY-MM-DD  the day written on it; else today
  --help            print this and stop

Exit code 0 when it is written; 2 when it cannot be, with one line on standard
error that says why: nothing is written then, and what was there stays.
`;

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
const KINDS_SAID = "pdf, svg, dxf or checklist";

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
  if (file === undefined || file === "") return fail("Name the work file to read. --help shows how.");
  if (second !== undefined) return fail(`One work file at a time: ${second} is one too many.`);

  const asked = values.get("--as");
  if (asked === undefined) return fail(`Say what to write: --as ${KINDS_SAID}.`);
  const as = KINDS.find((kind) => kind === asked.toLowerCase());
  if (as === undefined) return fail(`There is no ${asked} to write: --as can be ${KINDS_SAID}.`);

  const out = values.get("--out");
  if (out === undefined) return fail("Say where to write it: --out and the name of a file, or --out - to print it.");

  const overlay = flags.has("--overlay");
  const misplaced = misplacedIn(as, overlay, [...values.keys(), ...flags]);
  if (misplaced !== null) return fail(misplaced);

  const named = values.get("--paper");
  const paper = named === undefined ? null : formatNamed(named);
  if (paper === undefined)
    return fail(`There is no paper called ${named}: --paper can be ${SHEET_FORMATS.map(handle).join(", ")}.`);

  const day = values.get("--day") ?? null;
  if (day !== null && !isDay(day)) return fail(`${day} is no day: --day is year, month and day, as 2026-11-25.`);

  const partsAsked = values.get("--parts")?.toLowerCase().split(",");
  const parts = partsAsked === undefined ? null : PARTS_NAMED.filter((name) => partsAsked.includes(name));
  const unknown = partsAsked?.find((name) => !PARTS_NAMED.some((one) => one === name));
  if (unknown !== undefined)
    return fail(`There are no parts called ${unknown}: --parts can be ${PARTS_NAMED.join(", ")}.`);

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
    return idle === undefined ? null : `The checklist is plain text: ${idle} says nothing about it. Leave it out.`;
  }
  if (overlay) {
    const idle = (["--size", "--all-sizes", "--parts", "--no-allowances", "--toile"] as const).find(has);
    return idle === undefined ? null : `Strips show your own stitch line alone: ${idle} does not go with --overlay.`;
  }
  if (has("--all-sizes") && has("--size")) return "--size is one size and --all-sizes all of them: leave one out.";
  if (has("--parts") && (has("--all-sizes") || has("--size")))
    return `Printed sizes are of the pattern alone: --parts does not go with ${has("--size") ? "--size" : "--all-sizes"}.`;
  if (has("--toile") && (has("--all-sizes") || has("--no-allowances")))
    return `A toile has allowances to let out: ${has("--all-sizes") ? "--all-sizes" : "--no-allowances"} does not go with --toile.`;
  return null;
}

const plainName = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]/gu, "");

/** The name without spaces, as it is typed on a command line. */
const handle = (format: SheetFormat): string => format.replaceAll(" ", "-");

const formatNamed = (name: string): SheetFormat | undefined =>
  SHEET_FORMATS.find((format) => plainName(format) === plainName(name));
