/** Whether following a sheet leads to the plan's pieces: how far every corner is off, and every seam that is walked. */
import { checklistText } from "../../src/cli/text";
import type { Work } from "../../src/core/decisions/work";
import type { Piece } from "../../src/core/pattern/piece";
import { derivePlan } from "../../src/core/plan/derivePlan";
import type { Plan } from "../../src/core/plan/plan";
import { follow, NotCovered, sewnLength, SheetAtFault, type Followed } from "./follow";
import { halfPrinted } from "./lengths";
import { jobsForHalf, readSheet } from "./sheet";
import { paperOf, tissueOf, type PrintedCup } from "./tissue";

/** mm. A pencil and a ruler, before what the sheet itself rounds off. */
const CORNER = 1;
const SEAM = 0.5;

/** What is sewn to what, told once more by hand; the back shoulder is eased in where the pieces are the stand-in's. */
const SEWN: readonly (readonly [seam: string, one: readonly string[], other: readonly string[], ease: number])[] = [
  ["shoulder", ["back"], ["front", "centreFront", "sideFront"], 6],
  ["princess", ["sideFront"], ["centreFront"], 0],
  ["side", ["back"], ["front", "sideFront", "cup"], 0],
  ["side", ["backBand"], ["frontBand"], 0],
  ["side", ["backBasque"], ["frontBasque"], 0],
  ["underBust", ["cup"], ["frontBand"], 0],
  ["underBust", ["back"], ["backBand"], 0],
  ["waist", ["front", "centreFront", "sideFront", "frontBand"], ["frontBasque"], 0],
  ["waist", ["back", "backBand"], ["backBasque"], 0],
];

export interface Off {
  readonly what: string;
  readonly by: number;
  /** What the ruler and the rounding of the sheet allow. */
  readonly allowed: number;
}

export interface Arrival {
  readonly corners: readonly Off[];
  readonly seams: readonly Off[];
  /** Alterations that were followed by where the sheet says their points come to lie. */
  readonly onTheWay: readonly string[];
  readonly notCovered: readonly string[];
  readonly atFault: readonly string[];
}

/** The cup versions that the halves are traced from. */
export const printedFor = ({ left, right }: Plan): readonly PrintedCup[] =>
  [left, right].map(({ nest, sizing }) => ({ cup: sizing.cup.label, nest }));

export const tooFar = ({ corners, seams }: Arrival): readonly Off[] =>
  [...corners, ...seams].filter(({ by, allowed }) => !(by <= allowed));

/** Follows the sheet of a work on both halves; null where the work has no plan. */
export function arrivalOf(
  work: Work,
  text?: (text: string) => string,
  derive: (work: Work) => ReturnType<typeof derivePlan> = derivePlan,
): Arrival | null {
  const plan = derive(work);
  if (!plan.ok) return null;
  const said = checklistText(work, plan.value);
  const sheet = readSheet(text === undefined ? said : text(said));
  const tissue = tissueOf(printedFor(plan.value));
  const half = halfPrinted(work.unit);
  // Of her own pieces each seam is eased as it is printed.
  const printed = plan.value.nest.source === "own" ? plan.value.printed.map(paperOfNamed) : null;
  const all: Arrival = { corners: [], seams: [], onTheWay: [], notCovered: [], atFault: [] };
  const sides = plan.value.left === plan.value.right ? (["left"] as const) : (["left", "right"] as const);
  return sides.reduce((sum, side): Arrival => {
    const { pieces } = plan.value[side];
    const followed: Followed[] = [];
    const [onTheWay, notCovered, atFault]: [string[], string[], string[]] = [[], [], []];
    for (const group of sheet.filter(({ title }) => title !== "ALL PIECES TOGETHER")) {
      try {
        const done = follow(group, jobsForHalf(group.jobs, side), tissue);
        followed.push(done.followed);
        onTheWay.push(...done.onTheWay);
      } catch (error) {
        if (error instanceof NotCovered) notCovered.push(`${group.title}: ${error.message}`);
        else if (error instanceof SheetAtFault) atFault.push(`${group.title}: ${error.message}`);
        else throw error;
      }
    }
    const isWhole = notCovered.length + atFault.length === 0;
    return {
      corners: [...sum.corners, ...followed.flatMap((one) => cornersOff(one, pieces, half))],
      seams: [...sum.seams, ...(isWhole ? seamsOff(followed, half, printed) : [])],
      onTheWay: [...sum.onTheWay, ...onTheWay],
      notCovered: [...sum.notCovered, ...notCovered],
      atFault: [...sum.atFault, ...atFault, ...missing(followed, pieces, isWhole)],
    };
  }, all);
}

/** Pieces and points that the plan has and the sheet leads to none. */
export function missing(followed: readonly Followed[], pieces: readonly Piece[], isWhole: boolean): readonly string[] {
  return pieces.flatMap((piece) => {
    const own = followed.find(({ name }) => name === piece.name);
    if (own === undefined) return isWhole ? [`no ${piece.name}`] : [];
    const corners = new Set(paperOf(piece).lines.flatMap(({ from, to }) => [from, to]));
    const made = new Set(own.lines.flatMap(({ from, to }) => [from, to]));
    const unlike = [...corners].filter((name) => !made.has(name));
    return unlike.length === 0 ? [] : [`${piece.name}: the sheet leads to no ${unlike.join(", ")}`];
  });
}

export function cornersOff(followed: Followed, pieces: readonly Piece[], half: number): readonly Off[] {
  const piece = pieces.find(({ name }) => name === followed.name);
  if (piece === undefined) return [];
  const paper = paperOf(piece);
  // Gathers have a mouth and no end.
  const ends = piece.darts.filter(({ gathered }) => gathered !== true).map(({ apex }) => apex);
  const names = new Set([...paper.lines.map(({ from }) => from), ...ends]);
  return [...names].flatMap((name): readonly Off[] => {
    const [is, due] = [followed.places.get(name), paper.places.get(name)];
    if (is === undefined || due === undefined) return [];
    const by = Math.hypot(is.x - due.x, is.y - due.y);
    return [{ what: `${followed.name} ${name}`, by, allowed: CORNER + half }];
  });
}

type OnPiece = Pick<Followed, "name" | "lines">;

const paperOfNamed = (piece: Piece): OnPiece => ({ name: piece.name, lines: paperOf(piece).lines });

/** How much longer the first side of a seam is than the other. */
const longer = (all: readonly OnPiece[], seam: string, [one, other]: readonly (readonly string[])[]): number => {
  const length = (names: readonly string[] = []): number =>
    all.filter(({ name }) => names.includes(name)).reduce((sum, piece) => sum + sewnLength(piece, seam), 0);
  return length(one) - length(other);
};

export function seamsOff(
  followed: readonly Followed[],
  half: number,
  printed: readonly OnPiece[] | null,
): readonly Off[] {
  return SEWN.flatMap(([seam, one, other, usual]): readonly Off[] => {
    const ease = printed === null ? usual : longer(printed, seam, [one, other]);
    const sides = [one, other].map((names) =>
      followed.filter(({ name, lines }) => names.includes(name) && lines.some((line) => line.seam === seam)),
    );
    const [first = [], second = []] = sides;
    if (first.length === 0 || second.length === 0) return [];
    // Every end of a stretch that was put by a printed amount brings its half unit; a piece on which none is told brings one,
    // since what rounds to nothing is told by nothing.
    const put = [...first, ...second].reduce(
      (count, { lines, told }) =>
        count +
        Math.max(
          1,
          new Set(
            lines
              .filter((line) => line.seam === seam && !line.isMouth)
              .flatMap(({ from, to }) => [from, to].filter((end) => told.has(end))),
          ).size,
        ),
      0,
    );
    const by = Math.abs(longer(followed, seam, [one, other]) - ease);
    return [{ what: `${seam} of ${one.join("+")}`, by, allowed: SEAM + half * put }];
  });
}
