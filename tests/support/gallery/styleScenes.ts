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
import { changed, piecesOfWork, planned } from "./planned";
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

/** Whole bust changes, mm: small ones, and more than any piece can bear, of which the most that works is made. */
const BUST_CHANGES = [
  { amount: 30, isKept: true },
  { amount: -20, isKept: true },
  { amount: 400, isKept: false },
  { amount: -400, isKept: false },
] as const;

export const bustScenes = (): readonly Scene[] =>
  STYLE_NAMES.flatMap((style) =>
    BUST_CHANGES.map(({ amount, isKept }): Scene => {
      const size = Math.abs(amount) > 100 ? "most" : "some";
      return {
        key: `bust/${style}/${amount > 0 ? "full" : "small"}/${size}`,
        title: `${capital(styleWords(style))}, bust ${formatSigned(amount, "cm")}`,
        isKept,
        make: () => bustChanged(style, amount),
      };
    }),
  );

function bustChanged(style: StyleName, amount: number): Result<Shown, string> {
  const work = workOf(style);
  const plan = planned({ ...work, picks: { ...work.picks, bustAlteration: amount } });
  if (!plan.ok) return plan;
  const line = plan.value.left.alterations.find(({ what }) => what.kind === "bust");
  if (line === undefined) return fail("Nothing is made of it.");
  if (!line.outcome.ok) return fail(alterationFailureSentence(line.outcome.failure, work.unit));
  const { notes, surgery } = line.outcome.value;
  return ok({
    ...SHOWN,
    ...changed(piecesOfWork(work), setOf(plan.value.left.pieces)),
    surgery,
    notes: [plannedTitle(line, work.unit), ...notes.map((note) => alterationNoteSentence(note, line.piece, work.unit))],
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
          return plan.ok ? ok({ ...SHOWN, ...changed(piecesOfWork(work), setOf(plan.value[half].pieces)) }) : plan;
        },
      };
    }),
  );
