/** The printed text of a checklist taken apart: its pieces, their jobs, and the moves of each. Knows nothing but the text. */

export interface Job {
  readonly text: string;
  readonly moves: readonly string[];
}

export interface PieceOfSheet {
  /** As printed: "FRONT BASQUE". */
  readonly title: string;
  readonly jobs: readonly Job[];
}

/** Columns that words may take before the amounts at the right. */
const WORDS = 64;
const FIRST_LETTER = 97;
const GROUP = /^ORDER OF WORK: (.+)$/;
const RULE = /^-+$/;

/** Words of a line without the amount set out at its right, which stands behind two blanks or more. */
const wordsOf = (line: string): string =>
  line
    .slice(0, WORDS)
    .trimEnd()
    .replace(/\s{2,}\S.*$/, "")
    .trimEnd();

/** All pieces with their jobs, in the order told. */
export function readSheet(text: string): readonly PieceOfSheet[] {
  const groups: { title: string; jobs: { text: string; moves: string[] }[] }[] = [];
  let isInside = false;
  for (const line of text.split("\n")) {
    const title = GROUP.exec(line)?.[1];
    if (title !== undefined) {
      groups.push({ title, jobs: [] });
      isInside = true;
    } else if (/^[A-Z][A-Z ]+$/.test(line)) isInside = false;
    else if (isInside && line !== "" && !RULE.test(line)) addTo(groups.at(-1)?.jobs ?? [], line);
  }
  return groups;
}

function addTo(jobs: { text: string; moves: string[] }[], line: string): void {
  const job = jobs.at(-1);
  const begun = /^ {2}\[ \] (.*)$/.exec(line);
  // Moves are lettered in order: a word of one letter at the beginning of a line is none.
  const letter = String.fromCodePoint(FIRST_LETTER + (job?.moves.length ?? 0));
  const isSaid = /[.:]$/.test(job?.moves.at(-1) ?? job?.text ?? "");
  const move = isSaid ? new RegExp(`^ {6}${letter} (.*)$`).exec(line) : null;
  const isMore = /^ {6}/.test(line);
  if (begun !== null) jobs.push({ text: wordsOf(line.slice(6)), moves: [] });
  else if (job === undefined || !isMore) return;
  else if (move !== null) job.moves.push((move[1] ?? "").trimEnd());
  else if (job.moves.length > 0 && /^ {8}/.test(line)) job.moves.push(`${job.moves.pop() ?? ""} ${line.trim()}`);
  else job.text = `${job.text} ${wordsOf(line.slice(6))}`;
}

/** What a piece is to be done, said of one half: lines for the other are left out. */
export function jobsForHalf(jobs: readonly Job[], half: "left" | "right"): readonly Job[] {
  const mark = /^On the (left|right) half: /;
  return jobs
    .filter(({ text }) => (mark.exec(text)?.[1] ?? half) === half)
    .map((job) => ({ ...job, text: job.text.replace(mark, "") }));
}
