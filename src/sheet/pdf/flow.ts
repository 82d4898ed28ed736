/** Something of a known height that can be drawn anywhere on a page; heights in points. */
export interface Part {
  readonly height: number;
  readonly draw: (top: number) => void;
  /** What it falls into where even a whole page is too short for it. */
  readonly split?: readonly Part[] | undefined;
}

export interface Flow {
  /** Puts a part below what is there, on a new page where it would not fit. */
  readonly add: (part: Part) => void;
  /** Goes to a new page. */
  readonly turn: () => void;
  /** Comes again at the top of every further page, until it is taken back. */
  readonly repeat: (head: Part | undefined) => void;
}

/**
 * Lays parts under one another, none split over two pages unless a page is too short for it.
 *
 * @param page the first and the last point of a page's height that may be drawn on
 * @param turnPage makes the next page
 */
export function createFlow(
  page: { readonly top: number; readonly bottom: number },
  turnPage: () => void,
): Flow {
  let y = page.top;
  let head: Part | undefined;
  const draw = (part: Part): void => {
    part.draw(y);
    y += part.height;
  };
  const turn = (): void => {
    turnPage();
    y = page.top;
    if (head) draw(head);
  };
  const fits = ({ height }: Part): boolean => y + height <= page.bottom + roundingPoints;
  const add = (part: Part): void => {
    const room = page.bottom - page.top - (head?.height ?? 0);
    if (part.height > room && part.split !== undefined) {
      for (const one of part.split) add(one);
      return;
    }
    if (!fits(part)) turn();
    draw(part);
  };
  return { add, turn, repeat: (next) => (head = next) };
}

/** A part as high as the page shall fit it, whatever its heights lose in being added up. */
const roundingPoints = 0.01;

/** Parts under one another that stay on one page. */
export const stack = (parts: readonly Part[]): Part => ({
  height: parts.reduce((sum, { height }) => sum + height, 0),
  draw: (top) => {
    let y = top;
    for (const part of parts) {
      part.draw(y);
      y += part.height;
    }
  },
  split: parts,
});

/** A part with something beside its top, which stays with what comes first of it. */
export const beside = (part: Part, drawBeside: (top: number) => void): Part => ({
  height: part.height,
  draw: (top) => {
    drawBeside(top);
    part.draw(top);
  },
  get split() {
    const [first, ...rest] = part.split ?? [];
    return first && [beside(first, drawBeside), ...rest];
  },
});

export const space = (height: number): Part => ({ height, draw: () => undefined });
