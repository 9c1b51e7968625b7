/** What to do on the tissue to tilt the waist seam, the same for front and back but for the name of the centre. */

export function tiltSteps(centre: "centre front" | "centre back") {
  const above = `Draw a line from the ${centre}, 2 cm above the waist, straight across to the side seam, 2 cm above the waist there.`;
  const below = `Draw a line from the ${centre}, 2 cm below the waist, straight across to the side seam, 2 cm below the waist there.`;
  const cut = `Cut along it from the ${centre} to the side seam, but not through it.`;
  const draw = `Draw the ${centre} straight again and the waist seam square to it for the first 2 cm.`;
  const dart = "Draw the legs of a dart that was cut across again from its end to its mouth and make them equal; the waist seam stays as long as it was.";
  const open = `Turn the part with the waist about that point until the gap at the ${centre} is {amount}, and stick paper behind it.`;
  const lap = `Turn the part with the waist about that point until it laps {amount} over the rest at the ${centre}; tape it down.`;
  const lay = "Lay centre front and side front side by side, stitch lines touching over the last 4 cm above the waist, and tape them lightly together.";
  const part = "Take the two pieces apart, and draw the princess seam smooth on both; walk it.";
  const withCentre = (move: string): readonly string[] => [lay, above, cut, move, part, draw];
  const withSide = [`This piece is cut together with the centre front: taped to it, along the same line, turned about the same point.`, part] as const;
  return {
    open: [above, cut, open, draw, dart],
    fold: [above, cut, lap, draw, dart],
    openCentre: withCentre(open),
    foldCentre: withCentre(lap),
    openSide: withSide,
    foldSide: withSide,
    lap: [below, cut, lap, draw, dart],
    letIn: [below, cut, open, draw, dart],
  } as const;
}
