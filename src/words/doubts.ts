/** What to look at before cutting: checks that do not hold, alterations left out, lines past the printed ones. */
import type { Half } from "../core/decisions/alteration";
import type { Plan, PlanHalf, PlannedAlteration } from "../core/plan/plan";
import type { LengthUnit } from "../core/decisions/work";
import { BUST_LEFT_ALONE, GIRTH_AGREEMENT } from "../core/tolerance";
import { bustShortOf, shareWords } from "./blend";
import { checkFailureSentence } from "./checks";
import { halfWords } from "./fits";
import { deepNote, stopNote } from "./terms/darts";
import { formatAmount, formatLength } from "./terms/length";
import { capital, levelWords, pieceWords } from "./terms/names";
import { alterationTitle, alterationFailureSentence } from "./planned";

/** Why an alteration is not in the order of work; null for one that is. */
export function refusedSentence(planned: PlannedAlteration, unit: LengthUnit): string | null {
  if (planned.outcome.ok) return null;
  const { what } = planned;
  const asked =
    what.kind === "alteration"
      ? alterationTitle(what.alteration, unit)
      : what.kind === "bust"
        ? `${what.amount > 0 ? "Full" : "Small"} bust adjustment of ${formatAmount(Math.abs(what.amount), unit)}`
        : `${capital(levelWords(what.level))} line`;
  const where = `${pieceWords(planned.piece)}${planned.half === undefined ? "" : `, ${halfWords(planned.half)}`}`;
  return `Left out on the ${where}: ${asked.charAt(0).toLowerCase()}${asked.slice(1)}. ${alterationFailureSentence(planned.outcome.failure, unit)}`;
}

export interface Doubts {
  /** One sentence for each check that does not hold, or for each alteration left out. */
  readonly failing: readonly string[];
  /** Not wrong, but worth a trial garment first. */
  readonly notes: readonly string[];
}

export function planDoubts(plan: Plan, unit: LengthUnit): Doubts {
  const refused = plan.ledger.flatMap((planned) => refusedSentence(planned, unit) ?? []);
  // Each half has a check of its own of what was left out, and an alteration can be left out on both.
  const failing = [
    ...refused,
    ...plan.checks
      .filter(({ name, ok }) => !ok && (name !== "alterationsMade" || refused.length === 0))
      .map((check) => checkFailureSentence(check, unit)),
  ];
  const beyond = plan.levels
    .filter((level) => level.extrapolated && !shareWords(level.between, level.share).startsWith("on the"))
    .map(
      (level) =>
        `The ${levelWords(level.level)} line lies past the last printed one, carried on by its step: sew a trial first.`,
    );
  const short = bustShortOf(plan.sizing.bust, unit);
  const bust = plan.levels.flatMap((level) => {
    const gap = level.finished - level.target;
    if (level.level !== "bust" || Math.abs(gap) <= BUST_LEFT_ALONE + GIRTH_AGREEMENT) return [];
    if (short !== null) return short;
    return (
      `Round the bust the garment will measure ${formatLength(level.finished, unit)}, ${formatAmount(Math.abs(gap), unit)} ` +
      `${gap > 0 ? "more" : "less"} than you asked: sew a trial first.`
    );
  });
  return { failing, notes: [...beyond, ...bust, ...dartNotes(plan, unit)] };
}

/** Of the darts of both halves; what is said of both stands once. */
function dartNotes({ left, right }: Plan, unit: LengthUnit): readonly string[] {
  const notesOf = ({ darts }: PlanHalf): readonly string[] =>
    darts.flatMap((dart) => [deepNote(dart), stopNote(dart, unit)].filter((note) => note !== null));
  const [ofLeft, ofRight] = [notesOf(left), notesOf(right)];
  return [
    ...ofLeft.map((note) => (ofRight.includes(note) ? note : onHalf(note, "left"))),
    ...ofRight.filter((note) => !ofLeft.includes(note)).map((note) => onHalf(note, "right")),
  ];
}

const onHalf = (note: string, half: Half): string =>
  `On the ${halfWords(half)}: ${note.charAt(0).toLowerCase()}${note.slice(1)}`;
