/** A slip lit on the table: what is drawn of it, and the slide from before to after; and the halves of the body. */
import type { Work } from "../../../src/core/decisions/work";
import type { Alteration } from "../../../src/core/decisions/alteration";
import { act, fireEvent, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { Table } from "../../../src/ui/table/Table";
import { planOf, ref, testWork, withAlterations } from "../../support/works";
import { pieceMarks } from "../../../src/drawing/index";
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
    expect(container.querySelectorAll(".lit .ring")).toHaveLength(0);
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
    const { all, container } = await lit("p", place);
    expect(all("overlay-cut")).toEqual([]);
    // A ring round what moved, of an arc there and an arc back.
    expect(container.querySelector(".lit .ring")?.getAttribute("d")).toMatch(/^M[\d.-]+ [\d.-]+a.* 0a.* 0/);
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
    expect(screen.queryByRole("slider", { name: "before to after" })).toBeNull();
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
    expect(screen.queryByRole("slider", { name: "before to after" })).toBeNull();
    act(() => viewNow().getState().lightAlteration(null));
    expect(screen.queryByRole("slider", { name: "before to after" })).toBeNull();
  });
});

describe("the halves", () => {
  const uneven = withAlterations({ ...place, half: "right" });

  it("are switched over the table only where they differ, and the pieces of that half are drawn", async () => {
    const { user, container } = await renderWork(<Table />, uneven);
    const lines = () => [...container.querySelectorAll(".new-line")].map((line) => line.getAttribute("d"));
    const left = lines();
    await user.click(screen.getByRole("radio", { name: "your right" }));
    expect(lines()).not.toEqual(left);
    await user.click(screen.getByRole("radio", { name: "your left" }));
    expect(lines()).toEqual(left);
  });

  it("are not offered where they are alike", async () => {
    await renderWork(<Table />, withAlterations(place));
    expect(screen.queryByRole("radio", { name: "your right" })).toBeNull();
  });

  it("give the plan of that half: its pieces, and its slips alone", () => {
    const { left, right } = planOf(uneven);
    expect(left.pieces).not.toEqual(right.pieces);
    expect(left.alterations.map(({ id }) => id)).not.toContain("p");
    expect(right.alterations.map(({ id }) => id)).toContain("p");
    const even = planOf(testWork);
    expect(even.right).toBe(even.left);
  });

  it("lie side by side, as she is looked at: of a front her right is turned over at the left, of a back her left", async () => {
    const { user, container } = await renderWork(<Table />, uneven);
    await user.click(screen.getByRole("radio", { name: "side by side" }));
    const turned = (piece: string, half: string) =>
      [...container.querySelectorAll(`.working > [data-piece="${piece}"][data-half="${half}"]`)].map((g) =>
        g.getAttribute("transform")?.startsWith("matrix(-1 "),
      );
    expect(turned("front", "right")).toEqual([true]);
    expect(turned("front", "left")).toEqual([false]);
    expect(turned("back", "left")).toEqual([true]);
    expect(turned("back", "right")).toEqual([false]);
    // What she touches is the half that is worked on from then on.
    expect(viewNow().getState().half).toBe("left");
    act(() => screen.getByTestId("handle-front-waistDart-apex-right").focus());
    expect(viewNow().getState().half).toBe("right");
  });

  it("lie one over the other: the outline of the other half, thin, under the one that is worked on", async () => {
    const { user, container } = await renderWork(<Table />, uneven);
    expect(container.querySelectorAll(".other-half")).toHaveLength(0);
    await user.click(screen.getByRole("radio", { name: "one over the other" }));
    const under = () => container.querySelector(".other-half path")?.getAttribute("d");
    const of = (half: "left" | "right") => {
      const [front] = planOf(uneven)[half].pieces;
      return front === undefined ? "" : pieceMarks(front).stitch;
    };
    expect(under()).toBe(of("right"));
    await user.click(screen.getByRole("radio", { name: "your right" }));
    expect(under()).toBe(of("left"));
  });
});

describe("a dart's handle", () => {
  const apart = withAlterations({ ...place, half: "right" });
  const endOf = (work: Work, half: "left" | "right") =>
    planOf(work)[half].darts.find(({ ref: { dart } }) => dart === "waistDart")?.drawn.apex;

  it("of a half that is turned over goes the way it is pushed, and moves that half alone where the halves have their own", async () => {
    const { user, work } = await renderWork(<Table />, apart);
    await user.click(screen.getByRole("radio", { name: "side by side" }));
    const ends = (half: "left" | "right") => endOf(work(), half);
    const before = { left: ends("left"), right: ends("right") };
    const handle = screen.getByTestId("handle-front-waistDart-apex-right");
    const seen = () => Number(/translate\((-?[\d.]+) /.exec(handle.getAttribute("transform") ?? "")?.[1]);
    const from = seen();
    act(() => handle.focus());
    await user.keyboard("{ArrowRight}{ArrowRight}{ArrowRight}");
    expect(seen() - from).toBeCloseTo(3, 0);
    await user.tab();
    expect(ends("left")).toEqual(before.left);
    // The wearer's right front is turned over: to the right on the table is towards its centre.
    expect((before.right?.x ?? 0) - (ends("right")?.x ?? 0)).toBeCloseTo(3, 0);
  });
});
