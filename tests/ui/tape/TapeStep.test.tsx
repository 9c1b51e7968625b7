import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { sampleWork } from "../../support/sampleWork";
import { showTape } from "./showTape";

const field = (name: RegExp): HTMLInputElement => screen.getByRole("textbox", { name });
const guide = (): HTMLElement => screen.getByRole("complementary", { name: "Where the tape goes" });

describe("the tape", () => {
  it("names each measure as the standard does, with the trade's name beside it", async () => {
    await showTape();
    expect(field(/^Upper chest girth · high bust$/)).toBeTruthy();
    expect(field(/^Back waist length · nape to waist$/)).toBeTruthy();
  });

  it("shows where the tape goes for the measure she comes to", async () => {
    const { user } = await showTape();
    await user.click(field(/^Back waist length/));
    expect(within(guide()).getByRole("heading").textContent).toBe("Back waist length");
    expect(guide().textContent).toContain("Seen from the back");
    expect(guide().textContent).toContain("nape");
    await user.click(field(/^Bust girth/));
    expect(guide().textContent).toContain("Seen from the front");
  });

  const described = (name: RegExp): string =>
    (field(name).getAttribute("aria-describedby") ?? "")
      .split(" ")
      .map((id) => document.getElementById(id)?.textContent ?? "")
      .join(" ")
      // A number and its unit are held together.
      .replaceAll("\u00A0", " ");

  it("doubts a measure that does not go with the others, and swaps two that stand in each other's place, as one step", async () => {
    const { user, work, store } = await showTape({
      tapes: tapesOf({ bustGirth: 930, upperChestGirth: 860, underBustGirth: 790, waistGirth: 985, hipGirth: 738 }),
    });
    await user.click(screen.getByRole("button", { name: "Swap them" }));
    expect(measuresOf(work().tapes)).toMatchObject({ waistGirth: 738, hipGirth: 985 });
    expect(screen.queryByRole("button", { name: "Swap them" })).toBeNull();
    expect(store.getState().past).toHaveLength(1);
  });

  it("asks whether a girth was read in inches, and takes it over", async () => {
    // 31 in is 78.7 cm; 34 in would be 86.4.
    const { user, work } = await showTape({
      tapes: tapesOf({ bustGirth: 930, upperChestGirth: 860, waistGirth: 738, hipGirth: 985, acrossBack: 138 }),
    });
    expect(work().unit).toBe("cm");
    expect(described(/^Across back width/)).toContain("Measure the across back again");
    await user.click(screen.getByRole("button", { name: "Take 35.1 cm" }));
    expect(measuresOf(work().tapes).acrossBack).toBeCloseTo(350.5, 1);
  });

  it("asks of girths in the same wrong unit, which go together, whether they are inches", async () => {
    const { user } = await showTape({
      unit: "cm",
      tapes: tapesOf({ bustGirth: 560, waistGirth: 520 }),
    });
    expect(described(/^Bust girth/)).toContain("Are these inches (56 in is 142.2 cm)");
    await user.click(screen.getByRole("button", { name: "Take bust again" }));
    await user.type(field(/^Bust girth, reading 2/), "56{Enter}");
    expect(screen.queryByText(/56 in is/)).toBeNull();
  });

  it("asks in whole inches where inches are read", async () => {
    // 72 in for 27.
    const { user, work } = await showTape({
      unit: "in",
      tapes: tapesOf({
        bustGirth: 863.6,
        upperChestGirth: 819.1,
        underBustGirth: 736.6,
        waistGirth: 1828.8,
        hipGirth: 939.8,
      }),
    });
    expect(described(/^Waist girth/)).toContain("Are two digits the other way round? That would be 27 in.");
    await user.click(screen.getByRole("button", { name: /^Take 27\sin$/ }));
    expect(measuresOf(work().tapes).waistGirth).toBe(685.8);
  });

  it("sets nothing right that was read another day: the tape does", async () => {
    const swapped = {
      taken: "2026-03-01",
      readings: { bustGirth: [930], upperChestGirth: [860], underBustGirth: [790], waistGirth: [985], hipGirth: [738] },
    };
    await showTape({ tapes: [{ taken: "2026-10-03", readings: {} }, swapped] });
    expect(described(/^Waist girth/)).toContain("in each other’s place");
    expect(screen.queryByRole("button", { name: "Swap them" })).toBeNull();
  });

  it("never blocks: what is doubted counts all the same", async () => {
    const { user, work } = await showTape();
    await user.clear(field(/^Under-bust girth/));
    // The sample's bust is 93 cm.
    await user.type(field(/^Under-bust girth/), "98{Enter}");
    expect(measuresOf(work().tapes).underBustGirth).toBe(980);
    expect(described(/^Under-bust girth/)).toContain("Measure the under-bust again");
  });

  it("shows a guess as a guess, outside the field, until the measure is taken", async () => {
    const { user } = await showTape({
      tapes: tapesOf({ bustGirth: 930, waistGirth: 738, hipGirth: 985 }),
    });
    expect(field(/^Bust point width/).value).toBe("");
    expect(described(/^Bust point width/)).toMatch(
      /guess probably \d+(\.5)? cm \(\d+(\.5)? to \d+(\.5)?\), from the body survey/,
    );
    await user.type(field(/^Bust point width/), "19.6{Enter}");
    expect(described(/^Bust point width/)).not.toContain("guess");
  });

  it("guesses nothing before anything was taken", async () => {
    const { container } = await showTape({ tapes: [{ readings: {} }] });
    expect(container.querySelectorAll(".measure .guess")).toHaveLength(0);
  });

  it("keeps a second reading beside the first, and says what they come to", async () => {
    const { user, work } = await showTape();
    await user.click(screen.getByRole("button", { name: "Take bust again" }));
    await user.type(field(/^Bust girth, reading 2/), "93.8{Enter}");
    expect(work().tapes[0]?.readings.bustGirth).toEqual([930, 938]);
    expect(screen.getByText("Mean 93.4 cm; your two readings are 0.8 cm apart.")).toBeTruthy();
    await user.clear(field(/^Bust girth, reading 2/));
    await user.tab();
    expect(work().tapes[0]?.readings.bustGirth).toEqual([930]);
  });

  it("begins a set of today that stands on the earlier one, and lays them beside each other", async () => {
    const { user, work } = await showTape({
      tapes: [{ taken: "2026-03-01", readings: { bustGirth: [930], waistGirth: [738] } }],
    });
    await user.click(screen.getByRole("button", { name: "Measure anew" }));
    expect(work().tapes.map(({ readings }) => Object.keys(readings).length)).toEqual([0, 2]);
    expect(field(/^Waist girth/).value).toBe("");
    expect(described(/^Waist girth/)).toContain(
      "Last time 73.8 cm (1 March 2026), which counts until you take it again.",
    );
    await user.type(field(/^Waist girth/), "77{Enter}");
    expect(measuresOf(work().tapes)).toMatchObject({ bustGirth: 930, waistGirth: 770 });
    expect(screen.getByRole("row", { name: /^waist 77\.0 cm 73\.8 cm \+3\.2 cm changed$/ })).toBeTruthy();
  });

  it("tells what was taken last as the tape reads, not as it was once typed", async () => {
    // 83.2 cm are 32.756 in: 32 ¾ on a tape marked in eighths.
    await showTape({ unit: "in", tapes: [{ readings: {} }, { taken: "2026-03-01", readings: { bustGirth: [832] } }] });
    expect(described(/^Bust girth/)).toContain("Last time 32 ¾ in (1 March 2026), which counts");
  });

  it("takes an age or none, and says kindly what it cannot read", async () => {
    const { user, work } = await showTape();
    const age = screen.getByRole("textbox", { name: "Your age, if you like" });
    await user.type(age, "forty{Enter}");
    expect(work().age).toBeUndefined();
    expect(screen.getByText(/Write whole years/)).toBeTruthy();
    await user.clear(age);
    await user.type(age, "58{Enter}");
    expect(work().age).toBe(58);
    expect(screen.getByText(/hardly any women of your age/)).toBeTruthy();
  });

  it("refuses the impossible, with what it may have been", async () => {
    const { user, work } = await showTape();
    await user.clear(field(/^Waist girth/));
    await user.type(field(/^Waist girth/), "29{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBe(measuresOf(sampleWork.tapes).waistGirth);
    expect(screen.getByRole("alert").textContent).toContain("inches");
    expect(field(/^Waist girth/).value).toBe("29");
  });

  it("says what a missing measure is needed for", async () => {
    await showTape({ tapes: [{ readings: {} }] });
    const hint = document.getElementById(field(/^Bust girth/).getAttribute("aria-describedby") ?? "");
    expect(hint?.textContent?.trim()).toBe("For the size, the cup and the bust adjustment. Needed for any plan.");
  });

  it("says that a demonstration is invented, and nothing of the kind of her own work", async () => {
    const demo = await showTape({ invented: true });
    expect(screen.getByText("This is a demonstration,")).toBeTruthy();
    demo.unmount();
    await showTape({ invented: false });
    expect(screen.queryByText("This is a demonstration,")).toBeNull();
  });
});
