import { SKIRT_KINDS, TIER_CUTS, type Skirt, type SkirtKind, type TierCut } from "../../core/decisions/dress";
import { LIMITS } from "../../core/decisions/limits";
import type { Allowances } from "../../core/decisions/allowances";
import type { DressPlan } from "../../core/dress/dressPlan";
import { hemAllowanceOf } from "../../core/parts/seamAllowance";
import {
  FLARE_MOST,
  SHARE_RANGE,
  USUAL_FLARE,
  USUAL_HIP_EASE,
  USUAL_PEPLUM_SHARE,
  USUAL_SHARE,
  USUAL_TIERS,
  USUAL_VENT,
} from "../../core/skirts/skirtPractice";
import { without } from "../../core/plan/workParts";
import { capital } from "../../words/terms/names";
import {
  CIRCLE_SHARES,
  RATIO_HINT,
  skirtFailureWords,
  skirtFigures,
  skirtKindWords,
  skirtNoteWords,
  skirtOutcome,
  TIER_CUT_WORDS,
  tierName,
  type SkirtFailureWords,
} from "../../words/dressSkirt";
import { usualLength } from "../../words/dressStep";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { snapStep } from "../../core/plan/dartEdit";
import { useRun, useSettledWork } from "../session/useWork";
import { setSkirt, withTier, withTiers } from "./dressCommands";
import { DressFoldView } from "./DressFolds";
import { DressFigures } from "./DressFigures";
import { SKIRT_PICTURES } from "./dressPictures";
import { NumberField } from "./NumberField";
import { PictureChoice } from "./PictureChoice";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

const KINDS = (["none", ...SKIRT_KINDS] as const).map((value) => ({
  value,
  label: value === "none" ? "None" : capital(skirtKindWords(value)),
  picture: SKIRT_PICTURES[value],
}));

/** The shape of the skirt, then only what that shape asks for, and what it comes to. */
export function SkirtFold({ dress }: { readonly dress: DressPlan }) {
  const { skirt } = useDressDecided();
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const draft = dress.skirt;
  const made = draft?.ok === true ? draft.value : null;
  const failure = draft?.ok === false ? skirtFailureWords(draft.failure, unit) : null;
  const choose = (kind: SkirtKind | "none"): void =>
    run(setSkirt(kind === "none" ? null : skirt === undefined ? { kind } : { ...skirt, kind }));
  return (
    <DressFoldView fold="skirt" outcome={skirtOutcome(skirt, made, unit)} isDoubt={failure !== null} isOpen>
      <PictureChoice
        legend={say.shapeOfTheSkirt}
        legendHidden
        options={KINDS}
        value={skirt?.kind ?? "none"}
        onChange={choose}
      />
      {skirt !== undefined && (
        <>
          <SkirtFields skirt={skirt} dress={dress} failure={failure} />
          {failure !== null && !BESIDE_A_FIELD.has(failure.beside) && (
            <div className="note doubt" role="status">
              <p>
                <Fractions text={failure.text} />
              </p>
              {failure.beside === "hip" && (
                <p>
                  <a className="button" href="#tape">
                    {say.goToTape}
                  </a>
                </p>
              )}
            </div>
          )}
          {made !== null && (
            <>
              <DressFigures lines={skirtFigures(made, unit)} label={say.whatTheSkirtComesTo} />
              {made.notes.length > 0 && (
                <ul className="dress-notes">
                  {made.notes.map((note, at) => (
                    <li key={at} data-doubt={note.code === "skirt/no-step" ? "" : undefined}>
                      <Fractions text={skirtNoteWords(note, made, unit)} />
                    </li>
                  ))}
                </ul>
              )}
            </>
          )}
        </>
      )}
    </DressFoldView>
  );
}

/** Failures that stand beside the field they speak of. */
const BESIDE_A_FIELD: ReadonlySet<string> = new Set(["length", "ratio"]);

const USUAL: Allowances = {};

interface SkirtFieldsProps {
  readonly skirt: Skirt;
  readonly dress: DressPlan;
  readonly failure: SkirtFailureWords | null;
}

function SkirtFields({ skirt, dress, failure }: SkirtFieldsProps) {
  const { kind } = skirt;
  const unit = useSettledWork((work) => work.unit);
  const allowances = useSettledWork((work) => work.allowances ?? USUAL);
  const run = useRun();
  const made = dress.skirt?.ok === true ? dress.skirt.value : null;
  const beside = (field: SkirtFailureWords["beside"]): string | null =>
    failure?.beside === field ? failure.text : null;
  const warnings = [beside("length")].filter((text) => text !== null);
  const usual = made === null ? {} : { otherwise: usualLength(made.lengths.side, unit) };
  const { panels = 2 } = skirt;
  const isFitted = kind === "aLine" || kind === "straight";
  const isGathered = kind === "gathered" || kind === "tiers";
  return (
    <>
      <div className="field-row">
        {kind === "peplum" ? (
          <LengthField
            label={say.lengthOfThePeplum}
            field="dress.skirt.peplumLength"
            value={skirt.peplumLength}
            set={(peplumLength) => setSkirt({ ...skirt, peplumLength })}
            clear={setSkirt(without(skirt, "peplumLength"))}
            warnings={warnings}
            {...usual}
          />
        ) : (
          <LengthField
            label={say.waistToHemSide}
            field="dress.skirt.length"
            value={skirt.length}
            set={(length) => setSkirt({ ...skirt, length })}
            clear={setSkirt(without(skirt, "length"))}
            warnings={warnings}
            {...usual}
          />
        )}
        {isGathered && (
          <NumberField
            label={kind === "tiers" ? say.eachGatheredTimes : say.gatheredTimesTheWaist}
            field="dress.skirt.ratio"
            value={skirt.ratio}
            set={(ratio) => setSkirt({ ...skirt, ratio })}
            clear={setSkirt(without(skirt, "ratio"))}
            least={1}
            most={20}
            step={0.1}
            otherwise={ratioShown(dress)}
            hint={RATIO_HINT}
            refusal={beside("ratio")}
          />
        )}
        {isFitted && (
          <AmountField
            label={say.easeAtTheHip}
            field="dress.skirt.hipEase"
            value={skirt.hipEase}
            otherwise={USUAL_HIP_EASE}
            unit={unit}
            step={snapStep(unit)}
            set={(hipEase) => [setSkirt({ ...skirt, hipEase })]}
            clear={() => [setSkirt(without(skirt, "hipEase"))]}
          />
        )}
        {kind === "aLine" && (
          <NumberField
            label={say.flareOfEachSide}
            field="dress.skirt.flare"
            value={skirt.flare}
            otherwise={String(USUAL_FLARE)}
            set={(flare) => setSkirt({ ...skirt, flare })}
            clear={setSkirt(without(skirt, "flare"))}
            least={0}
            most={FLARE_MOST}
            step={1}
            unit="°"
          />
        )}
        {kind === "straight" && (
          <LengthField
            label={say.ventAboveTheHem}
            field="dress.skirt.vent"
            value={skirt.vent}
            otherwise={usualLength(USUAL_VENT, unit)}
            set={(vent) => setSkirt({ ...skirt, vent })}
            clear={setSkirt(without(skirt, "vent"))}
            hint={say.noVent}
          />
        )}
        <AmountField
          label={say.hemTurnedUp}
          field="dress.skirt.hem"
          value={skirt.hem}
          otherwise={hemAllowanceOf(skirt, allowances)}
          unit={unit}
          step={snapStep(unit)}
          set={(hem) => [setSkirt({ ...skirt, hem })]}
          clear={() => [setSkirt(without(skirt, "hem"))]}
        />
      </div>
      {(kind === "circle" || kind === "peplum") && <ShareFields skirt={skirt} isPeplum={kind === "peplum"} />}
      {kind === "aLine" && (
        <>
          <Choice
            legend={say.panelsAllRound}
            options={PANELS}
            value={String(panels)}
            onChange={(chosen) => {
              const count = ([2, 4, 6] as const).find((one) => String(one) === chosen);
              if (count !== undefined) run(setSkirt({ ...skirt, panels: count }));
            }}
          />
          {panels !== 6 && (
            <Choice
              legend={say.waistDarts}
              options={DARTS}
              value={skirt.darts === false ? "shut" : "sewn"}
              onChange={(darts) => run(setSkirt({ ...skirt, darts: darts === "sewn" }))}
            />
          )}
        </>
      )}
      {kind === "tiers" && <TierFields skirt={skirt} dress={dress} failure={beside("tiers")} />}
      {isGathered && (
        <Choice
          legend={say.cutFrom}
          options={CUTS}
          value={skirt.tierCut ?? "even"}
          onChange={(tierCut) => run(setSkirt({ ...skirt, tierCut }))}
        />
      )}
      {kind !== "peplum" && (
        <label className="tick">
          <input
            type="checkbox"
            checked={skirt.pockets ?? false}
            onChange={({ target }) =>
              run(setSkirt(target.checked ? { ...skirt, pockets: true } : without(skirt, "pockets")))
            }
          />
          {say.pocketsInTheSideSeams}
        </label>
      )}
    </>
  );
}

const PANELS = ["2", "4", "6"].map((value) => ({ value, label: value }));
const DARTS: readonly { readonly value: "sewn" | "shut"; readonly label: string }[] = [
  { value: "sewn", label: "sewn" },
  { value: "shut", label: say.shutIntoTheFlare },
];
const CUTS: readonly { readonly value: TierCut; readonly label: string }[] = TIER_CUTS.map((value) => ({
  value,
  label: TIER_CUT_WORDS[value],
}));

/** What the ratio comes to where she entered none. */
function ratioShown({ skirt, waist }: DressPlan): string {
  const [first] = skirt?.ok === true ? (skirt.value.tiers ?? []) : [];
  return first === undefined ? "" : String(Math.round((first.width / waist.whole) * 100) / 100);
}

function ShareFields({ skirt, isPeplum }: { readonly skirt: Skirt; readonly isPeplum: boolean }) {
  const run = useRun();
  const share = isPeplum ? skirt.peplumShare : skirt.share;
  const put = (value: number) => setSkirt(isPeplum ? { ...skirt, peplumShare: value } : { ...skirt, share: value });
  const usual = isPeplum ? USUAL_PEPLUM_SHARE : USUAL_SHARE;
  const clear = setSkirt(isPeplum ? without(skirt, "peplumShare") : without(skirt, "share"));
  return (
    <>
      <Choice
        legend={say.howMuchOfACircle}
        options={CIRCLE_SHARES.map((one) => ({ value: String(one.share), label: one.words }))}
        value={String(share ?? usual)}
        onChange={(value) => run(put(Number(value)))}
      />
      <NumberField
        label={say.perCentOfCircle}
        field={isPeplum ? "dress.skirt.peplumShare" : "dress.skirt.share"}
        value={share === undefined ? undefined : share * 100}
        set={(percent) => put(percent / 100)}
        clear={clear}
        least={SHARE_RANGE.least * 100}
        most={SHARE_RANGE.most * 100}
        otherwise={String(usual * 100)}
        step={5}
        unit="%"
      />
    </>
  );
}

interface TierFieldsProps {
  readonly skirt: Skirt;
  readonly dress: DressPlan;
  readonly failure: string | null;
}

const COUNTS = Array.from({ length: LIMITS.tiers.most - LIMITS.tiers.least + 1 }, (_, at) =>
  String(LIMITS.tiers.least + at),
).map((value) => ({ value, label: value }));

const GROWING: readonly { readonly value: "growing" | "alike"; readonly label: string }[] = [
  { value: "growing", label: say.eachDeeperByAQuarter },
  { value: "alike", label: say.allAlike },
];

function TierFields({ skirt, dress, failure }: TierFieldsProps) {
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const made = dress.skirt?.ok === true ? (dress.skirt.value.tiers ?? []) : [];
  const count = skirt.tiers?.length ?? USUAL_TIERS;
  return (
    <>
      <Choice
        legend={say.tiers}
        options={COUNTS}
        value={String(count)}
        onChange={(value) => run(setSkirt(withTiers(skirt, Number(value))))}
      />
      <Choice
        legend={say.depths}
        options={GROWING}
        value={skirt.growing === true ? "growing" : "alike"}
        onChange={(value) =>
          run(setSkirt(value === "growing" ? { ...skirt, growing: true } : without(skirt, "growing")))
        }
      />
      <div className="tier-rows" role="group" aria-label={say.eachTierByItself}>
        {Array.from({ length: count }, (_, at) => {
          const tier = skirt.tiers?.[at] ?? {};
          const figures = made[at];
          const name = <span className="visually-hidden">{tierName(at)}: </span>;
          return (
            <div key={at} className="tier-row">
              <span className="aside">{tierName(at)}</span>
              <LengthField
                label={
                  <>
                    {name}
                    {say.tierDeep}
                  </>
                }
                field={`dress.skirt.tiers.${at}.depth`}
                value={tier.depth}
                set={(depth) => setSkirt(withTier(skirt, count, at, { ...tier, depth }))}
                clear={setSkirt(withTier(skirt, count, at, without(tier, "depth")))}
                {...(figures === undefined ? {} : { otherwise: usualLength(figures.depth, unit) })}
              />
              {skirt.tierCut === "wholeWidths" ? (
                <NumberField
                  label={
                    <>
                      {name}
                      {say.tierWidths}
                    </>
                  }
                  field={`dress.skirt.tiers.${at}.widths`}
                  value={tier.widths}
                  set={(widths) => setSkirt(withTier(skirt, count, at, { ...tier, widths }))}
                  clear={setSkirt(withTier(skirt, count, at, without(tier, "widths")))}
                  least={1}
                  most={40}
                  step={1}
                  isWhole
                  {...(figures === undefined ? {} : { otherwise: String(figures.panels) })}
                />
              ) : (
                <NumberField
                  label={
                    <>
                      {name}
                      {say.tierTimes}
                    </>
                  }
                  field={`dress.skirt.tiers.${at}.ratio`}
                  value={tier.ratio}
                  set={(ratio) => setSkirt(withTier(skirt, count, at, { ...tier, ratio }))}
                  clear={setSkirt(withTier(skirt, count, at, without(tier, "ratio")))}
                  least={1}
                  most={20}
                  step={0.1}
                  {...(figures === undefined
                    ? {}
                    : { otherwise: String(Math.round((figures.width / figures.gatheredTo) * 100) / 100) })}
                />
              )}
            </div>
          );
        })}
      </div>
      {failure !== null && (
        <p className="field-error" role="alert">
          <Fractions text={failure} />
        </p>
      )}
    </>
  );
}
