import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** One page of a PDF as a reader meets it; lengths in points from its top left corner. */
export interface PrintedPage {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PrintedText[];
  readonly images: readonly Box[];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface PrintedText extends Box {
  readonly words: string;
}

export async function printedPages(pdf: Uint8Array): Promise<readonly PrintedPage[]> {
  const task = getDocument({ data: pdf.slice(), verbosity: 0 });
  const document = await task.promise;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item): PrintedText[] => {
      if (!("str" in item) || item.str.trim() === "") return [];
      const [across, turned, , , x, y] = item.transform as number[];
      // Turned by a quarter, a text is as high as it was wide.
      const [wide, high] =
        Math.abs(turned!) > Math.abs(across!) ? [item.height, item.width] : [item.width, item.height];
      return [{ words: item.str, left: x!, right: x! + wide, top: height - y! - high, bottom: height - y! }];
    });
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push({ width, height, texts, images: imagesIn(fnArray, argsArray, height) });
  }
  await task.destroy();
  return pages;
}

type Matrix = readonly [number, number, number, number, number, number];

/** An image is drawn on the unit square (ISO 32000-1, section 8.9.5), so the matrix in force tells where it lies. */
function imagesIn(
  operations: readonly number[],
  operands: readonly unknown[],
  height: number,
): readonly Box[] {
  const kept: Matrix[] = [];
  const images: Box[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  operations.forEach((operation, index) => {
    if (operation === OPS.save) kept.push(matrix);
    else if (operation === OPS.restore) matrix = kept.pop() ?? matrix;
    else if (operation === OPS.transform) matrix = product(matrix, operands[index] as Matrix);
    else if (operation === OPS.paintImageXObject) {
      const [a, , , d, x, y] = matrix;
      const ends = [height - y, height - (y + d)];
      images.push({ left: x, right: x + a, top: Math.min(...ends), bottom: Math.max(...ends) });
    }
  });
  return images;
}

const product = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

/** A text as it can be found again whatever was done to its spaces, lines and ligatures. */
export const squeezed = (words: string): string => words.normalize("NFKC").replace(/\s+/g, "");

export const pageText = ({ texts }: PrintedPage): string =>
  squeezed(texts.map(({ words }) => words).join(" "));
