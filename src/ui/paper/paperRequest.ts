/** What is asked of the paper: what she chose, held to what the plan has. */
import type { SheetFormat } from "../../core/decisions/paperChoice";
import { USUAL_ALLOWANCES } from "../../core/cutting/usualAllowances";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { Piece, PieceName, SeamName } from "../../core/pattern/piece";
import { isPrintedAmong, printedParts, replacedPieces, type PrintedPart } from "../../core/cutting/trueParts";
import { dressOf } from "../../core/dress/dressOf";
import { dressOnPaper, type DressOnPaper, type PaperKind, type PaperRequest } from "../../paper/request";
import { USUAL_MARGIN } from "../../words/paperChoices";
import type { Chosen } from "./choicesState";

/** Sheets she can print at home: the paper that her checklist is on. */
export const formatOf = (work: Work): SheetFormat => work.sheetFormat ?? work.paper;

/** The printed size whose line is drawn; null: her own. An overlay shows what differs from print, which a printed size does not. */
export const sizeOf = (chosen: Chosen, plan: Plan, kind: PaperKind): string | null =>
  kind === "pieces" && !chosen.nested && chosen.size !== null && plan.nest.labels.includes(chosen.size)
    ? chosen.size
    : null;

/** All printed sizes at once: only of pieces. */
export const isNested = (chosen: Chosen, kind: PaperKind): boolean => kind === "pieces" && chosen.nested;

/** A printed size has the pieces of the pattern, which an alteration may since have cut in two. */
export function piecesDrawn(plan: Plan, size: string | null): readonly Piece[] {
  const at = size === null ? -1 : plan.nest.labels.indexOf(size);
  return plan.nest.sizes[at] ?? plan.left.pieces;
}

export const namesOf = (pieces: readonly Piece[]): readonly PieceName[] => pieces.map(({ name }) => name);

/** Seams that these pieces have, in the order in which allowances are kept. */
export function seamsOf(pieces: readonly Piece[]): readonly SeamName[] {
  const had = new Set(pieces.flatMap(({ edges }) => edges.map(({ seam }) => seam)));
  const isHad = (name: string): name is SeamName => (had as ReadonlySet<string>).has(name);
  return Object.keys(USUAL_ALLOWANCES).filter(isHad);
}

/** Whether any alteration of the wearer's is in the pieces, on either half. */
export const isAltered = (plan: Plan): boolean =>
  plan.ledger.some(({ source, outcome }) => source === "wearer" && outcome.ok);

/** The dress that is printed with the wearer's own line; null where there is none, or it has no place. */
export function dressPrinted(work: Work, chosen: Chosen, plan: Plan, kind: PaperKind): DressOnPaper | null {
  if (work.dress === undefined || kind !== "pieces" || chosen.nested || sizeOf(chosen, plan, kind) !== null)
    return null;
  const dress = dressOf(work);
  return dress.ok ? dressOnPaper(dress.value) : null;
}

/** Whether a piece of the pattern is printed; one that the dress is cut without is asked for by itself. */
export const isPieceWanted = (name: PieceName, chosen: Chosen, replaced: readonly PieceName[]): boolean =>
  replaced.includes(name) ? chosen.replacedToo.includes(name) : !chosen.leftOut.includes(name);

/** The parts of the dress that can be chosen: one that the paper of a piece cuts, where that piece is left out, too. */
export function partsOffered(
  { parts }: DressOnPaper,
  pieces: readonly PieceName[],
  { partsLeftOut }: Chosen,
): readonly PrintedPart[] {
  const ids = printedParts(parts, () => false).map(({ id }) => id);
  const wanted = ids.filter((id) => !partsLeftOut.includes(id));
  return printedParts(parts, isPrintedAmong(parts, wanted, pieces));
}

export function requestFor(work: Work, plan: Plan, kind: PaperKind, chosen: Chosen, day: string): PaperRequest {
  const nested = isNested(chosen, kind);
  const size = sizeOf(chosen, plan, kind);
  const dress = dressPrinted(work, chosen, plan, kind);
  const replaced = dress === null ? [] : replacedPieces(plan, dress.parts);
  const pieces = namesOf(nested ? plan.printed : piecesDrawn(plan, size)).filter((name) =>
    isPieceWanted(name, chosen, replaced),
  );
  return {
    work,
    plan,
    day,
    choices: {
      kind,
      format: formatOf(work),
      margin: work.printerMargin ?? USUAL_MARGIN,
      size,
      pieces,
      ...(dress === null
        ? {}
        : {
            parts: partsOffered(dress, pieces, chosen)
              .map(({ id }) => id)
              .filter((id) => !chosen.partsLeftOut.includes(id)),
          }),
      // Strips show only what differs: what was ticked for pieces waits for them.
      under:
        kind === "pieces" && !nested
          ? plan.nest.labels.filter((label) => label !== size && chosen.under.includes(label))
          : [],
      before: kind === "pieces" && chosen.before && size === null && !nested && isAltered(plan),
      allowances: kind === "pieces" && chosen.allowances && !nested,
      ...(kind === "pieces" && chosen.allowances && chosen.toile && !nested ? { toile: true as const } : {}),
      ...(nested ? { nested: true as const } : {}),
    },
    ...(dress === null ? {} : { dress }),
  };
}

/** Whether neither a piece nor a part of the dress is asked for. */
export const isNothingAsked = ({ choices: { pieces, parts = [] } }: PaperRequest): boolean =>
  pieces.length === 0 && parts.length === 0;

/** Whether two requests come to the same paper. A work never changes in place. */
export const isSameRequest = (a: PaperRequest, b: PaperRequest): boolean =>
  a.work === b.work &&
  a.plan === b.plan &&
  a.old?.plan === b.old?.plan &&
  a.day === b.day &&
  JSON.stringify(a.choices) === JSON.stringify(b.choices);
