/** Timing and printing for the bench. */
export function time(action: () => unknown, runs: number): number[] {
  for (let i = 0; i < Math.min(100, runs); i += 1) action();
  return Array.from({ length: runs }, () => {
    const start = performance.now();
    action();
    return performance.now() - start;
  });
}

export const quantile = (values: readonly number[], share: number): number => {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
};

/** On a busy machine the quickest run says most: nothing else had a share of it. */
export const quickest = (values: readonly number[]): number => Math.min(...values);

/** Slope of the straight line nearest the points (least squares): what one more costs. */
export function slope(points: readonly (readonly [number, number])[]): number {
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const up = points.reduce((sum, [px, py]) => sum + (px - x) * (py - y), 0);
  return up / points.reduce((sum, [px]) => sum + (px - x) ** 2, 0);
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

export function print(title: string, head: readonly string[], rows: readonly (readonly (string | number)[])[]): void {
  const cells = [
    head,
    ...rows.map((row) => row.map((cell) => (typeof cell === "number" ? String(Math.round(cell * 1000) / 1000) : cell))),
  ];
  const widths = head.map((_, column) => Math.max(...cells.map((row) => (row[column] ?? "").length)));
  console.log(`\n${title}`);
  for (const row of cells) console.log(`  ${row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join("   ")}`);
}
