import { describe, expect, it } from 'vitest';
import { differenceWords, readTally } from '../../../cells/tally/tally-reading.ts';
import { type Cell, FORMAT, type TallyFigure, VERSION } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';

const money = (name: string, value: number | null): Cell => ({
  kind: 'value',
  id: name,
  title: name,
  name,
  content: { type: 'number', unit: 'EUR', value, control: 'field' },
});

async function open(...cells: Cell[]): Promise<LiveNotebook> {
  const notebook = LiveNotebook.open({
    format: FORMAT,
    version: VERSION,
    id: 'n',
    title: 'n',
    gist: '',
    money: 'EUR',
    cells,
  });
  await notebook.settled();
  return notebook;
}

const cash: TallyFigure = { label: 'Cash', figure: 'spent', limit: 'limit', decimals: 0 };

describe('a figure of the tally', () => {
  it.each([
    [431, 'ok', ''],
    [432, 'near', '48 left'],
    [480, 'near', '0 left'],
    [481, 'over', '1 over'],
  ] as const)('%d of 480 EUR is %s', async (spent, level, room) => {
    const reading = readTally(await open(money('spent', spent), money('limit', 480)), cash);
    expect(reading).toMatchObject({ shown: String(spent), unit: 'EUR', state: '', room });
    expect(reading.limit).toMatchObject({ shown: '480', level, share: spent / 480 });
  });

  it('is over a limit of nought as soon as anything is used', async () => {
    const reading = readTally(await open(money('spent', 1), money('limit', 0)), cash);
    expect(reading.limit?.level).toBe('over');
    expect(readTally(await open(money('spent', 0), money('limit', 0)), cash).limit?.level).toBe('ok');
  });

  it('shows a chance in percent', async () => {
    const chance: Cell = { kind: 'formula', id: 'c', title: 'c', name: 'chance', formula: '0.1754' };
    const reading = readTally(await open(chance), { label: 'Rescue', figure: 'chance', percent: true });
    expect(reading).toMatchObject({ shown: '17.5', unit: '%', value: 0.1754, limit: null });
  });

  it('has no figure while its own is at fault, and waits for one that is', async () => {
    const wrong: Cell = { kind: 'formula', id: 'w', title: 'w', name: 'wrong', formula: '3 km + 2 kg' };
    const reader: Cell = { kind: 'formula', id: 'r', title: 'r', name: 'reader', formula: 'wrong * 2' };
    const notebook = await open(wrong, reader);
    expect(readTally(notebook, { label: 'W', figure: 'wrong' })).toMatchObject({
      shown: '–',
      value: null,
      state: 'fault',
    });
    expect(readTally(notebook, { label: 'R', figure: 'reader' })).toMatchObject({
      shown: '–',
      value: null,
      state: 'waits',
    });
  });
});

describe('the difference of a figure', () => {
  it('carries its sign and unit, and is none where it would not show', async () => {
    const type = (await open(money('spent', 1))).typeOf('spent');
    if (!type) throw new Error('a value of money has a type');
    expect(differenceWords(-46.2, cash, type)).toBe('−46 EUR');
    expect(differenceWords(3, cash, type)).toBe('+3 EUR');
    expect(differenceWords(0.3, cash, type)).toBe('no change');
    expect(differenceWords(0.0004, { ...cash, decimals: 2 }, type)).toBe('no change');
    expect(differenceWords(0.002, { label: 'r', figure: 'r', percent: true }, type)).toBe('+0.2 pt');
  });
});
