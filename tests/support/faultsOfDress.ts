/**
 * What no dress may have, whatever was decided of it. Seams are measured by another library (bezier-js), loops and order by rules
 * written here: W = r · angle of a ring, n widths and their gathers, every level of the opening, what has to be sewn before.
 */
import { cutListOf } from "../../src/core/cloth/layCloth";
import { cutRingOf } from "../../src/core/cloth/cutRing";
import type { SectorPart } from "../../src/core/parts/part";
import type { Work } from "../../src/core/decisions/work";
import { dressOf } from "../../src/core/dress/dressOf";
import type { DressPlan } from "../../src/core/dress/dressPlan";
import { piecesOf, type PieceSet } from "../../src/core/pattern/pieceSet";
import type { Piece, SeamName } from "../../src/core/pattern/piece";
import { planOf } from "../../src/core/plan/planOf";
import type { SkirtDraft } from "../../src/core/skirts/skirtDraft";
import { badNumbers, faultsOfPlan, isSpoilt } from "./faultsOfPlan";
import { seamByBezierJs } from "./independent";

/** mm. Another library's lengths and ours agree to this, over a whole waist. */
const AGREED = 0.15;
/** mm. A hem is level when it is this near to the floor all round. */
const LEVEL = 2;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);
const differ = (a: number, b: number, most = AGREED): boolean => !(Math.abs(a - b) <= most);

/** mm. By how much an end of a lining's seam may lie further in than the shell's. */
const SET_BACK = 6;

const isBodice = (name: string): boolean => !name.endsWith("Basque");
const hasSeam = (piece: Piece, seam: SeamName): boolean => piece.edges.some((edge) => edge.seam === seam);

const seamOf = (halves: readonly [PieceSet, PieceSet], seam: SeamName, isFor: (name: string) => boolean): number =>
  sum(
    halves.flatMap((half) =>
      piecesOf(half)
        .filter(({ name }) => isFor(name))
        .map((one) => seamByBezierJs(one, seam)),
    ),
  );

/** What makes a bodice that nothing can be hung on. */
const SPOILING: ReadonlySet<string> = new Set(["seamsWalk", "halvesWalk", "outlineClosed"]);

/** null: the plan itself has faults, which are told elsewhere, or there is none. */
export function faultsOfDress(work: Work): readonly string[] | null {
  const plan = planOf(work);
  if (!plan.ok || faultsOfPlan(plan).length > 0 || plan.value.checks.some(({ ok, name }) => !ok && SPOILING.has(name)))
    return null;
  const made = dressOf(work);
  if (!made.ok) return [`no dress: ${made.failure.code}`];
  const dress = made.value;
  const skirt = dress.skirt?.ok === true ? dress.skirt.value : null;
  return [
    ...badNumbers([
      dress.waist,
      dress.skirt,
      dress.lining,
      dress.edges,
      dress.closure,
      dress.notions,
      dress.sewing,
    ]).map((path) => `no number: ${path.replaceAll(/\d+/gu, "n")}`),
    ...waistFaults(dress, skirt),
    ...(skirt === null ? [] : hemFaults(work, skirt)),
    ...liningFaults(work, dress),
    ...partFaults(work, dress),
    ...orderFaults(dress),
    ...closureFaults(work, dress, skirt),
    ...dress.checks.filter(({ ok, name }) => !ok && name !== "opensEnough").map(({ name }) => `check ${name}`),
  ];
}

/** The bodice's waist seam measured anew, and what hangs on it. */
function waistFaults({ bodice, waist }: DressPlan, skirt: SkirtDraft | null): string[] {
  const bodiceWaist = seamOf(bodice, "waist", isBodice);
  const faults = differ(bodiceWaist, waist.whole) ? ["finished waist"] : [];
  if (skirt === null) return faults;
  const sectors = skirt.parts.flatMap((part) => (part.kind === "sector" ? [part] : []));
  if (sectors.length > 0) {
    // A part on the fold is opened: twice its angle where one of its sides is the fold.
    const round = sum(sectors.map((one) => ringWaist(one) * one.cut.count * (one.foldSides === 1 ? 2 : 1)));
    // A slash takes of both its edges.
    const slashed = sum(sectors.map(({ slash = 0 }) => 2 * slash));
    if (differ(round - slashed, bodiceWaist, 0.5)) faults.push(`ring waist ${skirt.kind}`);
  } else if (skirt.tiers !== undefined) {
    if (differ(skirt.tiers[0]?.gatheredTo ?? 0, bodiceWaist)) faults.push("first tier's gathers");
    for (const [at, tier] of skirt.tiers.entries()) {
      if (differ(tier.panels * tier.panelWidth, tier.width, 0.01)) faults.push("tier's widths");
      const above = skirt.tiers[at - 1];
      if (above !== undefined && differ(tier.gatheredTo, above.width, 0.01)) faults.push("tier on tier");
    }
  } else if (
    differ(
      seamOf(skirt.halves, "waist", () => true),
      bodiceWaist,
    )
  )
    faults.push(`fitted waist ${skirt.kind}`);
  return faults;
}

/** Along the waist of a sector: an arc, or from mark to mark in very many chords. */
function ringWaist({ inner, angle, waistRadii }: SectorPart): number {
  if (waistRadii === undefined) return inner * angle;
  let length = 0;
  for (const [at, to] of waistRadii.entries()) {
    const from = waistRadii[at - 1];
    if (from === undefined) continue;
    for (let step = 0; step < CHORDS; step += 1) {
      const spot = (share: number) => {
        const [turn, radius] = [from.at + share * (to.at - from.at), from.radius + share * (to.radius - from.radius)];
        return { x: radius * Math.cos(turn), y: radius * Math.sin(turn) };
      };
      const [a, b] = [spot(step / CHORDS), spot((step + 1) / CHORDS)];
      length += Math.hypot(b.x - a.x, b.y - a.y);
    }
  }
  return length;
}

const CHORDS = 200;

function hemFaults({ dress }: Work, { lengths, kind }: SkirtDraft): string[] {
  const { waistToFloorFront: front, waistToFloorSide: side, waistToFloorBack: back } = dress?.measures ?? {};
  // A peplum follows the waist.
  if (kind === "peplum") return [];
  if (front === undefined || side === undefined || back === undefined) return [];
  const above = [front - lengths.front, side - lengths.side, back - lengths.back];
  return Math.max(...above) - Math.min(...above) > LEVEL ? [`hem not level ${kind}`] : [];
}

function liningFaults({ tapes, dress: decided }: Work, { lining, bodice, waist, skirt }: DressPlan): string[] {
  if (lining?.ok !== true) return [];
  const { skirtFigures, bodice: lined, skirt: below } = lining.value;
  const faults: string[] = [];
  const [hip = 0] = tapes[0]?.readings.hipGirth ?? [];
  if (skirtFigures !== null) {
    if (skirtFigures.hip < hip + (decided?.lining?.hipEase ?? 50) - AGREED) faults.push("lining's hip");
    const sewn = seamOf(below, "waist", () => true);
    // Each end keeps from the zip what is told, and no more.
    const keeps = (skirtFigures.free?.beside ?? 0) * 2;
    if (differ(sewn, waist.whole - keeps, 1)) faults.push("lining's waist");
    const skirtMade = skirt?.ok === true ? skirt.value : null;
    if (skirtMade !== null && skirtFigures.lengths.side > skirtMade.lengths.side)
      faults.push("lining longer than skirt");
  }
  if (piecesOf(lined[0]).length > 0) {
    const isFront = (name: string) =>
      name === "front" || name.endsWith("Front") || name === "cup" || name === "frontBand";
    for (const seam of ["side", "princess"] as const) {
      const own = seamOf(lined, seam, isBodice);
      // Each of its ends that meets an edge ends where that is set back; on a slant a little more.
      const seams = bodice.flatMap((half) => piecesOf(half).filter((piece) => hasSeam(piece, seam))).length;
      if (differ(own, seamOf(bodice, seam, isBodice), SET_BACK * seams)) faults.push(`lining's ${seam} seams`);
    }
    const sides = [isFront, (name: string) => isBodice(name) && !isFront(name)].map((isFor) =>
      seamOf(lined, "side", isFor),
    );
    if (differ(sides[0] ?? 0, sides[1] ?? 0, 0.5)) faults.push("lining's sides do not walk");
    const princess = ["centreFront", "sideFront"].map((one) => seamOf(lined, "princess", (name) => name === one));
    if (differ(princess[0] ?? 0, princess[1] ?? 0, 0.5)) faults.push("lining's princess seams do not walk");
  }
  return faults;
}

function partFaults(work: Work, { parts, sewing, bodice }: DressPlan): string[] {
  const faults: string[] = [];
  const keys = parts.map(({ key }) => key);
  if (new Set(keys).size < keys.length) faults.push("two parts of one key");
  if (keys.some((key) => !/^[A-Za-z0-9-]+$/u.test(key))) faults.push("key");
  const lines = cutListOf(parts, work.allowances ?? {}, work.pattern.closure, work.dress?.cloths, work.unit);
  if (
    lines
      .map(({ key }) => key)
      .toSorted()
      .join() !== keys.toSorted().join()
  )
    faults.push("cut list");
  const sewn = new Set(sewing.flatMap((step) => step.parts));
  faults.push(...keys.filter((key) => !sewn.has(key)).map((key) => `never sewn: ${key.replaceAll(/\d+/gu, "n")}`));
  for (const part of parts) {
    if (part.kind === "piece" && isSpoilt(part.piece) && bodice.every((half) => half[part.piece.name] !== part.piece))
      faults.push(`spoilt: ${part.group} ${part.piece.name}`);
    const { open } = cutRingOf(part, work.allowances ?? {});
    if (open.length < 3 || badNumbers(open).length > 0) faults.push(`ring: ${part.group}`);
  }
  return faults;
}

/** Every step only after those that it names, all of them named by their place in the list. */
function orderFaults({ sewing }: DressPlan): string[] {
  const faults = sewing.flatMap(({ after, name }, at) =>
    after.every((before) => Number.isInteger(before) && before >= 0 && before < at) ? [] : [`order: ${name}`],
  );
  const at = (name: string): number => sewing.findIndex((step) => step.name === name);
  for (const [first, then] of ALWAYS) {
    if (at(first) >= 0 && at(then) >= 0 && at(first) > at(then)) faults.push(`${then} before ${first}`);
  }
  return faults;
}

/** Of the trade: what cannot be reached any more once the other is sewn. */
const ALWAYS: readonly (readonly [string, string])[] = [
  ["cutOut", "sewDarts"],
  ["sewDarts", "bodiceSides"],
  ["sewDarts", "skirtToBodice"],
  ["princessSeams", "bodiceSides"],
  ["bandToCups", "bodiceSides"],
  ["makeStraps", "basteStraps"],
  ["basteStraps", "liningTopEdge"],
  ["panelSeams", "skirtSides"],
  ["skirtSides", "skirtToBodice"],
  ["joinTierPanels", "gatherTiers"],
  ["gatherTiers", "tierToTier"],
  ["tierToTier", "skirtToBodice"],
  ["fitBeforeWaist", "skirtToBodice"],
  ["skirtToBodice", "putInZip"],
  ["zipMarks", "putInZip"],
  ["putInZip", "liningSkirtToWaist"],
  ["putInZip", "handSewLining"],
  ["skirtToBodice", "hang"],
  ["hang", "hemShell"],
  ["hemShell", "hemLining"],
  ["hemShell", "press"],
];

/** Every level of the shell from the waist down to the opening's end or the hip, whichever is higher. */
function closureFaults(
  { tapes, pattern }: Work,
  { closure, waist, body }: DressPlan,
  skirt: SkirtDraft | null,
): string[] {
  if (closure === null) return skirt === null ? [] : ["skirt without a closure"];
  const { belowWaist, place } = pattern.closure;
  const faults: string[] = [];
  for (const way of closure.ways) {
    if (way.passes !== way.tightest.lets >= way.needed) faults.push("way told wrongly");
    if (way.way !== "steppingIn" || skirt === null || belowWaist >= (skirt.levels.at(-1)?.below ?? 0)) continue;
    // Stepping in, her hips end at their own line, and no level below it is drawn over them.
    const { side, back } = skirt.lengths;
    const hipLine = body.hipDepth + (place === "side" ? 0 : back - side);
    const loops = skirt.levels
      .filter(({ below }) => below <= Math.min(belowWaist, hipLine))
      .map(({ below, girth }) => girth + 2 * (belowWaist - below));
    if (way.tightest.lets > Math.min(waist.whole + 2 * belowWaist, ...loops) + 1) faults.push("loop missed");
  }
  if (closure.ways.length > 0 && closure.passes !== closure.ways.some(({ passes }) => passes)) faults.push("passes");
  const [hip = 0] = tapes[0]?.readings.hipGirth ?? [];
  const stepping = closure.ways.find(({ way }) => way === "steppingIn");
  if (stepping !== undefined && stepping.needed < hip) faults.push("hips squeezed");
  const needed = closure.leastOpening;
  for (const zip of [closure.zip.cm, closure.zip.in]) {
    if (zip !== null && needed !== null && zip.length < needed) faults.push("zip too short");
  }
  return faults;
}
