/** A run of digits, marks and letters that look like digits, no letter or digit beside it. */
const RUN = /(?<![\p{L}\d])[\dOolI.,'’]*\d[\dOolI.,'’]*(?![\p{L}\d])/gu;

/**
 * A text whose one figure has a letter in the place of a digit, O for a nought, l or I for a one, with the digits
 * put in; null where it has none. A small l behind a figure is no digit but a litre.
 *
 * @example mendLetters('€ 22,1O') // '€ 22,10'
 * @example mendLetters('12,50 / 5l') // null
 */
export function mendLetters(text: string): string | null {
  if (!/[OolI]/.test(text)) return null;
  const runs = text.match(RUN) ?? [];
  const [run] = runs;
  if (run === undefined || runs.length > 1 || !/[Oo]|[lI](?=.)/.test(run)) return null;
  const mended = run.replace(/[Oo]/g, '0').replace(/[lI]/g, '1');
  return /^\d[\d.,'’]*\d$/.test(mended) ? text.replace(run, mended) : null;
}
