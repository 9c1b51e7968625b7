/** Ink of true-scale pieces and sheets: what is drawn, where it stands, and that it keeps out of the way. */
import { dayWords } from "../../src/words/terms/days";
import { Point } from "@flatten-js/core";
import { describe, expect, it } from "vitest";
import { PIECE_ORDER } from "../../src/core/pattern/pieceSet";
import { truePiecesOf } from "../../src/core/cutting/truePieces";
import type { TruePiece } from "../../src/core/cutting/truePiece";
import { lineEdge } from "../../src/core/geometry/edgeCurve";
import { piecePoint, sheetPoint } from "../../src/core/geometry/point";
import type { SheetLayout, Tile } from "../../src/core/sheets/layout";
import { FORMATS } from "../../src/core/sheets/formats";
import { coverPages, mapInk } from "../../src/drawing/coverPage";
import { fitLines, textWidth, wrapped } from "../../src/drawing/fitLines";
import type { Ink, InkLine, InkRole, InkText } from "../../src/drawing/ink";
import { pieceInk, underInk } from "../../src/drawing/pieceInk";
import { mirroredInk, placedInk, scaledInk } from "../../src/drawing/placeInk";
import { tiledPages } from "../../src/drawing/sheetPages";
import { testSquarePlace } from "../../src/drawing/testSquare";
import { allowanceWords, joiningSteps } from "../../src/words/sheets";
import { alteredWords, blendWords, cutWords, pieceTitle, titleLines } from "../../src/words/truePaper";
import { OVERLAY_CAUTION, OVERLAY_STEPS } from "../../src/words/overlay";
import { polygonOf } from "../support/independent";
import { planOf, ref, testWork, withAlterations } from "../support/works";

const plan = planOf(testWork);
const made = truePiecesOf(plan, { names: PIECE_ORDER, size: null, allowances: {}, closure: testWork.pattern.closure });
if (!made.ok) throw new Error("no pieces");
const pieces = made.value;
const pieceOf = (key: string): TruePiece =>
  pieces.find((piece) => piece.key === key) ??
  pieces[0] ??
  (() => {
    throw new Error(key);
  })();

const lines = <F extends "piece" | "sheet">(ink: readonly Ink<F>[], role: InkRole): readonly InkLine<F>[] =>
  ink.filter((one): one is InkLine<F> => one.kind === "line" && one.role === role);
const texts = <F extends "piece" | "sheet">(ink: readonly Ink<F>[]): readonly InkText<F>[] =>
  ink.filter((one): one is InkText<F> => one.kind === "text");

describe("the ink of a piece", () => {
  const ink = pieceInk(pieceOf("front"), { title: ["FRONT", "Cut 1 on the fold"], allowances: true });

  it("does not cut along the fold, and marks the fold from edge to edge", () => {
    const cut = lines(ink, "cutting").flatMap(({ edges }) => edges);
    expect(cut.filter(({ a, b }) => Math.abs(a.x) < 0.01 && Math.abs(b.x) < 0.01)).toEqual([]);
    const [fold] = lines(ink, "fold");
    const ys = (fold?.edges ?? []).flatMap(({ a, b }) => [a.y, b.y]);
    const cutting = pieceOf("front")
      .cutting.map(({ at }) => at)
      .filter(({ x }) => Math.abs(x) < 0.01);
    expect(Math.min(...ys)).toBeCloseTo(Math.min(...cutting.map(({ y }) => y)), 6);
    expect(Math.max(...ys)).toBeCloseTo(Math.max(...cutting.map(({ y }) => y)), 6);
  });

  it("never lets a notch reach the stitch line", () => {
    for (const piece of pieces) {
      for (const { stitch, cut } of piece.notches) {
        const allowance = Math.hypot(stitch.x - cut.x, stitch.y - cut.y);
        const own = lines(
          pieceInk(
            { ...piece, notches: piece.notches.filter((one) => one.stitch === stitch) },
            { title: [], allowances: true },
          ),
          "notch",
        );
        const deepest = Math.max(
          ...own
            .flatMap(({ edges }) => edges.flatMap(({ a, b }) => [a, b]))
            .map(({ x, y }) => Math.hypot(x - cut.x, y - cut.y)),
        );
        expect(deepest).toBeLessThan(Math.max(allowance - 2, 0.001) + 0.001);
      }
    }
  });

  it("says its name, its fold, its grain and its numbers", () => {
    const said = texts(ink).map(({ text }) => text);
    for (const text of ["FRONT", "Cut 1 on the fold", "PLACE ON FOLD · centre front", "straight grain", "bust point"])
      expect(said).toContain(text);
    expect(said.filter((text) => /^\d+$/u.test(text)).length).toBe(
      pieceOf("front").notches.filter(({ kind }) => kind === "seam").length,
    );
  });

  it("cuts along the stitch line where nothing is allowed, and draws that once", () => {
    const bare = truePiecesOf(plan, {
      names: ["back"],
      size: null,
      allowances: null,
      closure: testWork.pattern.closure,
    });
    const own = bare.ok ? pieceInk(bare.value[0] ?? pieceOf("back"), { title: [], allowances: false }) : [];
    expect(lines(own, "stitch")).toEqual([]);
    expect(
      lines(own, "cutting")
        .flatMap(({ edges }) => edges)
        .some(({ curve }) => curve !== null),
    ).toBe(true);
  });

  it("draws another size as one outline and its dart legs, with the dash of its place", () => {
    const front = plan.nest.sizes[3]?.find(({ name }) => name === "front");
    const under = front === undefined ? [] : underInk(front, "printed", 3);
    expect(under).toHaveLength(1 + 2 * (front?.darts.length ?? 0));
    expect(under.every((one) => one.kind === "line" && one.size === 3)).toBe(true);
  });
});

describe("ink that is moved", () => {
  const ink: readonly Ink<"piece">[] = [
    { kind: "line", role: "grain", edges: [lineEdge(piecePoint(0, 0), piecePoint(10, 0))], closed: false },
  ];

  it("is turned by quarters, +x towards +y, then moved", () => {
    const [line] = lines(placedInk(ink, { key: "a", quarters: 1, dx: 100, dy: 50 }), "grain");
    expect(line?.edges[0]?.b).toEqual(sheetPoint(100, 60));
  });

  it("is mirrored in the centre line", () => {
    expect(lines(mirroredInk(ink), "grain")[0]?.edges[0]?.b).toEqual(piecePoint(-10, 0));
  });

  it("is scaled with its writing", () => {
    const [text] = texts(
      scaledInk(
        [{ kind: "text", role: "map", at: sheetPoint(10, 20), anchor: "start", text: "A", size: 8, turn: placedTurn }],
        0.5,
        1,
        2,
      ),
    );
    expect(text?.at).toEqual(sheetPoint(6, 12));
    expect(text?.size).toBe(4);
  });
});
const placedTurn =
  texts(pieceInk(pieceOf("back"), { title: ["BACK"], allowances: true }))[0]?.turn ??
  (() => {
    throw new Error("no writing");
  })();

describe("writing fitted into a box", () => {
  it("is broken at words and stays within it", () => {
    const fitted = fitLines(
      ["FRONT", "Cut 1 on the fold", "Frame 12, cup C; waist 30 % from 14 to 16; hip on the 18 line"],
      60,
      34,
    );
    expect(fitted[0]).toMatchObject({ text: "FRONT", bold: true });
    for (const { text, size, bold, down } of fitted) {
      expect(textWidth(text, size, bold)).toBeLessThanOrEqual(60);
      expect(Math.abs(down)).toBeLessThanOrEqual(17);
    }
    expect(fitted.map(({ text }) => text).join(" ")).toContain("hip on the 18 line");
  });

  it("leaves out the least needed last of all, and never the name", () => {
    expect(fitLines(["BACK", "Cut 2", "a long line of writing that is not much needed"], 24, 9)[0]?.text).toBe("BACK");
    expect(fitLines(["A NAME FAR TOO LONG FOR ITS BOX"], 10, 4)).toHaveLength(1);
  });

  it("keeps a word whole where it can, and breaks what no line holds", () => {
    expect(wrapped("one two three", 9, 3)).toEqual(["one", "two", "three"]);
    expect(wrapped("a".repeat(10), 6, 3)).toEqual(["aaaa", "aaaa", "aa"]);
  });
});

const tile = (column: number, row: number, name: string): Tile => ({
  column,
  row,
  name,
  x: column * 180,
  y: row * 267,
  width: 190,
  height: 277,
});
const layout: SheetLayout = {
  placements: [],
  width: 370,
  height: 277,
  tiles: [tile(0, 0, "A1"), tile(1, 0, "B1")],
  joins: [{ at: sheetPoint(185, 138), pages: ["A1", "B1"] }],
  columns: 2,
  rows: 1,
};

describe("tiled pages", () => {
  const pages = tiledPages(layout, [], {
    paper: { width: 210, height: 297 },
    margin: 10,
    overlap: 10,
    name: "Test",
    joined: true,
  });
  const inkOf = (index: number): readonly Ink<"sheet">[] =>
    (pages[index]?.groups ?? []).flatMap(({ ink, dx, dy }) => scaledInk(ink, 1, dx, dy));

  it("carry a joining mark at the same place of the sheet on both", () => {
    const [one, other] = [0, 1].map((index) => texts(inkOf(index)).find(({ text }) => text === "A1 / B1"));
    expect((one?.at.x ?? 0) - (other?.at.x ?? 0)).toBeCloseTo(180, 9);
    expect(one?.at.y).toBe(other?.at.y);
  });

  it("show where the next page comes to lie only where there is one", () => {
    expect([0, 1].map((index) => lines(inkOf(index), "overlap").length)).toEqual([1, 0]);
  });

  it("say their name, their number and the work", () => {
    expect(
      [0, 1].map((index) =>
        texts(inkOf(index))
          .map(({ text }) => text)
          .filter((text) => /^[A-Z]\d$|page/u.test(text)),
      ),
    ).toEqual([
      ["A1", "page 1 of 2 · Test"],
      ["B1", "page 2 of 2 · Test"],
    ]);
  });
});

describe("the test squares of a page", () => {
  it("go where the least is drawn", () => {
    const dots = Array.from({ length: 40 }, (_, i) => ({ x: 20 + i * 2, y: 40, weight: 2 }));
    const place = testSquarePlace({ x: 0, y: 0, width: 190, height: 277 }, dots);
    // All of them are in the upper part: the square lies below it.
    expect(place.y).toBeGreaterThan(42);
    expect(place.x + 101.6).toBeLessThan(190);
    expect(place.y + 101.6).toBeLessThan(277);
  });
});

describe("the first page", () => {
  const words = {
    kind: "True-scale pieces",
    name: "A work",
    about: ["Pattern"],
    failing: [] as readonly string[],
    notes: [] as readonly string[],
    steps: joiningSteps("A4", 4, "cm"),
  };
  const fault = (i: number): string =>
    `Fault number ${i + 1} of the plan, told at some length so that it takes more than a single line of the first page.`;
  const many = Array.from({ length: 12 }, (_, size) => ({ label: `A long label of a size ${size}`, size }));

  it("tells every fault, the first of all before anything else is explained", () => {
    for (const count of [1, 60]) {
      const pages = coverPages(
        { width: 210, height: 297 },
        10,
        { ...words, failing: Array.from({ length: count }, (_, i) => fault(i)) },
        { overlay: false, paged: "joined", before: false, printed: [] },
        () => [],
      );
      const first = pages[0]?.groups.flatMap(({ ink }) => texts(ink).map(({ text }) => text)) ?? [];
      expect(first).toContain(
        count === 1 ? "Before you cut: one thing does not hold" : "Before you cut: 60 things do not hold",
      );
      const all = pages
        .flatMap(({ groups }) => groups.flatMap(({ ink }) => texts(ink).map(({ text }) => text)))
        .join(" ");
      expect(Array.from({ length: count }, (_, i) => all.includes(`Fault number ${i + 1} of`)).every(Boolean)).toBe(
        true,
      );
    }
  });

  it.each([
    ["A4", 5],
    ["A4", 25],
    ["Letter", 10],
    ["Letter", 25],
    ["A3", 5],
    ["Tabloid", 25],
  ] as const)(
    "keeps within its margins on %s with %i mm of white edge, however much there is to say",
    (name, margin) => {
      const { width, height } = FORMATS[name];
      const paper = { width, height: height ?? 0 };
      for (const overlay of [false, true]) {
        for (const count of [0, 9, 40]) {
          const own = {
            ...words,
            name: "A".repeat(200),
            steps: overlay ? [...OVERLAY_STEPS, OVERLAY_CAUTION] : words.steps,
            failing: Array.from({ length: count }, (_, i) => fault(i)),
            notes: Array.from({ length: 9 }, (_, i) => fault(i)),
          };
          const pages = coverPages(
            paper,
            margin,
            own,
            { overlay, paged: "joined", before: true, printed: many },
            (box) => mapInk(box, layout, [], 10),
          );
          const ink = pages.flatMap((page) => page.groups.flatMap((group) => group.ink));
          const reach = ink.flatMap((one) =>
            one.kind === "line"
              ? one.edges.flatMap(({ a, b }) => [a, b])
              : [
                  one.at,
                  {
                    x: one.at.x + textWidth(one.text, one.size, one.bold) * (one.anchor === "middle" ? 0.5 : 1) * 0.9,
                    y: one.at.y,
                  },
                ],
          );
          expect(Math.max(...reach.map(({ y }) => y))).toBeLessThanOrEqual(paper.height - margin + 0.01);
          expect(Math.min(...reach.map(({ y }) => y))).toBeGreaterThanOrEqual(margin);
          expect(Math.max(...reach.map(({ x }) => x))).toBeLessThanOrEqual(paper.width - margin + 0.01);
          expect(Math.min(...reach.map(({ x }) => x))).toBeGreaterThanOrEqual(margin - 0.01);
          expect(Math.min(...texts(ink).map(({ size }) => size))).toBeGreaterThanOrEqual(1.9);
        }
      }
    },
  );
});

describe("marks on pieces without allowances", () => {
  const bare = truePiecesOf(plan, {
    names: PIECE_ORDER,
    size: null,
    allowances: null,
    closure: testWork.pattern.closure,
  });
  const own = bare.ok ? bare.value : [];

  it("are ticks that go into the piece, with their numbers", () => {
    for (const piece of own) {
      const polygon = polygonOf(piece.cutting.map(({ at }) => at));
      for (const notch of piece.notches.filter(({ kind }) => kind === "seam")) {
        const ink = pieceInk({ ...piece, notches: [notch], title: piece.title }, { title: [], allowances: false });
        const ends = lines(ink, "notch")
          .flatMap(({ edges }) => edges.flatMap(({ a, b }) => [a, b]))
          .filter(({ x, y }) => Math.hypot(x - notch.cut.x, y - notch.cut.y) > 3);
        expect(ends.length).toBeGreaterThan(0);
        expect(ends.every(({ x, y }) => polygon.contains(new Point(x, y)))).toBe(true);
        expect(texts(ink).map(({ text }) => text)).toContain(String(notch.number));
      }
    }
    expect(own.length).toBeGreaterThan(0);
  });
});

describe("the name of a page", () => {
  it("stays on it, however long the name of the work", () => {
    for (const length of [10, 110, 200]) {
      const pages = tiledPages(layout, [], {
        paper: { width: 210, height: 297 },
        margin: 10,
        overlap: 10,
        name: "n".repeat(length),
        joined: true,
      });
      for (const page of pages) {
        const named = page.groups
          .flatMap(({ ink, dx, dy }) => texts(scaledInk(ink, 1, dx, dy)))
          .filter(({ text }) => text === page.name || text.startsWith("page "));
        expect(named).toHaveLength(2);
        for (const { at, text, size } of named) {
          expect(at.x).toBeGreaterThanOrEqual(10);
          expect(at.x + textWidth(text, size) * 0.8).toBeLessThanOrEqual(200);
        }
      }
    }
  });
});

describe("words on pieces and sheets", () => {
  const bodice = plan.left.pieces.filter(({ name }) => name === "front" || name === "back");

  it("say how often, and how a half is laid", () => {
    expect(pieces.map((piece) => `${pieceTitle(piece)}: ${cutWords(piece)}`).slice(0, 2)).toEqual([
      "FRONT: Cut 1 on the fold",
      "BACK: Cut 2, one turned over",
    ]);
    expect(cutWords({ name: "front", half: "left", cut: { onFold: true, count: 1 } })).toContain(
      "Join to the right half along the centre front",
    );
    expect(cutWords({ name: "back", half: "right", cut: { onFold: false, count: 1 } })).toBe(
      "Cut 1, this side up on the right side of the cloth, in one layer",
    );
  });

  it("say what was altered on that piece, on that half, and not elsewhere", () => {
    const work = withAlterations(
      {
        kind: "dartEnd",
        id: "a",
        dart: ref("front", "waistDart"),
        shorten: 10,
        across: 0,
        hold: "mouth",
        giveBack: {},
      },
      { kind: "fit", id: "b", fit: "backWidth", amount: 6, half: "left" },
    );
    const altered = planOf(work);
    expect(alteredWords(altered, { name: "front", half: null }, "cm").join()).toContain(
      "Shorten the waist dart by 10 mm",
    );
    expect(alteredWords(altered, { name: "back", half: "left" }, "cm")).toHaveLength(1);
    expect(alteredWords(altered, { name: "back", half: "right" }, "cm")).toEqual([]);
  });

  it("say the day in words, and a day that is none as it is", () => {
    expect(dayWords("2026-11-25")).toBe("25 November 2026");
    expect(dayWords("soon")).toBe("soon");
  });

  it("name the blend, and that an invented demo is one", () => {
    const title = titleLines(testWork, plan, pieceOf("front"), { day: "2026-11-25", allowances: false }).join("\n");
    expect(title).toContain("invented demo");
    expect(title).toContain("NO seam allowances");
    expect(blendWords(plan)).toMatch(/^Frame \d+, cup [A-Z]; waist /u);
  });

  it("tell the allowances: one for most, and what differs", () => {
    expect(allowanceWords(bodice, {}, "cm")).toBe("Allowances included: 15 mm all round.");
    expect(allowanceWords(bodice, { side: 25 }, "cm")).toBe("Allowances included: 15 mm, but 25 mm at the side seam.");
    expect(allowanceWords(bodice, { side: 25, neck: 6, armhole: 6, shoulder: 10 }, "cm")).toBe(
      "Allowances included: 15 mm at the waist seam and centre seams; 6 mm at the armhole and neck edge; 10 mm at the shoulder seam; 25 mm at the side seam.",
    );
    // 15 mm are 18.9 thirty-seconds; what was entered as 5/8 in is kept as 15.9 mm.
    expect(allowanceWords(bodice, {}, "in")).toBe("Allowances included: about 19/32 in all round.");
    expect(allowanceWords(bodice, { side: 31.8 }, "in")).toContain("1 ¼ in at the side seam");
  });

  it("tell how to join only where there is something to join", () => {
    expect(joiningSteps("A4", 6, "cm").some((step) => step.includes("cut along its thin frame"))).toBe(true);
    expect(joiningSteps("A4", 1, "cm").join(" ")).not.toContain("Join");
    expect(joiningSteps("36 in roll", 1, "in").join(" ")).toContain("4 in");
  });

  // ISO 216: A0 is 841 mm wide, 33.11 in.
  it("tell how wide a roll is in the wearer's unit, or as it is sold", () => {
    expect(joiningSteps("A0 roll", 1, "cm")[0]).toContain("One page, 841 mm wide");
    expect(joiningSteps("A0 roll", 1, "in")[0]).toContain("One page, 33 1/8 in wide");
    expect(joiningSteps("36 in roll", 1, "cm")[0]).toContain("One page, 36 in wide");
    expect(joiningSteps("36 in roll", 1, "cm")[0]).toContain("the inner test square must be 100 mm each way");
  });
});
