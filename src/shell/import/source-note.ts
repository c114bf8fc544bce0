/** An import that is written down with its table. */
export interface ImportNote {
  /** Whose rows they are: a supplier, or the table as a whole. */
  readonly of: string;
  readonly fileName: string;
  /** In words: `25 November 2026`. */
  readonly date: string;
  readonly rows: number;
}

/** A day as it stands in notes: `25 November 2026`. */
export function dayWords(date: Date): string {
  return date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' });
}

/**
 * The table's source with an import written down in it, a line each; an earlier one of the same supplier gives
 * way. Other lines stay.
 *
 * @example withNote('Invented.', { of: 'Dray & Daughter', fileName: 'march.csv', date: '2 March 2026', rows: 19 })
 * // 'Invented.\nDray & Daughter: march.csv, 2 March 2026, 19 rows.'
 */
export function withNote(source: string, note: ImportNote): string {
  const lines = source.split('\n').filter((line) => line !== '' && readNote(line)?.of !== note.of);
  const rows = `${note.rows} ${note.rows === 1 ? 'row' : 'rows'}`;
  // A name is one line, or the note could not be read again.
  const fileName = note.fileName.replaceAll(/\s+/g, ' ').slice(0, 120);
  return [...lines, `${note.of}: ${fileName}, ${note.date}, ${rows}.`].join('\n').slice(-4000);
}

/** The last import of a supplier that the source tells of; null for none. */
export function earlierImport(source: string, of: string): ImportNote | null {
  return (
    source
      .split('\n')
      .map(readNote)
      .find((note) => note?.of === of) ?? null
  );
}

function readNote(line: string): ImportNote | null {
  const parts = /^(.+?): (.+), (\d{1,2} \p{L}+ \d{4}), (\d+) rows?\.$/u.exec(line);
  if (parts === null) return null;
  const [, of, fileName, date, rows] = parts as unknown as [string, string, string, string, string];
  return { of, fileName, date, rows: Number(rows) };
}
