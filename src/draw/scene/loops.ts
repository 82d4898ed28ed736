import type { ClothPoint } from "./place.ts";

/** Straight pieces that an arc is drawn with. */
const pieces = 24;

/**
 * A standing loop as an arc of a circle that is as long as its cord and ends at its two hangings; the points between
 * the two, none where the cord is no longer than the way.
 *
 * @param lengthMm length of the cord
 * @param outward the side on which it stands off: left below 0, right above
 */
export function loopPoints(
  from: ClothPoint,
  to: ClothPoint,
  lengthMm: number,
  outward: number,
): readonly ClothPoint[] {
  const [across, up] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const straight = Math.hypot(across, up);
  if (straight === 0 || lengthMm <= straight) return [];
  const half = halfAngle(straight / lengthMm);
  const radius = lengthMm / (2 * half);
  const along = { x: across / straight, y: up / straight };
  const side = along.y * outward > 0 || (along.y === 0 && along.x > 0) ? 1 : -1;
  const off = { x: side * along.y, y: -side * along.x };
  const middle = { x: from.xMm + across / 2, y: from.yMm + up / 2 };
  const toCentre = -radius * Math.cos(half);
  return Array.from({ length: pieces - 1 }, (_, index): ClothPoint => {
    const angle = -half + (2 * half * (index + 1)) / pieces;
    const [out, ahead] = [toCentre + radius * Math.cos(angle), radius * Math.sin(angle)];
    return {
      xMm: middle.x + out * off.x + ahead * along.x,
      yMm: middle.y + out * off.y + ahead * along.y,
    };
  });
}

/** Half of an arc's angle, from how long its chord is for its length: `sin(a) / a` falls from 1 to 0 over (0, pi). */
function halfAngle(chordOfLength: number): number {
  let [low, high] = [0, Math.PI];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (Math.sin(middle) / middle > chordOfLength) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
