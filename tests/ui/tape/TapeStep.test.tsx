import { measuresOf } from "../../../src/core/measures/tape";
import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { TapeStep } from "../../../src/ui/tape/TapeStep";
import { sampleWork } from "../../support/sampleWork";
import { renderWork } from "../renderWork";

const field = (name: RegExp): HTMLInputElement => screen.getByRole("textbox", { name });
const guide = (): HTMLElement => screen.getByRole("complementary", { name: "Where the tape goes" });

describe("the tape", () => {
  it("names each measure as the standard does, with the trade's name beside it", async () => {
    await renderWork(<TapeStep />);
    expect(field(/^Upper chest girth · high bust$/)).toBeTruthy();
    expect(field(/^Back waist length · nape to waist$/)).toBeTruthy();
  });

  it("shows where the tape goes for the measure she comes to", async () => {
    const { user } = await renderWork(<TapeStep />);
    await user.click(field(/^Back waist length/));
    expect(within(guide()).getByRole("heading").textContent).toBe("Back waist length");
    expect(guide().textContent).toContain("Seen from the back");
    expect(guide().textContent).toContain("nape");
    await user.click(field(/^Bust girth/));
    expect(guide().textContent).toContain("Seen from the front");
  });

  it("warns of measures that do not go together, without refusing them", async () => {
    const { user, work } = await renderWork(<TapeStep />);
    await user.clear(field(/^Under-bust girth/));
    // The sample's bust is 93 cm.
    await user.type(field(/^Under-bust girth/), "95{Enter}");
    expect(measuresOf(work().tapes).underBustGirth).toBe(950);
    const described = (field(/^Under-bust girth/).getAttribute("aria-describedby") ?? "").split(" ").map((id) => document.getElementById(id)?.textContent);
    expect(described.join(" ")).toContain("swapped");
  });

  it("refuses the impossible, with what it may have been", async () => {
    const { user, work } = await renderWork(<TapeStep />);
    await user.clear(field(/^Waist girth/));
    await user.type(field(/^Waist girth/), "29{Enter}");
    expect(measuresOf(work().tapes).waistGirth).toBe(measuresOf(sampleWork.tapes).waistGirth);
    expect(screen.getByRole("alert").textContent).toContain("inches");
    expect(field(/^Waist girth/).value).toBe("29");
  });

  it("says what a missing measure is needed for", async () => {
    await renderWork(<TapeStep />, { tapes: [{ readings: {} }] });
    const hint = document.getElementById(field(/^Bust girth/).getAttribute("aria-describedby") ?? "");
    expect(hint?.textContent).toBe("Needed for any plan.");
  });

  it("says that a demonstration is invented, and nothing of the kind of her own work", async () => {
    const demo = await renderWork(<TapeStep />, { invented: true });
    expect(screen.getByText("This is a demonstration.")).toBeTruthy();
    demo.unmount();
    await renderWork(<TapeStep />, { invented: false });
    expect(screen.queryByText("This is a demonstration.")).toBeNull();
  });
});
