/** The figures of one dart. */
import type { PiecePoint } from "../geometry/point";
import type { Mm, Radians } from "../units";
import type { DartEndReading } from "./dartEndReading";

export interface DartFigures {
  readonly apex: PiecePoint;
  /** Mouth ends: nearer the centre (or upper), and the other. */
  readonly inner: PiecePoint;
  readonly outer: PiecePoint;
  readonly legInner: Mm;
  readonly legOuter: Mm;
  /** Straight distance between the mouth ends. */
  readonly intake: Mm;
  readonly angle: Radians;
  /** Height of the sewn cone at the radius at which it is stated. */
  readonly fullness: Mm;
  /** Where it ends against the bust point; null for darts that serve no bust. */
  readonly end: DartEndReading | null;
}
