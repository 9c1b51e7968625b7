/** How much cloth to buy, and whether what is there goes, with a worker that lays at once. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { layPrepared } from "../../../src/core/cloth/layPrepared";
import type { Work } from "../../../src/core/decisions/work";
import { createClothRoom } from "../../../src/ui/dress/cloth/clothRoom";
import { ClothRoomProvider } from "../../../src/ui/dress/cloth/useCloth";
import { DressStep } from "../../../src/ui/dress/DressStep";
import { undo } from "../../../src/store/workStore";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

const gathered: NonNullable<Work["dress"]> = { skirt: { kind: "gathered", ratio: 2.5, length: 700 } };

async function put(dress: NonNullable<Work["dress"]>) {
  const room = createClothRoom((hear) => ({
    ask: ({ id, wanted }) =>
      queueMicrotask(() =>
        act(() => hear({ kind: "laid", id, lay: layPrepared(wanted.prepared, { effort: 0.01, goal: wanted.goal }) })),
      ),
    close: () => undefined,
  }));
  return renderWork(
    <ClothRoomProvider value={() => room}>
      <DressStep />
    </ClothRoomProvider>,
    { ...testWork, pattern: { ...testWork.pattern, length: "waist" }, dress },
  );
}

const outcome = (): string =>
  screen.getByRole("heading", { level: 3, name: "Cloth to buy" }).closest("summary")?.textContent ?? "";
const main = () => within(screen.getByRole("region", { name: "Main cloth" }));

describe("cloth to buy", () => {
  it("is told in the line of its fold, in lengths that shops cut", async () => {
    await put(gathered);
    await main().findByText(/^\d+\.\d[05] m of 140\.0 cm$/);
    expect(outcome()).toMatch(/^Cloth to buy main cloth \d+\.\d[05] m/);
    // Two widths of the skirt alone are 1400 mm with their allowances.
    expect(Number(/main cloth (\d+\.\d+) m/.exec(outcome())?.[1])).toBeGreaterThan(1.4);
  });

  it("is compared by the widths that are sold, hers marked", async () => {
    const { user } = await put(gathered);
    await user.click(main().getByRole("button", { name: /^Other widths/ }));
    const rows = within(await main().findByRole("table", { name: "Other widths of the main cloth" })).getAllByRole(
      "row",
    );
    expect(rows.slice(1).map((row) => row.querySelector("th")?.textContent)).toEqual([
      "90.0 cm",
      "110.0 cm",
      "114.0 cm",
      "140.0 cm (yours)",
      "150.0 cm",
    ]);
  });
});

describe("what she has of a cloth", () => {
  it("goes where there is enough of it", async () => {
    const { user } = await put({ ...gathered, cloths: { main: { length: 4900 } } });
    await user.click(main().getByRole("button", { name: /^Does it go\?/ }));
    expect((await main().findByText(/^It goes: .* is left over\.$/)).textContent).toMatch(/\d/);
  });

  it("is laid once though its button is pressed again, and the button keeps the focus meanwhile", async () => {
    let asked = 0;
    const room = createClothRoom(() => ({ ask: () => void (asked += 1), close: () => undefined }));
    const { user } = await renderWork(
      <ClothRoomProvider value={() => room}>
        <DressStep />
      </ClothRoomProvider>,
      {
        ...testWork,
        pattern: { ...testWork.pattern, length: "waist" },
        dress: { ...gathered, cloths: { main: { length: 4900 } } },
      },
    );
    const button = main().getByRole("button", { name: /^Does it go\?/ });
    button.focus();
    await user.keyboard("{Enter}");
    const once = asked;
    expect(once).toBeGreaterThan(0);
    expect(button.getAttribute("aria-disabled")).toBe("true");
    expect(document.activeElement).toBe(button);
    await user.keyboard("{Enter}");
    expect(asked).toBe(once);
  });

  it("goes with less of the skirt where there is too little, and that is taken in one step", async () => {
    const { user, work, store } = await put({ ...gathered, cloths: { main: { length: 1900 } } });
    const before = work();
    await user.click(main().getByRole("button", { name: /^Does it go\?/ }));
    await main().findByText(/^It does not go: .* It would go with$/);
    const [take] = main().getAllByRole("button", { name: /^Take this/ });
    if (take === undefined) throw new Error("no way out");
    await user.click(take);
    expect(work().dress).not.toEqual(before.dress);
    expect(work().dress?.cloths?.main?.length).toBe(1900);
    act(() => undo(store));
    expect(work().dress).toEqual(before.dress);
  });
});
