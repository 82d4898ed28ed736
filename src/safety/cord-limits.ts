/**
 * Limits for cords on children's clothing. They are taken from public summaries of EN 14682 (cords and drawstrings on
 * children's clothing up to 14 years) and are to be checked in the standard as it stands: it is revised.
 */
export const CORD_LIMITS = {
  /** Young children: up to 7 years, 134 cm (EN 14682; Finnish product safety authority and others). */
  young: { years: 7, heightMm: 1340 },
  /** Older ones: up to 14 years, girls to 176 cm, boys to 182 cm (the same); the greater height is the careful one. */
  older: { years: 14, heightMm: 1820 },
  /** Most that a fixed loop may be round (7.5 cm: a testing house on the changes of 2014; for a fixed loop from memory). */
  loopMm: 75,
  /** Longest free end at an older child's neck and elsewhere (Irish consumer authority, 2010: edition of 2007). */
  freeEndMm: { neck: 75, elsewhere: 140 },
  /** How far below a neck opening the neck is taken to begin. Our own judgement, no published source. */
  neckMm: 50,
} as const;
