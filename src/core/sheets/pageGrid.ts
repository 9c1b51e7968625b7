/** The grid of pages that a tiled sheet is parted by. Every page's window runs over into the next ones by the overlap. */
import { fail, ok, type Result } from "../result";
import { SAME_POINT, SMALLEST_WINDOW } from "../tolerance";
import type { Mm } from "../units";
import type { PaperFormat } from "./formats";
import type { LayoutFailure } from "./layout";

/** One way across the sheet: windows of `shown` mm begin every `step` mm, so that neighbours share `shown - step`. */
export interface Pitch {
  readonly shown: Mm;
  readonly step: Mm;
}

export interface PageGrid {
  readonly x: Pitch;
  readonly y: Pitch;
}

/**
 * What a paper leaves for printing, and how far its pages step. `y` is null on a roll.
 *
 * Fails with sheet/page-too-small where the window or the step is too small for use.
 */
export function pageGridOf(
  { width, height }: PaperFormat,
  margin: Mm,
  overlap: Mm,
): Result<{ readonly x: Pitch; readonly y: Pitch | null }, LayoutFailure> {
  const pitch = (paper: Mm): Pitch => ({ shown: paper - 2 * margin, step: paper - 2 * margin - overlap });
  const x = pitch(width);
  const y = height === null ? null : pitch(height);
  const least = Math.max(SMALLEST_WINDOW, 2 * overlap);
  if (x.shown >= least && (y === null || y.shown >= least)) return ok({ x, y });
  return fail({ code: "sheet/page-too-small", width: x.shown, height: (y ?? x).shown, least });
}

/**
 * Lines that part a stretch into zones in turn on one page alone and on two pages: zone 2i is on page i alone, zone
 * 2i + 1 in the overlap of pages i and i + 1. The first and the last page own their outer strips.
 */
export function zoneLines({ shown, step }: Pitch, pages: number): readonly Mm[] {
  const lines = [0];
  for (let page = 1; page < pages; page++) lines.push(page * step, (page - 1) * step + shown);
  lines.push((pages - 1) * step + shown);
  return lines;
}

/** How many pages reach over `length` mm. A hair more does not take another. */
export const pagesOver = ({ shown, step }: Pitch, length: Mm): number =>
  1 + Math.max(0, Math.ceil((length - shown - SAME_POINT) / step));
