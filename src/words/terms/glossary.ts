/** Terms of drafting, each in one sentence, said where it stands. */

export type TermName = "mouth" | "angle" | "legs" | "fullness" | "drafted" | "ease" | "frame";

export const TERMS: Readonly<Record<TermName, string>> = {
  mouth: "how wide the dart is open at the seam: the cloth that is folded away there.",
  angle: "how far its two legs spread from its end: the wider, the fuller the bust it makes.",
  legs: "its two sides, from the end to the seam; they are sewn on each other.",
  fullness: "how high the cloth stands up at its end once it is sewn.",
  drafted: "the body a pattern is drawn for: here, how much larger the bust is than the chest above it.",
  ease: "room between body and garment.",
  frame: "the size that neck, shoulders and armholes are cut in.",
};
