/** How seams are finished: so that they may be seen through the cloth, or against fraying alone (common practice, no source). */
import type { Finished, SewingStep, SewingStepName, Showing } from "./sewingStep";

/** Which steps sew what shows. */
const SEWN_IN: Readonly<Partial<Record<SewingStepName, Showing>>> = {
  bodiceSides: "side",
  skirtSides: "side",
  panelSeams: "side",
  joinTierPanels: "side",
  joinSectors: "side",
  princessSeams: "princess",
  sewDarts: "darts",
  skirtDarts: "darts",
  skirtToBodice: "waist",
  hemShell: "hem",
};

/** Seams whose raw edges fray where nothing covers them. */
const OF_BODICE: ReadonlySet<SewingStepName> = new Set([
  "bodiceSides",
  "shoulderSeams",
  "princessSeams",
  "bandToCups",
  "centreFrontSeam",
  "centreBackSeam",
]);
const OF_SKIRT: ReadonlySet<SewingStepName> = new Set([
  "skirtSides",
  "panelSeams",
  "skirtCentreSeams",
  "joinTierPanels",
  "joinSectors",
  "seamBelowOpening",
]);

/** Sewn in one go with what lies inside it, a seam cannot be enclosed in itself. */
const WITH_INSIDE: ReadonlySet<SewingStep["way"]> = new Set(["withLining", "withFacing"]);

/** @returns null where it is pressed as it is, its edges covered or none */
export function finishOf(
  { name, way }: Pick<SewingStep, "name" | "way">,
  seen: readonly Finished[],
  covered: { readonly bodice: boolean; readonly skirt: boolean },
): SewingStep["finish"] {
  const shown = seen.find(({ of }) => of === SEWN_IN[name]);
  if (shown !== undefined && !WITH_INSIDE.has(way)) return shown.by;
  const isOpen = (OF_BODICE.has(name) && !covered.bodice) || (OF_SKIRT.has(name) && !covered.skirt);
  return isOpen ? "neatened" : null;
}
