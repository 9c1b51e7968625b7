/** The words of the door to a plan: its help, what it refuses, a turn of a trial. */
import { counted } from "../terms/language";

// args
export const help = `Usage: npm run --silent plan -- FILE [--json]
       npm run --silent plan -- FILE [what to do] --out NEXT

Reads a saved Bodicewright work file and prints its alteration checklist, or
does one turn of a trial garment and writes the next work.

  FILE              a work file, as "Download this work" writes it
  --json            print the plan as JSON instead: lengths in mm, angles in
                    degrees
  --widths MM,MM    with --json: lay the dress on cloths of these widths too
  --seen SEEN       lines of a trial's record from a JSON file, put into the
                    open trial; without --out they count for this print alone
  --take N          take that answer of the open trial: 1 is the first
  --half HALF       with --take: try it on the left or the right half alone
  --keep-half HALF  left or right: what that half has, both have;
                    mean: the amounts between, where only these differ
  --close VERDICT   close the open trial: keep or again
  --base            with --close keep: it is the base for other works
  --begin-trial     what is decided now is sewn: a new trial begins
  --day YYYY-MM-DD  with --begin-trial: its day; else today
  --out NEXT        the work file to write, in place of what is there;
                    - for standard output
  --help            print this and stop

Several at once are done in the order they stand in here. Exit code 0 when
there is a plan, or the next work is written; 2 when not, with one line on
standard error that says why: nothing is written then.
`;
export const noFileNamed = "Name the work file to read. --help shows how.";
export const oneFileTooMany = (second: string): string => `One work file at a time: ${second} is one too many.`;
export const goesWithAlone = (text: string, text2: string): string =>
  `${text} goes with ${text2} alone. --help shows how.`;
export const sayWhereToWrite = (does: string): string =>
  `${does} makes another work: say where to write it with --out.`;
export const noWidths = (text: string | undefined): string =>
  `--widths is widths of cloth in mm, as 1140,1500, not ${text}.`;
export const nothingToDo = "Say what to do before --out writes it. --help shows what.";
export const jsonOrOut = "--json prints a plan and --out writes a work: leave one out.";
export const noAnswerNumber = (take: string): string => `${take} is no number of an answer: --take 1 takes the first.`;
export const noHalf = (text: string | undefined): string => `--half is left or right, not ${text}.`;
export const noHalfToKeep = (text: string | undefined): string => `--keep-half is left, right or mean, not ${text}.`;
export const noVerdict = (text: string | undefined): string => `--close is keep or again, not ${text}.`;
export const baseIsKept = "Only a trial that is kept is a base: --base goes with --close keep.";
export const noDay = (day: string): string => `${day} is no day: --day is year, month and day, as 2026-11-25.`;

// turnWork
export const noTrialOpen = "no trial is open in this work: --begin-trial begins one";
export const recordFile = "record of what was seen";
export const noRecord = (file: string, where: string): string =>
  `${file}: this does not read as lines of a trial's record${where}. Nothing was changed.`;
export const recordTooLong = (file: string, most: number, due: number): string =>
  `${file}: a record holds ${most} lines at most, and with these it would be ${due}.`;
export const putDown = (lines: number): string => `${counted(lines, { one: "line", other: "lines" })} put down`;
export const toileFails = (title: string, text: string): string => `the toile of this trial: ${title}. ${text}`;
export const nothingAnswered = "nothing that was seen has one";
export const answersCounted = (count: number): string => `there are ${count}, 1 is the first`;
export const noSuchAnswer = (number: number, there: string): string => `this trial has no answer ${number}: ${there}.`;
export const mendedByHand = (number: number): string =>
  `answer ${number} is mended by hand: nothing is altered for it.`;
export const notOnOneHalf = (number: number): string =>
  `answer ${number} cannot be tried on one half alone: part of it is of the centre or of one half already.`;
export const triedOnHalf = (half: string): string => `, tried on the ${half} half`;
export const answerTaken = (number: number, day: string, on: string): string =>
  `answer ${number} of the trial of ${day} taken${on}`;
export const givenTheMean = "both halves given the mean";
export const givenWhatOneHas = (keep: string): string => `both halves given what the ${keep} has`;
export const keptAsBase = " and kept as the base";
export const trialClosed = (day: string, what: string): string => `the trial of ${day} closed${what}`;
export const trialStillOpen = (day: string): string =>
  `the trial of ${day} is still open: --close keep or --close again ends it.`;
export const tooManyTrials = (trials: number): string =>
  `a work holds ${trials} trials at most, and this one has as many.`;
export const trialBegun = (day: string): string => `a trial of ${day} begun`;
