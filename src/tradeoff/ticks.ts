/**
 * Round numbers from at or below the least to at or above the most, about so many of them: steps of 1, 2 or 5 times a
 * power of ten.
 *
 * @param finest no step is smaller; 1 for what is counted
 */
export function ticks(least: number, most: number, finest = 0, about = 5): readonly number[] {
  const span = most > least ? most - least : Math.max(1, Math.abs(most));
  const raw = span / about;
  const power = 10 ** Math.floor(Math.log10(raw));
  const round = power * (raw / power <= 1 ? 1 : raw / power <= 2 ? 2 : raw / power <= 5 ? 5 : 10);
  const step = Math.max(round, finest);
  const first = Math.floor(least / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(most / step - 1e-9));
  return Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toPrecision(12)),
  );
}
