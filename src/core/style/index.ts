/** All styles. To add one: a file beside this, and a line here. */
import { midriffStyle } from "./midriffStyle";
import { princessArmholeStyle, princessShoulderStyle } from "./princessStyle";
import { sideDartStyle } from "./sideDartStyle";
import type { Style, StyleName } from "./style";

const STYLES: Readonly<Record<StyleName, Style>> = {
  sideDart: sideDartStyle,
  midriff: midriffStyle,
  princessArmhole: princessArmholeStyle,
  princessShoulder: princessShoulderStyle,
};

export const STYLE_NAMES = Object.keys(STYLES) as readonly StyleName[] as readonly [StyleName, ...StyleName[]];

export const styleOf = (name: StyleName): Style => STYLES[name];
