/**
 * The faces that the page is first drawn with: as CSS font shorthands, and by the names of their files. The page waits
 * for them (faces-ready.ts), and the build has the browser fetch them beside the scripts (vite.config.ts).
 */
export const FIRST_FACES = [
  { font: '400 1em "Inter Variable"', file: 'inter-latin-wght-normal' },
  { font: '500 1em "Barlow Semi Condensed"', file: 'barlow-semi-condensed-latin-500-normal' },
  { font: '600 1em "Barlow Semi Condensed"', file: 'barlow-semi-condensed-latin-600-normal' },
  { font: '400 1em Alegreya', file: 'alegreya-latin-400-normal' },
  { font: 'italic 400 1em Alegreya', file: 'alegreya-latin-400-italic' },
] as const;
