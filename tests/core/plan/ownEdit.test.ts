import { describe, expect, it } from "vitest";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { LIMITS } from "../../../src/core/decisions/limits";
import { applyCommand } from "../../../src/core/plan/commands";
import {
  dartForgotten,
  freeOther,
  named,
  saidNow,
  saidOfPiece,
  withAllowance,
  withCorner,
  withDart,
  withJoin,
  withKnown,
  withLines,
  withoutCorner,
  withoutDart,
  withPieceSaid,
  withSortBy,
} from "../../../src/core/plan/ownEdit";
import { parseWork } from "../../../src/document/workFile";
import { sampleWork } from "../../support/sampleWork";

const own: OwnPattern = {
  file: "collar.svg",
  drawing: {
    format: "svg",
    unit: null,
    lines: [
      {
        look: { layer: "a", group: "", colour: "#000000", dash: "", width: 0.5 },
        paths: ["M0 0L250000 0L250000 250000Z"],
      },
    ],
    points: [{ x: 250_000, y: 3, layer: "a", group: "" }],
    writings: [],
    hiddenLayers: [],
  },
  pieces: [{ id: "p", name: "front" }],
};
const here = { x: 1, y: 2 };
const there = { x: 3, y: 4 };

describe("what is said of a piece", () => {
  it("begins with nothing, and is of that piece alone", () => {
    expect(saidOfPiece(own, "q")).toEqual({ id: "q", name: null });
    const next = withPieceSaid(own, "q", (said) => named(said, "back"));
    expect(next.pieces).toEqual([
      { id: "p", name: "front" },
      { id: "q", name: "back" },
    ]);
    expect(next.drawing).toBe(own.drawing);
  });

  it("is held to as many pieces as a document has", () => {
    const full = {
      ...own,
      pieces: Array.from({ length: LIMITS.filePieces }, (_, at) => ({ id: `${at}`, name: null })),
    };
    expect(withPieceSaid(full, "more", (said) => said)).toBe(full);
    expect(withPieceSaid(full, "3", (said) => named(said, "cup")).pieces[3]?.name).toBe("cup");
  });

  it("leaves what is none of the pattern without a name, and takes that back with one", () => {
    const out = named({ id: "p", name: "front" }, "nothing");
    expect(out).toEqual({ id: "p", name: null, leftOut: true });
    expect(named(out, "back")).toEqual({ id: "p", name: "back" });
  });

  it("finds a free place for pieces without a name of ours, and none after six", () => {
    const taken = (["other1", "other2", "other4", "other5", "other6"] as const).map((name) => ({ id: name, name }));
    expect(freeOther({ ...own, pieces: taken }, "p")).toBe("other3");
    expect(freeOther({ ...own, pieces: [...taken, { id: "o", name: "other3" }] }, "p")).toBeNull();
    expect(freeOther({ ...own, pieces: [...taken, { id: "o", name: "other3" }] }, "o")).toBe("other3");
  });

  it("counts before what the reading made of it a moment ago", () => {
    const read = { id: "p", name: "back", extent: "half", turns: 0 } as const;
    expect(saidNow({ ...own, pieces: [{ id: "p", name: null, turns: 2 }] }, read)).toEqual({ ...read, turns: 2 });
    expect(saidNow(own, read).name).toBe("front");
  });

  it("holds an allowance within what is ever cut", () => {
    const said = withAllowance({ id: "p", name: "front" }, ["neck", "side"], 15);
    expect(said.allowances).toEqual({ neck: 15, side: 15 });
    expect(withAllowance(said, ["neck"], 500).allowances).toEqual({ neck: LIMITS.allowance, side: 15 });
    expect(withAllowance(said, ["neck"], -3).allowances).toEqual({ neck: 0, side: 15 });
  });
});

describe("corners and darts", () => {
  const piece = { id: "p", name: "front" } as const;

  it("are put right in one size, and go back to what was found in all of them", () => {
    const first = withCorner(piece, { name: "underarm", size: "10", at: here });
    const both = withCorner(first, { name: "underarm", size: "12", at: there });
    expect(withCorner(both, { name: "underarm", size: "10", at: there }).corners).toEqual([
      { name: "underarm", size: "10", at: there },
      { name: "underarm", size: "12", at: there },
    ]);
    expect(withoutCorner(both, "underarm")).toEqual(piece);
    expect(withoutCorner(both, "sideWaist")).toEqual(both);
  });

  it("are darts or none, never both", () => {
    const dart = { name: "waistDart", size: "10", inner: here, outer: there, apex: here } as const;
    const none = withoutDart(withDart(piece, dart), "waistDart");
    expect(none).toEqual({ ...piece, notDarts: ["waistDart"] });
    expect(withDart(none, dart)).toEqual({ ...piece, darts: [dart] });
    expect(withDart(withDart(none, dart), { ...dart, apex: there }).darts).toEqual([{ ...dart, apex: there }]);
    expect(dartForgotten(none, "waistDart")).toEqual(piece);
  });
});

describe("what is said of the lines", () => {
  it("goes where they are sorted by another feature", () => {
    const sorted = withLines(own, "a", { of: "all" });
    expect(sorted.lines).toEqual({ a: { of: "all" } });
    expect(withSortBy(sorted, "dash")).toEqual({ ...own, sortBy: "dash" });
  });

  it("is the usual where nothing is said", () => {
    expect(withJoin(withJoin(own, 2), null)).toEqual(own);
    const known = { from: here, to: there, length: 100 };
    expect(withKnown(withKnown(own, known), null)).toEqual(own);
    expect(withKnown(own, { ...known, length: 0 })).toEqual(own);
  });
});

it("a file in small units is kept whole, and can be opened again", () => {
  const work = applyCommand(sampleWork, { kind: "setOwnPattern", own });
  expect(work.pattern.own).toEqual(own);
  const known = { from: { x: 250_000, y: 0 }, to: here, length: 100 };
  const proven = applyCommand(work, { kind: "setOwnPattern", own: withKnown(own, known) });
  expect(proven.pattern.own?.known).toEqual(known);
  const read = parseWork(structuredClone(proven));
  expect(read.ok && read.value.pattern.own).toEqual(proven.pattern.own);
});

it("a place beyond all files is refused", () => {
  const far = { from: { x: 2e7, y: 0 }, to: here, length: 100 };
  expect(applyCommand(sampleWork, { kind: "setOwnPattern", own: withKnown(own, far) })).toBe(sampleWork);
});
