/** Files that mean harm, or are broken: each is refused, or read without it. Times are measured elsewhere. */
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readPatternFile } from "../../src/reading/readPatternFile";
import { dxfText, lineEntity, svg, pathsOf } from "./readings";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);
const read = (content: string | Uint8Array, name = "pattern.svg") =>
  readPatternFile({ name, bytes: typeof content === "string" ? bytesOf(content) : content });
const refusal = (content: string | Uint8Array, name?: string) => {
  const result = read(content, name);
  return result.ok ? "read" : result.failure;
};
const inSvg = (inside: string): string => `<svg xmlns="http://www.w3.org/2000/svg">${inside}</svg>`;
const repeated = (count: number, make: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => make(i)).join("");

/** Each ten times the one before. */
const tenfold = (first: string): string =>
  first + repeated(29, (i) => `<g id="a${i + 1}">${`<use href="#a${i}"/>`.repeat(10)}</g>`);

describe("what is no file of outlines", () => {
  it.each([
    ["%PDF-1.7\n", "pdf"],
    [new Uint8Array([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10]), "picture"],
    [new Uint8Array([0xff, 0xd8, 0xff, 0xe0]), "picture"],
    [new Uint8Array([0x1f, 0x8b, 8, 0]), "packed"],
    ["PK\u0003\u0004", "packed"],
    ["AC1032\0\0", "dwg"],
    ["AnyThing Binary DXF\r\n\u001a\0", "binaryDxf"],
    ["<html><body>hello</body></html>", "unknown"],
    ["hello", "unknown"],
    ["{}", "unknown"],
  ] as const)("%j is %s", (content, format) => {
    expect(refusal(content)).toEqual({ code: "reading/other-format", format });
    expect(refusal(content, "x.dxf")).toEqual({ code: "reading/other-format", format });
  });

  it("may be empty", () => {
    expect(refusal("")).toEqual({ code: "reading/empty" });
    expect(refusal(" \n ")).toEqual({ code: "reading/empty" });
    expect(refusal(inSvg("<g/>"))).toEqual({ code: "reading/empty" });
    expect(refusal(dxfText({ entities: [] }))).toEqual({ code: "reading/empty" });
  });

  it("may be too large, whatever is in it", () => {
    expect(refusal(new Uint8Array(500_000_000))).toEqual({
      code: "reading/too-large",
      bytes: 500_000_000,
      most: 40_000_000,
    });
  });

  it("is told by what is in it, not by its name", () => {
    expect(read(inSvg(`<path d="M0 0h1"/>`), "pattern.dxf").ok).toBe(true);
    expect(read(dxfText({ entities: lineEntity("0", [0, 0], [1, 1]) }), "pattern.svg").ok).toBe(true);
  });
});

describe("files of other letters", () => {
  const text = inSvg(`<text>é</text>`);
  const wide = (little: boolean): Uint8Array =>
    new Uint8Array(
      Array.from(`\uFEFF${text}`, (letter) => letter.codePointAt(0) ?? 0).flatMap((code) => {
        return little ? [code & 255, code >> 8] : [code >> 8, code & 255];
      }),
    );
  it.each([
    ["UTF-8", bytesOf(text)],
    ["UTF-8 with its mark", bytesOf(`\uFEFF${text}`)],
    ["two bytes, the lower first", wide(true)],
    ["two bytes, the upper first", wide(false)],
    ["one byte", Uint8Array.from(text, (letter) => letter.codePointAt(0) ?? 0)],
  ])("%s", (_what, bytes) => {
    const result = read(bytes);
    expect(result.ok && result.value.writings[0]?.text).toBe("é");
  });
});

describe("too much of it", () => {
  it.each([
    [
      "100,000 lines in SVG",
      inSvg(repeated(100_000, (i) => `<path d="M${3 * i} 0h1"/>`)),
      { code: "reading/too-many", of: "lines", count: 100_000, most: 6000 },
    ],
    [
      "100,000 lines in DXF",
      dxfText({
        entities: Array.from({ length: 100_000 }, (_, i) => lineEntity("0", [3 * i, 0], [3 * i + 1, 1])).flat(),
      }),
      { code: "reading/too-many", of: "lines", count: 100_000, most: 6000 },
    ],
    [
      "points",
      dxfText({
        entities: Array.from(
          { length: 3001 },
          () =>
            [
              [0, "POINT"],
              [8, "4"],
              [10, 1],
              [20, 2],
            ] as const,
        ).flat(),
      }),
      { code: "reading/too-many", of: "marks", count: 3001, most: 3000 },
    ],
    [
      "colours",
      inSvg(repeated(401, (i) => `<path stroke="rgb(${i % 256} ${i >> 8} 0)" d="M0 0h1"/>`)),
      { code: "reading/too-many", of: "looks", count: 401, most: 400 },
    ],
    [
      "elements",
      inSvg("<g/>".repeat(400_001)),
      { code: "reading/too-many", of: "objects", count: 400_001, most: 400_000 },
    ],
    [
      "groups in groups",
      inSvg(`${"<g>".repeat(100_000)}${"</g>".repeat(100_000)}`),
      { code: "reading/too-deep", most: 500 },
    ],
    ["itself", inSvg(`<g id="a"><use href="#a"/></g>`), { code: "reading/endless", name: "a" }],
    [
      "itself, by way of others",
      inSvg(`<symbol id="a"><use href="#b"/></symbol><g id="b"><g><use href="#a"/></g></g>`),
      { code: "reading/endless", name: "a" },
    ],
    [
      "a block in itself",
      dxfText({
        blocks: [
          [0, "BLOCK"],
          [2, "A"],
          [0, "INSERT"],
          [2, "b"],
          [0, "ENDBLK"],
          [0, "BLOCK"],
          [2, "B"],
          [0, "INSERT"],
          [2, "a"],
          [0, "ENDBLK"],
        ],
        entities: [
          [0, "INSERT"],
          [2, "A"],
        ],
      }),
      { code: "reading/endless", name: "A" },
    ],
  ] as const)("%s", (_what, content, failure) => {
    expect(refusal(content)).toEqual(failure);
  });

  const copies = expect.objectContaining({ code: "reading/too-many", of: "copies" }) as unknown;
  it.each([
    ["copies of copies", inSvg(`<defs>${tenfold(`<path id="a0" d="M0 0h1"/>`)}</defs><use href="#a29"/>`)],
    ["copies of nothing", inSvg(`<defs>${tenfold(`<g id="a0"/>`)}</defs><use href="#a29"/>`)],
    [
      "blocks of blocks",
      dxfText({
        blocks: Array.from({ length: 30 }, (_, i) => [
          [0, "BLOCK"] as const,
          [2, `b${i}`] as const,
          ...(i === 0
            ? lineEntity("0", [0, 0], [1, 1])
            : Array.from({ length: 10 }, () => [[0, "INSERT"] as const, [2, `b${i - 1}`] as const]).flat()),
          [0, "ENDBLK"] as const,
        ]).flat(),
        entities: [
          [0, "INSERT"],
          [2, "b29"],
        ],
      }),
    ],
    [
      "columns and rows",
      dxfText({
        blocks: [[0, "BLOCK"], [2, "A"], ...lineEntity("0", [0, 0], [1, 1]), [0, "ENDBLK"]],
        entities: [
          [0, "INSERT"],
          [2, "A"],
          [70, 1e9],
          [71, 1e9],
        ],
      }),
    ],
    ["parts of one line", inSvg(`<path d="M0 0${"h1".repeat(2_000_000)}"/>`)],
    [
      "rules of style",
      inSvg(`<style>${"g g g path{stroke:red}".repeat(5000)}</style>${`<path d="M0 0h1"/>`.repeat(5000)}`),
    ],
  ])("%s", (_what, content) => {
    expect(refusal(content)).toEqual(copies);
  });

  it("is joined first, where many short lines go on from one another", () => {
    const drawing = svg(repeated(50_000, (i) => `<line x1="${i}" x2="${i + 1}" y1="${i % 2}" y2="${(i + 1) % 2}"/>`));
    expect(pathsOf(drawing)).toHaveLength(1);
  });

  it.each([
    ["a dash", inSvg(`<path stroke="red" stroke-dasharray="${"1 ".repeat(500_000)}" d="M0 0h1"/>`)],
    ["an empty list", inSvg(`<path d="M0 0h1${" ".repeat(500_000)}x"/>`)],
    ["blank style", inSvg(`<style>${" ".repeat(500_000)}${"a{}".repeat(200_000)}</style><path d="M0 0h1"/>`)],
    [
      "entities of entities",
      `<!DOCTYPE svg [${repeated(30, (i) => `<!ENTITY b${i} "${`&b${i - 1};`.repeat(10)}">`)}]><svg><text>&b29;</text></svg>`,
    ],
    [
      "codes in writing",
      dxfText({
        entities: [
          [0, "MTEXT"],
          [10, 1],
          [20, 1],
          [1, `a${"{\\S\\A".repeat(100_000)}`],
        ],
      }),
    ],
  ])("%s is read without harm", (_what, content) => {
    expect(read(content).ok).toBe(true);
  });
});

describe("places that are none", () => {
  it.each([
    ["far away", inSvg(`<path d="M0 0L1e8 0"/>`)],
    ["beyond all numbers", inSvg(`<path d="M0 0L1e999 0"/>`)],
    ["scaled away", inSvg(`<g transform="scale(1e308)"><g transform="scale(1e308)"><path d="M0 0L1 -1"/></g></g>`)],
    ["scaled to no number", inSvg(`<g transform="scale(1e999)"><path d="M0 0L1 1"/></g>`)],
    ["far away in DXF", dxfText({ entities: lineEntity("0", [0, 0], [1e308, 1]) })],
    [
      "without end in DXF",
      dxfText({
        entities: [
          [0, "LINE"],
          [8, "0"],
          [10, "Infinity"],
          [20, 1],
          [11, 0],
          [21, 0],
        ],
      }),
    ],
    [
      "an arc without end",
      dxfText({
        entities: [
          [0, "ARC"],
          [10, 0],
          [20, 0],
          [40, 1e308],
          [50, 1e308],
          [51, -1e308],
        ],
      }),
    ],
  ])("%s", (_what, content) => {
    expect(refusal(content)).toEqual({ code: "reading/out-of-reach", most: 1e7 });
  });

  it("are said with their line in DXF", () => {
    expect(
      refusal(
        dxfText({
          entities: [
            [0, "LINE"],
            [8, "0"],
            [10, "NaN"],
            [20, 1],
          ],
        }),
      ),
    ).toEqual({
      code: "reading/damaged",
      line: 6,
    });
    expect(refusal("0\nSECTION\n2\nENTITIES\nhello\nworld\n")).toEqual({ code: "reading/damaged", line: 5 });
    expect(
      refusal(
        dxfText({
          entities: [
            [0, "SPLINE"],
            [71, 3],
            [40, 0],
            [10, 1],
            [20, 1],
          ],
        }),
      ),
    ).toEqual({
      code: "reading/damaged",
      line: 6,
    });
  });
});

describe("files that were cut off", () => {
  const texts = [
    inSvg(`<g id="a"><title>Front</title><path d="M0 0h10v10z"/></g><text x="3">Size 10</text>`),
    dxfText({
      header: [
        [9, "$INSUNITS"],
        [70, 4],
      ],
      blocks: [[0, "BLOCK"], [2, "A"], ...lineEntity("0", [0, 0], [1, 1]), [0, "ENDBLK"]],
      entities: [
        [0, "INSERT"],
        [2, "A"],
        [10, 0],
        [20, 0],
      ],
    }),
  ];
  it.each(texts)("are refused wherever it was", (text) => {
    const whole = text.trimEnd().length;
    const kept = Array.from({ length: whole - 1 }, (_, i) => i + 1).filter((length) => read(text.slice(0, length)).ok);
    // Behind the last section of DXF nothing is missing but the word that says so.
    const end = text.lastIndexOf("0\nEOF");
    expect(kept.filter((length) => end === -1 || length < end - 1)).toEqual([]);
  });
});

describe("anything at all", () => {
  it("is refused or read, and never throws", () => {
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 500 }),
        fc.constantFrom("<svg", "0\nSECTION\n2\nENTITIES\n0\nLINE\n", ""),
        (bytes, start) => {
          const content = new Uint8Array([...bytesOf(start), ...bytes]);
          expect(() => read(content)).not.toThrow();
        },
      ),
    );
  });

  it("of the words of SVG", () => {
    const word = fc.constantFrom(
      "<g>",
      "</g>",
      "<svg",
      "<svg>",
      "</svg>",
      ">",
      "/>",
      "<path",
      "<use",
      "<text>",
      "<tspan",
      "</text>",
      "<style>",
      "</style>",
      ` d="M0 0`,
      "a1 1 0 0 1 5 5",
      "Z",
      `"`,
      ` id="a"`,
      ` href="#a"`,
      ` transform="`,
      "rotate(9)",
      " scale(1e99)",
      ` style="stroke:red;`,
      ` viewBox="0 0 0 1"`,
      ` width="5mm"`,
      "<![CDATA[",
      "]]>",
      "<!--",
      "-->",
      "<!DOCTYPE svg [",
      "]>",
      "&a;",
      "&#0;",
      "*{",
      "}",
      "NaN",
      "1e400",
    );
    fc.assert(
      fc.property(fc.array(word, { maxLength: 40 }), (words) => {
        expect(() => read(`<svg>${words.join("")}</svg>`)).not.toThrow();
      }),
    );
  });

  it("of the codes of DXF", () => {
    const number = fc.oneof(
      fc.integer({ min: -400, max: 400 }),
      fc.double(),
      fc.constantFrom("", "x", "NaN", "1e400", "0.5"),
    );
    const group = fc.oneof(
      fc.tuple(
        fc.constant(0),
        fc.constantFrom(
          "LINE",
          "LWPOLYLINE",
          "POLYLINE",
          "VERTEX",
          "SEQEND",
          "ARC",
          "CIRCLE",
          "ELLIPSE",
          "SPLINE",
          "INSERT",
          "TEXT",
          "MTEXT",
          "POINT",
          "BLOCK",
          "ENDBLK",
          "LAYER",
          "SECTION",
          "ENDSEC",
          "TABLE",
        ),
      ),
      fc.tuple(
        fc.constantFrom(10, 20, 11, 21, 12, 22, 40, 41, 42, 50, 51, 62, 70, 71, 72, 210, 220, 230, 370, 420, 60, 67),
        number,
      ),
      fc.tuple(
        fc.constantFrom(1, 2, 3, 6, 8),
        fc.constantFrom("A", "B", "ENTITIES", "BLOCKS", "Units: METRIC", "%%d\\P{"),
      ),
    );
    const groups = fc.array(group, { maxLength: 60 });
    fc.assert(
      fc.property(groups, groups, groups, (tables, blocks, entities) => {
        expect(() => read(dxfText({ tables, blocks, entities }), "x.dxf")).not.toThrow();
      }),
    );
  });
});
