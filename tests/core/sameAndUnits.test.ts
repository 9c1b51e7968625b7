/** What everything else stands on: results, units, and what it is to be the same. */
import { describe, expect, it } from "vitest";
import { CoreBug, fail, invariant, ok } from "../../src/core/result";
import { isSame } from "../../src/core/same";
import { degreesFrom, MM_PER_CM, MM_PER_INCH, radians, radiansFromDegrees } from "../../src/core/units";
import { remember } from "../../src/core/remember";
import { KEPT_TO, READ_BACK, SEAM_KEPT } from "../../src/core/tolerance";

describe("isSame", () => {
  it.each([
    [1, 1],
    ["a", "a"],
    [null, null],
    [undefined, undefined],
    [[], []],
    [{}, {}],
    [
      [1, [2, 3]],
      [1, [2, 3]],
    ],
    [
      { a: 1, b: { c: [1] } },
      { b: { c: [1] }, a: 1 },
    ],
    [{ a: undefined }, { a: undefined }],
  ])("%j is %j", (a, b) => {
    expect(isSame(a, b)).toBe(true);
    expect(isSame(b, a)).toBe(true);
  });

  it.each([
    [1, 2],
    [1, "1"],
    [0, null],
    [null, undefined],
    [null, {}],
    [[], {}],
    [[1], 1],
    [[1], [2]],
    [[1], [1, 2]],
    [
      [1, 2],
      [1, 3],
    ],
    [{ 0: 1, length: 1 }, [1]],
    [{ a: 1 }, { a: 2 }],
    [{ a: 1 }, { b: 1 }],
    [{ a: undefined }, { b: undefined }],
    [{ a: 1 }, { a: 1, b: 2 }],
    [{ a: { b: 1 } }, { a: { b: 2 } }],
    [{ constructor: Object }, { a: 1 }],
    [{}, "x"],
    ["x", "y"],
  ])("%j is not %j", (a, b) => {
    expect(isSame(a, b)).toBe(false);
    expect(isSame(b, a)).toBe(false);
  });

  it("takes no field from what an object stems from", () => {
    const stems: unknown = Object.create({ a: 1 }, { b: { value: 2, enumerable: true } });
    expect(isSame({ a: 1 }, stems)).toBe(false);
  });

  it("does not look into what two works share", () => {
    const shared = {
      get looked(): never {
        throw new Error("looked into");
      },
    };
    expect(isSame(shared, shared)).toBe(true);
    expect(isSame([shared], [shared])).toBe(true);
  });
});

describe("results", () => {
  it("say whether they are a value or a failure", () => {
    expect(ok(3)).toStrictEqual({ ok: true, value: 3 });
    expect(fail({ code: "x" })).toStrictEqual({ ok: false, failure: { code: "x" } });
  });

  it("an invariant hands on whatever there is, nothing-like values too, and is a bug of ours where there is none", () => {
    for (const value of [0, "", false, Number.NaN]) expect(invariant(value, "it")).toBe(value);
    for (const none of [undefined, null]) {
      expect(() => invariant(none, "sleeve")).toThrow(CoreBug);
      expect(() => invariant(none, "sleeve")).toThrow("missing: sleeve");
    }
    expect(new CoreBug("x").name).toBe("CoreBug");
  });
});

describe("units", () => {
  it("half a turn is 180 degrees, and there and back is the same", () => {
    expect(degreesFrom(radians(Math.PI))).toBe(180);
    expect(radiansFromDegrees(90)).toBe(Math.PI / 2);
    expect(degreesFrom(radiansFromDegrees(-37))).toBeCloseTo(-37, 12);
    expect([MM_PER_INCH, MM_PER_CM]).toEqual([25.4, 10]);
  });

  it("entries are kept to a tenth of a millimetre, and what rounding adds is half of it", () => {
    expect([KEPT_TO, SEAM_KEPT, READ_BACK]).toEqual([0.1, 0.05, 0.05]);
  });
});

describe("what is remembered goes with an object", () => {
  it.each([null, undefined, 7, "text"])("and %s is none", (home) => {
    const ask = remember(["home"], (from: { readonly home: object }) => from);
    // What types forbid, from where types do not reach.
    const untyped: (from: never) => unknown = ask;
    expect(() => Reflect.apply(untyped, undefined, [{ home }])).toThrow("remembered by home, which is no object");
  });

  it("four answers are kept where nothing is said, and the fifth takes the oldest one's place", () => {
    let asked = 0;
    const home = {};
    const ask = remember(["home", "at"], (from: { readonly home: object; readonly at: number }) => {
      asked += 1;
      return from.at;
    });
    for (const at of [1, 2, 3, 4]) ask({ home, at });
    for (const at of [1, 2, 3, 4]) expect(ask({ home, at })).toBe(at);
    expect(asked).toBe(4);
    ask({ home, at: 5 });
    expect([2, 3, 4, 5].map((at) => ask({ home, at }))).toEqual([2, 3, 4, 5]);
    expect(asked).toBe(5);
    expect(ask({ home, at: 1 })).toBe(1);
    expect(asked).toBe(6);
  });
});
