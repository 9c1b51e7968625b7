/** How long a plan takes whose two halves are not alike: eight slips on each. */
import { onHalves, type Alteration, type Half } from "../../src/core/decisions/alteration";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import { demoWorks } from "../../src/document/demo";
import { median, print, quantile, quickest, time } from "./table";
import { wholePlan } from "./wholePlan";

/** Eight slips of a front with a side dart, on one half; lengths alike on both, so that they can be sewn together. */
const SIDE_DART = (half: Half, more: number): readonly Alteration[] => [
  { kind: "fit", id: `a-${half}`, fit: "lengthBelowBust", amount: 6, half },
  { kind: "fit", id: `b-${half}`, fit: "swayBack", amount: 5, half },
  {
    kind: "dartEnd",
    id: `c-${half}`,
    dart: { piece: "front", dart: "sideDart" },
    shorten: 4 + more,
    across: 2,
    hold: "fullness",
    giveBack: {},
    half,
  },
  {
    kind: "dartMouth",
    id: `d-${half}`,
    dart: { piece: "front", dart: "waistDart" },
    inner: 1 + more,
    outer: 1,
    giveBack: {},
    half,
  },
  { kind: "fit", id: `e-${half}`, fit: "shoulderSlope", amount: 4 + more, half },
  { kind: "fit", id: `f-${half}`, fit: "armholeGape", amount: 5 + more, half },
  { kind: "fit", id: `g-${half}`, fit: "sideSeamWaist", amount: 4 + more, half },
  { kind: "fit", id: `h-${half}`, fit: "armholeDepth", amount: 4 + more, half },
];

const BANDED = (half: Half, more: number): readonly Alteration[] => [
  { kind: "fit", id: `a-${half}`, fit: "waistDropFront", amount: 6, half },
  { kind: "fit", id: `b-${half}`, fit: "bandDepth", amount: 8, half },
  {
    kind: "dartEnd",
    id: `c-${half}`,
    dart: { piece: "cup", dart: "underBustDart" },
    shorten: 5 + more,
    across: 2,
    hold: "fullness",
    giveBack: {},
    half,
  },
  {
    kind: "dartMouth",
    id: `d-${half}`,
    dart: { piece: "back", dart: "underBustDart" },
    inner: 1 + more,
    outer: 1,
    giveBack: {},
    half,
  },
  { kind: "fit", id: `e-${half}`, fit: "edgeGape", amount: 6 + more, half },
  { kind: "fit", id: `f-${half}`, fit: "swayBack", amount: 6, half },
  { kind: "fit", id: `g-${half}`, fit: "strapPlace", amount: 5 + more, half },
  { kind: "fit", id: `h-${half}`, fit: "armholeDepth", amount: 4 + more, half },
];

const ofStyle = (style: string): Work =>
  invariant(
    demoWorks().find(({ pattern }) => pattern.style === style && pattern.own === undefined),
    style,
  );

function rowsOf(style: string, slips: (half: Half, more: number) => readonly Alteration[]) {
  const alterations = [...slips("left", 0), ...slips("right", 2)];
  const work: Work = { ...ofStyle(style), alterations };
  for (const { id, outcome } of wholePlan(work).ledger)
    if (!outcome.ok) console.log(`  ${style}: slip ${id} is refused: ${outcome.failure.code}`);
  const again = (which: (id: string) => boolean): Work => ({
    ...work,
    alterations: alterations.map((a) => (which(a.id) ? { ...a } : a)),
  });
  const even: Work = { ...work, alterations: slips("left", 0).map((a) => onHalves(a, undefined)) };
  const cups: Work = {
    ...work,
    picks: { ...work.picks, halfCups: { left: work.pattern.chart.cups.at(-1)?.label ?? "" } },
  };
  return (
    [
      [
        "eight slips for both halves, all made again",
        () => ({ ...even, alterations: even.alterations.map((a) => ({ ...a })) }),
      ],
      ["eight slips on each half, all made again", () => again(() => true)],
      ["the last one of the left changed, as in a drag", () => again((id) => id === "h-left")],
      ["the first one of the left changed", () => again((id) => id === "a-left")],
      [
        "eight on each and two cups, all made again",
        () => ({ ...cups, alterations: alterations.map((a) => ({ ...a })) }),
      ],
    ] as const
  ).map(([what, next]) => {
    const times = time(() => wholePlan(next()), 200);
    return [`${style}: ${what}`, median(times), quantile(times, 0.95), quickest(times)];
  });
}

export function benchHalves(): void {
  print(
    "A replan with two halves and eight slips on each, ms (aim: median at most 6)",
    ["what", "median", "95 %", "quickest"],
    [...rowsOf("sideDart", SIDE_DART), ...rowsOf("midriff", BANDED)],
  );
}
