import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { layCloth } from "../../src/core/cloth/layCloth";
import type { Work } from "../../src/core/decisions/work";
import { dressOf } from "../../src/core/dress/dressOf";
import type { DressPlan } from "../../src/core/dress/dressPlan";
import { cutDepth, cutWidth } from "../../src/core/parts/part";
import { demoDresses } from "../../src/document/demo";
import { PrintedDress, type PrintedDressProps } from "../../src/print/PrintedDress";
import { formatLength } from "../../src/words/terms/length";

afterEach(cleanup);

function demo(at: number): Work {
  const work = demoDresses()[at];
  if (work === undefined) throw new Error("no such demo");
  return work;
}

function dressed(work: Work): DressPlan {
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(dress.failure.code);
  return dress.value;
}

const laysOf = (work: Work, { cloths, parts }: DressPlan): PrintedDressProps["lays"] =>
  Object.fromEntries(
    cloths.map((name) => [
      name,
      layCloth(
        {
          name,
          cloth: work.dress?.cloths?.[name] ?? {},
          parts,
          allowances: work.allowances ?? {},
          closure: work.pattern.closure,
          unit: work.unit,
        },
        undefined,
        // It is the sheet that is looked at, not how short a lay is.
        { effort: 0.03 },
      ),
    ]),
  );

const textOf = (element: Element): string => (element.textContent ?? "").replaceAll("\u00A0", " ");

function show(
  work: Work,
  lays?: PrintedDressProps["lays"],
): { readonly sheet: HTMLElement; readonly dress: DressPlan } {
  const dress = dressed(work);
  render(<PrintedDress work={work} dress={dress} lays={lays ?? laysOf(work, dress)} />);
  return { sheet: screen.getByRole("article", { name: "Dress" }), dress };
}

/** Rows of all tables whose head begins with that word. */
const rowsUnder = (sheet: HTMLElement, head: string): readonly string[] =>
  within(sheet)
    .getAllByRole("table")
    .filter((table) => textOf(table).startsWith(head))
    .flatMap((table) => [...table.querySelectorAll("tbody tr")].map(textOf));

describe("PrintedDress", () => {
  it("says of a cloth that is not laid yet, and of one that came to no lay, what there is to do; both stand in the list to buy", () => {
    const work = demo(0);
    const dress = dressed(work);
    const [first] = dress.cloths;
    if (first === undefined) throw new Error("no cloth");
    render(<PrintedDress work={work} dress={dress} lays={{}} broken={[first]} />);
    const sheet = screen.getByRole("article", { name: "Dress" });
    const unlaid = [...sheet.querySelectorAll(".pd-unlaid")].map(textOf);
    expect(unlaid).toHaveLength(dress.cloths.length);
    expect(unlaid[0]).toMatch(/: not laid out\. .*Change something, or load the page again\.$/);
    for (const other of unlaid.slice(1)) expect(other).toMatch(/still being laid out\. Print again/);
    const buy = [...sheet.querySelectorAll(".pd-notions li")].map(textOf);
    expect(buy.filter((line) => line.includes("not known yet"))).toHaveLength(dress.cloths.length);
  });

  const works = [0, 1, 2].map((at) => [demo(at).name, demo(at)] as const);

  it.each(works)("has a box for every part and every step: %s", (_, work) => {
    const { sheet, dress } = show(work);
    const cut = [...rowsUnder(sheet, "Main cloth"), ...rowsUnder(sheet, "Lining"), ...rowsUnder(sheet, "Interfacing")];
    expect(cut).toHaveLength(dress.parts.length);
    const steps = rowsUnder(sheet, "Step");
    expect(steps).toHaveLength(dress.sewing.length);
    expect(sheet.querySelectorAll("tbody .pc-tick")).toHaveLength(
      cut.length + steps.length + dress.parts.filter(({ kind }) => kind === "rectangle").length,
    );
    expect(textOf(sheet)).not.toMatch(/undefined|NaN|\[object/);
  });

  it("gives rectangles as they are cut, the longest first", () => {
    const { sheet, dress } = show(demo(0));
    const rows = rowsUnder(sheet, "Part");
    const cut = dress.parts.filter((part) => part.kind === "rectangle").toSorted((a, b) => cutWidth(b) - cutWidth(a));
    expect(cut.length).toBeGreaterThan(2);
    for (const [at, part] of cut.entries()) {
      expect(rows[at]).toContain(formatLength(cutWidth(part), "cm"));
      expect(rows[at]).toContain(formatLength(cutDepth(part), "cm"));
    }
  });

  it("lists the strips for button stands with their measures, to be cut and not torn", () => {
    const work = demo(0);
    const closure = { place: "centreBack", belowWaist: 180, buttons: 8 } as const;
    const { sheet } = show({ ...work, pattern: { ...work.pattern, closure } });
    const named = rowsUnder(sheet, "Part").filter((row) => row.includes("Strip for the button stand"));
    // The usual 15 mm at the centre: 7.5 of stand, and 15 inside the centre line.
    expect(named).toEqual([expect.stringMatching(/Strip for the button stand, interfacing2.*2\.3\scm/)]);
    expect(rowsUnder(sheet, "Interfacing").some((row) => row.includes("Strip for the button stand"))).toBe(true);
    expect(textOf(sheet)).toContain("Interfacing is not torn: rule it and cut.");
    cleanup();
    expect(textOf(show(work).sheet)).not.toContain("Interfacing is not torn");
  });

  it("says what to buy, and how each cloth is laid, by numbers that stand in the drawing too", () => {
    const { sheet, dress } = show(demo(2));
    const lists = [...sheet.querySelectorAll(".pd-lay")];
    expect(lists).toHaveLength(dress.cloths.length);
    for (const list of lists) {
      const numbers = [...list.querySelectorAll(".pd-laid b")].map(textOf);
      const drawn = [...list.querySelectorAll("svg text")].map(textOf);
      for (const number of numbers)
        expect(drawn.some((text) => text === number || text.startsWith(`${number} `))).toBe(true);
    }
    const buy = textOf(within(sheet).getByRole("heading", { name: "To buy" }).parentElement ?? sheet);
    expect(buy).toMatch(/Main cloth.*Lining.*Zip.*Thread/s);
  });

  it("says so where a cloth is not laid yet", () => {
    const { sheet } = show(demo(0), {});
    expect(textOf(sheet)).toContain("Main cloth: still being laid out.");
    expect(sheet.querySelectorAll(".pd-lay")).toHaveLength(0);
  });

  it("draws round skirts with string and pin", () => {
    const work = demo(1);
    const { sheet, dress } = show(
      { ...work, dress: { ...work.dress, skirt: { kind: "circle", share: 0.5, length: 600 } } },
      {},
    );
    const sectors = dress.parts.filter(({ kind }) => kind === "sector");
    expect(sectors.length).toBeGreaterThan(0);
    expect(sheet.querySelectorAll(".pd-sector svg")).toHaveLength(sectors.length);
    expect(textOf(sheet)).toContain("Push a pin in");
  });

  it("puts what stands in the way before everything that is cut", () => {
    const work = demo(0);
    const { sheet } = show(
      {
        ...work,
        dress: { ...work.dress, skirt: { kind: "aLine", length: 4000 } },
      },
      {},
    );
    const doubts = within(sheet).getByRole("heading", { name: "Before you cut" });
    const list = within(sheet).getByRole("heading", { name: "Cut list" });
    expect(doubts.compareDocumentPosition(list) & Node.DOCUMENT_POSITION_FOLLOWING).not.toBe(0);
  });
});
