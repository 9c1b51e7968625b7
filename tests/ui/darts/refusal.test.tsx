/** What the wearer is told to take instead of an amount that cannot be had: it works as told, and no more than that does. */
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { parseAmount } from "../../../src/core/measures/length";
import type { DartRef } from "../../../src/core/pattern/piece";
import type { LengthUnit } from "../../../src/core/decisions/work";
import { DartsPanel } from "../../../src/ui/darts/DartsPanel";
import { snapStep } from "../../../src/core/plan/dartEdit";
import { ref, testWork } from "../../support/works";
import { renderWork, viewNow } from "../renderWork";

const waist = ref("front", "waistDart");
const side = ref("front", "sideDart");

async function show(dart: DartRef, unit: LengthUnit, label: string) {
  const { user } = await renderWork(<DartsPanel />, { ...testWork, unit });
  act(() => viewNow().setState({ selectedDart: dart }));
  const field = (): HTMLInputElement => screen.getByRole("textbox", { name: label });
  return async (typed: string): Promise<string | null> => {
    await user.clear(field());
    await user.type(field(), `${typed}{Enter}`);
    const id = (field().getAttribute("aria-describedby") ?? "").split(" ").find((one) => one.endsWith("-error"));
    const refused = field().getAttribute("aria-invalid") === "true";
    // Refused and said why, or neither.
    expect(refused).toBe(id !== undefined);
    return id === undefined ? null : (document.getElementById(id)?.textContent ?? "").replaceAll("\u00A0", " ");
  };
}

const CASES: readonly (readonly [DartRef, string, LengthUnit, string])[] = [
  [waist, "Shorten by", "cm", "500"],
  [waist, "Shorten by", "in", "20"],
  [side, "Shorten by", "cm", "500"],
  [side, "Shorten by", "in", "20"],
  [waist, "Shorten by", "cm", "-900"],
  [waist, "Shorten by", "in", "-36"],
  [waist, "Move its end towards the centre front by", "cm", "300"],
  [waist, "Move its end towards the centre front by", "cm", "-300"],
  [waist, "Move its end towards the centre front by", "in", "12"],
  [side, "Move its end up by", "cm", "900"],
  [waist, "Move the whole dart towards the centre front by", "cm", "400"],
  [waist, "Move the whole dart towards the centre front by", "cm", "-400"],
  [waist, "Move the whole dart towards the centre front by", "in", "15"],
  [side, "Move the whole dart up by", "cm", "400"],
  [waist, "Widen: mouth end nearer the side seam", "cm", "400"],
  [waist, "Widen: mouth end nearer the centre front", "cm", "400"],
  [waist, "Widen: mouth end nearer the centre front", "in", "15"],
];

describe("an amount that cannot be had", () => {
  it.each(CASES)("of %o, “%s”, in %s: %s", async (dart, label, unit, typed) => {
    const type = await show(dart, unit, label);
    const said = await type(typed);
    const most = /([\d½¼¾/ ]+ (?:mm|in)) is the most/.exec(said ?? "")?.[1];
    if (most === undefined) throw new Error(`no amount in “${said}”`);
    const mm = parseAmount(most, unit);
    if (!mm.ok) throw new Error(most);
    const sign = typed.startsWith("-") ? "-" : "";
    // Just what was told, and two steps more.
    expect(await type(`${sign}${mm.value} mm`)).toBeNull();
    expect(await type(`${sign}${mm.value + 2 * snapStep(unit)} mm`)).not.toBeNull();
  });
});
