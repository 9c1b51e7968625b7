/** What no plan may have, whatever was asked of it: numbers that are none, girths of no body, faults that no check tells. */
import { outlineBounds, signedArea } from "../../src/core/geometry/outline";
import type { Piece } from "../../src/core/pattern/piece";
import { outlineOf } from "../../src/core/pattern/ring";
import type { derivePlan } from "../../src/core/plan/derivePlan";
import { halvesOf, type Plan } from "../../src/core/plan/plan";
import { crossesItself } from "./independent";

/** mm. No finished girth of a bodice is larger. */
const LARGEST_GIRTH = 3000;
/** mm. No point of a piece lies further out. */
const FURTHEST = 3000;

/** Paths of numbers that are none. */
export function badNumbers(value: unknown, path = ""): string[] {
  // A margin may be without end.
  if (typeof value === "number") return Number.isFinite(value) || path.endsWith(".margin") ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
}

/** A piece is spoilt when it has no area to speak of or crosses itself, by a library of others. */
export const isSpoilt = (piece: Piece): boolean => {
  const { min, max } = outlineBounds(outlineOf(piece));
  const area = Math.abs(signedArea(outlineOf(piece)));
  return !(area > 200 && max.x - min.x > 5 && max.y - min.y > 5) || crossesItself(piece);
};

/** Whether a check says that the outline of a piece is at fault. */
export const isToldOf = (plan: Plan, { name: piece }: Piece): boolean =>
  plan.checks.some(({ name, ok, pieces }) => name === "outlineClosed" && !ok && pieces.includes(piece));

export function faultsOfPlan(plan: ReturnType<typeof derivePlan>): readonly string[] {
  if (!plan.ok) return plan.failure.code.startsWith("plan/") ? [] : [`named ${plan.failure.code}`];
  const { value } = plan;
  const pieces = halvesOf(value).flatMap((half) => half.pieces);
  const far = pieces.some(({ points }) =>
    Object.values(points).some((point) => point !== undefined && Math.hypot(point.at.x, point.at.y) > FURTHEST),
  );
  return [
    ...(badNumbers([value.left.pieces, value.right.pieces, value.levels, value.checks]).length > 0
      ? ["no number"]
      : []),
    ...value.levels
      .filter(({ finished }) => !(finished > 0 && finished < LARGEST_GIRTH))
      .map(({ level }) => `absurd ${level} girth`),
    ...(far ? ["point far out"] : []),
    ...value.ledger.flatMap(({ outcome }) =>
      outcome.ok || outcome.failure.code.startsWith("alteration/") ? [] : [`named ${outcome.failure.code}`],
    ),
    ...(pieces.some((piece) => isSpoilt(piece) && !isToldOf(value, piece)) ? ["crossing untold"] : []),
  ];
}
