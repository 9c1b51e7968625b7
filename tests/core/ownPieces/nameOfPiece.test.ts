/** What a maker may write on a piece, and what that is. */
import { describe, expect, it } from "vitest";
import { namedBy, otherWord } from "../../../src/core/ownPieces/nameOfPiece";
import type { PieceName } from "../../../src/core/pattern/piece";

const ALL: readonly PieceName[] = [
  "front",
  "centreFront",
  "sideFront",
  "cup",
  "frontBand",
  "back",
  "backBand",
  "frontBasque",
  "backBasque",
  "strap",
];

describe("a text on a piece", () => {
  it.each([
    ["FRONT", "front"],
    ["Bodice front, cut 1", "front"],
    ["back_10", "back"],
    ["Side Front", "sideFront"],
    ["sideFront", "sideFront"],
    ["SIDEFRONT", "sideFront"],
    ["side  -  front", "sideFront"],
    ["front side", "sideFront"],
    ["frontside", "sideFront"],
    ["Centre Front", "centreFront"],
    ["center front", "centreFront"],
    ["middle_front", "centreFront"],
    ["centrefront", "centreFront"],
    ["Front Centre", "centreFront"],
    ["front center 2", "centreFront"],
    ["frontmiddle", "centreFront"],
    ["Front Basque", "frontBasque"],
    ["front peplum", "frontBasque"],
    ["frontskirt", "frontBasque"],
    ["Basque Front", "frontBasque"],
    ["peplum front", "frontBasque"],
    ["skirtfront", "frontBasque"],
    ["Back Basque", "backBasque"],
    ["backpeplum", "backBasque"],
    ["back skirt", "backBasque"],
    ["basque back", "backBasque"],
    ["peplumback", "backBasque"],
    ["skirt back", "backBasque"],
    ["Front Band", "frontBand"],
    ["frontband", "frontBand"],
    ["front midriff", "frontBand"],
    ["front midriff band", "frontBand"],
    ["frontmidriffband", "frontBand"],
    ["band front", "frontBand"],
    ["midrifffront", "frontBand"],
    ["Back Band", "backBand"],
    ["backband", "backBand"],
    ["back midriff", "backBand"],
    ["back midriff band", "backBand"],
    ["backmidriffband", "backBand"],
    ["band back", "backBand"],
    ["midriff back", "backBand"],
    ["midriffback", "backBand"],
    ["Strap", "strap"],
    ["2 straps", "strap"],
    ["Cup B", "cup"],
    ["cups", "cup"],
    ["collar", "other"],
    ["front facing", "other"],
    ["Back Yoke", "other"],
    ["pocket", "other"],
    ["interfacing", "other"],
    ["upfront", null],
    ["frontal", null],
    ["backing", null],
    ["strapless", null],
    ["cupped", null],
    ["hiccup", null],
    ["collared", null],
    ["A", null],
    ["10", null],
    ["", null],
  ])("%j says %j", (text, name) => {
    expect(namedBy(text, ALL)).toBe(name);
  });

  it("says only a piece that the plan has", () => {
    expect(namedBy("Side Front", ["front", "back"])).toBe("front");
    expect(namedBy("Front", ["centreFront", "sideFront"])).toBeNull();
    expect(namedBy("cup", ["front"])).toBeNull();
  });

  it("says no front or back of a basque that the plan has not", () => {
    expect(namedBy("Front Basque", ["front", "back"])).toBeNull();
    expect(namedBy("skirt back", ["front", "back"])).toBeNull();
    expect(namedBy("Front Basque", ["front", "frontBasque"])).toBe("frontBasque");
    expect(namedBy("Back Basque", ["back", "frontBasque"])).toBeNull();
  });

  it("has the word itself for what the planner has no name for", () => {
    expect(otherWord("Front FACING 2")).toBe("facing");
    expect(otherWord("front")).toBe("");
  });
});
