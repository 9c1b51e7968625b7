/** Lines joined to nets and outlines, on drawings of a few lines whose places are read off squared paper. */
import { describe, expect, it } from "vitest";
import { lineEdge } from "../../../src/core/geometry/edgeCurve";
import { sheetPoint } from "../../../src/core/geometry/point";
import { byTheClock, joinLines, withoutDoubles, type Chain, type Loop } from "../../../src/core/outlines/joinLines";
import { lengthOf, netOf, slice, wayOut } from "../../../src/core/outlines/lineNet";
import { strokesOf, type Stroke } from "../../../src/core/outlines/strokes";
import { box, drawn, strokes } from "./handStrokes";

const p = sheetPoint;
const keys = (some: readonly Stroke[]): string[] => some.map(({ key }) => key);
const round = (value: number): number => Math.round(value * 1000) / 1000 + 0;
/** The corners of a walk, in its order. */
const along = ({ edges }: Pick<Loop | Chain, "edges">): string =>
  [...edges.map(({ a }) => a), ...edges.slice(-1).map(({ b }) => b)]
    .map(({ x, y }) => `${round(x)},${round(y)}`)
    .join(" ");
/** The corners of a loop, whichever it begins at and whichever way it goes. */
const corners = (loop: Loop): string[] => loop.edges.map(({ a }) => `${round(a.x)},${round(a.y)}`).toSorted();
const SQUARE = ["0,0", "0,100", "100,0", "100,100"];

const joined = (own: readonly string[], shared: readonly string[] = [], within = 0.5) => {
  const all = strokes(...own, ...shared);
  return joinLines(all.slice(0, own.length), all.slice(own.length), within);
};

describe("the net", () => {
  const net = (own: readonly string[], shared: readonly string[] = [], within = 0.5) => {
    const all = strokes(...own, ...shared);
    const { parts, gaps, places } = netOf(all.slice(0, own.length), all.slice(own.length), within);
    return parts.map((part) => ({
      stroke: part.stroke.key,
      own: part.isOwn,
      span: [part.from, part.to],
      places: [part.fromNode, part.toNode].map((node) => [
        round(places[node]?.x ?? NaN),
        round(places[node]?.y ?? NaN),
      ]),
      gaps: [part.fromNode, part.toNode].map((node) => round(gaps[node] ?? NaN)),
      length: round(part.length),
    }));
  };

  it("has ends at one place as one, within 0.02 mm", () => {
    const [one, other] = netOf(strokes("M0 0L10 0", "M10.015 0L20 0"), [], 0.5).parts;
    expect(one?.toNode).toBe(other?.fromNode);
    expect(net(["M0 0L10 0", "M10.015 0L20 0"])[1]?.gaps).toEqual([0, 0]);
    expect(net(["M0 0L10 0", "M10.025 0L20 0"])[1]?.gaps).toEqual([0.025, 0]);
  });

  it("closes a gap in its middle, within the tolerance", () => {
    expect(net(["M0 0L10 0", "M10.4 0L20 0"])).toEqual([
      {
        stroke: "0:0",
        own: true,
        span: [0, 1],
        places: [
          [0, 0],
          [10.2, 0],
        ],
        gaps: [0, 0.4],
        length: 10,
      },
      {
        stroke: "0:1",
        own: true,
        span: [0, 1],
        places: [
          [10.2, 0],
          [20, 0],
        ],
        gaps: [0.4, 0],
        length: 9.6,
      },
    ]);
    expect(net(["M0 0L10 0", "M10.6 0L20 0"]).map(({ gaps }) => gaps)).toEqual([
      [0, 0],
      [0, 0],
    ]);
    expect(net(["M0 0L10 0", "M10.6 0L20 0"], [], 0.6).map(({ gaps }) => gaps)).toEqual([
      [0, 0.6],
      [0.6, 0],
    ]);
  });

  it("joins the nearest ends first, and each but once", () => {
    const found = net(["M0 0L10 0", "M10.3 0L20 0", "M10.3 -0.2L10.3 -20"]);
    // The two that are 0.2 apart meet in their middle; the third is then set there too, 0.3 from the line that it comes to.
    expect(found[1]?.places[0]).toEqual([10.3, -0.1]);
    expect(found[2]?.places[0]).toEqual([10.3, -0.1]);
    expect(found.map(({ gaps }) => gaps)).toEqual([
      [0, 0.3],
      [0.3, 0],
      [0.3, 0],
    ]);
  });

  it("does not close a short chain by its own ends", () => {
    expect(net(["M0 0L3 0L3 3L0 0.4"]).map(({ gaps }) => gaps)).toEqual([[0.4, 0.4]]);
    expect(net(["M0 0L1.4 0L1.4 0.3L0 0.4"]).map(({ gaps }) => gaps)).toEqual([[0, 0]]);
  });

  it("cuts a line where an end comes to it", () => {
    expect(net(["M0 0L10 0L20 0", "M5 0.3L5 10"])).toEqual([
      {
        stroke: "0:0",
        own: true,
        span: [0, 0.5],
        places: [
          [0, 0],
          [5, 0],
        ],
        gaps: [0, 0.3],
        length: 5,
      },
      {
        stroke: "0:0",
        own: true,
        span: [0.5, 2],
        places: [
          [5, 0],
          [20, 0],
        ],
        gaps: [0.3, 0],
        length: 15,
      },
      {
        stroke: "0:1",
        own: true,
        span: [0, 1],
        places: [
          [5, 0],
          [5, 10],
        ],
        gaps: [0.3, 0],
        length: 9.7,
      },
    ]);
    expect(net(["M0 0L20 0", "M5 0.6L5 10"])).toHaveLength(2);
    // Two cuts, in the order along it.
    expect(net(["M0 0L20 0", "M15 0L15 10", "M5 0L5 10"]).map(({ span }) => span)).toEqual([
      [0, 0.25],
      [0.25, 0.75],
      [0.75, 1],
      [0, 1],
      [0, 1],
    ]);
  });

  it("takes the nearest of two lines", () => {
    const [, , cut] = net(["M0 0L20 0", "M0 -0.3L20 -0.3", "M5 0.1L5 10"]).filter(({ stroke }) => stroke !== "0:2");
    expect(net(["M0 0L20 0", "M0 -0.3L20 -0.3", "M5 0.1L5 10"]).filter(({ stroke }) => stroke === "0:0")).toHaveLength(
      2,
    );
    expect(cut?.stroke).toBe("0:1");
  });

  it("sets a size's loose end on a shared line, and no shared end on a size's but where it lies on it", () => {
    expect(net(["M5 0.3L5 10"], ["M0 0L20 0"])).toHaveLength(3);
    expect(net(["M0 0L20 0"], ["M5 0.3L5 10"])).toHaveLength(2);
    expect(net(["M0 0L20 0"], ["M5 0.01L5 10"])).toHaveLength(3);
    expect(net(["M5 0.3L5 10"], ["M0 0L20 0"]).map(({ own }) => own)).toEqual([true, false, false]);
  });

  it("closes no chain of lines by its own ends that is shorter than eight times the gap", () => {
    // Shared lines, so that no end is set on the other line: 3.4 mm with 0.4 open, then 3.1.
    const closed = (reach: number): number[][] =>
      net([], [`M0 0L${reach} 0`, `M${reach} 0L0 0.4`]).map(({ gaps }) => gaps);
    expect(closed(1.7)).toEqual([
      [0.4, 0],
      [0, 0.4],
    ]);
    expect(closed(1.5)).toEqual([
      [0, 0],
      [0, 0],
    ]);
    // Of three, the last joined by a gap of 0.1 first: 3.3 mm in all, then 3.1.
    const bridged = (reach: number): number[][] =>
      net([], [`M0 0L${reach} 0`, `M${reach} 0L${reach} 0.3`, `M${reach} 0.4L0 0.4`]).map(({ gaps }) => gaps);
    expect(bridged(1.5)).toEqual([
      [0.4, 0],
      [0, 0.1],
      [0.1, 0.4],
    ]);
    expect(bridged(1.4)).toEqual([
      [0, 0],
      [0, 0.1],
      [0.1, 0],
    ]);
  });

  it("joins a line to another however short it is", () => {
    expect(net([], ["M0 0L1 0", "M1.4 0L20 0"]).map(({ gaps }) => gaps)).toEqual([
      [0, 0.4],
      [0.4, 0],
    ]);
    // Shorter than ends are apart that are one, and a stretch all the same between two places.
    expect(net(["M0 0L10 0", "M10.015 0L10.03 0", "M10.03 0L20 0"]).map(({ length }) => length)).toEqual([
      10, 0.015, 9.97,
    ]);
  });

  it("finds a line all along it, upright, level or aslant", () => {
    for (let at = 1; at < 64; at += 3) {
      expect(net(["M0 0L64 0", `M${at} 0.3L${at} 80`])).toHaveLength(3);
      expect(net(["M0 64L0 0", `M0.3 ${at}L80 ${at}`])).toHaveLength(3);
      expect(net(["M0 0L64 48", `M${at} ${at * 0.75 + 0.3}L${at} 90`])).toHaveLength(3);
    }
  });

  it("of gaps alike joins the one first that was drawn first", () => {
    // Quarters of a millimetre: the one in the middle could go to either.
    const found = net(["M0 0L10 0", "M10.25 0L10.25 20", "M10.5 0L20 0"], [], 0.3);
    expect(found.map(({ places }) => places[places[0]?.[0] === 0 ? 1 : 0])).toEqual([
      [10.125, 0],
      [10.125, 0],
      [10.125, 0],
    ]);
    expect(found.map(({ gaps }) => gaps)).toEqual([
      [0, 0.25],
      [0.25, 0],
      [0.25, 0],
    ]);
  });

  it("brings a loose end to a place where lines meet, or end, within 0.02 mm, and else cuts the line beside it", () => {
    const corner = ["M0 0L10 0", "M10 0L20 0"];
    for (const lines of [corner, corner.toReversed()]) {
      const found = net([...lines, "M10 0.3L10 10"]);
      expect(
        found
          .map(({ places }) => places)
          .flat()
          .filter(([x]) => x === 10),
      ).toHaveLength(4);
      expect(found.flatMap(({ gaps }) => gaps).filter((gap) => gap === 0.3)).toHaveLength(3);
      expect(net([...lines, "M10.015 0.3L10 10"])).toHaveLength(3);
      expect(net([...lines, "M9.985 0.3L10 10"])).toHaveLength(3);
      expect(net([...lines, "M10.03 0.3L10 10"])).toHaveLength(4);
      expect(net([...lines, "M9.97 0.3L10 10"])).toHaveLength(4);
    }
    // The wider of two gaps at one place is its own.
    const twice = net([...corner, "M10 0.2L10 10", "M10 -0.4L10 -10"]);
    expect(twice.map(({ gaps }) => gaps)).toEqual([
      [0, 0.4],
      [0.4, 0],
      [0.4, 0],
      [0.4, 0],
    ]);
    const other = net([...corner, "M10 0.4L10 10", "M10 -0.2L10 -10"]);
    expect(other.flatMap(({ gaps }) => gaps).filter((gap) => gap === 0.4)).toHaveLength(4);
  });

  it("brings a loose end to where a gap was closed before", () => {
    // The two in one line are nearest to each other, and meet at 10.1; the third comes to one of them, 0.4 away.
    const found = net(["M0 0L10 0", "M10.2 0L20 0", "M10.2 0.4L10.2 10"]);
    expect(found.map(({ places }) => places)).toEqual([
      [
        [0, 0],
        [10.1, 0],
      ],
      [
        [10.1, 0],
        [20, 0],
      ],
      [
        [10.1, 0],
        [10.2, 10],
      ],
    ]);
  });

  it("cuts a curve at its belly, and a line however long it is, or far away", () => {
    // At its middle the curve is three quarters of 40 down.
    const curved = net(["M0 0C20 40 40 40 60 0", "M30 30.3L30 80"]);
    expect(curved).toHaveLength(3);
    expect(curved[0]).toMatchObject({ span: [0, 0.5], gaps: [0, 0.3] });
    expect(net(["M0 0L90000 0", "M44444 0.3L44444 80"])).toHaveLength(3);
    expect(net(["M-3000 -2000L3000 -2000", "M-1111 -2000.3L-1111 -3000"])).toHaveLength(3);
  });

  it("looks at no more than 64 lines at a place, of many that lie apart at all", () => {
    const close = (count: number): string[] => Array.from({ length: count }, (_, i) => `M0 ${i / 10}L100 ${i / 10}`);
    expect(net([...close(64), "M50 6.34L50 90"], [], 0.05)).toHaveLength(66);
    expect(net([...close(65), "M50 6.44L50 90"], [], 0.05)).toHaveLength(66);
    const apart = (line: (at: number) => string): string[] => Array.from({ length: 100 }, (_, i) => line(i * 20));
    expect(net([...apart((x) => `M${x} 0L${x} 100`), "M1980.3 50L1990 50"])).toHaveLength(102);
    expect(net([...apart((y) => `M0 ${y}L100 ${y}`), "M50 1980.3L50 1990"])).toHaveLength(102);
  });

  it("leaves out what has no length", () => {
    expect(net(["M0 0L0.01 0"])).toEqual([]);
  });
});

describe("stretches of a line", () => {
  const [line] = strokes("M0 0L10 0L10 20L40 20");
  if (line === undefined) throw new Error("no line");

  it("are cut between any two positions", () => {
    expect(slice(line, 0, 3)).toEqual(line.edges);
    expect(slice(line, 0.5, 2.5)).toEqual([
      lineEdge(p(5, 0), p(10, 0)),
      lineEdge(p(10, 0), p(10, 20)),
      lineEdge(p(10, 20), p(25, 20)),
    ]);
    expect(slice(line, 1, 2)).toEqual([lineEdge(p(10, 0), p(10, 20))]);
    expect(slice(line, 1.25, 1.75)).toEqual([lineEdge(p(10, 5), p(10, 15))]);
    expect(slice(line, 2, 2)).toEqual([]);
    expect(lengthOf([p(0, 0), p(3, 4), p(3, 10)])).toBe(11);
    expect(lengthOf([])).toBe(0);
  });

  it("set out by what lies two millimetres from their end, or a third of them", () => {
    const [part] = netOf([line], [], 0.5).parts;
    if (part === undefined) throw new Error("no part");
    expect(wayOut(part, true)).toEqual({ x: 2, y: 0 });
    expect(wayOut(part, false)).toEqual({ x: 38, y: 20 });
    const [short] = netOf(strokes("M0 0L1 0L1 2"), [], 0.1).parts;
    expect(short === undefined ? null : wayOut(short, true)).toEqual({ x: 1, y: 0 });
    expect(short === undefined ? null : wayOut(short, false)).toEqual({ x: 1, y: 1 });
    const [bent] = netOf(strokes("M0 0L0 0.5L9 0.5"), [], 0.1).parts;
    expect(bent === undefined ? null : wayOut(bent, true)).toEqual({ x: 1.5, y: 0.5 });
  });
});

describe("outlines", () => {
  it("are closed lines as they are drawn, and open ones joined", () => {
    const { loops, chains } = joined([
      box(200, 0, 100, 100),
      "M0 0L100 0",
      "M100 100L100 0",
      "M0 100L100 100",
      "M0 0L0 100",
    ]);
    expect(loops.map(corners)).toEqual([["200,0", "200,100", "300,0", "300,100"], SQUARE]);
    expect(loops.map(({ widestGap, strokes: of }) => [widestGap, keys(of).toSorted()])).toEqual([
      [0, ["0:0"]],
      [0, ["0:1", "0:2", "0:3", "0:4"]],
    ]);
    expect(chains).toEqual([]);
  });

  it("are told the widest of their gaps, which lie at one place afterwards", () => {
    const [loop] = joined(["M0 0L100 0L100 100", "M100 100.2L0 100L0 0.4"]).loops;
    expect(loop?.widestGap).toBeCloseTo(0.4, 9);
    expect(loop === undefined ? [] : corners(loop)).toEqual(["0,0.2", "0,100", "100,0", "100,100.1"]);
  });

  it("go round the outside: what crosses inside is a line of its own, held by the outline", () => {
    const { loops, chains } = joined(["M0 0L100 0L100 100L0 100L0 0.3", "M0 50L100 50"]);
    expect(loops.map(corners)).toEqual([["0,0.15", "0,100", "100,0", "100,100"]]);
    expect(chains.map((chain) => [along(chain), chain.isHeld])).toEqual([["0,50 100,50", true]]);
  });

  it("leave dangling ends, and what hangs on a bridge", () => {
    const { loops, chains } = joined([
      "M0 0L100 0L100 100L0 100L0 0.3",
      "M100 50L105 50",
      "M105 50L110 45",
      "M110 45L110 55L105 50",
      "M50 100L50 60",
    ]);
    expect(loops.map(corners)).toEqual([["0,0.15", "0,100", "100,0", "100,100"]]);
    expect(chains.map((chain) => chain.isHeld)).toContain(false);
    expect(chains.map(along)).toContain("50,100 50,60");
  });

  it("are none of what encloses next to nothing, or is broken with much hanging outside of it", () => {
    // 100 by 0.6: 60 of area, and 201 round at half a millimetre.
    expect(joined(["M0 0L100 0", "M100 0L100 0.6L0 0.6L0 0"]).loops).toEqual([]);
    expect(joined(["M0 0L100 0", "M100 0L100 6L0 6L0 0"]).loops).toHaveLength(1);
    // A tenth of 400 is 40: a tail of 30 outside, and one of 60, that begin within a millimetre or so.
    const tail = (length: number) =>
      joined(["M0 0L100 0L100 100", "M100 100L0 100L0 0", `M100 50L101.5 50L${100 + length} 50`]);
    expect(tail(30).loops).toHaveLength(1);
    expect(tail(60).loops).toEqual([]);
    // Inside it may be as long as it likes.
    expect(joined(["M0 0L100 0L100 100", "M100 100L0 100L0 0", "M100 50L10 50L10 10L90 10"]).loops).toHaveLength(1);
  });

  it("are broken by what hangs outside of them on any side, by more than a tenth of their length", () => {
    const square = ["M0 0L100 0L100 100", "M100 100L0 100L0 0"];
    /** The same turned by quarters about the middle of the square. */
    const turned = (quarters: number, places: readonly (readonly [number, number])[]): string =>
      places
        .map((place, i) => {
          let [x, y] = place;
          for (let q = 0; q < quarters; q += 1) [x, y] = [100 - y, x];
          return `${i === 0 ? "M" : "L"}${x} ${y}`;
        })
        .join("");
    for (const quarters of [0, 1, 2, 3]) {
      const loopsWith = (...places: readonly (readonly [number, number])[]): number =>
        joined([...square, turned(quarters, places)]).loops.length;
      // 40 mm of 400, counted from the first place that lies outside.
      expect(loopsWith([100, 50], [101.5, 50], [141.5, 50])).toBe(1);
      expect(loopsWith([100, 50], [101.5, 50], [142, 50])).toBe(0);
      // Within a millimetre beside it is not outside.
      expect(loopsWith([100, 5], [100.8, 5], [100.8, 95])).toBe(1);
      expect(loopsWith([100, 5], [101.3, 5], [101.3, 95])).toBe(0);
    }
  });

  it("that touch at a place are two", () => {
    const { loops } = joined([
      "M0 0L100 0L100 100",
      "M100 100L0 100L0 0",
      "M100 100L200 120L150 200",
      "M150 200L100 100",
    ]);
    expect(loops.map((loop) => loop.edges.length).toSorted((one, other) => one - other)).toEqual([3, 4]);
    expect(loops.map((loop) => keys(loop.strokes).toSorted().join(" ")).toSorted()).toEqual(["0:0 0:1", "0:2 0:3"]);
  });

  it("that cross straight at a place go each its own way", () => {
    const { loops } = joined([
      "M0 0L50 50",
      "M50 50L100 100L100 0L0 0",
      "M0 100L50 50",
      "M50 50L100 0.2L160 150L0 100",
    ]);
    expect(loops.map((loop) => keys(loop.strokes).toSorted().join(" ")).toSorted()).toEqual(["0:0 0:1", "0:2 0:3"]);
  });

  it("that cross straight go on from one and the same place, whichever line ends there first", () => {
    const lines = ["M0 0L50 50", "M50.01 50L100 100L100 0L0 0", "M0 100L50 50.01", "M50 49.99L100 0.2L160 150L0 100"];
    for (const order of [
      [0, 1, 2, 3],
      [3, 1, 2, 0],
      [2, 0, 3, 1],
    ]) {
      const { loops } = joined(order.map((at) => lines[at] ?? ""));
      expect(loops.map(({ edges }) => edges.length)).toEqual([4, 4]);
      for (const { edges } of loops)
        for (const [at, { b }] of edges.entries()) expect(edges[(at + 1) % 4]?.a).toEqual(b);
      const places = loops.flatMap(({ edges }) =>
        edges.map(({ a }) => a).filter(({ x, y }) => Math.hypot(x - 50, y - 50) < 1),
      );
      expect(places).toHaveLength(2);
      expect(places[0]).toEqual(places[1]);
    }
  });

  it("go along shared lines only where their own do not close", () => {
    const side = "M0 0L100 0L100 100L0 100";
    const { loops, chains } = joined([side], ["M0 -20L0 120"]);
    expect(loops.map(corners)).toEqual([SQUARE]);
    expect(loops.map(({ strokes: of }) => keys(of).toSorted())).toEqual([["0:0", "0:1"]]);
    expect(chains).toEqual([]);
    const own = joined([side, "M0 100L0 0"], ["M0 -20L0 120"]);
    expect(own.loops.map(({ strokes: of }) => keys(of).toSorted())).toEqual([["0:0", "0:1"]]);
    // Of shared lines alone there is none.
    expect(joined(["M500 500L510 500"], ["M0 0L100 0L100 100", "M100 100L0 100L0 0"]).loops).toEqual([]);
  });

  it("have a line that was cut and not needed as one edge again", () => {
    const [first, rest, inner] = ["M0 0L100 0", "M100 0L100 100L0 100L0 0", "M50 0L50 40"];
    const [back, restBack] = ["M100 0L0 0", "M0 0L0 100L100 100L100 0"];
    // Whichever it is walked from, and whichever way each is drawn.
    for (const lines of [
      [first, rest, inner],
      [inner, rest, first],
      [rest, first, inner],
      [back, rest, inner],
      [first, restBack, inner],
      [restBack, inner, back],
      // Walked against the way it is drawn.
      [rest, back, inner],
      [restBack, first, inner],
    ]) {
      const [loop] = joined(lines).loops;
      expect(loop?.edges).toHaveLength(4);
      expect(loop === undefined ? [] : corners(loop)).toEqual(SQUARE);
    }
    // Cut in the middle of one of its edges, it is one edge there again.
    const [bent] = joined(["M0 0L100 0L100 100L0 100L0 0.3", "M100 50L60 50", "M50 100L50 60"]).loops;
    expect(bent === undefined ? [] : corners(bent)).toEqual(["0,0.15", "0,100", "100,0", "100,100"]);
  });
});

describe("which way lines set out", () => {
  /** Drawn as they stand, and each the other way. */
  const bothWays = (lines: readonly string[]): readonly (readonly string[])[] => [
    lines,
    lines.map((line) => `M${line.slice(1).split("L").toReversed().join("L")}`),
  ];
  const keysOf = (some: readonly { readonly strokes: readonly Stroke[] }[]): string[] =>
    some.map(({ strokes: of }) => keys(of).toSorted().join(" ")).toSorted();

  it("tells what is outside: the middle one of three between two places is none of the outline, however it winds", () => {
    const over = "M0 0L0 -60L140 -60L140 0L100 0";
    const through = "M0 0L60 0L100 -30L100 0";
    const under = "M0 0L0 60L100 60L100 0";
    for (const lines of bothWays([over, through, under])) {
      const { loops, chains } = joined(lines);
      expect(keysOf(loops)).toEqual(["0:0 0:2"]);
      expect(keysOf(chains)).toEqual(["0:1"]);
    }
  });

  it("tells where lines cross straight, wherever they come from", () => {
    const lines = [
      "M40 0L40 40L50 50",
      "M50 50L60 60L100 60L100 0L40 0",
      "M40 100L40 60L50 50",
      "M50 50L60 40L140 40L140 100L40 100",
    ];
    for (const some of bothWays(lines)) expect(keysOf(joined(some).loops)).toEqual(["0:0 0:1", "0:2 0:3"]);
    // Four at a place, and all of them of the size: a shared one does not go on by itself.
    expect(keysOf(joined(lines.slice(0, 2), lines.slice(2)).loops)).toEqual(["0:0 0:1"]);
  });

  it("tells which goes straight on, of what is left", () => {
    const lines = ["M0 0L50 0", "M50 0L60 0L60 50L0 50", "M50 0L80 40"];
    for (const some of bothWays(lines)) expect(keysOf(joined(some).chains)).toEqual(["0:0 0:1", "0:2"]);
  });
});

describe("a closed walk", () => {
  it("is an outline where it encloses more than its own length, as wide as gaps are joined", () => {
    // 16 of area, 16 round.
    const small = (within: number) => joined(["M0 0L4 0L4 4", "M4 4L0 4L0 0"], [], within).loops.length;
    expect(small(1)).toBe(0);
    expect(small(0.99)).toBe(1);
  });

  it("leaves over what a line of it goes past its corner", () => {
    const past = ["M-20 0L100 0", "M100 0L100 100L0 100L0 0"];
    for (const shared of [[], ["M500 0L600 0"]]) {
      const { loops, chains } = joined(past, shared);
      expect(loops.map(corners)).toEqual([SQUARE]);
      expect(chains.map((chain) => [along(chain), chain.isHeld])).toEqual([["-20,0 0,0", false]]);
    }
  });
});

describe("what hangs inside an outline", () => {
  it("is left whole, a loop at the end of a line too", () => {
    const { loops, chains } = joined([
      "M0 0L100 0L100 50",
      "M100 50L100 100L0 100L0 0",
      "M100 50L60 50",
      "M60 50L40 30L40 70",
      "M40 70L60 50",
    ]);
    expect(loops.map(({ strokes: of }) => keys(of).toSorted())).toEqual([["0:0", "0:1"]]);
    expect(chains.map((chain) => [along(chain), chain.isHeld])).toEqual([["100,50 60,50 40,30 40,70 60,50", true]]);
  });

  it("is held where both its ends lie on others, and not where one ends in nothing", () => {
    const { chains } = joined([
      "M0 0L100 0L100 100",
      "M100 100L0 100L0 0",
      "M20 0L20 100",
      "M50 0L50 60",
      "M70 20L70 80",
    ]);
    expect(chains.map((chain) => [along(chain), chain.isHeld])).toEqual([
      ["20,0 20,100", true],
      ["50,0 50,60", false],
      ["70,20 70,80", false],
    ]);
  });
});

describe("a curve whose end is moved to close a gap", () => {
  const controls = (path: string): string[] =>
    joined(["M0 100L0 0L100 0L100 100", path]).loops.flatMap(({ edges }) =>
      edges.flatMap(({ curve }) =>
        curve === null ? [] : [curve.c1, curve.c2].map(({ x, y }) => `${round(x)},${round(y)}`).toSorted(),
      ),
    );

  it("sets out as before: its control there moves along, the other stays", () => {
    // The gap of 0.4 is closed in its middle.
    expect(controls("M100 100.4C70 130 30 130 0 100")).toEqual(["30,130", "70,129.8"]);
    expect(controls("M0 100C30 130 70 130 100 100.4")).toEqual(["30,130", "70,129.8"]);
    expect(controls("M0.4 100C30 130 70 130 100 100")).toEqual(["29.8,130", "70,130"]);
    expect(controls("M100 100C70 130 30 130 0 100")).toEqual(["30,130", "70,130"]);
  });
});

describe("what is left", () => {
  it("is strung together, straight on where several meet", () => {
    const { chains } = joined(["M0 0L50 0", "M50 0L100 1", "M50 0L50 50"]);
    expect(chains.map(along)).toEqual(["0,0 50,0 100,1", "50,0 50,50"]);
    expect(chains.map(({ isHeld, strokes: of }) => [isHeld, keys(of)])).toEqual([
      [false, ["0:0", "0:1"]],
      [false, ["0:2"]],
    ]);
  });

  it("is followed both ways from where it was begun, whichever way its lines are drawn", () => {
    const { chains } = joined(["M50 0L100 0", "M150 10L100 0", "M50 0L0 10"]);
    expect(chains.map(along)).toEqual(["0,10 50,0 100,0 150,10"]);
  });

  it("comes to an end where it comes back to itself", () => {
    const { chains } = joined(["M0 0L100 0", "M100 0L100 0.4L0 0.4L0 0"]);
    expect(chains.map((chain) => chain.edges.length)).toEqual([4]);
  });
});

describe("lines drawn twice", () => {
  const left = (...paths: string[]): string[] => keys(withoutDoubles(strokes(...paths)));

  it("are one, either way, and closed ones from whatever corner", () => {
    expect(left("M0 0L100 0", "M0 0L100 0", "M100 0L0 0")).toEqual(["0:0"]);
    expect(left("M0 0L100 50", "M0 50L100 0")).toEqual(["0:0", "0:1"]);
    expect(left(box(0, 0, 100, 50), "M100 0L100 50L0 50L0 0Z")).toEqual(["0:0"]);
    expect(left("M0 0L100 0L100 50L0 50Z", "M0 0L100 0L100 50L0 50L0 0.5")).toEqual(["0:0", "0:1"]);
  });

  it("lie within 0.04 mm of one another, on whichever side of a whole millimetre", () => {
    expect(left("M0 0L100 0", "M0 0.035L100 0.035")).toEqual(["0:0"]);
    expect(left("M0 0L100 0", "M0 0.045L100 0.045")).toEqual(["0:0", "0:1"]);
    expect(left("M0.49 0.49L99.98 0.49", "M0.51 0.51L100.01 0.51")).toEqual(["0:0"]);
    expect(left("M0 0L100 0", "M0 0L100.05 0")).toEqual(["0:0", "0:1"]);
    expect(left("M0 0L100 0", "M0.05 0L100 0")).toEqual(["0:0", "0:1"]);
  });

  it("have one form: two ways between the same corners of a box are two", () => {
    for (const [x, y] of [
      [0, 0],
      [30, 15],
      [70, 10],
    ] as const) {
      const way = (...places: readonly (readonly [number, number])[]): string =>
        places.map(([dx, dy], i) => `${i === 0 ? "M" : "L"}${x + dx} ${y + dy}`).join("");
      expect(left(way([0, 0], [100, 0], [100, 50]), way([0, 0], [0, 50], [100, 50]))).toEqual(["0:0", "0:1"]);
      expect(left(way([0, 0], [100, 0], [100, 50]), way([100, 50], [0, 50], [0, 0]))).toEqual(["0:0", "0:1"]);
      expect(left(way([0, 0], [100, 0], [100, 50]), way([100, 50], [100, 0], [0, 0]))).toEqual(["0:0"]);
    }
    expect(left("M0 0L100 0L100 50L0 50Z", "M0 0L100 50L100 0L0 50Z")).toEqual(["0:0", "0:1"]);
  });

  it("are as long as one another to 0.08 mm, and closed both or neither", () => {
    // Between the same ends, in the same box, and round as much above as below: 107.70 long, and 107.80.
    const zigzag = (at: number): string => `M0 0L${at} 10L${100 - at} -10L100 0`;
    expect(left(zigzag(25), zigzag(22))).toEqual(["0:0", "0:1"]);
    // Teeth between the same ends, in the same box and round the same area, but one has one more there and back.
    expect(left("M0 0L50 10L50 0L100 0", "M0 0L50 10L50 0L100 0")).toEqual(["0:0"]);
    expect(left("M0 0L100 0L100 0.03L0 0.03L0 0", "M0 0L100 0")).toEqual(["0:0", "0:1"]);
    expect(left("M0 0L100 0L0 0Z", "M0 0L100 0L0 0.03")).toEqual(["0:0", "0:1"]);
  });

  it("are told of any that lie together, and of sixty-four at the most of one length in one place", () => {
    expect(left("M0 0L100 0", "M0 5L100 5", "M0 0L100 0", "M0 5L100 5", "M5 0L105 0")).toEqual(["0:0", "0:1", "0:4"]);
    // Lines of one length from one corner of a millimetre, a hundredth of a turn apart.
    const fan = (count: number): string[] =>
      Array.from({ length: count }, (_, i) => {
        const way = 0.7 + i / 1000;
        return `M0 0L${1000 * Math.cos(way)} ${1000 * Math.sin(way)}`;
      });
    expect(left(...fan(64), ...fan(64).slice(-1))).toHaveLength(64);
    expect(left(...fan(65), ...fan(65).slice(-1))).toHaveLength(66);
  });

  it("keep their own of each look", () => {
    const two = strokesOf(
      drawn([
        [{ layer: "a" }, "M0 0L100 0"],
        [{ layer: "b" }, "M0 0L100 0"],
      ]),
      1,
    );
    expect(keys(withoutDoubles(two))).toEqual(["0:0", "1:0"]);
  });
});

it("an outline is turned to go by the clock on screen", () => {
  const places = [p(0, 0), p(10, 0), p(10, 10)];
  const ring = places.map((a, i) => lineEdge(a, places[(i + 1) % 3] ?? a));
  expect(byTheClock(ring)).toBe(ring);
  const back = [lineEdge(p(0, 0), p(10, 10)), lineEdge(p(10, 10), p(10, 0)), lineEdge(p(10, 0), p(0, 0))];
  expect(byTheClock(back)).toEqual(ring);
});
