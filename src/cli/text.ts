/** The checklist as plain text, 80 columns wide: the printed sheet without its drawings. */
import { openDoubts } from "../core/bodies/tapeDoubts";
import { proposalsOf } from "../core/proposals/proposals";
import type { Plan } from "../core/plan/plan";
import type { Work } from "../core/decisions/work";
import { bustOfHalves, cupsWords, lineSentence } from "../words/blend";
import { cautions } from "../words/cautions";
import { toileNote } from "../words/paperChoices";
import type { WorkPhase } from "../core/plan/workPhases";
import { checklistByPiece, groupTitle, phaseWords } from "../words/checklist";
import { planDoubts } from "../words/doubts";
import { NOT_ALTERED, notAltered } from "../words/proposals";
import { piecesSentences } from "../words/pieceSource";
import { replacedNote } from "../words/replacedBySkirt";
import { printedDartsNote } from "../words/printedDarts";
import { capital, levelWords } from "../words/terms/names";
import { TAPE_DOUBTS_HEAD, tapeDoubtLines, tapeDoubtsWhy } from "../words/tapeDoubts";
import { surePassage } from "../words/surePassage";
import { verifyGroups } from "../words/verify";
import { COLUMNS, hanging, widthOf, withAmount, wrap } from "./layout";
import * as say from "../words/doors/planText";
import { INVENTED_SHEET } from "../words/invented";
import { ALL_CHECKS_HOLD } from "../words/sheets";

/** Room for the amounts at the right. */
const RIGHT = 16;
const FIRST_LETTER = 97;

const heading = (title: string): readonly string[] => [
  "",
  title.toUpperCase(),
  "-".repeat(Math.min(COLUMNS, widthOf(title))),
];

function sizes(work: Work, plan: Plan): readonly string[] {
  const { baseSize } = plan.sizing;
  const cup = cupsWords(plan);
  const levels = plan.levels.filter((level) => level.level !== "bust");
  return [
    ...heading("Sizes"),
    ...hanging("Pieces  ", piecesSentences(plan, work).join(" ")),
    ...hanging("Frame   ", say.neckShoulderArmhole(baseSize.label)),
    ...(cup === null ? [] : hanging("Cup     ", cup)),
    ...hanging("Bust    ", bustOfHalves(plan, work.unit)),
    ...levels.flatMap((level) => {
      const line = plan.left.cutLines.find((one) => one.level === level.level);
      return hanging(capital(levelWords(level.level)).padEnd(8), lineSentence(level, line, work.unit));
    }),
  ];
}

function sure(work: Work): readonly string[] {
  const passage = surePassage(work);
  return passage === null
    ? []
    : [
        ...heading(say.howSure),
        ...wrap(passage.said.join(" "), COLUMNS),
        ...(passage.next === null ? [] : wrap(passage.next, COLUMNS)),
      ];
}

function tape(work: Work): readonly string[] {
  const doubts = openDoubts(work);
  const lines = tapeDoubtLines(doubts, work.unit);
  return lines.length === 0
    ? []
    : [
        ...heading(TAPE_DOUBTS_HEAD),
        ...lines.flatMap((line) => hanging("  ! ", line)),
        ...wrap(tapeDoubtsWhy(doubts, work.pattern), COLUMNS),
      ];
}

function verdict(work: Work, plan: Plan): readonly string[] {
  const { failing, notes } = planDoubts(plan, work.unit);
  const darts = printedDartsNote(plan, work);
  const others = [darts, replacedNote(work, plan), toileNote(work.unit)].filter((note) => note !== null);
  const noted = [...notes, ...others].flatMap((note) => hanging("  - ", note));
  if (failing.length === 0) return [...heading("Checks"), ALL_CHECKS_HOLD(plan.checks.length), ...noted];
  return [
    ...heading(say.beforeYouCut),
    say.failingHead(failing.length),
    ...failing.flatMap((sentence) => hanging("  ! ", sentence)),
    ...noted,
  ];
}

function jobs(work: Work, plan: Plan): readonly string[] {
  return checklistByPiece(plan, work.unit).flatMap((group) => {
    let phase: WorkPhase | null = null;
    return [
      ...heading(say.orderOfWork(groupTitle(group))),
      ...group.lines.flatMap((line) => {
        const title = line.phase === phase ? [] : [phaseWords(line.phase)];
        phase = line.phase;
        return [
          ...title,
          ...withAmount("  [ ] ", line.text, line.amount ?? "", RIGHT),
          ...line.moves.flatMap((move, index) =>
            hanging(`      ${String.fromCodePoint(FIRST_LETTER + index)} `, move, COLUMNS - RIGHT - 1),
          ),
        ];
      }),
    ];
  });
}

function measures(work: Work, plan: Plan): readonly string[] {
  return [
    ...heading(say.measureAfter),
    ...verifyGroups(plan, work.unit).flatMap((group) => [
      ...hanging("", `${group.title}. ${group.how}`),
      ...group.rows.flatMap((row) =>
        withAmount(
          "  [ ] ",
          row.how === null ? row.what : `${row.what} (${row.how})`,
          `${row.expected}  measured ________`,
          32,
        ),
      ),
    ]),
  ];
}

const care = (work: Work, plan: Plan): readonly string[] => [
  ...heading(say.takeCare),
  ...cautions(work, plan).flatMap((caution) => hanging("  ", `${caution.title}: ${caution.text}`)),
];

/** What her measures say that no step does, as on the printed sheet. */
function unaltered(work: Work, plan: Plan): readonly string[] {
  const said = notAltered(proposalsOf(work, plan), work.unit);
  return said.length === 0 ? [] : [...heading(NOT_ALTERED), ...said.flatMap((line) => hanging("  - ", line))];
}

// Names come from a file of anybody's making: nothing in them may steer a terminal.
const CONTROL = /[\p{Cc}\p{Cf}]/gu;

/** The whole sheet, ending with a line end. */
export function checklistText(work: Work, plan: Plan): string {
  const lines = [
    say.alterationChecklist,
    ...wrap(work.name, COLUMNS),
    ...hanging("", `Pattern: ${work.pattern.name}`),
    ...(work.invented ? [INVENTED_SHEET] : []),
    ...sizes(work, plan),
    ...tape(work),
    ...sure(work),
    ...verdict(work, plan),
    ...care(work, plan),
    ...unaltered(work, plan),
    ...jobs(work, plan),
    ...measures(work, plan),
  ];
  return `${lines.map((line) => line.replaceAll(CONTROL, "").trimEnd()).join("\n")}\n`;
}
