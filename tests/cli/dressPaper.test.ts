/** True-scale paper of works with a dress: what is printed of it, what not, and what else is refused. */
import { DOMParser } from "@xmldom/xmldom";
import Parser from "dxf-parser";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { answerPaper } from "../../src/cli/answerPaper";
import { root } from "../support/doors";
import { pdfWriting } from "../support/pdfjs";

const DAY = "2026-11-28";
const demo = (name: string): string => join(root, "demo-data", `${name}.json`);

const said = (name: string, ...options: string[]): string => {
  const result = answerPaper([demo(name), "--day", DAY, ...options], DAY);
  return result.ok ? String(result.value) : `refused: ${result.failure}`;
};
const bytes = (name: string, ...options: string[]): Uint8Array => {
  const result = answerPaper([demo(name), "--day", DAY, "--out", "-", ...options], DAY);
  if (!result.ok) throw new Error(result.failure);
  return typeof result.value === "string" ? new TextEncoder().encode(result.value) : result.value;
};
const text = (name: string, ...options: string[]): string => new TextDecoder().decode(bytes(name, ...options));

const groupsOf = (svg: string): string[] =>
  [...new DOMParser().parseFromString(svg, "image/svg+xml").getElementsByTagName("g")]
    .map((group) => group.getAttribute("id") ?? "")
    .filter((id) => /-cutting$/u.test(id))
    .map((id) => id.replace(/-cutting$/u, ""));

const SIX_PANELS = ["centreFront", "sideFront", "back", "skirtFront", "skirtSideFront", "skirtSideBack", "skirtBack"];

describe("true-scale paper of a dress", () => {
  it("has all that is drafted: the bodice without what the skirt takes the place of, panels, facings", () => {
    expect(groupsOf(text("siskin-panels", "--as", "svg")).toSorted()).toEqual(
      [...SIX_PANELS, "frontFacing", "backFacing"].toSorted(),
    );
  });

  it("has none of what is given by its measures: tiers and straps", () => {
    const groups = groupsOf(text("siskin-tiers", "--as", "svg"));
    expect(groups.filter((id) => /tier|strap|basque/iu.test(id))).toEqual([]);
    expect(groups).toContain("lining-skirtFront");
    expect(groups).toContain("lining-cup");
  });

  it("has what is named alone, in SVG and in DXF alike", () => {
    expect(groupsOf(text("siskin-panels", "--as", "svg", "--parts", "skirt")).toSorted()).toEqual(
      SIX_PANELS.slice(3).toSorted(),
    );
    const dxf = new Parser().parseSync(text("siskin-panels", "--as", "dxf", "--parts", "facings,bodice"));
    expect(Object.keys(dxf?.blocks ?? {}).toSorted()).toEqual(
      ["centreFront", "sideFront", "back", "frontFacing", "backFacing"].toSorted(),
    );
  });

  it("says on each piece which of all it is, what it is cut from and what else is cut by it", async () => {
    const writing = (await pdfWriting(bytes("siskin-straight", "--as", "pdf", "--paper", "A0-roll"))).flat().join("\n");
    expect(writing).toContain("SKIRT FRONT · LINING");
    expect(writing).toMatch(/Piece \d+ of 8\. Cut 1 on the fold/u);
    expect(writing).not.toMatch(/of (?:9|10)\. Cut/u);
    const facings = (
      await pdfWriting(bytes("siskin-panels", "--as", "pdf", "--paper", "A0-roll", "--parts", "facings"))
    )
      .flat()
      .join("\n");
    expect(facings).toContain("Cut too: ☐ interfacing");
  });

  it("refuses parts that are not there, and parts of what has none", () => {
    expect(said("siskin-tiers", "--as", "svg", "--out", "-", "--parts", "skirt")).toBe(
      "refused: This work has no skirt to print: --parts can be bodice, lining.",
    );
    expect(said("siskin-tiers", "--as", "svg", "--out", "-", "--parts", "sleeve")).toContain("no parts called sleeve");
    expect(said("wren-hip", "--as", "svg", "--out", "-", "--parts", "lining")).toContain("no lining to print");
    expect(said("siskin-panels", "--as", "svg", "--out", "-", "--overlay", "--parts", "skirt")).toContain(
      "--parts does not go",
    );
    expect(said("siskin-panels", "--as", "svg", "--out", "-", "--size", "14", "--parts", "skirt")).toContain(
      "--parts does not go",
    );
  });
});
