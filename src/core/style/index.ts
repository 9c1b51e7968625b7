/** All styles. To add one: a file beside this, and a line here. */
import type { StyleName } from "../decisions/pattern";
import { midriffStyle } from "./midriffStyle";
import { princessArmholeStyle, princessShoulderStyle } from "./princessStyle";
import { sideDartStyle } from "./sideDartStyle";
import type { Style } from "./style";

const STYLES: Readonly<Record<StyleName, Style>> = {
  sideDart: sideDartStyle,
  midriff: midriffStyle,
  princessArmhole: princessArmholeStyle,
  princessShoulder: princessShoulderStyle,
};

export const styleOf = (name: StyleName): Style => STYLES[name];
