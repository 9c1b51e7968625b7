/** What the lines of a trial's record come to, read together. */
import type { Alteration, Half } from "../decisions/alteration";
import type { ToileLength, TrialCheck, TrialPlace, TrialSign } from "../decisions/trial";
import type { Picks } from "../decisions/decided";
import type { Mm } from "../units";
import type { RuleName } from "./rules";

/** A sign at a place, as a rule expects it or as it is to be looked for. `half` absent: on both, or whichever. */
export interface SignAt {
  readonly place: TrialPlace;
  readonly sign: TrialSign;
  readonly half?: Half;
}

/** One cause that an answer supposes: a row of the table, on one half or on both. */
export interface Cause {
  /** The row's name, which the words go by. */
  readonly rule: RuleName;
  readonly half?: Half;
  /** Cloth, mm, on one half of the body where a half is meant; the sign is the alteration's. */
  readonly amount: Mm;
  /** `measured`: by what was pinched, let out or marked; `usual`: a first try by common practice, since no line had an amount. */
  readonly amountBy: "measured" | "usual";
  /** Lines of the record that it explains, by id. */
  readonly explains: readonly string[];
  /** What one would then also see, and has not: to look for it tells whether this is the cause. */
  readonly expects: readonly SignAt[];
  /** Of what was seen, or ticked, what speaks against it. */
  readonly against: readonly (SignAt | TrialCheck)[];
}

/** One way to answer what was seen: as few causes as explain as much as can be. */
export interface TrialAnswer {
  /** Its causes by name, "swayBack+armholeGape": the same for the same answer. */
  readonly key: string;
  readonly causes: readonly Cause[];
  /** Lines of the record by id: which it explains, and which it leaves. */
  readonly explains: readonly string[];
  readonly leaves: readonly string[];
  /** Alterations as they will stand in the work (amounts whole, counted from what was sewn); of no amount: taken out. */
  readonly alterations: readonly Alteration[];
  /** Of these, by id, the ones that the pieces cannot give the whole amount. */
  readonly less?: readonly string[];
  /** Whole change of the bust by alteration, where the answer changes it. */
  readonly bustAlteration?: Mm;
  /** Cup versions of one half alone, where the answer changes them. */
  readonly halfCups?: NonNullable<Picks["halfCups"]>;
  /** What to look at to tell it from the answer ranked next; seen: it speaks for this one. */
  readonly tellsApart: readonly { readonly look: SignAt | TrialCheck; readonly speaksFor: boolean }[];
}

/** A length of the toile as it was sewn against the plan's. */
export interface SewnOff {
  readonly length: ToileLength;
  readonly sewn: Mm;
  readonly planned: Mm;
  /** Lines that it explains before any alteration does, by id. */
  readonly explains: readonly string[];
}

export interface TrialReading {
  /** Lines that can be read, by id: those with a place and a sign that go together. */
  readonly read: readonly string[];
  /** The best first; empty where nothing was seen, or nothing of it can be explained. */
  readonly answers: readonly TrialAnswer[];
  /** Lines that no answer explains: she is told so, and nothing is made of them. */
  readonly unexplained: readonly string[];
  /** What spoils every reading: the toile was not sewn as planned. */
  readonly sewnOff: readonly SewnOff[];
}
