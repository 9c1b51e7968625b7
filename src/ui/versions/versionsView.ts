/** Which versions are looked at. It belongs to the work that is open, and nothing of it is saved. */
import { NOW, type Version } from "../../core/versions/versionsOf";
import { storeOfWork } from "../session/ofWork";

interface VersionsView {
  /** Keys of versions; null: not chosen. */
  readonly shown: string | null;
  /** "": against nothing. */
  readonly against: string | null;
  /** What is printed: the way from one to another; null: from the trial sewn last to what is decided now. */
  readonly printed: { readonly from: string; readonly to: string } | null;
  readonly show: (key: string) => void;
  readonly holdAgainst: (key: string) => void;
  readonly print: (from: string, to: string) => void;
}

export const useVersionsView = storeOfWork<VersionsView>((set) => ({
  shown: null,
  against: null,
  printed: null,
  show: (shown) => set({ shown }),
  holdAgainst: (against) => set({ against }),
  print: (from, to) => set({ printed: { from, to } }),
}));

export const NOTHING = "";

export interface Looked {
  readonly shown: Version;
  readonly against: Version | null;
  /** The older of the two, and the newer; null where one is looked at alone. */
  readonly pair: { readonly older: Version; readonly newer: Version } | null;
}

/** Unless she chose: what is decided now against the trial sewn last; a trial against the one before it. */
export function lookedAt(versions: readonly Version[], chosen: Pick<VersionsView, "shown" | "against">): Looked | null {
  const at = Math.max(
    0,
    versions.findIndex(({ key }) => key === (chosen.shown ?? NOW)),
  );
  const shown = versions[at];
  if (shown === undefined) return null;
  const own = chosen.against === NOTHING ? null : versions.find(({ key }) => key === chosen.against);
  const usual = versions[at + 1] ?? null;
  const against = own === undefined || own === shown ? usual : own;
  if (against === null) return { shown, against: null, pair: null };
  const [newer = shown, older = shown] = versions.filter((one) => one === shown || one === against);
  return { shown, against, pair: { older, newer } };
}

/** The paper she has and the version she wants; null: nothing was sewn yet. */
export function printedWay(
  versions: readonly Version[],
  printed: VersionsView["printed"],
): { readonly from: Version; readonly to: Version } | null {
  const find = (key: string | undefined, otherwise: Version | undefined): Version | undefined =>
    versions.find((one) => one.key === key) ?? otherwise;
  const [now, last] = versions;
  const [from, to] = [find(printed?.from, last), find(printed?.to, now)];
  return from === undefined || to === undefined ? null : { from, to };
}
