import { expect, test } from 'vitest';
import { tableCsv } from '../../src/notebook/table-csv.ts';
import { readCsv } from '../../src/tables/csv.ts';
import { demo, figures, texts, within } from '../starter/support.ts';

function rowsOf(text: string): { header: readonly string[]; rows: readonly (readonly string[])[] } {
  const read = readCsv(text);
  if ('refusal' in read) throw new Error(read.refusal);
  return read;
}

test('a table goes out with what is entered as it was entered, and what is worked out as it stands', async () => {
  await within(demo(), (notebook) => {
    const wear = notebook.document.cells.find((cell) => cell.kind === 'table' && cell.name === 'wear');
    if (wear?.kind !== 'table') throw new Error('no table wear');
    const { header, rows } = rowsOf(tableCsv(notebook, wear));
    expect(header.length).toBe(wear.columns.length);
    const at = (head: RegExp) => header.findIndex((one) => head.test(one));
    expect(rows.map((row) => row[at(/^part$/)])).toEqual(texts(notebook, 'wear.part'));
    const worn = figures(notebook, 'wear.gives_up');
    rows.forEach((row, i) => {
      const written = row[at(/^gives_up/)];
      expect(written === '' ? Number.NaN : Number(written)).toBe(worn[i]);
    });
    expect(rows[0]![at(/^critical$/)]).toMatch(/^(yes|no)$/);
  });
});

test('a pairing goes out with the keys of both its tables, and a text that a sheet would run is written safely', async () => {
  const document = demo();
  const hostile = {
    ...document,
    cells: document.cells.map((cell) =>
      cell.kind === 'table' && cell.name === 'stops'
        ? {
            ...cell,
            columns: cell.columns.map((column) =>
              column.kind === 'text'
                ? { ...column, entries: column.entries.map((entry, row) => (row === 0 ? '=1+1' : entry)) }
                : column,
            ),
          }
        : cell,
    ),
  };
  await within(hostile, (notebook) => {
    const ride = notebook.document.cells.find((cell) => cell.kind === 'pairing' && cell.name === 'ride');
    if (ride?.kind !== 'pairing') throw new Error('no pairing ride');
    const { header, rows } = rowsOf(tableCsv(notebook, ride));
    expect(header.slice(0, 2)).toEqual(['wear.part', expect.stringMatching(/^route\./)]);
    expect(rows.length).toBe(notebook.rowsOf('ride'));
    expect(rows[0]![0]).toBe(texts(notebook, 'wear.part')[0]);
    const stops = notebook.document.cells.find((cell) => cell.kind === 'table' && cell.name === 'stops');
    if (stops?.kind !== 'table') throw new Error('no table stops');
    expect(tableCsv(notebook, stops)).toMatch(/'=1\+1/);
  });
});
