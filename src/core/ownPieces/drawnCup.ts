/** The cup version that her pattern is drawn in: said, or asked for. It is never guessed, since the bust is altered by it. */
import type { SizeChart } from "../chart/sizeChart";
import type { OwnPattern } from "../decisions/ownPattern";

/** Whether the plan can know it: said and still in the chart, or there is but one it can be. */
export const isCupSaid = (own: OwnPattern, { cups }: SizeChart): boolean =>
  cups.length < 2 || cups.some(({ label }) => label === own.cup);

const WRITTEN = /\bcups?\b[\s:.,“"'-]*([\p{L}\d]{1,4})\b/giu;

/** The one cup of the chart that the file's writings name; null: none, or more than one. */
export function writtenCup({ drawing }: OwnPattern, { cups }: SizeChart): string | null {
  const found = new Set(
    drawing.writings.flatMap(({ text }) =>
      [...text.matchAll(WRITTEN)].flatMap(
        ([, word]) => cups.find(({ label }) => label.toLowerCase() === word?.toLowerCase())?.label ?? [],
      ),
    ),
  );
  const [first, more] = found;
  return first === undefined || more !== undefined ? null : first;
}
