/** Rows of alterations, whole, for lists of one or two made up by hand; differences are after less before. */
import { describe, expect, it } from "vitest";
import type { Alteration, DartEndAlteration, Half } from "../../../src/core/decisions/alteration";
import { alterationRows, rowsOnHalf } from "../../../src/core/versions/alterationRows";
import { ref } from "../../support/works";

const dart = ref("front", "waistDart");
const at = (half?: Half): { readonly half?: Half } => (half === undefined ? {} : { half });
const end = (shorten: number, across = 0, half?: Half): DartEndAlteration => ({
  kind: "dartEnd",
  id: "end",
  dart,
  shorten,
  across,
  hold: "mouth",
  giveBack: {},
  ...at(half),
});
const mouth = (inner: number, outer: number): Alteration => ({
  kind: "dartMouth",
  id: "m",
  dart,
  inner,
  outer,
  giveBack: {},
});
const place = (by: number): Alteration => ({ kind: "dartPlace", id: "p", dart, by, how: "redraw", giveBack: {} });
const legs = (bow: number, half?: Half): Alteration => ({ kind: "dartLegs", id: "l", dart, bow, ...at(half) });
const pivot = (share: number): Alteration => ({ kind: "dartPivot", id: "t", dart, to: "shoulder", share });
const gather: Alteration = { kind: "dartGather", id: "g", dart };
const sway = (amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: "s",
  fit: "swayBack",
  amount,
  ...at(half),
});
const waist = (amount: number, half?: Half): Alteration => ({
  kind: "fit",
  id: "w",
  fit: "sideSeamWaist",
  amount,
  ...at(half),
});

const by = (before: readonly Alteration[], after: readonly Alteration[]) =>
  alterationRows(before, after).map(({ by: amount, isChanged }) => [amount, isChanged]);

describe("a row", () => {
  it("has both as they stand, for both halves where neither names one", () => {
    expect(alterationRows([sway(10)], [sway(18)])).toEqual([
      { half: null, before: sway(10), after: sway(18), by: 8, isChanged: true },
    ]);
    expect(alterationRows([], [])).toEqual([]);
  });

  it("tells the difference of what is one amount: of an end its length, of a mouth both its ends together", () => {
    expect(by([end(5)], [end(12)])).toEqual([[7, true]]);
    expect(by([mouth(-3, -2)], [mouth(1, 4)])).toEqual([[10, true]]);
    expect(by([place(6)], [place(2)])).toEqual([[-4, true]]);
    expect(by([legs(2)], [legs(3)])).toEqual([[1, true]]);
    expect(by([legs(2)], [legs(2)])).toEqual([[0, false]]);
  });

  it("counts what is not there as nothing", () => {
    expect(by([], [sway(8)])).toEqual([[8, true]]);
    expect(by([sway(8)], [])).toEqual([[-8, true]]);
    expect(alterationRows([], [legs(2)])).toEqual([
      { half: null, before: null, after: legs(2), by: 2, isChanged: true },
    ]);
  });

  // A hand does not see half a millimetre.
  it("tells none where one amount does not say it: an end that went across too, a pivot, gathers", () => {
    expect(by([end(5, 0.5)], [end(9, -0.5)])).toEqual([[4, true]]);
    expect(by([end(5, 0.6)], [end(9)])).toEqual([[null, true]]);
    expect(by([end(5)], [end(9, -0.6)])).toEqual([[null, true]]);
    expect(by([], [end(9, 3)])).toEqual([[null, true]]);
    expect(by([pivot(1)], [pivot(0.5)])).toEqual([[null, true]]);
    expect(by([gather], [])).toEqual([[null, true]]);
    expect(by([gather], [gather])).toEqual([[null, false]]);
  });

  it("is changed by another way to make the same amount, not by its name", () => {
    expect(by([end(5)], [{ ...end(5), hold: "fullness" }])).toEqual([[0, true]]);
    expect(by([end(5)], [{ ...end(5), id: "other" }])).toEqual([[0, false]]);
  });

  it("stands in the trade's order whatever the order of the lists, what is gone among the rest", () => {
    const rows = alterationRows([waist(4), sway(3)], [gather, end(5)]);
    const kinds = rows.map(({ before, after }) => (after ?? before)?.id);
    // Length, then darts as they are put, then widths.
    expect(kinds).toEqual(["s", "g", "end", "w"]);
    expect(rows.map(({ before, after }) => [before !== null, after !== null])).toEqual([
      [true, false],
      [false, true],
      [false, true],
      [true, false],
    ]);
  });
});

describe("rows of halves", () => {
  it("are one for each half that has it, with what that half has", () => {
    expect(alterationRows([waist(20)], [waist(6, "left")])).toEqual([
      { half: "left", before: waist(10, "left"), after: waist(6, "left"), by: -4, isChanged: true },
      { half: "right", before: waist(10, "right"), after: null, by: -10, isChanged: true },
    ]);
    expect(alterationRows([], [sway(6, "right")])).toEqual([
      { half: "right", before: null, after: sway(6, "right"), by: 6, isChanged: true },
    ]);
    expect(alterationRows([sway(6, "left")], [sway(6)])).toEqual([
      { half: "left", before: sway(6, "left"), after: sway(6, "left"), by: 0, isChanged: false },
      { half: "right", before: null, after: sway(6, "right"), by: 6, isChanged: true },
    ]);
  });

  it("of an older work count what is for both and what is for one besides together, of a dart the first of them", () => {
    // 20 all round are 10 on each half, and 5 more on the left.
    expect(alterationRows([waist(20), waist(5, "left")], []).map(({ half, before }) => [half, before])).toEqual([
      ["left", waist(15, "left")],
      ["right", waist(10, "right")],
    ]);
    expect(alterationRows([legs(2), legs(5, "right")], []).map(({ before }) => before)).toEqual([
      legs(2, "left"),
      legs(2, "right"),
    ]);
    expect(alterationRows([sway(4, "left"), sway(4, "right")], []).map(({ before }) => before)).toEqual([
      sway(4, "left"),
      sway(4, "right"),
    ]);
    const both = alterationRows([sway(4), sway(2)], []);
    expect(both.map(({ before }) => before)).toEqual([sway(6, "left"), sway(6, "right")]);
  });
});

describe("rows on one half", () => {
  const was = [waist(20), sway(4, "left"), legs(2)];
  const is = [sway(7, "right"), waist(12), legs(3, "left")];

  it("are those made there: whole for both halves where either version has no half, else that half's", () => {
    expect(rowsOnHalf(was, is, "left")).toEqual([
      { half: "left", before: sway(4, "left"), after: null, by: -4, isChanged: true },
      { half: "left", before: legs(2, "left"), after: legs(3, "left"), by: 1, isChanged: true },
      { half: null, before: waist(20), after: waist(12), by: -8, isChanged: true },
    ]);
    expect(rowsOnHalf(was, is, "right")).toEqual([
      { half: "right", before: null, after: sway(7, "right"), by: 7, isChanged: true },
      { half: null, before: legs(2), after: null, by: -2, isChanged: true },
      { half: null, before: waist(20), after: waist(12), by: -8, isChanged: true },
    ]);
  });

  it("are none of what is on the other half alone", () => {
    expect(rowsOnHalf([sway(4, "left")], [sway(6, "left")], "right")).toEqual([]);
    expect(rowsOnHalf([sway(4, "left")], [sway(6, "left")], "left")).toHaveLength(1);
  });

  it("are all rows where no half is asked for", () => {
    expect(rowsOnHalf(was, is, null)).toEqual(alterationRows(was, is));
    expect(rowsOnHalf(was, is, null)).toHaveLength(5);
  });

  it("take an amount all round by half where the other version has that half alone", () => {
    expect(rowsOnHalf([waist(20)], [waist(6, "left")], "left")).toEqual([
      { half: "left", before: waist(10, "left"), after: waist(6, "left"), by: -4, isChanged: true },
    ]);
    expect(rowsOnHalf([waist(6, "left")], [waist(20)], "left")).toEqual([
      { half: "left", before: waist(6, "left"), after: waist(10, "left"), by: 4, isChanged: true },
    ]);
    expect(rowsOnHalf([waist(20)], [waist(6, "left")], "right")).toEqual([
      { half: null, before: waist(20), after: null, by: -20, isChanged: true },
    ]);
  });
});
