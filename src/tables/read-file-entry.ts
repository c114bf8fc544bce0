import type { Entry, EntryColumn } from './entry.ts';
import { readFileNumber, troubleWords } from './number-policy.ts';
import { readIsoDate } from './read-date.ts';
import { readYesNo } from './read-yes-no.ts';

/** An entry of a file; when it could not be read as its kind it is the raw text, and `reason` says why. */
export interface FileEntryRead {
  readonly entry: Entry;
  readonly reason?: string;
}

/**
 * Reads one field of a file as strictly as our own files are written: decimal point, ISO dates, yes and no.
 * What cannot be read stays as its text. An empty field is missing, whatever the kind.
 *
 * @example readFileEntry('3,1', { kind: 'number' })
 * // { entry: '3,1', reason: "'3,1' is written with a comma" }
 */
export function readFileEntry(text: string, column: EntryColumn): FileEntryRead {
  if (text === '') return { entry: null };
  switch (column.kind) {
    case 'text':
      return { entry: text };
    case 'choice':
      return readChoice(text, column.options ?? []);
    case 'number':
      return readNumber(text);
    case 'date': {
      const date = readIsoDate(text);
      return date !== null ? { entry: date } : unread(text, 'is not a date written as year-month-day');
    }
    case 'yes_no': {
      const answer = readYesNo(text);
      return answer !== null ? { entry: answer } : unread(text, 'is neither yes nor no');
    }
  }
}

function readNumber(text: string): FileEntryRead {
  if (text.trim() === '') return { entry: null };
  const read = readFileNumber(text);
  return 'figure' in read
    ? { entry: read.figure }
    : { entry: text, reason: troubleWords(read.trouble, text).reason };
}

function readChoice(text: string, options: readonly string[]): FileEntryRead {
  return options.length === 0 || options.includes(text)
    ? { entry: text }
    : unread(text, 'is not one of the choices');
}

function unread(text: string, why: string): FileEntryRead {
  return { entry: text, reason: `'${text.slice(0, 40)}' ${why}` };
}
