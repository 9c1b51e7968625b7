/** What the page of her own pattern shows at the moment: nothing of it is saved. */
import type { FilePlace } from "../../core/decisions/fileDrawing";
import type { OwnCorner } from "../../core/decisions/ownPattern";
import type { DartName } from "../../core/pattern/piece";
import { storeOfWork } from "../session/ofWork";

export type Section = "scale" | "sizes" | "pieces";

/** What the next tap on the sheet says. Pieces by their id in the reading. */
type Pointing =
  | { readonly for: "from" | "to" }
  | { readonly for: "corner"; readonly piece: string; readonly corner: OwnCorner }
  /** `given`: the ends of its mouth that she pointed at already. */
  | {
      readonly for: "dart";
      readonly piece: string;
      readonly dart: DartName;
      readonly given: readonly FilePlace[];
    }
  | { readonly for: "bustPoint"; readonly piece: string };

/** What is lit on the sheet. */
export type Lit =
  | { readonly kind: "outline" | "open"; readonly id: string }
  | { readonly kind: "lines"; readonly value: string };

export interface OwnView {
  /** The piece that is looked at closely. */
  readonly piece: string | null;
  /** The size that its corners are shown in; null: as the page chooses. */
  readonly size: string | null;
  readonly pointing: Pointing | null;
  readonly lit: Lit | null;
  /** Ends of a length that she knows, before she gave the length. */
  readonly ends: { readonly from: FilePlace | null; readonly to: FilePlace | null };
  /** Sections that she opened or closed herself. */
  readonly opened: Readonly<Partial<Record<Section, boolean>>>;
  /** Why the last file could not be opened; null: it could. */
  readonly refusal: string | null;
  readonly look: (piece: string | null) => void;
  readonly showSize: (size: string) => void;
  readonly point: (pointing: Pointing | null) => void;
  readonly light: (lit: Lit | null) => void;
  readonly putEnd: (which: "from" | "to", place: FilePlace | null) => void;
  readonly refuse: (refusal: string | null) => void;
  readonly open: (section: Section, open: boolean) => void;
  /** Another file: what was looked at was in the one before. */
  readonly beginAfresh: () => void;
}

const FRESH = {
  piece: null,
  size: null,
  pointing: null,
  lit: null,
  ends: { from: null, to: null },
  opened: {},
  refusal: null,
} as const;

export const useOwnView = storeOfWork<OwnView>((set) => ({
  ...FRESH,
  look: (piece) => set({ piece, pointing: null, lit: null }),
  showSize: (size) => set({ size }),
  point: (pointing) => set({ pointing }),
  light: (lit) => set({ lit }),
  putEnd: (which, place) => set(({ ends }) => ({ ends: { ...ends, [which]: place } })),
  refuse: (refusal) => set({ refusal }),
  open: (section, open) => set(({ opened }) => ({ opened: { ...opened, [section]: open } })),
  beginAfresh: () => set(FRESH),
}));
