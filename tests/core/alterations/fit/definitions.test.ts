/** What each fit alteration is: amounts that are ever sensible (common practice, no source), what it is made on, and what it needs. */
import { describe, expect, it } from "vitest";
import { FIT_NAMES, type FitName } from "../../../../src/core/decisions/fitNames";
import { fitOf } from "../../../../src/core/alterations/fit/index";
import { setOf } from "../../../../src/core/pattern/pieceSet";
import type { Piece, PieceName } from "../../../../src/core/pattern/piece";
import { garment } from "../../../support/garments";

const SHOULDER = ["front", "centreFront", "sideFront", "back"] as const;
/** The least, the most, whether it is told of the whole body, and the pieces that it changes. */
const FITS: Readonly<Record<FitName, readonly [number, number, boolean, readonly PieceName[]]>> = {
  lengthAboveBust: [-40, 50, false, SHOULDER],
  lengthBelowBust: [-60, 80, false, SHOULDER],
  lengthBasque: [-60, 80, false, ["frontBasque", "backBasque"]],
  bandDepth: [-40, 60, false, ["frontBand", "backBand"]],
  roundBack: [-15, 25, false, ["back"]],
  swayBack: [-25, 25, false, ["back", "backBand"]],
  waistDropFront: [-25, 25, false, ["front", "centreFront", "sideFront", "frontBand", "frontBasque"]],
  waistDropBack: [-25, 25, false, ["back", "backBand", "backBasque"]],
  bustPointLevel: [-30, 30, false, ["front", "centreFront", "sideFront", "cup"]],
  chestWidth: [-30, 30, true, ["front", "sideFront"]],
  backWidth: [-30, 30, true, ["back"]],
  strapLength: [-100, 150, false, ["strap"]],
  // From 40 mm to the 6 that can be turned right side out.
  strapWidth: [-34, 40, false, ["cup", "back", "strap"]],
  strapPlace: [-40, 40, false, ["cup", "back"]],
  necklineGape: [0, 30, false, ["front", "centreFront"]],
  edgeGape: [0, 30, false, ["cup"]],
  armholeGape: [0, 30, false, ["front", "sideFront", "cup"]],
  backNeckGape: [0, 30, true, ["back"]],
  shoulderSlope: [-25, 25, false, SHOULDER],
  forwardShoulder: [-20, 20, false, SHOULDER],
  shoulderWidth: [-30, 25, false, SHOULDER],
  armholeDepth: [-25, 30, false, ["front", "sideFront", "cup", "back"]],
  sideSeamBust: [-60, 60, true, ["front", "sideFront", "cup", "back"]],
  sideSeamUnderBust: [-160, 80, true, ["cup", "frontBand", "back", "backBand"]],
  sideSeamWaist: [-80, 80, true, ["front", "sideFront", "frontBand", "back", "backBand", "frontBasque", "backBasque"]],
  sideSeamHip: [-80, 100, true, ["frontBasque", "backBasque"]],
};

describe("a fit alteration", () => {
  it.each(FIT_NAMES)("%s is within its amounts, on its pieces", (fit) => {
    const { range, isWhole, madeOn } = fitOf(fit);
    const [least, most, whole, pieces] = FITS[fit];
    expect([range, isWhole === true, madeOn.toSorted()]).toEqual([{ least, most }, whole, pieces.toSorted()]);
  });
});

describe("what is offered", () => {
  const [sideDart, princess, midriff] = [
    garment({ style: "sideDart" }),
    garment({ style: "princessShoulder" }),
    garment({ style: "midriff" }),
  ];
  const ofPieces = (...pieces: readonly (Piece | undefined)[]): readonly FitName[] => {
    const set = setOf(pieces.filter((piece) => piece !== undefined));
    return FIT_NAMES.filter((fit) => fitOf(fit).applies(set)).toSorted();
  };

  it.each([
    ["nothing", [], []],
    [
      "a back",
      [sideDart.back],
      ["backNeckGape", "backWidth", "roundBack", "sideSeamWaist", "swayBack", "waistDropBack"],
    ],
    [
      "a front",
      [sideDart.front],
      ["armholeGape", "bustPointLevel", "chestWidth", "necklineGape", "sideSeamWaist", "waistDropFront"],
    ],
    ["a centre front", [princess.centreFront], ["necklineGape"]],
    ["a side front", [princess.sideFront], ["armholeGape", "chestWidth", "sideSeamWaist"]],
    ["a cup", [midriff.cup], ["armholeGape", "bustPointLevel", "edgeGape", "strapPlace"]],
    ["a back cut at the under-bust", [midriff.back], ["strapPlace"]],
    ["a strap", [midriff.strap], ["strapLength"]],
    ["a front band", [midriff.frontBand], ["sideSeamWaist", "waistDropFront"]],
    ["a back band", [midriff.backBand], ["sideSeamWaist", "swayBack", "waistDropBack"]],
    [
      "both bands",
      [midriff.frontBand, midriff.backBand],
      ["bandDepth", "sideSeamWaist", "swayBack", "waistDropBack", "waistDropFront"],
    ],
    ["a basque", [sideDart.frontBasque], ["lengthBasque", "sideSeamWaist"]],
    ["both basques", [sideDart.frontBasque, sideDart.backBasque], ["lengthBasque", "sideSeamHip", "sideSeamWaist"]],
  ] as const)("on %s alone is what needs no other piece", (_what, pieces, fits) => {
    expect(ofPieces(...pieces)).toEqual([...fits].toSorted());
  });

  it("takes a gape out of a back neck where the centre runs straight from it to the bust line", () => {
    const { back } = sideDart;
    if (back === undefined) throw new Error("back");
    const via = (name: "corner01", ends: "from" | "to"): Piece => ({
      ...back,
      edges: back.edges.map((edge) =>
        edge.from === "centreBust"
          ? { ...edge, [ends]: name }
          : (ends === "from" ? edge.to === "centreBust" : edge.from === "centreNeck")
            ? { ...edge, [ends === "from" ? "to" : "from"]: name }
            : edge,
      ),
    });
    expect(ofPieces(back)).toContain("backNeckGape");
    for (const ends of ["from", "to"] as const) expect(ofPieces(via("corner01", ends))).not.toContain("backNeckGape");
    const { edges } = back;
    const strap: Piece = {
      ...back,
      edges: edges.map((edge) => (edge.from === "sideNeck" ? { ...edge, from: "strapInner" as const } : edge)),
    };
    expect(ofPieces(strap)).not.toContain("backNeckGape");
  });
});
