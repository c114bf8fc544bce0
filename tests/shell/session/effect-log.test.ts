import { describe, expect, it } from 'vitest';
import { type Cell, FORMAT, type NotebookDocument, VERSION } from '../../../src/notebook/document.ts';
import { formulaEdit, valueEdit } from '../../../src/notebook/edits.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { EffectLog, mainFigure } from '../../../src/shell/session/effect-log.ts';

const cells: Cell[] = [
  {
    kind: 'value',
    id: 'days',
    title: 'Days lost',
    name: 'days',
    content: { type: 'number', unit: 'day', value: 2, control: 'field' },
  },
  { kind: 'formula', id: 'cost', title: 'Cost', name: 'cost', formula: 'days * (140 EUR/day)' },
  { kind: 'formula', id: 'other', title: 'Other', name: 'other', formula: '5 kg' },
  {
    kind: 'tally',
    id: 'tally',
    title: 'Tally',
    figures: [
      { label: 'Pack', figure: 'other', limit: 'other' },
      { label: 'Cost', figure: 'cost', decimals: 0 },
    ],
  },
];
const document: NotebookDocument = {
  format: FORMAT,
  version: VERSION,
  id: 'n',
  title: 'n',
  gist: '',
  money: 'EUR',
  cells,
};

async function open(): Promise<{
  notebook: LiveNotebook;
  log: EffectLog;
  days(value: number): Promise<void>;
}> {
  const notebook = LiveNotebook.open(document);
  await notebook.settled();
  const log = new EffectLog(notebook);
  const days = async (value: number): Promise<void> => {
    notebook.apply(
      valueEdit(notebook.document, 'days', { type: 'number', unit: 'day', value, control: 'field' }),
    );
    await notebook.settled();
  };
  return { notebook, log, days };
}

describe('the road log', () => {
  it('says what was edited and what it did to each figure of the tally', async () => {
    const { log, days } = await open();
    await days(3);
    const [entry] = log.entries;
    expect(entry).toMatchObject({ way: 'edit', what: 'Days lost', change: '2 to 3 day' });
    expect(entry?.effects.map((effect) => `${effect.figure.label} ${effect.words}`)).toEqual([
      'Pack no change',
      'Cost +140 EUR',
    ]);
  });

  it('measures each edit from the one before it', async () => {
    const { log, days } = await open();
    await days(3);
    await days(1);
    expect(log.entries.map((entry) => entry.effects[1]?.words)).toEqual(['−280 EUR', '+140 EUR']);
  });

  it('tells an undo from an edit, once', async () => {
    const { notebook, log, days } = await open();
    await days(3);
    log.mark('undo');
    notebook.undo();
    await notebook.settled();
    await days(4);
    expect(log.entries.map((entry) => entry.way)).toEqual(['edit', 'undo', 'edit']);
    expect(log.entries[1]).toMatchObject({ change: '3 to 2 day' });
  });

  it('says when an edit takes a figure away, and when one gives it back', async () => {
    const { notebook, log } = await open();
    notebook.apply(formulaEdit(notebook.document, 'cost', undefined, 'days + 1 kg'));
    await notebook.settled();
    expect(log.entries[0]?.effects[1]?.words).toBe('no figure');
    notebook.undo();
    await notebook.settled();
    expect(log.entries[0]?.effects[1]?.words).toBe('a figure again');
  });

  it('hears no more once it is let go', async () => {
    const { log, days } = await open();
    log.dispose();
    await days(3);
    expect(log.entries).toEqual([]);
  });
});

describe('the main figure of a tally', () => {
  it('is the first that has no limit and is no chance', () => {
    const tally = (figures: Extract<Cell, { kind: 'tally' }>['figures']) =>
      mainFigure({ kind: 'tally', id: 't', title: 't', figures });
    expect(
      tally([
        { label: 'a', figure: 'a', limit: 'b' },
        { label: 'r', figure: 'r', percent: true },
        { label: 'c', figure: 'c' },
      ])?.figure,
    ).toBe('c');
    expect(tally([{ label: 'a', figure: 'a', limit: 'b' }])?.figure).toBe('a');
    expect(tally([])).toBeUndefined();
  });
});
