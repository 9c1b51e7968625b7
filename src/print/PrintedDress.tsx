/** The dress on paper: what it is, what is cut and how, cloth, notions and the order of sewing. Preview and print are one. */
import "./print.css";
import "./printedDress.css";
import type { ClothLay } from "../core/cloth/cutting";
import type { Work } from "../core/decisions/work";
import type { DressPlan } from "../core/dress/dressPlan";
import type { Part, RectanglePart, SectorPart } from "../core/parts/part";
import { cutDepth, cutWidth } from "../core/parts/part";
import { printedNestOf } from "../core/plan/planOf";
import { clothName, cutWords, partName } from "../words/dressParts";
import { finishedFigures } from "../words/dressStep";
import {
  allowancesOfRectangle,
  DRESS_COLUMNS,
  DRESS_SHEET,
  grainWords,
  layHint,
  layTitle,
  noLayWords,
  stringSteps,
} from "../words/dressSheet";
import { notionWords } from "../words/notions";
import { sewingStepWords } from "../words/sewing";
import { formatLength } from "../words/terms/length";
import { capital, type OtherNames } from "../words/terms/names";
import { Blank } from "./Blank";
import { PageSetup } from "./PageSetup";
import { WorkName } from "./WorkName";
import { Words } from "./Words";

export interface PrintedDressProps {
  readonly work: Work;
  readonly dress: DressPlan;
  /** As far as they are laid. */
  readonly lays: readonly ClothLay[];
}

export function PrintedDress({ work, dress, lays }: PrintedDressProps) {
  const nest = printedNestOf(work);
  const others = nest.ok ? nest.value.otherNames : undefined;
  const { unit } = work;
  const { parts, cloths, notions, sewing } = dress;
  const rectangles = parts.filter((part) => part.kind === "rectangle");
  const sectors = parts.filter((part) => part.kind === "sector");
  return (
    <article className="printed-checklist printed-dress" aria-label={DRESS_SHEET.kind} data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} kind={DRESS_SHEET.kind} />
      <Heading work={work} dress={dress} />
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
        <h4>{DRESS_SHEET.cloth}</h4>
        {cloths.map((cloth) => {
          const lay = lays.find((one) => one.cloth === cloth);
          return lay === undefined ? (
            <p key={cloth}>{noLayWords(cloth)}</p>
          ) : (
            <Lay key={cloth} lay={lay} parts={parts} work={work} others={others} />
          );
        })}
      </section>
      {notions.length > 0 && (
        <section className="pd-notions">
          <h4>{DRESS_SHEET.notions}</h4>
          <ul>
            {notions.map((notion, at) => {
              const { what, amount } = notionWords(notion, unit);
              return (
                <li key={`${at} ${what}`}>
                  <i className="pc-tick" aria-hidden="true" />
                  <b>{what}</b> <Words>{amount}</Words>
                </li>
              );
            })}
          </ul>
        </section>
      )}
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
        <p className="pc-pattern">Pattern: {work.pattern.name}</p>
        {work.invented && <p className="pc-invented">Invented demo: no real person and no real pattern.</p>}
      </div>
      <div className="pc-by-hand">
        <Blank label="Date" />
        <Blank label="Cloth" />
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
      {parts.map((part) => (
        <div key={part.key} className="pd-sector">
          <div>
            <p>
              <b>
                {partName(part, others)}: {cutWords(part)}
              </b>
            </p>
            <ol>
              {stringSteps(part, unit).map((text) => (
                <li key={text}>
                  <Words>{text}</Words>
                </li>
              ))}
            </ol>
          </div>
        </div>
      ))}
    </section>
  );
}

interface LayProps extends PartsProps<Part> {
  readonly lay: ClothLay;
}

function Lay({ lay, work: { unit } }: LayProps) {
  return (
    <div className="pd-lay">
      <h5>
        <Words>{layTitle(lay, unit)}</Words>
      </h5>
      <p>
        <Words>{layHint(lay, unit)}</Words>
      </p>
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
