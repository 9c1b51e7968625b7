/** Shapes of skirts and necklines drawn small, on one bodice: the waist from 15 to 25 at 16 down. */
import type { NecklineShape, SkirtKind } from "../../core/decisions/dress";
import type { DressPicture } from "./PictureChoice";

const BODICE = "M13 4 Q14 10 15 16 H25 Q26 10 27 4 Q20 10 13 4 Z";

export const SKIRT_PICTURES: Readonly<Record<SkirtKind | "none", DressPicture>> = {
  none: { lines: BODICE },
  gathered: {
    lines: `${BODICE} M15 16 Q12 20 8 40 Q20 44 32 40 Q28 20 25 16`,
    fine: "M16.5 16 L15 22 M18.5 16 L18 25 M20 16 V21 M21.5 16 L22 25 M23.5 16 L25 22",
  },
  tiers: {
    lines: `${BODICE} M15 16 L12 24 H28 L25 16 M12 24 L9 32.5 H31 L28 24 M9 32.5 L6 42 H34 L31 32.5`,
    fine: "M16 24 L15.5 27 M20 24 V28 M24 24 L24.5 27 M13 32.5 L12.5 36 M18 32.5 V37 M22 32.5 V37 M27 32.5 L27.5 36",
  },
  circle: {
    lines: `${BODICE} M15 16 Q10 28 2 38 Q6 42 10.5 39.5 Q15 43.5 20 40.5 Q25 43.5 29.5 39.5 Q34 42 38 38 Q30 28 25 16`,
    fine: "M17 20 L10.5 39.5 M20 20 V40.5 M23 20 L29.5 39.5",
  },
  aLine: {
    lines: `${BODICE} M15 16 Q13 22 8 41 Q20 44 32 41 Q27 22 25 16`,
    fine: "M18 16 Q17 28 15.5 42.3 M22 16 Q23 28 24.5 42.3",
  },
  straight: {
    lines: `${BODICE} M15 16 Q11.5 21 12 28 L13 42 H27 L28 28 Q28.5 21 25 16`,
    fine: "M18 16 V21 M22 16 V21 M20 35 V42",
  },
  peplum: {
    lines: `${BODICE} M15 16 Q11 21 7 24.5 Q10.5 28 14 25.8 Q17 28.6 20 26.4 Q23 28.6 26 25.8 Q29.5 28 33 24.5 Q29 21 25 16`,
    fine: "M17.5 18 L14 25.8 M20 18 V26.4 M22.5 18 L26 25.8",
  },
};

const BODY = "M5 22 L10 44 H30 L35 22";
const armholes = (left: number): string => `M${left} 5 L6 9 Q11 16 5 22 M${40 - left} 5 L34 9 Q29 16 35 22`;

export const NECKLINE_PICTURES: Readonly<Record<NecklineShape, DressPicture>> = {
  asPattern: { lines: `${BODY} ${armholes(14)}`, fine: "M14 5 Q14 13 20 13 Q26 13 26 5" },
  scoop: { lines: `${BODY} ${armholes(12)} M12 5 Q12 20 20 20 Q28 20 28 5` },
  vee: { lines: `${BODY} ${armholes(13)} M13 5 L20 23 L27 5` },
  square: { lines: `${BODY} ${armholes(12)} M12 5 L12.5 18 H27.5 L28 5` },
  sweetheart: { lines: `${BODY} ${armholes(12)} M12 5 L12 16 Q16 11 20 19 Q24 11 28 16 L28 5` },
};
