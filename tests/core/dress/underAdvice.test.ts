/** What goes under a cloth that shows through. Common practice, no source: the cases are reasoned by hand. */
import { describe, expect, it } from "vitest";
import type { Dress } from "../../../src/core/decisions/dress";
import { underAdvice, underliningParts } from "../../../src/core/dress/underAdvice";
import type { Part } from "../../../src/core/parts/part";
import { piecesOf, setOf } from "../../../src/core/pattern/pieceSet";
import { isBasque } from "../../../src/core/pattern/pieceGroups";
import type { StyleName } from "../../../src/core/decisions/pattern";
import { planOf, testWork } from "../../support/works";

const bodice = (style: StyleName) =>
  setOf(
    planOf({ ...testWork, pattern: { ...testWork.pattern, style } }).left.pieces.filter(({ name }) => !isBasque(name)),
  );
const [princess, darted] = [bodice("princessArmhole"), bodice("sideDart")];

const advice = (dress: Dress, of = princess) => underAdvice(dress, of);

describe("what is recommended", () => {
  it.each([
    ["nothing is said", {}, "nothing"],
    ["it is opaque", { opacity: "opaque", skirt: { kind: "circle" } }, "nothing"],
    ["shapes show", { opacity: "sheer", skirt: { kind: "tiers" } }, "lining"],
    ["all shows of a straight skirt", { opacity: "clear", skirt: { kind: "straight" } }, "underlining"],
    ["all shows of a peplum", { opacity: "clear", skirt: { kind: "peplum" } }, "underlining"],
    ["all shows of a bodice", { opacity: "clear" }, "underlining"],
    ["all shows, fitted", { opacity: "clear", skirt: { kind: "aLine" } }, "underlining"],
    ["all shows, and it is full", { opacity: "clear", skirt: { kind: "gathered" } }, "slip"],
  ] as const)("where %s", (_, dress, under) => {
    expect(advice(dress)).toMatchObject({ recommended: under, chosen: under });
  });

  it("what she chose goes before, and a lining is told where it is not there yet", () => {
    const sheer: Dress = { opacity: "sheer", under: "slip" };
    expect(advice(sheer)).toMatchObject({ recommended: "lining", chosen: "slip", isThere: true });
    expect(advice({ opacity: "sheer" })).toMatchObject({ chosen: "lining", isThere: false });
    expect(advice({ opacity: "sheer", lining: { bodice: true } }).isThere).toBe(true);
    expect(advice({ opacity: "sheer", lining: { bodice: false } }).isThere).toBe(false);
    expect(advice({ opacity: "sheer", lining: { skirt: true } }).isThere).toBe(true);
  });
});

describe("what shows", () => {
  it("is nothing in an opaque cloth", () => {
    expect(advice({ skirt: { kind: "circle" } }).showing).toEqual([]);
  });

  it("is each seam that is there, and how it is finished", () => {
    const { showing, finishes } = advice({ opacity: "sheer", under: "slip", skirt: { kind: "circle" } });
    expect(showing).toEqual(["side", "princess", "darts", "waist", "hem", "edges"]);
    expect(finishes).toContainEqual({ of: "side", by: "frenchSeam" });
    expect(finishes).toContainEqual({ of: "hem", by: "narrowHem" });
    expect(finishes.map(({ of }) => of)).toEqual(showing);
  });

  it("is no seam that is not there", () => {
    expect(advice({ opacity: "sheer" }, darted).showing).toEqual(["side", "darts", "edges"]);
    const plain = setOf(piecesOf(darted).map((piece) => ({ ...piece, darts: [] })));
    expect(advice({ opacity: "sheer" }, plain).showing).toEqual(["side", "edges"]);
  });

  it("is waist and hem where a skirt or a basque hangs there", () => {
    const basqued = setOf(planOf({ ...testWork, pattern: { ...testWork.pattern, style: "midriff" } }).left.pieces);
    expect(advice({ opacity: "sheer" }, basqued).showing).toEqual(["side", "darts", "waist", "hem", "edges"]);
    expect(advice({ opacity: "sheer", skirt: { kind: "circle" } }, darted).showing).toEqual([
      "side",
      "darts",
      "waist",
      "hem",
      "edges",
    ]);
  });

  it("is finished each in its own way", () => {
    expect(advice({ opacity: "sheer", under: "slip", skirt: { kind: "circle" } }).finishes).toEqual([
      { of: "side", by: "frenchSeam" },
      { of: "princess", by: "narrow" },
      { of: "darts", by: "narrow" },
      { of: "waist", by: "bound" },
      { of: "hem", by: "narrowHem" },
      { of: "edges", by: "binding" },
    ]);
  });

  it("a lining of the bodice takes its edges, an underlining hides what is fitted", () => {
    const lined: Dress = { opacity: "sheer", lining: { bodice: true }, skirt: { kind: "tiers" } };
    expect(advice(lined).showing).not.toContain("edges");
    expect(advice({ opacity: "clear", skirt: { kind: "straight" } }).showing).toEqual(["hem"]);
    expect(advice({ opacity: "clear", under: "underlining", skirt: { kind: "tiers" } }).showing).toEqual([
      "side",
      "hem",
    ]);
  });
});

describe("underlining", () => {
  const part = (key: string, group: Part["group"], cloth: Part["cloth"]): Part => ({
    kind: "piece",
    key,
    group,
    cloth,
    cut: { onFold: true, count: 1 },
    half: null,
    grain: "along",
    piece: { name: "front", points: {}, edges: [], darts: [], levelLines: [], centreOnFold: true },
  });
  const parts = [
    part("front", "bodice", "main"),
    part("skirtFront", "skirt", "main"),
    part("frontFacing", "facing", "main"),
  ];

  it("cuts bodice and fitted skirt once more, facings not", () => {
    expect(underliningParts(parts, "underlining").map(({ key, group, cloth }) => [key, group, cloth])).toEqual([
      ["front-underlining", "underlining", "underlining"],
      ["skirtFront-underlining", "underlining", "underlining"],
    ]);
    expect(underliningParts(parts, "lining")).toEqual([]);
  });

  it("cuts no more of a lining or an interfacing, nor of a rectangle", () => {
    const strip: Part = {
      kind: "rectangle",
      key: "tier-1",
      name: "gathered",
      group: "skirt",
      cloth: "main",
      cut: { onFold: false, count: 1 },
      half: null,
      grain: "along",
      width: 800,
      depth: 600,
      allowances: { top: 15, bottom: 30, sides: 15 },
    };
    const others = [
      part("a", "bodice", "lining"),
      part("b", "skirt", "interfacing"),
      part("c", "strap", "main"),
      strip,
    ];
    expect(underliningParts(others, "underlining")).toEqual([]);
    // What is cut twice or open stays so.
    const pair: Part = { ...part("back", "bodice", "main"), cut: { onFold: false, count: 2 }, half: "left" };
    expect(underliningParts([pair], "underlining")).toEqual([
      { ...pair, key: "back-underlining", group: "underlining", cloth: "underlining" },
    ]);
  });
});
