import { DOMParser, type Document, type Element } from "@xmldom/xmldom";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sheetPoint } from "../../src/core/geometry/point";
import type { InkPage } from "../../src/drawing/ink";
import { invariant } from "../../src/core/result";
import { writeSvg } from "../../src/paper/svg";
import { anyAmount } from "../support/amounts";
import { AWKWARD, inkCurve, inkGroup, inkLine, inkPage, inkText } from "../support/inkPages";
import { readPath } from "../support/pathReader";

const SQUARE = inkLine(
  [
    [50, 60],
    [150, 60],
    [150, 160],
    [50, 160],
  ],
  { closed: true, role: "test" },
);

/** Read by a strict parser of XML: the least complaint throws. */
function read(page: InkPage, title = "A title"): Document {
  return new DOMParser({
    onError: (_level, message) => {
      throw new Error(message);
    },
  }).parseFromString(writeSvg(page, { title }), "image/svg+xml");
}

const all = (svg: Document, name: string): Element[] => [...svg.getElementsByTagName(name)];
const withId = (svg: Document, id: string): Element => invariant(svg.getElementById(id), `#${id}`);
const stepsOf = (path: Element | undefined): ReturnType<typeof readPath> => readPath(path?.getAttribute("d") ?? "");
const attributes = (element: Element, ...names: readonly string[]): (string | null)[] =>
  names.map((name) => element.getAttribute(name));

describe("the page", () => {
  it("is as large as it prints, one unit to 1 mm", () => {
    const root = invariant(read(inkPage([], { width: 914.4, height: 1500.25 })).documentElement, "a root");
    expect(attributes(root, "width", "height", "viewBox")).toEqual(["914.4mm", "1500.25mm", "0 0 914.4 1500.25"]);
    expect(root.namespaceURI).toBe("http://www.w3.org/2000/svg");
  });

  it("has a group for each piece with its name, and in it one for each role", () => {
    const front = inkGroup(
      [
        SQUARE,
        inkLine([
          [0, 0],
          [10, 0],
        ]),
        inkText("Front", 60, 70, { role: "title" }),
        inkLine([
          [0, 5],
          [10, 5],
        ]),
      ],
      { id: "front", label: "Front <half>" },
    );
    const svg = read(inkPage([front, inkGroup([SQUARE], { id: "back", label: "Back" })]), "Fit & more");
    expect(all(svg, "title").map(({ textContent }) => textContent)).toEqual(["Fit & more", "Front <half>", "Back"]);
    expect(all(svg, "g").map((group) => attributes(group, "id", "class"))).toEqual([
      ["front", null],
      ["front-test", "test"],
      ["front-cutting", "cutting"],
      ["front-title", "title"],
      ["back", null],
      ["back-test", "test"],
    ]);
    expect([...withId(svg, "front-cutting").getElementsByTagName("path")]).toHaveLength(2);
  });

  it("has no id twice", () => {
    const clip = { x: 0, y: 0, width: 100, height: 100 };
    const svg = read(inkPage(["a", "b"].map((id) => inkGroup([SQUARE, inkText("x", 5, 5)], { id, clip }))));
    const ids = [...all(svg, "g"), ...all(svg, "clipPath")].map((element) => element.getAttribute("id"));
    expect(ids).toHaveLength(8);
    expect(new Set(ids).size).toBe(8);
  });
});

describe("lines", () => {
  it("draws a square of 100 mm", () => {
    const steps = stepsOf(all(read(inkPage([inkGroup([SQUARE])])), "path")[0]);
    expect(steps.map(({ command }) => command)).toEqual(["M", "L", "L", "L", "Z"]);
    expect(steps.flatMap(({ numbers }) => numbers)).toEqual([50, 60, 150, 60, 150, 160, 50, 160]);
  });

  it("keeps every point within half of 0.001 mm, and curves as curves", () => {
    const anyPoint = fc
      .tuple(anyAmount(-900, 900), anyAmount(0, 1500), anyAmount(0, 0.001))
      .map(([x, y, little]) => sheetPoint(x + little / 7, y + little / 3));
    fc.assert(
      fc.property(fc.tuple(anyPoint, anyPoint, anyPoint, anyPoint), anyAmount(-300, 300), (points, dx) => {
        const steps = stepsOf(all(read(inkPage([inkGroup([inkCurve(points)], { dx, dy: 0.25 })])), "path")[0]);
        expect(steps.map(({ command }) => command)).toEqual(["M", "C"]);
        const wanted = points.flatMap(({ x, y }) => [x + dx, y + 0.25]);
        const off = steps.flatMap(({ numbers }) => numbers).map((value, i) => Math.abs(value - (wanted[i] ?? NaN)));
        expect(off).toHaveLength(8);
        expect(Math.max(...off)).toBeLessThan(0.000501);
      }),
    );
  });

  it("says looks as attributes that any program knows", () => {
    const ink = [
      inkLine(
        [
          [0, 0],
          [9, 0],
        ],
        { role: "stitch" },
      ),
      inkLine([
        [0, 0],
        [9, 0],
      ]),
      inkLine(
        [
          [0, 0],
          [9, 0],
          [5, 5],
        ],
        { role: "grain", closed: true, filled: true },
      ),
    ];
    const svg = read(inkPage([inkGroup(ink)]));
    const look = ["fill", "stroke", "stroke-width", "stroke-dasharray"] as const;
    expect(attributes(withId(svg, "group-stitch"), ...look)).toEqual(["none", "#000000", "0.25", "3 1.5"]);
    expect(attributes(withId(svg, "group-cutting"), ...look)).toEqual(["none", "#000000", "0.5", null]);
    expect(
      [...withId(svg, "group-grain").getElementsByTagName("path")].map((path) => path.getAttribute("fill")),
    ).toEqual(["#000000"]);
    expect(all(svg, "style")).toEqual([]);
  });

  it("tells printed sizes apart by their dashes", () => {
    const ink = [0, 1, 2, 8].map((size) =>
      inkLine(
        [
          [10, 10 + size],
          [90, 10 + size],
        ],
        { role: "printed", size },
      ),
    );
    const dashes = all(read(inkPage([inkGroup(ink)])), "path").map((path) => path.getAttribute("stroke-dasharray"));
    expect(dashes).toEqual([null, "5 1.5", "2 1", null]);
  });

  it("cuts a group off at its window, and leaves out what lies outside", () => {
    const clip = { x: 20, y: 30, width: 100, height: 120 };
    const ink = [
      inkLine([
        [0, 0],
        [200, 200],
      ]),
      inkLine([
        [121, 0],
        [121, 200],
      ]),
      inkText("far away", 200, 60),
    ];
    const svg = read(inkPage([inkGroup(ink, { clip })]));
    expect(all(svg, "path")).toHaveLength(1);
    expect(all(svg, "text")).toEqual([]);
    const [rect] = all(svg, "rect");
    expect(attributes(invariant(rect, "a window"), "x", "y", "width", "height")).toEqual(["20", "30", "100", "120"]);
    expect(withId(svg, "group").getAttribute("clip-path")).toBe("url(#group-window)");
  });
});

describe("writing", () => {
  it("comes through any letters", () => {
    const texts = [AWKWARD, `"double" 'single' ]]> &amp;`, "34½″ 34⅛″"];
    const svg = read(
      inkPage([
        inkGroup(
          texts.map((text) => inkText(text, 20, 30)),
          { label: AWKWARD },
        ),
      ]),
      AWKWARD,
    );
    expect(all(svg, "text").map(({ textContent }) => textContent)).toEqual(texts);
    expect(all(svg, "title").map(({ textContent }) => textContent)).toEqual([AWKWARD, AWKWARD]);
  });

  it("is well-formed whatever is written", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const [found] = all(read(inkPage([inkGroup([inkText(`a${text}`, 20, 30)])]), text), "text");
        expect(found?.textContent?.startsWith("a")).toBe(true);
      }),
    );
    const broken = all(read(inkPage([inkGroup([inkText("a\u0000\uD800b\uFFFE\u001B", 20, 30)])])), "text");
    expect(broken.map(({ textContent }) => textContent)).toEqual(["a ?b? "]);
  });

  it("stands where it is put, in mm, turned from +x towards +y", () => {
    const svg = read(
      inkPage([
        inkGroup([inkText("Front", 60, 70, { anchor: "middle", turn: Math.PI / 2, size: 4.5, bold: true })], {
          dx: 1,
          dy: 2,
        }),
      ]),
    );
    const [text] = all(svg, "text");
    // SVG 1.1, 7.6: rotate() takes degrees, and y points down, so that a positive turn goes from +x towards +y.
    expect(
      attributes(invariant(text, "a text"), "x", "y", "transform", "font-size", "font-weight", "text-anchor", "stroke"),
    ).toEqual(["61", "72", "rotate(90 61 72)", "4.5", "700", "middle", "none"]);
    expect(text?.getAttribute("font-family")).toMatch(/sans-serif$/);
  });
});

describe("the file", () => {
  it("is the same for the same page", () => {
    const page = inkPage([inkGroup([SQUARE, inkText(AWKWARD, 20, 30)])]);
    expect(writeSvg(page, { title: "x" })).toBe(writeSvg(page, { title: "x" }));
  });
});
