/** The words of the door to a file of outlines: its help, what it refuses, what is in the file. */
import { upToDecimals } from "../terms/language";

// piecesArgs
export const help = `Usage: npm run --silent pieces -- PATTERN [options]

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
export const unknownOption = (arg: string): string => `Unknown option ${arg}. --help shows what there is.`;
export const needsValue = (valued: string): string => `${valued} needs something behind it. --help shows what.`;
export const twice = (valued: string): string => `${valued} is there twice: once is enough.`;
export const noFileNamed = "Name the file to read. --help shows how.";
export const oneFileTooMany = (second: string): string => `One file at a time: ${second} is one too many.`;
export const knownLengthNeedsAll = "A known length needs all three: --known-length, --from and --to.";
export const noLength = (said: string): string =>
  `${said} is no length: --known-length is in millimetres, as 100 or 25.4.`;
export const noPlaceFrom = (from: string): string =>
  `${from} is no place: --from is x and y in the file's units, as 10,20.5.`;
export const noPlaceTo = (to: string): string => `${to} is no place: --to is x and y in the file's units, as 10,20.5.`;
export const samePlace = "--from and --to are the same place.";

// piecesText
export const whatIsInTheFile = "WHAT IS IN THE FILE";
export const scaleNotKnown = "not known: lengths below are in the file's own unit";
export const oneUnit = "One unit  ";
export const noLayer = "no layer";
export const andMoreKinds = (more: number): string => `and ${more} more kinds`;
export const ofAllSizes = "of all sizes";
export const marksInsideAPiece = "marks inside a piece";
export const notPartOfIt = "not part of it";
export const toldApartBy = (sortedBy: string): string => `Told apart by ${sortedBy}.`;
export const orBy = "Or by  ";
export const noOutlineCloses = "No outline closes.";
export const linesInside = (count: number): string => `Lines inside: ${count}`;
export const marksInside = (count: number): string => `Marks inside: ${count}`;
export const testSquare = "test square";
export const withoutAName = "without a name";
export const gapsJoined = (gap: number): string => `, gaps of up to ${upToDecimals(gap, 3)} joined`;
export const ofNoSize = "of no size";
export const linesThatCloseNothing = "Lines that close nothing";
export const leftOpen = (what: string, text: string): string => `${what}: ${text} left open`;
