/** Most bytes of a file that is brought in: a price list of 200,000 rows has about 20 MB. */
export const MOST_BYTES = 100_000_000;

const HOW_TO_SAVE = 'Open it in the program it comes from, save the sheet as CSV, and bring that file in.';

/** Where a file of a kind has which bytes, as hexadecimal figures: [place, bytes, ...], and what it is. */
const KINDS: readonly (readonly [readonly (readonly [number, string])[], string])[] = [
  [[[0, '89504e470d0a']], 'a picture (PNG)'],
  [[[0, 'ffd8ff']], 'a picture (JPEG)'],
  [[[0, '47494638']], 'a picture (GIF)'],
  [
    [
      [0, '52494646'],
      [8, '57454250'],
    ],
    'a picture (WebP)',
  ],
  [
    [
      [0, '424d'],
      [6, '00000000'],
    ],
    'a picture (BMP)',
  ],
  [[[0, '49492a00']], 'a picture (TIFF)'],
  [[[0, '4d4d002a']], 'a picture (TIFF)'],
  [[[4, '66747970']], 'a picture or a film'],
  [[[0, '255044462d']], 'a PDF document'],
  [[[0, '1f8b']], 'a file packed by gzip'],
  [[[0, '377abcaf271c']], 'a packed archive'],
  [[[0, '526172211a']], 'a packed archive'],
  [[[0, 'd0cf11e0a1b11ae1']], 'a sheet in an older binary format'],
  [[[0, '53514c69746520666f726d6174']], 'a database'],
  [[[0, '7b5c727466']], 'a text document with formatting (RTF)'],
];

const ZIP = ['504b0304', '504b0506', '504b0708'];

function hasBytes(bytes: Uint8Array, at: number, hex: string): boolean {
  for (let i = 0; i < hex.length; i += 2) {
    if (bytes[at + i / 2] !== Number.parseInt(hex.slice(i, i + 2), 16)) return false;
  }
  return true;
}

/**
 * Why a file cannot be a table of text, from its bytes alone; null when it may be one.
 *
 * @returns one or two sentences: what the file is, and what to do instead
 * @example refuseFile(new Uint8Array([]))
 * // 'The file is empty: it has no bytes at all. Choose a file with rows in it.'
 */
export function refuseFile(bytes: Uint8Array): string | null {
  if (bytes.length === 0) {
    return 'The file is empty: it has no bytes at all. Choose a file with rows in it.';
  }
  if (bytes.length > MOST_BYTES) {
    const megabytes = Math.round(bytes.length / 1e6);
    return `The file has ${megabytes} MB; at most ${MOST_BYTES / 1e6} MB can be brought in. Split it, or leave out what is not needed.`;
  }
  const start = String.fromCharCode(...bytes.subarray(0, 600)).replace(/^ï»¿/, '');
  if (ZIP.some((hex) => hasBytes(bytes, 0, hex))) return refuseZip(start);
  if (/^\s*(?:<\?xml[^>]*\?>\s*)?(?:<!--[\s\S]*?-->\s*)?<gpx[\s>]/.test(start)) {
    return 'The file is a GPX track or route, not a table; bring it in as the distances of a route.';
  }
  const isPage = /^\s*(?:<!doctype html|<html|<table)/i.test(start);
  const found = KINDS.find(([marks]) => marks.every(([at, hex]) => hasBytes(bytes, at, hex)));
  const kind = isPage ? 'a web page' : found?.[1];
  return kind === undefined ? null : `The file is ${kind}, not a table of text. ${HOW_TO_SAVE}`;
}

function refuseZip(start: string): string {
  const isSheet = /\[Content_Types\]\.xml|_rels\/|xl\/|opendocument\.spreadsheet/.test(start);
  return isSheet
    ? `The file is a workbook of a sheet program whose name ends in .csv, not a table of text. ${HOW_TO_SAVE}`
    : 'The file is a packed archive (zip), not a table of text. Unpack it and bring in the file inside.';
}

/**
 * Why decoded text cannot be a table: it is blank, or has NUL signs in it; null when it may be one.
 *
 * @example refuseText('a,b\n1,\u00002')
 * // 'Line 2 has a NUL sign in it, which no text has: the file is damaged or is not a table of text. Ask for it again, or save it anew as CSV.'
 */
export function refuseText(text: string): string | null {
  const nul = text.indexOf('\0');
  if (nul !== -1) {
    const line = text.slice(0, nul).split(/\r\n|\r|\n/).length;
    return `Line ${line} has a NUL sign in it, which no text has: the file is damaged or is not a table of text. Ask for it again, or save it anew as CSV.`;
  }
  if (text.trim() === '') {
    return 'The file is empty: it has nothing but blank lines. Choose a file with rows in it.';
  }
  return null;
}
