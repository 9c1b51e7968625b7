/** What a cutter looks for on a true-scale piece: marks that tell front from back, names of seams, lines to lengthen at. */
import { describe, expect, it } from "vitest";
import { stretchesOf } from "../../src/core/cutting/stretches";
import { isFreeWithin } from "../../src/core/cutting/room";
import { truePartsOf } from "../../src/core/cutting/trueParts";
import { truePiecesOf } from "../../src/core/cutting/truePieces";
import type { TruePiece } from "../../src/core/cutting/truePiece";
import type { Alteration } from "../../src/core/decisions/alteration";
import { STYLE_NAMES, type Pattern } from "../../src/core/decisions/pattern";
import type { Work } from "../../src/core/decisions/work";
import { dressOf } from "../../src/core/dress/dressOf";
import { PIECE_ORDER } from "../../src/core/pattern/pieceSet";
import { sheetPoint } from "../../src/core/geometry/point";
import { radians } from "../../src/core/units";
import type { SheetLayout, Tile } from "../../src/core/sheets/layout";
import { mapInk } from "../../src/drawing/coverPage";
import { obstaclesOf } from "../../src/drawing/alongLine";
import { textWidth } from "../../src/drawing/fitLines";
import type { Ink, InkText } from "../../src/drawing/ink";
import { pieceInk } from "../../src/drawing/pieceInk";
import { sheetMap, tiledPages } from "../../src/drawing/sheetPages";
import { testMarks, dotsOf } from "../../src/drawing/testSquare";
import { sheetRect } from "../../src/drawing/inkShapes";
import { allowanceWords, lineKey, markKey, missingLettersWords, opensWords } from "../../src/words/sheets";
import { titleLines } from "../../src/words/truePaper";
import { planOf, testWork } from "../support/works";

const made = (pattern: Partial<Pattern>): readonly TruePiece[] => {
  const work = { ...testWork, pattern: { ...testWork.pattern, ...pattern } };
  const pieces = truePiecesOf(planOf(work), {
    names: PIECE_ORDER,
    size: null,
    allowances: {},
    closure: work.pattern.closure,
  });
  if (!pieces.ok) throw new Error(pieces.failure.code);
  return pieces.value;
};
const texts = (ink: readonly Ink<"piece">[]): readonly InkText<"piece">[] =>
  ink.filter((one): one is InkText<"piece"> => one.kind === "text");
const inkOf = (piece: TruePiece): readonly Ink<"piece">[] => pieceInk(piece, { title: ["NAME"], allowances: true });

describe.each(STYLE_NAMES)("the pieces of %s", (style) => {
  const pieces = made({ style });

  it("are notched singly where a front is met and doubly where backs alone meet, 6 mm apart, alike on both", () => {
    const notches = pieces.flatMap(({ name, notches: own }) => own.map((notch) => ({ ...notch, piece: name })));
    for (const notch of notches.filter(({ kind }) => kind === "seam")) {
      const meeting = notches.filter(({ kind, number }) => kind === "seam" && number === notch.number);
      expect(meeting).toHaveLength(2);
      const backs = meeting.every(({ piece }) => piece.startsWith("back"));
      expect(notch.twins !== undefined).toBe(backs);
      const [one, other] = notch.twins ?? [];
      if (one === undefined || other === undefined) continue;
      expect(Math.hypot(one.stitch.x - other.stitch.x, one.stitch.y - other.stitch.y)).toBeCloseTo(6, 1);
    }
    const balance = notches.filter(({ kind }) => kind === "balance");
    expect(balance.map(({ piece, twins }) => [piece.startsWith("back"), twins !== undefined])).toEqual(
      expect.arrayContaining([
        [true, true],
        [false, false],
      ]),
    );
  });

  it("are numbered through, each once", () => {
    expect(pieces.map(({ number }) => number)).toEqual(pieces.map((_, index) => [index + 1, pieces.length]));
  });

  it("have a grain line over more than half their length", () => {
    for (const { grain, stitch, name } of pieces) {
      const ys = stitch.flatMap(({ a, b }) => [a.y, b.y]);
      expect([name, (grain[1].y - grain[0].y) / (Math.max(...ys) - Math.min(...ys)) > 0.45]).toEqual([name, true]);
    }
  });

  it("read in the direction of the grain: the title upwards", () => {
    for (const piece of pieces) {
      const title = texts(inkOf(piece)).find(({ text }) => text === "NAME");
      expect(title?.turn).toBeCloseTo(-Math.PI / 2, 9);
    }
  });

  it("keep their title off the bust point", () => {
    for (const piece of pieces) {
      const { bustPoint, title } = piece;
      if (bustPoint === null) continue;
      const [dx, dy] = [Math.abs(bustPoint.x - title.centre.x), Math.abs(bustPoint.y - title.centre.y)];
      expect(dx > title.width / 2 || dy > title.height / 2).toBe(true);
    }
  });

  it("name their long seams, in words that lie on no other words", () => {
    for (const piece of pieces.filter(({ name }) => name !== "strap")) {
      const said = texts(inkOf(piece));
      expect(said.some(({ text }) => text.includes("side seam") || text.includes("princess seam"))).toBe(true);
      const middles = said.map(({ at, text, size, anchor, turn }) => {
        const off = { start: 0.5, middle: 0, end: -0.5 }[anchor] * textWidth(text, size);
        return { x: at.x + off * Math.cos(turn), y: at.y + off * Math.sin(turn) };
      });
      const near = middles.filter((p, i) => middles.some((q, j) => j < i && Math.hypot(p.x - q.x, p.y - q.y) < 2));
      expect(near).toEqual([]);
    }
  });
});

/** Whether nothing else that is drawn on a piece comes into a piece of writing. */
function liesAlone(label: InkText<"piece">, ink: readonly Ink<"piece">[], { cutting }: TruePiece): boolean {
  const corners = obstaclesOf([label])[0]?.slice(0, 4) ?? [];
  const ring = cutting.map(({ at }) => at);
  return corners.length === 4 && isFreeWithin(corners, ring, obstaclesOf(ink.filter((one) => one !== label)));
}

describe("the paper of a bodice with straps", () => {
  it.each(["thin", "wide"] as const)("names the mark of a %s one on cup and back, where nothing else lies", (strap) => {
    const pieces = made({ style: "midriff", strap }).filter(({ name }) => name !== "strap");
    const said = pieces.flatMap((piece) => {
      const ink = inkOf(piece);
      return texts(ink)
        .filter(({ text }) => text.includes("strap"))
        .map((label) => ({ piece, ink, label }));
    });
    expect(said.map(({ piece, label }) => [piece.name, label.text])).toEqual([
      ["cup", "strap"],
      ["back", "strap"],
    ]);
    for (const { piece, ink, label } of said) expect(liesAlone(label, ink, piece)).toBe(true);
    // No two marks of a piece are cut within the width of one.
    for (const { notches } of pieces)
      for (const { kind, cut } of notches.filter((notch) => notch.kind === "strap"))
        for (const other of notches.filter((notch) => notch.kind !== kind))
          expect(Math.hypot(cut.x - other.cut.x, cut.y - other.cut.y)).toBeGreaterThan(6);
    expect(markKey("single").join(" ")).toContain("named “strap”: there the middle of the strap comes");
  });
});

describe("the paper of a skirt with a vent", () => {
  const backOf = (vent: number, uneven: boolean): readonly TruePiece[] => {
    const alteration: Alteration = { kind: "fit", id: "a", fit: "sideSeamWaist", amount: 8, half: "left" };
    const work: Work = {
      ...testWork,
      alterations: uneven ? [alteration] : [],
      dress: { skirt: { kind: "straight", length: 600, vent } },
    };
    const dress = dressOf(work);
    if (!dress.ok) throw new Error("no dress");
    const { closure } = work.pattern;
    const back = { parts: dress.value.parts, ids: ["skirtBack"], allowances: {}, closure, liningOpen: null };
    const found = truePartsOf(back);
    if (!found.ok) throw new Error(found.failure.code);
    return found.value;
  };

  it.each([
    [60, false],
    [150, false],
    [200, true],
  ])("shows the fold of one of %i mm in words that lie on nothing else", (vent, uneven) => {
    const backs = backOf(vent, uneven);
    expect(backs).toHaveLength(uneven ? 2 : 1);
    for (const back of backs) {
      const ink = inkOf(back);
      const lines = ink.filter(({ role, kind }) => role === "ventFold" && kind === "line");
      expect(lines).toHaveLength(1);
      const label = texts(ink).filter(({ text }) => text === "vent fold");
      expect(label).toHaveLength(1);
      for (const own of label) expect(liesAlone(own, ink, back)).toBe(true);
    }
  });

  it("shows none where there is none", () => {
    expect(
      backOf(0, false)
        .flatMap(inkOf)
        .filter(({ role }) => role === "ventFold"),
    ).toEqual([]);
    expect(lineKey("single").map(({ words }) => words)).toContain("dart or vent fold");
  });
});

describe("where a bodice is lengthened", () => {
  // A side dart bodice: below the bust where the alteration of its length cuts, 0.4 of the back from waist to bust line.
  const pieces = made({ style: "sideDart", length: "waist" });

  it("is told on front and back, from edge to edge, at one height above the waist", () => {
    const below = ["front", "back"].map((name) => {
      const piece = pieces.find((one) => one.name === name);
      const waist = Math.max(...(piece?.seams.find(({ seam }) => seam === "waist")?.edges ?? []).map(({ a }) => a.y));
      const line = piece?.lengthen.toSorted((p, q) => q[0].y - p[0].y)[0];
      if (piece === undefined || line === undefined) throw new Error(name);
      expect(Math.abs(line[0].x - line[1].x)).toBeGreaterThan(150);
      return { waist, y: line[0].y };
    });
    for (const { waist, y } of below) expect(waist - y).toBeGreaterThan(20);
    expect(pieces.flatMap((piece) => texts(inkOf(piece))).map(({ text }) => text)).toContain(
      "lengthen or shorten here",
    );
  });
});

describe("a strap", () => {
  const strapOf = (strap: Pattern["strap"]) => {
    const work = { ...testWork, pattern: { ...testWork.pattern, style: "midriff" as const, strap } };
    const piece = planOf(work).left.pieces.find(({ name }) => name === "strap");
    if (piece === undefined) throw new Error("no strap");
    return piece;
  };
  // Turned, both allowances lie inside it: each is half of 12 mm at the most.
  it("has no wider allowance along it than turns inside it, and the usual at its ends", () => {
    expect(stretchesOf(strapOf("thin"), {}).map(({ allowance }) => allowance)).toEqual([15, 6, 15, 6]);
    expect(stretchesOf(strapOf("wide"), {}).map(({ allowance }) => allowance)).toEqual([15, 15, 15, 15]);
    expect(allowanceWords([strapOf("thin")], {}, "cm")).toContain("6 mm along the strap");
  });

  it("is placed on cup and back, and told apart at its ends", () => {
    const said = (name: string): readonly string[] =>
      made({ style: "midriff", strap: "wide" })
        .filter((piece) => piece.name === name)
        .flatMap((piece) => texts(inkOf(piece)).map(({ text }) => text));
    expect(said("cup")).toContain("strap");
    expect(said("back")).toContain("strap");
    expect(said("strap")).toEqual(expect.arrayContaining(["front", "back"]));
  });
});

describe("words on sheets", () => {
  it("say where it opens, on the seam and on the first page", () => {
    const closure = { place: "side", belowWaist: 180 } as const;
    const pieces = made({ style: "sideDart", closure });
    expect(pieces.flatMap((piece) => texts(inkOf(piece)).map(({ text }) => text))).toEqual(
      expect.arrayContaining(["side seam: left side opens", "zip ends"]),
    );
    const opens = (length: "hip" | "waist", isSkirted: boolean, belowWaist = 180): string =>
      opensWords(
        { unit: "cm", pattern: { ...testWork.pattern, length, closure: { ...closure, belowWaist } } },
        isSkirted,
      );
    expect(opens("hip", false)).toBe("Opens at the left side, down to 18.0 cm below the waist seam.");
    // A skirt is opened as a basque is, whatever the length of the pattern.
    expect(opens("waist", true)).toBe("Opens at the left side, down to 18.0 cm below the waist seam.");
    expect([opens("waist", false), opens("hip", true, 0)]).toEqual(
      Array.from({ length: 2 }, () => "Opens at the left side, down to the waist."),
    );
  });

  it("number the piece and leave lining to be ticked", () => {
    const [front] = made({ style: "sideDart" });
    if (front === undefined) throw new Error("no front");
    const lines = titleLines(testWork, planOf(testWork), front, { day: "2026-11-25", allowances: true });
    expect(lines[1]).toBe("Piece 1 of 4. Cut 1 on the fold");
    expect(lines.join("\n")).toContain("☐ lining");
  });

  it("tell of a roll nothing of pages and joins", () => {
    expect(lineKey("roll").map(({ role }) => role)).not.toContain("frame");
    expect(lineKey("roll").map(({ role }) => role)).not.toContain("overlap");
    expect(markKey("roll").join(" ")).not.toContain("Diamond");
    expect(markKey("joined").join(" ")).toContain("Diamond");
  });

  it("own up to letters that the file cannot show", () => {
    expect(missingLettersWords(["Łucja", "Ελένη", "Жанна 12"])).toEqual([]);
    expect(missingLettersWords(["岡"])).toHaveLength(1);
  });
});

const tile = (column: number, row: number): Tile => ({
  column,
  row,
  name: `${"AB"[column] ?? ""}${row + 1}`,
  x: column * 180,
  y: row * 267,
  width: 190,
  height: 277,
});
const layout: SheetLayout = {
  placements: [],
  width: 370,
  height: 544,
  tiles: [tile(0, 0), tile(1, 0), tile(0, 1), tile(1, 1)],
  joins: [
    { at: sheetPoint(185, 20), pages: ["A1", "B1"] },
    { at: sheetPoint(20, 272), pages: ["A1", "A2"] },
  ],
  columns: 2,
  rows: 2,
};

describe("the map", () => {
  it("draws the last row and column to their own edge", () => {
    const frames = sheetMap(layout, [], 10, 26).flatMap((ink) => (ink.kind === "line" ? [ink.edges] : []));
    const reach = frames.flatMap((edges) => edges.map(({ a }) => a));
    expect(Math.max(...reach.map(({ x }) => x))).toBe(370);
    expect(Math.max(...reach.map(({ y }) => y))).toBe(544);
  });

  it("is written in 9 points at the least, however small", () => {
    const name: InkText<"sheet"> = {
      kind: "text",
      role: "map",
      at: sheetPoint(100, 100),
      anchor: "middle",
      text: "FRONT BASQUE, LEFT HALF",
      size: 15,
      turn: radians(0),
    };
    const outlines = [{ key: "a", label: "a", ink: [sheetRect("cutting", 0, 0, 200, 300), name] }];
    const ink = mapInk({ x: 0, y: 0, width: 60, height: 60 }, layout, outlines, 10);
    const sizes = ink.flatMap((one) => (one.kind === "text" ? [one.size] : []));
    // 9 points of 1/72 in.
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual((9 / 72) * 25.4);
  });
});
describe("the name of a page", () => {
  it("stands on no joining diamond, wherever those are, and says whose it is", () => {
    for (let y = 8; y < 270; y += 6) {
      const joins: SheetLayout["joins"] = [
        { at: sheetPoint(185, y), pages: ["A1", "B1"] },
        { at: sheetPoint(y * 0.65, 272), pages: ["A1", "A2"] },
      ];
      const pages = tiledPages({ ...layout, joins }, [], {
        paper: { width: 210, height: 297 },
        margin: 10,
        overlap: 10,
        name: "A bodice with a name of many words, and more of them",
        wearer: "Ann",
        joined: true,
      });
      for (const page of pages) {
        const ink = page.groups.flatMap(({ id, ink: own }) => own.map((one) => ({ id, one })));
        const said = ink.flatMap(({ id, one }) => (id === "page-name" && one.kind === "text" ? [one] : []));
        expect(said.map(({ text }) => text).join(" ")).toContain("· Ann ·");
        const spots = ink.flatMap(({ id, one }) => (id === "joins" ? dotsOf(one) : []));
        for (const { at, text, size } of said) {
          const covered = spots.filter(
            (p) => p.x > at.x && p.x < at.x + textWidth(text, size) && p.y > at.y - 0.7 * size && p.y < at.y,
          );
          expect(covered).toEqual([]);
        }
      }
    }
  });
});

describe("what a page of strips is measured by", () => {
  it("stands in no strip where there is room beside them", () => {
    const strip = sheetRect("frame", 0, 0, 150, 200).edges.map(({ a }) => a);
    const marks = testMarks({ x: 0, y: 0, width: 190, height: 277 }, [], [strip]);
    const inside = marks.flatMap(dotsOf).filter(({ x, y }) => x < 150 && y < 200);
    expect(inside).toEqual([]);
    expect(marks.length).toBeGreaterThan(0);
  });
});
