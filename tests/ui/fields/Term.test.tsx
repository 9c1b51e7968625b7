/** A term says what it means where it stands, in browsers too that give a pressed button no focus. */
import { act, fireEvent, render, screen } from "@testing-library/react";
import { expect, it } from "vitest";
import { Term } from "../../../src/ui/fields/Term";

it("has the focus once it is pressed, and is shut when the focus goes on", () => {
  render(
    <>
      <Term name="mouth">Mouth</Term>
      <button type="button">next</button>
    </>,
  );
  const term = screen.getByRole("button", { name: "Mouth" });
  // A click alone moves no focus, as in WebKit.
  fireEvent.click(term);
  expect(document.activeElement).toBe(term);
  expect(screen.getByRole("note").textContent).not.toBe("");
  act(() => screen.getByRole("button", { name: "next" }).focus());
  expect(screen.queryByRole("note")).toBeNull();
});
