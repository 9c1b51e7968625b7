/** Files of SVG: places worked out by hand, or with a matrix algebra of the test's own. */
import { DOMParser } from "@xmldom/xmldom";
import * as fc from "fast-check";
import { Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { invariant } from "../../src/core/result";
import { readSvg } from "../../src/reading/readSvg";
import { cornersOf, pathsOf, svg, type Pair } from "./readings";

const look = (inside: string, attributes = "") => invariant(svg(inside, attributes).lines[0], "a line").look;
const SIZED = `width="210mm" height="297mm" viewBox="0 0 210 297"`;

describe("the length of a unit", () => {
  it.each([
    ["mm, one to a unit", SIZED, { mm: 1, saidBy: "size" }],
    ["cm", `width="21cm" height="29.7cm" viewBox="0 0 210 297"`, { mm: 1, saidBy: "size" }],
    ["inches", `width="10in" height="5in" viewBox="0 0 100 50"`, { mm: 2.54, saidBy: "size" }],
    ["points", `width="72pt" height="72pt" viewBox="0 0 72 72"`, { mm: 25.4 / 72, saidBy: "size" }],
    ["picas", `width="6pc" height="6pc" viewBox="0 0 254 254"`, { mm: 0.1, saidBy: "size" }],
    ["mm without a viewBox", `width="210mm" height="297mm"`, { mm: 25.4 / 96, saidBy: "size" }],
    ["only the width", `width="100mm" viewBox="0 0 50 80"`, { mm: 2, saidBy: "size" }],
    // In proportion, the smaller of the two scales, and with slice the larger one.
    ["out of proportion", `width="100mm" height="100mm" viewBox="0 0 50 100"`, { mm: 1, saidBy: "size" }],
    [
      "filled out of proportion",
      `width="100mm" height="100mm" viewBox="0 0 50 100" preserveAspectRatio="xMidYMid slice"`,
      { mm: 2, saidBy: "size" },
    ],
    ["px", `width="210px" height="297px" viewBox="0 0 210 297"`, null],
    ["bare numbers", `width="210" height="297" viewBox="0 0 210 297"`, null],
    ["per cents", `width="100%" height="100%" viewBox="0 0 210 297"`, null],
    ["nothing", "", null],
    ["no length at all", `width="0mm" height="-3mm" viewBox="0 0 10 10"`, null],
  ])("is read of %s", (_what, attributes, unit) => {
    const found = svg(`<path d="M0 0h1"/>`, attributes).unit;
    if (unit === null || found === null) expect(found).toEqual(unit);
    else expect(found).toEqual({ ...unit, mm: expect.closeTo(unit.mm, 9) as number });
  });

  it("is stretched where the file says so", () => {
    const drawing = svg(
      `<path d="M0 0L10 10"/>`,
      `width="100mm" height="400mm" viewBox="0 0 100 200" preserveAspectRatio="none"`,
    );
    expect(drawing.unit).toEqual({ mm: 1, saidBy: "size" });
    expect(pathsOf(drawing)).toEqual(["M0 0L10 20"]);
  });

  it("says how finely places are kept", () => {
    const third = `<path d="M0 0L0.33333333 0"/>`;
    expect(pathsOf(svg(third, SIZED))).toEqual(["M0 0L0.333 0"]);
    // A unit of an inch: a thousandth of a mm is 0.00004 of it.
    expect(pathsOf(svg(third, `width="10in" height="10in" viewBox="0 0 10 10"`))).toEqual(["M0 0L0.33333 0"]);
    expect(pathsOf(svg(third))).toEqual(["M0 0L0.3333 0"]);
  });
});

describe("transforms", () => {
  it.each([
    ["translate(10 20)", [13, 24]],
    ["translate(10)", [13, 4]],
    ["scale(2)", [6, 8]],
    ["scale(2,-1)", [6, -4]],
    // A quarter turn from +x towards +y takes 3 4 to -4 3.
    ["rotate(90)", [-4, 3]],
    // The same about 10 10: 3 4 is at -7 -6 from there, which goes to 6 -7.
    ["rotate(90 10 10)", [16, 3]],
    ["skewX(45)", [7, 4]],
    ["skewY(45)", [3, 7]],
    ["matrix(1 2 3 4 5 6)", [20, 28]],
    // The last one first.
    ["translate(10,20) scale(2)", [16, 28]],
    ["scale(2)translate(10,20)", [26, 48]],
    ["rotate(", [3, 4]],
    ["turn(90)", [3, 4]],
  ] as const)("%s", (transform, expected) => {
    const [corner] = cornersOf(pathsOf(svg(`<path transform="${transform}" d="M3 4h1000"/>`))[0]);
    expect(corner).toEqual(expected);
  });

  it("in one another are a product of matrices", () => {
    const amount = fc.integer({ min: -40, max: 40 }).map((tenths) => tenths / 10);
    const step = fc.oneof(
      fc.tuple(amount, amount).map(([x, y]) => [`translate(${x} ${y})`, [1, 0, x, 0, 1, y]] as const),
      fc.tuple(amount, amount).map(([x, y]) => [`scale(${x},${y})`, [x, 0, 0, 0, y, 0]] as const),
      fc.tuple(amount, amount, amount).map(([angle, x, y]) => {
        const [c, s] = [Math.cos((angle * Math.PI) / 18), Math.sin((angle * Math.PI) / 18)];
        return [`rotate(${angle * 10} ${x} ${y})`, [c, -s, x - c * x + s * y, s, c, y - s * x - c * y]] as const;
      }),
      amount.map((angle) => [`skewX(${angle})`, [1, Math.tan((angle * Math.PI) / 180), 0, 0, 1, 0]] as const),
      amount.map((angle) => [`skewY(${angle})`, [1, 0, 0, Math.tan((angle * Math.PI) / 180), 1, 0]] as const),
      fc
        .tuple(amount, amount, amount, amount, amount, amount)
        .map(([a, b, c, d, e, f]) => [`matrix(${a} ${b} ${c} ${d} ${e} ${f})`, [a, c, e, b, d, f]] as const),
    );
    const group = fc.array(step, { minLength: 1, maxLength: 2 });
    fc.assert(
      fc.property(fc.array(group, { maxLength: 3 }), amount, amount, (groups, x, y) => {
        const open = groups.map((steps) => `<g transform="${steps.map(([text]) => text).join(" ")}">`).join("");
        const text = `<svg>${open}<path d="M${x} ${y}l1 0 0 1"/>${"</g>".repeat(groups.length)}</svg>`;
        const read = readSvg(text);
        const map = groups
          .flat()
          .reduce((all, [, rows]) => all.mmul(new Matrix([rows.slice(0, 3), rows.slice(3), [0, 0, 1]])), Matrix.eye(3));
        const at = (u: number, v: number): Pair => {
          const place = map.mmul(Matrix.columnVector([u, v, 1]));
          return [place.get(0, 0), place.get(1, 0)];
        };
        const expected = [at(x, y), at(x + 1, y), at(x + 1, y + 1)];
        // A line that became a point is none.
        if (!read.ok) {
          expect(read.failure.code).toBe("reading/empty");
          return;
        }
        const found = cornersOf(pathsOf(read.value)[0]);
        for (const [u, v] of found)
          expect(Math.min(...expected.map(([p, q]) => Math.hypot(p - u, q - v)))).toBeLessThan(1e-3);
        expect(found[0]?.[0]).toBeCloseTo(expected[0]?.[0] ?? NaN, 3);
        expect(found.at(-1)?.[1]).toBeCloseTo(expected[2]?.[1] ?? NaN, 3);
      }),
    );
  });
});

describe("viewports in viewports", () => {
  const SQUARE = `<rect width="10" height="10"/>`;
  it.each([
    ["moved", `<svg x="5" y="6">${SQUARE}</svg>`, "M5 6L15 6 15 16 5 16Z"],
    [
      "scaled, in the middle",
      // Twice as large, in the middle of 40 across: 10 are free on either side.
      `<svg x="1" width="40" height="20" viewBox="0 0 10 10">${SQUARE}</svg>`,
      "M11 0L31 0 31 20 11 20Z",
    ],
    [
      "scaled, at the far end",
      `<svg width="40" height="20" viewBox="0 0 10 10" preserveAspectRatio="xMaxYMin">${SQUARE}</svg>`,
      "M20 0L40 0 40 20 20 20Z",
    ],
    [
      "filled",
      // Four times as large; 40 down where there are 20, so that it begins 10 above.
      `<svg width="40" height="20" viewBox="0 0 10 10" preserveAspectRatio="xMidYMid slice">${SQUARE}</svg>`,
      "M0 -10L40 -10 40 30 0 30Z",
    ],
    [
      "stretched, from elsewhere",
      `<svg width="40" height="20" viewBox="-10 0 20 10" preserveAspectRatio="none">${SQUARE}</svg>`,
      "M20 0L40 0 40 20 20 20Z",
    ],
    [
      "per cents",
      `<svg width="200" height="100"><rect x="50%" y="10%" width="25%" height="50%"/></svg>`,
      "M100 10L150 10 150 60 100 60Z",
    ],
    ["units inside", `<line x1="1in" y1="0" x2="25.4mm" y2="72pt"/>`, "M96 0L96 96"],
  ])("%s", (_what, inside, expected) => {
    expect(pathsOf(svg(inside, `viewBox="0 0 1000 1000"`))).toEqual([expected]);
  });
});

describe("copies", () => {
  it("of a part, moved and turned", () => {
    const drawing = svg(
      `<defs><path id="a" d="M0 0L10 0"/></defs><use href="#a" x="5" y="6"/>
       <use xlink:href="#a" transform="rotate(90)" x="1"/>`,
    );
    expect(pathsOf(drawing)).toEqual(["M5 6L15 6", "M0 1L0 11"]);
  });

  it("of a symbol with a box of its own, as large as it is copied", () => {
    const drawing = svg(
      `<symbol id="Front" viewBox="0 0 10 10"><path d="M0 0L10 5"/></symbol><use href="#Front" x="3" width="20" height="20"/>`,
    );
    expect(pathsOf(drawing)).toEqual(["M3 0L23 10"]);
    expect(drawing.lines[0]?.look.group).toBe("Front");
  });

  it("of copies", () => {
    const drawing = svg(
      `<defs><path id="a" d="M0 0L1 0"/><g id="two"><use href="#a"/><use href="#a" x="10"/></g></defs>
       <use href="#two"/><use href="#two" y="5"/>`,
    );
    expect(pathsOf(drawing)).toEqual(["M0 0L1 0", "M10 0L11 0", "M0 5L1 5", "M10 5L11 5"]);
  });

  it("takes the look of what copies it where the part has none", () => {
    const { lines } = svg(
      `<defs><path id="a" d="M0 0L1 0"/></defs><use href="#a" stroke="red" stroke-dasharray="4 2"/>`,
    );
    expect(lines[0]?.look).toMatchObject({ colour: "#ff0000", dash: "4 2" });
  });

  it("does not fetch what lies elsewhere, and draws nothing that is only kept", () => {
    const drawing = svg(
      `<use href="http://example.org/a.svg#b"/><use href="other.svg#c"/><use href="#none"/><image href="http://example.org/a.png"/>
       <defs><path d="M0 0h9"/></defs><clipPath id="c"><path d="M0 0h9"/></clipPath><mask><path d="M0 0h9"/></mask>
       <marker><path d="M0 0h9"/></marker><pattern><path d="M0 0h9"/></pattern><symbol><path d="M0 0h9"/></symbol>
       <script>throw 1</script><foreignObject><svg><path d="M0 0h9"/></svg></foreignObject><metadata><path d="M0 0h9"/></metadata>
       <g clip-path="url(#c)"><path d="M0 0h1"/></g>`,
    );
    expect(pathsOf(drawing)).toEqual(["M0 0L1 0"]);
  });
});

describe("the look of a line", () => {
  it.each([
    ["a name", `stroke="rebeccapurple"`, "#663399"],
    ["three digits", `stroke="#0aF"`, "#00aaff"],
    ["six digits and a veil", `stroke="#12345678"`, "#123456"],
    ["rgb", `stroke="rgb(255, 128, 0)"`, "#ff8000"],
    ["rgb in per cent", `stroke="rgb(100% 0% 50% / 20%)"`, "#ff0080"],
    // Pure green is a hue of 120 degrees.
    ["hsl", `stroke="hsl(120, 100%, 50%)"`, "#00ff00"],
    ["current colour", `stroke="currentColor" color="#010203"`, "#010203"],
    ["a pattern", `stroke="url(#p)"`, "#000000"],
    ["an area without an edge", `fill="teal"`, "#008080"],
    ["an area that says nothing", ``, "#000000"],
  ])("has the colour of %s", (_what, attributes, colour) => {
    expect(look(`<path d="M0 0h1" ${attributes}/>`).colour).toBe(colour);
  });

  it("follows rules, the nearer and the more particular first", () => {
    const style = `<style>/* a { */ @import url(x.css); @media print { path { stroke: pink } }
      path { stroke: red; stroke-width: 3 } .b, .c { stroke: green } #d.c { stroke: blue }
      g .in { stroke: teal } g > .never { stroke: pink } .k::after { stroke: pink }</style>`;
    const colours = svg(
      `${style}<path d="M0 0h1" stroke="black"/><path class="x c" d="M0 0h2"/><path id="d" class="c" d="M0 0h3"/>
       <path class="c" style="stroke:#ABC" d="M0 0h4"/><g><a><path class="in" d="M0 0h5"/></a></g><path class="in k" d="M0 0h6"/>`,
    ).lines.map(({ look: { colour, width }, paths }) => [paths.join(" "), colour, width]);
    expect(colours).toEqual([
      ["M0 0L1 0 M0 0L6 0", "#ff0000", 3],
      ["M0 0L2 0", "#008000", 3],
      ["M0 0L3 0", "#0000ff", 3],
      ["M0 0L4 0", "#aabbcc", 3],
      ["M0 0L5 0", "#008080", 3],
    ]);
  });

  it("has widths and dashes in the drawing's own units", () => {
    const line = `<path stroke="red" stroke-width="2" stroke-dasharray="4,2" d="M0 0h1"/>`;
    expect(look(`<g transform="scale(3)">${line}</g>`)).toMatchObject({ width: 6, dash: "12 6" });
    expect(look(line.replace("/>", ` transform="scale(3)" vector-effect="non-scaling-stroke"/>`))).toMatchObject({
      width: 2,
      dash: "4 2",
    });
    expect(look(`<path stroke="red" d="M0 0h1"/>`).width).toBe(1);
    for (const whole of ["none", "0", "0 0", "nonsense", "-1 2"])
      expect(look(`<path stroke="red" stroke-dasharray="${whole}" d="M0 0h1"/>`).dash).toBe("");
  });

  it("leaves what has neither edge nor area", () => {
    const drawing = svg(`<path fill="none" d="M0 0h1"/><path stroke="none" fill="none" d="M0 0h2"/><path d="M0 0h3"/>`);
    expect(pathsOf(drawing)).toEqual(["M0 0L3 0"]);
  });
});

describe("groups and layers", () => {
  it("are named by label, title, data-name or id", () => {
    const layers = svg(
      `<g id="Size_10" data-name="Size 10"><path d="M0 0h1"/></g><g id="size12"><path d="M0 0h2"/></g>
       <g id="x" any:label="Size 14"><g id="g4711"><path d="M0 0h3"/></g></g><g id="y"><title>Size 16</title><path d="M0 0h4"/></g>
       <g any:groupmode="layer" any:label="Size 18"><g id="front"><path d="M0 0h5"/></g></g><path d="M0 0h6"/>`,
    ).lines.map((one) => [one.look.layer, one.look.group]);
    expect(layers).toEqual([
      ["Size 10", "Size 10"],
      ["size12", "size12"],
      ["Size 14", "Size 14"],
      ["Size 16", "Size 16"],
      ["Size 18", "Size 18 / front"],
      ["", ""],
    ]);
  });

  it("that are switched off are read, and listed", () => {
    const drawing = svg(
      `<g id="ten" style="display:none"><path d="M0 0h1"/></g><g id="twelve"><path d="M0 0h2"/><g display="none"><path d="M0 0h3"/></g></g>
       <g id="note" visibility="hidden"><path d="M0 0h4"/><path visibility="visible" d="M0 0h5"/></g>`,
    );
    expect(drawing.lines.map((one) => [one.look.layer, one.paths.join(" ")])).toEqual([
      ["ten", "M0 0L1 0"],
      ["twelve", "M0 0L2 0"],
      ["twelve (off)", "M0 0L3 0"],
      ["note (off)", "M0 0L4 0"],
      ["note", "M0 0L5 0"],
    ]);
    expect(drawing.hiddenLayers).toEqual(["ten", "twelve (off)", "note (off)"]);
  });
});

describe("writing", () => {
  it("has its place, and each part that has one of its own", () => {
    const { writings } = svg(
      `<g id="a" transform="translate(100 0)"><text x="1" y="2">Size
        <tspan font-weight="bold">10</tspan><tspan x="5" y="9">cut 1</tspan><tspan y="12">on the fold</tspan></text></g>
       <text transform="rotate(90)" x="3 4 5" y="0">side</text><text> </text>`,
    );
    expect(writings.map(({ x, y, text, layer }) => [x, y, text, layer])).toEqual([
      [101, 2, "Size 10", "a"],
      [105, 9, "cut 1", "a"],
      [105, 12, "on the fold", "a"],
      [0, 3, "side", ""],
    ]);
  });

  it("has its letters, but no entity of the file's own", () => {
    const text = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b SYSTEM "file:///etc/passwd">]>
      <svg><text>Fr&#246;ken &amp; &lt;b&gt; &a;&b;</text></svg>`;
    const read = readSvg(text);
    expect(read.ok && read.value.writings[0]?.text).toBe("Fröken & <b> &a;&b;");
  });
});

describe("any file of this kind", () => {
  it("has the elements that a strict parser of XML finds", () => {
    const shape = fc.constantFrom(`<path d="M0 0h1"/>`, `<line x2="5"/>`, `<circle r="3"/>`, `<g/>`, `<text>a</text>`);
    const tree = fc.letrec((tie) => ({
      all: fc.oneof(
        { depthSize: "small" },
        shape,
        fc
          .array(tie("all") as fc.Arbitrary<string>, { maxLength: 4 })
          .map((parts) => `<g id="k">${parts.join("")}</g>`),
      ),
    })).all;
    fc.assert(
      fc.property(tree, (inside) => {
        const text = `<svg>${inside}<rect width="1" height="1"/></svg>`;
        const oracle = new DOMParser().parseFromString(text, "image/svg+xml");
        const count = ["path", "line", "circle", "rect"]
          .map((name) => oracle.getElementsByTagName(name).length)
          .reduce((sum, one) => sum + one, 0);
        const read = readSvg(text);
        expect(read.ok && pathsOf(read.value)).toHaveLength(count);
      }),
    );
  });
});
