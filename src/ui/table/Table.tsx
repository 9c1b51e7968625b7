/* oxlint-disable jsx-a11y/no-noninteractive-tabindex, jsx-a11y/no-noninteractive-element-interactions -- the sheet is moved with the keys, as a scrolled region is */
import "./table.css";
import { useMemo, useRef, useState } from "react";
import type { DartRef, PieceName } from "../../core/pattern/piece";
import type { Plan } from "../../core/plan/plan";
import type { LengthUnit } from "../../core/plan/work";
import { boxOf, keepApart, nearestApart, placePieces, planLabels, sizeLabels, type Label, type Place } from "../../drawing/index";
import { dartHandleLabel } from "../../words/darts";
import { capital, pieceWords } from "../../words/names";
import { printedNestOf, usePlan, useSettledPlan, useSettledWork, useWork } from "../app/useWork";
import { useViewState } from "../app/viewState";
import type { HandleEnd } from "../darts/dartEdit";
import { Handle } from "./Handle";
import { LabelLayer } from "./LabelLayer";
import { LitSlip } from "./LitSlip";
import { PrintedLayer } from "./PrintedLayer";
import { useTableView, ZOOM_STEP } from "./useTableView";
import { viewBoxOf } from "./view";
import { WorkingLayer } from "./WorkingLayer";

const MARGIN = 26;
/** Room at the right of the pieces for what is written there, in millimetres. */
const LABEL_ROOM = 105;

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

  const places = useMemo(() => {
    const sizes = nest.ok ? nest.value.sizes : [];
    return placePieces(settled.ok ? [...sizes, settled.value.pieces] : sizes);
  }, [nest, settled]);
  const box = useMemo(() => {
    const all = boxOf(places, MARGIN);
    return { ...all, width: all.width + LABEL_ROOM };
  }, [places]);
  const { view, size, fit, zoom, onKeyDown, onPointerDown } = useTableView(svg, box);
  const mmPerPixel = 1 / view.scale;

  const frame = settled.ok ? settled.value.sizing.frame.label : null;
  const shown = useMemo(() => (printedShown === "all" ? null : printedShown === "none" ? [] : nearSizes(settled)), [printedShown, settled]);
  const sizes = useMemo(
    () => (nest.ok ? sizeLabels(nest.value, places, settled.ok ? nearSizes(settled) : []) : []),
    [nest, places, settled],
  );
  const visibleSizes = useMemo(
    () => (shown === null ? sizes : sizes.filter(({ lines }) => shown.includes(lines[0] ?? ""))),
    [sizes, shown],
  );

  const onePiece = (name: PieceName): void => {
    const place = places.find(({ piece }) => piece === name);
    if (place !== undefined) fit(boxOf([place], MARGIN * 1.5));
  };

  return (
    <div className="table">
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
          <pattern id="hatch-taken" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform={`rotate(45) scale(${mmPerPixel})`}>
            <path d="M0 0V6" className="hatch" />
          </pattern>
        </defs>
        {nest.ok && <PrintedLayer nest={nest.value} places={places} shown={shown} frame={frame} />}
        <LivePlan
          places={places}
          sizes={visibleSizes}
          mmPerPixel={mmPerPixel}
          showBefore={showBefore}
          showAmounts={showAmounts}
          unit={unit}
        />
      </svg>
      <p id="table-handle-help" className="unseen">
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
        </div>
        <div className="table-tool-row layers">
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
      </div>
      {!settled.ok && <p className="table-note">{places.length === 0
            ? "The pattern pieces appear here once there is a size chart on Envelope."
            : "These are the printed pieces. Your own line appears once the plan has what it needs."}</p>}
    </div>
  );
}

const readShown = (value: string): PrintedShown => (value === "near" || value === "none" ? value : "all");

/** The frame, and the printed lines that the new line runs between. */
function nearSizes(settled: ReturnType<typeof useSettledPlan>): readonly string[] {
  if (!settled.ok) return [];
  const { sizing, levels } = settled.value;
  return [sizing.frame.label, ...levels.flatMap(({ level, between }) => (level === "bust" ? [] : between))];
}

interface LivePlanProps {
  readonly places: readonly Place[];
  readonly sizes: readonly Label[];
  readonly mmPerPixel: number;
  readonly showBefore: boolean;
  readonly showAmounts: boolean;
  readonly unit: LengthUnit;
}

/** Everything that follows the finger. */
function LivePlan(props: LivePlanProps) {
  const plan = usePlan();
  const labels = useMemo(() => keepApart(props.sizes, props.mmPerPixel), [props.sizes, props.mmPerPixel]);
  if (!plan.ok) return <LabelLayer labels={labels} mmPerPixel={props.mmPerPixel} />;
  return <PlanOnTable {...props} plan={plan.value} />;
}

function PlanOnTable({ plan, places, sizes, mmPerPixel, showBefore, showAmounts, unit }: LivePlanProps & { readonly plan: Plan }) {
  const selected = useViewState((view) => view.selectedDart);
  const selectDart = useViewState((view) => view.selectDart);
  const labels = useMemo(
    () => keepApart([...(showAmounts ? planLabels(plan, places, unit) : []), ...sizes], mmPerPixel),
    [plan, places, unit, sizes, mmPerPixel, showAmounts],
  );
  return (
    <>
      <WorkingLayer
        plan={plan}
        places={places}
        mmPerPixel={mmPerPixel}
        showBefore={showBefore}
        selected={selected}
        onSelect={selectDart}
      />
      <LabelLayer labels={labels} mmPerPixel={mmPerPixel} />
      <LitSlip plan={plan} places={places} mmPerPixel={mmPerPixel} />
      <Handles plan={plan} places={places} mmPerPixel={mmPerPixel} selected={selected} unit={unit} />
    </>
  );
}

interface HandlesProps {
  readonly plan: Plan;
  readonly places: readonly Place[];
  readonly mmPerPixel: number;
  readonly selected: DartRef | null;
  readonly unit: LengthUnit;
}

function Handles({ plan, places, mmPerPixel, selected, unit }: HandlesProps) {
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
        />
      ))}
    </g>
  );
}
