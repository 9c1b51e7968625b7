/** Every style in every cup on every body of the gallery, and its bust let in and taken out. */
import { STYLE_NAMES, type StyleName } from "../../../src/core/decisions/pattern";
import { HALVES } from "../../../src/core/decisions/alteration";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { fail, ok, type Result } from "../../../src/core/result";
import { alterationFailureSentence } from "../../../src/words/planned";
import { alterationNoteSentence, plannedTitle } from "../../../src/words/ledger";
import { capital, styleWords } from "../../../src/words/terms/names";
import { halfWords } from "../../../src/words/fits";
import { formatSigned } from "../../../src/words/terms/length";
import { BODIES, CUP_BETWEEN, CUPS, workOf } from "./bodies";
import { changed, piecesOfWork, planned, shownChange } from "./planned";
import { SHOWN, type Scene, type Shown } from "./scene";

export const styleScenes = (): readonly Scene[] =>
  STYLE_NAMES.flatMap((style) =>
    CUPS.flatMap(({ label }) =>
      BODIES.map((body): Scene => {
        const work = workOf(style, body, label);
        return {
          key: `styles/${style}/cup ${label}/${body.name}`,
          title: `${capital(styleWords(style))}, cup ${label}, ${body.name}`,
          isKept: body.isBetween !== true && label !== CUP_BETWEEN,
          make: () => {
            const plan = planned(work);
            return plan.ok ? ok({ ...SHOWN, pieces: setOf(plan.value.left.pieces) }) : plan;
          },
        };
      }),
    ),
  );

/** Whole bust changes, mm: small ones, and far more than any piece can bear. */
const BUST_CHANGES = [
  { name: "full", some: 30, far: 600 },
  { name: "small", some: -20, far: -600 },
] as const;

export const bustScenes = (): readonly Scene[] =>
  STYLE_NAMES.flatMap((style) =>
    BUST_CHANGES.flatMap(({ name, some, far }): readonly Scene[] => {
      const titled = (amount: number): string => `${capital(styleWords(style))}, bust ${formatSigned(amount, "cm")}`;
      const key = `bust/${style}/${name}`;
      const most = (): number => mostAtBust(style, far) ?? far;
      return [
        { key: `${key}/some`, title: titled(some), isKept: true, make: () => bustChanged(style, some) },
        {
          key: `${key}/most`,
          get title() {
            return titled(most());
          },
          isKept: false,
          make: () => bustChanged(style, most()),
        },
      ];
    }),
  );

function bustLine(style: StyleName, amount: number) {
  const work = workOf(style);
  const plan = planned({ ...work, picks: { ...work.picks, bustAlteration: amount } });
  const line = plan.ok ? plan.value.left.alterations.find(({ what }) => what.kind === "bust") : undefined;
  return { work, plan, line };
}

/** The most that the refusal of a change names, in whole millimetres. */
function mostAtBust(style: StyleName, far: number): number | null {
  const { line } = bustLine(style, far);
  return line === undefined || line.outcome.ok || line.outcome.failure.code !== "alteration/bust-too-much"
    ? null
    : Math.sign(far) * Math.floor(Math.abs(line.outcome.failure.most));
}

function bustChanged(style: StyleName, amount: number): Result<Shown, string> {
  const { work, plan, line } = bustLine(style, amount);
  if (!plan.ok) return plan;
  if (line === undefined) return fail("Nothing is made of it.");
  if (!line.outcome.ok) return fail(alterationFailureSentence(line.outcome.failure, work.unit));
  const { notes, surgery } = line.outcome.value;
  return ok({
    ...SHOWN,
    ...changed(piecesOfWork(work), setOf(plan.value.left.pieces)),
    surgery,
    notes: [
      `${plannedTitle(line, work.unit)}.`,
      ...notes.map((note) => alterationNoteSentence(note, line.piece, work.unit)),
    ],
  });
}

/** Another cup on one half: both halves, each against the garment with one cup. */
export const halfScenes = (): readonly Scene[] =>
  STYLE_NAMES.flatMap((style) =>
    HALVES.map((half): Scene => {
      const work = workOf(style);
      return {
        key: `halves/${style}/cup C on the left/${half}`,
        title: `${capital(styleWords(style))}, cup C on the ${halfWords("left")}: ${halfWords(half)}`,
        isKept: true,
        make: () => {
          const plan = planned({ ...work, picks: { ...work.picks, halfCups: { left: "C" } } });
          return plan.ok ? ok(shownChange(piecesOfWork(work), setOf(plan.value[half].pieces))) : plan;
        },
      };
    }),
  );
