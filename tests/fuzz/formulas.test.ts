import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { isFault } from '../../src/formula/fault.ts';
import { FUNCTIONS } from '../../src/formula/functions/registry.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';
import { choices, dates, numbers, run, type SampleNotebook, words, yesNos } from '../formula/sample-scope.ts';
import { FUZZ_TIMEOUT_MS, fuzz } from './fuzz-run.ts';
import { type Chance, HOSTILE, mutate } from './random.ts';

const FOLDER = 'datasets/plateau-loop';

/** Every formula of the worked example and every example of the reference. */
function knownFormulas(): readonly string[] {
  const files = readdirSync(FOLDER).filter((name) => name.endsWith('.csv'));
  const document = defaultNotebook(
    Object.fromEntries(files.map((name) => [name, readFileSync(`${FOLDER}/${name}`, 'utf8')])),
  );
  const found = document.cells.flatMap((cell) => [
    ...('formula' in cell ? [cell.formula] : []),
    ...('columns' in cell ? cell.columns.flatMap((one) => ('formula' in one ? [one.formula] : [])) : []),
  ]);
  return [...new Set([...found, ...[...FUNCTIONS.values()].map((held) => held.example.formula)])];
}

const SCOPE: SampleNotebook = {
  here: 't',
  tables: {
    t: {
      a: numbers('km', 1, -2, null, 0),
      b: numbers('', 0.5, 1e300, -0, Number.POSITIVE_INFINITY),
      c: numbers('EUR', 3, 4, 5, 6),
      part: words('chain', null, '', 'chain'),
      kind: choices(['sealed', 'sand'], 'sealed', 'sand', 'sand', 'sealed'),
      on: yesNos(true, false, true, false),
      day: dates('2027-04-01', '2027-05-01', '1970-01-01', '2100-01-01'),
    },
    u: { part: words('chain', 'tube'), reach: numbers('km', 1000, 6200) },
  },
  figures: { k: numbers('', 2), limit_km: numbers('km', 500), today: dates('2027-04-01') },
};

const ATOMS = ['a', 'b', 'c', 'part', 'kind', 'on', 'day', 'k', 'limit_km', 'today', 't.a', 'u.reach'];
const PIECES = [
  ...ATOMS,
  ...FUNCTIONS.keys(),
  ...['1', '0.5', '12 km', '3 EUR', '10%', '"chain"', 'true', 'missing'],
  ...['+', '-', '*', '/', '^', '%', '==', '!=', '<', '<=', '>', '>=', 'and', 'or', 'not', 'to', 'in'],
  ...['(', ')', ',', '?', ':', '.', ' '],
];

/** A formula that is well formed most of the time. */
function grown(chance: Chance, depth: number): string {
  if (depth === 0 || chance.once(4)) return chance.of(ATOMS);
  const inside = (): string => grown(chance, depth - 1);
  const way = chance.below(5);
  if (way === 0) {
    const names = [...FUNCTIONS.keys()];
    const count = chance.below(4);
    return `${chance.of(names)}(${Array.from({ length: count }, inside).join(', ')})`;
  }
  if (way === 1) return `(${inside()})`;
  if (way === 2) return `${inside()} ? ${inside()} : ${inside()}`;
  if (way === 3) return `-${inside()}`;
  return `${inside()} ${chance.of(['+', '-', '*', '/', '^', '<', '==', 'and'])} ${inside()}`;
}

test('random and changed formulas: a figure or a fault with a sentence and a mend', {
  timeout: FUZZ_TIMEOUT_MS,
}, async () => {
  const known = knownFormulas();
  expect(known.length).toBeGreaterThan(100);
  const report = await fuzz('Formulas', { test: 20_000, whole: 1_000_000 }, (chance) => {
    const way = chance.below(4);
    const formula =
      way === 0
        ? mutate(chance, chance.of(known), PIECES)
        : way === 1
          ? grown(chance, 6)
          : way === 2
            ? Array.from({ length: chance.below(30) }, () => chance.of(PIECES)).join(chance.of(['', ' ']))
            : mutate(chance, grown(chance, 4), [...PIECES, ...HOSTILE]);
    const result = run(formula, SCOPE);
    if (!isFault(result)) {
      if (![1, 4].includes(result.values.length))
        throw new Error(`${formula} gave ${result.values.length} rows`);
      return true;
    }
    if (result.message.trim() === '' || (result.mend ?? '').trim() === '')
      throw new Error(`${formula}: a fault without words`);
    return false;
  });
  expect(report.taken).toBeGreaterThan(report.cases / 50);
});
