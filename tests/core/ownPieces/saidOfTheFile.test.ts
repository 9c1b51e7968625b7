/** What she says of a file reaches how it is read; which pieces a plan needs. */
import { describe, expect, it } from "vitest";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { piecesNeeded, readOwn } from "../../../src/core/ownPieces/readOwn";
import { sampleWork } from "../../support/sampleWork";
import { box, drawn } from "../outlines/handStrokes";

const pattern: Pattern = { ...sampleWork.pattern, style: "sideDart", length: "waist" };
const drawing = drawn([
  [{ layer: "a", colour: "#000001" }, box(0, 0, 300, 400)],
  [{ layer: "b", colour: "#000002" }, box(0, 0, 310, 410)],
]);
const outlines = (more: Partial<OwnPattern>) =>
  readOwn({ own: { file: "file", drawing, pieces: [], ...more }, pattern }).outlines;

describe("what is said of a file", () => {
  it("is nothing at first", () => {
    const { scale, joinWithin, sortedBy, lines } = outlines({});
    expect([scale.mm, joinWithin, sortedBy]).toEqual([1, 0.5, "layer"]);
    expect(lines.map(({ saidBy }) => saidBy)).not.toContain("her");
  });

  it("is her own length, how wide gaps are, by what the sizes differ and what lines are", () => {
    const known = { from: { x: 0, y: 0 }, to: { x: 300, y: 400 }, length: 250 };
    expect(outlines({ known }).scale).toMatchObject({ mm: 0.5, by: "known" });
    expect(outlines({ joinWithin: 2 }).joinWithin).toBe(2);
    expect(outlines({ sortBy: "colour" }).sortedBy).toBe("colour");
    expect(outlines({ lines: { a: { of: "nothing" } } }).lines).toMatchObject([
      { value: "a", meaning: { of: "nothing" }, saidBy: "her" },
      { value: "b" },
    ]);
  });
});

it.each([
  ["sideDart", "waist", ["front", "back"]],
  ["princessArmhole", "waist", ["centreFront", "sideFront", "back"]],
  ["princessShoulder", "hip", ["centreFront", "sideFront", "back", "frontBasque", "backBasque"]],
] as const)("%s to the %s needs %s", (style, length, pieces) => {
  expect(piecesNeeded({ style, length })).toEqual(pieces);
});
