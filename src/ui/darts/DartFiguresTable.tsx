import { memo, useRef } from "react";
import type { DartFigures } from "../../core/dart/dartFigures";
import type { PlannedDart } from "../../core/plan/plan";
import type { LengthUnit } from "../../core/decisions/work";
import { besideCell, formatAngle, fullnessOverSentence } from "../../words/terms/darts";
import { formatAmount, formatAlong } from "../../words/terms/length";
import type { TermName } from "../../words/terms/glossary";
import { useInSight } from "../session/useInSight";
import { Term } from "../fields/Term";
import { useDartNow } from "./useDartNow";
import { READS_AS_NOTHING } from "../../core/tolerance";
import * as say from "../../words/dartsStep";
import { Fractions } from "../fields/Fractions";

type Row = readonly [name: string, figure: (figures: DartFigures) => string, term?: TermName];

/** The dart as printed, as the wearer's cup asks, and as drawn, side by side. */
export function DartFiguresTable({ dart: settled, unit }: { readonly dart: PlannedDart; readonly unit: LengthUnit }) {
  const place = useRef<HTMLTableElement>(null);
  const dart = useDartNow(settled, useInSight(place, true));
  const rows: readonly Row[] = [
    ["Mouth", (f) => formatAmount(f.intake, unit), "mouth"],
    ["Angle", (f) => formatAngle(f.angle), "angle"],
    [
      "Legs",
      (f) =>
        Math.abs(f.legInner - f.legOuter) < READS_AS_NOTHING
          ? formatAlong(f.legInner, unit)
          : // Where there is little room the line ends there.
            `${formatAlong(f.legInner, unit)},\n${formatAlong(f.legOuter, unit)}`,
      "legs",
    ],
    ["Fullness", (f) => formatAmount(f.fullness, unit), "fullness"],
    ...(dart.drawn.end === null
      ? []
      : ([
          [say.shortOfTheBustPoint, ({ end }) => formatAmount(end?.along ?? 0, unit)],
          [say.bustPointOffItsLine, ({ end }) => besideCell(dart.ref, end?.across ?? 0, unit)],
        ] satisfies readonly Row[])),
  ];
  return (
    <table ref={place} className="figures">
      <caption>
        <Fractions text={fullnessOverSentence(dart, unit)} />
      </caption>
      <Heads isPrinted={dart.printed !== null} isWanted={dart.wanted !== null} />
      <tbody>
        {rows.map(([name, figure, term]) => (
          <FigureRow
            key={name}
            name={name}
            term={term}
            printed={dart.printed === null ? null : figure(dart.printed)}
            wanted={dart.wanted === null ? null : figure(dart.wanted)}
            drawn={figure(dart.drawn)}
          />
        ))}
      </tbody>
    </table>
  );
}

interface FigureRowProps {
  readonly name: string;
  readonly term: TermName | undefined;
  readonly printed: string | null;
  readonly wanted: string | null;
  readonly drawn: string;
}

/** While a dart is dragged only what reads otherwise is written anew. */
const Heads = memo(({ isPrinted, isWanted }: { readonly isPrinted: boolean; readonly isWanted: boolean }) => (
  <thead>
    <tr>
      <th scope="col">{say.figure}</th>
      {isPrinted && <th scope="col">{say.printed}</th>}
      {isWanted && <th scope="col">{say.yourCupAsks}</th>}
      <th scope="col">{say.asDrawn}</th>
    </tr>
  </thead>
));

const FigureRow = memo(({ name, term, printed, wanted, drawn }: FigureRowProps) => (
  <tr>
    <RowName name={name} term={term} />
    {printed !== null && <Figure text={printed} />}
    {wanted !== null && <Figure text={wanted} />}
    <td className="drawn">
      <Fractions text={drawn} />
    </td>
  </tr>
));

const RowName = memo(({ name, term }: Pick<FigureRowProps, "name" | "term">) => (
  <th scope="row">{term === undefined ? name : <Term name={term}>{name}</Term>}</th>
));

const Figure = memo(({ text }: { readonly text: string }) => (
  <td>
    <Fractions text={text} />
  </td>
));
