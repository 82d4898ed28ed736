/** Text to put in place of the characters from one offset up to another. */
export interface Splice {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export const insertion = (at: number, text: string): Splice => ({ from: at, to: at, text });

/** Makes changes that do not overlap; offsets are those of the text as it was. */
export const spliced = (text: string, splices: readonly Splice[]): string =>
  [...splices]
    .sort((a, b) => b.from - a.from || b.to - a.to)
    .reduce((result, splice) => result.slice(0, splice.from) + splice.text + result.slice(splice.to), text);
