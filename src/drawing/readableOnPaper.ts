/** Colours of a file on our paper: a line drawn light, for a dark screen, is made dark enough to be seen. */

type Rgb = readonly [number, number, number];

/** Of the page's paper by lamplight, the darkest it is, by the formula of WCAG 2; and what a line that carries meaning must have. */
const PAPER: Rgb = [0xf5, 0xed, 0xde];
const LEAST_CONTRAST = 3;
const INK = "#1f2a37";
const DARKER = 0.9;

/** A colour of the same hue that is readable on paper: the very same where it is; ink where it is none. */
export function readableOnPaper(colour: string): string {
  const [, red, green, blue] = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(colour) ?? [];
  if (red === undefined || green === undefined || blue === undefined) return INK;
  let rgb: Rgb = [Number.parseInt(red, 16), Number.parseInt(green, 16), Number.parseInt(blue, 16)];
  const paper = luminance(PAPER);
  const contrast = (of: Rgb): number => (paper + 0.05) / (luminance(of) + 0.05);
  for (let step = 0; step < 60 && contrast(rgb) < LEAST_CONTRAST; step += 1)
    rgb = [rgb[0] * DARKER, rgb[1] * DARKER, rgb[2] * DARKER];
  return `#${rgb.map((part) => Math.floor(part).toString(16).padStart(2, "0")).join("")}`;
}

const luminance = ([red, green, blue]: Rgb): number =>
  0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);

function linear(part: number): number {
  const share = part / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
}
