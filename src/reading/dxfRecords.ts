/** An ASCII DXF file parted into its records, by group codes alone: of whatever release. */
import { refuse } from "./readingFailure";

/** An entity, a row of a table, the beginning or the end of a block. */
export interface DxfRecord {
  readonly type: string;
  /** Line of the file that it begins in, counted from 1. */
  readonly line: number;
  readonly codes: readonly number[];
  readonly values: readonly string[];
}

export interface DxfSections {
  /** Values of the header by the name of the variable. */
  readonly header: ReadonlyMap<string, string>;
  readonly tables: readonly DxfRecord[];
  readonly blocks: readonly DxfRecord[];
  readonly entities: readonly DxfRecord[];
}

const MOST_GROUPS = 3_000_000;
const MOST_RECORDS = 600_000;
const HELD = ["TABLES", "BLOCKS", "ENTITIES"] as const;
type Held = (typeof HELD)[number];

const CODE = /^-?\d{1,4}$/u;
const LONGEST_CODE = 16;

/** Refuses what is no sequence of group codes and values, and what ends before its end is said. */
export function dxfSections(text: string): DxfSections {
  const lineEnd = text.includes("\n") ? "\n" : "\r";
  const header = new Map<string, string>();
  const held: Readonly<Record<Held, DxfRecord[]>> = { TABLES: [], BLOCKS: [], ENTITIES: [] };
  let at = 0;
  let line = 0;
  let groups = 0;
  let records = 0;
  let section = "";
  let begun = false;
  let variable = "";
  let record: { type: string; line: number; codes: number[]; values: string[] } | null = null;

  const next = (): string | null => {
    if (at >= text.length) return null;
    const end = text.indexOf(lineEnd, at);
    const until = end === -1 ? text.length : end;
    const said = text.slice(at, until);
    at = until + 1;
    line += 1;
    return said.endsWith("\r") ? said.slice(0, -1) : said;
  };

  for (;;) {
    const first = next();
    if (first === null) {
      // Whatever stands behind the entities is not needed; that they end must be said.
      return section === "" && held.ENTITIES.length > 0
        ? { header, tables: held.TABLES, blocks: held.BLOCKS, entities: held.ENTITIES }
        : refuse({ code: "reading/cut-short" });
    }
    const said = first.length > LONGEST_CODE ? "" : first.trim();
    if (!CODE.test(said)) refuse({ code: "reading/damaged", line });
    const code = Number(said);
    const value = next();
    if (value === null) refuse({ code: "reading/cut-short" });
    groups += 1;
    if (groups > MOST_GROUPS) refuse({ code: "reading/too-many", of: "objects", count: groups, most: MOST_GROUPS });
    if (code === 0) {
      const type = value.trim().toUpperCase();
      record = null;
      begun = type === "SECTION";
      if (type === "EOF") return { header, tables: held.TABLES, blocks: held.BLOCKS, entities: held.ENTITIES };
      if (type === "ENDSEC" || begun) {
        section = "";
        continue;
      }
      const into = HELD.find((name) => name === section);
      if (into === undefined) continue;
      records += 1;
      if (records > MOST_RECORDS)
        refuse({ code: "reading/too-many", of: "objects", count: records, most: MOST_RECORDS });
      record = { type, line, codes: [], values: [] };
      held[into].push(record);
    } else if (begun && code === 2) {
      section = value.trim().toUpperCase();
      begun = false;
    } else if (section === "HEADER") {
      if (code === 9) variable = value.trim().toUpperCase();
      else if (!header.has(variable)) header.set(variable, value.trim());
    } else if (record !== null) {
      record.codes.push(code);
      record.values.push(value);
    }
  }
}

export function textAt({ codes, values }: DxfRecord, code: number): string | undefined {
  const at = codes.indexOf(code);
  return at === -1 ? undefined : values[at];
}

/** Infinite where it is beyond all numbers; what is none is refused. */
export function numberIn(text: string, { line }: DxfRecord): number {
  const said = text.trim();
  const value = said === "" ? NaN : Number(said);
  return Number.isNaN(value) ? refuse({ code: "reading/damaged", line }) : value;
}

export function numberAt(record: DxfRecord, code: number, absent = 0): number {
  const text = textAt(record, code);
  return text === undefined ? absent : numberIn(text, record);
}

/** All values of one code, in order. */
export const numbersAt = (record: DxfRecord, code: number): number[] =>
  record.values.filter((_, i) => record.codes[i] === code).map((text) => numberIn(text, record));
