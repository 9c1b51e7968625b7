/** Pieces on the table: apart from each other, closed, and their words apart too. */
import { measuresOf, tapesOf } from "../../src/core/measures/tape";
import { describe, expect, it } from "vitest";
import {
  boxOf,
  keepApart,
  nearestApart,
  pieceDiagram,
  pieceLabels,
  pieceMarks,
  placePieces,
  planLabels,
  sizeLabels,
  sizesInUse,
  textPixels,
  type Label,
} from "../../src/drawing/index";
import { dartIn, planOf, ref, testWork, withAlterations } from "../support/works";

const plan = planOf(testWork);
const places = placePieces([...plan.nest.sizes, plan.left.pieces]);

describe("names of sizes of 28 letters", () => {
  /** Capitals of the page's typeface are at the least this share of the text size wide on the whole (measured). */
  const CAPITAL = 0.56;
  const labels = plan.nest.labels.map((label) => `GRANDMOTHERS GREEN VELVET ${label.padStart(2, "0")}`);
  const long = sizeLabels({ ...plan.nest, labels }, places, () => labels);

  it("stand shortened, each told from the others by its end", () => {
    const front = long.filter(({ id }) => id.startsWith("size-front-")).map(({ lines }) => lines.join(" "));
    expect(front.toSorted()).toEqual(labels.map((label) => `GRAND…VET ${label.slice(-2)}`).toSorted());
  });

  it("stand shortened at another place where these would be the same, and whole where all would", () => {
    const told = (of: (label: string) => string): readonly string[] =>
      sizeLabels({ ...plan.nest, labels: plan.nest.labels.map(of) }, places, () => [])
        .filter(({ id }) => id.startsWith("size-front-"))
        .map(({ lines }) => lines.join(" "));
    const [regular] = told((label) => `Size ${label.padStart(2, "0")} (regular)`);
    expect(regular).toMatch(/^Size \d\d \(re…/);
    const [whole] = told((label) => `Wedding bodice number ${label.padStart(2, "0")} for a summer evening`);
    expect(whole).toMatch(/^Wedding bodice number \d\d for a summer evening$/);
  });

  it.each([0.1, 0.4, 1, 1.5])("do not lie on one another at %d mm to a pixel", (mmPerPixel) => {
    const boxes = keepApart(long, mmPerPixel).map((label) => {
      const size = textPixels(label) * mmPerPixel;
      const width = (label.lines[0]?.length ?? 0) * size * CAPITAL;
      return { left: label.x - width / 2, right: label.x + width / 2, top: label.y - size * 0.7, bottom: label.y };
    });
    const clashes = boxes.filter((a, at) =>
      boxes.slice(at + 1).some((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom),
    );
    expect(boxes.length).toBeGreaterThan(3);
    expect(clashes).toEqual([]);
  });
});

describe("placePieces", () => {
  it("lays every piece down, and no size of one meets any size of another", () => {
    expect(places.map(({ piece }) => piece).toSorted()).toEqual(["back", "backBasque", "front", "frontBasque"]);
    const overlaps = places.flatMap((a, i) =>
      places
        .slice(i + 1)
        .filter(
          (b) =>
            a.box.x < b.box.x + b.box.width &&
            b.box.x < a.box.x + a.box.width &&
            a.box.y < b.box.y + b.box.height &&
            b.box.y < a.box.y + a.box.height,
        ),
    );
    expect(overlaps).toEqual([]);
    const all = boxOf(places, 10);
    for (const { box } of places) {
      expect(box.x).toBeGreaterThanOrEqual(all.x + 10);
      expect(box.y + box.height).toBeLessThanOrEqual(all.y + all.height - 10);
    }
  });
});

describe("a piece without a name of ours", () => {
  it("lies beneath all the others, and clear of them", () => {
    const [base] = plan.nest.sizes;
    const back = base?.find(({ name }) => name === "back");
    if (back === undefined) throw new Error("no back");
    const laid = placePieces([
      plan.left.pieces,
      [
        { ...back, name: "other1" },
        { ...back, name: "other2" },
      ],
    ]);
    const others = laid.filter(({ piece }) => piece === "other1" || piece === "other2");
    const lowest = Math.max(...laid.filter((one) => !others.includes(one)).map(({ box }) => box.y + box.height));
    expect(others.map(({ piece }) => piece)).toEqual(["other1", "other2"]);
    for (const { box } of others) expect(box.y).toBeGreaterThan(lowest);
    const [one, two] = others;
    expect((two?.box.x ?? 0) - (one?.box.x ?? 0)).toBeGreaterThan(one?.box.width ?? 0);
  });
});

describe("pieceMarks", () => {
  it.each(plan.left.pieces.map((piece) => [piece.name, piece] as const))(
    "draws the %s closed, with a cap across each dart",
    (_name, piece) => {
      const marks = pieceMarks(piece);
      expect(marks.stitch.startsWith("M")).toBe(true);
      expect(marks.stitch.endsWith("Z")).toBe(true);
      expect(marks.stitch).not.toMatch(/NaN|undefined/);
      expect(marks.darts).toHaveLength(piece.darts.length);
      // From one mouth end to the other, in two halves at the least.
      for (const dart of marks.darts) expect(dart.cap).toMatch(/^M[^MLC]+(?:[LC][^MLC]+){2,}$/u);
    },
  );
});

describe("keepApart", () => {
  const label = (id: string, x: number, kind: Label["kind"]): Label => ({
    id,
    x,
    y: 0,
    lines: ["12"],
    anchor: "middle",
    kind,
    leader: null,
  });

  it("leaves out a size that would lie on another, and moves anything else down", () => {
    const kept = keepApart(
      [label("a", 0, "size"), label("b", 2, "size"), label("c", 1, "cut"), label("d", 100, "size")],
      1,
    );
    expect(kept.map(({ id }) => id)).toEqual(["a", "c", "d"]);
    expect(kept.find(({ id }) => id === "c")?.y).toBeGreaterThan(0);
  });
});

describe("keepApart, at every zoom", () => {
  const all = [
    ...pieceLabels(plan.left, places),
    ...planLabels(plan.left, places, "cm"),
    ...sizeLabels(plan.nest, places, (piece) => sizesInUse(plan.left, piece)),
  ];

  /** How wide the letters of the page's typeface run at the least: measured, 0.45 of the size for a narrow word. */
  const NARROWEST = 0.45;
  const boxOfWords = (label: Label, mmPerPixel: number) => {
    const size = textPixels(label) * mmPerPixel;
    const width = Math.max(...label.lines.map((line) => line.length)) * size * NARROWEST;
    const left = label.anchor === "start" ? label.x : label.x - width / 2;
    return {
      left,
      right: left + width,
      top: label.y - size * 0.7,
      bottom: label.y + (label.lines.length - 1) * 1.25 * size,
    };
  };

  it.each([0.1, 0.4, 1, 1.5, 2, 3])(
    "at %d mm to a pixel no words lie on others, and the pieces keep their names",
    (mmPerPixel) => {
      const kept = keepApart(all, mmPerPixel);
      const clashes = kept.flatMap((one, i) =>
        kept.slice(i + 1).flatMap((other) => {
          const [a, b] = [boxOfWords(one, mmPerPixel), boxOfWords(other, mmPerPixel)];
          return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
            ? [`${one.id} on ${other.id}`]
            : [];
        }),
      );
      expect(clashes).toEqual([]);
      expect(kept.filter(({ kind }) => kind === "title")).toHaveLength(4);
      expect(kept.length).toBeGreaterThan(8);
    },
  );

  it("shows every printed size from near, and those in use before the others from further off", () => {
    const sizes = (mmPerPixel: number) =>
      keepApart(all, mmPerPixel)
        .filter(({ id }) => id.startsWith("size-front-"))
        .map(({ lines }) => lines[0]);
    expect(new Set(sizes(0.2))).toEqual(new Set(plan.nest.labels));
    expect(sizes(1.2)).toEqual(expect.arrayContaining(["14", "16"]));
    expect(sizes(1.2).length).toBeLessThan(plan.nest.labels.length);
  });

  it("keeps words a fixed number of pixels clear of their line, whatever the zoom", () => {
    const label: Label = {
      id: "a",
      x: 0,
      y: 100,
      below: 15,
      lines: ["12"],
      anchor: "middle",
      kind: "size",
      leader: null,
    };
    expect(keepApart([label], 1)[0]?.y).toBe(115);
    expect(keepApart([label], 0.5)[0]?.y).toBe(107.5);
  });

  it("says less from far: the share, a piece's name by its words, a dart's amount only while it is chosen", () => {
    const far = keepApart(
      [...pieceLabels(plan.left, places), ...planLabels(plan.left, places, "cm", ref("front", "waistDart"))],
      3,
    );
    const lines = (id: string) => far.find((label) => label.id === id)?.lines;
    expect(lines("cut-front-waist")).toEqual(["30 %"]);
    expect(lines("title-frontBasque")).toEqual(["Front", "basque"]);
    expect(lines("dart-front-waistDart")).toHaveLength(1);
    expect(lines("dart-front-sideDart")).toBeUndefined();
  });
});

it("nearestApart is the distance to the nearest other place", () => {
  expect(
    nearestApart([
      { x: 0, y: 0 },
      { x: 3, y: 4 },
      { x: 3, y: 10 },
    ]),
  ).toEqual([5, 5, 6]);
});

it("the labels and the diagram tell the waist's amount", () => {
  const words = planLabels(plan.left, places, "cm").map(({ lines }) => lines.join(" "));
  expect(words.some((text) => /waist: 30 %.*14.*16.*3 mm outside 14/.test(text))).toBe(true);
  const diagram = pieceDiagram(plan.left, "front", "cm");
  expect(diagram?.labels.length).toBeGreaterThan(0);
  expect(diagram?.neighbours).toHaveLength(2);
});

describe("what a label says of its line", () => {
  const label = (of: ReturnType<typeof planOf>, id: string) =>
    planLabels(of.left, places, "cm").find((other) => other.id === id);

  it("tells a line that lies on a printed one by that line alone", () => {
    // Waist 740 + ease 40 is the finished waist of the row 740 on the chart: 12 + 2 × (740 − 700) / 40 = 14.
    const on = planOf({ ...testWork, tapes: tapesOf({ ...measuresOf(testWork.tapes), waistGirth: 740 }) });
    expect(label(on, "cut-front-waist")?.lines).toEqual(["waist: on 14"]);
  });

  it("tells what a slip moved it by afterwards, and points to where the line now is", () => {
    const alteration = {
      kind: "dartEnd",
      id: "a",
      dart: ref("front", "waistDart"),
      shorten: 40,
      across: 0,
      hold: "fullness",
      giveBack: { sideSeam: 1 },
    } as const;
    const altered = planOf(withAlterations(alteration));
    const freed = Math.round(
      dartIn(plan, "front", "waistDart").drawn.intake - dartIn(altered, "front", "waistDart").drawn.intake,
    );
    expect(freed).toBeGreaterThan(5);
    const said = label(altered, "cut-front-waist");
    expect(said?.lines.at(-1)).toBe(`then ${freed} mm in`);
    const corner = altered.left.pieces.find(({ name }) => name === "front")?.points.sideWaist?.at.x ?? NaN;
    const dx = places.find(({ piece }) => piece === "front")?.dx ?? NaN;
    expect(said?.leader?.x).toBeCloseTo(corner + dx, 0);
    // The back's line stays where it was.
    expect(label(altered, "cut-back-waist")?.lines).toEqual(label(plan, "cut-back-waist")?.lines);
  });

  it("tells what the bust adjustment moved the front by: half the whole amount", () => {
    const fuller = planOf({ ...testWork, picks: { bustAlteration: 30 } });
    expect(label(fuller, "cut-front-waist")?.lines.slice(-2)).toEqual(["then 15 mm out", "for the bust"]);
    expect(label(fuller, "cut-back-waist")?.lines.join(" ")).not.toContain("bust");
  });

  it("names each piece, how it is cut, and whose bust point it is", () => {
    const own = pieceLabels(plan.left, places);
    expect(own.find(({ id }) => id === "title-front")?.lines).toEqual(["Front", "cut on the fold"]);
    expect(own.find(({ id }) => id === "title-back")?.lines).toEqual(["Back", "cut two"]);
    expect(own.find(({ id }) => id === "bust-point")?.lines).toEqual(["your bust point"]);
    const { bustPointWidth: _width, sideNeckToBustPoint: _depth, ...measures } = measuresOf(testWork.tapes);
    const unmeasured = planOf({ ...testWork, tapes: tapesOf(measures) });
    expect(pieceLabels(unmeasured.left, places).find(({ id }) => id === "bust-point")?.lines).toEqual(["bust point"]);
  });
});
