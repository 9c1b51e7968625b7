import { memo } from "react";
import type { LengthUnit } from "../../core/decisions/work";
import { halvesOf, type Plan } from "../../core/plan/plan";
import type { Half } from "../../core/decisions/alteration";
import { halfNote, IN_WORDS, pieceGroupLabel, pieceInWords } from "../../words/table";

const SIDES: readonly Half[] = ["left", "right"];

/** What lies on the table, for who cannot see it. */
export const PiecesInWords = memo(({ plan, unit }: { readonly plan: Plan; readonly unit: LengthUnit }) => {
  const halves = halvesOf(plan);
  return (
    <section className="visually-hidden" aria-label={IN_WORDS}>
      {halves.map((own, at) => (
        <ul key={SIDES[at]}>
          {own.pieces.map((piece) => (
            <li key={piece.name}>
              {pieceGroupLabel(own, piece.name)}
              {halfNote(halves.length === 1 ? null : (SIDES[at] ?? null))}.
              {pieceInWords(own, piece, unit).map((sentence) => (
                <span key={sentence}> {sentence}</span>
              ))}
            </li>
          ))}
        </ul>
      ))}
    </section>
  );
});
PiecesInWords.displayName = "PiecesInWords";
