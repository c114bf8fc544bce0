import { readdirSync, readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';

const root = new URL('../../datasets/', import.meta.url);

const read = (path: string): string => readFileSync(new URL(path, root), 'utf8');

function table(path: string): { head: string[]; rows: string[][] } {
  const parsed = Papa.parse<string[]>(read(path), { header: false, skipEmptyLines: true });
  expect(parsed.errors, path).toEqual([]);
  const [head, ...rows] = parsed.data;
  return { head: head!, rows };
}

function column(path: string, name: string): string[] {
  const { head, rows } = table(path);
  const at = head.findIndex((cell) => cell.replace(/ \(.*\)$/, '') === name);
  expect(at, `${path}: ${name}`).toBeGreaterThanOrEqual(0);
  return rows.map((row) => row[at]!);
}

const files = readdirSync(root, { recursive: true, encoding: 'utf8' })
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => /\.[a-z]+$/.test(path) && path !== 'README.md')
  .sort();

interface DataEntry {
  readonly about: string;
  readonly origin: string;
  readonly licence: string;
  readonly rows: number;
  readonly columns: string[];
}

function entries(): Map<string, DataEntry> {
  const found = new Map<string, DataEntry>();
  for (const section of read('README.md').split(/^## /m).slice(1)) {
    const [path, ...lines] = section.split('\n');
    const field = (name: string): string =>
      lines.find((line) => line.startsWith(`- ${name}: `))?.slice(name.length + 4) ?? '';
    found.set(path!, {
      about: lines.find((line) => /^[^-\s]/.test(line)) ?? '',
      origin: field('Origin'),
      licence: field('Licence'),
      rows: Number(field('Rows')),
      columns: [...field('Columns').matchAll(/`([^`]+)`/g)].map((match) => match[1]!),
    });
  }
  return found;
}

describe('datasets/README.md', () => {
  const listed = entries();

  it('has an entry for every file, and a file for every entry', () => {
    expect([...listed.keys()].sort()).toEqual(files);
    expect(files.length).toBe(20);
  });

  it.each(files)('says what %s is: origin, licence, columns with units, rows', (path) => {
    const entry = listed.get(path)!;
    const { head, rows } = table(path);
    expect(entry.about.length).toBeGreaterThan(4);
    expect(entry.origin.length).toBeGreaterThan(4);
    expect(entry.licence.length).toBeGreaterThan(2);
    expect(entry.columns).toEqual(head);
    expect(entry.rows).toBe(rows.length);
    expect(rows.filter((row) => row.length !== head.length)).toEqual([]);
  });
});

const trip = (name: string): string => `plateau-loop/${name}`;

describe('the invented trip', () => {
  it('is a loop of some 6,000 km over every kind of surface', () => {
    const lengths = column(trip('route.csv'), 'distance').map(Number);
    expect(lengths.length).toBeGreaterThanOrEqual(24);
    const whole = lengths.reduce((sum, km) => sum + km, 0);
    expect(Math.abs(whole - 6000)).toBeLessThan(300);
    const surfaces = new Set(
      column(trip('route.csv'), 'surface').concat(column(trip('route.csv'), 'second_surface')),
    );
    for (const surface of column(trip('surfaces.csv'), 'surface')) expect(surfaces).toContain(surface);
    for (const named of ['sealed', 'gravel', 'corrugated', 'sand', 'rock', 'mud', 'water crossing']) {
      expect(surfaces).toContain(named);
    }
  });

  it('joins leg to leg and comes home', () => {
    const [starts, ends] = [column(trip('route.csv'), 'start_place'), column(trip('route.csv'), 'end_place')];
    expect(starts.slice(1)).toEqual(ends.slice(0, -1));
    expect(ends.at(-1)).toBe(starts[0]);
    expect(column(trip('route.csv'), 'leg')).toEqual(starts.map((start, at) => `${start} to ${ends[at]}`));
  });

  it('has a severity for every wear class on every surface, sealed road being 1', () => {
    const classes = column(trip('wear_classes.csv'), 'wear_class');
    const surfaces = column(trip('surfaces.csv'), 'surface');
    expect(classes.length).toBeGreaterThanOrEqual(7);
    const [of, on] = [column(trip('severity.csv'), 'wear_class'), column(trip('severity.csv'), 'surface')];
    const factors = column(trip('severity.csv'), 'factor').map(Number);
    const pairs = of.map((name, at) => `${name} on ${on[at]}`);
    expect(pairs).toEqual(classes.flatMap((name) => surfaces.map((surface) => `${name} on ${surface}`)));
    expect(factors.every((factor) => factor > 0)).toBe(true);
    expect(factors.filter((_, at) => on[at] === 'sealed').every((factor) => factor === 1)).toBe(true);
  });

  it('has parts of every kind', () => {
    const { head, rows } = table(trip('wear.csv'));
    const at = (name: string): number => head.findIndex((cell) => cell.replace(/ \(.*\)$/, '') === name);
    const has = (row: string[], name: string): boolean => row[at(name)] !== '';
    const number = (row: string[], name: string): number => Number(row[at(name)]);
    const some = (what: (row: string[]) => boolean): number => rows.filter(what).length;
    expect(rows.length).toBeGreaterThanOrEqual(28);
    expect(new Set(rows.map((row) => row[at('part')])).size).toBe(rows.length);
    const reading = (row: string[]): boolean => has(row, 'now');
    expect(some((row) => reading(row) && number(row, 'limit') < number(row, 'new_reading'))).toBeGreaterThan(
      3,
    );
    expect(some((row) => reading(row) && number(row, 'limit') > number(row, 'new_reading'))).toBeGreaterThan(
      3,
    );
    expect(some((row) => !reading(row) && has(row, 'life_low'))).toBeGreaterThan(3);
    expect(some((row) => !reading(row) && has(row, 'shape') && number(row, 'shape') > 1)).toBeGreaterThan(5);
    expect(some((row) => !reading(row) && has(row, 'shape') && number(row, 'shape') === 1)).toBeGreaterThan(
      3,
    );
    expect(some((row) => reading(row) && has(row, 'sudden_life'))).toBeGreaterThan(2);
    expect(some((row) => has(row, 'rating_life'))).toBeGreaterThan(0);
    expect(some((row) => number(row, 'on_hand') > 0)).toBeGreaterThan(3);
    expect(some((row) => has(row, 'reading_error'))).toBeGreaterThan(4);
    expect(some((row) => has(row, 'rate_readings') && number(row, 'rate_readings') < 5)).toBeGreaterThan(3);
    expect(some((row) => row[at('roadside')] === 'no')).toBeGreaterThan(5);
    expect(some((row) => row[at('critical')] === 'yes')).toBeGreaterThan(8);
  });

  it('marks brakes, tyres, wheel and steering bearings, chain, suspension and controls as critical', () => {
    const [parts, critical] = [column(trip('wear.csv'), 'part'), column(trip('wear.csv'), 'critical')];
    const must = /brake|tyre|wheel bearings|steering|chain$|sprocket|fork|shock|throttle/i;
    for (const [row, part] of parts.entries()) if (must.test(part)) expect(critical[row], part).toBe('yes');
  });

  it('has at least 80 offers of three suppliers and a workshop, each matched once to a part, a kit or a work', () => {
    const offers: Record<string, string[]> = {
      'Northgate Spares': column(trip('prices-northgate-spares.csv'), 'Art. no.'),
      'Quayside Moto': column(trip('prices-quayside-moto.csv'), 'Code'),
      'Dray & Daughter': column(trip('prices-dray-and-daughter.csv'), 'Part no'),
      'Anvil Lane Workshop': column(trip('prices-anvil-lane.csv'), 'Job no.'),
    };
    const listed = Object.entries(offers).flatMap(([supplier, numbers]) =>
      numbers.map((offer) => `${supplier} ${offer}`),
    );
    expect(listed.length).toBeGreaterThanOrEqual(80);
    expect(new Set(listed).size).toBe(listed.length);
    const [supplier, offer] = [column(trip('matches.csv'), 'supplier'), column(trip('matches.csv'), 'offer')];
    expect(supplier.map((name, at) => `${name} ${offer[at]}`).sort()).toEqual([...listed].sort());
    const known = new Set([
      ...column(trip('wear.csv'), 'part'),
      ...column(trip('kits.csv'), 'kit'),
      ...column(trip('works.csv'), 'work'),
    ]);
    const fits = column(trip('matches.csv'), 'fits');
    expect(fits.filter((part) => !known.has(part))).toEqual([]);
    for (const part of known) expect(fits, part).toContain(part);
    const money = column(trip('suppliers.csv'), 'currency');
    expect(new Set(money).size).toBeGreaterThanOrEqual(2);
    for (const currency of money) {
      expect(currency).toMatch(/^[A-Z]{3}$/);
      expect(column(trip('rates_of_exchange.csv'), 'currency')).toContain(currency);
    }
    for (const part of [...column(trip('kits.csv'), 'part'), ...column(trip('works.csv'), 'part')])
      expect(column(trip('wear.csv'), 'part')).toContain(part);
  });
});
