/** Cloth that settles, spot by spot; the chest as a half tube of an ellipse; and the cones that are begun with. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Piece } from "../../../src/core/pattern/piece";
import { chestUnder, type Chest } from "../../../src/core/sewn/chest";
import { flatMesh } from "../../../src/core/sewn/flatMesh";
import { heightOver, peaksOf, type Peak } from "../../../src/core/sewn/peaks";
import { settle, type Cloth, type Link } from "../../../src/core/sewn/settle";
import { coneHalfApex, sewFront } from "../../../src/core/sewn/sewFront";
import { angleBetween, meanOf, span, type Spot } from "../../../src/core/sewn/spot";
import { stitch } from "../../../src/core/sewn/stitch";
import { radians } from "../../../src/core/units";
import { cornerPiece } from "../../support/cornerPiece";
import { darted, square } from "./flatPieces";

const NOTHING: Cloth = { spots: [], links: [], rounds: [], centre: [], held: [] };
const spot = (x: number, y: number, z: number): Spot => ({ x, y, z });
const near = (x: number, y: number, z: number) => ({
  x: expect.closeTo(x, 6),
  y: expect.closeTo(y, 6),
  z: expect.closeTo(z, 6),
});

/** A chest that only notes what it is asked. */
function noting(): Chest & { readonly drawn: [Spot, number][]; readonly kept: Spot[] } {
  const drawn: [Spot, number][] = [];
  const kept: Spot[] = [];
  return {
    drawn,
    kept,
    wrap: ({ x, y }, out) => ({ x, y, z: out }),
    draw: (one, share) => drawn.push([one, share]),
    keepOut: (one) => kept.push(one),
  };
}

describe("cloth that settles", () => {
  const tied = (length: number, rest: number, slack: boolean): number => {
    const [a, b] = [spot(1, 2, 3), spot(1 + length * 0.6, 2, 3 + length * 0.8)];
    const link: Link = { a, b, rest, slack };
    settle({ ...NOTHING, spots: [a, b], links: [link] }, null);
    // Both ends move alike: their middle stays.
    expect({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, z: (a.z + b.z) / 2 }).toEqual(
      near(1 + length * 0.3, 2, 3 + length * 0.4),
    );
    return span(a, b);
  };

  it("keeps its lengths: what is too long is drawn together, what is too short spread", () => {
    expect(tied(20, 8, false)).toBeCloseTo(8, 9);
    expect(tied(20, 31, false)).toBeCloseTo(31, 9);
    expect(tied(20, 8, true)).toBeCloseTo(8, 9);
  });

  it("lets slack cloth be shorter, and leaves two spots in one place", () => {
    expect(tied(20, 31, true)).toBeCloseTo(20, 9);
    expect(tied(0, 5, false)).toBe(0);
  });

  it("finds a chain's lengths in all ways of space", () => {
    const spots = [spot(0, 0, 0), spot(3, 9, 1), spot(12, 2, -4), spot(4, 4, 14)];
    const links = [0, 1, 2].map((at): Link => {
      const [a, b] = [spots[at], spots[at + 1]];
      if (a === undefined || b === undefined) throw new Error("spot");
      return { a, b, rest: 7 + at, slack: false };
    });
    settle({ ...NOTHING, spots, links }, null);
    expect(links.map(({ a, b }) => span(a, b))).toEqual([7, 8, 9].map((rest) => expect.closeTo(rest, 3)));
  });

  it("is unbent little by little, from 0.18 of the way at each of 150 turns to 0.07 (our own choice)", () => {
    // What is left of a bend of 1 mm: the product of what every turn leaves, with stiffness a hundredth near e to the power of
    // minus the sum of the shares, 150 · 0.07 + 0.11 · 75.5 = 18.805 hundredths.
    const [bent, flat] = [spot(5, -3, 1), spot(0, 0, 0)];
    settle(
      { ...NOTHING, spots: [bent], rounds: [{ spot: bent, stiff: 0.01, others: [{ spot: flat, share: 1 }] }] },
      null,
    );
    const left = Math.exp(-0.18805);
    expect(bent.x / 5).toBeCloseTo(left, 3);
    expect(bent.y / -3).toBeCloseTo(left, 3);
    expect(bent.z).toBeCloseTo(left, 3);
  });

  it("is unbent to the place that its neighbours' shares give, and not at all where it is not stiff", () => {
    const [free, limp] = [spot(9, 9, 9), spot(9, 9, 9)];
    const others = [
      { spot: spot(4, 0, 8), share: 0.25 },
      { spot: spot(0, 12, 4), share: 0.75 },
    ];
    settle(
      {
        ...NOTHING,
        spots: [free, limp],
        rounds: [
          { spot: free, stiff: 1, others },
          { spot: limp, stiff: 0, others },
        ],
      },
      null,
    );
    expect(free).toEqual(near(1, 9, 5));
    expect(limp).toEqual(spot(9, 9, 9));
  });

  it("has its centre held to the middle", () => {
    const centre = spot(4, 5, 6);
    settle({ ...NOTHING, spots: [centre], centre: [centre] }, null);
    expect(centre).toEqual(spot(0, 5, 6));
  });

  it("is pushed off the chest where it is free, and drawn to it at its edges, ever less", () => {
    const [free, held] = [spot(1, 2, 0), spot(3, 4, 0)];
    const chest = noting();
    settle({ ...NOTHING, spots: [free, held], held: [held] }, chest);
    // 0.18 mm at first, down to none in 150 turns: 150 + 149 + … + 1 is 11 325 parts of 150 (our own choice).
    expect(free).toEqual(near(1, 2, (0.18 * 11_325) / 150));
    expect(held).toEqual(spot(3, 4, 0));
    expect(chest.drawn).toHaveLength(150);
    expect(new Set(chest.drawn.map(([one]) => one))).toEqual(new Set([held]));
    expect(chest.drawn[0]?.[1]).toBeCloseTo(0.3, 9);
    expect(chest.drawn[75]?.[1]).toBeCloseTo(0.15, 9);
    expect(chest.drawn[149]?.[1]).toBeCloseTo(0.3 / 150, 9);
    expect(chest.kept).toHaveLength(300);
    expect(chest.kept.slice(0, 2)).toEqual([free, held]);
  });

  it("is not pushed where it lies on a table", () => {
    const free = spot(1, 2, 0);
    settle({ ...NOTHING, spots: [free] }, null);
    expect(free).toEqual(spot(1, 2, 0));
  });
});

/** A quarter of the ellipse with half-axes 1 and 0.72, by summing many chords. */
const QUARTER = (() => {
  const COUNT = 20_000;
  let length = 0;
  for (let i = 0; i < COUNT; i += 1) {
    const [p, q] = [(Math.PI / 2) * (i / COUNT), (Math.PI / 2) * ((i + 1) / COUNT)];
    length += Math.hypot(Math.sin(q) - Math.sin(p), 0.72 * (Math.cos(q) - Math.cos(p)));
  }
  return length;
})();

/** The place so far round the half tube from the middle, by walking it. */
function walked(halfWidth: number, length: number): { readonly x: number; readonly z: number } {
  const COUNT = 20_000;
  let [at, x, z] = [0, 0, 0.72 * halfWidth];
  for (let i = 1; i <= COUNT && at < length; i += 1) {
    const turn = (Math.PI / 2) * (i / COUNT);
    const [nextX, nextZ] = [halfWidth * Math.sin(turn), 0.72 * halfWidth * Math.cos(turn)];
    at += Math.hypot(nextX - x, nextZ - z);
    [x, z] = [nextX, nextZ];
  }
  return { x, z };
}

const roughly = (x: number, y: number, z: number) => ({
  x: expect.closeTo(x, 1),
  y: expect.closeTo(y, 6),
  z: expect.closeTo(z, 1),
});

describe("the chest under a square front", () => {
  const chest = chestUnder([square]);
  const a = 100 / QUARTER;

  it("is wrapped from the middle to the side, its depth 0.72 of its width (our own choice)", () => {
    expect(chest.wrap({ x: 0, y: 50 }, 0)).toEqual(roughly(0, 50, 0.72 * a));
    expect(chest.wrap({ x: 100, y: 50 }, 0)).toEqual(roughly(a, 50, 0));
    for (const x of [17, 40, 63, 88]) {
      const place = walked(a, x);
      expect(chest.wrap({ x, y: 70 }, 0)).toEqual(roughly(place.x, 70, place.z));
    }
  });

  it("goes on evenly past the side", () => {
    const turn = (Math.PI / 2) * 1.2;
    expect(chest.wrap({ x: 120, y: 50 }, 0)).toEqual(roughly(a * Math.sin(turn), 50, 0.72 * a * Math.cos(turn)));
  });

  it("has cloth off it square to it", () => {
    expect(chest.wrap({ x: 0, y: 50 }, 10)).toEqual(roughly(0, 50, 0.72 * a + 10));
    expect(chest.wrap({ x: 100, y: 50 }, 10)).toEqual(roughly(a + 10, 50, 0));
    // Square to a curve is square to its chord over a short way about the place.
    const [before, on, after] = [59.5, 60, 60.5].map((x) => chest.wrap({ x, y: 50 }, 0));
    const off = chest.wrap({ x: 60, y: 50 }, 10);
    if (before === undefined || on === undefined || after === undefined) throw new Error("place");
    expect(span(on, off)).toBeCloseTo(10, 6);
    expect(((off.x - on.x) * (after.x - before.x) + (off.z - on.z) * (after.z - before.z)) / 10).toBeCloseTo(0, 1);
    expect(off.z).toBeGreaterThan(on.z);
  });

  it("leans back above the armhole, 0.32 mm for each (our own choice)", () => {
    expect(chest.wrap({ x: 0, y: -50 }, 0)).toEqual(roughly(0, -50, 0.72 * a - 16));
    const leant = spot(0, -50, 0.72 * a - 16 + 20);
    chest.draw(leant, 1);
    expect(leant).toEqual(roughly(0, -50, 0.72 * a - 16));
  });

  it("draws a spot towards or from its axis by a share of the way", () => {
    const drawnBy = (x: number, z: number, share: number): Spot => {
      const one = spot(x, 50, z);
      chest.draw(one, share);
      return one;
    };
    expect(drawnBy(2 * a, 0, 1)).toEqual(roughly(a, 50, 0));
    expect(drawnBy(2 * a, 0, 0.5)).toEqual(roughly(1.5 * a, 50, 0));
    expect(drawnBy(0, 0.36 * a, 1)).toEqual(roughly(0, 50, 0.72 * a));
    expect(drawnBy(0, 0, 1)).toEqual(spot(0, 50, 0));
    // (0.6, 0.8) of the half-axes lies on the ellipse.
    expect(drawnBy(1.2 * a, 1.6 * 0.72 * a, 1)).toEqual(roughly(0.6 * a, 50, 0.8 * 0.72 * a));
  });

  it("keeps a spot out to 0.94 of it, below the armhole (our own choice)", () => {
    const keptOut = (x: number, y: number, z: number): Spot => {
      const one = spot(x, y, z);
      chest.keepOut(one);
      return one;
    };
    expect(keptOut(0.5 * a, 50, 0)).toEqual(roughly(0.94 * a, 50, 0));
    expect(keptOut(0, 50, 0.3 * 0.72 * a)).toEqual(roughly(0, 50, 0.94 * 0.72 * a));
    expect(keptOut(0.95 * a, 50, 0)).toEqual(spot(0.95 * a, 50, 0));
    expect(keptOut(2 * a, 50, 0)).toEqual(spot(2 * a, 50, 0));
    expect(keptOut(0.5 * a, 0, 0)).toEqual(spot(0.5 * a, 0, 0));
    expect(keptOut(0.5 * a, -20, 0)).toEqual(spot(0.5 * a, -20, 0));
  });
});

describe("the chest under a front whose waist is drawn in", () => {
  const at = (x: number, y: number) => ({ at: piecePoint(x, y), level: "waist" as const });

  it("is as wide as the side at the armhole, and at the waist as what is left of it without its dart", () => {
    // 100 mm wide above; at the waist the side lies at 90 mm, and 70 of them are sewn.
    const front = darted(40, 60, 40);
    const narrow: Piece = { ...front, points: { ...front.points, sideWaist: at(90, 100) } };
    const chest = chestUnder([narrow]);
    // Half-way down 95 mm of the flat are to cover 85 mm of the chest.
    expect(chest.wrap({ x: 100, y: 0 }, 0)).toEqual(roughly(100 / QUARTER, 0, 0));
    expect(chest.wrap({ x: 95, y: 50 }, 0)).toEqual(roughly(85 / QUARTER, 50, 0));
    expect(chest.wrap({ x: 90, y: 100 }, 0)).toEqual(roughly(70 / QUARTER, 100, 0));
    // Neither above nor below does it go on so.
    expect(chest.wrap({ x: 90, y: 130 }, 0)).toEqual(roughly(70 / QUARTER, 130, 0));
    expect(chest.wrap({ x: 100, y: -50 }, 0)).toEqual(roughly(100 / QUARTER, -50, -16));
  });

  it("is nowhere wider than at the armhole, and as the flat where no seam ends it", () => {
    const wide: Piece = { ...square, points: { ...square.points, sideWaist: at(130, 100) } };
    expect(chestUnder([wide]).wrap({ x: 130, y: 100 }, 0)).toEqual(roughly(100 / QUARTER, 100, 0));
    const hemmed: Piece = {
      ...square,
      points: { ...square.points, sideWaist: at(80, 100) },
      edges: square.edges.map((edge) => (edge.seam === "waist" ? { ...edge, seam: "hem" as const } : edge)),
    };
    expect(chestUnder([hemmed]).wrap({ x: 80, y: 100 }, 0)).toEqual(roughly(80 / QUARTER, 100, 0));
  });
});

describe("places in space", () => {
  it("are so far apart, and seen at an angle", () => {
    expect(span(spot(1, 2, 3), spot(3, 5, 9))).toBe(7);
    expect(angleBetween(spot(1, 1, 1), spot(2, 1, 1), spot(1, 1, 5))).toBeCloseTo(Math.PI / 2, 12);
    expect(angleBetween(spot(0, 0, 0), spot(1, 1, 0), spot(0, 1, 1))).toBeCloseTo(Math.PI / 3, 12);
    expect(angleBetween(spot(0, 0, 0), spot(2, 1, 2), spot(-4, -2, -4))).toBeCloseTo(Math.PI, 6);
    expect(meanOf([1, 2, 6])).toBe(3);
  });
});

describe("the cones that are begun with", () => {
  const angle = radians(Math.PI / 3);
  const peak: Peak = { x: 10, y: 20, angle, mouth: { x: 0, y: 1 }, reach: 50, beyond: 100, blunt: 0 };
  // A cone of slant 75 with a sixth of its round taken out: its rim has a radius of 5/6, its height √(1 − 25/36).
  const high = 75 * Math.sqrt(11 / 36);

  it.each([
    [0, 0, 1],
    [0, 25, 0.5],
    [0, 50, 0],
    [0, 60, 0],
    [0, -50, 0.5],
    [0, -100, 0],
    [0, -130, 0],
    [37.5, 0, 0.5],
    [-75, 0, 0],
    [60, 0, 0.2],
  ])("at (%d, %d) from their point stand so high: %d", (x, y, share) => {
    expect(heightOver([peak], { x: 10 + x, y: 20 + y })).toBeCloseTo(share * high, 9);
    // Two of them stand on one another.
    expect(heightOver([peak, peak], { x: 10 + x, y: 20 + y })).toBeCloseTo(2 * share * high, 9);
  });

  it("are rounded where they are blunt: 20 mm at their point, 25 mm where it is 15 away", () => {
    const even = { ...peak, reach: 80, beyond: 80, blunt: 20 };
    const full = 80 * Math.sqrt(11 / 36);
    expect(heightOver([even], { x: 10, y: 20 })).toBeCloseTo(full * (1 - 20 / 80), 9);
    expect(heightOver([even], { x: 10, y: 35 })).toBeCloseTo(full * (1 - 25 / 80), 9);
    expect(heightOver([], { x: 1, y: 1 })).toBe(0);
  });

  it("are one for each dart, as long as its legs and beyond it as a round of the piece's area", () => {
    const mesh = flatMesh(darted(40, 60, 40), 14, (_edge, length) => Math.max(1, Math.round(length / 14)));
    const leg = Math.hypot(10, 60);
    expect(peaksOf([mesh], stitch([mesh]))).toEqual([
      {
        x: 50,
        y: 40,
        angle: expect.closeTo(2 * Math.atan(10 / 60), 9),
        mouth: { x: expect.closeTo(0, 9), y: expect.closeTo(1, 9) },
        reach: expect.closeTo(leg, 9),
        // 10 000 mm² less 600 of the dart: a radius of 54.7 mm, less than the legs.
        beyond: expect.closeTo(leg, 9),
        blunt: 0,
      },
    ]);
    const short = flatMesh(darted(40, 60, 70), 14, (_edge, length) => Math.max(1, Math.round(length / 14)));
    const [peakOfShort] = peaksOf([short], stitch([short]));
    expect(peakOfShort?.beyond).toBeCloseTo(Math.sqrt((10_000 - 300) / Math.PI), 6);
    expect(peakOfShort?.reach).toBeCloseTo(Math.hypot(10, 30), 6);
  });
});

describe("a princess seam", () => {
  // Each piece reaches 10 mm over in the middle of its 100 mm seam: a corner of 2 atan 5 on either.
  const centreFront = cornerPiece({
    name: "centreFront",
    corners: [
      ["centreNeck", 0, 0, "shoulder"],
      ["princessTop", 40, 0, "princess"],
      ["bustPoint", 50, 50, "princess"],
      ["princessWaist", 40, 100, "waist"],
      ["centreWaist", 0, 100, "centre"],
    ],
  });
  const sideFront = (kink: number) =>
    cornerPiece({
      name: "sideFront",
      corners: [
        ["princessTop", 90, 6, "shoulder"],
        ["shoulderTip", 130, 6, "side"],
        ["sideWaist", 130, 106, "waist"],
        ["princessWaist", 90, 106, "princess"],
        ["bustPoint", kink, 56, "princess"],
      ],
    });
  const peaksWith = (kink: number): readonly Peak[] => {
    const meshes = [centreFront, sideFront(kink)].map((piece) =>
      flatMesh(piece, 14, (_edge, length) => Math.max(1, Math.round(length / 14))),
    );
    return peaksOf(meshes, stitch(meshes));
  };

  it("is begun with as a blunt cone at its corner, midway between both, of the angle that it takes out there", () => {
    // Of the whole round 4 atan 5 are left. Two pieces of 40 by 100 and a triangle of 10 by 100 over it: 9000 mm².
    const reach = expect.closeTo(Math.sqrt(9000 / Math.PI), 9);
    expect(peaksWith(80)).toEqual([
      {
        x: expect.closeTo(65, 9),
        y: expect.closeTo(53, 9),
        angle: expect.closeTo(4 * Math.atan(1 / 5), 9),
        mouth: { x: 0, y: 1 },
        reach,
        beyond: reach,
        blunt: 20,
      },
    ]);
  });

  it("has none where the side hollows by as much as the centre reaches over", () => {
    const [peak] = peaksWith(100);
    expect(peak?.angle ?? 0).toBeCloseTo(0, 9);
  });
});

describe("a square front sewn on a table", () => {
  it("tells of its dart: where it ends, its angle, how pointed it stands", () => {
    const { tips, lines } = sewFront([darted(40, 60, 40)], { on: "table" });
    const angle = 2 * Math.atan(10 / 60);
    expect(tips).toHaveLength(1);
    expect(tips[0]).toMatchObject({
      piece: "front",
      dart: "waistDart",
      angle: expect.closeTo(angle, 9),
      halfApex: expect.closeTo(Math.asin(1 - angle / (2 * Math.PI)), 9),
    });
    expect(coneHalfApex(radians(2 * Math.PI))).toBe(0);
    expect(coneHalfApex(radians(7))).toBe(0);
    const seam = lines.find(({ kind }) => kind === "dart")?.places ?? [];
    expect([seam[0], seam.at(-1)]).toContainEqual(tips[0]?.place);
  });

  it("stays flat, as it is, where it has no dart", () => {
    const { places, tips, strain } = sewFront([square], { on: "table" });
    expect(tips).toEqual([]);
    expect(strain.most).toBeLessThan(1e-9);
    expect(Math.max(...places.map(({ z }) => Math.abs(z)))).toBeLessThan(1e-9);
    expect(Math.max(...places.map(({ x }) => x)) - Math.min(...places.map(({ x }) => x))).toBeCloseTo(100, 6);
  });

  it("is of some 380 nodes inside, whatever its size (our own choice)", () => {
    const at = (x: number, y: number) => ({ at: piecePoint(3 * x, 3 * y), level: "bust" as const });
    const large: Piece = {
      ...square,
      points: {
        centreNeck: at(0, 0),
        underarm: at(100, 0),
        sideBust: at(100, 30),
        sideWaist: at(100, 100),
        centreWaist: at(0, 100),
        centreBust: at(0, 30),
      },
    };
    const [one, other] = [square, large].map((piece) => sewFront([piece], { on: "table" }));
    expect(one?.places.length).toBe(other?.places.length);
    expect(one?.places.length).toBeGreaterThan(350);
    expect(one?.places.length).toBeLessThan(480);
  });
});
