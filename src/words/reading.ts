/** Why a file of outlines could not be read: one sentence for each reason, and what to do where there is something to do. */
import { manyWords } from "./terms/language";

/** Takes the codes alone, since words know nothing of the layer that reads. */
export type ReadingFailureLike =
  | { readonly code: "reading/too-large"; readonly bytes: number; readonly most: number }
  | {
      readonly code: "reading/other-format";
      readonly format: "pdf" | "picture" | "packed" | "binaryDxf" | "dwg" | "unknown";
    }
  | { readonly code: "reading/cut-short" }
  | { readonly code: "reading/damaged"; readonly line: number }
  | {
      readonly code: "reading/too-many";
      readonly of: "lines" | "looks" | "marks" | "objects" | "letters" | "copies";
      readonly count: number;
      readonly most: number;
    }
  | { readonly code: "reading/endless"; readonly name: string }
  | { readonly code: "reading/too-deep"; readonly most: number }
  | { readonly code: "reading/out-of-reach"; readonly most: number }
  | { readonly code: "reading/empty" };

type Format = Extract<ReadingFailureLike, { code: "reading/other-format" }>["format"];
type Many = Extract<ReadingFailureLike, { code: "reading/too-many" }>["of"];

const FORMAT_WORDS: Readonly<Record<Format, string>> = {
  pdf: "This is a PDF file: save it as SVG from a drawing program first.",
  picture: "This is a picture, not a drawing of lines: SVG and DXF files are read.",
  packed: "This file is packed: unpack it first.",
  binaryDxf: "This is a binary DXF file: save it as DXF of the ASCII kind.",
  dwg: "This is a DWG file: save it as DXF.",
  unknown: "This is neither an SVG nor a DXF file.",
};

const MANY_WORDS: Readonly<Record<Exclude<Many, "copies">, string>> = {
  lines: "lines",
  looks: "layers, groups and looks of lines",
  marks: "points or texts",
  objects: "objects",
  letters: "characters in its lines",
};

const MEGABYTE = 1_000_000;

export function readingFailureSentence(failure: ReadingFailureLike): string {
  switch (failure.code) {
    case "reading/too-large":
      return `This file has ${manyWords(Math.ceil(failure.bytes / MEGABYTE))} megabytes; ${manyWords(failure.most / MEGABYTE)} are the most that is read.`;
    case "reading/other-format":
      return FORMAT_WORDS[failure.format];
    case "reading/cut-short":
      return "This file ends in the middle of the drawing: fetch or save it again.";
    case "reading/damaged":
      return `This file is damaged at its line ${manyWords(failure.line)}: save it again, or from another program.`;
    case "reading/too-many":
      if (failure.of === "copies")
        return "This file takes more work to read than any pattern does: copies of copies, or far too many parts. Leave out what is not of the pattern, and save it again.";
      return `This drawing has ${manyWords(failure.count)} ${MANY_WORDS[failure.of]}; ${manyWords(failure.most)} are the most that is read. Leave out what is not of the pattern, and save it again.`;
    case "reading/endless":
      return `In this file “${failure.name}” is a part of itself, without end.`;
    case "reading/too-deep":
      return `In this file groups lie in groups, more than ${manyWords(failure.most)} deep: no pattern is drawn so.`;
    case "reading/out-of-reach":
      return "A place in this file is no number, or too far away for any pattern.";
    case "reading/empty":
      return "This file has no lines in it.";
  }
}
