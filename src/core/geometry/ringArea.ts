/**
 * What a closed ring of points encloses, mm², whichever way round it goes.
 *
 * @source the shoelace formula
 */
export function ringArea(ring: readonly { readonly x: number; readonly y: number }[]): number {
  const twice = ring.reduce((sum, { x, y }, index) => {
    const next = ring[(index + 1) % ring.length] ?? { x, y };
    return sum + x * next.y - next.x * y;
  }, 0);
  return Math.abs(twice) / 2;
}
