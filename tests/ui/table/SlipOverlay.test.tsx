/** A slip lit on the table: what is drawn of it, and the slide from before to after; and the halves of the body. */
import type { Alteration } from "../../../src/core/decisions/alteration";
import { act, fireEvent, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { Table } from "../../../src/ui/table/Table";
import { planOf, ref, testWork, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const length: Alteration = { kind: "fit", id: "l", fit: "lengthBelowBust", amount: 20 };
const place: Alteration = {
  kind: "dartPlace",
  id: "p",
  dart: ref("front", "waistDart"),
  by: 12,
  how: "redraw",
  giveBack: {},
};

async function lit(id: string | null, ...alterations: readonly Alteration[]) {
  const rendered = await renderWork(<Table />, withAlterations(...alterations));
  act(() => viewNow().getState().lightAlteration(id));
  return { ...rendered, all: (name: string) => [...rendered.container.querySelectorAll(`.slip-overlay .${name}`)] };
}

const slide = () => screen.getByRole("slider", { name: "before to after" });

describe("a slip that is lit", () => {
  it("shows where it is cut, what lay where, and what is let in, on each piece that it changed", async () => {
    const { all, container } = await lit("l", length);
    expect(all("overlay-cut")).toHaveLength(2);
    expect(all("overlay-ghost")).toHaveLength(2);
    expect(all("overlay-added")).toHaveLength(2);
    // The cut and moved parts say it; rings round every corner would hide them.
    expect(container.querySelectorAll(".lit circle")).toHaveLength(0);
  });

  it("lies as made, and goes back as far as the slide is moved", async () => {
    const { all } = await lit("l", length);
    const moves = () =>
      all("overlay-paper").map((path) => path.closest("[transform^=matrix]")?.getAttribute("transform"));
    expect(slide().getAttribute("aria-valuetext")).toBe("after");
    expect(moves()).toContain("matrix(1 0 0 1 0 20)");
    fireEvent.change(slide(), { target: { value: "25" } });
    expect(moves()).toContain("matrix(1 0 0 1 0 5)");
    fireEvent.change(slide(), { target: { value: "0" } });
    expect(slide().getAttribute("aria-valuetext")).toBe("before");
    expect(moves()).toContain("matrix(1 0 0 1 0 0)");
    expect(moves()).not.toContain("matrix(1 0 0 1 0 5)");
  });

  it("that only redraws shows what it adds and takes, and no cut", async () => {
    const { all } = await lit("p", place);
    expect(all("overlay-cut")).toEqual([]);
    expect(all("overlay-before").length).toBeGreaterThan(0);
    expect(all("taken").length).toBeGreaterThan(0);
    const after = all("overlay-after")[0]?.getAttribute("d");
    fireEvent.change(slide(), { target: { value: "50" } });
    expect(all("overlay-after")[0]?.getAttribute("d")).not.toBe(after);
  });

  it("is put out by the bar’s button, and the bar goes", async () => {
    const { all, user } = await lit("l", length);
    await user.click(screen.getByRole("button", { name: "Done" }));
    expect(viewNow().getState().litAlteration).toBeNull();
    expect(screen.queryByRole("slider")).toBeNull();
    expect(all("overlay-cut")).toEqual([]);
  });

  it("starts from after again when another is lit", async () => {
    await lit("l", length, place);
    fireEvent.change(slide(), { target: { value: "10" } });
    act(() => viewNow().getState().lightAlteration("p"));
    expect(slide().getAttribute("aria-valuetext")).toBe("after");
  });

  it("has no slide where nothing on the pieces changed: the blend, or a slip left out", async () => {
    await lit("blend-waist", length);
    expect(screen.queryByRole("slider")).toBeNull();
    act(() => viewNow().getState().lightAlteration(null));
    expect(screen.queryByRole("slider")).toBeNull();
  });
});

describe("the halves", () => {
  const uneven = withAlterations({ kind: "fit", id: "l", fit: "bustPointLevel", amount: 20, half: "right" });

  it("are switched over the table only where they differ, and the pieces of that half are drawn", async () => {
    const { user, container } = await renderWork(<Table />, uneven);
    const lines = () => [...container.querySelectorAll(".new-line")].map((line) => line.getAttribute("d"));
    const left = lines();
    await user.click(screen.getByRole("radio", { name: "right half" }));
    expect(lines()).not.toEqual(left);
    await user.click(screen.getByRole("radio", { name: "left half" }));
    expect(lines()).toEqual(left);
  });

  it("are not offered where they are alike", async () => {
    await renderWork(<Table />, withAlterations(length));
    expect(screen.queryByRole("radio", { name: "right half" })).toBeNull();
  });

  it("give the plan of that half: its pieces, and its slips alone", () => {
    const { left, right } = planOf(uneven);
    expect(left.pieces).not.toEqual(right.pieces);
    expect(left.alterations.map(({ id }) => id)).not.toContain("l");
    expect(right.alterations.map(({ id }) => id)).toContain("l");
    const even = planOf(testWork);
    expect(even.right).toBe(even.left);
  });
});
