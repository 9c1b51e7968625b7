/** What takes too long fails and says so: a bench that hangs tells nothing. */
export async function within<T>(what: string, seconds: number, doing: () => Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => {
      reject(new Error(`${what}: not done after ${seconds} s`));
    }, seconds * 1000);
  });
  try {
    return await Promise.race([doing(), late]);
  } finally {
    clearTimeout(timer);
  }
}
