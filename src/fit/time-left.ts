/** What is left of a time allowed for several pieces of work together, whenever it is asked for; nothing is no limit. */
export function timeLeft(limitMs: number | undefined): () => { readonly timeLimitMs?: number } {
  if (limitMs === undefined) return () => ({});
  const deadline = performance.now() + limitMs;
  return () => ({ timeLimitMs: Math.max(1, deadline - performance.now()) });
}
