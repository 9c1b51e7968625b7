/** What is bought beside the cloth, in words. */
import type { LengthUnit } from "../core/decisions/work";
import { REEL } from "../core/sewing/reel";
import type { Notion } from "../core/sewing/sewingStep";
import { MM_PER_INCH } from "../core/units";
import { formatAmount, formatLength, mostLength } from "./terms/length";
import { zipToBuy, zipWords } from "./terms/zip";
import { plural } from "./terms/language";

const NOTIONS: Readonly<Record<Notion["what"], string>> = {
  zip: "Zip",
  interfacing: "Interfacing",
  elastic: "Elastic",
  buttons: "Buttons",
  thread: "Thread",
  bias: "Bias strip",
  washAwayTape: "Wash-away tape",
  hookAndEye: "Hook and eye",
};

interface NotionWords {
  readonly what: string;
  readonly amount: string;
}

const MM2_PER_DM2 = 10_000;
const MM_PER_M = 1000;
const MM_PER_YD = 36 * MM_PER_INCH;

/** Long lengths, rounded up: "240 m", "262 yd". */
const farWords = (mm: number, unit: LengthUnit): string =>
  unit === "cm" ? `${Math.ceil(mm / MM_PER_M)} m` : `${Math.ceil(mm / MM_PER_YD)} yd`;

/** "12 dm²", "186 sq in". */
const areaWords = (area: number, unit: LengthUnit): string =>
  unit === "cm" ? `${Math.ceil(area / MM2_PER_DM2)} dm²` : `${Math.ceil(area / MM_PER_INCH ** 2)} sq in`;

export const notionWords = (notion: Notion, unit: LengthUnit): NotionWords => ({
  what: NOTIONS[notion.what],
  amount: amountWords(notion, unit),
});

/** One of the other unit that is long enough for the opening as it is. */
function asItIs(sold: Notion["sold"], endsAt: Notion["endsAt"], unit: LengthUnit): string {
  const other = unit === "cm" ? "in" : "cm";
  const zip = endsAt?.[other] === null ? (sold?.[other] ?? null) : null;
  return zip === null ? "" : `; or ${zipWords(zip)} for it as it is`;
}

function amountWords({ what, count, length, width, area, sold, ...zipped }: Notion, unit: LengthUnit): string {
  switch (what) {
    case "zip": {
      const zip = sold === undefined ? null : zipToBuy(sold, unit);
      const endsAt = zipped.endsAt?.[unit] ?? null;
      if (zipped.comesApart === true && length !== null) return `open-ended, ${formatLength(length, unit)} long`;
      if (zip !== null && endsAt !== null)
        return `${zipWords(zip)}, the opening ended ${mostLength(endsAt, unit)} from the top${asItIs(sold, zipped.endsAt, unit)}`;
      if (zip !== null) return `${zipWords(zip)}, shortened from below`;
      return length === null
        ? "none: no opening of this seam lets you in"
        : `none sold is long enough for an opening of ${formatLength(length, unit)}`;
    }
    case "thread":
      return `${farWords(length ?? 0, unit)}: ${plural(count, { one: "one reel", other: `${count} reels` })} of ${farWords(REEL, unit)}`;
    case "interfacing":
      return `${areaWords(area ?? 0, unit)} in all`;
    case "buttons":
    case "hookAndEye":
      return String(count);
    case "washAwayTape":
      return length === null ? String(count) : farWords(length, unit);
    case "elastic":
    case "bias": {
      const each = length === null ? "" : formatLength(length, unit);
      const wide = width === null ? "" : `, ${formatAmount(width, unit)} wide`;
      return `${plural(count, { one: "", other: `${count} × ` })}${each}${wide}`;
    }
  }
}
