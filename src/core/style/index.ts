/** All styles. To add one: a file beside this, and a line here. */
import { sideDartStyle } from "./sideDartStyle";
import type { Style, StyleName } from "./style";

const STYLES: Readonly<Record<StyleName, Style>> = {
  sideDart: sideDartStyle,
  // TODO(next commit): their own files.
  midriff: sideDartStyle,
  princessArmhole: sideDartStyle,
  princessShoulder: sideDartStyle,
};

export const STYLE_NAMES = Object.keys(STYLES) as readonly StyleName[] as readonly [StyleName, ...StyleName[]];

export const styleOf = (name: StyleName): Style => STYLES[name];
