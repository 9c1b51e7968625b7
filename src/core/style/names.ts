/** The names of all styles. Apart from what makes them, which a document need not know. */
export const STYLE_NAMES = ["sideDart", "midriff", "princessArmhole", "princessShoulder"] as const;

export type StyleName = (typeof STYLE_NAMES)[number];
