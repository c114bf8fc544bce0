import { readdirSync, readFileSync } from 'node:fs';

/** One row of a table of what is expected of a file. */
export interface ExpectedRow {
  readonly line: number;
  readonly outcome: 'taken' | 'remarked' | 'aside';
  readonly partNumber: string | null;
  readonly description: string | null;
  readonly price: number | null;
  readonly currency: string | null;
  /** Reason of a row set aside; words of the remark of one remarked. */
  readonly note: string;
}

export interface ExpectedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Facts on the whole file, by name: separator, decimal, letters, head, ... */
  readonly facts: ReadonlyMap<string, string>;
  readonly rows: readonly ExpectedRow[];
}

const folder = new URL('./files/', import.meta.url);

/** Every file of tests/import/files with the table beside it: `NAME.csv` and `NAME.expected.tsv`. */
export function expectedFiles(): readonly ExpectedFile[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith('.csv'))
    .sort()
    .map((file) => {
      const name = file.slice(0, -'.csv'.length);
      const lines = readFileSync(new URL(`${name}.expected.tsv`, folder), 'utf8')
        .trimEnd()
        .split('\n');
      const facts = new Map(
        lines
          .filter((line) => line.startsWith('# '))
          .map((line) => {
            const cut = line.indexOf(': ');
            return [line.slice(2, cut), line.slice(cut + 2)] as const;
          }),
      );
      const rows = lines.filter((line) => !line.startsWith('# ')).slice(1);
      const bytes = new Uint8Array(readFileSync(new URL(file, folder)));
      return { name, bytes, facts, rows: rows.map(expectedRow) };
    });
}

function expectedRow(line: string): ExpectedRow {
  const [number, outcome, partNumber, description, price, currency, note] = line.split('\t');
  return {
    line: Number(number),
    outcome: outcome as ExpectedRow['outcome'],
    partNumber: partNumber || null,
    description: description?.replaceAll('\\n', '\n') || null,
    price: price === '' ? null : Number(price),
    currency: currency || null,
    note: note ?? '',
  };
}
