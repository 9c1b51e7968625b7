/** Stitch lines inside cutting lines, worked out on squared paper. */
import { describe, expect, it } from "vitest";
import { takenInside, type CutRun } from "../../../src/core/allowance/takenInside";
import { lineEdge, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint, type PiecePoint } from "../../../src/core/geometry/point";

type Place = readonly [number, number];
const p = (at: Place): PiecePoint => piecePoint(...at);
const near = ([x, y]: Place) => ({ x: expect.closeTo(x, 6) as number, y: expect.closeTo(y, 6) as number });
const CORNER = { kind: "corner" } as const;

/** A seam through places, straight from one to the next. */
const seam = (allowance: number, places: readonly Place[], next: CutRun["next"] = CORNER): CutRun => ({
  edges: places.slice(1).map((at, i) => lineEdge(p(places[i] ?? at), p(at))),
  allowance,
  next,
});

/** Two edges that turn by more than a quarter of a right angle. */
const isCorner = (one: EdgeCurve<"piece">, other: EdgeCurve<"piece">): boolean => {
  const [ax, ay] = [one.b.x - one.a.x, one.b.y - one.a.y];
  const [bx, by] = [other.b.x - other.a.x, other.b.y - other.a.y];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) > Math.PI / 8;
};

const taken = (...runs: CutRun[]) => {
  const result = takenInside(runs, isCorner);
  return result.ok ? result.value : result.failure;
};

describe("what is taken off inside a rectangle", () => {
  it("is each side's own allowance", () => {
    expect(
      taken(
        seam(10, [
          [0, 0],
          [200, 0],
        ]),
        seam(20, [
          [200, 0],
          [200, 100],
        ]),
        seam(30, [
          [200, 100],
          [0, 100],
        ]),
        seam(15, [
          [0, 100],
          [0, 0],
        ]),
      ),
    ).toEqual([
      [near([15, 10]), near([180, 10])],
      [near([180, 10]), near([180, 70])],
      [near([180, 70]), near([15, 70])],
      [near([15, 70]), near([15, 10])],
    ]);
  });

  it("is told by the first seam that nothing is left of", () => {
    // 15 mm high and 10 off at top and bottom: the right side would go from 10 up to 5.
    expect(
      taken(
        seam(10, [
          [0, 0],
          [200, 0],
        ]),
        seam(10, [
          [200, 0],
          [200, 15],
        ]),
        seam(10, [
          [200, 15],
          [0, 15],
        ]),
        seam(10, [
          [0, 15],
          [0, 0],
        ]),
      ),
    ).toEqual({ run: 1 });
  });

  it("is told so of the first of all, too", () => {
    expect(
      taken(
        seam(10, [
          [200, 0],
          [200, 15],
        ]),
        seam(10, [
          [200, 15],
          [0, 15],
        ]),
        seam(10, [
          [0, 15],
          [0, 0],
        ]),
        seam(10, [
          [0, 0],
          [200, 0],
        ]),
      ),
    ).toEqual({ run: 0 });
  });

  it("is told where two seams do not meet at all", () => {
    // The second begins far from where the first ends: sixty millimetres further on they have not met.
    expect(
      taken(
        seam(10, [
          [0, 0],
          [100, 0],
        ]),
        seam(10, [
          [200, 0],
          [200, 100],
        ]),
        seam(10, [
          [200, 100],
          [0, 0],
        ]),
      ),
    ).toEqual({ run: 0 });
  });
});

describe("a dart's mouth in a seam", () => {
  const ring = (apex: Place): readonly CutRun[] => [
    seam(
      10,
      [
        [0, 0],
        [90, 0],
      ],
      { kind: "mouth", apex: p(apex), legs: [p([90, 0]), p([110, 0])] },
    ),
    seam(10, [
      [110, 0],
      [200, 0],
    ]),
    seam(10, [
      [200, 0],
      [200, 150],
    ]),
    seam(10, [
      [200, 150],
      [0, 150],
    ]),
    seam(10, [
      [0, 150],
      [0, 0],
    ]),
  ];

  it("ends each part on its own leg", () => {
    // The legs run from (100, 80) to (90, 0) and (110, 0): 10 below the edge they are 8.75 from the middle.
    expect(taken(...ring([100, 80]))).toEqual([
      // Where each was cut open the line goes on straight.
      [near([10, 10]), near([90, 10]), near([91.25, 10])],
      [near([108.75, 10]), near([110, 10]), near([190, 10])],
      [near([190, 10]), near([190, 140])],
      [near([190, 140]), near([10, 140])],
      [near([10, 140]), near([10, 10])],
    ]);
  });

  it("follows the dart where it leans", () => {
    // From (140, 80): to (90, 0) at y = 10 x is 140 - 50 · 7/8; to (110, 0) it is 140 - 30 · 7/8.
    const found = takenInside(ring([140, 80]), isCorner);
    const [one, other] = found.ok ? found.value : [];
    expect([one?.at(-1), other?.[0]]).toEqual([near([96.25, 10]), near([113.75, 10])]);
  });

  it("lies between seams that do not meet: a wide one beyond it makes no corner of theirs", () => {
    // An ear of 44.7, more than 3.2 of its own 10: it is the seam's own, though the other has 30.
    const [wide, own] = [
      [
        [0, 0],
        [90, 0],
      ],
      [
        [110, 0],
        [90, -40],
        [300, -40],
      ],
    ] as const;
    const before = takenInside(
      [
        seam(30, wide, { kind: "mouth", apex: p([100, 80]), legs: [p([90, 0]), p([110, 0])] }),
        seam(10, own),
        seam(10, [
          [300, -40],
          [300, 150],
        ]),
        seam(10, [
          [300, 150],
          [0, 150],
        ]),
        seam(10, [
          [0, 150],
          [0, 0],
        ]),
      ],
      isCorner,
    );
    // The leg goes 10 out in 80 up, the ear's line 10 inside of 20 back in 40 up.
    const inside = Math.hypot(20, 40);
    const [x, y] = [110 + 400 / inside, -200 / inside];
    const on = (x - 110 + y / 8) / 25;
    const met: Place = [x - 20 * on, y - 40 * on];
    expect(before.ok && before.value[1]?.[0]).toEqual(near(met));
    const flip = ([px, py]: Place): Place => [200 - px, py];
    const after = takenInside(
      [
        seam(10, own.map(flip).toReversed(), {
          kind: "mouth",
          apex: p([100, 80]),
          legs: [p([90, 0]), p([110, 0])],
        }),
        seam(30, wide.map(flip).toReversed()),
        seam(10, [
          [200, 0],
          [200, 150],
        ]),
        seam(10, [
          [200, 150],
          [-100, 150],
        ]),
        seam(10, [
          [-100, 150],
          [-100, -40],
        ]),
      ],
      isCorner,
    );
    expect(after.ok && after.value[0]?.at(-1)).toEqual(near(flip(met)));
  });

  it("is told where the dart does not reach the seam", () => {
    // The dart ends outside of the stitch line, and leads away from it.
    expect(taken(...ring([100, 5]))).toEqual({ run: 0 });
  });
});

describe("what a corner adds to its seam", () => {
  /** The bottom of a rectangle with an ear of some height at its right end or its left one, 12 mm in. */
  const withEar = (atRight: number, atLeft: number) => {
    const found = takenInside(
      [
        seam(10, [
          [0, 0],
          [200, 0],
        ]),
        seam(10, [
          [200, 0],
          [200, 100 - atRight],
        ]),
        seam(10, [
          ...(atRight === 0 ? [] : [[200, 100 - atRight] as const]),
          [200, 100],
          [0, 100],
          ...(atLeft === 0 ? [] : [[0, 100 - atLeft] as const]),
        ]),
        seam(10, [
          [0, 100 - atLeft],
          [0, 0],
        ]),
      ],
      isCorner,
    );
    return found.ok ? found.value[2] : found.failure;
  };
  const plain = [near([190, 90]), near([10, 90])];

  it("is left off at either end, up to 3.2 allowances (our own choice)", () => {
    expect(withEar(0, 0)).toEqual(plain);
    expect(withEar(12, 0)).toEqual(plain);
    expect(withEar(0, 12)).toEqual(plain);
    expect(withEar(20, 20)).toEqual(plain);
    expect(withEar(31.9, 0)).toEqual(plain);
    expect(withEar(0, 31.9)).toEqual(plain);
  });

  it("is the seam's own beyond", () => {
    // One that leans out by 20 is as long as 32 where it is 24.98 high; without it the corner lies 10 inside of both lines.
    const leaning = (height: number, beside = 10) => {
      const found = takenInside(
        [
          seam(10, [
            [-20, 0],
            [200, 0],
          ]),
          seam(10, [
            [200, 0],
            [200, 100],
          ]),
          seam(10, [
            [200, 100],
            [0, 100],
            [-20, 100 - height],
          ]),
          seam(beside, [
            [-20, 100 - height],
            [-20, 0],
          ]),
        ],
        isCorner,
      );
      return found.ok ? found.value[2]?.at(-1) : found.failure;
    };
    const leaningRight = (height: number, beside = 10) => {
      const found = takenInside(
        [
          seam(10, [
            [0, 0],
            [220, 0],
          ]),
          seam(beside, [
            [220, 0],
            [220, 100 - height],
          ]),
          seam(10, [
            [220, 100 - height],
            [200, 100],
            [0, 100],
          ]),
          seam(10, [
            [0, 100],
            [0, 0],
          ]),
        ],
        isCorner,
      );
      return found.ok ? found.value[2]?.[0] : found.failure;
    };
    expect(leaningRight(24.9)).toEqual(near([210, 90]));
    expect(leaningRight(25.1)).not.toEqual(near([210, 90]));
    expect(leaning(24.9)).toEqual(near([-10, 90]));
    // By the wider of its own allowance and its neighbour's: 48 mm long where that is 43.6 high.
    expect(leaning(43.5, 15)).toEqual(near([-5, 90]));
    expect(leaning(43.8, 15)).not.toEqual(near([-5, 90]));
    expect(leaningRight(43.5, 15)).toEqual(near([205, 90]));
    expect(leaningRight(43.8, 15)).not.toEqual(near([205, 90]));
    expect(leaning(25.1)).not.toEqual(near([-10, 90]));
  });

  it("is never more of the seam than leaves four tenths of it (our own choice)", () => {
    // Of 50 + 30 in all, the 30 are the corner's; of 20 + 30 they are more than six tenths less the line itself.
    const short = (width: number, ear: number) =>
      takenInside(
        [
          seam(10, [
            [0, 0],
            [width, 0],
          ]),
          seam(10, [
            [width, 0],
            [width, 200 - ear],
          ]),
          seam(10, [
            [width, 200 - ear],
            [width, 200],
            [0, 200],
          ]),
          seam(10, [
            [0, 200],
            [0, 0],
          ]),
        ],
        isCorner,
      );
    const kept = short(50, 30);
    expect(kept.ok && kept.value[2]).toEqual([near([40, 190]), near([10, 190])]);
    // 30 of 48 is more than six tenths: the ear is the seam then, and runs 10 inside of x = 18, up from the bottom.
    const other = short(18, 30);
    expect(other).not.toMatchObject({ value: [{}, {}, [near([8, 190]), near([10, 190])], {}] });
    // And so at its other end.
    const shortLeft = (width: number, ear: number) =>
      takenInside(
        [
          seam(10, [
            [0, 0],
            [width, 0],
          ]),
          seam(10, [
            [width, 0],
            [width, 200],
          ]),
          seam(10, [
            [width, 200],
            [0, 200],
            [0, 200 - ear],
          ]),
          seam(10, [
            [0, 200 - ear],
            [0, 0],
          ]),
        ],
        isCorner,
      );
    const keptLeft = shortLeft(50, 30);
    expect(keptLeft.ok && keptLeft.value[2]).toEqual([near([40, 190]), near([10, 190])]);
    expect(shortLeft(18, 30)).not.toMatchObject({ value: [{}, {}, [near([8, 190]), near([10, 190])], {}] });
  });
});

describe("a seam with a turn of its own", () => {
  const found = (...places: Place[]) =>
    takenInside(
      [
        seam(10, [
          [0, 0],
          [200, 0],
        ]),
        seam(10, [
          [200, 0],
          [200, 200],
        ]),
        seam(10, [[200, 200], ...places, [0, 200]]),
        seam(10, [
          [0, 200],
          [0, 0],
        ]),
      ],
      isCorner,
    );

  it("far from its ends keeps it, and its allowance on both sides", () => {
    // A notch into the piece, 50 high and 40 wide: its tip lies 10 square off both its sides.
    const notched = found([120, 200], [100, 150], [80, 200]);
    const bottom = notched.ok ? notched.value[2] : undefined;
    expect(bottom?.toSorted((one, other) => one.y - other.y)[0]).toEqual(
      near([100, 150 - (10 * Math.hypot(20, 50)) / 20]),
    );
    // Where it begins, its side lies 10 square off both, too.
    const beside = (10 * Math.hypot(20, 50) - 200) / 50;
    expect(bottom).toEqual([
      near([190, 190]),
      near([120 + beside, 190]),
      near([100, 150 - (10 * Math.hypot(20, 50)) / 20]),
      near([80 - beside, 190]),
      near([10, 190]),
    ]);
  });

  it("of two curves is parallel to both", () => {
    // A half circle of radius 100 in two quarters, hollowed out of the bottom.
    const k = (400 / 3) * (Math.SQRT2 - 1);
    const at = (x: number, y: number): PiecePoint => piecePoint(x, y);
    const quarters = [
      { a: at(200, 200), b: at(100, 300), curve: { c1: at(200, 200 + k), c2: at(100 + k, 300) } },
      { a: at(100, 300), b: at(0, 200), curve: { c1: at(100 - k, 300), c2: at(0, 200 + k) } },
    ];
    const round = takenInside(
      [
        seam(10, [
          [0, 0],
          [200, 0],
        ]),
        seam(10, [
          [200, 0],
          [200, 200],
        ]),
        { edges: quarters, allowance: 10, next: CORNER },
        seam(10, [
          [0, 200],
          [0, 0],
        ]),
      ],
      isCorner,
    );
    const bottom = round.ok ? (round.value[2] ?? []) : [];
    expect(bottom.length).toBeGreaterThan(20);
    for (const { x, y } of bottom) expect(Math.abs(Math.hypot(x - 100, y - 200) - 90)).toBeLessThan(0.05);
    expect(bottom.some(({ x, y }) => Math.hypot(x - 100, y - 290) < 1e-6)).toBe(true);
  });
});

describe("a seam that a corner has cut short", () => {
  const RADIUS = 200;
  /** On a circle about (0, 0), by the angle from +x towards +y in degrees. */
  const onCircle = (degrees: number): Place => [
    RADIUS * Math.cos((degrees * Math.PI) / 180),
    RADIUS * Math.sin((degrees * Math.PI) / 180),
  ];
  const arc = (from: number, to: number): Place[] =>
    Array.from({ length: to - from + 1 }, (_, i) => onCircle(from + i));

  it("goes on as it bent: the corner lies on the same circle", () => {
    // The right side bends as a circle from -20° to 20°; the top lies at the height of -22°, two degrees further.
    const start = onCircle(-20);
    const top = onCircle(-22)[1] - 10;
    const found = takenInside(
      [
        seam(10, [
          [0, top],
          [start[0], top],
        ]),
        seam(10, arc(-20, 20)),
        seam(10, [onCircle(20), [0, onCircle(20)[1]]]),
        seam(10, [
          [0, onCircle(20)[1]],
          [0, top],
        ]),
      ],
      isCorner,
    );
    const side = found.ok ? found.value[1] : undefined;
    const corner = side?.[0];
    // 10 inside the top, and 10 inside the circle.
    expect(corner?.y).toBeCloseTo(top + 10, 6);
    expect(Math.hypot(corner?.x ?? 0, corner?.y ?? 0)).toBeCloseTo(RADIUS - 10, 1);
    // What was added, a point for each of some seven millimetres, lies on the circle too, and nothing is passed twice.
    const added = side?.filter(({ y }) => y < (RADIUS - 10) * Math.sin((-20 * Math.PI) / 180) - 0.5) ?? [];
    expect(added.length).toBeGreaterThan(5);
    // Its other end is cut off 10 inside, at asin((200 sin 20° - 10) / 190) = 17.9°: of 41 points 38 are left, and where it is cut.
    expect(side).toHaveLength(38 + 1 + added.length);
    const ys = side?.map(({ y }) => y) ?? [];
    expect(ys).toEqual(ys.toSorted((one, other) => one - other));
    for (const { x, y } of side?.slice(0, -1) ?? [])
      expect(Math.abs(Math.hypot(x, y) - RADIUS + 10)).toBeLessThan(0.05);
  });

  it("goes on so at its other end too", () => {
    const end = onCircle(20);
    const bottom = onCircle(22)[1] + 10;
    const found = takenInside(
      [
        seam(10, [[0, onCircle(-20)[1]], onCircle(-20)]),
        seam(10, arc(-20, 20)),
        seam(10, [
          [end[0], bottom],
          [0, bottom],
        ]),
        seam(10, [
          [0, bottom],
          [0, onCircle(-20)[1]],
        ]),
      ],
      isCorner,
    );
    const side = found.ok ? found.value[1] : undefined;
    const corner = side?.at(-1);
    expect(corner?.y).toBeCloseTo(bottom - 10, 6);
    expect(Math.hypot(corner?.x ?? 0, corner?.y ?? 0)).toBeCloseTo(RADIUS - 10, 1);
    const added = side?.filter(({ y }) => y > (RADIUS - 10) * Math.sin((20 * Math.PI) / 180) + 0.5) ?? [];
    expect(added.length).toBeGreaterThan(5);
    // Its other end is cut off 10 inside, at asin((200 sin 20° - 10) / 190) = 17.9°: of 41 points 38 are left, and where it is cut.
    expect(side).toHaveLength(38 + 1 + added.length);
    const ys = side?.map(({ y }) => y) ?? [];
    expect(ys).toEqual(ys.toSorted((one, other) => one - other));
    for (const { x, y } of side?.slice(1) ?? []) expect(Math.abs(Math.hypot(x, y) - RADIUS + 10)).toBeLessThan(0.05);
  });

  // Parallels that bend less than a circle of 2 m, or more than one of 12 mm, are straight; so is one that ends in more than 8 mm
  // of it (our own choice).
  it.each([
    [200, 10, 7, 7, true],
    [200, 10, 9, 7, false],
    [1500, 10, 4.5, 7, true],
    [2500, 10, 4.5, 7, false],
    [14, 2, 1, 3, true],
    [10, 2, 1, 3, false],
  ] as const)(
    "on a circle of %s, %s inside, in steps of %s: %s further on bent: %s",
    (radius, allowance, step, on, isBent) => {
      const outer = radius + allowance;
      const at = (along: number): Place => [outer * Math.cos(along / outer), outer * Math.sin(along / outer)];
      const STEPS = 8;
      const [start, end] = [at(-STEPS * step), at(STEPS * step)];
      const top = at(-STEPS * step - on)[1] - allowance;
      const found = takenInside(
        [
          seam(allowance, [
            [-outer, top],
            [start[0], top],
          ]),
          seam(
            allowance,
            Array.from({ length: 2 * STEPS + 1 }, (_, i) => at((i - STEPS) * step)),
          ),
          seam(allowance, [end, [-outer, end[1]]]),
          seam(allowance, [
            [-outer, end[1]],
            [-outer, top],
          ]),
        ],
        () => false,
      );
      const corner = found.ok ? found.value[1]?.[0] : undefined;
      expect(corner?.y).toBeCloseTo(top + allowance, 6);
      // Straight on, it lies on the parallel of the last chord: at its foot by the chord's own height nearer to the middle.
      const half = step / outer / 2;
      const foot = outer * Math.cos(half) - allowance;
      const way = (-STEPS * step) / outer + half;
      const straight = (foot - (corner?.y ?? 0) * Math.sin(way)) / Math.cos(way);
      const bent = Math.sqrt(radius ** 2 - (corner?.y ?? 0) ** 2);
      const [wanted, far] = isBent ? [bent, straight] : [straight, bent];
      expect(Math.abs((corner?.x ?? 0) - wanted)).toBeLessThan(Math.abs(far - wanted) / 4);
      expect(Math.abs(straight - bent)).toBeGreaterThan(0.01);
    },
  );
});
