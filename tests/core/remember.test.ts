import { describe, expect, expectTypeOf, it, vi } from "vitest";
import { remember } from "../../src/core/remember";

interface Inputs {
  readonly tape: { readonly bust: number };
  readonly age?: number;
}

const counted = (kept?: number) => {
  const derive = vi.fn<(from: Inputs) => { sum: number }>(({ tape, age }) => ({ sum: tape.bust + (age ?? 0) }));
  return { derive, ask: remember(["tape", "age"], derive, kept) };
};

describe("remember", () => {
  const tape = { bust: 880 };

  it("gives the same object for the very same inputs", () => {
    const { derive, ask } = counted();
    const first = ask({ tape, age: 40 });
    expect(first).toEqual({ sum: 920 });
    expect(ask({ tape, age: 40 })).toBe(first);
    expect(derive).toHaveBeenCalledTimes(1);
  });

  it("looks at nothing but the inputs named", () => {
    const { derive, ask } = counted();
    const more = { tape, age: 40, name: "a" };
    const other = { ...more, name: "b" };
    expect(ask(more)).toBe(ask(other));
    expect(derive).toHaveBeenCalledTimes(1);
  });

  it("gives nothing but the inputs named", () => {
    const keys = vi.fn<(from: Inputs) => readonly string[]>((from) => Object.keys(from));
    const more = { tape, age: 40, name: "a" };
    expect(remember(["tape", "age"], keys)(more)).toEqual(["tape", "age"]);
    expect(more).toEqual({ tape, age: 40, name: "a" });
  });

  it.each([
    ["an equal but other object", { tape: { bust: 880 }, age: 40 }],
    ["another value", { tape, age: 41 }],
    ["a value that is absent", { tape }],
  ])("asks again for %s", (_what, inputs) => {
    const { derive, ask } = counted();
    ask({ tape, age: 40 });
    ask(inputs);
    expect(derive).toHaveBeenCalledTimes(2);
  });

  it("keeps the last answers only", () => {
    const { derive, ask } = counted(2);
    for (const age of [1, 2, 3]) ask({ tape, age });
    ask({ tape, age: 3 });
    ask({ tape, age: 2 });
    expect(derive).toHaveBeenCalledTimes(3);
    ask({ tape, age: 1 });
    expect(derive).toHaveBeenCalledTimes(4);
  });

  it("remembers nothing of a failure thrown", () => {
    const derive = vi.fn<(from: Pick<Inputs, "tape">) => number>(({ tape: { bust } }) => {
      throw new Error(`${bust}`);
    });
    const ask = remember(["tape"], derive);
    expect(() => ask({ tape })).toThrow("880");
    expect(() => ask({ tape })).toThrow("880");
    expect(derive).toHaveBeenCalledTimes(2);
  });

  it("is typed to read what is named, and nothing else", () => {
    expectTypeOf(remember(["tape", "age"], ({ tape: { bust } }: Inputs) => bust)).toEqualTypeOf<
      (from: Inputs) => number
    >();
    // An input that is read and not named would be forgotten: it must not compile.
    expectTypeOf<Parameters<typeof remember<["tape"], Inputs, number>>[0]>().toBeNever();
  });
});
