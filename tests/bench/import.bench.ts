import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import Papa from 'papaparse';
import { type ImportSession, openSession } from '../../src/import/import-session.ts';
import { finish } from '../../src/import/in-steps.ts';
import { makeList } from './price-list.ts';
import { lastResult, type RatioResult, ratio } from './support.ts';

/** Megabytes that a piece of work leaves in memory while its result is held: strings, objects and buffers. */
function heldMegabytes(work: () => unknown): number {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const used = (): number => {
    collect();
    const { heapUsed, arrayBuffers } = process.memoryUsage();
    return heapUsed + arrayBuffers;
  };
  const before = used();
  const result = work();
  const after = used();
  if (result === undefined) throw new Error('There is nothing to hold.');
  return (after - before) / 1e6;
}

/**
 * A large price list read, typed and searched as the worker does it, against PapaParse splitting the same text
 * into arrays of strings and doing nothing with them; and the memory that both leave in use.
 */
export async function bench(): Promise<readonly RatioResult[]> {
  const text = makeList(100_000);
  const bytes = new TextEncoder().encode(text);
  const parse = (): string[][] =>
    Papa.parse<string[]>(text, { header: false, delimiter: ';', newline: '\n', skipEmptyLines: false }).data;
  const open = (): ImportSession => {
    const session = openSession(bytes);
    if ('refusal' in session) throw new Error(session.refusal);
    return session;
  };
  const readAll = (): ImportSession => {
    const session = open();
    const { taken, remarked, aside } = finish(session.readRows(session.proposeMatch()));
    if (taken + remarked + aside !== 100_000) throw new Error('Rows are missing.');
    if (session.find('chain rear', 12).length !== 12) throw new Error('The search finds too little.');
    return session;
  };
  const options = { rounds: 9, warmUps: 3 };
  const results = [
    await ratio('price list of 100,000 rows: read, against PapaParse alone', open, parse, options),
    await ratio('price list of 100,000 rows: read, typed, searched', readAll, parse, options),
  ];
  if (lastResult() === undefined) throw new Error('Nothing was read.');
  const [held, heldByParser] = [heldMegabytes(readAll), heldMegabytes(parse)];
  return [
    ...results,
    {
      name: 'price list of 100,000 rows: memory held, against the arrays of PapaParse',
      unit: 'MB',
      candidateMs: held,
      baselineMs: heldByParser,
      ratio: held / heldByParser,
    },
  ];
}
