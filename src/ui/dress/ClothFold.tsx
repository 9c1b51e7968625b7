import { clothWidthOf, MOST_SHRINKAGE, SOLD_WIDTHS } from "../../core/cloth/usualCloth";
import type { Cloth, ClothName } from "../../core/decisions/dress";
import type { Work } from "../../core/decisions/work";
import type { DressPlan } from "../../core/dress/dressPlan";
import { printedNestOf } from "../../core/plan/planOf";
import { without } from "../../core/plan/workParts";
import { clothName, partName } from "../../words/dressParts";
import { clothsOutcome, LEAST_CLOTH, MOST_CLOTH } from "../../words/dressCloth";
import { capital } from "../../words/terms/names";
import { formatLength } from "../../words/terms/length";
import { usualLength } from "../../words/dressStep";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { useRun, useSettledWork } from "../session/useWork";
import type { ClothRoomState } from "./cloth/clothRoom";
import { useCloth } from "./cloth/useCloth";
import { ClothLaid } from "./ClothLaid";
import { ClothTable } from "./ClothTable";
import { setCloth } from "./dressCommands";
import { DressFoldView } from "./DressFolds";
import { NumberField } from "./NumberField";
import { Remnant } from "./Remnant";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

const NONE: Cloth = {};

/** Of every cloth its width and ways, how much of it to buy, and whether what she has goes. */
export function ClothFold({ dress }: { readonly dress: DressPlan }) {
  const work = useSettledWork((current) => current);
  const found = useCloth(work);
  const nest = printedNestOf(work);
  const others = nest.ok ? nest.value.otherNames : undefined;
  const named = (key: string): string => {
    const part = dress.parts.find((one) => one.key === key);
    return part === undefined ? key : partName(part, others);
  };
  const bought = dress.cloths.map((name) => {
    const lay = found.lays[name];
    return { name, toBuy: lay?.kind === "answered" && lay.answer.ok ? lay.answer.value.toBuy : null };
  });
  return (
    <DressFoldView fold="cloth" outcome={clothsOutcome(bought, work.unit)}>
      {dress.cloths.map((name) => (
        <OneCloth key={name} name={name} work={work} found={found} named={named} />
      ))}
    </DressFoldView>
  );
}

interface OneClothProps {
  readonly name: ClothName;
  readonly work: Work;
  readonly found: ClothRoomState;
  readonly named: (key: string) => string;
}

function OneCloth({ name, work, found, named }: OneClothProps) {
  const { unit } = work;
  const decided = useDressDecided();
  const run = useRun();
  const cloth = decided.cloths?.[name] ?? NONE;
  const width = clothWidthOf(decided, name, unit);
  const hidden = <span className="visually-hidden">{capital(clothName(name))}: </span>;
  const put = (changed: Cloth) => setCloth(decided, name, changed);
  const field = (of: string): string => `dress.cloth.${name}.${of}`;
  return (
    <section className="one-cloth" aria-label={capital(clothName(name))}>
      <h4>{capital(clothName(name))}</h4>
      <ClothLaid state={found.lays[name]} named={named} unit={unit} />
      <Choice
        legend={say.widthOfThe(clothName(name))}
        options={SOLD_WIDTHS[unit].map((sold) => ({
          value: String(sold),
          label: <Fractions text={formatLength(sold, unit)} />,
        }))}
        value={String(width)}
        onChange={(sold) => run(put({ ...cloth, width: Number(sold) }))}
      />
      <div className="field-row">
        <LengthField
          label={
            <>
              {hidden}
              {say.orYourOwnWidth}
            </>
          }
          field={field("width")}
          value={cloth.width}
          set={(own) => put({ ...cloth, width: own })}
          clear={put(without(cloth, "width"))}
          otherwise={usualLength(width, unit)}
          refuse={(own) =>
            own < LEAST_CLOTH || own > MOST_CLOTH
              ? `Between ${formatLength(LEAST_CLOTH, unit)} and ${formatLength(MOST_CLOTH, unit)}.`
              : null
          }
        />
        <NumberField
          label={
            <>
              {hidden}
              {say.shrinksInTheWashBy}
            </>
          }
          field={field("shrinkage")}
          value={cloth.shrinkage}
          set={(shrinkage) => put({ ...cloth, shrinkage })}
          clear={put(without(cloth, "shrinkage"))}
          least={0}
          most={MOST_SHRINKAGE}
          step={1}
          unit="%"
          otherwise="0"
        />
        <LengthField
          label={
            <>
              {hidden}
              {say.iHaveThisMuch}
            </>
          }
          field={field("length")}
          value={cloth.length}
          set={(length) => put({ ...cloth, length })}
          clear={put(without(cloth, "length"))}
          otherwise={say.noneYet}
        />
      </div>
      <label className="tick">
        <input
          type="checkbox"
          checked={cloth.oneWay ?? false}
          onChange={({ target }) => run(put(target.checked ? { ...cloth, oneWay: true } : without(cloth, "oneWay")))}
        />
        {hidden}
        {say.oneWay}
      </label>
      <label className="tick">
        <input
          type="checkbox"
          checked={cloth.fold ?? false}
          onChange={({ target }) => run(put(target.checked ? { ...cloth, fold: true } : without(cloth, "fold")))}
        />
        {hidden}
        {say.laidFoldedCutDouble}
      </label>
      {cloth.length !== undefined && <Remnant name={name} work={work} state={found.remnants[name]} named={named} />}
      <ClothTable name={name} work={work} state={found.tables[name]} named={named} />
    </section>
  );
}
