/** What lies under a place of the table, or is what has the focus. */
import type { Half } from "../../core/decisions/alteration";
import type { Plan, PlanHalf, PlannedDart } from "../../core/plan/plan";

export type SheetTarget =
  | { readonly kind: "dart"; readonly piece: string; readonly dart: string; readonly half: string | undefined }
  | { readonly kind: "slip"; readonly id: string }
  | { readonly kind: "printed"; readonly piece: string; readonly size: string }
  | { readonly kind: "piece"; readonly piece: string; readonly half: string | undefined }
  | { readonly kind: "table" };

/** The nearer to the end of what she can do there, the sooner it is meant: a dart before the piece that it lies on. */
const ORDER: readonly SheetTarget["kind"][] = ["dart", "slip", "printed", "piece"];

export function targetOf(element: Element | null): SheetTarget {
  const own = element?.closest<SVGElement>("[data-kind]") ?? null;
  if (own === null) return { kind: "table" };
  const { kind, of = "", dart = "", slip = "", size = "" } = own.dataset;
  const half = own.closest<SVGElement>("[data-half]")?.dataset["half"];
  switch (kind) {
    case "dart":
      return { kind, piece: of, dart, half };
    case "slip":
      return { kind, id: slip };
    case "printed":
      return { kind, piece: of, size };
    case "piece":
      return { kind, piece: of, half };
    default:
      return { kind: "table" };
  }
}

/** Pixels round a finger's middle that are looked at as well: a printed line is thinner than any finger. */
const REACH = 6;
const AROUND = [
  [0, 0],
  [REACH, 0],
  [-REACH, 0],
  [0, REACH],
  [0, -REACH],
] as const;

export function targetAt(sheet: Element, x: number, y: number): SheetTarget {
  const found = AROUND.flatMap(([dx, dy]) =>
    document
      .elementsFromPoint(x + dx, y + dy)
      .filter((element) => sheet.contains(element))
      .map(targetOf),
  );
  const [first] = ORDER.flatMap((kind) => found.filter((one) => one.kind === kind));
  return first ?? { kind: "table" };
}

export const halfOf = (plan: Plan, half: string | undefined, shown: Half): Half =>
  plan.left === plan.right || (half !== "left" && half !== "right") ? shown : half;

export const dartOf = (plan: PlanHalf, piece: string, dart: string): PlannedDart | undefined =>
  plan.darts.find(({ ref }) => ref.piece === piece && ref.dart === dart);
