import { useId, useMemo, useState, type ReactNode } from "react";
import { chartFit } from "../../core/bodies/chartFit";
import { STANDARD_CHARTS } from "../../core/chart/standardCharts";
import { bodyOf } from "../../core/measures/tape";
import { chartPlot, type ChartPlot, type PlotInput, type PlotLine } from "../../drawing/chartPlot";
import {
  axisWords,
  BESIDE_IT,
  besideSentences,
  CHART_UNREAD,
  MARKS,
  NO_STANDARD,
  plotTitle,
  plotWords,
  sharesSentences,
  whoseWords,
} from "../../words/chartFit";
import { standardTitle, standardWords } from "../../words/standardCharts";
import { useSettledWork } from "../session/useWork";
import { Select } from "../fields/Select";
import "./chartFit.css";
import { Fractions } from "../fields/Fractions";

const NONE = "none";
const OPTIONS = [
  { value: NONE, label: NO_STANDARD },
  ...STANDARD_CHARTS.map(({ name }) => ({ value: name, label: standardTitle(name) })),
];

const PAIRS = [
  { across: "bust", up: "waist" },
  { across: "waist", up: "hip" },
] as const;

/** The surveyed bodies, the pattern's sizes and the wearer in two pictures, and what follows from them in words. */
export function ChartFitView() {
  const { chart } = useSettledWork((work) => work.pattern);
  const tapes = useSettledWork((work) => work.tapes);
  const picks = useSettledWork((work) => work.picks);
  const unit = useSettledWork((work) => work.unit);
  const [beside, setBeside] = useState<string>(NONE);
  const body = bodyOf(tapes);
  const fit = useMemo(() => chartFit(chart, bodyOf(tapes), picks), [chart, tapes, picks]);
  const standard = STANDARD_CHARTS.find(({ name }) => name === beside);
  const shown = { sizes: fit === null ? [] : chart.sizes, standard: standard?.sizes ?? [], body, unit };
  const plots = PAIRS.map((pair) => ({ ...pair, ...shown })).map((input) => ({ input, plot: chartPlot(input) }));
  return (
    <div className="chart-fit">
      <div className="chart-fit-plots">
        {plots.map(({ input, plot }) => (
          <Plot key={input.across} input={input} plot={plot} />
        ))}
      </div>
      <Marks
        sizes={fit !== null}
        standard={standard !== undefined}
        wearer={plots.some(({ plot }) => plot.wearer !== null)}
      />
      <Select label={BESIDE_IT} value={beside} options={OPTIONS} onChange={setBeside} />
      {standard !== undefined && (
        <p className="aside">
          <Fractions text={standardWords(standard.name, unit)} />
        </p>
      )}
      {fit === null ? (
        <p>{CHART_UNREAD}</p>
      ) : (
        <>
          <Sentences of={besideSentences(fit.hers, body, unit)} />
          <Sentences of={sharesSentences(fit.shares)} />
        </>
      )}
      <p className="aside">
        <Fractions text={whoseWords(unit)} />
      </p>
    </div>
  );
}

function Sentences({ of }: { readonly of: readonly string[] }) {
  if (of.length === 0) return null;
  return (
    <ul className="chart-fit-said">
      {of.map((sentence) => (
        <li key={sentence}>
          <Fractions text={sentence} />
        </li>
      ))}
    </ul>
  );
}

interface PlotProps {
  readonly input: PlotInput;
  readonly plot: ChartPlot;
}

function Plot({ input: { across, up, sizes, standard, body, unit }, plot }: PlotProps) {
  const clip = useId();
  const { left, right, top, bottom, width, height } = plot;
  return (
    <figure>
      <figcaption>{plotTitle(across, up)}</figcaption>
      <svg
        className="chart-plot light-paper"
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={plotWords(across, up, { sizes, standard, body, half: plot.half }, unit)}
      >
        <clipPath id={clip}>
          <rect x={left} y={top} width={right - left} height={bottom - top} />
        </clipPath>
        <Axes plot={plot} acrossName={axisWords(across, unit)} upName={axisWords(up, unit)} />
        <path className="plot-ring-most" d={plot.rings.most} />
        <path className="plot-ring-half" d={plot.rings.half} />
        {plot.dots.map(({ x, y }) => (
          <circle key={`${x} ${y}`} className="plot-dot" cx={x} cy={y} r={1.5} />
        ))}
        {plot.standard !== null && (
          <g clipPath={`url(#${clip})`}>
            <SizeLine line={plot.standard} standard />
          </g>
        )}
        {plot.sizes !== null && <SizeLine line={plot.sizes} />}
        {plot.wearer !== null && <Cross {...plot.wearer} />}
      </svg>
    </figure>
  );
}

interface AxesProps {
  readonly plot: ChartPlot;
  readonly acrossName: string;
  readonly upName: string;
}

function Axes({ plot: { left, right, top, bottom, height, acrossTicks, upTicks }, acrossName, upName }: AxesProps) {
  return (
    <g className="plot-axes">
      {acrossTicks.map(({ at, label }) => (
        <g key={label}>
          <path className="plot-grid" d={`M${at} ${top}V${bottom}`} />
          <path d={`M${at} ${bottom}v4`} />
          <text x={at} y={bottom + 17} textAnchor="middle">
            {label}
          </text>
        </g>
      ))}
      {upTicks.map(({ at, label }) => (
        <g key={label}>
          <path className="plot-grid" d={`M${left} ${at}H${right}`} />
          <path d={`M${left} ${at}h-4`} />
          <text x={left - 7} y={at + 4} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      <path d={`M${left} ${top}V${bottom}H${right}`} />
      <text className="plot-axis" x={(left + right) / 2} y={height - 8} textAnchor="middle">
        {acrossName}
      </text>
      <text className="plot-axis" transform={`translate(11 ${(top + bottom) / 2}) rotate(-90)`} textAnchor="middle">
        {upName}
      </text>
    </g>
  );
}

/** A chart's sizes: the pattern's own solid with round marks, named below; a standard's dashed with square ones, named above. */
function SizeLine({ line, standard = false }: { readonly line: PlotLine; readonly standard?: boolean }) {
  return (
    <g className={standard ? "plot-standard" : "plot-sizes"}>
      <path d={line.path} />
      {line.sizes.map(({ x, y, label, name }) => (
        <g key={label}>
          {standard ? <rect x={x - 2.5} y={y - 2.5} width={5} height={5} /> : <circle cx={x} cy={y} r={2.75} />}
          {name !== null && (
            <text x={name.x} y={name.y} textAnchor={name.anchor}>
              {label}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

const CAP = 3.5;

/** The wearer: arms as long as her tape may be out, each with a cap. */
function Cross({
  x,
  y,
  reachX,
  reachY,
}: {
  readonly x: number;
  readonly y: number;
  readonly reachX: number;
  readonly reachY: number;
}) {
  const arms =
    `M${x - reachX} ${y}H${x + reachX}M${x} ${y - reachY}V${y + reachY}` +
    `M${x - reachX} ${y - CAP}v${2 * CAP}M${x + reachX} ${y - CAP}v${2 * CAP}M${x - CAP} ${y - reachY}h${2 * CAP}M${x - CAP} ${y + reachY}h${2 * CAP}`;
  return (
    <g className="plot-wearer">
      <path className="plot-wearer-halo" d={arms} />
      <path d={arms} />
    </g>
  );
}

/** What the marks mean, each beside a piece of itself. */
function Marks({
  sizes,
  standard,
  wearer,
}: {
  readonly sizes: boolean;
  readonly standard: boolean;
  readonly wearer: boolean;
}) {
  return (
    <ul className="chart-fit-marks" aria-hidden="true">
      <Mark words={MARKS.dots}>
        <circle className="plot-dot" cx={7} cy={9} r={1.5} />
        <circle className="plot-dot" cx={14} cy={5} r={1.5} />
        <circle className="plot-dot" cx={20} cy={10} r={1.5} />
      </Mark>
      <Mark words={MARKS.half}>
        <ellipse className="plot-ring-half" cx={13} cy={7} rx={11} ry={5} />
      </Mark>
      <Mark words={MARKS.most}>
        <ellipse className="plot-ring-most" cx={13} cy={7} rx={11} ry={5} />
      </Mark>
      {sizes && (
        <Mark words={MARKS.sizes}>
          <g className="plot-sizes">
            <path d="M1 7H25" />
            <circle cx={13} cy={7} r={2.75} />
          </g>
        </Mark>
      )}
      {standard && (
        <Mark words={MARKS.standard}>
          <g className="plot-standard">
            <path d="M1 7H25" />
            <rect x={10.5} y={4.5} width={5} height={5} />
          </g>
        </Mark>
      )}
      {wearer && (
        <Mark words={MARKS.wearer}>
          <Cross x={13} y={7} reachX={9} reachY={6} />
        </Mark>
      )}
    </ul>
  );
}

function Mark({ words, children }: { readonly words: string; readonly children: ReactNode }) {
  return (
    <li>
      <svg className="light-paper" viewBox="0 0 26 14" width={26} height={14}>
        {children}
      </svg>
      {words}
    </li>
  );
}
