/**
 * What is made of a bust, and of her bust point, on a front that is nothing but a dart: 80 long and 20 wide at its mouth, wider
 * by as much as it is spread on the half, twice.
 */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Making } from "../../../src/core/nest/patternPieces";
import type { Dart, DartHome, Piece } from "../../../src/core/pattern/piece";
import { dartName } from "../../../src/core/pattern/dartNames";
import type { PieceSet } from "../../../src/core/pattern/pieceSet";
import { buildPieces, type BuildInputs, type Built } from "../../../src/core/plan/buildPieces";
import { fail, ok } from "../../../src/core/result";
import { radians } from "../../../src/core/units";
import { boxPiece } from "../../support/boxPiece";
import { cornerPiece, dartFor } from "../../support/cornerPiece";

interface DartMade {
  readonly home?: DartHome;
  readonly more?: Partial<Dart>;
  /** At no spread. */
  readonly mouth?: number;
  readonly length?: number;
  readonly bustLineAt?: number;
}

/** Its bust point lies as far across as it is spread. */
function front(spread: number, { home = "side", more = {}, mouth = 20, length = 80, bustLineAt }: DartMade): Piece {
  const name = dartName(home);
  const half = Math.max(0, mouth + 2 * spread) / 2;
  return cornerPiece({
    corners: [
      ["centreNeck", 0, 0, "neck"],
      ["underarm", 200, 0, "side"],
      ["sideWaist", 200, 200, "waist"],
      [`${name}Outer`, 100 + half, 200, "waist", name],
      [`${name}Inner`, 100 - half, 200, "waist"],
      ["centreWaist", 0, 200, "centre"],
    ],
    inside: {
      [`${name}Apex`]: [100, 200 - length],
      bustPoint: [100 + spread, 110],
      ...(bustLineAt === undefined ? {} : { bustLineInner: [0, bustLineAt] }),
    },
    darts: [{ ...dartFor(name, "waist", "bustPoint"), ...more }],
  });
}

const others: PieceSet = { back: boxPiece("back", 190, 200) };
const cut: PieceSet = { front: { ...front(0, {}), seamEase: {} } };

/** How a front is said to be finished: across by the cup difference, down by the bust point that it was finished for. */
const finishedFor = (pieces: PieceSet): unknown => pieces.front?.points.princessTop?.at;

const making = (dart: DartMade, least = -1000, most = 1000): Making => ({
  open: { front: front(0, dart) },
  cut,
  others,
  sideNeck: piecePoint(30, -20),
  adjustBust: (_open, spread) =>
    spread < least || spread > most
      ? fail({ code: "fullBust/out-of-reach", most: spread < least ? least : most })
      : ok({
          pieces: { front: front(spread, dart) },
          turn: radians(0.1),
          drop: spread / 2,
          smoothed: radians(0),
          traces: [],
        }),
  finish: ({ front: one, ...rest }, bustPoint, difference) =>
    one === undefined
      ? rest
      : {
          ...rest,
          front: {
            ...one,
            points: {
              ...one.points,
              princessTop: { at: piecePoint(difference, bustPoint.x), level: "bust" },
            },
          },
        },
});
const built = (dart: DartMade, more: Partial<BuildInputs> = {}): Built =>
  buildPieces({
    making: making(dart),
    bustPiece: "front",
    cupDifference: 50,
    asked: 0,
    asMuchAsCanBe: true,
    residual: 0,
    body: {},
    age: undefined,
    ...more,
  });
/** The whole change that is made of so much. */
const made = (asked: number, dart: DartMade = {}, more: Partial<BuildInputs> = {}): number | null => {
  const { bust, alteration } = built(dart, { asked, ...more });
  return bust === null && alteration === 0 ? null : alteration;
};

describe("a bust that is not altered", () => {
  it("leaves the pieces as they are cut, what is never altered beside them", () => {
    const { bust, alteration, cut: asCut, blended } = built({});
    expect([bust, alteration]).toEqual([null, 0]);
    expect(asCut).toEqual({ ...cut, ...others });
    expect(blended).toEqual(asCut);
  });
});

describe("a bust altered", () => {
  it("is spread once, and its darts ended once, however often one spread is asked for", () => {
    const own = making({});
    const asked: string[] = [];
    const counted: Making = {
      ...own,
      adjustBust: (open, spread) => {
        asked.push(`spread by ${spread}`);
        return own.adjustBust(open, spread);
      },
      finish: (open, bustPoint, difference) => {
        asked.push(`ended at ${bustPoint.x} for ${difference}`);
        return own.finish(open, bustPoint, difference);
      },
    };
    const { blended, wanted } = built({}, { asked: 30, residual: 30, making: counted });
    expect(asked).toEqual(["spread by 15", "ended at 115 for 80"]);
    expect(wanted?.front).toBe(blended.front);
    asked.splice(0);
    built({}, { asked: 30, residual: 31, making: counted });
    expect(asked).toEqual(["spread by 15", "ended at 115 for 80", "spread by 15.5", "ended at 115.5 for 81"]);
  });

  it("is ended for each cup and each bust point by itself, even on pieces that a spread leaves as they were", () => {
    const own = making({});
    const stiff: Making = {
      ...own,
      adjustBust: (pieces, spread) => ok({ pieces, turn: radians(0), drop: spread, smoothed: radians(0), traces: [] }),
    };
    const { blended, wanted } = built({}, { asked: 30, residual: 31, making: stiff });
    expect([finishedFor(blended), wanted === null ? null : finishedFor(wanted)]).toEqual([
      { x: 80, y: 100 },
      { x: 81, y: 100 },
    ]);
    const body = { bustPointWidth: { value: 190, spread: 4, readings: [190], set: 0 } };
    const apart = built({}, { asked: 30, residual: 30, making: stiff, body });
    expect([finishedFor(apart.blended), apart.wanted === null ? null : finishedFor(apart.wanted)]).toEqual([
      { x: 80, y: 100 },
      { x: 80, y: 95 },
    ]);
  });

  it("is spread by half on the half, and finished for where the bust point then lies and for the fuller cup", () => {
    const { bust, alteration, cut: asCut, blended, bustPoint } = built({}, { asked: 30 });
    expect(bust?.ok === true && bust.value.drop).toBe(7.5);
    expect(alteration).toBe(30);
    expect(asCut).toEqual({ ...cut, ...others });
    expect(blended.back).toBe(others.back);
    expect(finishedFor(blended)).toEqual({ x: 80, y: 115 });
    expect(bustPoint.printed).toEqual({ x: 115, y: 110 });
  });

  it("as she set it is made whole or not at all, however wide its darts", () => {
    const whole = { asMuchAsCanBe: false };
    expect(made(400, {}, whole)).toBe(400);
    const short = built({}, { asked: 30, ...whole, making: making({}, -10, 10) });
    expect(short.bust).toEqual({ ok: false, failure: { code: "fullBust/out-of-reach", most: 10 } });
    expect(short.alteration).toBe(0);
    expect(short.blended).toEqual({ ...cut, ...others });
  });

  it("as is found lacking is made as far as can be cut", () => {
    expect(made(40, {}, { making: making({}, -12.3, 12.3) })).toBe(24.6);
    expect(made(-40, {}, { making: making({ mouth: 60 }, -12.3, 12.3) })).toBe(-24.6);
  });

  // 70 degrees over 80 mm are 112.03 across: 46.02 on the half more than 20 (common practice, no source).
  it("is made in whole millimetres as far as its dart can be sewn as one: to 70 degrees", () => {
    expect(made(92)).toBe(92);
    expect(made(90.5)).toBe(90.5);
    // By halves of 46.5 to half a millimetre: 45.77 goes, 46.14 does not.
    expect(made(93)).toBe(91);
    // By halves of 100: 45.70 goes, 46.09 does not.
    expect(made(200)).toBe(91);
  });

  it("is taken in as far as a dart of 2 mm is left", () => {
    expect(made(-18)).toBe(-18);
    // By halves of 9.25: 8.96 leaves 2.08, of 30: 8.91 leaves 2.18.
    expect(made(-18.5)).toBe(-17);
    expect(made(-60)).toBe(-17);
    // What is wider than 70 degrees at first stays so.
    expect(made(-10, { mouth: 150 })).toBe(-10);
    expect(made(10, { mouth: 150 })).toBeNull();
  });

  it("is nothing where less than a millimetre can be made of it", () => {
    expect(made(0.9)).toBeNull();
    expect(made(1)).toBe(1);
    expect(made(-1)).toBe(-1);
    // 0.27 on the half are left; or 1.52, of which 1.25 goes by halves of 20.
    expect(made(40, { mouth: 111.5 })).toBeNull();
    expect(made(40, { mouth: 109 })).toBe(2);
  });

  it("goes by bust darts alone: not by gathers, by an under-bust dart, nor by one that serves no bust", () => {
    expect(made(200, { more: { gathered: true } })).toBe(200);
    expect(made(200, { more: { aimsAt: null } })).toBe(200);
    expect(made(200, { home: "underBust" })).toBe(200);
    expect(made(200, { home: "waist" })).toBe(91);
  });

  it("lets in nothing where a dart from below is sewn past the bust line", () => {
    expect(made(30, { home: "waist", bustLineAt: 120 })).toBe(30);
    expect(made(30, { home: "waist", bustLineAt: 120.5 })).toBeNull();
    expect(made(30, { home: "side", bustLineAt: 130 })).toBe(30);
    expect(made(-10, { home: "waist", bustLineAt: 130 })).toBe(-10);
  });
});

describe("the darts that her own cup asks for", () => {
  const wanted = (residual: number, more: Partial<BuildInputs> = {}) => built({}, { residual, ...more }).wanted;

  it("are as drafted where nothing is lacking, else spread by half of what is, and finished for it", () => {
    const [none, some] = [wanted(0), wanted(24)];
    expect(none?.front?.points.sideDartOuter?.at.x).toBe(110);
    expect(none === null ? null : finishedFor(none)).toEqual({ x: 50, y: 100 });
    expect(some?.front?.points.sideDartOuter?.at.x).toBe(122);
    expect(some === null ? null : finishedFor(some)).toEqual({ x: 74, y: 112 });
  });

  it("are drawn to her own bust point, and are none where they cannot be made", () => {
    const body = { bustPointWidth: { value: 180, spread: 4, readings: [180], set: 0 } };
    const own = wanted(24, { body });
    expect(own === null ? null : finishedFor(own)).toEqual({ x: 74, y: 90 });
    expect(wanted(24, { making: making({}, -10, 10) })).toBeNull();
  });
});

describe("her own bust point", () => {
  const measured = (value: number) => ({ value, spread: 4, readings: [value], set: 0 });
  const own = (width: number | null, depth: number | null) =>
    built(
      {},
      {
        body: {
          ...(width === null ? {} : { bustPointWidth: measured(width) }),
          ...(depth === null ? {} : { sideNeckToBustPoint: measured(depth) }),
        },
      },
    ).bustPoint;

  it("lies half of the width out, and so far from the side neck; what was not measured is as printed", () => {
    expect(own(null, null).own).toBeNull();
    expect(own(180, null).own).toEqual({ x: 90, y: 110 });
    // 30 and 40 of 50: the side neck lies at (30, -20), twice as large.
    expect(own(180, 100).own).toEqual({ x: 90, y: expect.closeTo(60, 9) });
    expect(own(null, 250).own).toEqual({ x: 100, y: expect.closeTo(-20 + 240, 9) });
    expect(own(180, 40).own).toBeNull();
    expect(own(180, 100).probable).toBeNull();
  });
});
