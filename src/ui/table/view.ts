/** The part of the table that is seen: which millimetre lies at the top left, and how many pixels a millimetre takes. */
import type { Box } from "../../drawing/index";

export interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

const LEAST_SCALE = 0.15;
const MOST_SCALE = 12;

/** How a table is looked at: how a box is shown whole, and how far off and how near it can be seen, pixels to a millimetre. */
export interface Sight {
  readonly fit: (box: Box, size: Size) => View;
  readonly least: number;
  readonly most: number;
}

const held = (scale: number, { least, most }: Pick<Sight, "least" | "most">): number =>
  Math.min(most, Math.max(least, scale));

/** Pixels at the top that the tools lie on until they are measured: in two rows on a table between a phone's and a wide one. */
const toolsRoom = (width: number): number => (width >= 420 && width < 680 ? 84 : 52);

/** Pixels at the left, so that the first piece's centre line is seen. */
const SIDE_ROOM = 10;

/** Pixels under the pieces for the sizes of the printed lines. */
const SIZES_ROOM = 14;

/** Pixels at the right for what is written beside a piece; on a narrow table only the share is. */
const WORDS_ROOM = { wide: 108, narrow: 46 };
const NARROW = 520;

/** Pixels between the tools and the highest piece, and how much of a low table the tools are given at most. */
const UNDER_TOOLS = 10;
const MOST_TOOLS = 0.5;

/** Shows a whole box in the middle of what the tools and the words leave free. @param top pixels at the top that are not free */
export function fitBox(box: Box, size: Size, top = toolsRoom(size.width)): View {
  const height = size.height - top - SIZES_ROOM;
  const width = size.width - SIDE_ROOM - (size.width < NARROW ? WORDS_ROOM.narrow : WORDS_ROOM.wide);
  const scale = held(Math.min(width / box.width, height / box.height), { least: LEAST_SCALE, most: MOST_SCALE });
  return {
    scale,
    x: box.x - SIDE_ROOM / scale - (width / scale - box.width) / 2,
    y: box.y - top / scale - (height / scale - box.height) / 2,
  };
}

export const TABLE_SIGHT: Sight = { fit: fitBox, least: LEAST_SCALE, most: MOST_SCALE };

/** Pixels of the row of tools that is there while the halves differ. */
const HALVES_ROOM = 44;

/** The table under tools that end so many pixels below its top; 0 before they are laid out. */
export const sightUnder = (tools: number, halvesDiffer: boolean): Sight => ({
  ...TABLE_SIGHT,
  fit: (box, size) =>
    fitBox(
      box,
      size,
      tools > 0
        ? Math.min(tools + UNDER_TOOLS, size.height * MOST_TOOLS)
        : toolsRoom(size.width) + (halvesDiffer ? HALVES_ROOM : 0),
    ),
});

/** Zooms by a factor about a place on the screen, which stays where it is. */
export function zoomAt(view: View, factor: number, px: number, py: number, sight: Sight = TABLE_SIGHT): View {
  const scale = held(view.scale * factor, sight);
  return { scale, x: view.x + px / view.scale - px / scale, y: view.y + py / view.scale - py / scale };
}

export const panBy = (view: View, dx: number, dy: number): View => ({
  ...view,
  x: view.x - dx / view.scale,
  y: view.y - dy / view.scale,
});

export const viewBoxOf = ({ x, y, scale }: View, { width, height }: Size): string =>
  `${x} ${y} ${width / scale} ${height / scale}`;
