/** What is seen at a place, before it is put down: how much cloth is in it, on one half. */
import type { TrialPlace, TrialSign, TrialWay } from "../../../src/core/decisions/trial";
import type { DartRef } from "../../../src/core/pattern/piece";

export interface Seen {
  readonly place: TrialPlace;
  readonly sign: TrialSign;
  readonly towards?: TrialPlace;
  readonly dart?: DartRef;
  readonly way?: TrialWay;
  /** mm of cloth: of a fold twice its depth, of a slit its width, else how far off. Absent: there is nothing to measure. */
  readonly cloth?: number;
  readonly mark?: { readonly out: number; readonly down: number };
}
