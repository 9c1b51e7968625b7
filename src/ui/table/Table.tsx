/* oxlint-disable jsx-a11y/no-noninteractive-tabindex, jsx-a11y/no-noninteractive-element-interactions -- the sheet is moved with the keys, as a scrolled region is */
import { printedNestOf } from "../../core/plan/planOf";
import { dartOfAlteration, HALVES, isMadeOn, otherHalf, type Half } from "../../core/decisions/alteration";
import "./table.css";
import "./overlay.css";
import "./hand.css";
import { memo, useCallback, useMemo, useRef, useState } from "react";
import { flushSync } from "react-dom";
import { isSameDart, type DartRef, type NestSource, type PieceName } from "../../core/pattern/piece";
import { halvesOf, type Plan, type PlanHalf, type PlannedDart } from "../../core/plan/plan";
import { type LengthUnit } from "../../core/decisions/work";
import {
  boxOf,
  keepApart,
  nearestApart,
  onTable,
  pieceLabels,
  pieceMarks,
  placeHalves,
  placePieces,
  placeTransform,
  planLabels,
  sizeLabels,
  sizesInUse,
  type Label,
  type Place,
} from "../../drawing/index";
import {
  HANDLE_HELP,
  halfNote,
  MENU_WORDS,
  NO_PIECES,
  ONLY_PRINTED,
  pieceGroupLabel,
  SHEET_LABEL,
  TOOL_WORDS,
} from "../../words/table";
import { dartHandleName, dartHandleValue } from "../../words/terms/darts";
import { capital, namedPieceWords } from "../../words/terms/names";
import { sourceParts } from "../../words/pieceSource";
import { PartPlace } from "../parts/PartPlace";
import { usePlan, useSettledPlan } from "../session/usePlan";
import { useSettledWork, useWork, useWorkStore } from "../session/useWork";
import { useViewState } from "../session/viewState";
import type { HandleEnd } from "../../core/plan/dartEdit";
import { HalfSwitch } from "./HalfSwitch";
import { Handle, type HandleProps } from "./Handle";
import { LabelLayer } from "./LabelLayer";
import { LitSlip } from "./LitSlip";
import { PiecesInWords } from "./PiecesInWords";
import { PrintedLayer } from "./PrintedLayer";
import { Readout } from "./Readout";
import { SlipBar } from "./SlipBar";
import { litTrace, SlipOverlay } from "./SlipOverlay";
import { TABLE_MENU } from "./tableMenuPart";
import { useFocusInSight } from "./useFocusInSight";
import { useHeldFocus } from "./useHeldFocus";
import { useSheetHand, type Asked } from "./useSheetHand";
import { useTableView, ZOOM_STEP } from "./useTableView";
import { useToolsRoom } from "./useToolsRoom";
import { useTeller } from "./useTeller";
import { sightUnder, viewBoxOf } from "./view";
import { WorkingLayer } from "./WorkingLayer";

const MARGIN = 26;
const WORDS_AT_LEFT = 60;
/** So much nearer than everything at once, two taps lead back to that. */
const NEAR = 1.2;

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
  const [asked, setAsked] = useState<Asked | null>(null);
  useTeller();
  useHeldFocus();
  useFocusInSight();

  const other = useViewState((state) => state.otherHalf);
  const differ = settled.ok && settled.value.left !== settled.value.right;
  const beside = differ && other === "beside";
  const ofHalf = useMemo(() => {
    const sizes = nest.ok ? nest.value.sizes : [];
    return placePieces(settled.ok ? [...sizes, ...halvesOf(settled.value).map(({ pieces }) => pieces)] : sizes);
  }, [nest, settled]);
  const places = useMemo(() => (beside ? placeHalves(ofHalf) : ofHalf), [ofHalf, beside]);
  const box = useMemo(() => {
    const all = boxOf(places, MARGIN);
    // What is written at the left of a piece that is turned over.
    return beside ? { ...all, x: all.x - WORDS_AT_LEFT, width: all.width + WORDS_AT_LEFT } : all;
  }, [places, beside]);
  const tools = useRef<HTMLDivElement>(null);
  const room = useToolsRoom(tools);
  const sight = useMemo(() => sightUnder(room, differ), [room, differ]);
  const { view, size, fit, showAll, zoom, onKeyDown, onPointerDown } = useTableView(svg, box, sight);
  const mmPerPixel = 1 / view.scale;
  useSheetHand(svg, {
    onAsk: setAsked,
    onTwoTaps: (target) => {
      const isNear = view.scale > NEAR * sight.fit(box, size).scale;
      const own = places.filter(({ piece }) => "piece" in target && piece === target.piece);
      if (isNear) showAll();
      else if (own.length > 0) fit(boxOf(own, MARGIN));
    },
  });
  const closeMenu = useCallback(() => setAsked(null), []);

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
    () => (shown === null ? sizes : sizes.filter((label) => label.size !== undefined && shown.includes(label.size))),
    [sizes, shown],
  );

  const others = nest.ok ? nest.value.otherNames : undefined;
  const onePiece = (name: string): void => {
    const own = places.filter(({ piece }) => piece === name);
    if (own.length > 0) fit(boxOf(own, MARGIN));
  };

  return (
    <div className="table light-paper" data-empty={places.length === 0 ? "" : undefined}>
      <svg
        ref={svg}
        className="table-sheet"
        viewBox={viewBoxOf(view, size)}
        tabIndex={0}
        role="group"
        aria-label={SHEET_LABEL}
        onKeyDown={onKeyDown}
        onPointerDown={(event) => {
          closeMenu();
          onPointerDown(event);
        }}
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
        />
      </svg>
      <p id="table-handle-help" className="visually-hidden">
        {HANDLE_HELP}
      </p>
      {settled.ok && <PiecesInWords plan={settled.value} unit={unit} />}
      {/* Before the tools, in whose place it lies on a narrow table. */}
      <LitBar places={places} unit={unit} />
      <div ref={tools} className="table-tools" role="toolbar" aria-label={TOOL_WORDS.toolbar}>
        <div className="table-strip">
          <div className="table-tool-row">
            <button type="button" className="tool" aria-label={TOOL_WORDS.nearer} onClick={() => zoom(ZOOM_STEP)}>
              +
            </button>
            <button type="button" className="tool" aria-label={TOOL_WORDS.farther} onClick={() => zoom(1 / ZOOM_STEP)}>
              −
            </button>
            <button type="button" className="tool" onClick={() => fit(box)}>
              {TOOL_WORDS.all}
            </button>
            {ofHalf.map(({ piece }) => (
              <button key={piece} type="button" className="tool piece-tool" onClick={() => onePiece(piece)}>
                {capital(namedPieceWords(piece, others))}
              </button>
            ))}
            {/* On a narrow table a menu stands in for the row of buttons. */}
            <select
              className="piece-menu"
              aria-label={TOOL_WORDS.pieceMenu}
              value=""
              onChange={(event) => onePiece(event.target.value)}
            >
              <option value="">{TOOL_WORDS.onePiece}</option>
              {ofHalf.map(({ piece }) => (
                <option key={piece} value={piece}>
                  {capital(namedPieceWords(piece, others))}
                </option>
              ))}
            </select>
            <button
              type="button"
              className="tool layers-tool"
              aria-expanded={layersOpen}
              aria-controls="table-layers"
              onClick={({ currentTarget }) => {
                flushSync(() => setLayersOpen(!layersOpen));
                // On a narrow table they come beyond its edge.
                if (!layersOpen) currentTarget.scrollIntoView({ block: "nearest", inline: "start" });
              }}
            >
              {TOOL_WORDS.lines}
            </button>
          </div>
          <div id="table-layers" className="table-tool-row layers" data-open={layersOpen ? "" : undefined}>
            <label>
              {TOOL_WORDS.printed}
              <select value={printedShown} onChange={(event) => setPrintedShown(readShown(event.target.value))}>
                <option value="all">{TOOL_WORDS.printedAll}</option>
                <option value="near">{TOOL_WORDS.printedNear}</option>
                <option value="none">{TOOL_WORDS.printedNone}</option>
              </select>
            </label>
            <label>
              <input type="checkbox" checked={showAmounts} onChange={(event) => setShowAmounts(event.target.checked)} />
              {TOOL_WORDS.amounts}
            </label>
            <label>
              <input type="checkbox" checked={showBefore} onChange={(event) => setShowBefore(event.target.checked)} />
              {TOOL_WORDS.before}
            </label>
          </div>
          {nest.ok && <PieceSource source={nest.value.source} />}
        </div>
        {differ && <HalfSwitch onLaid={showAll} />}
      </div>
      <Readout unit={unit} />
      {asked !== null && (
        <PartPlace part={TABLE_MENU} name={MENU_WORDS.name} placeholder={null}>
          {(TableMenu) => (
            <TableMenu
              asked={asked}
              pieces={ofHalf.map(({ piece }) => piece)}
              unit={unit}
              onPiece={onePiece}
              onAll={showAll}
              onClose={closeMenu}
            />
          )}
        </PartPlace>
      )}
      {!settled.ok && <p className="table-note">{places.length === 0 ? NO_PIECES : ONLY_PRINTED}</p>}
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
}

/** Everything that follows the finger. */
function LivePlan(props: LivePlanProps) {
  const plan = usePlan();
  const half = useViewState((view) => view.half);
  const other = useViewState((view) => view.otherHalf);
  const labels = useMemo(() => keepApart(props.sizes, props.mmPerPixel), [props.sizes, props.mmPerPixel]);
  const { places, sizes } = props;
  const ofHalves = useMemo(
    () =>
      HALVES.map((one) => ({
        one,
        places: places.filter((place) => place.half === one),
        sizes: sizes.filter(({ id }) => id.includes(`-${one}-`)),
      })),
    [places, sizes],
  );
  if (!plan.ok) return <LabelLayer labels={labels} mmPerPixel={props.mmPerPixel} />;
  const whole = plan.value;
  if (!places.some((place) => place.half !== undefined))
    return (
      <>
        <HalfOnTable {...props} whole={whole} half={half} />
        {other === "under" && whole.left !== whole.right && (
          <OtherHalfLayer plan={whole[otherHalf(half)]} places={places} />
        )}
      </>
    );
  return ofHalves.map(({ one, ...own }) => <HalfOnTable key={one} {...props} {...own} whole={whole} half={one} />);
}

/** The outline of the half that is not worked on, thin, laid on the one that is. */
const OtherHalfLayer = memo(({ plan, places }: { readonly plan: PlanHalf; readonly places: readonly Place[] }) => (
  <g className="other-half" aria-hidden="true">
    {places.map((place) => {
      const piece = plan.pieces.find(({ name }) => name === place.piece);
      if (piece === undefined) return null;
      const { stitch, darts } = pieceMarks(piece);
      return (
        <g key={place.piece} transform={placeTransform(place)}>
          <path d={stitch} />
          {darts.map(({ dart, legs }) => (
            <path key={dart} d={legs} />
          ))}
        </g>
      );
    })}
  </g>
));

/** The bar over the table for the slip that is lit, where there is something to see of it. */
function LitBar({ places, unit }: Pick<LivePlanProps, "places" | "unit">) {
  const plan = usePlan();
  const half = useViewState((view) => view.half);
  const lit = useViewState((view) => view.litAlteration);
  const found = plan.ok ? litTrace(plan.value[half], places, lit) : null;
  return found === null ? null : <SlipBar planned={found.planned} unit={unit} />;
}

/** One half of the body, and all that can be done with it. */
function HalfOnTable({
  whole,
  half,
  places,
  sizes,
  mmPerPixel,
  showBefore,
  showAmounts,
  unit,
}: LivePlanProps & { readonly whole: Plan; readonly half: Half }) {
  const store = useWorkStore();
  const plan = whole[half];
  const selected = useViewState((view) => (view.half === half ? view.selectedDart : null));
  const showHalf = useViewState((view) => view.showHalf);
  const named = whole.left === whole.right ? null : half;
  const selectDart = useViewState((view) => view.selectDart);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const labels = useMemo(() => {
    const amounts = showAmounts ? planLabels(plan, places, unit, selected) : [];
    return keepApart(
      [
        ...pieceLabels(plan, places, named === null ? null : { half: named, other: whole[otherHalf(named)] }),
        ...amounts,
        ...sizes,
      ],
      mmPerPixel,
    );
  }, [plan, places, unit, sizes, mmPerPixel, showAmounts, selected, named, whole]);
  const onSelect = useCallback(
    (dart: DartRef) => {
      selectDart(dart);
      showHalf(half);
      // The slip of what is touched lights up in the ledger.
      const own = store.getState().work.alterations.find((a) => {
        const of = dartOfAlteration(a);
        return of?.piece === dart.piece && of.dart === dart.dart && isMadeOn(a, half);
      });
      lightAlteration(own?.id ?? null);
    },
    [store, selectDart, showHalf, half, lightAlteration],
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
        <Handles
          plan={plan}
          half={half}
          named={named}
          places={places}
          mmPerPixel={mmPerPixel}
          selected={selected}
          unit={unit}
        />
      </g>
    </>
  );
}

interface HandlesProps {
  readonly plan: PlanHalf;
  readonly half: Half;
  /** The half that is said, where the halves differ. */
  readonly named: Half | null;
  readonly places: readonly Place[];
  readonly mmPerPixel: number;
  readonly selected: DartRef | null;
  readonly unit: LengthUnit;
}

/** What is told of pieces and handles: put into words when it is first asked for, and not anew at every move. */
function toldOnce(told: PlanHalf, named: Half | null, unit: LengthUnit) {
  const pieces = new Map<PieceName, string>();
  const handles = new Map<string, Pick<HandleProps, "name" | "value" | "mouth">>();
  return {
    ofPiece: (piece: PieceName): string => {
      const words = pieces.get(piece) ?? `${pieceGroupLabel(told, piece)}${halfNote(named)}`;
      pieces.set(piece, words);
      return words;
    },
    /** @param now stands in where nothing is told of it */
    ofHandle: (now: PlannedDart, end: HandleEnd): Pick<HandleProps, "name" | "value" | "mouth"> => {
      const { ref } = now;
      const key = `${ref.piece} ${ref.dart} ${end}`;
      const known = handles.get(key);
      if (known !== undefined) return known;
      const found = told.darts.find((other) => isSameDart(other.ref, ref));
      const dart = found ?? now;
      const words = {
        name: `${dartHandleName(ref, end)}${halfNote(named)}`,
        value: dartHandleValue(dart, end, unit),
        mouth: Math.round(dart.drawn.intake),
      };
      if (found !== undefined) handles.set(key, words);
      return words;
    },
  };
}

function Handles({ plan, half, named, places, mmPerPixel, selected, unit }: HandlesProps) {
  // What is told of a handle stands still while it is moved: where it came to is told once.
  const settled = useSettledPlan();
  const told = settled.ok ? settled.value[half] : plan;
  const words = useMemo(() => toldOnce(told, named, unit), [told, named, unit]);
  const [stop, setStop] = useState<HandleEnd>("apex");
  const shown = plan.darts.flatMap((dart) => {
    const place = places.find(({ piece }) => piece === dart.ref.piece);
    if (place === undefined) return [];
    const isSelected = selected?.piece === dart.ref.piece && selected.dart === dart.ref.dart;
    // The mouth ends of a dart show when it is chosen, so that the table stays calm.
    const ends: readonly HandleEnd[] = isSelected ? ["apex", "inner", "outer"] : ["apex"];
    return ends.map((end) => ({ dart, end, place, isSelected, at: dart.drawn[end] }));
  });
  const apart = nearestApart(shown.map(({ at, place }) => onTable(place, at)));
  return (
    <g className="handles">
      {places.map((own) => (
        <g key={`${own.piece} ${own.half}`} role="group" aria-label={words.ofPiece(own.piece)}>
          {shown.map(({ dart, end, place, isSelected, at }, index) =>
            place !== own ? null : (
              <Handle
                key={`${dart.ref.piece}-${dart.ref.dart}-${end}`}
                dart={dart.ref}
                end={end}
                x={at.x}
                y={at.y}
                place={place}
                half={half}
                mmPerPixel={mmPerPixel}
                room={(apart[index] ?? Infinity) / 2 / mmPerPixel}
                {...words.ofHandle(dart, end)}
                selected={isSelected}
                isStop={isSelected ? end === stop : end === "apex"}
                onStop={setStop}
              />
            ),
          )}
        </g>
      ))}
    </g>
  );
}
