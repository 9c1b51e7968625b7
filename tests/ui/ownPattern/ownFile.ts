/** The invented pattern of the fixture, read as the worker reads it. */
import type { FileDrawing } from "../../../src/core/decisions/fileDrawing";
import type { Work } from "../../../src/core/decisions/work";
import { readPatternFile } from "../../../src/reading/readPatternFile";
import text from "../../e2e/fixtures/thornfield.svg?raw";
import { sampleWork } from "../../support/sampleWork";

/** @param change of its text, before it is read */
export function thornfield(change: (svg: string) => string = (svg) => svg): FileDrawing {
  const read = readPatternFile({ name: "thornfield.svg", bytes: new TextEncoder().encode(change(text)) });
  if (!read.ok) throw new Error(read.failure.code);
  return read.value;
}

/** The sample with this file opened, to the waist as the file is. */
export const workWith = (drawing: FileDrawing): Partial<Work> => ({
  pattern: {
    ...sampleWork.pattern,
    length: "waist",
    own: { file: "thornfield.svg", drawing, pieces: [], cup: "B" },
  },
});
