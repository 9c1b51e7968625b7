/** True-scale paper of works with a dress: what is printed of it, what not, and what else is refused. */
import { DOMParser } from "@xmldom/xmldom";
import Parser from "dxf-parser";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { answerPaper, requestFor } from "../../src/cli/answerPaper";
import { readPaperArguments } from "../../src/cli/paperArgs";
import type { Work } from "../../src/core/decisions/work";
import type { PaperRequest } from "../../src/paper/request";
import { truePiecesFor } from "../../src/paper/sheets";
import { useChoices } from "../../src/ui/paper/choicesState";
import { requestFor as asThePageAsks } from "../../src/ui/paper/paperRequest";
import { createShowing } from "../../src/ui/session/ofWork";
import { root } from "../support/doors";
import { pdfWriting } from "../support/pdfjs";
import { planOf, testWork } from "../support/works";

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
    .filter((id) => id.endsWith("-cutting"))
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
    const writing = (await pdfWriting(bytes("siskin-straight", "--as", "pdf", "--paper", "A0-roll")))
      .map((one) => one.text)
      .join("\n");
    expect(writing).toContain("SKIRT FRONT · LINING");
    expect(writing).toMatch(/Piece \d+ of 8\. Cut 1 on the fold/u);
    expect(writing).not.toMatch(/of (?:9|10)\. Cut/u);
    const facings = (
      await pdfWriting(bytes("siskin-panels", "--as", "pdf", "--paper", "A0-roll", "--parts", "facings"))
    )
      .map((one) => one.text)
      .join("\n");
    expect(facings).toContain("Cut too: ☐ interfacing");
  });

  it("has a lining on the shell's own lines by its own paper, where the shell is not printed, and in one numbering", () => {
    const work: Work = {
      ...testWork,
      pattern: { ...testWork.pattern, style: "sideDart", length: "hip" },
      dress: { lining: { bodice: true } },
    };
    const printed = (request: PaperRequest): readonly (readonly unknown[])[] => {
      const pieces = truePiecesFor(request);
      return pieces.ok ? pieces.value.map(({ key, number, also }) => [key, ...number, ...(also ?? [])]) : [];
    };
    const plan = planOf(work);
    const command = readPaperArguments(["dress.json", "--as", "svg", "--out", "-", "--parts", "lining"]);
    if (!command.ok || command.value.kind === "help") throw new Error("arguments");
    const lining = requestFor(command.value, { work, plan }, DAY);
    if (!lining.ok) throw new Error(lining.failure);
    // Front, back and two basques; of the lining all but the front basque, which alone keeps the shell's lines: the others
    // are smaller above the waist, or set back beside the zip.
    expect(printed(lining.value)).toEqual([
      ["lining-front", 5, 7],
      ["lining-back", 6, 7],
      ["lining-frontBasque", 3, 7],
      ["lining-backBasque", 7, 7],
    ]);
    // On the page the front basque is unticked, say since it is cut already.
    const chosen = { ...useChoices.of(createShowing()).getState(), leftOut: ["frontBasque" as const] };
    expect(printed(asThePageAsks(work, plan, "pieces", chosen, DAY))).toEqual([
      ["front", 1, 7],
      ["back", 2, 7],
      ["backBasque", 4, 7],
      ["lining-front", 5, 7],
      ["lining-back", 6, 7],
      ["lining-frontBasque", 3, 7],
      ["lining-backBasque", 7, 7],
    ]);
  });

  it("numbers a piece that the dress is cut without after all others", () => {
    const work: Work = {
      ...testWork,
      pattern: { ...testWork.pattern, style: "sideDart", length: "hip" },
      dress: { skirt: { kind: "gathered", length: 600 }, lining: { bodice: true } },
    };
    const chosen = { ...useChoices.of(createShowing()).getState(), replacedToo: ["frontBasque" as const] };
    const pieces = truePiecesFor(asThePageAsks(work, planOf(work), "pieces", chosen, DAY));
    // Front and back, and both of lining; the skirt is cut by its measures, and takes the place of both basques.
    expect(pieces.ok && pieces.value.map(({ key, number }) => [key, ...number])).toEqual([
      ["front", 1, 5],
      ["back", 2, 5],
      ["frontBasque", 5, 5],
      ["lining-front", 3, 5],
      ["lining-back", 4, 5],
    ]);
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
