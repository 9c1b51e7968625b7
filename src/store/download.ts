/** A work as a file to download. */
import type { Work } from "../core/decisions/work";
import { writeWorkFile } from "../document/workFile";

export interface Download {
  readonly name: string;
  readonly text: string;
}

export const downloadOf = (work: Work): Download => ({
  name: `${fileNameOf(work.name)}.bodice.json`,
  text: writeWorkFile(work),
});

const fileNameOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60) || "work";
