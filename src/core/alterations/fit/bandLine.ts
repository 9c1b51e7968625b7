/** The line along the middle of a midriff band: it runs with the curve of the band, so it slants in the piece frame. */
import type { Piece, SeamName } from "../../pattern/piece";
import type { Line } from "./lengthenAll";
import type { OutlinePlace } from "../../surgery/beyondCut";
import { placeAlong, stretchAt, stretchLength } from "../../pattern/seamStretch";
import type { PieceSet } from "../../pattern/pieceSet";

/** Both bands, each from the middle of its centre to the middle of its side seam; empty where a garment has none. */
export function bandLine({ frontBand, backBand }: PieceSet): Line {
  if (frontBand === undefined || backBand === undefined) return [];
  return [frontBand, backBand].map(
    (band) => [band.name, { down: middleOf(band, "side"), up: middleOf(band, "centre") }] as const,
  );
}

function middleOf(band: Piece, seam: SeamName): OutlinePlace {
  const index = band.edges.findIndex((edge) => edge.seam === seam);
  const stretch = stretchAt(band, index);
  return placeAlong(band, stretch, stretchLength(band, stretch) / 2);
}
