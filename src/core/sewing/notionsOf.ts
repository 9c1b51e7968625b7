/** What is bought beside the cloth. mm. */
import type { BothStraps } from "../edges/edgesDraft";
import { signedArea } from "../geometry/outline";
import { cutDepth, cutWidth, type Part } from "../parts/part";
import type { Piece } from "../pattern/piece";
import { curveOf } from "../pattern/ring";
import type { Mm } from "../units";
import { orderOfSewing } from "./orderOfSewing";
import { REEL } from "./reel";
import type { SewingAsked } from "./sewingAsked";
import type { Notion, SewingStep, SewingStepName } from "./sewingStep";
import { readDress } from "./sewnDress";

/**
 * Thread for each length of what is sewn: of both threads of a seam, with ends left hanging; its two raw edges neatened; two
 * rows to gather by; hand stitches and tacking (common practice, no source).
 */
const THREAD = { seam: 3, neatened: 2 * 4, gathers: 2 * 2.5, hand: 2, none: 0 } as const;

/** Seams that lie inside a lining or a facing are not neatened, nor stitching that joins nothing. */
const PLAIN: ReadonlySet<SewingStepName> = new Set([
  "stayStitch",
  "stayWaist",
  "sewDarts",
  "skirtDarts",
  "liningDarts",
  "liningSkirtDarts",
  "makeStraps",
  "elasticInStraps",
  "basteStraps",
  "liningTopEdge",
  "faceTopEdge",
  "faceNeck",
  "faceArmholes",
  "bindNeck",
  "bindArmholes",
  "underStitch",
  "putInZip",
  "buttonStands",
  "vent",
  "hemLining",
]);
const BY_HAND: ReadonlySet<SewingStepName> = new Set([
  "tackZip",
  "handSewFacing",
  "handSewLining",
  "closeLiningWaist",
  "hemShell",
]);
const GATHERED: ReadonlySet<SewingStepName> = new Set(["drawUpGathers", "gatherSkirt", "gatherTiers"]);

function threadOf({ name, length }: SewingStep): Mm {
  if (length === null) return 0;
  if (GATHERED.has(name)) return length * THREAD.gathers;
  if (BY_HAND.has(name)) return length * THREAD.hand;
  return length * (THREAD.seam + (PLAIN.has(name) ? THREAD.none : THREAD.neatened));
}

export function notionsOf(asked: SewingAsked): readonly Notion[] {
  const steps = orderOfSewing(asked);
  const { closes } = readDress(asked);
  const { reading, closure, edges, parts } = asked;
  const thread = steps.reduce((sum, step) => sum + threadOf(step), 0);
  const fused = parts.filter(({ cloth }) => cloth === "interfacing");
  const plain = { length: null, width: null };
  const hasZip = closes !== "buttons" && reading !== null;
  return [
    ...(hasZip
      ? [
          {
            what: "zip" as const,
            count: 1,
            length: reading.passes ? reading.opening : reading.leastOpening,
            width: null,
            sold: reading.zip,
            endsAt: reading.endsAt,
            comesApart: reading.comesApart,
          },
        ]
      : []),
    ...(hasZip ? [{ what: "washAwayTape" as const, count: 1, length: 2 * reading.opening, width: null }] : []),
    ...(steps.some(({ name }) => name === "hookAndEye") ? [{ what: "hookAndEye" as const, count: 1, ...plain }] : []),
    ...(closes === "buttons" ? [{ what: "buttons" as const, count: closure.buttons ?? 0, ...plain }] : []),
    ...(fused.length === 0
      ? []
      : [
          {
            what: "interfacing" as const,
            count: 1,
            ...plain,
            area: fused.reduce((sum, part) => sum + areaOf(part), 0),
          },
        ]),
    ...elasticFor(edges.strap),
    ...edges.bias.map(({ width, length }) => ({ what: "bias" as const, count: 1, length, width })),
    ...(thread > 0 ? [{ what: "thread" as const, count: Math.ceil(thread / REEL), length: thread, width: null }] : []),
  ];
}

/** For each strap; together where they are alike. */
function elasticFor(strap: BothStraps | null): readonly Notion[] {
  const [left, right] = [strap?.left.elastic ?? null, strap?.right.elastic ?? null];
  const of = (elastic: typeof left, count: number): readonly Notion[] =>
    elastic === null ? [] : [{ what: "elastic", count, ...elastic }];
  return left?.width === right?.width ? of(left, 2) : [...of(left, 1), ...of(right, 1)];
}

const ofPiece = (one: Piece): number => Math.abs(signedArea(one.edges.map((edge) => curveOf(one, edge))));

/** All that is cut of it, without the allowances of drafted pieces; mm². */
function areaOf(part: Part): number {
  const times = part.cut.count * (part.cut.onFold ? 2 : 1);
  if (part.kind === "rectangle") return times * cutWidth(part) * cutDepth(part);
  if (part.kind === "sector") return (times * part.angle * (part.outer ** 2 - part.inner ** 2)) / 2;
  const { piece, otherHalf } = part;
  return times * (ofPiece(piece) + (otherHalf === undefined ? 0 : ofPiece(otherHalf)));
}
