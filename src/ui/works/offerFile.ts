import type { Download } from "../../store/download";

/** Hands a work to the wearer as a download. */
export function offerFile({ name, text }: Download): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
