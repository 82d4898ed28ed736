/** Rounds to so many decimals; the tolerance keeps a value that is exact on paper from being told a step off. */
export const roundTo = (value: number, decimals: number): number => {
  const scale = 10 ** decimals;
  return (Math.round(value * scale + Math.sign(value) * 1e-9) + 0) / scale;
};

/** Rounds up: for cord and yarn, of which too little spoils the piece. */
export const roundUpTo = (value: number, decimals: number): number => {
  const scale = 10 ** decimals;
  return Math.ceil(value * scale - 1e-9) / scale;
};
