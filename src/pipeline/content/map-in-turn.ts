/** Do something for each entry, a few at the same time: ten thousand open files are too many. */
export async function mapInTurn<T, R>(
  entries: readonly T[],
  width: number,
  work: (entry: T) => Promise<R>,
): Promise<R[]> {
  const results: R[] = [];
  let next = 0;
  const worker = async () => {
    while (next < entries.length) {
      const at = next++;
      results[at] = await work(entries[at]);
    }
  };
  await Promise.all(Array.from({ length: Math.min(width, entries.length) }, worker));
  return results;
}
