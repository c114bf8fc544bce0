import { splitHead } from '../tables/column-head.ts';
import { readCsv } from '../tables/csv.ts';

/** Texts of the files of the invented trip, by file name. */
export type TripFiles = Readonly<Record<string, string>>;

/** One column of a trip file: `distance (km)` is the name `distance` with the unit `km`. */
export interface TripColumn {
  readonly name: string;
  readonly unit: string;
  readonly texts: readonly string[];
}

export interface TripFile {
  readonly file: string;
  readonly rowCount: number;
  readonly columns: readonly TripColumn[];
}

/**
 * Reads one file of the invented trip: a head line of `name (unit)`, then rows of as many fields.
 * @throws Error when the file is absent, empty or ragged; it is our own data, so no import dialog can mend it.
 * @example readTripFile({ 'a.csv': 'part,mass (kg)\nChain,1.7\n' }, 'a.csv').columns[1]
 * // { name: 'mass', unit: 'kg', texts: ['1.7'] }
 */
export function readTripFile(files: TripFiles, file: string): TripFile {
  const text = files[file];
  if (text === undefined) throw new Error(`The trip file ${file} is not there.`);
  const csv = readCsv(text, ',');
  if ('refusal' in csv) throw new Error(`The trip file ${file} cannot be read. ${csv.refusal}`);
  const { header: head, rows } = csv;
  rows.forEach((row, at) => {
    if (row.length === head.length) return;
    throw new Error(`${file}, line ${csv.lines[at]}: ${row.length} fields, the head has ${head.length}.`);
  });
  const columns = head.map((cell, place) => {
    const { title: name, unit } = splitHead(cell);
    return { name, unit, texts: rows.map((row) => row[place] ?? '') };
  });
  return { file, rowCount: rows.length, columns };
}

/**
 * The texts of one column.
 * @throws Error naming the file when it has no such column.
 * @example textsOf(readTripFile({ 'a.csv': 'part\nChain\n' }, 'a.csv'), 'part') // ['Chain']
 */
export function textsOf(file: TripFile, name: string): readonly string[] {
  return columnOf(file, name).texts;
}

/** The column of this name; throws Error naming the file when there is none. */
export function columnOf(file: TripFile, name: string): TripColumn {
  const found = file.columns.find((column) => column.name === name);
  if (found === undefined) throw new Error(`${file.file} has no column ${name}.`);
  return found;
}
