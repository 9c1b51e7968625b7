/** A file of outlines as plain lines, whatever it is called: what it is, is seen by how it begins. */
import type { FileDrawing } from "../core/decisions/fileDrawing";
import { fail, type Result } from "../core/result";
import { readDxf } from "./readDxf";
import type { ReadingFailure } from "./readingFailure";
import { readSvg } from "./readSvg";

export interface PatternFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Bytes. A nest of a dozen sizes takes one or two million. */
export const LARGEST_PATTERN_FILE = 40_000_000;

/** @param file its name counts only where its beginning tells nothing */
export function readPatternFile({ name, bytes }: PatternFile): Result<FileDrawing, ReadingFailure> {
  if (bytes.length > LARGEST_PATTERN_FILE)
    return fail({ code: "reading/too-large", bytes: bytes.length, most: LARGEST_PATTERN_FILE });
  const other = otherFormat(bytes);
  if (other !== null) return fail({ code: "reading/other-format", format: other });
  const text = textOf(bytes);
  const start = text.slice(0, LOOKED_AT).trimStart();
  if (start === "") return fail({ code: "reading/empty" });
  if (start.startsWith("<") && (text.includes("<svg") || text.includes(":svg"))) return readSvg(text);
  if (/^(?:0|999)\s*[\r\n]/u.test(start) || (/\.dxf$/iu.test(name) && /^\d{1,3}\s*[\r\n]/u.test(start)))
    return readDxf(text);
  return fail({ code: "reading/other-format", format: "unknown" });
}

const LOOKED_AT = 4000;

type OtherFormat = Extract<ReadingFailure, { code: "reading/other-format" }>["format"];

/** How files begin that are neither. */
const BEGINNINGS: readonly (readonly [string, OtherFormat])[] = [
  ["%PDF", "pdf"],
  ["\u0089PNG", "picture"],
  ["\u00ff\u00d8\u00ff", "picture"],
  ["GIF8", "picture"],
  ["RIFF", "picture"],
  ["II*\u0000", "picture"],
  ["MM\u0000*", "picture"],
  ["BM", "picture"],
  ["\u001f\u008b", "packed"],
  ["PK\u0003\u0004", "packed"],
  ["AC10", "dwg"],
];

function otherFormat(bytes: Uint8Array): OtherFormat | null {
  const start = String.fromCodePoint(...bytes.slice(0, 32));
  if (start.includes(" Binary DXF\r\n\u001a")) return "binaryDxf";
  return BEGINNINGS.find(([beginning]) => start.startsWith(beginning))?.[1] ?? null;
}

/** As it says, else as UTF-8; where that does not fit, as what European programs wrote before. */
function textOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder("utf-16be").decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}
