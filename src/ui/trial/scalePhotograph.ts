/** A picture of a camera made as small as it takes to see folds on it; what else the camera wrote in it, as the place, is left out. */
import type { PhotographType } from "../../document/photographsFile";

/** Dots of the longer side, and bytes that are aimed at. */
const LONGEST = 1600;
const BYTES = 300_000;
const QUALITIES = [0.85, 0.7, 0.55, 0.4] as const;
/** Where the least quality is still too large, it is made smaller. */
const SMALLER = 0.75;
const LEAST = 600;

export interface ScaledPhotograph {
  readonly type: PhotographType;
  readonly bytes: ArrayBuffer;
}

/** The sides of a picture, its longer one at most so long; never larger than it is. */
export function scaledSides(
  width: number,
  height: number,
  longest: number = LONGEST,
): { width: number; height: number } {
  const scale = Math.min(1, longest / Math.max(width, height, 1));
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) };
}

/** Null where the file is no picture that the browser can read. */
export async function scalePhotograph(file: Blob): Promise<ScaledPhotograph | null> {
  try {
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
    try {
      for (let longest = LONGEST; ; longest *= SMALLER) {
        const made = await within(picture, longest, longest * SMALLER < LEAST);
        if (made !== null) return made;
      }
    } finally {
      picture.close();
    }
  } catch {
    return null;
  }
}

async function within(picture: ImageBitmap, longest: number, isLast: boolean): Promise<ScaledPhotograph | null> {
  const { width, height } = scaledSides(picture.width, picture.height, longest);
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  canvas.getContext("2d")?.drawImage(picture, 0, 0, width, height);
  for (const [at, quality] of QUALITIES.entries()) {
    const blob = await new Promise<Blob | null>((resolve) => {
      canvas.toBlob(resolve, "image/jpeg", quality);
    });
    if (blob === null) throw new Error("no picture");
    if (blob.size <= BYTES || (isLast && at === QUALITIES.length - 1))
      return { type: "image/jpeg", bytes: await blob.arrayBuffer() };
  }
  return null;
}
