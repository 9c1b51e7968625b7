/** The dress on paper: what it is, what is cut and how, cloth, notions and the order of sewing. Preview and print are one. */
import "./print.css";
import "./printedDress.css";
import type { ClothLay, LayFailure } from "../core/cloth/cutting";
import type { ClothName } from "../core/decisions/dress";
import type { LengthUnit, Work } from "../core/decisions/work";
import type { DressPlan } from "../core/dress/dressPlan";
import type { Part, RectanglePart, SectorPart } from "../core/parts/part";
import { cutDepth, cutWidth } from "../core/parts/part";
import { circleSketch } from "../drawing/circleSketch";
import { dressDrawing } from "../drawing/dressDrawing";
import { layDrawing } from "../drawing/layDrawing";
import { printedNestOf } from "../core/plan/planOf";
import { buyWords, layFailureWords } from "../words/dressCloth";
import { clothName, cutWords, partName } from "../words/dressParts";
import { finishedFigures } from "../words/dressStep";
import {
  allowancesOfRectangle,
  dressDoubts,
  dressNotes,
  DRESS_COLUMNS,
  DRESS_SHEET,
  grainWords,
  layHint,
  layTitle,
  laidWords,
  brokenWords,
  NOT_YET_KNOWN,
  unlaidWords,
} from "../words/dressSheet";
import { notionWords } from "../words/notions";
import { sewingStepWords } from "../words/sewing";
import { laidNameWords } from "../words/layDrawing";
import { formatLength } from "../words/terms/length";
import { capital, type OtherNames } from "../words/terms/names";
import type { Result } from "../core/result";
import type { Mm } from "../core/units";
import { FigureDrawing } from "./FigureDrawing";
import { Blank } from "./Blank";
import { PageSetup } from "./PageSetup";
import { WorkName } from "./WorkName";
import { Words } from "./Words";
import * as say from "../words/printedChecklist";
import { INVENTED_SHEET } from "../words/invented";

export interface PrintedDressProps {
  readonly work: Work;
  readonly dress: DressPlan;
  /** As far as they are laid. */
  readonly lays: Readonly<Partial<Record<ClothName, Result<ClothLay, LayFailure>>>>;
  /** Those that came to no lay, and to no reason either. */
  readonly broken?: readonly ClothName[];
}

export function PrintedDress({ work, dress, lays, broken = [] }: PrintedDressProps) {
  const nest = printedNestOf(work);
  const others = nest.ok ? nest.value.otherNames : undefined;
  const { unit } = work;
  const { parts, cloths, sewing } = dress;
  const rectangles = parts.filter((part) => part.kind === "rectangle");
  const sectors = parts.filter((part) => part.kind === "sector");
  return (
    <article className="printed-checklist printed-dress" aria-label={DRESS_SHEET.kind} data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} kind={DRESS_SHEET.kind} />
      <Heading work={work} dress={dress} />
      <Before work={work} dress={dress} lays={lays} />
      <section>
        <h4>{DRESS_SHEET.cutList}</h4>
        {cloths.map((cloth) => (
          <CutTable
            key={cloth}
            title={capital(clothName(cloth))}
            parts={parts.filter((part) => part.cloth === cloth)}
            others={others}
          />
        ))}
      </section>
      {rectangles.length > 0 && <Rectangles parts={rectangles} work={work} others={others} />}
      {sectors.length > 0 && <Sectors parts={sectors} work={work} others={others} />}
      <section>
        <h4>{DRESS_SHEET.lays}</h4>
        {cloths.map((cloth) => {
          const lay = lays[cloth];
          if (lay?.ok === true) return <Lay key={cloth} lay={lay.value} parts={parts} work={work} others={others} />;
          const named = namedIn(parts, others);
          return (
            <p key={cloth} className="pd-unlaid">
              {lay === undefined ? (
                (broken.includes(cloth) ? brokenWords : unlaidWords)(cloth)
              ) : (
                <Words>{layFailureWords(lay.failure, named, unit)}</Words>
              )}
            </p>
          );
        })}
      </section>
      {sewing.length > 0 && <Sewing dress={dress} work={work} />}
    </article>
  );
}

function Heading({ work, dress }: { readonly work: Work; readonly dress: DressPlan }) {
  return (
    <header className="pc-heading">
      <div className="pc-names">
        <p className="pc-kind">{DRESS_SHEET.kind}</p>
        <WorkName work={work} />
        <p className="pc-pattern">{say.pattern(work.pattern.name)}</p>
        {work.invented && <p className="pc-invented">{INVENTED_SHEET}</p>}
      </div>
      <div className="pc-by-hand">
        <Blank label={say.date} />
        <Blank label={say.cloth} />
      </div>
      <dl className="pc-sizes">
        {finishedFigures(dress, work.unit).map(({ name, figure }) => (
          <div key={name} className="pc-size">
            <dt>{name}</dt>
            <dd>
              <b>
                <Words>{figure}</Words>
              </b>
            </dd>
          </div>
        ))}
      </dl>
    </header>
  );
}

interface ToBuyProps extends Pick<PrintedDressProps, "dress" | "lays"> {
  readonly unit: LengthUnit;
}

/** Cloth and notions, to take to the shop. */
function ToBuy({ dress: { cloths, notions }, lays, unit }: ToBuyProps) {
  const lines = [
    ...cloths.flatMap((cloth) => {
      const lay = lays[cloth];
      return [
        { what: capital(clothName(cloth)), amount: lay?.ok === true ? buyWords(lay.value, unit) : NOT_YET_KNOWN },
      ];
    }),
    ...notions.map((notion) => notionWords(notion, unit)),
  ];
  return (
    <section className="pd-notions">
      <h4>{DRESS_SHEET.buy}</h4>
      <ul>
        {lines.map(({ what, amount }, at) => (
          <li key={`${at} ${what}`}>
            <i className="pc-tick" aria-hidden="true" />
            <b>{what}</b> <Words>{amount}</Words>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The dress as it is to be, what to know of it before the first cut, and what to buy for it. */
function Before({ work, dress, lays }: Pick<PrintedDressProps, "work" | "dress" | "lays">) {
  const { unit } = work;
  const doubts = dressDoubts(dress, unit);
  const figures = dressDrawing(dress, { dress: work.dress ?? {}, closure: work.pattern.closure, unit });
  return (
    <div className="pd-before">
      <div>
        {doubts.length > 0 && (
          <section className="pc-doubts">
            <h4>{DRESS_SHEET.doubts}</h4>
            <ul>
              {doubts.map((doubt) => (
                <li key={doubt}>
                  <Words>{doubt}</Words>
                </li>
              ))}
            </ul>
          </section>
        )}
        {dressNotes(dress, unit).map((note) => (
          <p key={note} className="pc-note">
            <Words>{note}</Words>
          </p>
        ))}
        <ToBuy dress={dress} lays={lays} unit={unit} />
      </div>
      {figures.map((figure) => (
        <div key={figure.side} className="pd-seen">
          <FigureDrawing figure={figure} label={figure.side === "front" ? DRESS_SHEET.front : DRESS_SHEET.back} />
        </div>
      ))}
    </div>
  );
}

interface PartsProps<P extends Part> {
  readonly parts: readonly P[];
  readonly work: Work;
  readonly others: OtherNames;
}

const BY: Readonly<Record<Part["kind"], string>> = {
  piece: DRESS_SHEET.printed,
  rectangle: DRESS_SHEET.measured,
  sector: DRESS_SHEET.strung,
};

function CutTable({ title, parts, others }: Omit<PartsProps<Part>, "work"> & { readonly title: string }) {
  return (
    <table className="pd-table">
      <thead>
        <tr>
          <th scope="col">{title}</th>
          <th scope="col">{DRESS_COLUMNS.cut}</th>
          <th scope="col">{DRESS_COLUMNS.by}</th>
          <th scope="col">{DRESS_COLUMNS.grain}</th>
        </tr>
      </thead>
      <tbody>
        {parts.map((part) => (
          <tr key={part.key}>
            <th scope="row" className="pd-box">
              <i className="pc-tick" aria-hidden="true" />
              {partName(part, others)}
            </th>
            <td>{cutWords(part)}</td>
            <td>{BY[part.kind]}</td>
            <td>{grainWords(part.grain)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The longest first: they are torn across the whole cloth. */
function Rectangles({ parts, work: { unit }, others }: PartsProps<RectanglePart>) {
  const ordered = parts.toSorted((a, b) => cutWidth(b) - cutWidth(a));
  return (
    <section>
      <h4>{DRESS_SHEET.rectangles}</h4>
      <p className="pc-hint">{DRESS_SHEET.rectanglesHint}</p>
      {parts.some(({ cloth }) => cloth === "interfacing") && <p className="pc-hint">{DRESS_SHEET.interfacingHint}</p>}
      <table className="pd-table pd-numbered">
        <thead>
          <tr>
            <th scope="col">{DRESS_COLUMNS.part}</th>
            <th scope="col">{DRESS_COLUMNS.cut}</th>
            <th scope="col">{DRESS_COLUMNS.across}</th>
            <th scope="col">{DRESS_COLUMNS.down}</th>
            <th scope="col">{DRESS_COLUMNS.allowances}</th>
          </tr>
        </thead>
        <tbody>
          {ordered.map((part) => (
            <tr key={part.key}>
              <th scope="row" className="pd-box">
                <i className="pc-tick" aria-hidden="true" />
                {partName(part, others)}, {clothName(part.cloth)}
              </th>
              <td>{cutWords(part)}</td>
              <td className="pd-figure">
                <Words>{formatLength(cutWidth(part), unit)}</Words>
              </td>
              <td className="pd-figure">
                <Words>{formatLength(cutDepth(part), unit)}</Words>
              </td>
              <td>
                <Words>{allowancesOfRectangle(part, unit)}</Words>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Sectors({ parts, work: { unit }, others }: PartsProps<SectorPart>) {
  return (
    <section>
      <h4>{DRESS_SHEET.sectors}</h4>
      {parts.map((part) => {
        const { figure, steps } = circleSketch(part, unit);
        const name = partName(part, others);
        return (
          <div key={part.key} className="pd-sector">
            <div className="pd-sketch">
              <FigureDrawing figure={figure} label={name} />
            </div>
            <p className="pd-figure">
              {name}, {clothName(part.cloth)}: {cutWords(part)}
            </p>
            <ol>
              {steps.map((text) => (
                <li key={text}>
                  <Words>{text}</Words>
                </li>
              ))}
            </ol>
          </div>
        );
      })}
    </section>
  );
}

const namedIn =
  (parts: readonly Part[], others: OtherNames) =>
  (key: string): string => {
    const part = parts.find((one) => one.key === key);
    return part === undefined ? key : partName(part, others);
  };

interface LayProps extends PartsProps<Part> {
  readonly lay: ClothLay;
}

/** What a page holds under its headings, and a line of the list beside the drawing of a lay, mm. */
const PAGE: Readonly<Record<Work["paper"], Mm>> = { A4: 248, Letter: 230 };
const LAID_LINE: Mm = 4.6;
/** Lines that run over to a second one. */
const OVER = 1.25;

/** How tall a lay may be drawn so that its list stands on the same page. */
const drawingRoom = (paper: Work["paper"], rows: number): Mm => PAGE[paper] - Math.ceil((rows * OVER) / 2) * LAID_LINE;

/** Drawn on a page of its own where it takes one, with the list that it is laid by. */
function Lay({ lay, parts, work: { unit, paper, dress }, others }: LayProps) {
  const { figure, rows } = layDrawing(lay, namedIn(parts, others), unit);
  const width = figure.box.width * Math.min(1, drawingRoom(paper, rows.length) / figure.box.height);
  return (
    <div className="pd-lay">
      <h5>
        <Words>{layTitle(lay, unit)}</Words>
      </h5>
      <p>
        <Words>{layHint(lay, dress?.cloths?.[lay.cloth] ?? {}, unit)}</Words>
      </p>
      <div className="pd-lay-drawing" style={{ width: `${width}mm` }}>
        <FigureDrawing figure={figure} label={layTitle(lay, unit)} />
      </div>
      <ol className="pd-laid">
        {rows.map(({ number, name, copy, how, across, along }) => (
          <li key={number}>
            <b>{number}</b> {laidNameWords(name, copy, how)}:{" "}
            <Words>{laidWords(across, along, lay.onFold, unit)}</Words>
          </li>
        ))}
      </ol>
    </div>
  );
}

function Sewing({ dress: { sewing }, work: { unit } }: { readonly dress: DressPlan; readonly work: Work }) {
  return (
    <section className="pd-sewing">
      <h4>{DRESS_SHEET.sewing}</h4>
      <table>
        <thead>
          <tr>
            <th scope="col">{DRESS_COLUMNS.step}</th>
            <th scope="col">{DRESS_COLUMNS.seam}</th>
            <th scope="col" className="pd-allowance">
              {DRESS_COLUMNS.allowance}
            </th>
          </tr>
        </thead>
        <tbody>
          {sewing.map((step, at) => {
            const { text, seams, allowance, press, cautions } = sewingStepWords(step, unit);
            return (
              <tr key={`${step.name} ${step.at ?? ""}`}>
                <td className="pd-step">
                  <i className="pc-tick" aria-hidden="true" />
                  <b>{at + 1}</b> <Words>{[text, press].filter((part) => part !== null).join(" ")}</Words>
                  {cautions.map((caution) => (
                    <span key={caution} className="pd-caution">
                      {caution}
                    </span>
                  ))}
                </td>
                <td className="pd-seam">
                  {seams.map((seam) => (
                    <span key={seam}>
                      <Words>{seam}</Words>
                    </span>
                  ))}
                </td>
                <td className="pd-allowance">{allowance !== null && <Words>{allowance}</Words>}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
