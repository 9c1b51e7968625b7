/**
 * How much a work can hold: far more than a chart, a ledger or a page of fields needs. Commands keep within it and what
 * is read back is held to it, so that whatever is saved can be opened again.
 */
export const LIMITS = {
  /** Characters of a name or a label. */
  text: 200,
  /** Characters of an entry that could not be read: a whole page pasted in place of a chart, too. */
  unreadText: 40_000,
  unread: 1000,
  /** Lines of a file, all looks together, the characters of all of them, and the looks, points and writings. */
  fileLines: 6000,
  fileText: 3_000_000,
  fileLooks: 400,
  fileMarks: 3000,
  /** In its own units, in either direction. */
  fileCoordinate: 1e7,
  /** Pieces of a file, and corners put right on one of them. */
  filePieces: 60,
  fileCorners: 200,
  /** Sizes or cup versions as typed or pasted; a chart that can be drafted from has fewer. */
  rows: 60,
  alterations: 200,
  /** Darts that something was said of, each half by itself. */
  seen: 60,
  /** Trial garments of one work, and lines of the record of one of them. */
  trials: 30,
  observations: 60,
  /** mm. Nothing pinched, let out or marked on a toile is more. */
  seenAmount: 500,
  /** Times of measuring that are kept, and readings of one measure in each. */
  tapes: 24,
  readings: 5,
  /** Years. */
  age: 130,
  /** Of one opening: one alone would not hold it, and with more than the most there is no room between them. */
  buttons: { least: 2, most: 20 },
  /** Of one skirt. */
  tiers: { least: 2, most: 5 },
  /** mm. The widest allowance that is cut: a deep hem. */
  allowance: 80,
  /** mm. Hardly any printer for sheets prints nearer the edge than the least; with more than the most, no paper is left. */
  printerMargin: { least: 5, most: 25 },
  /** mm, in either direction. Nothing on a body or a bodice is longer. */
  length: 10_000,
} as const;
