/** The steps of what is still to be said, and the cup that a file is drawn in. */
import { describe, expect, it } from "vitest";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import type { Pattern } from "../../../src/core/decisions/pattern";
import { isCupSaid, writtenCup } from "../../../src/core/ownPieces/drawnCup";
import { sheetPoint } from "../../../src/core/geometry/point";
import type { OutlineGroup } from "../../../src/core/outlines/outlineReading";
import type { Missing, OwnReading } from "../../../src/core/ownPieces/ownReading";
import { readOwn } from "../../../src/core/ownPieces/readOwn";
import { basquesLeft, stillToSay } from "../../../src/core/ownPieces/stillToSay";
import { sampleWork } from "../../support/sampleWork";
import { drawn } from "../outlines/handStrokes";

const own = (texts: readonly string[] = [], cup?: string): OwnPattern => ({
  file: "file",
  drawing: drawn([], { writings: texts.map((text) => ({ text, x: 0, y: 0, layer: "", group: "" })) }),
  pieces: [],
  ...(cup === undefined ? {} : { cup }),
});

const { chart } = sampleWork.pattern;
const withCups = (...labels: string[]): Pattern => ({
  ...sampleWork.pattern,
  chart: { ...chart, cups: labels.map((label, i) => ({ label, difference: 25 * i + 25 })) },
});
const [none, one, several] = [withCups(), withCups("B"), withCups("A", "B", "DD")];
const empty = readOwn({ own: own(), pattern: several });
const missing = (...codes: readonly Missing[]): OwnReading => ({ ...empty, missing: codes });
const SCALE: Missing = { code: "missing/scale" };

const steps = (of: OwnPattern, pattern: Pattern, reading: OwnReading): string[] =>
  stillToSay(of, pattern, reading).map(({ step, state, missing: all }) => `${step} ${state} ${all.length}`);

describe("what is still to be said", () => {
  it("is nothing where nothing is missing", () => {
    expect(steps(own([], "B"), several, missing())).toEqual([
      "chart done 0",
      "scale done 0",
      "sizes done 0",
      "cup done 0",
      "pieces done 0",
      "marks done 0",
    ]);
  });

  it("is no cup where there is but one or none", () => {
    for (const pattern of [none, one])
      expect(steps(own(), pattern, missing())).toEqual([
        "chart done 0",
        "scale done 0",
        "sizes done 0",
        "pieces done 0",
        "marks done 0",
      ]);
  });

  it("is a chart first, and all behind it later", () => {
    const bare: Pattern = { ...several, chart: { ...several.chart, sizes: [] } };
    expect(steps(own([], "B"), bare, missing())).toEqual([
      "chart next 1",
      "scale done 0",
      "sizes later 0",
      "cup done 0",
      "pieces later 0",
      "marks later 0",
    ]);
  });

  it("is each step in its order, one of them next; a cup puts nothing behind it in doubt", () => {
    expect(steps(own(), several, missing())).toEqual([
      "chart done 0",
      "scale done 0",
      "sizes done 0",
      "cup next 1",
      "pieces done 0",
      "marks done 0",
    ]);
    expect(steps(own(), several, missing(SCALE))).toEqual([
      "chart done 0",
      "scale next 1",
      "sizes later 0",
      "cup later 1",
      "pieces later 0",
      "marks later 0",
    ]);
  });

  it("is said once, however many pieces miss it alike", () => {
    expect(steps(own([], "A"), several, missing(SCALE, SCALE))[1]).toBe("scale next 1");
  });

  it("proposes the cup that is written, and tells one that the chart has no more", () => {
    const cup = (of: OwnPattern) => stillToSay(of, several, missing()).find(({ step }) => step === "cup")?.missing;
    expect(cup(own(["Cup dd"]))).toEqual([{ code: "missing/cup", proposed: "DD", gone: null }]);
    expect(cup(own([], "F"))).toEqual([{ code: "missing/cup", proposed: null, gone: "F" }]);
  });
});

describe("basques of the file", () => {
  const group = (id: string, nameInFile: string, ...texts: string[]): OutlineGroup => ({
    id,
    outlines: {},
    shift: {},
    inner: [],
    innerClosed: [],
    marks: [],
    writings: texts.map((text) => ({ at: sheetPoint(0, 0), text })),
    nameInFile,
    isSquare: false,
  });
  const said = (id: string, leftOut?: true): OwnReading["pieces"][number] => ({
    id,
    said: {
      id,
      name: null,
      extent: "half",
      turns: 0,
      turnedOver: false,
      line: "stitch",
      centreOnFold: false,
      ...(leftOut === undefined ? {} : { leftOut }),
    },
    sizes: [],
    problems: [],
  });
  const left = (
    groups: readonly OutlineGroup[],
    pieces: OwnReading["pieces"],
    hers: OwnPattern["pieces"] = [],
    length: Pattern["length"] = "waist",
  ) =>
    basquesLeft(
      { ...own(), pieces: hers },
      { ...several, length },
      { ...empty, outlines: { ...empty.outlines, groups }, pieces },
    );
  const [front, back] = [group("1", "Front basque"), group("2", "", "cut 2", "back peplum")];

  it("are told where the plan goes to the waist, by what stands on them", () => {
    expect(left([front, back], [said("1"), said("2")])).toEqual(["frontBasque", "backBasque"]);
    expect(left([back], [said("2")])).toEqual(["backBasque"]);
    expect(left([group("3", "front"), group("4", "", "skirt")], [said("3"), said("4")])).toEqual([]);
    expect(left([front, back], [said("1"), said("2")], [], "hip")).toEqual([]);
  });

  it("are none that she leaves out, and what she calls them herself", () => {
    expect(left([front, back], [said("1", true), said("2")])).toEqual(["backBasque"]);
    expect(left([front, back], [said("2")])).toEqual(["backBasque"]);
    expect(left([front], [said("1")], [{ id: "1", name: "front" }])).toEqual([]);
    expect(left([front], [said("1")], [{ id: "1", name: "backBasque" }])).toEqual(["backBasque"]);
    expect(left([front], [said("1")], [{ id: "1", name: null }])).toEqual(["frontBasque"]);
    expect(left([front], [said("1")], [{ id: "2", name: "front" }])).toEqual(["frontBasque"]);
  });
});

describe("the cup that a pattern is drawn in", () => {
  it("is said where it is in the chart, or where the chart has no choice", () => {
    expect(isCupSaid(own(), none.chart)).toBe(true);
    expect(isCupSaid(own(), one.chart)).toBe(true);
    expect(isCupSaid(own(), several.chart)).toBe(false);
    expect(isCupSaid(own([], "A"), several.chart)).toBe(true);
    expect(isCupSaid(own([], "C"), several.chart)).toBe(false);
  });

  it.each([
    [["Cup B"], "B"],
    [["cup: dd"], "DD"],
    [["for cups A only"], "A"],
    [['CUP "b"'], "B"],
    [["cup - B"], "B"],
    [["cupB"], null],
    [["hiccup B"], null],
    [["B cup"], null],
    [["Cup C"], null],
    [["Cup B", "cup b, cut 2"], "B"],
    [["Cup A", "Cup B"], null],
    [["Cup A or cup B"], null],
    [["cup Bust"], null],
    [[], null],
  ])("is written in %j as %j", (texts, cup) => {
    expect(writtenCup(own(texts), several.chart)).toBe(cup);
  });
});
