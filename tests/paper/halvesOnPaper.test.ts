/**
 * Halves that differ, as they lie on paper: printed side up on the right side of the cloth each is cut for its own half. Looked at
 * from outside, as the right side of the cloth is, the wearer's left front has its side seam at the right of its centre front,
 * and seen from behind her right back has it there.
 */
import { describe, expect, it } from "vitest";
import type { Half } from "../../src/core/decisions/alteration";
import type { PieceName } from "../../src/core/pattern/piece";
import { pointOf } from "../../src/core/pattern/piece";
import { makePaper } from "../../src/paper/makePaper";
import type { PaperRequest } from "../../src/paper/request";
import { TYPEFACES } from "../support/inkPages";
import { planOf, ref, testWork } from "../support/works";
import type { Work } from "../../src/core/decisions/work";

const NAMES: readonly PieceName[] = ["front", "back"];
const WORK: Work = {
  ...testWork,
  pattern: { ...testWork.pattern, style: "sideDart", length: "waist" },
  alterations: [
    {
      kind: "dartEnd",
      id: "end",
      dart: ref("front", "waistDart"),
      shorten: 25,
      across: -5,
      hold: "mouth",
      giveBack: {},
      half: "right",
    },
    { kind: "fit", id: "slope", fit: "shoulderSlope", amount: -9, half: "left" },
  ],
};

const requestFor = (work: Work, more: Partial<PaperRequest["choices"]> = {}): PaperRequest => ({
  work,
  plan: planOf(work),
  day: "2026-11-28",
  choices: {
    kind: "pieces",
    format: "A4",
    margin: 10,
    size: null,
    pieces: NAMES,
    under: [],
    before: false,
    allowances: false,
    ...more,
  },
});

function svgOf(request: PaperRequest): string {
  const made = makePaper(request, "svg", TYPEFACES, () => undefined);
  if (!made.ok) throw new Error(made.failure.code);
  return new TextDecoder().decode(made.value.bytes);
}

interface Place {
  readonly x: number;
  readonly y: number;
}

/** The part of the file that is one piece, by its title. */
function partOf(svg: string, title: string): string {
  const from = svg.indexOf(`<title>${title}</title>`);
  const next = svg.indexOf("<title>", from + 1);
  expect(from).toBeGreaterThan(0);
  return svg.slice(from, next < 0 ? undefined : next);
}

function textAt(part: string, words: RegExp): Place {
  for (const [, x, y, text] of part.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"[^>]*>([^<]*)<\/text>/g))
    if (words.test(text ?? "")) return { x: Number(x), y: Number(y) };
  throw new Error(`no ${words.source}`);
}

/** The corners of the heavy line; where nothing is allowed it is the stitch line. */
function cornersOf(part: string): readonly Place[] {
  const [path = ""] = [...part.matchAll(/class="cutting"[^>]*>\s*<path d="([^"]+)"/g)].map(([, d]) => d ?? "");
  return [...path.matchAll(/[ML]([-\d.]+) ([-\d.]+)|C[^MLCZ]* ([-\d.]+) ([-\d.]+)(?=[MLCZ]|$)/g)].map(
    ([, x, y, cx, cy]) => ({ x: Number(x ?? cx), y: Number(y ?? cy) }),
  );
}

const PIECES: readonly (readonly [PieceName, Half, sideAtRight: boolean])[] = [
  ["front", "left", true],
  ["front", "right", false],
  ["back", "right", true],
  ["back", "left", false],
];
const titleOf = (name: PieceName, half: Half): string =>
  `${name.toUpperCase()} ${half === "left" ? "L" : "R"}, YOUR ${half.toUpperCase()} HALF`;

describe("a half on paper", () => {
  const svg = svgOf(requestFor(WORK));
  const plan = planOf(WORK);

  it.each(PIECES)("%s, %s: lies as it is cut", (name, half, sideAtRight) => {
    const part = partOf(svg, titleOf(name, half));
    const centre = textAt(part, /centre (?:front|back)/);
    const side = textAt(part, /^side seam/);
    const waist = textAt(part, /^waist seam/);
    // From centre to side to waist, clockwise on the page where the side is at the right with the waist below; turning the
    // sheet does not change it.
    const turn = (side.x - centre.x) * (waist.y - centre.y) - (side.y - centre.y) * (waist.x - centre.x);
    expect(Math.sign(turn)).toBe(sideAtRight ? 1 : -1);
  });

  it.each(PIECES)("%s, %s: has the corners of that half's piece, turned but not bent", (name, half) => {
    const corners = cornersOf(partOf(svg, titleOf(name, half)));
    const piece = plan[half].pieces.find((one) => one.name === name);
    if (piece === undefined) throw new Error(name);
    const apart = (point: "centreNeck" | "shoulderTip" | "underarm" | "centreWaist", other: typeof point): number =>
      Math.hypot(pointOf(piece, point).x - pointOf(piece, other).x, pointOf(piece, point).y - pointOf(piece, other).y);
    const printed = corners.flatMap((a) => corners.map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
    const has = (length: number): boolean => printed.some((one) => Math.abs(one - length) < 0.01);
    expect(has(apart("shoulderTip", "centreWaist"))).toBe(true);
    expect(has(apart("underarm", "centreNeck"))).toBe(true);
  });

  it.each(PIECES)("%s, %s: says how it lies, and is tacked", (name, half) => {
    const part = partOf(svg, titleOf(name, half))
      .replaceAll(/<[^>]+>/g, " ")
      .replaceAll(/\s+/g, " ");
    expect(part).toMatch(/this side up on the right side of the cloth, in one layer/);
    expect(part).toContain(`tack: ${half === "left" ? "L" : "R"}`);
    const rows = partOf(svg, titleOf(name, half))
      .match(/class="tacking"[\s\S]*?<\/g>/)?.[0]
      .match(/<path/g);
    expect(rows).toHaveLength(half === "left" ? 1 : 2);
  });
});

describe("an inch work on paper", () => {
  it("has no millimetres in what is written on its pieces", () => {
    for (const more of [{ toile: true as const, allowances: true }, { allowances: true }, {}]) {
      const words = [...svgOf(requestFor({ ...WORK, unit: "in" }, more)).matchAll(/<text[^>]*>([^<]*)<\/text>/g)]
        .map(([, text]) => text ?? "")
        // The test squares stand on the sheet for either tape.
        .filter((text) => !text.startsWith("Test"));
      expect(words.filter((text) => /\d ?(?:mm|cm)\b/.test(text))).toEqual([]);
      expect(words.join(" ").includes("TOILE: 1 ¼ in to let out")).toBe("toile" in more);
    }
  });
});
