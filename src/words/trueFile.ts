/** What true-scale files call what is drawn in them: layers of a drawing, and the writing of a DXF that is not set by its standard. */
import { plural } from "./terms/language";

export const pagesMap = "Map of the pages";
export const pageEdge = "Edge of the page";
export const testSquares = "Test squares";
export const joiningMarks = "Joining marks";
export const pageName = "Name of the page";
export const bustPoint = "Bust point";

/** How a piece of a DXF is cut: other programs show it as it stands. */
export function cutText(count: number, onFold: boolean, half: "left" | "right" | null): string {
  if (onFold && half !== null) return `Join to the ${half === "left" ? "right" : "left"} half, then cut 1`;
  if (onFold) return `Cut ${count} on the fold`;
  return plural(count, {
    one: "Cut 1",
    other: `Cut ${count}, ${count === 2 ? "one" : Math.floor(count / 2)} turned over`,
  });
}

export const allPrintedSizes = "All printed sizes";
export const printedSize = (label: string): string => `Printed size ${label}`;
export const madeOn = (day: string): string => `Made on ${day}.`;

/** "For Ada. Pattern: Wren. All printed sizes." */
export const sheetOf = (wearer: string | undefined, pattern: string, lines: string): string =>
  `${wearer === undefined ? "" : `For ${wearer}. `}Pattern: ${pattern}. ${lines}.`;
