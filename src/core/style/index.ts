/** All styles. To add one: a file beside this, its name in names.ts, and a line here. */
import { midriffStyle } from "./midriffStyle";
import { princessArmholeStyle, princessShoulderStyle } from "./princessStyle";
import { sideDartStyle } from "./sideDartStyle";
import type { StyleName } from "./names";
import type { Style } from "./style";

export { STYLE_NAMES } from "./names";

const STYLES: Readonly<Record<StyleName, Style>> = {
  sideDart: sideDartStyle,
  midriff: midriffStyle,
  princessArmhole: princessArmholeStyle,
  princessShoulder: princessShoulderStyle,
};

export const styleOf = (name: StyleName): Style => STYLES[name];
