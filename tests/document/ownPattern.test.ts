/** What is measured on the tissue and what was read from a file, in a work file: kept as it is, and refused where it is no such thing. */
import { describe, expect, it } from "vitest";
import { LIMITS } from "../../src/core/decisions/limits";
import type { OwnPattern } from "../../src/core/decisions/ownPattern";
import { applyCommand } from "../../src/core/plan/commands";
import type { Pattern } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { readWorkFile, writeWorkFile } from "../../src/document/workFile";
import { sampleWork } from "../support/sampleWork";

const own: OwnPattern = {
  file: "blouse.svg",
  drawing: {
    format: "svg",
    unit: { mm: 1, saidBy: "size" },
    lines: [
      {
        look: { layer: "12", group: "front / 12", colour: "#ff0000", dash: "", width: 0.5 },
        paths: ["M0 0L10.5 0C11 2 11 4 10 6Z", "M0-1.5L1e2,3"],
      },
    ],
    points: [{ x: 4, y: 5, layer: "marks", group: "" }],
    writings: [{ x: 1, y: 2, text: "FRONT", layer: "", group: "" }],
    hiddenLayers: ["notes"],
  },
  known: { from: { x: 0, y: 0 }, to: { x: 0, y: 100 }, length: 100 },
  joinWithin: 0.4,
  sortBy: "layer",
  lines: { 12: { of: "size", size: "12" }, marks: { of: "inner" } },
  cup: "C",
  pieces: [
    {
      id: "0:0",
      name: "front",
      extent: "half",
      turns: 1,
      turnedOver: true,
      line: "cutting",
      allowances: { side: 15, neck: 6 },
      centreOnFold: true,
      corners: [{ name: "underarm", size: "12", at: { x: 3, y: 4 } }],
      darts: [{ name: "frenchDart", size: "12", inner: { x: 1, y: 1 }, outer: { x: 2, y: 1 }, apex: { x: 1, y: 5 } }],
      notDarts: ["waistDart"],
      bustPoint: { size: "12", at: { x: 5, y: 5 } },
    },
    { id: "0:1", name: "other1", label: "collar", levels: { top: "neck", bottom: "shoulder" } },
    { id: "0:2", name: null, leftOut: true },
  ],
  inUse: true,
};

const withPattern = (more: Partial<Pattern>): Work => ({ ...sampleWork, pattern: { ...sampleWork.pattern, ...more } });

const fileWith = (more: object): string => {
  const file = JSON.parse(writeWorkFile(sampleWork)) as { readonly work: { readonly pattern: object } };
  return JSON.stringify({ ...file, work: { ...file.work, pattern: { ...file.work.pattern, ...more } } });
};

describe("a work with pieces from a file", () => {
  it("reads back as it was written", () => {
    const work = withPattern({ own });
    expect(readWorkFile(writeWorkFile(work))).toStrictEqual({ ok: true, value: work });
  });

  it.each([
    [
      "a path that is none",
      { drawing: { ...own.drawing, lines: [{ ...own.drawing.lines[0], paths: ["M0 0Q1 1 2 2"] }] } },
    ],
    ["a look without its layer", { drawing: { ...own.drawing, lines: [{ look: { colour: "#000000" }, paths: [] }] } }],
    ["a place without end", { known: { from: { x: 1e12, y: 0 }, to: { x: 0, y: 0 }, length: 10 } }],
    ["a length of nothing", { known: { ...own.known, length: 0 } }],
    [
      "a corner that there is none of",
      { pieces: [{ id: "a", name: "front", corners: [{ name: "elbow", size: "12", at: null }] }] },
    ],
    ["a piece that there is none of", { pieces: [{ id: "a", name: "sleeve" }] }],
    [
      "more pieces than can be kept",
      { pieces: Array.from({ length: LIMITS.filePieces + 1 }, (_, i) => ({ id: String(i), name: null })) },
    ],
    [
      "more lines than can be kept",
      {
        drawing: {
          ...own.drawing,
          lines: Array.from({ length: 3 }, () => ({
            ...own.drawing.lines[0],
            paths: Array.from({ length: LIMITS.fileLines / 2 }, () => "M0 0L1 1"),
          })),
        },
      },
    ],
  ])("is refused with %s", (_what, part) => {
    expect(readWorkFile(fileWith({ own: { ...own, ...part } })).ok).toBe(false);
  });

  it("may be as large as a file can be", () => {
    const [look] = own.drawing.lines;
    const lines = Array.from({ length: LIMITS.fileLines }, (_, i) => `M${i} 0L1 1`);
    const mark = { x: 1, y: 2, layer: "", group: "" };
    const marks = Array.from({ length: LIMITS.fileMarks }, () => mark);
    const large = {
      ...own,
      drawing: {
        ...own.drawing,
        lines: [{ ...look, paths: lines }],
        points: marks,
        writings: marks.map((one) => ({ ...one, text: "x" })),
      },
    };
    expect(readWorkFile(fileWith({ own: large })).ok).toBe(true);
  });
});

describe("what is measured on the tissue", () => {
  const tissue = { size: "16", pieces: { front: { waistDartMouth: 22, sideLength: 190 }, back: { waistStep: 9 } } };

  it("reads back as it was written", () => {
    const work = withPattern({ tissue });
    expect(readWorkFile(writeWorkFile(work))).toStrictEqual({ ok: true, value: work });
  });

  it.each([
    ["a length that there is none of", { ...tissue, pieces: { front: { sleeveLength: 10 } } }],
    ["a length below nothing", { ...tissue, pieces: { front: { sideLength: -1 } } }],
    ["no line that was measured", { pieces: tissue.pieces }],
  ])("is refused with %s", (_what, bad) => expect(readWorkFile(fileWith({ tissue: bad })).ok).toBe(false));

  it("begins with the first length, and is gone with the last", () => {
    const set = (work: Work, piece: "front" | "back", value: number | null): Work =>
      applyCommand(work, { kind: "setTissueLength", piece, length: "sideLength", size: "14", value });
    const one = set(sampleWork, "front", 190);
    expect(one.pattern.tissue).toEqual({ size: "14", pieces: { front: { sideLength: 190 } } });
    const other = applyCommand(one, { kind: "setTissueSize", size: "16" });
    expect(set(other, "back", 191).pattern.tissue).toEqual({
      size: "16",
      pieces: { front: { sideLength: 190 }, back: { sideLength: 191 } },
    });
    expect(set(other, "front", null).pattern).toStrictEqual(sampleWork.pattern);
  });
});
