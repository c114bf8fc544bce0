import { freeName as freePlainName, isHostileWord, NAME_LENGTH } from '../tables/plain-name.ts';
import { isNamed, type NotebookDocument } from './document.ts';

const PLAIN_NAME = /^[A-Za-z][A-Za-z0-9_]*$/;

/**
 * Why a word cannot name a cell or a column; null when it can.
 *
 * A plain name is a letter, then letters, digits and underscores, at most 60 characters.
 *
 * @example nameRefusal('front pads')
 * // "'front pads' is not a plain name: letters, digits and underscores only, with a letter first"
 */
export function nameRefusal(name: string): string | null {
  if (name === '') return 'the name is empty; give it a plain word such as front_pads';
  if (name.length > NAME_LENGTH) {
    return `the name is ${name.length} characters long; at most ${NAME_LENGTH} are allowed`;
  }
  if (isHostileWord(name)) return `'${name}' cannot be used as a name; choose another word`;
  if (!PLAIN_NAME.test(name)) {
    return `'${name}' is not a plain name: letters, digits and underscores only, with a letter first`;
  }
  return null;
}

/** Names of all cells that other cells can read. */
export function cellNames(document: NotebookDocument): Set<string> {
  return new Set(document.cells.filter(isNamed).map((cell) => cell.name));
}

/**
 * A plain name for a new cell or column, made from any heading and unlike all that are taken.
 *
 * @example freeName('Front pads (mm)', new Set(['front_pads_mm'])) // 'front_pads_mm_2'
 */
export function freeName(heading: string, taken: ReadonlySet<string>): string {
  return freePlainName(heading, taken);
}
