/** Photographs of trials in a file of one work, where they were asked for: beside the work, which reads the same without them. */
import * as z from "zod/mini";

export const PHOTOGRAPH_TYPES = ["image/jpeg", "image/webp", "image/png"] as const;
export type PhotographType = (typeof PHOTOGRAPH_TYPES)[number];

export interface PhotographInFile {
  /** Of which trial, by its id. */
  readonly trial: string;
  /** When it was added: milliseconds since 1970. */
  readonly added: number;
  readonly type: PhotographType;
  /** Its bytes, base 64. */
  readonly data: string;
}

/** Characters of one: far more than one that was scaled down. How many there are is bounded by how large a file is read. */
const LONGEST = 3_000_000;

const photograph = z.strictObject({
  trial: z.string().check(z.maxLength(200)),
  added: z.int().check(z.gte(0)),
  type: z.enum(PHOTOGRAPH_TYPES),
  data: z.string().check(z.maxLength(LONGEST), z.regex(/^[A-Za-z0-9+/]+={0,2}$/)),
});

const envelope = z.object({ photographs: z.array(z.unknown()) });

/** Whether a file was saved with them, whatever they are. */
export const isWithPhotographs = (data: unknown): boolean =>
  typeof data === "object" && data !== null && Object.hasOwn(data, "photographs");

/** Those that can be read; one that cannot be loses neither the others nor the work. */
export function photographsIn(data: unknown): readonly PhotographInFile[] {
  const found = envelope.safeParse(data);
  return (found.data?.photographs ?? []).flatMap((one) => {
    const parsed = photograph.safeParse(one);
    return parsed.success ? [parsed.data] : [];
  });
}
