/** Lines sorted into sizes, each kind with why, on a few boxes. */
import { describe, expect, it } from "vitest";
import type { FileDrawing, LineLook } from "../../../src/core/decisions/fileDrawing";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { sortLines, TURN_LAYERS, valueOf } from "../../../src/core/outlines/sortLines";
import { strokesOf, type Stroke } from "../../../src/core/outlines/strokes";
import { box, drawn, lookOf, type Line } from "./handStrokes";

const sorted = (
  lines: readonly Line[],
  labels: readonly string[],
  more: Partial<FileDrawing> = {},
  own: Partial<Pick<OwnPattern, "sortBy" | "lines">> = {},
) => {
  const drawing = drawn(lines, more);
  return sortLines({ drawing, ...own }, strokesOf(drawing, 1), labels);
};

/** Kinds of line as "value: meaning (by)". */
const said = (...args: Parameters<typeof sorted>): string[] =>
  sorted(...args).lines.map(
    ({ value, meaning, saidBy }) => `${value}: ${meaning.of === "size" ? meaning.size : meaning.of} (${saidBy})`,
  );

const strokeOf = (look: Partial<LineLook>): Stroke => {
  const [stroke] = strokesOf(drawn([[look, box(0, 0, 100, 100)]]), 1);
  if (stroke === undefined) throw new Error("no stroke");
  return stroke;
};

const layer = (name: string, width = 200, height = 300): Line => [{ layer: name }, box(0, 0, width, height)];

describe("kinds of line", () => {
  it("are told with how the first of them looks, how many they are and how long", () => {
    const { lines, features, sortedBy, isStandard } = sorted(
      [
        [{ layer: "10", colour: "#ff0000", dash: "4 2", width: 0.5 }, box(0, 0, 200, 300), "M0 0L3 4"],
        [{ layer: "12", colour: "#00ff00" }, box(0, 0, 210, 310)],
        [{ layer: "12", colour: "#0000ff" }, "M0 0L0 10"],
      ],
      ["10", "12"],
    );
    expect(sortedBy).toBe("layer");
    expect(isStandard).toBe(false);
    expect(features).toEqual([
      { feature: "layer", values: 2 },
      { feature: "colour", values: 3 },
      { feature: "dash", values: 2 },
      { feature: "width", values: 2 },
    ]);
    expect(lines).toEqual([
      {
        value: "10",
        colour: "#ff0000",
        dash: "4 2",
        width: 0.5,
        count: 2,
        length: 1005,
        meaning: { of: "size", size: "10" },
        saidBy: "name",
      },
      {
        value: "12",
        colour: "#00ff00",
        dash: "",
        width: 0,
        count: 2,
        length: 1050,
        meaning: { of: "size", size: "12" },
        saidBy: "name",
      },
    ]);
    expect(valueOf(lookOf({ width: 0.5 }), "width")).toBe("0.5");
  });

  it("are none of an empty file", () => {
    expect(sorted([], ["10"])).toMatchObject({ sortedBy: "layer", lines: [], features: [] });
  });
});

describe("what names say", () => {
  it.each([
    ["grainline", "inner"],
    ["Grain 2", "inner"],
    ["notches", "inner"],
    ["dart-leg", "inner"],
    ["front_text", "inner"],
    ["fold1", "inner"],
    ["title", "inner"],
    ["frame", "nothing"],
    ["page 3", "nothing"],
    ["test", "nothing"],
    ["overlap", "nothing"],
    ["my logo", "nothing"],
    ["fence", "fence"],
    ["marked", "marked"],
    ["framework", "framework"],
    ["sewing", "all"],
    ["seam line", "all"],
  ])("%s is %s", (name, of) => {
    const [first] = said([layer(name), layer("10"), layer("12", 210)], ["10", "12"]);
    // Where a name says nothing, what is as large as the sizes beside it is one more; a stitch line is none by itself.
    expect(first).toBe(`${name}: ${of} (${of === "inner" || of === "nothing" ? "name" : "form"})`);
  });

  it("holds for a kind only where it holds for all of it", () => {
    const lines: Line[] = [
      [{ colour: "#000000", layer: "grain" }, box(0, 0, 200, 300)],
      [{ colour: "#000000", layer: "" }, box(0, 0, 20, 30)],
    ];
    expect(said(lines, [], {}, { sortBy: "colour" })).toEqual(["#000000: all (form)"]);
    const grain: Line[] = [
      [{ colour: "#000000", layer: "grain" }, box(0, 0, 200, 300)],
      [{ colour: "#000000", layer: "notch" }, box(0, 0, 20, 30)],
    ];
    expect(said(grain, [], {}, { sortBy: "colour" })).toEqual(["#000000: inner (name)"]);
  });

  it("gives each line its part, by its layer first and then by the innermost group", () => {
    const { roleOf, meaningOf } = sorted([layer("10"), layer("12", 210)], ["10", "12"]);
    const role = (look: Partial<LineLook>) => roleOf(strokeOf(look));
    expect(role({ layer: "10" })).toBe("outline");
    expect(role({ layer: "stitch" })).toBe("sew");
    expect(role({ layer: "10", group: "front / sewing line" })).toBe("sew");
    expect(role({ layer: "seamline" })).toBe("sew");
    expect(role({ layer: "10 sew" })).toBe("sew");
    expect(role({ layer: "sewn" })).toBe("outline");
    expect(role({ layer: "", group: "notch / stitch" })).toBe("sew");
    expect(role({ layer: "", group: "stitch / notch" })).toBe("inner");
    expect(role({ layer: "grain", group: "stitch" })).toBe("inner");
    expect(role({ layer: "frame" })).toBe("outline");
    expect(meaningOf(strokeOf({ layer: "10" }))).toEqual({ of: "size", size: "10" });
    expect(meaningOf(strokeOf({ layer: "10", group: "test square" }))).toEqual({ of: "nothing" });
    expect(meaningOf(strokeOf({ layer: "elsewhere" }))).toEqual({ of: "all" });
  });

  it("is passed over by what she says", () => {
    const lines = [layer("frame"), layer("10"), layer("12", 210)];
    expect(said(lines, ["10", "12"], {}, { lines: { frame: { of: "all" }, "12": { of: "nothing" } } })).toEqual([
      "frame: all (her)",
      "10: 10 (name)",
      "12: nothing (her)",
    ]);
    const { meaningOf } = sorted(lines, ["10", "12"], {}, { lines: { frame: { of: "all" }, "12": { of: "nothing" } } });
    expect(meaningOf(strokeOf({ layer: "frame" }))).toEqual({ of: "all" });
    expect(meaningOf(strokeOf({ layer: "12" }))).toEqual({ of: "nothing" });
  });
});

describe("the feature sorted by", () => {
  it("is the one that names most sizes, else hers", () => {
    const lines: Line[] = [
      [{ layer: "10", group: "10" }, box(0, 0, 200, 300)],
      [{ layer: "10", group: "12" }, box(0, 0, 210, 310)],
      [{ layer: "12", group: "14" }, box(0, 0, 220, 320)],
    ];
    expect(sorted(lines, ["10", "12", "14"]).sortedBy).toBe("group");
    expect(sorted(lines, ["10", "12", "14"], {}, { sortBy: "layer" }).sortedBy).toBe("layer");
    expect(said(lines, ["10", "12", "14"], {}, { sortBy: "colour" })).toEqual(["#000000: all (form)"]);
  });

  it("is never named by a colour, a width or the lengths of dashes", () => {
    const by = (feature: "dash" | "width" | "colour"): Line[] =>
      ["10", "12"].map((value, i) => [
        { [feature]: feature === "width" ? Number(value) : value },
        box(0, 0, 200 + 10 * i, 300),
      ]);
    for (const feature of ["dash", "width", "colour"] as const)
      expect(sorted(by(feature), ["10", "12"]).lines.map(({ saidBy }) => saidBy)).toEqual(["order", "order"]);
    const named: Line[] = ["SIZE 10", "SIZE 12"].map((dash, i) => [{ dash }, box(0, 0, 200 + 10 * i, 300)]);
    expect(said(named, ["10", "12"])).toEqual(["SIZE 10: 10 (name)", "SIZE 12: 12 (name)"]);
  });

  it("is where nothing is named the one with as many kinds alike as there are sizes", () => {
    const lines: Line[] = [
      [{ layer: "a", colour: "#000001" }, box(0, 0, 200, 300)],
      [{ layer: "a", colour: "#000002" }, box(0, 0, 210, 300)],
      [{ layer: "b", colour: "#000003" }, box(0, 0, 220, 300)],
    ];
    expect(sorted(lines, ["8", "10"]).sortedBy).toBe("layer");
    expect(sorted(lines, ["8", "10", "12"]).sortedBy).toBe("colour");
  });

  it("is a block with its size written in it", () => {
    const lines: Line[] = [
      [{ group: "P1" }, box(0, 0, 200, 300)],
      [{ group: "P2 / part" }, box(0, 0, 210, 310)],
      [{ group: "P3" }, box(0, 0, 220, 320)],
    ];
    const write = (text: string, group: string) => ({ text, x: 0, y: 0, layer: "", group });
    const writings = [write("Size: 10", "P1"), write("Size: 12", "P2 / part / more"), write("Size: 14", "")];
    expect(said(lines, ["10", "12", "14"], { writings })).toEqual([
      "P1: 10 (name)",
      "P2 / part: 12 (name)",
      "P3: P3 (form)",
    ]);
    // What the chart does not have is no size of it, and form alone tells them; without a chart it stands for itself.
    expect(said(lines, ["8"], { writings })).toEqual([
      "P1: P1 (order)",
      "P2 / part: P2 / part (order)",
      "P3: P3 (order)",
    ]);
    expect(said(lines, [], { writings })).toEqual(["P1: 10 (name)", "P2 / part: 12 (name)", "P3: P3 (form)"]);
    expect(said(lines, [], { writings: [write("Sizes 10", "P1"), write("Size: 10", "P10")] })[0]).not.toContain(
      "(name)",
    );
    // What stands in no block says nothing of lines in none.
    const loose: Line[] = [...lines.slice(0, 2), [{ group: "" }, box(0, 0, 220, 320)]];
    expect(said(loose, ["10", "12", "14"], { writings })).toEqual([
      "P1: 10 (name)",
      "P2 / part: 12 (name)",
      ": all (form)",
    ]);
  });
});

describe("kinds that may be sizes by their form", () => {
  const kinds = (...sizes: readonly (readonly [name: string, width: number, height: number])[]): Line[] =>
    sizes.map(([name, width, height]) => layer(name, width, height));

  it("are alike in length and in how far they reach", () => {
    expect(said(kinds(["a", 200, 300], ["b", 210, 310], ["c", 220, 320]), ["8", "10", "12"])).toEqual([
      "a: a (order)",
      "b: b (order)",
      "c: c (order)",
    ]);
    // 1.25 · 1.3 · 1.2 and so on is within 2.2 in all, 1.4 three times is not (our own choice).
    expect(said(kinds(["a", 200, 300], ["b", 250, 375]), ["8", "10"])).toEqual(["a: a (order)", "b: b (order)"]);
    expect(said(kinds(["a", 200, 300], ["b", 280, 420]), ["8", "10"])).toEqual(["a: all (form)", "b: all (form)"]);
  });

  it("leave the most unlike out while there are more than sizes, or they are too unlike", () => {
    expect(said(kinds(["a", 200, 300], ["x", 230, 330], ["b", 205, 305]), ["8", "10"])).toEqual([
      "a: a (order)",
      "x: all (form)",
      "b: b (order)",
    ]);
    expect(said(kinds(["a", 200, 300], ["x", 600, 900], ["b", 205, 305]), ["8", "10", "12"])).toEqual([
      "a: a (order)",
      "x: all (form)",
      "b: b (order)",
    ]);
    // With no chart all that are alike are sizes; so with one of a single size.
    expect(said(kinds(["a", 200, 300], ["x", 230, 330], ["b", 205, 305]), [])).toHaveLength(3);
    for (const labels of [[], ["8"]])
      expect(said(kinds(["a", 200, 300], ["x", 230, 330], ["b", 205, 305]), labels)).toEqual([
        "a: a (order)",
        "x: x (order)",
        "b: b (order)",
      ]);
  });

  it("are forty at the most, the longest", () => {
    const layers = Array.from({ length: 41 }, (_, i) => layer(`l${i}`, 200 + i, 300));
    expect(said(layers, []).slice(0, 3)).toEqual(["l0: all (form)", "l1: l1 (order)", "l2: l2 (order)"]);
    expect(said(layers, []).filter((one) => one.endsWith("(order)"))).toHaveLength(40);
  });

  it("are not straight lines, alike in having no width, that differ in length", () => {
    const lines = (first: number, second: number): Line[] => [
      [{ layer: "a" }, `M0 0L0 ${first}`],
      [{ layer: "b" }, `M9 0L9 ${second}`],
    ];
    // Length and height: 1.4 twice is 1.96, 1.5 twice 2.25.
    expect(said(lines(300, 420), ["8", "10"])).toEqual(["a: a (order)", "b: b (order)"]);
    expect(said(lines(300, 450), ["8", "10"])).toEqual(["a: all (form)", "b: all (form)"]);
    expect(said(lines(300, 900), ["8", "10"])).toEqual(["a: all (form)", "b: all (form)"]);
  });

  it("are no marks, though there be more of those that are alike", () => {
    const marks = ["m", "n", "o"].map((name, i): Line => [{ layer: name }, `M${i * 50} 0L${i * 50 + 40} 150`]);
    expect(said([...kinds(["a", 200, 300], ["b", 230, 330]), ...marks], ["8", "10"])).toEqual([
      "a: a (order)",
      "b: b (order)",
      "m: all (form)",
      "n: all (form)",
      "o: all (form)",
    ]);
  });

  it("are no marks, by their name or for being short", () => {
    expect(said(kinds(["a", 200, 300], ["grain", 210, 310], ["b", 220, 320]), ["8", "10"])).toEqual([
      "a: a (order)",
      "grain: inner (name)",
      "b: b (order)",
    ]);
    // Less than a fifth of the longest: 190 of 1000.
    const withShort: Line[] = [...kinds(["a", 200, 300], ["b", 210, 310]), [{ layer: "s" }, "M0 0L190 0"]];
    expect(said(withShort, ["8", "10"])[2]).toBe("s: all (form)");
    expect(said(kinds(["a", 200, 300]), ["8"])).toEqual(["a: all (form)"]);
  });

  it("beside two that the chart names are sizes that it does not name", () => {
    const named = kinds(["10", 200, 300], ["12", 210, 310], ["more", 220, 320], ["small", 50, 50]);
    expect(said(named, ["10", "12"])).toEqual([
      "10: 10 (name)",
      "12: 12 (name)",
      "more: more (form)",
      "small: all (form)",
    ]);
    expect(said(kinds(["10", 200, 300], ["more", 220, 320]), ["10", "12"])).toEqual([
      "10: 10 (name)",
      "more: all (form)",
    ]);
    expect(said([...kinds(["10", 200, 300], ["12", 210, 310]), layer("", 220, 320)], ["10", "12"])[2]).toBe(
      ": all (form)",
    );
    // Near one of the two is enough; none of whose lines a name says that it is something else.
    expect(said(kinds(["10", 100, 100], ["12", 210, 310], ["more", 220, 320]), ["10", "12"])[2]).toBe(
      "more: more (form)",
    );
    const mixed: Line = [{ layer: "more", group: "a" }, box(0, 0, 220, 320)];
    const grain: Line = [{ layer: "more", group: "grain" }, "M50 50L50 90"];
    const both = kinds(["10", 200, 300], ["12", 210, 310]);
    expect(said([...both, mixed], ["10", "12"])[2]).toBe("more: more (form)");
    expect(said([...both, mixed, grain], ["10", "12"])[2]).toBe("more: all (form)");
  });
});

describe("the exchange standard of the trade", () => {
  const block = (group: string, x: number): Line[] => [
    [{ layer: "1", group }, box(x, 0, 200, 300)],
    [{ layer: "14", group }, box(x + 10, 10, 180, 280)],
    [{ layer: "8", group }, `M${x + 50} 50L${x + 50} 150`],
  ];
  const isStandard = (lines: readonly Line[], more: Partial<FileDrawing> = {}): boolean =>
    sorted(lines, ["8", "14"], { format: "dxf", ...more }).isStandard;
  const write = (text: string) => ({ text, x: 0, y: 0, layer: "1", group: "" });

  it("is followed by numbers of its layers alone, the boundary among them, in blocks or with its writings", () => {
    expect(isStandard(block("P1", 0))).toBe(true);
    expect(isStandard(block("P1", 0), { format: "svg" })).toBe(false);
    expect(isStandard(block("P1", 0).slice(1))).toBe(false);
    expect(isStandard([...block("P1", 0), [{ layer: "99", group: "P1" }, "M0 0L1 1"]])).toBe(false);
    expect(isStandard([...block("P1", 0), [{ layer: "0", group: "P1" }, "M0 0L1 1"]])).toBe(true);
    expect(isStandard([...block("P1", 0), [{ layer: "3", group: "P1" }, "M0 0L1 1"]])).toBe(true);
    // A layer of no lines counts for nothing.
    expect(isStandard([...block("P1", 0), [{ layer: "names", group: "P1" }]])).toBe(true);
    expect(isStandard(block("", 0))).toBe(false);
    expect(isStandard([...block("P1", 0), ...block("", 300)])).toBe(false);
    for (const text of ["Piece Name: FRONT", "STYLE NAME=x", " sample size : 8", "Size:8", "Quantity: 1"])
      expect(isStandard(block("", 0), { writings: [write(text)] })).toBe(true);
    for (const text of ["Front", "A size: 8", "Size 8"])
      expect(isStandard(block("", 0), { writings: [write(text)] })).toBe(false);
  });

  it("gives each layer its part, and none a size", () => {
    const { roleOf, sortedBy, meaningOf } = sorted([...block("P1", 0), ...block("P2", 300)], ["8", "14"], {
      format: "dxf",
      writings: [
        { text: "Size: 8", x: 0, y: 0, layer: "1", group: "P1" },
        { text: "Size: 14", x: 0, y: 0, layer: "1", group: "P2" },
      ],
    });
    expect(sortedBy).toBe("group");
    const role = (name: string) => roleOf(strokeOf({ layer: name }));
    expect([role("1"), role("14")]).toEqual(["outline", "sew"]);
    expect(
      ["4", "5", "6", "7", "8", "9", "10", "11", "12", "13", "15", "2", "0", "99"].map((name) => role(name)),
    ).toEqual(Array.from({ length: 14 }, () => "inner"));
    expect([...TURN_LAYERS]).toEqual(["2", "3"]);
    expect(meaningOf(strokeOf({ group: "P2" }))).toEqual({ of: "size", size: "14" });
    // A name that says that a line is nothing is passed over: here numbers say it.
    expect(meaningOf(strokeOf({ layer: "frame", group: "P2" }))).toEqual({ of: "size", size: "14" });
  });

  it("has no sizes by its layers, even where they are alike or she sorts by them", () => {
    const lines: Line[] = [
      [{ layer: "1", group: "P1" }, box(0, 0, 200, 300)],
      [{ layer: "14", group: "P1" }, box(5, 5, 190, 290)],
    ];
    expect(said(lines, ["8", "10"], { format: "dxf" }, { sortBy: "layer" })).toEqual([
      "1: all (form)",
      "14: all (form)",
    ]);
    expect(sorted(lines, ["8", "10"], { format: "dxf" }).sortedBy).toBe("layer");
    // Blocks that are alike are sizes before layers that are.
    expect(said([...block("P1", 0), ...block("P2", 300)], ["8", "10"], { format: "dxf" })).toEqual([
      "P1: P1 (order)",
      "P2: P2 (order)",
    ]);
  });
});
