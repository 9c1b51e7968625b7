/** What the words at the head of a table mean: each heading as somebody who sews reads it. */
import { describe, expect, it } from "vitest";
import {
  isBeforeNoun,
  namesGirth,
  readHeading,
  readTitle,
  readUnit,
  soleUnit,
  withoutPlaces,
  type Heading,
} from "../../../src/core/chart/pasteWords";

const NOTHING: Heading = { column: null, unit: null, chest: false, cup: null, bare: false };
const BARE: Heading = { ...NOTHING, bare: true };

const HEADINGS: readonly (readonly [string, Partial<Heading>])[] = [
  ["Size", { column: "label" }],
  ["Sizes", { column: "label" }],
  ["sz", { column: "label" }],
  ["UK size", { column: "label" }],
  ["Misses’ sizes no.", { column: "label" }],
  ["Bust", { column: "bust" }],
  ["busts", { column: "bust" }],
  ["Waistline", { column: "waist" }],
  ["Waists", { column: "waist" }],
  ["Seat", { column: "hip" }],
  ["Full hips around the fullest part of your body", { column: "hip" }],
  ["Your bust measurement, all round", { column: "bust" }],
  // Units: named in full, by their marks, at the end or in brackets.
  ["Bust (cm)", { column: "bust", unit: "cm" }],
  ["Bust in centimeters", { column: "bust", unit: "cm" }],
  ["Waist, millimetres", { column: "waist", unit: "mm" }],
  ["Full hip, inches", { column: "hip", unit: "in" }],
  ['Hip "', { column: "hip", unit: "in" }],
  ["Hip ''", { column: "hip", unit: "in" }],
  ["Bust in", { column: "bust", unit: "in" }],
  ["Bust in.", { column: "bust", unit: "in" }],
  ["Bust [in.]", { column: "bust", unit: "in" }],
  ["Bust ( in )", { column: "bust", unit: "in" }],
  ["Bust, in: full", { column: "bust", unit: "in" }],
  ["Bust in, full", { column: "bust", unit: "in" }],
  ["Bust in; full", { column: "bust", unit: "in" }],
  ["Bust in) full", { column: "bust", unit: "in" }],
  ["Bust in] full", { column: "bust", unit: "in" }],
  ["Bust in / full", { column: "bust", unit: "in" }],
  ["Bust in | full", { column: "bust", unit: "in" }],
  ["Bust in & full", { column: "bust", unit: "in" }],
  ["Bust ″", { column: "bust", unit: "in" }],
  ["Bust ”", { column: "bust", unit: "in" }],
  ["Bust ′′", { column: "bust", unit: "in" }],
  ["Bust ins", { column: "bust", unit: "in" }],
  ["Bust inch", { column: "bust", unit: "in" }],
  ["Bust cms", { column: "bust", unit: "cm" }],
  ["Bust centimetre", { column: "bust", unit: "cm" }],
  ["Bust centimetres", { column: "bust", unit: "cm" }],
  ["Bust centimeter", { column: "bust", unit: "cm" }],
  ["Bust millimetre", { column: "bust", unit: "mm" }],
  ["Bust millimeter", { column: "bust", unit: "mm" }],
  ["Bust millimeters", { column: "bust", unit: "mm" }],
  ["Bust in the round", { column: "bust" }],
  ["Bust in in", { column: "bust", unit: "in" }],
  ["Bust cm / inches", { column: "bust" }],
  ["Bust (in/cm)", { column: "bust" }],
  // Sewn girths.
  ["Finished bust", { column: "finishedBust" }],
  ["Waist (fin.), cm", { column: "finishedWaist", unit: "cm" }],
  ["Garment hip", { column: "finishedHip" }],
  ["Flat chest", { column: "finishedBust", chest: true }],
  ["Finished size", {}],
  ["Finished back", {}],
  // Other measures, though a girth is named.
  ["High bust", {}],
  ["Hip high", {}],
  ["Waist to hip", {}],
  ["1/2 bust", {}],
  ["Bust 2", {}],
  ["Back", {}],
  ["UK bust", {}],
  ["Bust size", {}],
  ["constructor", {}],
  // One girth by two names; the chest alone.
  ["Chest", { column: "bust", chest: true }],
  ["Bust/Chest", { column: "bust" }],
  ["Chest or busts", { chest: true }],
  ["Chest (busts)", { column: "bust" }],
  ["Hips/Seat", { column: "hip" }],
  // Cups.
  ["Bust B cup", { column: "bust", cup: "B" }],
  ["A cup bust", { column: "bust", cup: "A" }],
  ["Cup dd bust", { column: "bust", cup: "DD" }],
  ["Bust (C)", { column: "bust", cup: "C" }],
  ["Bust AA", { column: "bust", cup: "AA" }],
  ["Bust cup", {}],
  ["Waist B", {}],
  ["d", {}],
  ["Bust ab", {}],
  ["Bust cab", {}],
  // Notes.
  ["Bust*", { column: "bust" }],
  ["Bust¹ ²", { column: "bust" }],
  ["Bust⁴", { column: "bust" }],
  ["Bust§⁹", { column: "bust" }],
  ["Hip (2)", { column: "hip" }],
  ["Hip [3] ", { column: "hip" }],
  ["Hip (12)", {}],
  ["Hip (2) cm", { unit: "cm" }],
  ["†Waist‡", { column: "waist" }],
  // Where the hip is taken.
  ['Hip - 9" below waist', { column: "hip" }],
  ["Hip (20 cm below the natural waist)", { column: "hip" }],
  ["Hip approx. 8 in. down from waistline", { column: "hip" }],
  ['Hip 3" below waist', {}],
  ["Hip 10 cm below waist", {}],
];

const WITHOUT_MEASURE: readonly (readonly [string, Partial<Heading>])[] = [
  ["UK", { column: "label" }],
  ["No.", { column: "label" }],
  ["nr:", { column: "label" }],
  ["Women’s", { column: "label" }],
  ["Women's", { column: "label" }],
  ["misses", { column: "label" }],
  ["B cup", { cup: "B" }],
  ["Ladies", { column: "label" }],
  ...["No", "NR", "Number", "US", "USA", "EU:", "EUR", "AUS", "AU", "Miss", "Women", "Womens", "Women’s."].map(
    (name) => [name, { column: "label" }] as const,
  ),
  ["Women`s", {}],
  [" Name ", { column: "label" }],
  ["UK finished", {}],
  ["Finished UK", {}],
  ["Old UK", { bare: false }],
  ["UK US", {}],
  ["Body chart", {}],
  ["", {}],
  ["cm", { unit: "cm" }],
  ["8", { bare: false }],
  ["UK 8", { bare: false }],
];

describe("a heading", () => {
  it.each(HEADINGS)("%j", (text, said) => expect(readHeading(text)).toEqual({ ...NOTHING, ...said }));

  it.each(WITHOUT_MEASURE)("that names no measure: %j", (text, said) =>
    expect(readHeading(text)).toEqual({ ...BARE, ...said }),
  );

  it.each(["high", "Under", "upper", "across", "to", "your"])("cannot end with %j", (word) =>
    expect(isBeforeNoun(word)).toBe(true),
  );

  it.each(["bust", "", "chart", "highest"])("can end with %j", (word) => expect(isBeforeNoun(word)).toBe(false));
});

describe("a place told from the waist", () => {
  // A full hip lies 6 in (15 cm) and more below the waist: our own choice.
  it.each([
    ['Hip 6" below waist', "Hip "],
    ['Hip 5" below waist', "Hip high "],
    ["Hip 15 cm below waist", "Hip "],
    ["Hip 14 cm below waist", "Hip high "],
    ["Hip 12-14 cm below waist", "Hip high "],
    ["Hip 150 mm below waist", "Hip "],
    ["Hip 140mm under the waist", "Hip high "],
    ['Hip, 9" (23 cm) below waistline', "Hip "],
    ['Hip 4" (10 cm) below waist', "Hip high "],
    ["Hip (10 cm below the waist)", "Hip high "],
    ["Hip at 9 ins. (23 cms) below waist line", "Hip "],
    ["Hip abt 23cm (9 in.) from waist)", "Hip "],
    ["Hip abt. 9in (23cm) under the waist", "Hip "],
    ["Hip 9½ inches (24 cm) below waist", "Hip "],
    ["Hip 7 below the natural waist line", "Hip "],
    ["HIP - ABOUT 9 INCHES DOWN FROM THE WAIST", "HIP "],
    ["Hip and waist", "Hip and waist"],
    ["Hip below waist", "Hip below waist"],
  ])("%j", (text, left) => expect(withoutPlaces(text).replaceAll(/ +/g, " ")).toBe(left));

  it("twice in one text", () =>
    expect(withoutPlaces('Hip 3" below waist, hip 9" below waist').replaceAll(/ +/g, " ")).toBe("Hip high , hip "));
});

describe("words in a sentence", () => {
  it.each([
    ["the bust of it", true],
    ["back waist length", true],
    ["our size chart", false],
    ['taken 9" below waist', false],
    ["", false],
    ["toString", false],
  ])("name a girth: %j", (text, names) => expect(namesGirth(text)).toBe(names));

  it.each([
    ["Finished garment measurements", true, null],
    ["Garments (cm)", true, "cm"],
    ["Body measurements in inches", false, "in"],
    ["For the wearer", false, null],
    ["All bodies", false, null],
    ["Body and finished garment", null, null],
    ["Size chart, cm and inches", null, null],
    ["mm", null, "mm"],
  ])("over a table: %j", (text, finished, unit) => expect(readTitle(text)).toEqual({ finished, unit }));

  it.each([
    ["cm", "cm"],
    ["(mm)", "mm"],
    ["in", "in"],
    ["In.", "in"],
    ['"', "in"],
    ["inches", "in"],
    ["cm cm", null],
    ["bust", null],
    ["80 cm", null],
    ["", null],
    ["valueOf", null],
  ])("a unit by itself: %j", (text, unit) => expect(readUnit(text)).toBe(unit));

  it("of several units none, of one named twice that one", () => {
    expect(soleUnit([])).toBeNull();
    expect(soleUnit(["cm", "cm"])).toBe("cm");
    expect(soleUnit(["cm", "in"])).toBeNull();
  });
});
