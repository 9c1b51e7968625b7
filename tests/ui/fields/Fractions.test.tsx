/** What sets out its parts in a row or a column, as a note or a button does, must not take a sentence apart at its fraction. */
import { cleanup, render } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { Fractions } from "../../../src/ui/fields/Fractions";

afterEach(cleanup);

const inside = (text: string): { readonly nodes: number; readonly drawn: readonly string[]; readonly said: string } => {
  const { container } = render(
    <p>
      <Fractions text={text} />
    </p>,
  );
  const [line] = container.children;
  return {
    nodes: line?.childNodes.length ?? 0,
    drawn: [...container.querySelectorAll(".fraction")].map((one) => one.textContent ?? ""),
    said: (line?.textContent ?? "").replaceAll("\u00A0", " "),
  };
};

describe("text with fractions", () => {
  it.each([
    ["Only 19/32 in here. Allow 1 1/4 in or more, or 1 3/8 in.", ["19/32", "1/4", "3/8"]],
    ["Change to 32 3/8 in", ["3/8"]],
    ["5/16 in", ["5/16"]],
  ])("is one thing in what holds it, whatever is drawn in it: %s", (text, fractions) => {
    const { nodes, drawn, said } = inside(text);
    expect(nodes).toBe(1);
    expect(drawn.join(" ")).toBe(fractions.join(" "));
    expect(said).toBe(text);
  });

  it("is plain text without any", () => {
    expect(inside("32 in")).toEqual({ nodes: 1, drawn: [], said: "32 in" });
  });
});
