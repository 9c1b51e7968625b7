/** Small drawings, with what they come to worked out by hand. */
import { describe, expect, it } from "vitest";
import type { FileDrawing, LineLook } from "../../../src/core/decisions/fileDrawing";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { signedArea } from "../../../src/core/geometry/outline";
import { readOutlines } from "../../../src/core/outlines/readOutlines";
import type { OutlineReading } from "../../../src/core/outlines/outlineReading";

type Line = readonly [look: Partial<LineLook>, ...paths: string[]];

const look = (some: Partial<LineLook>): LineLook => ({
  layer: "",
  group: "",
  colour: "#000000",
  dash: "",
  width: 0,
  ...some,
});

const drawingOf = (lines: readonly Line[], more: Partial<FileDrawing> = {}): FileDrawing => ({
  format: "svg",
  unit: { mm: 1, saidBy: "size" },
  lines: lines.map(([some, ...paths]) => ({ look: look(some), paths })),
  points: [],
  writings: [],
  hiddenLayers: [],
  ...more,
});

const read = (
  lines: readonly Line[],
  labels: readonly string[] = [],
  more: Partial<FileDrawing> = {},
  own: Partial<OwnPattern> = {},
): OutlineReading =>
  readOutlines({ own: { file: "file", drawing: drawingOf(lines, more), pieces: [], ...own }, labels });

/** Upright rectangle. */
const box = (x: number, y: number, width: number, height: number): string =>
  `M${x} ${y}L${x + width} ${y}L${x + width} ${y + height}L${x} ${y + height}Z`;

const sides = (x: number, y: number, width: number, height: number): string[] => [
  `M${x} ${y}L${x + width} ${y}`,
  `M${x + width} ${y + height}L${x + width} ${y}`,
  `M${x} ${y + height}L${x + width} ${y + height}`,
  `M${x} ${y}L${x} ${y + height}`,
];

const areas = ({ outlines }: OutlineReading): [string | null, number][] =>
  outlines
    .map(({ size, edges }): [string | null, number] => [size, Math.round(Math.abs(signedArea(edges)))])
    .toSorted(([one], [other]) => String(one).localeCompare(String(other), "en", { numeric: true }));

const pieces = ({ groups }: OutlineReading): number =>
  groups.filter(({ isSquare, isFrame }) => !isSquare && isFrame !== true).length;

describe("the scale", () => {
  const piece: Line = [{ layer: "a" }, box(0, 0, 300, 400)];

  it("is what the file says", () => {
    expect(read([piece], [], { unit: { mm: 0.5, saidBy: "header" } }).scale).toMatchObject({ mm: 0.5, by: "file" });
  });

  it("is proven by a square of a usual size", () => {
    const { scale, groups } = read([piece, [{ layer: "b" }, box(500, 0, 100, 100)]]);
    expect(scale).toMatchObject({ mm: 1, by: "square", disagree: false });
    expect(scale.squares).toMatchObject([{ width: 100, height: 100, usual: { width: 100, height: 100 } }]);
    expect(groups.filter(({ isSquare }) => isSquare).length).toBe(1);
  });

  it("takes a square of four lines, in inches", () => {
    const { scale } = read([piece, [{ layer: "b" }, ...sides(500, 0, 2, 2)]], [], {
      unit: { mm: 25.4, saidBy: "header" },
    });
    expect(scale).toMatchObject({ mm: 25.4, by: "square" });
    expect(scale.squares[0]?.usual?.width).toBeCloseTo(50.8, 9);
  });

  it("is asked for where the file says nothing and a square does not say what it measures", () => {
    const { scale, outlines } = read([piece, [{ layer: "b" }, box(500, 0, 100, 100)]], [], { unit: null });
    expect(scale).toMatchObject({ mm: null, by: null });
    expect(scale.squares).toMatchObject([{ width: 100, usual: null }]);
    expect(outlines.length).toBe(2);
  });

  it.each([
    ["5 cm", 0.5],
    ["50 mm x 50 mm", 0.5],
    ["2 in x 2 in", 0.508],
    ['Test square 2" × 2"', 0.508],
    ["5 x 5 cm", 0.5],
    ["10,0 cm", 1],
    ["2 in / 5.08 cm", 0.508],
  ])("is what stands in a square: %s", (text, mm) => {
    const { scale } = read([piece, [{ layer: "b" }, box(500, 0, 100, 100)]], [], {
      unit: null,
      writings: [{ text, x: 520, y: 50, layer: "", group: "" }],
    });
    expect(scale.by).toBe("square");
    expect(scale.mm).toBeCloseTo(mm, 9);
  });

  it.each(["5 cm / 5 in", "2 in (10 cm)"])("is not what says two lengths at once: %s", (text) => {
    const { scale } = read([piece, [{ layer: "b" }, box(500, 0, 100, 100)]], [], {
      unit: null,
      writings: [{ text, x: 520, y: 50, layer: "", group: "" }],
    });
    expect(scale).toMatchObject({ mm: null, by: null });
  });

  it("is not what is written elsewhere", () => {
    const writings = [{ text: "seam 15 mm", x: 100, y: 300, layer: "", group: "" }];
    expect(read([piece, [{ layer: "b" }, box(500, 0, 100, 100)]], [], { unit: null, writings }).scale.mm).toBeNull();
  });

  it("is her own length before all, and told where the file says another", () => {
    const known = { from: { x: 0, y: 0 }, to: { x: 300, y: 400 }, length: 250 };
    expect(read([piece], [], {}, { known }).scale).toMatchObject({ mm: 0.5, by: "known", known: 0.5, disagree: true });
    const near = { ...known, length: 501 };
    expect(read([piece], [], {}, { known: near }).scale).toMatchObject({ by: "known", disagree: false });
  });

  it("is told to disagree where a square says another than the file", () => {
    const writings = [{ text: "5 cm", x: 520, y: 20, layer: "", group: "" }];
    expect(read([piece, [{ layer: "b" }, box(500, 0, 47, 47)]], [], { writings }).scale).toMatchObject({
      by: "file",
      mm: 1,
      disagree: true,
    });
  });
});

describe("sizes", () => {
  const nest = (feature: keyof LineLook, values: readonly string[]): Line[] =>
    values.map((value, at): Line => [
      { [feature]: value },
      box(0, 0, 200 + 10 * at, 300 + 10 * at),
      box(400, 0, 150 + 10 * at, 250),
    ]);
  const sizesOf = ({ lines }: OutlineReading): (string | null)[] =>
    lines.map(({ meaning }) => (meaning.of === "size" ? meaning.size : null));

  it.each([
    ["layer", ["38", "40", "42"]],
    ["layer", ["Size 38", "Size 40", "Size 42"]],
    ["layer", ["T38", "T40", "T42"]],
    ["layer", ["38_outline", "40_outline", "42_outline"]],
    ["layer", ["gr. 38", "GR. 40", "Gr 42"]],
    ["group", ["A / front 38", "A / front 40", "A / front 42"]],
    ["dash", ["SIZE38", "SIZE40", "SIZE42"]],
  ] as const)("are named by %s: %s", (feature, values) => {
    const reading = read(nest(feature, values), ["38", "40", "42"]);
    expect(reading.sortedBy).toBe(feature);
    expect(sizesOf(reading)).toEqual(["38", "40", "42"]);
    expect(reading.lines.every(({ saidBy }) => saidBy === "name")).toBe(true);
    expect(areas(reading)).toEqual([
      ["38", 60000],
      ["38", 37500],
      ["40", 65100],
      ["40", 40000],
      ["42", 70400],
      ["42", 42500],
    ]);
    expect(pieces(reading)).toBe(2);
  });

  it("are not named by a number inside a longer one", () => {
    const reading = read(nest("layer", ["1380", "1400", "1420"]), ["38", "40", "42"]);
    expect(reading.lines.map(({ saidBy }) => saidBy)).toEqual(["order", "order", "order"]);
  });

  it("are letters too, the longer label first", () => {
    expect(sizesOf(read(nest("layer", ["size xl", "size m", "2 XL"]), ["M", "XL", "2 XL"]))).toEqual([
      "XL",
      "M",
      "2 XL",
    ]);
  });

  it("are told by the order of what they enclose", () => {
    const lines = nest("colour", ["#0000ff", "#00ff00", "#ff0000"]).toReversed();
    const reading = read(lines, ["10", "12", "14"]);
    expect(reading.sortedBy).toBe("colour");
    expect(sizesOf(reading)).toEqual(["14", "12", "10"]);
    expect(areas(reading).map(([size]) => size)).toEqual(["10", "10", "12", "12", "14", "14"]);
  });

  it("stay by their own values where the chart has another number of them", () => {
    const reading = read(nest("colour", ["#0000ff", "#00ff00", "#ff0000"]), ["10", "12", "14", "16"]);
    expect(sizesOf(reading)).toEqual(["#0000ff", "#00ff00", "#ff0000"]);
    expect(reading.lines.map(({ saidBy }) => saidBy)).toEqual(["form", "form", "form"]);
  });

  it("are what she says", () => {
    const reading = read(
      nest("colour", ["#0000ff", "#00ff00"]),
      ["10", "12"],
      {},
      {
        lines: { "#0000ff": { of: "size", size: "12" }, "#00ff00": { of: "nothing" } },
      },
    );
    expect(reading.lines.map(({ saidBy }) => saidBy)).toEqual(["her", "her"]);
    expect(areas(reading)).toEqual([
      ["12", 60000],
      ["12", 37500],
    ]);
  });

  it("are one where nothing parts the lines", () => {
    const reading = read([[{}, box(0, 0, 200, 300)]], ["10", "12"]);
    expect(areas(reading)).toEqual([[null, 60000]]);
    expect(reading.groups[0]?.outlines).toEqual({ "": "0:0" });
  });
});

describe("joining", () => {
  it("takes lines in any order and direction", () => {
    const reading = read([[{}, ...sides(0, 0, 200, 300).toReversed()]]);
    expect(areas(reading)).toEqual([[null, 60000]]);
    expect(reading.outlines[0]?.edges.length).toBe(4);
    expect(reading.outlines[0]?.widestGap).toBe(0);
    expect(reading.unclosed).toEqual([]);
  });

  it("closes gaps within the tolerance in their middle", () => {
    const reading = read([[{}, "M0 0L200 0L200 300L0 300", "M0 299.7L0 0.4"]]);
    expect(reading.outlines.length).toBe(1);
    expect(reading.outlines[0]?.widestGap).toBeCloseTo(0.4, 9);
    const places = reading.outlines[0]?.edges.map(({ a }) => [a.x, Math.round(a.y * 1000) / 1000]);
    expect(places).toContainEqual([0, 0.2]);
    expect(places).toContainEqual([0, 299.85]);
  });

  it("names a wider gap", () => {
    const reading = read([[{ layer: "10" }, "M3 0L200 0L200 300L0 300L0 0"]], ["10", "12"]);
    expect(reading.outlines).toEqual([]);
    expect(reading.unclosed.map(({ gap }) => Math.round(gap * 1000) / 1000)).toEqual([3]);
    expect(
      read([[{ layer: "10" }, "M3 0L200 0L200 300L0 300L0 0"]], ["10", "12"], {}, { joinWithin: 3 }).outlines.length,
    ).toBe(1);
  });

  it("names a wider gap where there are no sizes", () => {
    expect(read([[{}, "M3 0L200 0L200 300L0 300L0 0"]]).unclosed.map(({ gap }) => gap)).toEqual([3]);
  });

  it("drops lines that lie on one another", () => {
    const once = sides(0, 0, 200, 300);
    expect(areas(read([[{}, ...once, ...once, "M200 0L0 0"]]))).toEqual([[null, 60000]]);
    expect(areas(read([[{}, box(0, 0, 200, 300), box(0, 0, 200, 300)]]))).toEqual([[null, 60000]]);
  });

  it("goes along a line that sizes share, met in its middle", () => {
    // The centre line is drawn once, longer than any size but the largest needs.
    const size = (label: string, more: number): Line => [
      { layer: label },
      `M0 ${50 - more}L${200 + more} ${50 - more}L${200 + more} ${300 + more}L0 ${300 + more}`,
    ];
    const reading = read(
      [size("10", 0), size("12", 10), size("14", 20), [{ layer: "all" }, "M0 30L0 320"]],
      ["10", "12", "14"],
    );
    expect(areas(reading)).toEqual([
      ["10", 200 * 250],
      ["12", 210 * 270],
      ["14", 220 * 290],
    ]);
    expect(pieces(reading)).toBe(1);
    expect(reading.unclosed).toEqual([]);
  });

  it("keeps apart what crosses straight at one place", () => {
    const first = ["M0 0L100 100", "M100 100L200 200", "M200 200L200 0L0 0"];
    const second = ["M0 200L100 100", "M100 100L200 0.5", "M200 0.5L260 300L0 200"];
    expect(read([[{}, ...first, ...second]]).outlines.length).toBe(2);
  });

  it("passes a dart drawn on the seam, whether the seam is broken at its mouth or not", () => {
    const dart = "M80 300L100 180L120 300";
    for (const seam of [["M200 300L0 300"], ["M200 300L120 300", "M120 300L80 300", "M80 300L0 300"]]) {
      const reading = read([[{}, "M0 300L0 0L200 0L200 300", ...seam, dart]]);
      expect(areas(reading)).toEqual([[null, 60000]]);
      expect(reading.groups[0]?.inner.length).toBe(1);
    }
  });

  it("leaves hatching and a title block out", () => {
    const hatch = Array.from({ length: 30 }, (_, at) => `M${20 + at * 4} 40L${60 + at * 4} 80`);
    const title = ["M700 700L1000 700", "M700 750L1000 750", "M850 700L850 1000"];
    const reading = read([
      [{}, box(0, 0, 1000, 1000), box(16, 16, 200, 300), box(400, 16, 200, 300), ...hatch, ...title],
    ]);
    expect(pieces(reading)).toBe(2);
    expect(areas(reading).map(([, area]) => area)).toEqual([60000, 60000]);
  });
});

describe("groups", () => {
  it("hold what lies inside", () => {
    const circle =
      "M104 100C104 102.2 102.2 104 100 104C97.8 104 96 102.2 96 100C96 97.8 97.8 96 100 96C102.2 96 104 97.8 104 100Z";
    const reading = read(
      [
        [
          {},
          box(0, 0, 200, 300),
          box(50, 200, 10, 40),
          "M20 50L20 150",
          "M148 150L152 150",
          "M150 148L150 152",
          circle,
        ],
      ],
      [],
      {
        writings: [{ text: "Front", x: 60, y: 60, layer: "", group: "" }],
        points: [
          { x: 30, y: 30, layer: "", group: "" },
          { x: 500, y: 30, layer: "", group: "" },
        ],
      },
    );
    const [group] = reading.groups;
    expect(reading.groups.length).toBe(1);
    expect(group?.writings.map(({ text }) => text)).toEqual(["Front"]);
    expect(group?.innerClosed.length).toBe(1);
    expect(group?.inner.length).toBe(1);
    expect(group?.marks.map(({ form, at }) => [form, Math.round(at.x), Math.round(at.y)])).toEqual([
      ["circle", 100, 100],
      ["cross", 150, 150],
      ["point", 30, 30],
    ]);
  });

  it("are two for a left and a right piece", () => {
    const both = (label: string, more: number): Line => [
      { layer: label },
      box(0, 0, 200 + more, 300 + more),
      box(400, 0, 200 + more, 300 + more),
    ];
    const reading = read([both("10", 0), both("12", 10)], ["10", "12"]);
    expect(reading.groups.map(({ outlines }) => Object.keys(outlines))).toEqual([
      ["10", "12"],
      ["10", "12"],
    ]);
  });

  it("bring sizes together that lie side by side", () => {
    const reading = read(
      [
        [{ layer: "10" }, box(0, 0, 200, 300)],
        [{ layer: "12" }, box(300, 0, 210, 310)],
        [{ layer: "14" }, box(600, 0, 220, 320)],
      ],
      ["10", "12", "14"],
    );
    expect(reading.groups.length).toBe(1);
    expect(reading.groups[0]?.shift).toEqual({ "10": { x: 610, y: 10 }, "12": { x: 305, y: 5 }, "14": { x: 0, y: 0 } });
  });
});

describe("the exchange standard of the trade", () => {
  const block = (name: string, x: number, width: number): Line[] => [
    [{ layer: "1", group: name }, box(x, 0, width, 320)],
    [{ layer: "14", group: name }, box(x + 10, 10, width - 20, 300)],
    [{ layer: "8", group: name }, `M${x + 80} 310L${x + 100} 200L${x + 120} 310`],
    [{ layer: "7", group: name }, `M${x + 50} 60L${x + 50} 160`],
  ];
  const said = (group: string, x: number, size: string) => [
    { text: "Piece Name: FRONT", x: x + 50, y: 100, layer: "1", group },
    { text: `Size: ${size}`, x: x + 50, y: 110, layer: "1", group },
  ];

  it("has sizes in its blocks, and numbers of layers that are none", () => {
    const reading = read([...block("P1", 0, 220), ...block("P2", 300, 230)], ["8", "14"], {
      format: "dxf",
      writings: [...said("P1", 0, "8"), ...said("P2", 300, "14")],
      points: [
        { x: 0, y: 0, layer: "2", group: "P1" },
        { x: 100, y: 100, layer: "13", group: "P1" },
      ],
    });
    expect(reading.sortedBy).toBe("group");
    expect(reading.groups.length).toBe(1);
    const [group] = reading.groups;
    const areaOf = (id: string | undefined): number =>
      Math.abs(signedArea(reading.outlines.find((one) => one.id === id)?.edges ?? []));
    expect(group?.nameInFile).toBe("FRONT");
    expect([areaOf(group?.outlines["8"]), areaOf(group?.outlines["14"])]).toEqual([220 * 320, 230 * 320]);
    expect([areaOf(group?.sewing?.["8"]), areaOf(group?.sewing?.["14"])]).toEqual([200 * 300, 210 * 300]);
    expect(group?.inner.map(({ layer }) => layer).toSorted()).toEqual(["7", "7", "8", "8"]);
    expect(group?.marks.map(({ form, layer, size }) => [form, layer, size])).toEqual([["point", "13", "8"]]);
  });
});

it("lines that she calls marks inside are such, closed or not, though they would be an outline", () => {
  const lines: Line[] = [
    [{ layer: "a" }, box(0, 0, 200, 300)],
    [{ layer: "b" }, box(20, 20, 150, 250), "M60 60L120 200"],
  ];
  const told = (own: Partial<OwnPattern>) =>
    read(lines, [], {}, { sortBy: "layer", ...own }).groups.map(({ id, inner, innerClosed }) => [
      id,
      inner.map((line) => line.id),
      innerClosed,
    ]);
  expect(told({ lines: { a: { of: "all" }, b: { of: "inner" } } })).toEqual([["0:0", ["1:1"], ["1:0"]]]);
  expect(told({ lines: { a: { of: "all" }, b: { of: "nothing" } } })).toEqual([["0:0", [], []]]);
});

describe("lines that ought to close", () => {
  const open = (lines: readonly Line[]): number[] =>
    read(lines, ["10", "12"]).unclosed.map(({ gap }) => Math.round(gap * 1000) / 1000);
  const ten = { layer: "10" };
  const PIECE = box(0, 0, 200, 300);

  it("are 40 mm long at the least, and of a size where there are sizes", () => {
    expect(open([[ten, "M0 0L39.9 0"]])).toEqual([]);
    expect(open([[ten, "M0 0L40 0"]])).toEqual([40]);
    expect(
      open([
        [ten, PIECE],
        [{ layer: "all" }, "M500 0L600 0"],
      ]),
    ).toEqual([]);
  });

  it("are told the wider gap of both their ends, to the nearest loose end of their own size", () => {
    const [one, other] = ["M0 0L100 0L100 100", "M0 3L0 100L95 100"];
    expect(open([[ten, one, other]])).toEqual([5, 5]);
    // A line of the other size that ends nearer is none of theirs.
    expect(
      open([
        [ten, one, other],
        [{ layer: "12" }, "M0 1L-50 1"],
      ]),
    ).toEqual([5, 5, 50]);
    expect(open([[ten, one]])).toEqual([141.421]);
  });

  it("are none that go from outline to outline, as near as points of it are looked at", () => {
    // Their ends 2 mm apart, 0.6 and 0.9 mm from the edge: joined within 0.5 mm, looked at to 0.2.
    expect(open([[ten, PIECE, "M99 299.4L60 180L101 299.4"]])).toEqual([]);
    expect(open([[ten, PIECE, "M99 299.1L60 180L101 299.1"]])).toEqual([2]);
    // The edge of the other size is not theirs.
    expect(
      open([
        [ten, "M99 299.4L60 180L101 299.4"],
        [{ layer: "12" }, PIECE],
      ]),
    ).toEqual([2]);
  });

  it("are none inside a piece that are open by more than a twentieth of their length", () => {
    expect(open([[ten, PIECE, "M50 50L150 50"]])).toEqual([]);
    // 152.4 long with 7.6 open, a twentieth being 7.62; 152 with 8.
    expect(open([[ten, PIECE, "M50 50L90 50L90 90L50 90L50 57.6"]])).toEqual([7.6]);
    expect(open([[ten, PIECE, "M50 50L90 50L90 90L50 90L50 58"]])).toEqual([]);
    expect(open([[ten, PIECE, "M300 0L400 0"]])).toEqual([100]);
    expect(open([[ten, PIECE, "M150 50L300 50"]])).toEqual([150]);
    expect(open([[ten, PIECE, "M300 50L150 50"]])).toEqual([150]);
  });
});

describe("what is told of lines", () => {
  it.each(["Bust point", "bust-point", "BREAST APEX", "Apex", "bp", "B.P.", "b. p.", "(BP)", "bustpoint", " apex: "])(
    "%j marks a bust point",
    (text) => {
      const writings = [{ text, x: 60, y: 70, layer: "a", group: "" }];
      const [group] = read([[{ layer: "a" }, box(0, 0, 200, 300)]], [], { writings }).groups;
      expect(group?.marks).toEqual([{ at: { x: 60, y: 70 }, size: null, layer: "a", form: "writing" }]);
    },
  );

  it.each(["bust", "point", "apex line", "to apex", "bpm", "bust  line point", "b p q", "bust point to waist"])(
    "%j marks none",
    (text) => {
      const writings = [{ text, x: 60, y: 70, layer: "a", group: "" }];
      expect(read([[{ layer: "a" }, box(0, 0, 200, 300)]], [], { writings }).groups[0]?.marks).toEqual([]);
    },
  );

  it("outlines and open lines have ids by the first of their lines in the drawing, and by their size", () => {
    const reading = read([[{ layer: "10" }, ...sides(0, 0, 200, 300).toReversed(), "M500 0L600 0"]], ["10", "12"]);
    expect(reading.outlines.map(({ id, size }) => [id, size])).toEqual([["0:0 10", "10"]]);
    expect(reading.unclosed.map(({ line }) => [line.id, line.size, line.layer])).toEqual([["0:4 10", "10", "10"]]);
    expect(read([[{}, ...sides(0, 0, 200, 300).toReversed()]]).outlines.map(({ id }) => id)).toEqual(["0:0"]);
  });

  it("sizes told by order count what does not close too, across and down", () => {
    // The first is less across and down; but an open line in it goes 80 across and 40 down besides.
    const lines: Line[] = [
      [{ colour: "#0000ff" }, box(0, 0, 200, 300), "M20 20L100 60"],
      [{ colour: "#ff0000" }, box(0, 0, 210, 310)],
    ];
    const named = (some: readonly Line[]) => read(some, ["10", "12"]).lines.map(({ meaning }) => meaning);
    expect(named(lines)).toEqual([
      { of: "size", size: "12" },
      { of: "size", size: "10" },
    ]);
    expect(named([[{ colour: "#0000ff" }, box(0, 0, 200, 300)], ...lines.slice(1)])).toEqual([
      { of: "size", size: "10" },
      { of: "size", size: "12" },
    ]);
  });

  it("outlines of more than 1500 edges are told, and are no pieces", () => {
    const star = (rays: number): string =>
      `${Array.from({ length: rays * 2 }, (_, i) => {
        const [radius, turn] = [i % 2 === 0 ? 400 : 405, (Math.PI * i) / rays];
        return `${i === 0 ? "M" : "L"}${radius * Math.cos(turn)} ${radius * Math.sin(turn)}`;
      }).join("")}Z`;
    const told = (rays: number) => {
      const { outlines, groups, isCut } = read([[{}, star(rays)]]);
      return [outlines.length, groups.length, isCut];
    };
    expect(told(750)).toEqual([1, 1, undefined]);
    expect(told(751)).toEqual([1, 0, true]);
  });
});

describe("marks", () => {
  const TEN = { layer: "10" };
  const PIECES: readonly Line[] = [
    [TEN, box(0, 0, 200, 300)],
    [{ layer: "12" }, box(0, 0, 210, 310)],
  ];
  const marksIn = (lines: readonly Line[], more: Partial<FileDrawing> = {}) =>
    read(lines, ["10", "12"], more).groups.flatMap(({ marks }) =>
      marks.map(({ form, size, layer, at }) => [form, size, layer, Math.round(at.x), Math.round(at.y)]),
    );

  it("are of the size and the layer that they are drawn in", () => {
    const ring =
      "M104 100C104 102.2 102.2 104 100 104C97.8 104 96 102.2 96 100C96 97.8 97.8 96 100 96C102.2 96 104 97.8 104 100Z";
    expect(
      marksIn([[TEN, box(0, 0, 200, 300), ring, "M148 150L152 150", "M150 148L150 152"], ...PIECES.slice(1)]),
    ).toEqual([
      ["circle", "10", "10", 100, 100],
      ["cross", "10", "10", 150, 150],
    ]);
    expect(marksIn([...PIECES, [{ layer: "all" }, ring, "M148 150L152 150", "M150 148L150 152"]])).toEqual([
      ["circle", null, "all", 100, 100],
      ["cross", null, "all", 150, 150],
    ]);
  });

  it("that are places of the file or writings go by their layer, or their group, where sizes do", () => {
    const points = [
      { x: 30, y: 30, layer: "12", group: "" },
      { x: 40, y: 30, layer: "2", group: "" },
    ];
    const writings = [
      { text: "Bust point", x: 50, y: 60, layer: "10", group: "12" },
      { text: "Front", x: 50, y: 80, layer: "10", group: "" },
    ];
    expect(marksIn(PIECES, { points, writings })).toEqual([
      ["point", "12", "12", 30, 30],
      ["point", null, "2", 40, 30],
      ["writing", "10", "10", 50, 60],
    ]);
    const byGroup = PIECES.map(([{ layer = "" }, ...paths]): Line => [{ group: layer }, ...paths]);
    expect(marksIn(byGroup, { points, writings }).map(([form, size]) => [form, size])).toEqual([
      ["point", null],
      ["point", null],
      ["writing", "12"],
    ]);
    const byColour = PIECES.map(([{ layer = "" }, ...paths]): Line => [{ colour: `#0000${layer}` }, ...paths]);
    expect(marksIn(byColour, { points, writings }).map(([, size]) => size)).toEqual([null, null, null]);
  });

  it("are scaled with all else", () => {
    const { groups, scale } = read([[{}, box(0, 0, 400, 600), box(1000, 0, 100, 100)]], [], {
      unit: { mm: 0.5, saidBy: "header" },
      points: [{ x: 60, y: 80, layer: "", group: "" }],
      writings: [{ text: "Front", x: 100, y: 120, layer: "", group: "" }],
    });
    expect(groups.flatMap(({ marks }) => marks.map(({ at }) => at))).toEqual([{ x: 30, y: 40 }]);
    expect(groups.flatMap(({ writings }) => writings)).toEqual([{ at: { x: 50, y: 60 }, text: "Front" }]);
    // A square is told where the file has it, and in mm.
    expect(scale.squares).toMatchObject([
      { outline: "0:1", at: { x: 1050, y: 50 }, width: 50, height: 50, usual: { width: 50, height: 50 } },
    ]);
  });
});

describe("lines that sizes share", () => {
  const own = (label: string, more: number): Line => [
    { layer: label },
    `M0 ${50 - more}L${200 + more} ${50 - more}L${200 + more} ${300 + more}L0 ${300 + more}`,
  ];
  const shared = (...paths: string[]): Line => [{ layer: "all" }, ...paths];
  const told = (...lines: readonly Line[]) => {
    const reading = read(lines, ["10", "12"]);
    return {
      areas: areas(reading),
      inner: reading.groups.map(({ inner }) => inner.map(({ id }) => id)),
      unclosed: reading.unclosed.map(({ line }) => line.id),
    };
  };

  it("are outlines of no size where they close by themselves, drawn so or joined", () => {
    const two = [own("10", 0), own("12", 10)];
    expect(told(...two, shared("M0 30L0 320", box(500, 0, 100, 150))).areas).toEqual([
      ["10", 50000],
      ["12", 56700],
      [null, 15000],
    ]);
    expect(told(...two, shared("M0 30L0 320", ...sides(500, 0, 100, 150))).areas).toEqual([
      ["10", 50000],
      ["12", 56700],
      [null, 15000],
    ]);
    // Nobody's outline goes along one that is closed.
    expect(told(own("10", 0), own("12", 10), shared(box(-20, 0, 20, 400))).unclosed).toHaveLength(2);
  });

  it("are told no second time where a size went along them, and else lie where they lie", () => {
    const two = [own("10", 0), own("12", 10)];
    expect(told(...two, shared("M0 30L0 320"))).toMatchObject({ inner: [[]], unclosed: [] });
    expect(told(...two, shared("M0 30L0 320", "M50 100L50 200"))).toMatchObject({ inner: [["2:1"]], unclosed: [] });
    // One that goes on from it is a line of its own still.
    expect(told(...two, shared("M0 30L0 320", "M0 320L-100 320"))).toMatchObject({ unclosed: [] });
  });

  it("inside alone are asked of nobody to close, nor where a name says that they are marks", () => {
    const piece: Line = [{ layer: "10" }, box(0, 0, 200, 300)];
    expect(told(piece, [{ layer: "10", group: "grain" }, "M500 0L600 0"]).unclosed).toEqual([]);
    expect(told(piece, [{ layer: "10", group: "cut" }, "M500 0L600 0"]).unclosed).toEqual(["1:0 10"]);
  });
});

describe("what is adversarial", () => {
  it.each([
    ["all ends at one place", Array.from({ length: 6000 }, (_, i) => `M0 0L${500 * Math.cos(i)} ${500 * Math.sin(i)}`)],
    [
      "a crowd of ends",
      Array.from(
        { length: 6000 },
        (_, i) =>
          `M${((i * 7919) % 1000) / 500} ${((i * 104729) % 1000) / 500}L${500 * Math.cos(i)} ${500 * Math.sin(i)}`,
      ),
    ],
    [
      "thousands of overlapping boxes",
      Array.from({ length: 6000 }, (_, i) => box((i % 77) * 3, Math.floor(i / 77) * 3, 150, 170)),
    ],
    ["a grid", Array.from({ length: 6000 }, (_, i) => (i % 2 === 0 ? `M0 ${i}L6000 ${i}` : `M${i} 0L${i} 6000`))],
    ["no numbers", ["M0 0L1e400 0", "MNaN 0L1 1", "M0 0L1e9 1e9", "M5 5", "", "M0 0Z"]],
  ])("ends: %s", (_, paths) => {
    // Without its limits each would take minutes, and the runner would end it.
    expect(read([[{}, ...paths]]).scale.mm).toBe(1);
  });
});
