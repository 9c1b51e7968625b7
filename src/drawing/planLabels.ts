/** What is written beside the pieces: sizes of the printed lines, how the cut line runs, what the darts take. */
import { pointOf, type Nest, type PieceName, type PointName } from "../core/pattern/piece";
import type { Plan } from "../core/plan/plan";
import type { LengthUnit } from "../core/plan/work";
import { must } from "../core/result";
import { shareWords } from "../words/blend";
import { formatAmount } from "../words/length";
import type { Label } from "./labels";
import type { Place } from "./layout";
import type { Mm } from "../core/units";

/** Which corner of each piece the size labels stand at. */
const SIZE_CORNER: Readonly<Record<PieceName, PointName>> = {
  front: "sideWaist",
  back: "sideWaist",
  frontBasque: "sideHem",
  backBasque: "sideHem",
};

const BELOW: Mm = 13;
const BESIDE: Mm = 9;

const placeOf = (places: readonly Place[], piece: PieceName): Place | undefined => places.find((p) => p.piece === piece);

/** The label of each printed line, the ones named first having the first right to their place. */
export function sizeLabels(nest: Nest, places: readonly Place[], first: readonly string[]): readonly Label[] {
  const order = [...nest.labels.keys()].toSorted(
    (a, b) => Number(first.includes(must(nest.labels[b], "label"))) - Number(first.includes(must(nest.labels[a], "label"))),
  );
  return places.flatMap(({ piece, dx, dy }) =>
    order.flatMap((index): Label[] => {
      const found = nest.sizes[index]?.find((p) => p.name === piece);
      if (found === undefined) return [];
      const at = pointOf(found, SIZE_CORNER[piece]);
      const label = must(nest.labels[index], "label");
      return [
        {
          id: `size-${piece}-${label}`,
          x: at.x + dx,
          y: at.y + dy + BELOW,
          lines: [label],
          anchor: "middle",
          kind: "size",
          leader: null,
        },
      ];
    }),
  );
}

/** On the lower line (0), on the upper one (1), or null: in between or past them. */
function lineOf(between: readonly [string, string], share: number): 0 | 1 | null {
  const where = shareWords(between, share);
  return where === `on the ${between[0]} line` ? 0 : where === `on the ${between[1]} line` ? 1 : null;
}

const percentWords = (between: readonly [string, string], share: number): string =>
  lineOf(between, share) === null ? `${Math.round(share * 100)} %` : "on the line";

/** "from 12 to 14", and how far outside the lower line that is. */
export function cutLineWords(
  { between, share, offset }: { readonly between: readonly [string, string]; readonly share: number; readonly offset: Mm },
  unit: LengthUnit,
): readonly [string, string] {
  const [lower, upper] = between;
  const on = lineOf(between, share);
  if (on !== null) return ["", `on ${on === 0 ? lower : upper}`];
  const run = `from ${lower} to ${upper}`;
  const side = offset < 0 ? "inside" : "outside";
  if (formatAmount(Math.abs(offset), unit) === formatAmount(0, unit)) return [run, `on ${lower}`];
  return [run, `${formatAmount(Math.abs(offset), unit)} ${side} ${lower}`];
}

/** Labels of the cut lines and the darts. The waist is told on the bodice, the hip on the basque. */
export function planLabels(plan: Plan, places: readonly Place[], unit: LengthUnit): readonly Label[] {
  const labels: Label[] = [];
  for (const line of plan.cutLines) {
    const place = placeOf(places, line.piece);
    const basque = line.piece === "frontBasque" || line.piece === "backBasque";
    if (place === undefined || (line.level === "waist") === basque) continue;
    const [run, amount] = cutLineWords(line, unit);
    labels.push({
      id: `cut-${line.piece}-${line.level}`,
      x: place.box.x + place.box.width + BESIDE,
      y: line.at.y + place.dy - BESIDE * 2,
      lines: [`${line.level}: ${percentWords(line.between, line.share)}`, run, amount].filter((text) => text !== ""),
      anchor: "start",
      kind: "cut",
      leader: { x: line.at.x + place.dx, y: line.at.y + place.dy },
    });
  }
  for (const { ref, drawn } of plan.darts) {
    const place = placeOf(places, ref.piece);
    if (place === undefined) continue;
    const side = ref.dart === "sideDart";
    labels.push({
      id: `dart-${ref.piece}-${ref.dart}`,
      x: (side ? drawn.apex.x * 0.35 + drawn.outer.x * 0.65 : drawn.apex.x) + place.dx,
      y: (side ? (drawn.inner.y + drawn.outer.y) / 2 + 2 : drawn.apex.y * 0.3 + drawn.outer.y * 0.7) + place.dy,
      lines: [formatAmount(drawn.intake, unit)],
      anchor: "middle",
      kind: "dart",
      leader: null,
    });
  }
  return labels;
}
