/** Parts of a dress at true scale: cut by their allowances, notched with what they are sewn to, each half as it is worn. */
import { Point } from "@flatten-js/core";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  alsoCutBy,
  buttonRowOn,
  buttonsOnSkirt,
  markedWith,
  paperOf,
  printedParts,
  replacedPieces,
  sewnOnBodice,
  truePartsOf,
  type PartsAsked,
} from "../../../src/core/cutting/trueParts";
import type { TruePiece } from "../../../src/core/cutting/truePiece";
import { truePiecesOf, turnedOver } from "../../../src/core/cutting/truePieces";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { Dress } from "../../../src/core/decisions/dress";
import { STYLE_NAMES, type Closure, type StrapStyle, type StyleName } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { dressOf } from "../../../src/core/dress/dressOf";
import type { DressPlan } from "../../../src/core/dress/dressPlan";
import { edgePointAt, type EdgeCurve } from "../../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Part, PartGroup, PiecePart } from "../../../src/core/parts/part";
import { pointOf, type DartName, type Piece, type PieceName, type SeamName } from "../../../src/core/pattern/piece";
import { PIECE_ORDER } from "../../../src/core/pattern/pieceSet";
import { planOf as planOfWork } from "../../../src/core/plan/planOf";
import { invariant } from "../../../src/core/result";
import { dressOnPaper } from "../../../src/paper/request";
import { anyDressWork } from "../../support/arbitraryDress";
import { polygonOf } from "../../support/independent";
import { boxPiece } from "../../support/boxPiece";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { alike } from "../../support/halves";
import { planOf, testWork } from "../../support/works";

interface Dressed {
  readonly dress: DressPlan;
  /** Of the bodice, and all parts that are printed besides. */
  readonly bodice: readonly TruePiece[];
  readonly parts: readonly TruePiece[];
}

function dressed(work: Work): Dressed {
  const dress = dressOf(work);
  const plan = planOfWork(work);
  if (!dress.ok || !plan.ok) throw new Error(JSON.stringify(dress));
  const { parts } = dress.value;
  const { closure } = work.pattern;
  const allowances = work.allowances ?? {};
  const bodice = truePiecesOf(plan.value, {
    names: PIECE_ORDER,
    size: null,
    allowances,
    closure,
    ...markedWith(plan.value, parts),
  });
  const made = truePartsOf({
    parts,
    ids: printedParts(parts).map(({ id }) => id),
    allowances,
    closure,
    liningOpen: dressOnPaper(dress.value).liningOpen,
  });
  if (!bodice.ok || !made.ok) throw new Error(JSON.stringify([bodice, made]));
  return { dress: dress.value, bodice: bodice.value, parts: made.value };
}

const workOf = (style: StyleName, dress: Dress, more: Partial<Work> = {}): Work => ({
  ...testWork,
  ...more,
  pattern: { ...testWork.pattern, ...more.pattern, style, length: "hip" },
  dress,
});

const named = (pieces: readonly TruePiece[], key: string): TruePiece =>
  invariant(
    pieces.find((piece) => piece.key === key),
    `${key} among ${pieces.map((piece) => piece.key).join(", ")}`,
  );

/** How far a place lies from the cutting line, by flatten-js. */
function offCut({ cutting }: TruePiece, { x, y }: { readonly x: number; readonly y: number }): number {
  const [off] = polygonOf(cutting.map(({ at }) => at)).distanceTo(new Point(x, y));
  return off;
}

const STRAIGHT = workOf(
  "sideDart",
  { skirt: { kind: "straight", length: 600, hem: 42 }, lining: { bodice: true, skirt: true } },
  { allowances: { side: 22, waist: 12 } },
);

describe("parts of a dress at true scale", () => {
  const { bodice, parts } = dressed(STRAIGHT);

  it("are cut outside the stitch line by the allowance of each seam, the skirt's hem by its own, and on the fold by none", () => {
    const front = named(parts, "skirtFront");
    const middles = (seam: string): number[] =>
      front.seams
        .filter((run) => run.seam === seam)
        .flatMap(({ edges }) => edges.map((edge) => offCut(front, edgePointAt(edge, 0.5))));
    for (const [seam, allowance] of [
      ["side", 22],
      ["waist", 12],
      ["hem", 42],
    ] as const) {
      expect(middles(seam).length).toBeGreaterThan(0);
      for (const off of middles(seam)) expect(off).toBeCloseTo(allowance, 1);
    }
    for (const edge of front.fold) expect(offCut(front, edgePointAt(edge, 0.5))).toBeCloseTo(0, 2);
  });

  it("keep grain and title on the piece", () => {
    for (const piece of parts) {
      const polygon = polygonOf(piece.cutting.map(({ at }) => at));
      const { centre, width, height } = piece.title;
      for (const { x, y } of [
        ...piece.grain,
        { x: centre.x - width / 2, y: centre.y - height / 2 },
        { x: centre.x + width / 2, y: centre.y + height / 2 },
      ])
        expect(polygon.contains(new Point(x, y))).toBe(true);
    }
  });

  it("say what they belong to and what they are cut from", () => {
    expect(parts.map(({ key, part }) => [key, part?.group, part?.cloth])).toEqual([
      ["skirtFront", "skirt", "main"],
      ["skirtBack", "skirt", "main"],
      ["lining-front", "bodiceLining", "lining"],
      ["lining-back", "bodiceLining", "lining"],
      ["lining-skirtFront", "skirtLining", "lining"],
      ["lining-skirtBack", "skirtLining", "lining"],
    ]);
  });

  it("have the opening marked so far below the waist as it is left open, the lining's further down", () => {
    const endOn = (key: string): number => {
      const piece = named(parts, key);
      const end = invariant(
        piece.notches.find(({ kind }) => kind === "opening"),
        "end of the opening",
      );
      const top = Math.min(
        ...piece.seams
          .filter(({ seam }) => seam === "centre")
          .flatMap(({ edges }) => edges.flatMap(({ a, b }) => [a.y, b.y])),
      );
      return end.stitch.y - top;
    };
    expect(endOn("skirtBack")).toBeCloseTo(180, 0);
    // Usual: its V runs on below the zip's end.
    expect(endOn("lining-skirtBack")).toBeGreaterThan(180 + 15);
    expect(named(parts, "skirtFront").notches.some(({ kind }) => kind === "opening")).toBe(false);
  });

  it("have it marked on the lining of a basque too: 25 further down than on the shell, its seam left free of the zip", () => {
    const lined = (closure: Closure) =>
      dressed({
        ...testWork,
        pattern: { ...testWork.pattern, length: "hip", closure },
        dress: { lining: { bodice: true } },
      });
    const { bodice: shell, parts: lining } = lined({ place: "centreBack", belowWaist: 100 });
    const ends = (pieces: readonly TruePiece[]) =>
      pieces.flatMap(({ key, notches, seams }) => {
        const notch = notches.find(({ kind }) => kind === "opening");
        if (notch === undefined) return [];
        const run = seams.find(({ seam }) => seam === notch.seam);
        const top = Math.min(...(run?.edges.flatMap(({ a, b }) => [a.y, b.y]) ?? []));
        return [[key, notch.seam, run?.opens, Math.round(notch.stitch.y - top)]];
      });
    expect(ends(shell)).toEqual([["backBasque", "centre", "zip", 100]]);
    expect(ends(lining)).toEqual([["lining-backBasque", "centre", "free", 125]]);
    // A closure that ends at the waist leaves the lining free for a little all the same.
    const [[key, seam, opens] = []] = ends(lined({ place: "centreBack", belowWaist: 0 }).parts);
    expect([key, seam, opens]).toEqual(["lining-backBasque", "centre", "free"]);
  });

  it("meet the bodice at the waist by notches of one number", () => {
    const shared = (one: TruePiece, other: TruePiece): number[] =>
      one.notches
        .filter(({ kind, seam }) => kind === "seam" && seam === "waist")
        .map(({ number }) => number)
        .filter((number) => other.notches.some((notch) => notch.number === number && notch.seam === "waist"));
    expect(shared(named(bodice, "front"), named(parts, "skirtFront"))).not.toEqual([]);
    expect(shared(named(bodice, "back"), named(parts, "skirtBack"))).not.toEqual([]);
    expect(shared(named(parts, "lining-front"), named(parts, "lining-skirtFront"))).not.toEqual([]);
  });
});

describe("the vent of a skirt", () => {
  const foldsOf = ({ bodice, parts }: Pick<Dressed, "bodice" | "parts">) =>
    [...bodice, ...parts].flatMap(({ key, ventFold }) => (ventFold === null ? [] : [{ key, ventFold }]));
  const lined = { bodice: true, skirt: true };
  const vented = (vent: number, more: Partial<Work> = {}) =>
    dressed(workOf("sideDart", { skirt: { kind: "straight", length: 600, hem: 42, vent }, lining: lined }, more));

  it("is folded in on the centre back line, from so high above the hem as it was asked to start down over the hem allowance", () => {
    const made = vented(150);
    const found = foldsOf(made);
    expect(found.map(({ key }) => key)).toEqual(["skirtBack"]);
    const back = named(made.parts, "skirtBack");
    const hem = Math.max(...back.stitch.map(({ a }) => a.y));
    const [from, to] = invariant(found[0], "fold").ventFold;
    expect([from.x, to.x]).toEqual([0, expect.closeTo(0, 9)]);
    expect(from.y).toBeCloseTo(hem - 150, 9);
    expect(to.y).toBeCloseTo(hem + 42, 3);
    // The underlap lies beyond it, 50 wide.
    expect(Math.min(...back.stitch.map(({ a }) => a.x))).toBeCloseTo(-50, 9);
  });

  it("is folded in at its hem where the paper has no allowances", () => {
    const { dress } = vented(150);
    const made = truePartsOf({
      parts: dress.parts,
      ids: ["skirtBack"],
      allowances: null,
      closure: testWork.pattern.closure,
      liningOpen: null,
    });
    const back = named(made.ok ? made.value : [], "skirtBack");
    const [from, to] = invariant(back.ventFold, "fold");
    expect(to.y - from.y).toBeCloseTo(150, 6);
  });

  it("has a fold on the back of either half, and no other piece has one", () => {
    const uneven: Alteration = { kind: "fit", id: "a", fit: "sideSeamWaist", amount: 8, half: "left" };
    const { bodice, parts } = vented(100, { alterations: [uneven] });
    const backs = parts.filter(({ part, name }) => part?.group === "skirt" && name === "skirtBack");
    expect(backs.map(({ half }) => half)).toEqual(["left", "right"]);
    const [turned, own] = backs.map(({ ventFold }) => invariant(ventFold, "fold"));
    expect(turned?.map(({ y }) => y)).toEqual(own?.map(({ y }) => y));
    for (const { x } of [...(turned ?? []), ...(own ?? [])]) expect(Math.abs(x)).toBeLessThan(1e-6);
    expect(foldsOf({ bodice, parts })).toHaveLength(2);
  });

  it("is turned over with its piece", () => {
    const { parts } = vented(100);
    const aside = { ...named(parts, "skirtBack"), ventFold: [piecePoint(5, 10), piecePoint(7, 20)] as const };
    expect(turnedOver(aside).ventFold).toEqual([piecePoint(-5, 10), piecePoint(-7, 20)]);
  });

  it("has none where there is no vent", () => {
    expect(foldsOf(vented(0))).toEqual([]);
    expect(foldsOf(dressed(workOf("sideDart", { skirt: { kind: "aLine", length: 600 }, lining: lined })))).toEqual([]);
  });
});

describe("where a strap is sewn on", () => {
  const BESIDES: Dress = { edges: { neck: "facing" } };
  const strapped = (strap: StrapStyle, dress: Dress = BESIDES, alterations: readonly Alteration[] = []): Work => ({
    ...testWork,
    pattern: { ...testWork.pattern, style: "midriff", strap },
    dress,
    alterations: [...alterations],
  });
  const marksOn = ({ notches }: TruePiece) => notches.filter(({ kind }) => kind === "strap");
  const marked = (pieces: readonly TruePiece[]) => pieces.filter((piece) => marksOn(piece).length > 0);

  // As wide as the pattern's straps are sewn: 12 and 40.
  it.each([
    ["thin", 12],
    ["wide", 40],
  ] as const)("cup and back are marked in the middle of its %s end", (strap, width) => {
    const work = strapped(strap);
    const { bodice, parts } = dressed(work);
    expect(marked(bodice).map(({ key }) => key)).toEqual(["cup", "back"]);
    for (const name of ["cup", "back"] as const) {
      const piece = invariant(
        planOf(work).left.pieces.find((one) => one.name === name),
        name,
      );
      const [inner, outer] = [pointOf(piece, "strapInner"), pointOf(piece, "strapOuter")];
      const marks = marksOn(named(bodice, name));
      expect(marks).toHaveLength(1);
      for (const { stitch, cut } of marks) {
        for (const end of [inner, outer])
          expect(Math.hypot(stitch.x - end.x, stitch.y - end.y)).toBeCloseTo(width / 2, 6);
        expect(Math.abs(Math.hypot(inner.x - outer.x, inner.y - outer.y) - width)).toBeLessThan(1e-6);
        expect(offCut(named(bodice, name), cut)).toBeLessThan(0.01);
        // Square to its seam, over the allowance.
        expect((cut.x - stitch.x) * (outer.x - inner.x) + (cut.y - stitch.y) * (outer.y - inner.y)).toBeCloseTo(0, 4);
        expect(cut.y).toBeLessThan(stitch.y);
      }
    }
    // What is sewn to that edge shows it at the same place; a strap itself does not.
    expect(marked(parts).map(({ name }) => name)).toEqual(["frontFacing", "backFacing"]);
  });

  it("each half is marked for itself where a strap sits elsewhere on one of them", () => {
    const moved: Alteration = { kind: "fit", id: "a", fit: "strapPlace", amount: 6, half: "left" };
    const work = strapped("thin", {}, [moved]);
    const { bodice } = dressed(work);
    const plan = planOf(work);
    const places = marked(bodice).flatMap((piece) => {
      const [mark] = marksOn(piece);
      const half = invariant(piece.half, `a half of ${piece.key}`);
      const own = invariant(
        plan[half].pieces.find(({ name }) => name === piece.name),
        piece.key,
      );
      const [inner, outer] = [pointOf(own, "strapInner"), pointOf(own, "strapOuter")];
      expect(Math.abs(mark?.stitch.x ?? NaN)).toBeCloseTo((inner.x + outer.x) / 2, 6);
      expect(mark?.stitch.y).toBeCloseTo((inner.y + outer.y) / 2, 6);
      return [{ name: piece.name, x: Math.abs(mark?.stitch.x ?? NaN) }];
    });
    const cups = places.filter(({ name }) => name === "cup").map(({ x }) => x);
    expect(cups).toHaveLength(2);
    expect(Math.abs((cups[0] ?? 0) - (cups[1] ?? 0))).toBeGreaterThan(3);
  });

  it("a lining is marked as its shell is, and a bodice with shoulders not at all", () => {
    const { parts } = dressed(strapped("wide", { lining: { bodice: true } }));
    expect(marked(parts).map(({ key }) => key)).toEqual(["lining-cup", "lining-back"]);
    const { bodice } = dressed(workOf("princessShoulder", BESIDES));
    expect(marked(bodice)).toEqual([]);
  });
});

const CHORDS = 400;

/** How far a place on the stitch line lies from the upper or inner end of its seam, darts left out: by many chords. */
function alongSeam(piece: TruePiece, seam: string, at: { readonly x: number; readonly y: number }): number {
  const edges = piece.seams.filter((run) => run.seam === seam).flatMap((run) => run.edges);
  const isDown = ["side", "panel", "centre", "princess", "armhole"].includes(seam);
  const middle = (edge: EdgeCurve<"piece">): number =>
    isDown ? edgePointAt(edge, 0.5).y : Math.abs(edgePointAt(edge, 0.5).x);
  let [length, nearest, along] = [0, Infinity, 0];
  for (const edge of edges.toSorted((p, q) => middle(p) - middle(q))) {
    const isBack = isDown ? edge.a.y > edge.b.y : Math.abs(edge.a.x) > Math.abs(edge.b.x);
    let from = edgePointAt(edge, isBack ? 1 : 0);
    for (let i = 1; i <= CHORDS; i += 1) {
      const to = edgePointAt(edge, isBack ? 1 - i / CHORDS : i / CHORDS);
      const own = Math.hypot(to.x - from.x, to.y - from.y);
      const on = ((at.x - from.x) * (to.x - from.x) + (at.y - from.y) * (to.y - from.y)) / own;
      const held = Math.min(Math.max(on, 0), own);
      const off = Math.hypot(
        from.x + ((to.x - from.x) * held) / own - at.x,
        from.y + ((to.y - from.y) * held) / own - at.y,
      );
      if (off < nearest) [nearest, along] = [off, length + held];
      length += own;
      from = to;
    }
  }
  if (nearest < 1) return along;
  throw new Error(`no such place on ${piece.key}: ${seam}`);
}

describe("notches of any dress", () => {
  it("meet: two pieces have each number, equally far along the seam", () => {
    fc.assert(
      fc.property(anyDressWork, (work) => {
        const plan = planOfWork(work);
        fc.pre(plan.ok && work.dress?.skirt !== undefined && ["aLine", "straight"].includes(work.dress.skirt.kind));
        const { dress, parts } = dressed(work);
        fc.pre(dress.skirt?.ok === true);
        const panels = parts.filter(({ part }) => part?.group === "skirt");
        const halves = panels.some(({ half }) => half !== null) ? (["left", "right"] as const) : ([null] as const);
        for (const half of halves) {
          const own = panels.filter((piece) => piece.half === half || piece.half === null);
          for (const seam of ["side", "panel"] as const) {
            const found = new Map<number, number[]>();
            for (const piece of own)
              for (const notch of piece.notches.filter((one) => one.kind === "seam" && one.seam === seam)) {
                const along = alongSeam(piece, seam, notch.stitch);
                found.set(notch.number, [...(found.get(notch.number) ?? []), along]);
              }
            for (const places of found.values()) {
              expect(places).toHaveLength(2);
              expect(Math.abs((places[0] ?? 0) - (places[1] ?? 0))).toBeLessThan(3);
            }
          }
        }
      }),
      { numRuns: 30 },
    );
  });
});

/** Pieces that are walked one after the other, from the centre outwards. */
const CHAINS: readonly (readonly [PieceName, PieceName])[] = [
  ["centreFront", "sideFront"],
  ["skirtFront", "skirtSideFront"],
  ["skirtBack", "skirtSideBack"],
];

const seamLength = (piece: TruePiece, seam: string): number =>
  piece.seams
    .filter((run) => run.seam === seam)
    .flatMap(({ edges }) => edges)
    .reduce((sum, edge) => {
      const at = Array.from({ length: CHORDS + 1 }, (_, i) => edgePointAt(edge, i / CHORDS));
      return at.slice(1).reduce((own, to, i) => own + Math.hypot(to.x - (at[i]?.x ?? 0), to.y - (at[i]?.y ?? 0)), sum);
    }, 0);

interface Numbered {
  readonly key: string;
  readonly seam: string;
  readonly along: number;
}

/** What is wrong with the numbers of one layer: each is to stand on two pieces, on one seam, equally far along. */
function unmet(layer: readonly TruePiece[]): readonly string[] {
  const found = new Map<number, Numbered[]>();
  for (const piece of layer)
    for (const { kind, number, seam, stitch } of piece.notches) {
      if (kind !== "seam") continue;
      const inner = CHAINS.find(([, outer]) => outer === piece.name && seam !== "princess" && seam !== "panel")?.[0];
      const before = layer.filter(({ name }) => name === inner).reduce((sum, one) => sum + seamLength(one, seam), 0);
      const along = before + alongSeam(piece, seam, stitch);
      found.set(number, [...(found.get(number) ?? []), { key: piece.key, seam, along }]);
    }
  return [...found].flatMap(([number, [one, other, ...more]]) => {
    const said = `${number}: ${[one, other, ...more].map((at) => `${at?.key} ${at?.seam} ${at?.along.toFixed(1)}`).join(", ")}`;
    if (one === undefined || other === undefined || more.length > 0 || one.seam !== other.seam) return [said];
    // What is eased in is spread over a shoulder, and left out about the bust.
    const most = one.seam === "shoulder" || one.seam === "princess" ? 6 : 0.5;
    return Math.abs(one.along - other.along) < most ? [] : [said];
  });
}

describe("notches of every kind of dress", () => {
  const UNEVEN: Alteration = { kind: "fit", id: "a", fit: "sideSeamWaist", amount: 8, half: "left" };
  const moved = (name: DartName, by: number): Alteration => ({
    kind: "dartPlace",
    id: "a",
    dart: { piece: "front", dart: name },
    by,
    how: "redraw",
    giveBack: {},
    half: "right",
  });
  // The pieces about a dart that was moved on one half are alike on both: back, basque and skirt.
  const [DART_MOVED, WAIST_DART_MOVED] = [moved("sideDart", -30), moved("waistDart", -20)];
  const FACED: Dress = { edges: { facingDepth: 50 } };
  it.each<[string, Dress]>([
    ["nothing but the bodice", {}],
    ["facings", FACED],
    ["a lining", { lining: { bodice: true } }],
    ["a lining and facings", { ...FACED, lining: { bodice: true } }],
    ["a straight skirt", { skirt: { kind: "straight", length: 600 } }],
    [
      "a straight skirt, all lined",
      { skirt: { kind: "straight", length: 600 }, lining: { bodice: true, skirt: true } },
    ],
    [
      "a skirt of two panels, its lining on the bodice",
      { skirt: { kind: "aLine", length: 600 }, lining: { skirt: true } },
    ],
    ["one of six", { skirt: { kind: "aLine", panels: 6, length: 600 }, lining: { skirt: true } }],
    ["a gathered skirt", { skirt: { kind: "gathered", length: 600 } }],
    [
      "a gathered skirt with a lining on the bodice",
      { skirt: { kind: "gathered", length: 600 }, lining: { skirt: true } },
    ],
    ["a circle", { skirt: { kind: "circle", length: 600 } }],
  ])("meet: %s", (_, dress) => {
    for (const style of STYLE_NAMES)
      for (const alterations of [[], [UNEVEN], [style === "sideDart" ? DART_MOVED : WAIST_DART_MOVED]]) {
        const work = workOf(style, dress, { alterations });
        const { bodice, parts, dress: made } = dressed(work);
        const plan = planOfWork(work);
        if (!plan.ok) throw new Error("plan");
        const replaced = replacedPieces(plan.value, made.parts);
        const shell = bodice.filter(({ name }) => !replaced.includes(name));
        const isLining = ({ part }: TruePiece): boolean => part?.cloth === "lining";
        const linings = parts.filter(isLining);
        // A lining that hangs on the bodice meets it there; what the bodice has besides is met by the shell.
        const waists = new Set(
          linings.flatMap(({ notches }) => notches.map(({ seam, number }) => `${seam} ${number}`)),
        );
        const isMet = ({ seam, number }: { readonly seam: string; readonly number: number }): boolean =>
          seam === "waist" && waists.has(`${seam} ${number}`);
        const hung = bodice
          .filter(({ name }) => !name.endsWith("Basque"))
          .map((piece) => ({ ...piece, notches: piece.notches.filter(isMet) }));
        const isHung = dress.lining?.skirt === true && dress.lining.bodice !== true;
        const layers = [
          [
            ...shell,
            ...parts.filter((piece) => !isLining(piece)),
            ...(isHung && dress.skirt?.kind === "gathered" ? linings : []),
          ],
          [
            ...linings,
            ...shell.filter(({ key }) => alsoCutBy(made.parts, key).includes("lining")),
            ...(isHung ? hung : []),
          ],
        ];
        for (const one of ["left", "right"] as const)
          for (const layer of layers) {
            const on = layer.filter((piece) => piece.half === null || piece.half === one);
            expect([style, one, unmet(on)]).toEqual([style, one, []]);
          }
      }
  });
});

describe("what is printed of a dress", () => {
  it("leaves out what the dress has something else for, and what is cut by another's paper", () => {
    const { dress } = dressed(
      workOf("princessArmhole", { skirt: { kind: "gathered" }, edges: { neck: "facing", armhole: "facing" } }),
    );
    const plan = planOfWork(workOf("princessArmhole", {}));
    if (!plan.ok) throw new Error("plan");
    expect(replacedPieces(plan.value, dress.parts)).toEqual(["frontBasque", "backBasque"]);
    expect(printedParts(dress.parts).map(({ group }) => group)).toEqual(["facing", "facing"]);
    expect(alsoCutBy(dress.parts, "frontFacing")).toEqual(["interfacing"]);
    expect(alsoCutBy(dress.parts, "back")).toEqual([]);
  });

  it("keeps the basque where no skirt hangs", () => {
    const work = workOf("sideDart", { lining: { bodice: true } });
    const plan = planOfWork(work);
    if (!plan.ok) throw new Error("plan");
    expect(replacedPieces(plan.value, dressed(work).dress.parts)).toEqual([]);
  });
});

describe("buttons down a dress", () => {
  it.each([
    ["waist", "aLine"],
    ["hip", "aLine"],
    ["waist", "gathered"],
    ["hip", "gathered"],
    ["hip", "circle"],
  ] as const)("are as many as are bought, evenly to the end of the opening: %s, %s", (length, kind) => {
    const { style } = testWork.pattern;
    const closure: Closure = { place: "centreBack", belowWaist: 180, buttons: 9 };
    const work: Work = {
      ...testWork,
      pattern: { ...testWork.pattern, style, length, closure },
      dress: { skirt: { kind, length: 600 } },
    };
    const { dress, bodice, parts } = dressed(work);
    const plan = planOfWork(work);
    if (!plan.ok) throw new Error("plan");
    const on = (piece: TruePiece | undefined) =>
      piece?.drills.flatMap(({ what, at }) => (what === "button" ? [alongSeam(piece, "centre", at)] : [])) ?? [];
    const back = named(bodice, "back");
    const waist = alongSeam(back, "centre", {
      x: 0,
      y: Math.max(...back.centreSeam.map(({ a, b }) => Math.max(a.y, b.y))),
    });
    const below = kind === "aLine" ? on(named(parts, "skirtBack")) : buttonsOnSkirt(plan.value, dress.parts, closure);
    const along = [...on(back), ...below.map((at) => at + waist)];
    expect(along).toHaveLength(9);
    // 18 cm have room for at least one of nine, which are spread over some 60 cm.
    expect(below.length).toBeGreaterThan(0);
    // From 12 mm below the neck, or some more where one would come on the waist seam, and as much above the end.
    const spacing = ((along[8] ?? 0) - (along[0] ?? 0)) / 8;
    along.forEach((at, index) => expect(at - (along[0] ?? 0)).toBeCloseTo(index * spacing, 0));
    const ends = (along[0] ?? 0) + waist + 180 - (along[8] ?? 0);
    expect(ends).toBeGreaterThan(23.5);
    expect(ends).toBeLessThan(24 + 2 * 16);
    expect(buttonRowOn(plan.value, dress.parts, closure)?.spacing).toBeCloseTo(spacing, 0);
    expect(dress.notions.filter(({ what }) => what === "buttons").map(({ count }) => count)).toEqual([9]);
    // Nothing else that the dress is cut from is buttoned.
    const others = [...bodice, ...parts].filter(({ name }) => !name.endsWith("Basque") && name !== "back");
    expect(others.filter((piece) => on(piece).length > 0).map(({ key }) => key)).toEqual(
      kind === "aLine" ? ["skirtBack"] : [],
    );
  });
});

describe("parts of halves that differ", () => {
  const { bodice, parts } = dressed({
    ...workOf("sideDart", { skirt: { kind: "straight", length: 600 }, lining: { bodice: true, skirt: true } }),
    alterations: [{ kind: "fit", id: "a", fit: "sideSeamWaist", amount: 8, half: "left" }],
  });
  const side = (piece: TruePiece): number => Math.sign(piece.cutting.reduce((sum, { at }) => sum + at.x, 0));

  it("are printed for each half: the shell as it is seen, and what looks at the body turned over", () => {
    expect(side(named(bodice, "front-left"))).toBe(1);
    expect(side(named(parts, "skirtFront-left"))).toBe(1);
    expect(side(named(parts, "skirtFront-right"))).toBe(-1);
    expect(side(named(parts, "skirtBack-left"))).toBe(-1);
    expect(side(named(parts, "lining-front-left"))).toBe(-1);
    expect(side(named(parts, "lining-skirtFront-right"))).toBe(1);
  });

  it("facings look at the body too", () => {
    const faced = dressed({
      ...workOf("sideDart", { edges: { facingDepth: 50 } }),
      alterations: [{ kind: "fit", id: "a", fit: "shoulderSlope", amount: 6, half: "left" }],
    });
    expect(side(named(faced.bodice, "front-left"))).toBe(1);
    expect(side(named(faced.parts, "frontFacing-left"))).toBe(-1);
    expect(side(named(faced.parts, "frontFacing-right"))).toBe(1);
  });

  it("and a lining on the shell's own lines is drawn for itself, since the shell's paper would cut the other half", () => {
    const lined = dressed({
      ...workOf("sideDart", { lining: { bodice: true } }),
      alterations: [{ kind: "fit", id: "a", fit: "sideSeamWaist", amount: 8, half: "left" }],
    });
    // A lining hangs with its right side to the body: what is for her left half is drawn as the shell of her right one.
    for (const half of ["left", "right"] as const) {
      const [shell, lining] = [
        named(lined.bodice, `frontBasque-${half}`),
        named(lined.parts, `lining-frontBasque-${half}`),
      ];
      expect([side(shell), side(lining)]).toEqual(half === "left" ? [1, -1] : [-1, 1]);
      expect(alsoCutBy(lined.dress.parts, shell.key)).toEqual([]);
    }
  });

  it("are cut once each, and have keys unlike any other", () => {
    const keys = [...bodice, ...parts].map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { half, cut } of parts) expect(cut.count).toBe(half === null && !cut.onFold ? 2 : 1);
  });
});

const close = (value: number): unknown => expect.closeTo(value, 6);
const ZIP: Closure = { place: "side", belowWaist: 0 };

const part = (key: string, group: PartGroup, piece: Piece, more: Partial<PiecePart> = {}): PiecePart => ({
  kind: "piece",
  key,
  group,
  cloth: "main",
  cut: { onFold: false, count: 2 },
  half: null,
  grain: "along",
  piece,
  ...more,
});
const lower = (name: PieceName, width: number, height: number): Piece =>
  boxPiece(name, width, height, ["waist", "hem"]);
const strap = boxPiece("strap", 20, 300);

describe("parts made by hand that are printed", () => {
  const left = { half: "left", cut: { onFold: false, count: 1 } } as const;
  const right = { half: "right", cut: { onFold: false, count: 1 } } as const;
  const skirt = [
    part("skirtFront-left", "skirt", lower("skirtFront", 250, 600), left),
    part("skirtFront-right", "skirt", lower("skirtFront", 260, 600), right),
  ];
  const facing = part("frontFacing", "facing", boxPiece("frontFacing", 100, 50));
  const parts: readonly Part[] = [
    facing,
    part("front", "bodice", boxPiece("front", 240, 400)),
    part("strap", "strap", strap),
    part("strap-left", "strap", boxPiece("strap", 21, 300), left),
    part("new-strap", "strap", boxPiece("strap", 22, 300)),
    part("bound", "binding", boxPiece("front", 30, 400)),
    part("lining-front", "bodiceLining", boxPiece("front", 230, 390), { cloth: "lining" }),
    part("stiff", "facing", boxPiece("frontFacing", 100, 50), { cloth: "interfacing" }),
    part("stiffer", "facing", boxPiece("frontFacing", 100, 50), { cloth: "interfacing" }),
    ...skirt,
  ];

  it("are none of the bodice, none that another's paper cuts, both halves together, in the order of groups", () => {
    expect(printedParts(parts)).toEqual([
      { id: "skirtFront", group: "skirt", name: "skirtFront", cloth: "main", halves: skirt },
      {
        id: "lining-front",
        group: "bodiceLining",
        name: "front",
        cloth: "lining",
        halves: parts.filter(({ key }) => key === "lining-front"),
      },
      { id: "frontFacing", group: "facing", name: "frontFacing", cloth: "main", halves: [facing] },
      {
        id: "new-strap",
        group: "strap",
        name: "strap",
        cloth: "main",
        halves: parts.filter(({ key }) => key === "new-strap"),
      },
    ]);
    expect([alsoCutBy(parts, "frontFacing"), alsoCutBy(parts, "stiff"), alsoCutBy(parts, "front")]).toEqual([
      ["interfacing"],
      [],
      [],
    ]);
    // The same outline for the other half is no part of it.
    const other = [
      ...parts,
      part("stiff-left", "facing", boxPiece("frontFacing", 100, 50), { ...left, cloth: "lining" }),
    ];
    expect(alsoCutBy(other, "frontFacing")).toEqual(["interfacing"]);
  });

  it("are drawn for themselves where they look at the body and the halves differ, and else cut by the shell's paper", () => {
    const basque = lower("frontBasque", 250, 200);
    const both = (half: "left" | "right" | null): readonly Part[] => {
      const more = half === null ? {} : { half, cut: { onFold: false, count: 1 } };
      const end = half === null ? "" : `-${half}`;
      return [
        part(`frontBasque${end}`, "bodice", basque, more),
        part(`lining-frontBasque${end}`, "bodiceLining", basque, { ...more, cloth: "lining" }),
        part(`frontBasque-underlining${end}`, "underlining", basque, { ...more, cloth: "underlining" }),
      ];
    };
    expect(printedParts(both(null))).toEqual([]);
    expect(alsoCutBy(both(null), "frontBasque")).toEqual(["lining", "underlining"]);
    const differing = [...both("left"), ...both("right")];
    expect(printedParts(differing).map(({ id, halves }) => [id, halves.map(({ key }) => key)])).toEqual([
      ["lining-frontBasque", ["lining-frontBasque-left", "lining-frontBasque-right"]],
    ]);
    // An underlining lies against the shell, the same way up.
    expect(alsoCutBy(differing, "frontBasque-left")).toEqual(["underlining"]);
  });

  it("are drawn for themselves where the paper that would cut them is not printed, with what belongs to them", () => {
    const [front, back] = [boxPiece("front", 240, 400), boxPiece("back", 230, 400)];
    const some: readonly Part[] = [
      part("front", "bodice", front),
      part("back", "bodice", back),
      part("lining-front", "bodiceLining", front, { cloth: "lining" }),
      part("lining-back", "bodiceLining", back, { cloth: "lining" }),
      facing,
      part("stiff", "facing", boxPiece("frontFacing", 100, 50), { cloth: "interfacing" }),
    ];
    const printed = (...ids: readonly string[]) => printedParts(some, (id) => ids.includes(id)).map(({ id }) => id);
    expect(printed("front", "back", "frontFacing")).toEqual(["frontFacing"]);
    expect(printed("front", "frontFacing")).toEqual(["lining-back", "frontFacing"]);
    // An interfacing is none without its facing.
    expect(printed()).toEqual(["lining-front", "lining-back", "frontFacing"]);
    const made = (ids: readonly string[], pieces?: readonly PieceName[]) => {
      const asked = { parts: some, ids, allowances: {}, closure: ZIP, liningOpen: null };
      const found = truePartsOf(pieces === undefined ? asked : { ...asked, pieces });
      return found.ok ? found.value.map(({ key }) => key) : [];
    };
    const linings = ["lining-front", "lining-back"];
    expect(made(linings, [])).toEqual(linings);
    expect(made(linings, ["front"])).toEqual(["lining-back"]);
    expect(made(linings)).toEqual([]);
    expect([paperOf(some, "lining-back"), paperOf(some, "stiff"), paperOf(some, "front")]).toEqual([
      "back",
      "frontFacing",
      "front",
    ]);
  });

  it("leave out of the plan what neither bodice nor straps are cut by", () => {
    const plan = alike(planOf(testWork), { pieces: [boxPiece("front", 240, 400), boxPiece("back", 240, 400), strap] });
    expect(replacedPieces(plan, parts)).toEqual(["back"]);
    expect(replacedPieces(plan, [part("back", "bodiceLining", boxPiece("back", 240, 400))])).toEqual([
      "front",
      "back",
      "strap",
    ]);
  });

  it("are sewn to the bodice: a skirt, or its lining where no lined bodice has it, and facings", () => {
    const [whole, lining] = [lower("skirtFront", 250, 600), lower("skirtFront", 240, 580)];
    const skirtPart = part("skirtFront", "skirt", whole);
    const skirtLining = part("lining-skirtFront", "skirtLining", lining);
    const bodiceLining = part("lining-front", "bodiceLining", boxPiece("front", 230, 390));
    const sewn = (...some: readonly Part[]) => sewnOnBodice(some)[0];
    expect(sewn(skirtPart, skirtLining, facing)).toEqual({ skirtFront: whole, frontFacing: facing.piece });
    expect(sewn(skirtLining, facing)).toEqual({ skirtFront: lining, frontFacing: facing.piece });
    expect(sewn(skirtLining, bodiceLining, facing)).toEqual({ frontFacing: facing.piece });
    // Of two layers the first.
    expect(sewn(skirtPart, part("overlay", "skirt", lining))).toEqual({ skirtFront: whole });
    const [one, other] = sewnOnBodice([skirtPart, facing]);
    expect(other).toBe(one);
    expect(sewnOnBodice([...skirt, facing])).toEqual([
      { skirtFront: skirt[0]?.piece, frontFacing: facing.piece },
      { skirtFront: skirt[1]?.piece, frontFacing: facing.piece },
    ]);
    // Halves that differ elsewhere are no matter.
    const [here, there] = sewnOnBodice([skirtPart, part("front-left", "bodice", boxPiece("front", 240, 400), left)]);
    expect(there).toBe(here);
  });
});

describe("parts made by hand at true scale", () => {
  const one = { onFold: false, count: 1 } as const;
  const made = (parts: readonly Part[], more: Partial<PartsAsked> = {}): readonly TruePiece[] => {
    const asked = {
      parts,
      ids: printedParts(parts).map(({ id }) => id),
      allowances: {},
      closure: ZIP,
      liningOpen: null,
    };
    const found = truePartsOf({ ...asked, ...more });
    if (!found.ok) throw new Error(JSON.stringify(found.failure));
    return found.value;
  };
  const notchesOn = (pieces: readonly TruePiece[], kind: string, seam: SeamName) =>
    pieces.map(({ key, notches }) => [
      key,
      notches.filter((notch) => notch.kind === kind && notch.seam === seam).map(({ stitch }) => stitch.y),
    ]);

  it("are notched half by half", () => {
    const halves = (["left", "right"] as const).flatMap((half, index) =>
      (["skirtFront", "skirtBack"] as const).map((name) =>
        part(`${name}-${half}`, "skirt", lower(name, 250, 300 + 100 * index), { half, cut: one }),
      ),
    );
    const [left, right] = [
      [90, 192],
      [120, 256],
    ];
    // 0.3 and 0.64 of 300 on the left, of 400 on the right.
    expect(notchesOn(made(halves), "seam", "side")).toEqual([
      ["skirtFront-left", left.map(close)],
      ["skirtFront-right", right.map(close)],
      ["skirtBack-left", left.map(close)],
      ["skirtBack-right", right.map(close)],
    ]);
    // Fronts are drawn as the left half, backs as the right one.
    expect(made(halves).map(({ cutting }) => Math.sign(cutting.reduce((sum, { at }) => sum + at.x, 0)))).toEqual([
      1, -1, -1, 1,
    ]);
  });

  it("of a lining open as far as that is left free, its seams free there; the shell with its zip", () => {
    const parts = [
      part("skirtFront", "skirt", lower("skirtFront", 250, 600)),
      part("lining-front", "bodiceLining", boxPiece("front", 240, 390)),
      part("lining-skirtFront", "skirtLining", lower("skirtFront", 240, 580)),
    ];
    const pieces = made(parts, { closure: { place: "side", belowWaist: 180 }, liningOpen: 200 });
    expect(notchesOn(pieces, "opening", "side")).toEqual([
      ["skirtFront", [close(180)]],
      ["lining-front", []],
      ["lining-skirtFront", [close(200)]],
    ]);
    const opens = (some: readonly TruePiece[]) =>
      some.map(({ seams }) => seams.filter((run) => run.opens !== null).map((run) => `${run.seam} ${run.opens}`));
    expect(opens(pieces)).toEqual([["side zip"], ["side free"], ["side free"]]);
    expect(opens(made(parts, { closure: { place: "side", belowWaist: 180 } }))).toEqual([
      ["side zip"],
      ["side free"],
      [],
    ]);
    expect(pieces.map(({ number, part: of, also }) => [number, of, also])).toEqual([
      [[1, 3], { group: "skirt", cloth: "main" }, []],
      [[2, 3], { group: "bodiceLining", cloth: "main" }, []],
      [[3, 3], { group: "skirtLining", cloth: "main" }, []],
    ]);
    expect(made(parts, { ids: ["lining-front"] }).map(({ key, number }) => [key, number])).toEqual([
      ["lining-front", [1, 1]],
    ]);
  });

  it("meet what they are sewn to: the shell the shell, a lining the lining, or the bodice that has none", () => {
    const waists = (...parts: readonly Part[]) =>
      notchesOn(made(parts), "seam", "waist").map(([key, at]) => [key, at?.length]);
    const bodice = part("front", "bodice", boxPiece("front", 250, 400));
    const bodiceLining = part("lining-front", "bodiceLining", boxPiece("front", 240, 390));
    const skirtLining = part("lining-skirtFront", "skirtLining", lower("skirtFront", 240, 580));
    const skirt = part("skirtFront", "skirt", lower("skirtFront", 250, 600));
    expect(waists(bodice, skirt, bodiceLining, skirtLining)).toEqual([
      ["skirtFront", 1],
      ["lining-front", 1],
      ["lining-skirtFront", 1],
    ]);
    expect(waists(bodice, skirtLining)).toEqual([["lining-skirtFront", 1]]);
    expect(waists(bodiceLining)).toEqual([["lining-front", 0]]);
    expect(waists(skirt, bodiceLining)).toEqual([
      ["skirtFront", 0],
      ["lining-front", 0],
    ]);
    const facing = part("frontFacing", "facing", boxPiece("frontFacing", 250, 60, ["neck", "edge"]));
    expect(notchesOn(made([bodice, facing]), "seam", "neck")).toEqual([["frontFacing", [close(0)]]]);
    expect(notchesOn(made([facing]), "seam", "neck")).toEqual([["frontFacing", []]]);
  });

  it("are drawn for each half where no notch can meet both halves' partners, still cut by one paper with what they cut", () => {
    const darted = (at: number): Piece =>
      cornerPiece({
        name: "skirtFront",
        corners: [
          ["centreNeck", 0, 0, "waist"],
          ["underarm", 250, 0, "side"],
          ["sideDartInner", 250, at, "side", "sideDart"],
          ["sideDartOuter", 250, at + 20, "side"],
          ["sideWaist", 250, 120, "hem"],
          ["centreWaist", 0, 120, "centre"],
        ],
        inside: { sideDartApex: [150, at + 10] },
        darts: [dartFor("sideDart", "side")],
      });
    const some = [
      part("skirtFront-left", "skirt", darted(30), { half: "left", cut: one }),
      part("skirtFront-right", "skirt", darted(64), { half: "right", cut: one }),
      part("skirtBack", "skirt", lower("skirtBack", 250, 100)),
      part("skirtBack-under", "underlining", lower("skirtBack", 250, 100), { cloth: "underlining" }),
    ];
    // As reckoned for notches by themselves: 48 beside a dart at 30, 42 beside one at 64.
    const backs = made(some).filter(({ name }) => name === "skirtBack");
    expect(notchesOn(backs, "seam", "side")).toEqual([
      ["skirtBack-left", [close(48)]],
      ["skirtBack-right", [close(42)]],
    ]);
    expect(backs.map(({ cut, half, also }) => [cut.count, half, also])).toEqual([
      [1, "left", ["underlining"]],
      [1, "right", ["underlining"]],
    ]);
    expect(alsoCutBy(some, "skirtBack-right")).toEqual(["underlining"]);
  });

  it("have the buttons that go on below the bodice; a skirt of one outline is drawn for each half where these differ", () => {
    const buttoned: Closure = { place: "centreBack", belowWaist: 150, buttons: 6 };
    const skirtBack = part("skirtBack", "skirt", lower("skirtBack", 250, 600));
    const on = (...backs: readonly Part[]) =>
      made([...backs, skirtBack], { closure: buttoned }).map(({ key, cut, drills }) => [
        key,
        cut.count,
        drills.map(({ at }) => at.y),
      ]);
    // 400 + 150 less 2 × 12, in five parts of 105.2.
    expect(on(part("back", "bodice", boxPiece("back", 240, 400)))).toEqual([
      ["skirtBack", 2, [close(32.8), close(138)]],
    ]);
    // 390 + 150 on the right half, in five parts of 103.2: there the fifth stands at 424.8.
    const halves = (["left", "right"] as const).map((half, index) =>
      part(`back-${half}`, "bodice", boxPiece("back", 240, 400 - 10 * index), { half, cut: one }),
    );
    expect(on(...halves)).toEqual([
      ["skirtBack-left", 1, [close(32.8), close(138)]],
      ["skirtBack-right", 1, [close(34.8), close(138)]],
    ]);
  });

  it("are cut by her allowances and their own, or along the stitch line", () => {
    const parts = [part("skirtFront", "skirt", lower("skirtFront", 250, 600), { allowances: { hem: 40 } })];
    const boundsOf = ([piece]: readonly TruePiece[]) => {
      const [xs, ys] = [piece?.cutting.map(({ at }) => at.x) ?? [], piece?.cutting.map(({ at }) => at.y) ?? []];
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(
        (value) => Math.round(value * 10) / 10 + 0,
      );
    };
    expect(boundsOf(made(parts, { allowances: { side: 20, waist: 10, centre: 12, hem: 25 } }))).toEqual([
      -12, -10, 270, 640,
    ]);
    expect(boundsOf(made(parts, { allowances: null }))).toEqual([0, 0, 250, 600]);
  });

  it("are refused by name where an outline crosses itself", () => {
    const crossed = cornerPiece({
      name: "skirtBack",
      corners: [
        ["centreNeck", 0, 0, "waist"],
        ["underarm", 100, 0, "side"],
        ["centreWaist", 0, 100, "hem"],
        ["sideWaist", 100, 100, "centre"],
      ],
    });
    const parts = [part("skirtBack-right", "skirt", crossed, { half: "right", cut: one })];
    expect(truePartsOf({ parts, ids: ["skirtBack"], allowances: {}, closure: ZIP, liningOpen: null })).toEqual({
      ok: false,
      failure: { code: "paper/outline-refused", piece: "skirtBack", half: "right" },
    });
  });
});
