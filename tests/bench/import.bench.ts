import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import Papa from 'papaparse';
import { type ImportSession, openSession } from '../../src/import/import-session.ts';
import { finish } from '../../src/import/in-steps.ts';
import { lastResult, type RatioResult, ratio } from './support.ts';

const NOUNS = ['Chain', 'Sprocket', 'Bearing', 'Brake pad', 'Fork seal', 'Tyre', 'Tube', 'Lever', 'Cable'];
const SIDES = ['rear', 'front', 'left', 'right', 'upper', 'lower', 'inner', 'outer'];
const MAKES = ['heavy duty', 'sealed', 'sintered', 'ribbed', 'forged', 'plated', 'with clip, boxed'];

/** An invented list of 100,000 rows and 8 columns, about 10 MB, with quotes in about one row of four. */
function makeList(rows: number): string {
  const lines = ['Art. no.;Description;Price;Currency;Per pack;Rebate (%);Lead time (days);Fits'];
  for (let row = 0; row < rows; row += 1) {
    const noun = NOUNS[row % NOUNS.length]!;
    const words = `${noun} ${SIDES[row % 8]} ${10 + (row % 90)} x ${17 + (row % 5)}, ${MAKES[row % 7]}, lot ${row % 997}`;
    const text = row % 4 === 0 ? `"${words} 3/8"" drive; new"` : words;
    const price = row % 500 === 0 ? 'POA' : `${1 + (row % 900)},${String(row % 100).padStart(2, '0')}`;
    lines.push(
      `LS-${100000 + row}-${row % 10};${text};${price};EUR;${1 + (row % 10)};${row % 25};${2 + (row % 20)};Wayfarer ${400 + (row % 6) * 50} ${2001 + (row % 24)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

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
