/** What truing changed, put together for the wearer. */
import type { PieceName, PointName, SeamName } from "../pattern/piece";
import { WORTH_NOTING } from "../tolerance";

/** What truing changed at the end of the chain. */
export interface TruingChange {
  readonly piece: PieceName;
  readonly seam: SeamName;
  readonly what: "seamWalked" | "seamSmoothed" | "cornerSquared" | "legsEqualled";
  readonly point: PointName | null;
  /** mm the seam or corner moved; degrees for a corner squared. */
  readonly amount: number;
}

/** Changes of the same kind in the same place added up; what is too small to see is left out. */
export function mergeChanges(changes: readonly TruingChange[]): readonly TruingChange[] {
  const merged = new Map<string, TruingChange>();
  for (const change of changes) {
    const key = [change.piece, change.seam, change.what, change.point].join(" ");
    const known = merged.get(key);
    merged.set(key, known === undefined ? change : { ...known, amount: known.amount + change.amount });
  }
  return [...merged.values()].filter(({ amount }) => Math.abs(amount) >= WORTH_NOTING);
}
