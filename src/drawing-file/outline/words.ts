/** A length for a message: "12.3 cm". */
export const cm = (mm: number): string => `${Number((mm / 10).toFixed(1))} cm`;
