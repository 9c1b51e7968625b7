/** What two alterations have to do with each other, and what one is on a half: told by hand for every pair of halves. */
import { describe, expect, it } from "vitest";
import {
  HALVES,
  dartOfAlteration,
  isClash,
  isMadeOn,
  isRedraw,
  isSameKind,
  isSameThing,
  onHalves,
  otherHalf,
  type Alteration,
  type Half,
} from "../../../src/core/decisions/alteration";
import { FIT_NAMES, WHOLE_FITS, type FitName } from "../../../src/core/decisions/fitNames";

const front = { piece: "front", dart: "waistDart" } as const;
const back = { piece: "back", dart: "waistDart" } as const;
const side = { piece: "front", dart: "sideDart" } as const;

const fit = (name: FitName, half?: Half, amount = 8): Alteration => ({
  kind: "fit",
  id: name,
  fit: name,
  amount,
  ...(half === undefined ? {} : { half }),
});
const bowed = (dart: typeof front | typeof back | typeof side, half?: Half): Alteration => ({
  kind: "dartLegs",
  id: "legs",
  dart,
  bow: 2,
  ...(half === undefined ? {} : { half }),
});
const DARTS: readonly Alteration[] = [
  { kind: "dartEnd", id: "end", dart: front, shorten: 5, across: 0, hold: "mouth", giveBack: {} },
  { kind: "dartMouth", id: "mouth", dart: front, inner: 2, outer: 2, giveBack: {} },
  { kind: "dartPlace", id: "place", dart: front, by: 5, how: "redraw", giveBack: {} },
  { kind: "dartPivot", id: "pivot", dart: front, to: "shoulder", share: 1 },
  { kind: "dartSplit", id: "split", dart: front, into: 2 },
  { kind: "dartGather", id: "gather", dart: front },
  { kind: "dartSeam", id: "seam", dart: front },
  bowed(front),
];
const MAYBE: readonly (Half | undefined)[] = [undefined, "left", "right"];

describe("halves", () => {
  it("are two, each the other's other", () => {
    expect(HALVES).toEqual(["left", "right"]);
    expect(HALVES.map(otherHalf)).toEqual(["right", "left"]);
  });
});

describe("what an alteration is about", () => {
  it("is a dart for all but fits, and a redraw only where a dart's end, mouth or place moves", () => {
    expect(DARTS.map(dartOfAlteration)).toEqual(DARTS.map(() => front));
    expect(dartOfAlteration(fit("swayBack"))).toBeNull();
    expect([...DARTS, fit("swayBack")].filter(isRedraw).map(({ kind }) => kind)).toEqual([
      "dartEnd",
      "dartMouth",
      "dartPlace",
    ]);
  });

  it("is the same thing where kind and dart, or the fit, are the same, on whichever half", () => {
    const things = [...DARTS, bowed(back), bowed(side), fit("swayBack"), fit("roundBack")];
    const same = things.map((a) => things.map((b) => isSameThing(a, b)));
    expect(same).toEqual(things.map((_, a) => things.map((__, b) => a === b)));
    expect(isSameThing(fit("swayBack", "left"), fit("swayBack", "right", 20))).toBe(true);
    expect(isSameThing(bowed(front, "left"), bowed(front))).toBe(true);
  });

  /** Rows: the one for both, left, right; columns likewise the other. */
  const table = (of: (a: Alteration, b: Alteration) => boolean, other: FitName = "swayBack") =>
    MAYBE.map((a) => MAYBE.map((b) => of(fit("swayBack", a), fit(other, b))));

  it("takes the place of another of that very half or halves alone", () => {
    expect(table(isSameKind)).toEqual([
      [true, false, false],
      [false, true, false],
      [false, false, true],
    ]);
    expect(table(isSameKind, "roundBack").flat()).not.toContain(true);
  });

  it("clashes with all of the same thing but one on the other half", () => {
    expect(table(isClash)).toEqual([
      [true, true, true],
      [true, true, false],
      [true, false, true],
    ]);
    expect(table(isClash, "roundBack").flat()).not.toContain(true);
  });

  it("is made on both halves where none is named, else on that one", () => {
    expect(MAYBE.map((half) => HALVES.map((on) => isMadeOn(fit("swayBack", half), on)))).toEqual([
      [true, true],
      [true, false],
      [false, true],
    ]);
  });
});

describe("what is done on a half, asked for others", () => {
  // Common practice, no source: what is measured right round or right across is shared by the halves.
  it("is half of it for what is all round or right across, and the same for all else", () => {
    const round: readonly FitName[] = [
      "chestWidth",
      "backWidth",
      "backNeckGape",
      "sideSeamBust",
      "sideSeamUnderBust",
      "sideSeamWaist",
      "sideSeamHip",
    ];
    expect([...WHOLE_FITS]).toEqual(round);
    for (const name of FIT_NAMES) {
      const times = round.includes(name) ? 2 : 1;
      for (const half of HALVES) {
        expect(onHalves(fit(name, undefined, 12), half)).toEqual(fit(name, half, 12 / times));
        expect(onHalves(fit(name, half, 12), undefined)).toEqual(fit(name, undefined, 12 * times));
        expect(onHalves(fit(name, half, 12), otherHalf(half))).toEqual(fit(name, otherHalf(half), 12));
      }
      const whole = onHalves(fit(name, undefined, 12), undefined);
      expect(whole).toEqual(fit(name, undefined, 12));
      expect("half" in whole).toBe(false);
    }
  });

  it("is the same of a dart, on the half that is asked for", () => {
    for (const one of DARTS) {
      expect(onHalves(one, "left")).toEqual({ ...one, half: "left" });
      expect(onHalves({ ...one, half: "left" }, undefined)).toEqual(one);
    }
  });
});
