/* oxlint-disable jsx-a11y/no-noninteractive-tabindex, jsx-a11y/no-noninteractive-element-interactions -- the sheet is moved with the keys, as a scrolled region is */
import { printedNestOf } from "../../core/plan/planOf";
import { dartOfAlteration } from "../../core/decisions/alteration";
import "./table.css";
import "./overlay.css";
import { useCallback, useMemo, useRef, useState } from "react";
import type { DartRef, NestSource } from "../../core/pattern/piece";
import { halvesOf, type Plan, type PlanHalf } from "../../core/plan/plan";
import { type LengthUnit } from "../../core/decisions/work";
import {
  boxOf,
  keepApart,
  nearestApart,
  pieceLabels,
  placePieces,
  planLabels,
  sizeLabels,
  sizesInUse,
  type Label,
  type Place,
} from "../../drawing/index";
import { dartHandleLabel } from "../../words/terms/darts";
import { capital, pieceWords } from "../../words/terms/names";
import { sourceParts } from "../../words/pieceSource";
import { usePlan, useSettledPlan } from "../session/usePlan";
import { useSettledWork, useWork, useWorkStore } from "../session/useWork";
import { useViewState } from "../session/viewState";
import type { HandleEnd } from "../../core/plan/dartEdit";
import { HalfSwitch } from "./HalfSwitch";
import { Handle } from "./Handle";
import { LabelLayer } from "./LabelLayer";
import { LitSlip } from "./LitSlip";
import { PrintedLayer } from "./PrintedLayer";
import { SlipBar } from "./SlipBar";
import { litTrace, SlipOverlay } from "./SlipOverlay";
import { useTableView, ZOOM_STEP } from "./useTableView";
import { viewBoxOf } from "./view";
import { WorkingLayer } from "./WorkingLayer";

const MARGIN = 26;

type PrintedShown = "all" | "near" | "none";

/** The table: the printed nest, the wearer's pieces over it, and her darts to take hold of. */
export function Table() {
  const svg = useRef<SVGSVGElement>(null);
  const unit = useWork((work) => work.unit);
  const nest = useSettledWork(printedNestOf);
  const settled = useSettledPlan();
  const [printedShown, setPrintedShown] = useState<PrintedShown>("all");
  const [showBefore, setShowBefore] = useState(false);
  const [showAmounts, setShowAmounts] = useState(true);
  const [layersOpen, setLayersOpen] = useState(false);
  const [said, setSaid] = useState("");

  const places = useMemo(() => {
    const sizes = nest.ok ? nest.value.sizes : [];
    return placePieces(settled.ok ? [...sizes, ...halvesOf(settled.value).map(({ pieces }) => pieces)] : sizes);
  }, [nest, settled]);
  const box = useMemo(() => boxOf(places, MARGIN), [places]);
  const { view, size, fit, zoom, onKeyDown, onPointerDown } = useTableView(svg, box);
  const mmPerPixel = 1 / view.scale;

  const baseSize = settled.ok ? settled.value.sizing.baseSize.label : null;
  const shown = useMemo(
    () => (printedShown === "all" ? null : printedShown === "none" ? [] : nearSizes(settled)),
    [printedShown, settled],
  );
  const sizes = useMemo(
    () =>
      nest.ok
        ? sizeLabels(nest.value, places, (piece) => (settled.ok ? sizesInUse(settled.value.left, piece) : []))
        : [],
    [nest, places, settled],
  );
  const visibleSizes = useMemo(
    () => (shown === null ? sizes : sizes.filter(({ lines }) => shown.includes(lines[0] ?? ""))),
    [sizes, shown],
  );

  const onePiece = (name: string): void => {
    const place = places.find(({ piece }) => piece === name);
    if (place !== undefined) fit(boxOf([place], MARGIN));
  };

  return (
    <div className="table" data-empty={places.length === 0 ? "" : undefined}>
      <svg
        ref={svg}
        className="table-sheet"
        viewBox={viewBoxOf(view, size)}
        tabIndex={0}
        role="group"
        aria-label="Pattern pieces. Arrow keys move the table, plus and minus zoom, zero shows everything."
        onKeyDown={onKeyDown}
        onPointerDown={onPointerDown}
      >
        <defs>
          <pattern
            id="hatch-taken"
            width="6"
            height="6"
            patternUnits="userSpaceOnUse"
            patternTransform={`rotate(45) scale(${mmPerPixel})`}
          >
            <path d="M0 0V6" className="hatch" />
          </pattern>
        </defs>
        {nest.ok && <PrintedLayer nest={nest.value} places={places} shown={shown} baseSize={baseSize} />}
        <LivePlan
          places={places}
          sizes={visibleSizes}
          mmPerPixel={mmPerPixel}
          showBefore={showBefore}
          showAmounts={showAmounts}
          unit={unit}
          onSay={setSaid}
        />
      </svg>
      <p role="status" className="visually-hidden">
        {said}
      </p>
      <p id="table-handle-help" className="visually-hidden">
        Drag, or move with the arrow keys; with Shift ten times as far. Escape puts it back.
      </p>
      <div className="table-tools" role="toolbar" aria-label="Table">
        <div className="table-tool-row">
          <button type="button" className="tool" aria-label="Zoom in" onClick={() => zoom(ZOOM_STEP)}>
            +
          </button>
          <button type="button" className="tool" aria-label="Zoom out" onClick={() => zoom(1 / ZOOM_STEP)}>
            −
          </button>
          <button type="button" className="tool" onClick={() => fit(box)}>
            All
          </button>
          {places.map(({ piece }) => (
            <button key={piece} type="button" className="tool piece-tool" onClick={() => onePiece(piece)}>
              {capital(pieceWords(piece))}
            </button>
          ))}
          {/* On a narrow table a menu stands in for the row of buttons. */}
          <select
            className="piece-menu"
            aria-label="Show one piece"
            value=""
            onChange={(event) => onePiece(event.target.value)}
          >
            <option value="">One piece…</option>
            {places.map(({ piece }) => (
              <option key={piece} value={piece}>
                {capital(pieceWords(piece))}
              </option>
            ))}
          </select>
          <button
            type="button"
            className="tool layers-tool"
            aria-expanded={layersOpen}
            aria-controls="table-layers"
            onClick={() => setLayersOpen(!layersOpen)}
          >
            Lines
          </button>
        </div>
        <div id="table-layers" className="table-tool-row layers" data-open={layersOpen ? "" : undefined}>
          <label>
            Printed lines
            <select value={printedShown} onChange={(event) => setPrintedShown(readShown(event.target.value))}>
              <option value="all">all sizes</option>
              <option value="near">those in use</option>
              <option value="none">none</option>
            </select>
          </label>
          <label>
            <input type="checkbox" checked={showAmounts} onChange={(event) => setShowAmounts(event.target.checked)} />
            amounts
          </label>
          <label>
            <input type="checkbox" checked={showBefore} onChange={(event) => setShowBefore(event.target.checked)} />
            before your slips
          </label>
        </div>
        {nest.ok && <PieceSource source={nest.value.source} />}
        {settled.ok && settled.value.left !== settled.value.right && <HalfSwitch />}
      </div>
      <LitBar places={places} unit={unit} />
      {!settled.ok && (
        <p className="table-note">
          {places.length === 0
            ? "The pattern pieces appear here once there is a size chart on Envelope."
            : "These are the printed pieces. Your own line appears once the plan has what it needs."}
        </p>
      )}
    </div>
  );
}

/** Where the pieces come from, at the head of the table. */
function PieceSource({ source }: { readonly source: NestSource }) {
  const [word, more] = sourceParts(source);
  return (
    <p className="table-source">
      {word}
      {more !== "" && <span className="table-source-more">{more}</span>}
    </p>
  );
}

const readShown = (value: string): PrintedShown => (value === "near" || value === "none" ? value : "all");

/** The frame, and the printed lines that the new line runs between. */
function nearSizes(settled: ReturnType<typeof useSettledPlan>): readonly string[] {
  if (!settled.ok) return [];
  return settled.value.left.pieces.flatMap(({ name }) => sizesInUse(settled.value.left, name));
}

interface LivePlanProps {
  readonly places: readonly Place[];
  readonly sizes: readonly Label[];
  readonly mmPerPixel: number;
  readonly showBefore: boolean;
  readonly showAmounts: boolean;
  readonly unit: LengthUnit;
  readonly onSay: (label: string) => void;
}

/** Everything that follows the finger. */
function LivePlan(props: LivePlanProps) {
  const plan = usePlan();
  const labels = useMemo(() => keepApart(props.sizes, props.mmPerPixel), [props.sizes, props.mmPerPixel]);
  if (!plan.ok) return <LabelLayer labels={labels} mmPerPixel={props.mmPerPixel} />;
  return <PlanOnTable {...props} whole={plan.value} />;
}

/** The bar over the table for the slip that is lit, where there is something to see of it. */
function LitBar({ places, unit }: Pick<LivePlanProps, "places" | "unit">) {
  const plan = usePlan();
  const half = useViewState((view) => view.half);
  const lit = useViewState((view) => view.litAlteration);
  const found = plan.ok ? litTrace(plan.value[half], places, lit) : null;
  return found === null ? null : <SlipBar planned={found.planned} unit={unit} />;
}

function PlanOnTable({
  whole,
  places,
  sizes,
  mmPerPixel,
  showBefore,
  showAmounts,
  unit,
  onSay,
}: LivePlanProps & { readonly whole: Plan }) {
  const store = useWorkStore();
  const half = useViewState((view) => view.half);
  const plan = whole[half];
  const selected = useViewState((view) => view.selectedDart);
  const selectDart = useViewState((view) => view.selectDart);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const labels = useMemo(() => {
    const amounts = showAmounts ? planLabels(plan, places, unit, selected) : [];
    return keepApart([...pieceLabels(plan, places), ...amounts, ...sizes], mmPerPixel);
  }, [plan, places, unit, sizes, mmPerPixel, showAmounts, selected]);
  const onSelect = useCallback(
    (dart: DartRef) => {
      selectDart(dart);
      // The slip of what is touched lights up in the ledger.
      const own = store.getState().work.alterations.find((a) => {
        const of = dartOfAlteration(a);
        return of?.piece === dart.piece && of.dart === dart.dart;
      });
      lightAlteration(own?.id ?? null);
    },
    [store, selectDart, lightAlteration],
  );
  // On the way from before to after, what lies there in the end steps back.
  const isPartway = useViewState((view) => view.litShare < 1 && litTrace(plan, places, view.litAlteration) !== null);
  return (
    <>
      <g className="at-last" data-partway={isPartway ? "" : undefined}>
        <WorkingLayer
          plan={plan}
          places={places}
          mmPerPixel={mmPerPixel}
          showBefore={showBefore}
          selected={selected}
          onSelect={onSelect}
          onLight={lightAlteration}
        />
      </g>
      <SlipOverlay plan={plan} places={places} mmPerPixel={mmPerPixel} />
      <LabelLayer labels={labels} mmPerPixel={mmPerPixel} onLight={lightAlteration} />
      <LitSlip plan={plan} places={places} mmPerPixel={mmPerPixel} />
      <g className="at-last" data-partway={isPartway ? "" : undefined}>
        <Handles plan={plan} places={places} mmPerPixel={mmPerPixel} selected={selected} unit={unit} onSay={onSay} />
      </g>
    </>
  );
}

interface HandlesProps {
  readonly plan: PlanHalf;
  readonly places: readonly Place[];
  readonly mmPerPixel: number;
  readonly selected: DartRef | null;
  readonly unit: LengthUnit;
  readonly onSay: (label: string) => void;
}

function Handles({ plan, places, mmPerPixel, selected, unit, onSay }: HandlesProps) {
  const shown = plan.darts.flatMap((dart) => {
    const place = places.find(({ piece }) => piece === dart.ref.piece);
    if (place === undefined) return [];
    const isSelected = selected?.piece === dart.ref.piece && selected.dart === dart.ref.dart;
    // The mouth ends of a dart show when it is chosen, so that the table stays calm.
    const ends: readonly HandleEnd[] = isSelected ? ["inner", "outer", "apex"] : ["apex"];
    return ends.map((end) => ({ dart, end, place, isSelected, at: dart.drawn[end] }));
  });
  const apart = nearestApart(shown.map(({ at, place }) => ({ x: at.x + place.dx, y: at.y + place.dy })));
  return (
    <g className="handles">
      {shown.map(({ dart, end, place, isSelected, at }, index) => (
        <Handle
          key={`${dart.ref.piece}-${dart.ref.dart}-${end}`}
          dart={dart.ref}
          end={end}
          x={at.x}
          y={at.y}
          dx={place.dx}
          dy={place.dy}
          mmPerPixel={mmPerPixel}
          room={(apart[index] ?? Infinity) / 2 / mmPerPixel}
          label={dartHandleLabel(dart, end, unit)}
          selected={isSelected}
          onSay={onSay}
        />
      ))}
    </g>
  );
}
