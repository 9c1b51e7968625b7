/** A work as a file to download. */
import type { Work } from "../core/decisions/work";
import type { PhotographInFile } from "../document/photographsFile";
import { LARGEST_WORKS } from "../document/readLimits";
import { writeWorkFile } from "../document/workFile";
import { writeWorksFile } from "../document/worksFile";

export interface Download {
  readonly name: string;
  readonly text: string;
}

/** The work with its photographs: one file, or as many as can each be opened again. */
export const downloadsOf = (work: Work, photographs: readonly PhotographInFile[] = []): readonly Download[] =>
  named(
    fileNameOf(work.name),
    ".bodice.json",
    inFiles(photographs, (some) => writeWorkFile(work, some)),
  );

/** @param time milliseconds since 1970 */
export const downloadsOfAll = (works: Parameters<typeof writeWorksFile>[0], time: number): readonly Download[] =>
  named(`bodicewright-works-${new Date(time).toISOString().slice(0, 10)}`, ".json", inFiles(works, writeWorksFile));

/** No file may be larger than what is read: halved until each is not. */
function inFiles<T>(all: readonly T[], write: (some: readonly T[]) => string): readonly string[] {
  const text = write(all);
  if (all.length < 2 || new Blob([text]).size <= LARGEST_WORKS) return [text];
  const half = Math.ceil(all.length / 2);
  return [...inFiles(all.slice(0, half), write), ...inFiles(all.slice(half), write)];
}

const named = (name: string, ending: string, texts: readonly string[]): readonly Download[] =>
  texts.map((text, at) => ({ name: `${name}${texts.length > 1 ? `-${at + 1}` : ""}${ending}`, text }));

const fileNameOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 60) || "work";
