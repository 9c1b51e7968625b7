/** A work as a file to download. */
import type { Work } from "../core/decisions/work";
import type { PhotographInFile } from "../document/photographsFile";
import { writeWorkFile } from "../document/workFile";

export interface Download {
  readonly name: string;
  readonly text: string;
}

export const downloadOf = (work: Work, photographs: readonly PhotographInFile[] = []): Download => ({
  name: `${fileNameOf(work.name)}.bodice.json`,
  text: writeWorkFile(work, photographs),
});

/** @param time milliseconds since 1970 */
export const allWorksName = (time: number): string =>
  `bodicewright-works-${new Date(time).toISOString().slice(0, 10)}.json`;

const fileNameOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60) || "work";
