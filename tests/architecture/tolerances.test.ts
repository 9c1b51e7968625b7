import { posix } from "node:path";
import { describe, expect, it } from "vitest";
import * as tolerances from "../../src/core/tolerance";
import { readProjectFile, sourceFiles } from "./source";
import {
  namesDeclared,
  NO_TOLERANCES,
  toleranceFaults,
  TOLERANCES,
  tolerancesIn,
  type ReadFile,
} from "./toleranceRules";

const files = sourceFiles();
const known = new Set(files);
const read: ReadFile = (file) => (known.has(file) ? readProjectFile(file) : undefined);

const letPass = NO_TOLERANCES.flatMap(({ file, texts }) => texts.map((text) => `${file}: ${text}`));

describe("the tolerances of src", () => {
  const found = files.flatMap((file) =>
    tolerancesIn(file, readProjectFile(file), read).map((text) => ({
      file,
      text,
      key: `${posix.basename(file)}: ${text}`,
    })),
  );

  it("stand in one file", () => {
    expect(found.filter(({ key }) => !letPass.includes(key)).map(({ file, text }) => `${file}: ${text}`)).toEqual([]);
  });

  it("are no list of what is let pass that has grown stale", () => {
    expect(letPass.filter((text) => !found.some(({ key }) => key === text))).toEqual([]);
  });

  it("have each its unit and its reason", () => {
    expect(toleranceFaults(readProjectFile(TOLERANCES))).toEqual([]);
  });

  it("have each one name, and no name has a second meaning", () => {
    const names = new Set(Object.keys(tolerances));
    expect(names.size).toBeGreaterThan(60);
    const others = files.filter((file) => file !== TOLERANCES);
    const again = others.flatMap((file) =>
      namesDeclared(file, readProjectFile(file))
        .filter((name) => names.has(name))
        .map((name) => `${file}: ${name}`),
    );
    expect(again).toEqual([]);
  });
});

describe("the scanner of tolerances", () => {
  const modules: Readonly<Record<string, string>> = {
    [TOLERANCES]: `export const SAME_POINT = 1e-4;\nexport const HALF = SAME_POINT / 2;\nexport const LEFT = -1;`,
    "src/core/geometry/near.ts": `export const NEAR = 0.3;\nexport const AT_MOST = { gap: 2 } as const;`,
  };
  const scan = (source: string, file = "src/core/geometry/x.ts"): readonly string[] =>
    tolerancesIn(file, source, (name) => modules[name]);

  it.each([
    ["a number with a negative exponent", `const CLOSE = 1e-7;`, "1e-7"],
    ["one of whatever sign and case", `const a = [-2.5E-3];`, "2.5E-3"],
    ["one in decimals", `const CLOSE = 0.0000001;`, "0.0000001"],
    ["one in a sum", `const whole = Math.floor(marks + 1e-6);`, "1e-6"],
    ["the spacing of doubles", `const spread = Number.EPSILON;`, "Number.EPSILON"],
    ["a difference's size", `if (Math.abs(a - b) < 0.3) f();`, "Math.abs(a - b) < 0.3"],
    ["the bound on the left", `if (0.3 >= Math.abs(a - b)) f();`, "0.3 >= Math.abs(a - b)"],
    ["a whole millimetre", `if (Math.abs(a - b) > 1) f();`, "Math.abs(a - b) > 1"],
    ["the size of what may be a difference", `if (Math.abs(by) < 0.5) f();`, "Math.abs(by) < 0.5"],
    ["a bare difference", `const near = most - least <= 4;`, "most - least <= 4"],
    ["a hypotenuse", `if (Math.hypot(x, y) > 0.2) f();`, "Math.hypot(x, y) > 0.2"],
    ["a constant", `const NEAR = 2;\nif (distance(p, q) < NEAR) f();`, "distance(p, q) < NEAR"],
    [
      "a sum of constants",
      `const A = 2;\nconst B = A * 0.5;\nif (distance(p, q) < A + B) f();`,
      "distance(p, q) < A + B",
    ],
    [
      "one of another module",
      `import { NEAR } from "./near";\nif (lineDistance(p, a, b) < NEAR) f();`,
      "lineDistance(p, a, b) < NEAR",
    ],
    [
      "one of a constant object",
      `import { AT_MOST as M } from "./near";\nif (distance(p, q) < M.gap) f();`,
      "distance(p, q) < M.gap",
    ],
    ["an angle", `const SHARP = radiansFromDegrees(3);\nif (Math.abs(turn) > SHARP) f();`, "Math.abs(turn) > SHARP"],
    [
      "the farthest of some",
      `const off = ps.map((p) => distance(p, q));\nif (Math.max(...off) < 0.02) f();`,
      "Math.max(...off) < 0.02",
    ],
    ["what was named before", `function f(p, q) { const gap = distance(p, q); return gap < 0.5; }`, "gap < 0.5"],
    [
      "what a function on the spot gives",
      `const off = (p) => Math.abs(p.x - q.x);\nif (off(p) < 0.02) f();`,
      "off(p) < 0.02",
    ],
    ["a distance that is held", `if (nearest(c, p).distance < 0.02) f();`, "nearest(c, p).distance < 0.02"],
    ["a small share of something", `if (Math.abs(cross) < 0.01 * length) f();`, "Math.abs(cross) < 0.01 * length"],
    ["what is compared shifted", `if (short > least - 0.5) f();`, "short > least - 0.5"],
    ["what a curve is flattened to", `edgeFlatten(edge, 0.2);`, "edgeFlatten(edge, 0.2)"],
    ["what boxes are near by", `const S = 0.2;\nareBoundsNear(a, b, S);`, "areBoundsNear(a, b, S)"],
  ])("sees %s", (_, source, text) => {
    expect(scan(source)).toContain(text);
  });

  it.each([
    [
      "one from the file of tolerances",
      `import { SAME_POINT } from "../tolerance";\nif (distance(p, q) < SAME_POINT) f();`,
    ],
    ["one reckoned from another there", `import { HALF } from "../tolerance";\nif (Math.abs(a - b) < HALF) f();`],
    ["one below nothing", `import { LEFT } from "../tolerance";\nif (a - b < LEFT) f();`],
    ["so many of one", `import { SAME_POINT } from "../tolerance";\nif (distance(p, q) < 2 * SAME_POINT) f();`],
    ["nothing at all", `if (a.x - b.x > 0 && Math.abs(a - b) > 0) f();`],
    ["counts", `for (let i = 0; i < n - 1; i += 1) if (i + 1 < all.length) f();`],
    ["counts that differ", `if (a.length - b.length > 2 || index - other.index > 2) f();`],
    ["a bound that is no figure", `if (distance(p, q) < most) f();`],
    ["what is no difference", `const MOST = 20;\nif (amount > MOST || amount + 5 > MOST) f();`],
    ["what is left of a difference", `const left = box.width - key.width;\nif (left - 30 >= 2 * 30) f();`],
    ["a cosine and a parameter", `const t = (a - b) / d;\nif (Math.abs(cosine) <= 1 && t <= 1) f();`],
    ["standard deviations", `if (Math.abs(log - middle) > 2.3 * scale) f();`],
    ["figures of a model", `const ODDS = { half: 0.0003 };\nconst FITTED = [0.00463, 0.00036];`],
    [
      "a name that is another's elsewhere",
      `const f = () => { const d = distance(p, q); return d; };\nconst g = (d) => d < 3;`,
    ],
  ])("lets pass %s", (_, source) => {
    expect(scan(source)).toEqual([]);
  });

  it("lets pass whole pixels of the page, on the page alone", () => {
    const source = `const dx = move.clientX - start.x;\nif (Math.hypot(dx, move.clientY - start.y) > 4) f();`;
    expect(scan(source, "src/ui/table/x.tsx")).toEqual([]);
    expect(scan(source, "src/drawing/x.ts")).toHaveLength(1);
    expect(scan(source.replace("4", "0.4"), "src/ui/table/x.tsx")).toHaveLength(1);
  });

  it("does not look at the file of tolerances", () => {
    expect(scan("export const A = 1e-9;", TOLERANCES)).toEqual([]);
  });
});

describe("the scanner of units and reasons", () => {
  it.each([
    `/** mm. Two points closer than this are one. */\nexport const A = 1;\n`,
    `/**\n * Share of a value (no unit). What rounding\n * may cost. */\nexport const A = 1;\n`,
  ])("takes %j", (source) => {
    expect(toleranceFaults(source)).toEqual([]);
  });

  it.each([
    [`export const A = 1;\n`, ["A"]],
    [`/** Two points closer than this are one. */\nexport const A = 1;\n`, ["A"]],
    [`/** mm. */\nexport const A = 1;\n`, ["A"]],
    [`/** Share. What rounding may cost. */\nexport const A = 1;\n`, ["A"]],
    [`// mm. Two points closer than this are one.\nexport const A = 1;\n`, ["A"]],
    [`/** mm. Closer than this is one. */\nexport const A = 1;\nexport const B = 2;\n`, ["B"]],
    [`/** mm. Closer than this is one. */\nconst A = 1;\n`, ["VariableDeclaration"]],
  ])("refuses %j", (source, faults) => {
    expect(toleranceFaults(source)).toEqual(faults);
  });
});

describe("the scanner of names", () => {
  it("sees constants, parts of patterns and imports under another name", () => {
    const source = `import { SAME_POINT as NEAR, HALF } from "../tolerance";\nconst A = 1;\nconst f = () => { const { B: [C] } = g; };`;
    expect(namesDeclared("src/core/x.ts", source)).toEqual(["SAME_POINT", "NEAR", "A", "f", "C"]);
  });
});
