/** Making something else of a dart, from the panel: moved, split, gathered, bowed; what is gone can be taken back. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { ref, testWork, withAlterations } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

async function shown(work = testWork, dart = ref("front", "sideDart")) {
  const rendered = await renderWork(<DartsPanel />, work);
  act(() => viewNow().setState({ selectedDart: dart }));
  return rendered;
}

describe("a dart", () => {
  it("is moved to another seam, whole, and its slip is lit", async () => {
    const { user, work } = await shown();
    await user.selectOptions(screen.getByRole("combobox", { name: "Move it to the" }), "shoulder");
    expect(work().alterations).toEqual([
      {
        kind: "dartPivot",
        id: "dartPivot-front-sideDart",
        dart: { piece: "front", dart: "sideDart" },
        to: "shoulder",
        share: 1,
      },
    ]);
    expect(viewNow().getState().litAlteration).toBe("dartPivot-front-sideDart");
    expect(screen.getByRole("button", { name: /^Front shoulder dart$/, pressed: true })).toBeDefined();
    expect(screen.queryByRole("button", { name: /^Front side dart$/ })).toBeNull();
  });

  it("that is gone can be put back", async () => {
    const pivot = { kind: "dartPivot", id: "p", dart: ref("front", "sideDart"), to: "shoulder", share: 1 } as const;
    const { user, work } = await shown(withAlterations(pivot));
    const gone = screen.getByRole("region", { name: "Darts made into something else" });
    await user.click(within(gone).getByRole("button", { name: /^Take out:/ }));
    expect(work().alterations).toEqual([]);
    expect(screen.queryByRole("region", { name: "Darts made into something else" })).toBeNull();
  });

  it("is moved in part, by a slide that is one step of undo", async () => {
    const pivot = { kind: "dartPivot", id: "p", dart: ref("front", "sideDart"), to: "shoulder", share: 0.5 } as const;
    const { work, store } = await shown(withAlterations(pivot));
    const slide = screen.getByRole("slider", { name: "How much of it" });
    expect(slide.getAttribute("aria-valuetext")).toBe("50 %");
    fireEvent.change(slide, { target: { value: "40" } });
    fireEvent.change(slide, { target: { value: "30" } });
    fireEvent.pointerUp(slide);
    expect(work().alterations).toEqual([{ ...pivot, share: 0.3 }]);
    expect(store.getState().past).toHaveLength(1);
  });

  it("is split or gathered, one in place of the other in one step", async () => {
    const { user, work, store } = await shown(testWork, ref("front", "waistDart"));
    const sewn = () => screen.getByRole("group", { name: "Sew it as" });
    expect(within(sewn()).queryByRole("radio", { name: /seam/ })).toBeNull();
    await user.click(within(sewn()).getByRole("radio", { name: "gathers" }));
    expect(work().alterations).toMatchObject([{ kind: "dartGather", id: "dartGather-front-waistDart" }]);
    await user.click(within(sewn()).getByRole("radio", { name: "two" }));
    expect(work().alterations).toMatchObject([{ kind: "dartSplit", id: "dartSplit-front-waistDart", into: 2 }]);
    expect(store.getState().past).toHaveLength(2);
    await user.click(within(sewn()).getByRole("radio", { name: "one dart" }));
    expect(work().alterations).toEqual([]);
  });

  it("of the shoulder is joined with the waist dart into a seam", async () => {
    const pivot = { kind: "dartPivot", id: "p", dart: ref("front", "sideDart"), to: "shoulder", share: 1 } as const;
    const { user, work } = await shown(withAlterations(pivot), ref("front", "shoulderDart"));
    await user.click(screen.getByRole("radio", { name: "a seam with the waist dart" }));
    expect(work().alterations).toMatchObject([pivot, { kind: "dartSeam", id: "dartSeam-front-shoulderDart" }]);
  });

  it("has its legs bowed, and says beside the field what is too much", async () => {
    const { user, work } = await shown(testWork, ref("front", "waistDart"));
    const field = screen.getByRole("textbox", { name: "Bow its legs by" });
    await user.clear(field);
    await user.type(field, "3{Enter}");
    expect(work().alterations).toEqual([
      { kind: "dartLegs", id: "dartLegs-front-waistDart", dart: ref("front", "waistDart"), bow: 3 },
    ]);
    await user.clear(field);
    await user.type(field, "40{Enter}");
    expect(field.getAttribute("aria-invalid")).toBe("true");
    expect(screen.getByRole("alert").textContent).toMatch(/is the most/);
  });
});
