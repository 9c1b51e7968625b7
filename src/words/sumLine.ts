/** One line of a sum: the words, and the figure they come to. */
export interface SumLine {
  readonly words: string;
  readonly figure: string;
  readonly total?: boolean;
}
