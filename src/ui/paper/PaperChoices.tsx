import { SHEET_FORMATS, type SheetFormat } from "../../core/decisions/paperChoice";
import { useId, type ReactNode } from "react";
import { PRINTED_GROUPS, replacedPieces } from "../../core/cutting/trueParts";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { PaperKind } from "../../paper/request";
import { capital, pieceWords } from "../../words/terms/names";
import {
  formatWords,
  marginRefusal,
  MEASURED_PARTS,
  PART_GROUP_WORDS,
  replacedSentence,
  toileTick,
  USUAL_MARGIN,
  usualEntry,
  NEST_HAS_NO_ALLOWANCES,
  OVERLAY_HAS_NO_ALLOWANCES,
} from "../../words/paperChoices";
import { useRun } from "../session/useWork";
import { LengthField } from "../fields/LengthField";
import { Select } from "../fields/Select";
import { AllowanceFields } from "./AllowanceFields";
import {
  dressPrinted,
  formatOf,
  isAltered,
  isNested,
  isPieceWanted,
  namesOf,
  partsOffered,
  piecesDrawn,
  sizeOf,
} from "./paperRequest";
import { useChoices } from "./choicesState";
import * as say from "../../words/paperStep";
import { Fractions } from "../fields/Fractions";

const OWN = "";
/** No label of a size has such a sign. */
const ALL = "\u0000";
const isFormat = (value: string): value is SheetFormat => (SHEET_FORMATS as readonly string[]).includes(value);

interface PaperChoicesProps {
  readonly work: Work;
  readonly plan: Plan;
  readonly kind: PaperKind;
}

/** A list with one of its entries in it, or without. */
const toggled = <T,>(list: readonly T[], entry: T, isIn: boolean): readonly T[] =>
  isIn ? [...list.filter((other) => other !== entry), entry] : list.filter((other) => other !== entry);

/** All that can be chosen of true-scale paper. */
export function PaperChoices({ work, plan, kind }: PaperChoicesProps) {
  const chosen = useChoices((choices) => choices);
  const { choose } = chosen;
  const run = useRun();
  const { unit } = work;
  const size = sizeOf(chosen, plan, kind);
  const nested = isNested(chosen, kind);
  const pieces = nested ? plan.printed : piecesDrawn(plan, size);
  const labels = plan.nest.labels;
  const sizes = labels.filter((label) => label !== size);
  const dress = dressPrinted(work, chosen, plan, kind);
  const replaced = dress === null ? [] : replacedPieces(plan, dress.parts);
  const wanted = namesOf(pieces).filter((name) => isPieceWanted(name, chosen, replaced));
  const parts = dress === null ? [] : partsOffered(dress, wanted, chosen);
  const measured = dress?.parts.some((part) => part.kind !== "piece") === true;
  const under = sizes.filter((label) => chosen.under.includes(label));
  return (
    <div className="paper-choices">
      <div className="paper-pair">
        <Select
          label={say.paper}
          value={formatOf(work)}
          options={SHEET_FORMATS.map((format) => ({ value: format, label: formatWords(format, unit) }))}
          onChange={(format) => {
            if (isFormat(format)) run({ kind: "setSheetFormat", format });
          }}
        />
        <LengthField
          label={say.whiteEdgeYourPrinterLeaves}
          field="printerMargin"
          value={work.printerMargin}
          otherwise={usualEntry(USUAL_MARGIN, unit)}
          set={(value) => ({ kind: "setPrinterMargin", value })}
          clear={{ kind: "setPrinterMargin", value: null }}
          refuse={(value) => marginRefusal(value, unit)}
        />
      </div>
      {kind === "pieces" && (
        <Select
          label={say.lineDrawn}
          value={nested ? ALL : (size ?? OWN)}
          options={[
            { value: OWN, label: say.myOwnLine },
            ...labels.map((label) => ({ value: label, label: say.printedSize(label) })),
            { value: ALL, label: say.allPrintedSizes },
          ]}
          onChange={(value) => choose({ nested: value === ALL, size: value === OWN || value === ALL ? null : value })}
        />
      )}
      <Ticks legend={say.pieces}>
        {namesOf(pieces).map((name) => (
          <Tick
            key={name}
            checked={isPieceWanted(name, chosen, replaced)}
            onChange={(on) =>
              choose(
                replaced.includes(name)
                  ? { replacedToo: toggled(chosen.replacedToo, name, on) }
                  : { leftOut: toggled(chosen.leftOut, name, !on) },
              )
            }
          >
            {capital(pieceWords(name))}
          </Tick>
        ))}
      </Ticks>
      {replaced.length > 0 && <p className="aside">{replacedSentence(replaced)}</p>}
      {PRINTED_GROUPS.map((group) => {
        const own = parts.filter((part) => part.group === group);
        return (
          own.length > 0 && (
            <Ticks key={group} legend={PART_GROUP_WORDS[group]}>
              {own.map(({ id, name }) => (
                <Tick
                  key={id}
                  checked={!chosen.partsLeftOut.includes(id)}
                  onChange={(on) => choose({ partsLeftOut: toggled(chosen.partsLeftOut, id, !on) })}
                >
                  {capital(pieceWords(name))}
                </Tick>
              ))}
            </Ticks>
          )
        );
      })}
      {measured && <p className="aside">{MEASURED_PARTS}</p>}
      {nested ? (
        <p className="aside">{NEST_HAS_NO_ALLOWANCES}</p>
      ) : kind === "pieces" ? (
        <>
          <Ticks
            legend={say.printedSizesInGreyBeneath}
            beside={
              under.length < sizes.length ? (
                <button type="button" className="link-button" onClick={() => choose({ under: sizes })}>
                  {say.allSizes}
                </button>
              ) : (
                <button type="button" className="link-button" onClick={() => choose({ under: [] })}>
                  {say.noSizes}
                </button>
              )
            }
          >
            {sizes.map((label) => (
              <Tick
                key={label}
                checked={under.includes(label)}
                onChange={(on) => choose({ under: on ? [...under, label] : under.filter((other) => other !== label) })}
              >
                {label}
              </Tick>
            ))}
          </Ticks>
          {size === null && isAltered(plan) && (
            <Tick checked={chosen.before} onChange={(before) => choose({ before })}>
              {say.withBefore}
            </Tick>
          )}
          <Tick checked={chosen.allowances} onChange={(allowances) => choose({ allowances })}>
            {say.withSeamAndHemAllowances}
          </Tick>
          {chosen.allowances ? (
            <>
              <Tick checked={chosen.toile} onChange={(toile) => choose({ toile })}>
                <Fractions text={toileTick(unit)} />
              </Tick>
              <AllowanceFields
                pieces={[...pieces, ...parts.flatMap(({ halves }) => halves.map(({ piece }) => piece))]}
              />
            </>
          ) : (
            <p className="aside">{say.noAllowances}</p>
          )}
        </>
      ) : (
        <p className="aside">{OVERLAY_HAS_NO_ALLOWANCES}</p>
      )}
    </div>
  );
}

interface TicksProps {
  readonly legend: string;
  readonly beside?: ReactNode;
  readonly children: ReactNode;
}

function Ticks({ legend, beside, children }: TicksProps) {
  const id = useId();
  return (
    <div className="ticks" role="group" aria-labelledby={id}>
      <p className="ticks-head">
        <span id={id} className="field-label">
          {legend}
        </span>
        {beside}
      </p>
      <div className="ticks-all">{children}</div>
    </div>
  );
}

interface TickProps {
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly children: ReactNode;
}

function Tick({ checked, onChange, children }: TickProps) {
  return (
    <label className="tick">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      <span>{children}</span>
    </label>
  );
}
