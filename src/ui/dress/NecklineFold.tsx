import {
  EDGE_FINISHES,
  NECKLINE_SHAPES,
  STRAP_KINDS,
  type EdgeFinish,
  type Edges,
  type Neckline,
  type NecklineShape,
  type StrapKind,
  type Straps,
} from "../../core/decisions/dress";
import type { DressPlan } from "../../core/dress/dressPlan";
import { USUAL_BINDING_WIDTH, USUAL_FACING_DEPTH } from "../../core/edges/draftEdges";
import type { NecklineFailure } from "../../core/neckline/necklineFailure";
import { halvesOf, type PlanHalf } from "../../core/plan/plan";
import { snapStep } from "../../core/plan/dartEdit";
import { without } from "../../core/plan/workParts";
import {
  edgeFigureWords,
  edgeLimitWords,
  FINISH_WORDS,
  gapeWords,
  NECKLINE_WORDS,
  necklineOutcome,
  STRAP_KIND_WORDS,
  strapNotes,
} from "../../words/dressEdges";
import { necklineFailureWords } from "../../words/neckline";
import { usualLength } from "../../words/dressStep";
import { capital } from "../../words/terms/names";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { useSettledPlan } from "../session/usePlan";
import { useRun, useSettledWork } from "../session/useWork";
import { setEdges, setNeckline, setStraps } from "./dressCommands";
import { DressFoldView } from "./DressFolds";
import { NECKLINE_PICTURES } from "./dressPictures";
import { PictureChoice } from "./PictureChoice";
import { useDressDecided } from "./useDress";
import * as say from "../../words/dressFolds";

const AS_PATTERN: Neckline = { shape: "asPattern" };
const NO_EDGES: Edges = {};

const SHAPES = NECKLINE_SHAPES.map((value) => ({
  value,
  label: capital(NECKLINE_WORDS[value]),
  picture: NECKLINE_PICTURES[value],
}));

/** The upper edge: its shape, the straps that hold it, and how it is finished. */
export function NecklineFold({ dress }: { readonly dress: DressPlan }) {
  const { neckline = AS_PATTERN, straps } = useDressDecided();
  const plan = useSettledPlan();
  const halves = plan.ok ? halvesOf(plan.value) : [];
  return (
    <DressFoldView
      fold="neckline"
      outcome={necklineOutcome(neckline, straps, dress.edges)}
      isDoubt={halves.some((half) => half.neckline?.ok === false)}
    >
      <NecklineFields neckline={neckline} halves={halves} />
      <StrapFields straps={straps} dress={dress} />
      <EdgeFields dress={dress} />
    </DressFoldView>
  );
}

const NECK_AMOUNTS = [
  ["deeper", say.deeperAtTheCentreFront],
  ["wider", say.widerAlongTheShoulder],
  ["backDeeper", say.deeperAtTheCentreBack],
] as const;

/** The entry that is to be put right, so that the neckline can be had. */
function entryOf(failure: NecklineFailure): (typeof NECK_AMOUNTS)[number][0] | null {
  switch (failure.code) {
    case "neckline/not-on-style":
      return null;
    case "neckline/too-deep":
      return failure.of === "back" ? "backDeeper" : "deeper";
    case "neckline/too-high":
      return "deeper";
    case "neckline/too-wide":
      return "wider";
  }
}

interface NecklineFieldsProps {
  readonly neckline: Neckline;
  readonly halves: readonly PlanHalf[];
}

function NecklineFields({ neckline, halves }: NecklineFieldsProps) {
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  const [failure = null] = halves.flatMap((half) => (half.neckline?.ok === false ? [half.neckline.failure] : []));
  const refused = failure === null ? null : { entry: entryOf(failure), text: necklineFailureWords(failure, unit) };
  const gapes = [
    ...new Set(
      halves.flatMap(({ neckline: redrawn }) =>
        redrawn?.ok === true
          ? (["front", "back"] as const).map((side) => gapeWords(side, redrawn.value[side], unit))
          : [],
      ),
    ),
  ].filter((text) => text !== null);
  return (
    <>
      <PictureChoice
        legend={say.neckline}
        options={SHAPES}
        value={neckline.shape}
        onChange={(shape: NecklineShape) => run(setNeckline({ ...neckline, shape }))}
      />
      {neckline.shape !== "asPattern" && (
        <>
          <div className="field-row">
            {NECK_AMOUNTS.map(([amount, label]) => (
              <AmountField
                key={amount}
                label={label}
                field={`dress.neckline.${amount}`}
                value={neckline[amount]}
                unit={unit}
                step={snapStep(unit)}
                refusal={refused?.entry === amount ? refused.text : null}
                set={(value) => [setNeckline({ ...neckline, [amount]: value })]}
                clear={() => [setNeckline(without(neckline, amount))]}
              />
            ))}
          </div>
          <label className="tick">
            <input
              type="checkbox"
              checked={neckline.pinched ?? false}
              onChange={({ target }) =>
                run(setNeckline(target.checked ? { ...neckline, pinched: true } : without(neckline, "pinched")))
              }
            />
            {say.pinchOut}
          </label>
          {refused?.entry === null && (
            <p className="note doubt" role="status">
              <Fractions text={refused.text} />
            </p>
          )}
          {gapes.length > 0 && (
            <ul className="dress-notes">
              {gapes.map((text) => (
                <li key={text}>
                  <Fractions text={text} />
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </>
  );
}

const STRAPS: readonly { readonly value: StrapKind | "asPattern"; readonly label: string }[] = [
  { value: "asPattern", label: say.asThePattern },
  ...STRAP_KINDS.map((value) => ({ value, label: STRAP_KIND_WORDS[value] })),
];

function StrapFields({ straps, dress }: { readonly straps: Straps | undefined; readonly dress: DressPlan }) {
  const unit = useSettledWork((work) => work.unit);
  const hasStraps = useSettledWork((work) => work.pattern.style === "midriff");
  const run = useRun();
  // What was decided before the style was another one stays in reach.
  if (!hasStraps && straps === undefined) return null;
  const { strap } = dress.edges;
  return (
    <>
      <Choice
        legend={say.straps}
        options={STRAPS}
        value={straps?.kind ?? "asPattern"}
        onChange={(kind) => run(setStraps(kind === "asPattern" ? null : { ...straps, kind }))}
      />
      {straps !== undefined && (
        <>
          <div className="field-row">
            <AmountField
              label={say.strapFinishedWidth}
              field="dress.neckline.strapWidth"
              value={straps.width}
              unit={unit}
              step={snapStep(unit)}
              set={(width) => [setStraps({ ...straps, width })]}
              clear={() => [setStraps(without(straps, "width"))]}
            />
            <AmountField
              label={say.strapWornUnderIt}
              field="dress.neckline.braStrap"
              value={straps.braStrap}
              unit={unit}
              step={snapStep(unit)}
              set={(braStrap) => [setStraps({ ...straps, braStrap })]}
              clear={() => [setStraps(without(straps, "braStrap"))]}
            />
            <AmountField
              label={say.strapLonger}
              field="dress.neckline.strapEase"
              value={straps.ease}
              unit={unit}
              step={snapStep(unit)}
              set={(ease) => [setStraps({ ...straps, ease })]}
              clear={() => [setStraps(without(straps, "ease"))]}
            />
          </div>
          {straps.kind !== "tied" && (
            <label className="tick">
              <input
                type="checkbox"
                checked={straps.elastic ?? false}
                onChange={({ target }) =>
                  run(setStraps(target.checked ? { ...straps, elastic: true } : without(straps, "elastic")))
                }
              />
              {say.elasticAtTheBackEnd}
            </label>
          )}
          {strap !== null && (
            <ul className="dress-notes">
              {strapNotes(strap, unit).map(({ text, isDoubt }) => (
                <li key={text} data-doubt={isDoubt ? "" : undefined}>
                  <Fractions text={text} />
                </li>
              ))}
            </ul>
          )}
        </>
      )}
    </>
  );
}

const FINISHES = EDGE_FINISHES.map((value) => ({ value, label: FINISH_WORDS[value] }));

const EDGE_NAMES = [
  ["neck", say.neckEdge],
  ["armhole", "Armholes"],
] as const;

function EdgeFields({ dress }: { readonly dress: DressPlan }) {
  const { edges = NO_EDGES } = useDressDecided();
  const unit = useSettledWork((work) => work.unit);
  const run = useRun();
  // A strapped edge runs from centre to side in one, and is finished in one way.
  const isOne = dress.edges.edges.some(({ at }) => at !== undefined);
  const finishes = EDGE_NAMES.flatMap(([edge, name]) => {
    const finish = dress.edges.edges.find((one) => one.edge === edge)?.finish;
    return finish === undefined || (isOne && edge === "armhole")
      ? []
      : [{ edge, name: isOne ? say.upperEdge : name, finish }];
  });
  const isFaced = finishes.some(({ finish }) => finish === "facing");
  const isBound = finishes.some(({ finish }) => finish === "binding");
  return (
    <>
      {finishes
        .filter(({ finish }) => finish !== "lining")
        .map(({ edge, name, finish }) => (
          <Choice
            key={edge}
            legend={say.finishedByA(name)}
            options={FINISHES}
            value={finish === "binding" ? "binding" : "facing"}
            onChange={(value: EdgeFinish) => run(setEdges({ ...edges, [edge]: value }))}
          />
        ))}
      {(isFaced || isBound) && (
        <div className="field-row">
          {isFaced && (
            <LengthField
              label={say.depthOfFacings}
              field="dress.neckline.facingDepth"
              value={edges.facingDepth}
              otherwise={usualLength(dress.edges.facing?.depth ?? USUAL_FACING_DEPTH, unit)}
              set={(facingDepth) => setEdges({ ...edges, facingDepth })}
              clear={setEdges(without(edges, "facingDepth"))}
            />
          )}
          {isBound && (
            <AmountField
              label={say.bindingFinishedWidth}
              field="dress.neckline.bindingWidth"
              value={edges.bindingWidth}
              otherwise={USUAL_BINDING_WIDTH}
              unit={unit}
              step={snapStep(unit)}
              set={(bindingWidth) => [setEdges({ ...edges, bindingWidth })]}
              clear={() => [setEdges(without(edges, "bindingWidth"))]}
            />
          )}
        </div>
      )}
      {dress.edges.edges.length > 0 && (
        <ul className="dress-notes">
          {edgeLimitWords(dress.edges, unit).map((text) => (
            <li key={text} data-doubt="">
              <Fractions text={text} />
            </li>
          ))}
          {dress.edges.edges.map((one) => (
            <li key={`${one.edge} ${one.at ?? ""} ${one.half ?? ""}`}>
              <Fractions text={edgeFigureWords(one, unit)} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
