import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** One line of text on a page, words joined by single spaces, and how far above the page's foot it stands. */
export interface PdfLine {
  readonly text: string;
  /** Points, 1/72 inch. */
  readonly y: number;
}

export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly PdfLine[];
  /** All its text without spaces: what a sentence looks like however it was broken. */
  readonly packed: string;
}

interface Piece {
  readonly str: string;
  readonly transform: readonly number[];
}

/** Text of a PDF, page by page, as pdf.js reads it. */
export async function pdfPages(data: Uint8Array): Promise<readonly PdfPage[]> {
  const document = await getDocument({ data: new Uint8Array(data), verbosity: 0 }).promise;
  try {
    const pages: PdfPage[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const { width, height } = page.getViewport({ scale: 1 });
      const { items } = await page.getTextContent();
      pages.push({
        width,
        height,
        ...linesOf(items.filter((item): item is Piece & typeof item => 'str' in item)),
      });
    }
    return pages;
  } finally {
    await document.destroy();
  }
}

function linesOf(pieces: readonly Piece[]): Pick<PdfPage, 'lines' | 'packed'> {
  const byHeight = new Map<number, Piece[]>();
  for (const piece of pieces) {
    if (piece.str.trim() === '') continue;
    const y = piece.transform[5] ?? 0;
    const key = [...byHeight.keys()].find((one) => Math.abs(one - y) < 2.5) ?? y;
    byHeight.set(key, [...(byHeight.get(key) ?? []), piece]);
  }
  const lines = [...byHeight]
    .sort(([a], [b]) => b - a)
    .map(([y, own]) => ({
      y,
      text: own
        .sort((a, b) => (a.transform[4] ?? 0) - (b.transform[4] ?? 0))
        .map((piece) => piece.str.trim())
        .join(' '),
    }));
  return { lines, packed: packed(pieces.map((piece) => piece.str).join('')) };
}

/** A text without spaces, its apostrophes as a font may draw them. */
export const packed = (text: string): string => text.replace(/\s+/g, '').replace(/[ʼ']/g, '’');
