/** Flat pieces as triangles, and what they are sewn to, by hand on a square of 100 mm and by what is true of any triangles. */
import { Point } from "@flatten-js/core";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { angleAt, distance, piecePoint, type PiecePoint } from "../../../src/core/geometry/point";
import type { Edge, Piece, PointName } from "../../../src/core/pattern/piece";
import { triangulate, type Flat, type Triangle } from "../../../src/core/sewn/delaunay";
import { flatMesh, isInside, ringArea, type FlatMesh } from "../../../src/core/sewn/flatMesh";
import { flatRing } from "../../../src/core/sewn/flatRing";
import { gatheredLinks } from "../../../src/core/sewn/gathers";
import { linesOf } from "../../../src/core/sewn/lines";
import { roundsOf } from "../../../src/core/sewn/rounds";
import { becameOf, nodesOn, stitch } from "../../../src/core/sewn/stitch";
import { anyAmount } from "../../support/amounts";
import { polygonOf } from "../../support/independent";
import { darted, square } from "./flatPieces";

const whole = <T>(value: T | undefined): T => {
  if (value === undefined) throw new Error("nothing there");
  return value;
};

const turnOf = (a: Flat, b: Flat, c: Flat): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

/** Positive where d lies within the circle through a, b and c, which go round the positive way (the usual determinant). */
function inCircle(a: Flat, b: Flat, c: Flat, d: Flat): number {
  const row = (p: Flat): readonly [number, number, number] => {
    const [x, y] = [p.x - d.x, p.y - d.y];
    return [x, y, x * x + y * y];
  };
  const [[ax, ay, aa], [bx, by, bb], [cx, cy, cc]] = [row(a), row(b), row(c)];
  return ax * (by * cc - bb * cy) - ay * (bx * cc - bb * cx) + aa * (bx * cy - by * cx);
}

const areaOf = (points: readonly Flat[], triangles: readonly Triangle[]): number =>
  triangles.reduce((sum, [a, b, c]) => sum + turnOf(whole(points[a]), whole(points[b]), whole(points[c])) / 2, 0);

describe("triangles over points", () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 100 },
    { x: 0, y: 100 },
  ];

  it("of a square and its middle are the four about the middle", () => {
    const found = triangulate([...corners, { x: 50, y: 50 }]).map((triangle) => triangle.toSorted((a, b) => a - b));
    expect(found.toSorted((p, q) => whole(p[0]) - whole(q[0]) || whole(p[1]) - whole(q[1]))).toEqual([
      [0, 1, 4],
      [0, 3, 4],
      [1, 2, 4],
      [2, 3, 4],
    ]);
  });

  it("cover a net of squares once, though four points lie on each circle: two triangles to a square", () => {
    const net = Array.from({ length: 25 }, (_, at) => ({ x: 10 * (at % 5), y: 10 * Math.floor(at / 5) }));
    const triangles = triangulate(net);
    expect(triangles).toHaveLength(2 * 16);
    expect(areaOf(net, triangles)).toBeCloseTo(1600, 6);
  });

  it("cover the hull once, all go round one way, and have no other point in their circles", () => {
    const inside = fc.record({ x: anyAmount(10, 90), y: anyAmount(10, 90) });
    fc.assert(
      fc.property(fc.uniqueArray(inside, { minLength: 1, maxLength: 14, selector: ({ x }) => x }), (more) => {
        const points = [...corners, ...more];
        const triangles = triangulate(points);
        // Of n points, four of them on the hull: 2n − 2 − 4.
        expect(triangles).toHaveLength(2 * points.length - 6);
        expect(areaOf(points, triangles)).toBeCloseTo(10_000, 3);
        for (const [i, j, k] of triangles) {
          const [a, b, c] = [whole(points[i]), whole(points[j]), whole(points[k])];
          expect(turnOf(a, b, c)).toBeGreaterThan(0);
          const within = points.filter((d, at) => ![i, j, k].includes(at) && inCircle(a, b, c, d) > 1);
          expect(within).toEqual([]);
        }
      }),
      { numRuns: 40 },
    );
  });

  it("are the same for points moved and made larger", () => {
    const points = [...corners, { x: 30, y: 41 }, { x: 72, y: 55 }, { x: 44, y: 83 }];
    const moved = points.map(({ x, y }) => ({ x: 7 * x - 900, y: 7 * y + 300 }));
    expect(triangulate(moved)).toEqual(triangulate(points));
  });
});

describe("a closed ring", () => {
  const angle = [
    { x: 0, y: 0 },
    { x: 60, y: 0 },
    { x: 60, y: 20 },
    { x: 20, y: 20 },
    { x: 20, y: 50 },
    { x: 0, y: 50 },
  ];

  it("has its area, whichever way round: 60 by 20 and 20 by 30", () => {
    expect(ringArea(angle)).toBe(1800);
    expect(ringArea(angle.toReversed())).toBe(1800);
    expect(ringArea(angle.map(({ x, y }) => ({ x: x - 500, y: y + 70 })))).toBe(1800);
  });

  it.each([
    [10, 10, true],
    [10, 40, true],
    [50, 10, true],
    [40, 30, false],
    [-1, 20, false],
    [10, 51, false],
    [10, -1, false],
    [61, 20, false],
    [30, 20.5, false],
  ])("holds (%d, %d): %s", (x, y, isIn) => {
    expect(isInside(angle, { x, y })).toBe(isIn);
  });
});

const parts = (piece: Piece, step: number) => flatRing(piece, step, step, (_edge, length) => Math.round(length / step));

describe("the ring of a square with a dart", () => {
  const { nodes, stretches, tips } = parts(darted(40, 60, 40), 50);
  const at = (x: number, y: number) => [expect.closeTo(x, 6), expect.closeTo(y, 6)];
  const leg = Math.hypot(10, 60);

  it("goes along its edges in parts, and round the dart along both its legs", () => {
    // A leg of 60.8 mm: steps of 15, 21 and 29.4 mm, each 1.4 times the last, are the first to reach over it. So the shares
    // from the end are 1 and 2.4 of 4.36.
    const [s, t] = [1 / 4.36, 2.4 / 4.36];
    expect(nodes.map(({ x, y }) => [x, y])).toEqual([
      at(0, 0),
      at(50, 0),
      at(100, 0),
      at(100, 30),
      at(100, 100),
      at(60, 100),
      at(50 + 10 * t, 40 + 60 * t),
      at(50 + 10 * s, 40 + 60 * s),
      at(50, 40),
      at(50 - 10 * s, 40 + 60 * s),
      at(50 - 10 * t, 40 + 60 * t),
      at(40, 100),
      at(0, 100),
      at(0, 30),
    ]);
  });

  it("is made of runs that end where the next begins", () => {
    expect(stretches.map(({ kind, nodes: own }) => [kind, ...own])).toEqual([
      ["edge", 0, 1, 2],
      ["edge", 2, 3],
      ["edge", 3, 4],
      ["edge", 4, 5],
      ["leg", 5, 6, 7, 8],
      ["leg", 8, 9, 10, 11],
      ["edge", 11, 12],
      ["edge", 12, 13],
      ["edge", 13, 0],
    ]);
  });

  it("knows the dart's end and where its legs carry nodes", () => {
    expect(tips).toHaveLength(1);
    expect(tips[0]).toMatchObject({ node: 8, at: { x: 50, y: 40 }, inner: { x: 40 }, outer: { x: 60 } });
    expect(tips[0]?.distances).toEqual([
      expect.closeTo(leg / 4.36, 6),
      expect.closeTo((2.4 * leg) / 4.36, 6),
      expect.closeTo(leg, 6),
    ]);
  });

  it("has steps of a leg no longer than is asked: of 10 mm, 15 would be longer", () => {
    const steps = flatRing(darted(40, 60, 40), 50, 20, () => 1).tips[0]?.distances ?? [];
    // 15, then 20 until 60.8 is reached: 15, 35, 55, 75, all shortened alike.
    expect(steps).toEqual([15, 35, 55, 75].map((step) => expect.closeTo((step * leg) / 75, 6)));
  });

  it("is not cut for a dart that takes out nothing, nor for gathers", () => {
    const none = parts(darted(49.8, 50.2, 40), 50);
    expect(none.tips).toEqual([]);
    expect(none.stretches.map(({ kind }) => kind)).toEqual(Array.from({ length: 7 }, () => "edge"));
    const gathered = parts(darted(40, 60, 40, { gathered: true }), 20);
    expect(gathered.tips).toEqual([]);
    expect(gathered.stretches).toHaveLength(8);
    expect(parts(darted(49.7, 50.3, 40), 50).tips).toHaveLength(1);
  });

  it("has two darts that end in one point end 2 mm apart, the later one short of it", () => {
    const front = darted(40, 60, 40);
    const named = (x: number, y: number) => ({ at: piecePoint(x, y), level: "bust" as const });
    const edge = (from: PointName, to: PointName, mouthOf: Edge["mouthOf"] = null): Edge => ({
      from,
      to,
      seam: "side",
      mouthOf,
      curve: null,
    });
    const [waistDart] = front.darts;
    const both = (end: number): Piece => ({
      ...front,
      points: {
        ...front.points,
        sideDartInner: named(100, 60),
        sideDartOuter: named(100, 70),
        sideDartApex: named(50, end),
      },
      edges: [
        ...front.edges.slice(0, 2),
        edge("sideBust", "sideDartInner"),
        edge("sideDartInner", "sideDartOuter", "sideDart"),
        edge("sideDartOuter", "sideWaist"),
        ...front.edges.slice(3),
      ],
      darts: [
        whole(waistDart),
        {
          ...whole(waistDart),
          name: "sideDart",
          seam: "side",
          inner: "sideDartInner",
          outer: "sideDartOuter",
          apex: "sideDartApex",
        },
      ],
    });
    const endsOf = (piece: Piece) => parts(piece, 20).tips.map(({ dart: { name }, at: { x, y } }) => [name, x, y]);
    expect(endsOf(both(40))).toEqual([
      ["sideDart", 50, 40],
      ["waistDart", expect.closeTo(50, 9), expect.closeTo(42, 9)],
    ]);
    expect(endsOf(both(39.1))).toEqual([
      ["sideDart", 50, 39.1],
      ["waistDart", expect.closeTo(50, 9), expect.closeTo(42, 9)],
    ]);
    expect(endsOf(both(38.9))).toEqual([
      ["sideDart", 50, 38.9],
      ["waistDart", 50, 40],
    ]);
  });

  it("goes down to the same nodes where the dart is named from its other side", () => {
    const piece = darted(40, 60, 40, { inner: "waistDartOuter", outer: "waistDartInner" });
    const turned = parts(piece, 50);
    expect(turned.nodes).toEqual(nodes);
    expect(turned.tips[0]).toMatchObject({ inner: { x: 60 }, outer: { x: 40 } });
  });
});

const STEP = 14;
const meshOf = (piece: Piece): FlatMesh =>
  flatMesh(piece, STEP, (_edge, length) => Math.max(1, Math.round(length / STEP)));

describe("the mesh of a square", () => {
  it.each([
    ["whole", square, 10_000],
    ["less a dart of 20 by 60 mm", darted(40, 60, 40), 10_000 - 600],
    ["less a wide dart that is long", darted(20, 80, 12), 10_000 - (60 * 88) / 2],
  ])("%s covers it once, its triangles well shaped", (_what, piece, area) => {
    const { nodes, triangles, ring } = meshOf(piece);
    expect(areaOf(nodes, triangles)).toBeCloseTo(area, 6);
    expect(nodes.slice(0, ring.nodes.length)).toEqual(ring.nodes);
    const corners = triangles.flatMap(([a, b, c]) => {
      const [p, q, r] = [whole(nodes[a]), whole(nodes[b]), whole(nodes[c])];
      return [angleAt(p, q, r), angleAt(q, r, p), angleAt(r, p, q)];
    });
    // No thin ones: no corner under 12°, and half of them between 45° and 75°.
    expect(Math.min(...corners)).toBeGreaterThan((12 * Math.PI) / 180);
    const middling = corners.filter((angle) => angle > Math.PI / 4 && angle < (75 * Math.PI) / 180);
    expect(middling.length).toBeGreaterThan(0.5 * corners.length);
  });

  it("has as many nodes as rows of equal-sided triangles have, one to 0.87 of a step squared", () => {
    const inside = meshOf(square).nodes.length - meshOf(square).ring.nodes.length;
    const expected = 10_000 / (STEP * STEP * (Math.sqrt(3) / 2));
    expect(inside).toBeGreaterThan(0.65 * expected);
    expect(inside).toBeLessThan(expected);
  });

  it("has nodes no nearer to one another than 0.72 of a step, away from darts (our own choice)", () => {
    const { nodes, ring } = meshOf(square);
    const inside = nodes.slice(ring.nodes.length);
    const least = Math.min(
      ...inside.flatMap((p, index) => [...ring.nodes, ...inside.slice(0, index)].map((q) => distance(p, q))),
    );
    expect(least).toBeGreaterThanOrEqual(0.72 * STEP);
  });

  it("has nodes about a dart's end no nearer to it than those of its legs, and closer together than elsewhere", () => {
    const { nodes, ring } = meshOf(darted(40, 60, 40));
    const tip = whole(ring.tips[0]);
    const inside = nodes.slice(ring.nodes.length);
    const away = inside.map((node) => distance(node, tip.at));
    expect(Math.min(...away)).toBeCloseTo(whole(tip.distances[0]), 6);
    // Within a step and a half of it a net as elsewhere would have 9 π / 4 / 0.87, eight nodes.
    expect(away.filter((one) => one < 1.5 * STEP).length).toBeGreaterThan(12);
  });
});

describe("a square with its dart sewn", () => {
  const mesh = meshOf(darted(40, 60, 40));
  const sewn = stitch([mesh]);
  const legs = mesh.ring.stretches.filter(({ kind }) => kind === "leg").map(({ nodes }) => nodes);
  const [going = [], coming = []] = legs;

  it("has the nodes of both legs made one, and no others", () => {
    const one = (node: number): number => becameOf(sewn, 0, node);
    expect(going.length).toBeGreaterThan(3);
    expect(coming.map(one)).toEqual(going.toReversed().map(one));
    expect(sewn.nodes).toHaveLength(mesh.nodes.length - (going.length - 1));
    for (const [index, node] of mesh.nodes.entries()) expect(whole(sewn.nodes[one(index)]).flat).toContainEqual(node);
    expect(sewn.nodes.reduce((sum, { flat }) => sum + flat.length, 0)).toBe(mesh.nodes.length);
  });

  it("has a link for each side, of its length in the flat, with the far corners of its two triangles", () => {
    const { links, triangles, nodes } = sewn;
    // Euler, of a disc.
    expect(nodes.length - links.length + triangles.length).toBe(1);
    for (const { a, b, rest, across } of links) {
      expect(a).toBeLessThan(b);
      const lengths = whole(nodes[a]).flat.flatMap((p) => whole(nodes[b]).flat.map((q) => distance(p, q)));
      expect(Math.min(...lengths.map((length) => Math.abs(length - rest)))).toBeLessThan(1e-6);
      const beside = triangles.filter((triangle) => triangle.includes(a) && triangle.includes(b));
      const far = beside.map((triangle) => whole(triangle.find((node) => node !== a && node !== b)));
      expect(across === null ? 1 : 2).toBe(beside.length);
      expect(new Set(across ?? [])).toEqual(new Set(far.length === 2 ? far : []));
    }
  });

  it("has its seams where they are told: the nodes of each edge", () => {
    const xOf = (node: number): readonly number[] => whole(sewn.nodes[node]).flat.map(({ x }) => x);
    const side = nodesOn([mesh], sewn, ["side"]);
    expect(new Set(side.flatMap(xOf))).toEqual(new Set([100]));
    expect(new Set(nodesOn([mesh], sewn, ["centre"]).flatMap(xOf))).toEqual(new Set([0]));
    expect(nodesOn([mesh], sewn, ["princess"])).toEqual([]);
  });

  it("has every spot but the tip and the corners placed by those round it, as they lie in the flat", () => {
    const flat = stitch([meshOf(square)]);
    const spots = flat.nodes.map(({ flat: [p] }) => ({ x: whole(p).x, y: whole(p).y, z: 0 }));
    const rounds = roundsOf([meshOf(square)], flat, spots, new Set(), new Set());
    const corners = spots.filter(({ x, y }) => [0, 100].includes(x) && [0, 30, 100].includes(y));
    expect(corners).toHaveLength(6);
    expect(new Set(rounds.map(({ spot }) => spot))).toEqual(new Set(spots.filter((spot) => !corners.includes(spot))));
    for (const { spot, stiff, others } of rounds) {
      expect(stiff).toBe(1);
      expect(others.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      expect(others.reduce((sum, { share, spot: other }) => sum + share * other.x, 0)).toBeCloseTo(spot.x, 6);
      expect(others.reduce((sum, { share, spot: other }) => sum + share * other.y, 0)).toBeCloseTo(spot.y, 6);
    }
  });

  it("has spots on the centre placed by their mirror images too, its corners among them", () => {
    const flat = stitch([meshOf(square)]);
    const spots = flat.nodes.map(({ flat: [p] }) => ({ x: whole(p).x, y: whole(p).y, z: 0 }));
    const centre = new Set(nodesOn([meshOf(square)], flat, ["centre"]));
    const rounds = roundsOf([meshOf(square)], flat, spots, new Set(), centre).filter(({ spot }) => spot.x === 0);
    expect(rounds).toHaveLength(centre.size);
    for (const { spot, others } of rounds) {
      expect(others.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
      expect(others.reduce((sum, { share, spot: other }) => sum + share * other.y, 0)).toBeCloseTo(spot.y, 6);
    }
  });

  it("is stiff as it is far from the dart's end, up to 70 mm (our own choice)", () => {
    const spots = sewn.nodes.map(({ flat: [p] }) => ({ x: whole(p).x, y: whole(p).y, z: 0 }));
    const tip = becameOf(sewn, 0, whole(mesh.ring.tips[0]).node);
    const rounds = roundsOf([mesh], sewn, spots, new Set([tip]), new Set());
    expect(rounds.some(({ spot }) => spot === spots[tip])).toBe(false);
    const inside = rounds.filter(({ spot: { x, y } }) => x > 1 && x < 99 && y > 1 && y < 99);
    expect(inside.length).toBeGreaterThan(20);
    for (const { spot, stiff } of inside)
      expect(stiff).toBeCloseTo(Math.min(1, Math.hypot(spot.x - 50, spot.y - 40) / 70), 6);
  });
});

describe("gathers", () => {
  it("draw the mouth up to a fifth (our own choice), and let the cloth behind it pucker", () => {
    const mesh = meshOf(darted(30, 70, 40, { gathered: true }));
    const sewn = stitch([mesh]);
    const wedge = polygonOf([
      { x: 50, y: 40 },
      { x: 30, y: 100 },
      { x: 70, y: 100 },
    ]);
    const placeOf = (node: number): PiecePoint => whole(sewn.nodes[node]?.flat[0]);
    const links = gatheredLinks([mesh], sewn);
    expect(links).toHaveLength(sewn.links.length);
    let [mouth, slack] = [0, 0];
    for (const [index, { a, b, rest }] of sewn.links.entries()) {
      const [p, q] = [placeOf(a), placeOf(b)];
      const isMouth = p.y === 100 && q.y === 100 && [p, q].every(({ x }) => x >= 30 - 1e-9 && x <= 70 + 1e-9);
      const isIn = wedge.contains(new Point((p.x + q.x) / 2, (p.y + q.y) / 2));
      if (isMouth) mouth += distance(p, q);
      else if (isIn) slack += 1;
      expect(links[index]).toEqual(isMouth ? { rest: 0.2 * rest, slack: true } : { rest, slack: isIn });
    }
    expect(mouth).toBeCloseTo(40, 6);
    expect(slack).toBeGreaterThan(3);
  });
});

describe("lines on a front that lies flat", () => {
  const lines = (piece: Piece) => {
    const mesh = meshOf(piece);
    const sewn = stitch([mesh]);
    const places = sewn.nodes.map(({ flat: [p] }) => ({ x: whole(p).x, y: whole(p).y, z: 7 }));
    return linesOf([mesh], sewn, places);
  };

  it("are its edges, the centre apart where it is the fold, and its bust line", () => {
    expect(lines(square).map(({ kind, seam, dart }) => [kind, seam, dart])).toEqual([
      ["edge", "armhole", null],
      ["edge", "side", null],
      ["edge", "side", null],
      ["edge", "waist", null],
      ["centre", "centre", null],
      ["centre", "centre", null],
      ["bust", null, null],
    ]);
    expect(lines({ ...square, centreOnFold: false }).filter(({ seam }) => seam === "centre")).toMatchObject([
      { kind: "edge" },
      { kind: "edge" },
    ]);
  });

  it("have the bust line from end to end in steps of no more than 6 mm: 17 over 100 mm", () => {
    expect(lines(square).at(-1)?.places).toEqual(
      Array.from({ length: 18 }, (_, index) => ({
        x: expect.closeTo((index * 100) / 17, 6),
        y: expect.closeTo(30, 6),
        z: expect.closeTo(7, 6),
      })),
    );
  });

  it("break the bust line at a dart that crosses it, and draw the dart's seam once", () => {
    const found = lines(darted(30, 70, 10));
    expect(found.filter(({ kind }) => kind === "dart")).toMatchObject([{ seam: "waist", dart: "waistDart" }]);
    const bust = found.filter(({ kind }) => kind === "bust");
    // At y = 30 the dart is 20 · 20 / 90, 4.4 mm wide to either side of x = 50.
    expect(
      bust.map(({ places }) => places.every(({ x }) => x < 50 - 4.4) || places.every(({ x }) => x > 50 + 4.4)),
    ).toEqual([true, true]);
  });

  it("have no bust line where none is drawn between points", () => {
    expect(lines({ ...square, levelLines: [] }).filter(({ kind }) => kind === "bust")).toEqual([]);
  });
});
