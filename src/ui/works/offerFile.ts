import type { Download } from "../../store/download";

/** ms. Some browsers read the file only after the click has long been dealt with. */
const KEPT_MS = 60_000;

/** Hands a file to the wearer as a download. */
export function handOut(content: BlobPart, name: string, mediaType: string): void {
  const address = URL.createObjectURL(new Blob([content], { type: mediaType }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
}

export const offerFile = ({ name, text }: Download): void => handOut(text, name, "application/json");
