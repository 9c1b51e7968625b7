/** No loop of the core can go on for ever: each runs over a collection, counts, or stands in a short list with its reason. */
import { describe, expect, it } from "vitest";
import { LOOPS_LET_PASS, recursions, RECURSIONS_LET_PASS, uncountedLoops } from "./loopRules";
import { readProjectFile, sourceFiles } from "./source";

const files = sourceFiles().filter((file) => file.startsWith("src/core/"));

describe("the loops of the core", () => {
  const found = files.flatMap((file) => uncountedLoops(readProjectFile(file)).map((head) => `${file}: ${head}`));
  const letPass = LOOPS_LET_PASS.map(({ file, head }) => `${file}: ${head}`);

  it("run over a collection, or count, or say why they end", () => {
    expect(found.filter((loop) => !letPass.includes(loop))).toEqual([]);
  });

  it("are no list of what is let pass that has grown stale", () => {
    expect(letPass.filter((loop) => !found.includes(loop))).toEqual([]);
  });

  it("call themselves only where they count down", () => {
    const own = files.flatMap((file) => recursions(readProjectFile(file)).map((name) => `${file}: ${name}`));
    expect(own.toSorted()).toEqual(RECURSIONS_LET_PASS.map(({ file, name }) => `${file}: ${name}`).toSorted());
  });
});

describe("the scanner of loops", () => {
  it.each([
    ["one without an end", "for (;;) { f(); }", "for (;;)"],
    ["one that waits", "while (true) f();", "while (true)"],
    ["one that comes nearer", "while (high - low > ACCURACY) { f(); }", "while (high - low > ACCURACY)"],
    ["one that counts nothing", "for (let a = f(); a !== b; a = g(a)) h();", "for (let a = f(); a !== b; a = g(a))"],
    ["one whose bound is another's", "for (let i = 0; left > 0; i += 1) h();", "for (let i = 0; left > 0; i += 1)"],
    ["one that looks afterwards", "do { f(); } while (off > 0);", "do"],
  ])("sees %s", (_, source, head) => {
    expect(uncountedLoops(source)).toContain(head);
  });

  it.each([
    ["a collection", "for (const a of all) f(a);\nfor (const [i, b] of all.entries()) g(i, b);"],
    ["what counts up", "for (let i = 0; i + 1 < all.length; i += 1) f(i);\nfor (let i = 0; i < n && off; i++) g(i);"],
    ["what counts down", "for (let rest = n; rest > 0; rest = Math.floor((rest - 1) / 2)) f(rest);"],
    ["what is only told", "/* while (true) */\n// for (;;) never\nconst a = 1;"],
  ])("lets pass %s", (_, source) => {
    expect(uncountedLoops(source)).toEqual([]);
  });

  it("sees a function that calls itself, not one that calls another of its kind", () => {
    expect(recursions("function f<T>(n: number): number {\n  return f<T>(n - 1);\n}\n")).toEqual(["f"]);
    expect(recursions("function f(n: number): number {\n  return g(n) + h.f(n);\n}\n")).toEqual([]);
  });
});
