/** What truing changed after the last alteration, in words. */
import type { TruingChange } from "../core/truing/changes";
import type { PointName } from "../core/pattern/piece";
import type { LengthUnit } from "../core/decisions/work";
import { pointWords } from "./checks";
import { formatAmount } from "./terms/length";
import { capital, pieceWords, seamWords } from "./terms/names";
import { fixedDecimals } from "./terms/language";

const isAtCentre = (point: PointName | null): boolean => point === null || point.startsWith("centre");

/** "Front side seam: 2 mm taken back at the waist, so that it walks with its partner." */
export function truedSentence({ piece, seam, what, point, amount }: TruingChange, unit: LengthUnit): string {
  const line =
    seam === "centre" ? capital(seamWords(seam, piece)) : `${capital(pieceWords(piece))} ${seamWords(seam, piece)}`;
  const at = point === null ? "" : ` at the ${pointWords(point)}`;
  switch (what) {
    case "seamWalked":
      return `${line}: ${formatAmount(Math.abs(amount), unit)} evened out${at}, so that it walks with its partner.`;
    case "seamSmoothed":
      return `${line}: drawn smooth${at}.`;
    case "cornerSquared":
      return `${line}: its end${at} turned by ${fixedDecimals(Math.abs(amount), 1)}°, so that ${isAtCentre(point) ? "the corner is square" : "it runs straight on into the piece it meets"}.`;
    case "legsEqualled":
      return `${line}: the legs of its dart brought to one length, ${formatAmount(Math.abs(amount), unit)} each.`;
  }
}
