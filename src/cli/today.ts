/** Today by the clock of this machine, yyyy-mm-dd. */
export function today(): string {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const two = (part: number): string => String(part).padStart(2, "0");
