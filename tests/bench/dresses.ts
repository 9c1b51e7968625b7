/** How long a whole dress takes when one thing of it changes, and the lay of each of its cloths. */
import { Polygon } from "@flatten-js/core";
import { layCloth } from "../../src/core/cloth/layCloth";
import type { ClothLay } from "../../src/core/cloth/cutting";
import type { Dress } from "../../src/core/decisions/dress";
import type { Work } from "../../src/core/decisions/work";
import { clothAskedOf } from "../../src/core/dress/dressCloth";
import { dressOf } from "../../src/core/dress/dressOf";
import type { DressPlan } from "../../src/core/dress/dressPlan";
import { demoDresses } from "../../src/document/demo";
import { median, print, quantile, quickest, time } from "./table";

const RUNS = 200;

function dressed(work: Work): DressPlan {
  const dress = dressOf(work);
  if (!dress.ok) throw new Error(dress.failure.code);
  return dress.value;
}

/** One number changed at a time, each time to one that was never seen before. */
function changes(work: Work): readonly (readonly [string, () => Work])[] {
  const dress = work.dress ?? {};
  const { skirt = { kind: "tiers" }, neckline = { shape: "sweetheart" }, lining, straps } = dress;
  const shape = neckline.shape === "asPattern" ? "sweetheart" : neckline.shape;
  let more = 0;
  const next = (): number => (more += 0.001);
  const withDress = (change: Dress): Work => ({ ...work, dress: { ...dress, ...change } });
  return [
    ["length of the skirt", () => withDress({ skirt: { ...skirt, length: 600 + next() } })],
    ["ease of the lining", () => withDress({ lining: { ...lining, bodiceEase: 20 + next() } })],
    ["width of the straps", () => withDress({ straps: { kind: "plain", ...straps, width: 20 + next() } })],
    ["depth of the neckline", () => withDress({ neckline: { ...neckline, shape, deeper: 4 + next() } })],
    [
      "an alteration of the bodice",
      () => ({
        ...work,
        alterations: [...work.alterations, { kind: "fit", id: "drag", fit: "waistDropFront", amount: 3 + next() }],
      }),
    ],
  ];
}

/** What an independent library takes for the areas of what was laid alone. */
const areas = ({ parts }: ClothLay): number =>
  parts.reduce((sum, { ring }) => sum + new Polygon(ring.map(({ x, y }): [number, number] => [x, y])).area(), 0);

/** Cloth of a dress laid once: the search is as long for all of them, so a few runs tell. */
const LAYS = 3;

function laysOf(work: Work): (string | number)[][] {
  return dressed(work).cloths.flatMap((name) => {
    const asked = clothAskedOf(work, name);
    if (asked === null) return [];
    const found = layCloth(asked);
    if (!found.ok) return [[work.name, name, found.failure.code]];
    const lay = found.value;
    const times = Array.from({ length: LAYS }, () => {
      const start = performance.now();
      layCloth(asked);
      return performance.now() - start;
    });
    const least = Math.max(lay.leastByArea, lay.leastByLongest);
    const independent = quickest(time(() => areas(lay), 20));
    return [
      [
        work.name,
        name,
        lay.parts.length,
        median(times),
        quickest(times),
        quickest(times) / independent,
        lay.length / least,
      ],
    ];
  });
}

export function benchDresses(): void {
  const works = demoDresses();
  print(
    "A whole dress when one thing changes, ms (aim: median at most 5)",
    ["dress", "what changed", "median", "95 %", "quickest"],
    works.flatMap((work) =>
      changes(work).map(([what, change]) => {
        const times = time(() => dressed(change()), RUNS);
        return [work.name, what, median(times), quantile(times, 0.95), quickest(times)];
      }),
    ),
  );
  print(
    "A lay of each cloth, ms (aim: at most 1000 in a worker); flatten-js takes only the areas of what was laid",
    ["dress", "cloth", "parts", "median", "quickest", "× flatten-js areas", "length ÷ lower bound"],
    works.flatMap(laysOf),
  );
}
