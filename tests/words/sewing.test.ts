import { describe, expect, it } from "vitest";
import { SEWING_STEPS, type SewingStep } from "../../src/core/sewing/sewingStep";
import { closureOutcome, zipSoldWords } from "../../src/words/dressClosure";
import { zipMarkWords } from "../../src/words/dressDrawing";
import { notionWords } from "../../src/words/notions";
import { zipToBuy } from "../../src/words/terms/zip";
import { sewingStepWords } from "../../src/words/sewing";

const plain: SewingStep = {
  name: "press",
  parts: ["front"],
  seams: [],
  length: null,
  allowance: null,
  press: false,
  finish: null,
  cautions: [],
  after: [],
};

describe("the order of sewing in words", () => {
  it.each(SEWING_STEPS)("says %s in a sentence", (name) => {
    const { text } = sewingStepWords({ ...plain, name }, "cm");
    expect(text).toMatch(/^[A-Z].*\.$/s);
    expect(text).not.toMatch(/undefined|null|NaN/);
  });

  it("fuses a strip to each button stand before half of it is turned in, and does not press it a second time", () => {
    const { text, press } = sewingStepWords({ ...plain, name: "fuseStands", press: true }, "cm");
    expect(text).toMatch(
      /^Fuse a strip of interfacing to the wrong side of each button stand before it is turned in\./,
    );
    expect(text).toMatch(/halfway between the centre line and the raw edge/);
    expect(text).toMatch(/Press down, do not slide, and let it cool flat\.$/);
    expect(press).toBeNull();
    expect(sewingStepWords({ ...plain, name: "buttonStands" }, "cm").text).toMatch(
      /^Turn each button stand in by half its width/,
    );
  });

  it("names pieces, half and length, in either unit", () => {
    const step: SewingStep = {
      ...plain,
      name: "bodiceSides",
      allowance: 15,
      press: true,
      length: 428,
      seams: [{ seam: "side", pieces: ["back", "front"], half: "right", length: 214, count: 1 }],
    };
    expect(sewingStepWords(step, "cm")).toEqual({
      text: "Sew the right side seam. The left one opens.",
      seams: ["Back and front, right half: 21.4 cm"],
      allowance: "15 mm",
      press: "Press open.",
      cautions: [],
    });
    // 214 mm are 8.425 in, 8 7/16 to a sixteenth, as the table tells a seam; 15 mm are 0.59 in.
    const { seams, allowance } = sewingStepWords(step, "in");
    expect(seams).toEqual(["Back and front, right half: 8 7/16 in"]);
    expect(allowance).toBe("9/16 in");
  });

  it("trims the allowance of a round hem that is too deep to be turned on the bias", () => {
    const hem = (allowance: number): string =>
      sewingStepWords({ ...plain, name: "hemShell", way: "round", allowance }, "cm").text;
    expect(hem(10)).toContain("narrowly");
    expect(hem(30)).toContain("eased in");
    expect(hem(30)).toContain("Trim the allowance narrow");
    expect(sewingStepWords({ ...plain, name: "hemShell", allowance: 30 }, "cm").text).not.toContain("eased");
  });

  it("finishes seams that are seen or lie open, in place of pressing them open alone", () => {
    const said = (finish: SewingStep["finish"]): string | null =>
      sewingStepWords({ ...plain, name: "skirtSides", press: true, finish }, "cm").press;
    expect(said(null)).toBe("Press open.");
    expect(said("neatened")).toBe("Press open. Neaten the raw edges.");
    // Enclosed in itself it cannot be pressed open.
    expect(said("frenchSeam")).toContain("wrong sides together first");
    expect(said("frenchSeam")).not.toContain("Press open");
    expect(said("narrow")).not.toContain("Press open");
  });

  it("counts seams that are alike, and says what is drawn up to what", () => {
    const gathers = { seam: null, pieces: [], half: null, length: 1843.2, count: 1, gatheredTo: 1152 };
    expect(sewingStepWords({ ...plain, name: "gatherTiers", at: 2, seams: [gathers] }, "cm")).toMatchObject({
      text: "Sew two rows along the upper edge of tier 2 and draw it up.",
      seams: ["184.3 cm, to 115.2 cm"],
    });
    // 72.57 and 45.35 in, to an eighth as the tiers are told.
    expect(sewingStepWords({ ...plain, name: "gatherTiers", at: 2, seams: [gathers] }, "in").seams).toEqual([
      "72 5/8 in, to 45 3/8 in",
    ]);
    const darts = {
      seam: "waist" as const,
      dart: "waistDart" as const,
      pieces: ["front" as const],
      half: null,
      length: 98,
      count: 2,
    };
    expect(sewingStepWords({ ...plain, name: "sewDarts", seams: [darts] }, "cm").seams).toEqual([
      "Front waist dart: 2 × 9.8 cm",
    ]);
  });

  it("says in the step itself by how much a waist is cut lower where, from nothing on, and not once more", () => {
    const said = (lower: Required<SewingStep>["lower"], unit: "cm" | "in" = "cm", at?: number) =>
      sewingStepWords({ ...plain, name: "shapeTop", lower, ...(at === undefined ? {} : { at }) }, unit);
    expect(said({ front: 30, side: 10, back: 0 }, "cm", 1)).toMatchObject({
      text: "Mark centres and sides on the upper edge of tier 1, and cut it lower in one even curve: nothing at the centre back, 10 mm at the sides, 30 mm at the centre front. The hem is level then.",
      seams: [],
    });
    // 25.4 mm are 1 in, 12.7 half of it.
    expect(said({ front: 12.7, side: 0, back: 25.4 }, "in").text).toContain(
      "of the skirt, and cut it lower in one even curve: nothing at the sides, ½ in at the centre front, 1 in at the centre back.",
    );
    // Places that are cut alike are told together; nobody cuts less than half a mark.
    expect(said({ front: 14, side: 0, back: 0 }).text).toContain(
      "nothing at the sides and the centre back, 14 mm at the centre front.",
    );
    expect(said({ front: 20, side: 0, back: 0.3 }).text).toContain(
      "nothing at the sides and the centre back, 20 mm at the centre front.",
    );
    expect(said({ front: 20, side: 0.7, back: 0 }, "in").text).toContain(
      "nothing at the centre back and the sides, 13/16 in at the centre front.",
    );
  });

  it("tells where the tapes of a zip are marked", () => {
    const marks = [
      { at: "waist", from: 399 },
      { at: "end", from: 579 },
    ] as const;
    expect(sewingStepWords({ ...plain, name: "zipMarks", marks }, "cm").seams).toEqual([
      "Waist seam: 39.9 cm",
      "End of the opening: 57.9 cm",
    ]);
  });

  it("says how each thing is done in the way that was chosen", () => {
    const said = (name: SewingStep["name"], way: SewingStep["way"]): string =>
      sewingStepWords({ ...plain, name, ...(way === undefined ? {} : { way }) }, "cm").text;
    expect(said("makeStraps", "tied")).toContain("ties");
    expect(said("basteStraps", "crossed")).toContain("cross them");
    const seam = { seam: "strap" as const, pieces: [], half: null, length: 12, count: 4 };
    const basted = (way?: SewingStep["way"]): string =>
      sewingStepWords({ ...plain, name: "basteStraps", seams: [seam], ...(way === undefined ? {} : { way }) }, "cm")
        .text;
    for (const text of [basted(), basted("crossed"), basted("tied")])
      expect(text).toContain("the middle of each at the mark “strap”");
    // Pieces without a seam for them have no mark to name.
    expect(said("basteStraps", "plain")).toMatch(/where they sit when you try it on/u);
    expect(said("basteStraps", "plain")).not.toContain("mark");
    expect(said("tackZip", "lapped")).toContain("lapped");
    expect(said("tackZip", "invisible")).toContain("not with pins");
    expect(said("seamBelowOpening", "buttons")).toContain("below the opening");
    expect(said("liningSkirtDarts", "pleats")).toContain("pleats");
    expect(said("skirtToBodice", "peplum")).toContain("peplum");
  });
});

describe("notions in words", () => {
  const bare = { count: 1, length: null, width: null };

  it("tells the zip that is sold, in the wearer's unit", () => {
    const sold = { cm: { length: 600, unit: "cm" as const }, in: { length: 558.8, unit: "in" as const } };
    const zip = { ...bare, what: "zip" as const, length: 579, sold };
    expect(notionWords(zip, "cm").amount).toBe("60 cm, shortened from below");
    expect(notionWords(zip, "in").amount).toBe("22 in, shortened from below");
    expect(notionWords({ ...zip, sold: { cm: null, in: null } }, "cm").amount).toContain("57.9 cm");
  });

  it("tells of the same zip beside the closure, on the drawing and among the notions, where one is sold in the other unit alone", () => {
    // 604 mm are needed: the longest sold in centimetres is 60 cm, in inches 24 in, 609.6 mm (common practice, no source).
    const sold = { cm: null, in: { length: 609.6, unit: "in" as const } };
    const opening = {
      ways: [],
      passes: true,
      opening: 579,
      comesApart: false,
      leastOpening: 500,
      levelMarks: [],
      endsAt: { cm: null, in: null },
    };
    const closure = { place: "centreBack" as const, belowWaist: 180 };
    expect(notionWords({ ...bare, what: "zip", length: 579, sold }, "cm").amount).toBe("24 in, shortened from below");
    expect(closureOutcome(closure, { ...opening, zip: sold }, "cm")).toContain("24 in zip");
    expect(zipSoldWords({ ...opening, zip: sold }, closure, "cm")).toContain("a zip of 24 in");
    expect(zipMarkWords(zipToBuy(sold, "cm"), 579, "lapped", "cm")).toBe("lapped zip 24 in");
  });

  it("rounds up thread, interfacing and tape", () => {
    expect(notionWords({ ...bare, what: "thread", count: 3, length: 240_100 }, "cm").amount).toBe(
      "241 m: 3 reels of 100 m",
    );
    expect(notionWords({ ...bare, what: "interfacing", area: 110_001 }, "cm").amount).toBe("12 dm² in all");
    expect(notionWords({ ...bare, what: "elastic", count: 2, length: 110, width: 12 }, "cm").amount).toBe(
      "2 × 11.0 cm, 12 mm wide",
    );
    expect(notionWords({ ...bare, what: "buttons", count: 8 }, "cm")).toEqual({ what: "Buttons", amount: "8" });
  });
});
