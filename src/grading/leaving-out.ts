/**
 * Which of the quantities that sizes share, left to each of them, would let every size fit: each is tried by itself and,
 * where none alone is enough, each pair.
 *
 * @param fitsWithout whether every size fits where these are not shared
 */
export async function quantitiesToLeaveOut(
  shared: readonly string[],
  fitsWithout: (left: readonly string[]) => Promise<boolean>,
): Promise<readonly (readonly string[])[]> {
  const alone = await thatFit(
    shared.map((one) => [one]),
    fitsWithout,
  );
  if (alone.length > 0) return alone;
  const pairs = shared.flatMap((one, at) => shared.slice(at + 1).map((other) => [one, other]));
  return thatFit(pairs, fitsWithout);
}

async function thatFit(
  some: readonly (readonly string[])[],
  fitsWithout: (left: readonly string[]) => Promise<boolean>,
): Promise<readonly (readonly string[])[]> {
  const found: (readonly string[])[] = [];
  for (const left of some) if (await fitsWithout(left)) found.push(left);
  return found;
}
