/** The words of the door to paper: its help, what it refuses, what it made. */
import { counted } from "../terms/language";

// paperArgs
export const help = `Usage: npm run --silent paper -- FILE --as KIND --out PATH [options]

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
export const kindsOfPaper = "pdf, svg, dxf or checklist";
export const noFileNamed = "Name the work file to read. --help shows how.";
export const oneFileTooMany = (second: string): string => `One work file at a time: ${second} is one too many.`;
export const sayKind = (kinds: string): string => `Say what to write: --as ${kinds}.`;
export const noSuchKind = (asked: string, kinds: string): string =>
  `There is no ${asked} to write: --as can be ${kinds}.`;
export const sayWhereToWrite = "Say where to write it: --out and the name of a file, or --out - to print it.";
export const noSuchPaper = (named: string | undefined, text: string): string =>
  `There is no paper called ${named}: --paper can be ${text}.`;
export const noDay = (day: string): string => `${day} is no day: --day is year, month and day, as 2026-11-25.`;
export const noSuchParts = (unknown: string, text: string): string =>
  `There are no parts called ${unknown}: --parts can be ${text}.`;
export const idleOfChecklist = (idle: string): string =>
  `The checklist is plain text: ${idle} says nothing about it. Leave it out.`;
export const idleOfOverlay = (idle: string): string =>
  `Strips show your own stitch line alone: ${idle} does not go with --overlay.`;
export const oneSizeOrAll = "--size is one size and --all-sizes all of them: leave one out.";
export const partsOrSizes = (what: string): string =>
  `Printed sizes are of the pattern alone: --parts does not go with ${what}.`;
export const idleOfToile = (what: string): string =>
  `A toile has allowances to let out: ${what} does not go with --toile.`;

// answerPaper
export const noSuchSize = (size: string, text: string): string =>
  `The pattern has no size called ${size}: --size can be ${text}.`;
export const noSuchPartHere = (missing: string, text: string): string =>
  `This work has no ${missing} to print: --parts can be ${text}.`;
export const onOnePage = (parts: string, format: string): string => `${parts} on one page for the ${format}`;
export const linesCounted = (count: number): string => counted(count, { one: "line", other: "lines" });
export const stripsCounted = (count: number): string => counted(count, { one: "strip", other: "strips" });
export const piecesCounted = (count: number): string => counted(count, { one: "piece", other: "pieces" });
export const onPages = (parts: string, pages: number, format: string): string =>
  `${parts} on ${counted(pages, { one: "page", other: "pages" })} of ${format}`;
