/** Median time of a task in ms, after one run that does not count. */
export async function medianMs(times: number, task: () => unknown): Promise<number> {
  await task();
  const taken: number[] = [];
  for (let time = 0; time < times; time++) {
    const started = performance.now();
    await task();
    taken.push(performance.now() - started);
  }
  return taken.sort((a, b) => a - b)[Math.floor(times / 2)]!;
}

/** Least-squares slope of log time over log size: the exponent of growth. */
export function growthExponent(sizes: readonly number[], times: readonly number[]): number {
  const x = sizes.map(Math.log);
  const y = times.map(Math.log);
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [mx, my] = [mean(x), mean(y)];
  const over = x.reduce((sum, value, index) => sum + (value - mx) * (y[index]! - my), 0);
  return over / x.reduce((sum, value) => sum + (value - mx) ** 2, 0);
}
