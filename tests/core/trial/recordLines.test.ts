/** Lines as they are written, and as they are read: what a fold, a slit or a mark is measured by is the trade's way. */
import { describe, expect, it } from "vitest";
import type { Observation, TrialSign, TrialWay } from "../../../src/core/decisions/trial";
import { readLines } from "../../../src/core/trial/recordLines";

const BOTH = ["left", "right"];
const read = (one: Omit<Observation, "id">) => readLines([{ id: "a", ...one }]);
const nothing = { halves: BOTH, dart: null, measured: null, mark: null };

describe("readLines", () => {
  it("reads what has a place and a sign, in the order written", () => {
    const dart = { piece: "front", dart: "waistDart" } as const;
    expect(
      readLines([
        { id: "a", place: "bust", sign: "tight" },
        { id: "b", place: "bust" },
        { id: "c", sign: "tight" },
        { id: "d", place: "dartEnd", sign: "pointed", half: "right", dart, amount: 3, way: "off" },
      ]),
    ).toEqual([
      { id: "a", place: "bust", sign: "tight", ...nothing },
      {
        id: "d",
        place: "dartEnd",
        sign: "pointed",
        halves: ["right"],
        dart,
        measured: { way: "off", amount: 3 },
        mark: null,
      },
    ]);
  });

  it.each<readonly [TrialSign, TrialWay]>([
    ["foldAcross", "pinched"],
    ["foldAlong", "pinched"],
    ["gapes", "pinched"],
    ["pointed", "pinched"],
    ["tight", "letOut"],
    ["flat", "letOut"],
    ["dragLines", "letOut"],
    ["drops", "off"],
    ["cutsIn", "off"],
    ["doesNotMeet", "off"],
  ])("measures %s as %s, where nothing is said", (sign, way) => {
    expect(read({ place: "bust", sign, amount: 5 })[0]?.measured).toEqual({ way, amount: 5 });
    expect(read({ place: "bust", sign, amount: 5, way: "letOut" })[0]?.measured).toEqual({ way: "letOut", amount: 5 });
    expect(read({ place: "bust", sign, amount: 0 })[0]?.measured).toBeNull();
    expect(read({ place: "bust", sign, way: "pinched" })[0]?.measured).toBeNull();
  });

  // What lies nearer than 4 mm is not worth altering.
  it.each(["bustPoint", "dartEnds"] as const)("a mark (%s) is one from 4 mm on, however it lies", (sign) => {
    const at = (out: number, down: number) => read({ place: "bust", sign, mark: { out, down }, amount: 7 });
    expect(at(4, 0)).toEqual([{ id: "a", place: "bust", sign, ...nothing, mark: { out: 4, down: 0 } }]);
    expect(at(0, -4)).toHaveLength(1);
    expect(at(2.4, 3.2)).toHaveLength(1);
    expect(at(2.3, 3.2)).toEqual([]);
    expect(read({ place: "bust", sign, amount: 9 })).toEqual([]);
  });

  it("a mark beside a sign that is none is kept", () =>
    expect(read({ place: "bust", sign: "tight", mark: { out: 0, down: 0 }, amount: 6 })).toEqual([
      {
        id: "a",
        place: "bust",
        sign: "tight",
        ...nothing,
        mark: { out: 0, down: 0 },
        measured: { way: "letOut", amount: 6 },
      },
    ]));
});
