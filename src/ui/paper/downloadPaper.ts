import type { PaperMade } from "../../paper/request";

/** Some browsers read the file only after the click has long been dealt with. */
const KEPT_MS = 30_000;

/** Hands a finished file to the wearer as a download. */
export function offerMade({ bytes, fileName, mediaType }: PaperMade): void {
  const address = URL.createObjectURL(new Blob([bytes], { type: mediaType }));
  const link = document.createElement("a");
  link.href = address;
  link.download = fileName;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
}
