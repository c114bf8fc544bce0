import { describe, expect, test } from 'vitest';
import {
  callAt,
  parametersOf,
  patternWords,
  signatureOf,
} from '../../../cells/shared/formula-editor-help.ts';
import { answersTo, REFERENCE } from '../../../cells/shared/formula-editor-reference.ts';
import { type Offers, offersAt } from '../../../cells/shared/formula-editor-words.ts';
import { FUNCTIONS } from '../../../src/formula/functions/registry.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { entered, formula, notebook, number, pairing, table, worked } from '../../notebook/small-notebook.ts';

const live = LiveNotebook.open(
  notebook(
    number('budget', 480, 'EUR'),
    formula('broken', 'budget + 3 km'),
    table(
      'route',
      entered('surface', 'choice', ['sand'], { options: ['sealed', 'sand'] }),
      entered('distance', 'number', [1], { unit: 'km' }),
      worked('cost', 'distance * 2 EUR/km'),
    ),
    table('parts', entered('part', 'text', ['Chain'])),
    pairing('ride', 'parts', 'route', worked('step', 'distance')),
  ),
);

/** Offers at the bar in `text`, for a formula of the cell. */
function offered(text: string, cell: string, asked = false): Offers | null {
  const place = text.indexOf('|');
  return offersAt(text.replace('|', ''), place, live.scopeOf(cell), asked);
}

const labels = (offers: Offers | null): string[] => offers?.offers.map(({ label }) => label) ?? [];
const offer = (offers: Offers | null, label: string) => offers?.offers.find((each) => each.label === label);

describe('what is offered', () => {
  test('names with their kind and unit, columns of the same table first, functions with their arguments', () => {
    const offers = offered('2 * d|', 'route');
    expect(offers?.from).toBe(4);
    expect(offer(offers, 'distance')).toMatchObject({ detail: 'in km', sort: 'column' });
    expect(offer(offers, 'budget')).toMatchObject({ detail: 'in EUR', sort: 'name' });
    expect(offer(offers, 'broken')).toMatchObject({ detail: 'waits for broken' });
    expect(offer(offers, 'parts')).toMatchObject({ apply: 'parts.', sort: 'table' });
    expect(offer(offers, 'running')).toMatchObject({ apply: 'running(', sort: 'function' });
    expect(labels(offers)).not.toContain('route');
  });

  test('outside of a table its columns are offered behind its name alone', () => {
    expect(labels(offered('d|', 'budget'))).not.toContain('distance');
    const offers = offered('sum(route.dis|', 'budget');
    expect(offers?.from).toBe(10);
    expect(labels(offers)).toEqual(['surface', 'distance', 'cost']);
    expect(offered('nowhere.d|', 'budget')).toBeNull();
  });

  test('a pairing reads the columns of both its tables', () => {
    expect(labels(offered('p|', 'ride'))).toEqual(expect.arrayContaining(['part', 'distance', 'step']));
  });

  test('after a figure and after to come the units first', () => {
    expect(labels(offered('distance * 2 k|', 'route'))[0]).toBe('km');
    expect(labels(offered('distance to m|', 'route'))[0]).toBe('km');
    expect(labels(offered('distance + m|', 'route'))[0]).toBe('surface');
    expect(labels(offered('distance / (500 km/d|', 'route'))[0]).toBe('km');
  });

  test('after a figure each unit stands once, to be written as it is, and no name or function', () => {
    const offers = offered('distance + 3 mi|', 'route');
    expect(labels(offers).filter((label) => label === 'mi')).toEqual(['mi']);
    expect(offer(offers, 'mi')?.apply).toBeUndefined();
    expect(labels(offers)).toContain('to');
    expect(labels(offers)).not.toContain('min');
    const per = offered('distance / (500 km/d|', 'route');
    expect(labels(per).filter((label) => label === 'day')).toEqual(['day']);
    expect(labels(per)).toContain('distance');
  });

  test('elsewhere a unit comes with its number, as it is no figure alone', () => {
    const day = offered('distance / d|', 'route')?.offers.find(({ label }) => label === 'day');
    expect(day?.apply).toBe('1 day');
  });

  test('inside a text nothing but the choices of what it is compared with', () => {
    expect(offered('surface == "s|', 'route')?.offers.map(({ apply }) => apply)).toEqual([
      'sealed"',
      'sand"',
    ]);
    expect(labels(offered('route.surface != "|', 'budget'))).toEqual(['sealed', 'sand']);
    expect(offered('"some d|', 'route')).toBeNull();
  });

  test('a word that is whole, and begins no other, is not offered again', () => {
    expect(offered('distance * 2 km|', 'route')).toBeNull();
    expect(labels(offered('distance * 2 km|', 'route', true))).toContain('km');
    expect(labels(offered('distance * 2 m|', 'route'))).toContain('mm');
  });

  test('before a word has begun only when asked', () => {
    expect(offered('2 * |', 'route')).toBeNull();
    expect(labels(offered('2 * |', 'route', true))).toContain('distance');
  });
});

describe('the call at the cursor', () => {
  test.each([
    ['max(1, |', 'max', 1],
    ['max(1, sum(route.distance)|', 'max', 1],
    ['max(1, (2 + |', 'max', 1],
    ['1 + running(distance, |', 'running', 1],
    ['max("a, (b", |', 'max', 1],
    ['max(1, 2, 3, 4, |', 'max', parametersOf(FUNCTIONS.get('max')!).length - 1],
  ])('%s is in %s, parameter %d', (text, name, argument) => {
    expect(callAt(text, text.indexOf('|'))).toMatchObject({ called: { name }, argument });
  });

  test('outside of calls there is none, nor in an unknown one', () => {
    expect(callAt('max(1, 2) + ', 12)).toBeNull();
    expect(callAt('maximum(1, ', 11)).toBeNull();
  });
});

describe('the reference', () => {
  test('holds every function of the language once', () => {
    const listed = REFERENCE.flatMap(([, functions]) => functions.map(({ name }) => name));
    expect(listed.toSorted()).toEqual([...FUNCTIONS.keys()].sort());
  });

  test('every parameter says what it is, and group functions take their group second', () => {
    for (const held of FUNCTIONS.values()) {
      for (const parameter of parametersOf(held)) expect(parameter.about, held.name).not.toBe('');
      if (held.shape === 'group') expect(parametersOf(held)[1]?.name).toBe('group');
    }
    expect(signatureOf(FUNCTIONS.get('round')!)).toMatch(/^x/);
  });

  test('units of parameters in words', () => {
    expect(patternWords('plain')).toBe('a plain number');
    expect(patternWords({ variable: 'X' })).toBe('a distance');
    expect(patternWords({ variable: 'A', per: 'X', by: 1000 })).toBe('unit A per 1,000 km');
  });

  test('is searched by name and by what a function says of itself', () => {
    const survival = FUNCTIONS.get('survival')!;
    expect(answersTo(survival, 'SURV')).toBe(true);
    expect(answersTo(survival, survival.about.slice(4, 16))).toBe(true);
    expect(answersTo(survival, 'zzz')).toBe(false);
  });
});
