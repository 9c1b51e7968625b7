/**
 * The lines of a file, whatever it was: read once, kept with the work as they were drawn, so that all that is made of them can
 * be made again. In the file's own units, x to the right and y down, every transform, block and symbol carried out.
 */
import type { Mm } from "../units";

/** A place in the file, in its own units. */
export interface FilePlace {
  readonly x: number;
  readonly y: number;
}

/** What tells lines apart. */
export interface LineLook {
  /** Layer, or the name of the group nearest to the line; "" where it has none. */
  readonly layer: string;
  /** Names of all groups or blocks around it, outermost first, joined by " / "; "" where there are none. */
  readonly group: string;
  /** "#rrggbb". */
  readonly colour: string;
  /** Lengths of dashes and gaps in the file's units, joined by spaces, or the name of the line type; "" for a whole line. */
  readonly dash: string;
  /** In the file's units; 0: not said. */
  readonly width: number;
}

/** All lines of one look. */
export interface LinesOfLook {
  readonly look: LineLook;
  /** One unbroken line each, as path data of absolute M, L, C and Z alone: one M at the beginning, one Z at the end or none. */
  readonly paths: readonly string[];
}

/** A single point, as a drill hole or a notch is given in DXF. */
export interface FilePoint extends FilePlace {
  readonly layer: string;
  readonly group: string;
}

export interface Writing extends FilePlace {
  readonly text: string;
  readonly layer: string;
  readonly group: string;
}

/** How long one unit of the file is. */
export interface FileUnit {
  readonly mm: Mm;
  /** What in the file says so. */
  readonly saidBy: "size" | "header" | "text";
}

export interface FileDrawing {
  readonly format: "svg" | "dxf";
  /** null: the file does not say. */
  readonly unit: FileUnit | null;
  readonly lines: readonly LinesOfLook[];
  readonly points: readonly FilePoint[];
  readonly writings: readonly Writing[];
  /** Lines of layers and groups that were switched off in the file are read too; these are their layers. */
  readonly hiddenLayers: readonly string[];
}
