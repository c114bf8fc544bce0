import { describe, expect, it } from 'vitest';
import type { Entry, NotebookDocument } from '../../src/notebook/document.ts';
import {
  byCall,
  demo,
  entriesOf,
  figures,
  ofPart,
  texts,
  withColumn,
  within,
  withPartFigure,
  wordOfPart,
} from './support.ts';

/** What nobody has entered is never taken for a part that lasts, or for a leg that costs nothing. */
const document = demo();

const NONE_ALLOWED = {
  leave: 0,
  replace: 0,
  'carry 1': 0,
  'carry 2': 0,
  'carry 3': 0,
  'replace and keep old': 0,
  'change on the way': 0,
  'send out': 0,
};

const cleared = (part: string, columns: readonly string[]): NotebookDocument =>
  columns.reduce((doc, column) => withPartFigure(doc, part, column, null), document);

async function expectUnknown(doc: NotebookDocument, part: string): Promise<void> {
  await within(doc, (notebook) => {
    expect(notebook.faults()).toEqual([]);
    expect(wordOfPart(notebook, part, 'wear.guard')).toBe('not enough known');
    expect(byCall(notebook, part, 'allowed')).toEqual(NONE_ALLOWED);
    const at = texts(notebook, 'calls.part').indexOf(part);
    expect(texts(notebook, 'calls.why_not')[at]).toMatch(/^Not enough is known: .*\.$/);
    expect(wordOfPart(notebook, part, 'decision.call')).toBeNull();
  });
}

describe('a part with figures left out', () => {
  it('without a wear class', async () => {
    await expectUnknown(cleared('Clutch plates', ['wear_class']), 'Clutch plates');
  });

  it('with a reading but no limit, or no rates', async () => {
    await expectUnknown(cleared('Clutch plates', ['limit']), 'Clutch plates');
    await expectUnknown(cleared('Clutch plates', ['rate_low']), 'Clutch plates');
    await expectUnknown(cleared('Front brake pads', ['now']), 'Front brake pads');
  });

  it('with a life but no age, or half a life', async () => {
    await expectUnknown(cleared('Clutch cable', ['age']), 'Clutch cable');
    await expectUnknown(cleared('Clutch cable', ['life_high']), 'Clutch cable');
  });

  it('with a sudden life but no shape', async () => {
    await expectUnknown(cleared('Fuel pump', ['shape']), 'Fuel pump');
  });

  it('with nothing to judge it by', async () => {
    await expectUnknown(cleared('Clutch lever', ['sudden_life', 'shape']), 'Clutch lever');
  });

  it('counts as critical, as not to be mended on the road, as no spare, until told otherwise', async () => {
    const doc = cleared('Water pump seal', [
      'critical',
      'roadside',
      'wear_shows',
      'old_usable',
      'worn_strands',
    ]);
    await within(doc, (notebook) => {
      expect(ofPart(notebook, 'Water pump seal', 'counts_critical')).toBe(1);
      expect(ofPart(notebook, 'Water pump seal', 'spare_needs')).toBe(1);
      expect(byCall(notebook, 'Water pump seal', 'allowed')['replace and keep old']).toBe(0);
      expect(notebook.faults()).toEqual([]);
    });
    await within(cleared('Battery', ['critical']), (notebook) => {
      expect(byCall(notebook, 'Battery', 'allowed').leave).toBe(0);
    });
  });

  it('without a count of spares or bikes it has none on hand and is alone', async () => {
    await within(cleared('Rear inner tube', ['on_hand', 'bikes']), (notebook) => {
      expect(byCall(notebook, 'Rear inner tube', 'bought')['carry 2']).toBe(2);
      expect(ofPart(notebook, 'Rear inner tube', 'sharing')).toBe(1);
    });
  });
});

describe('a leg with figures left out', () => {
  it.each(['distance', 'surface', 'wait_days', 'help_distance'])(
    'makes every part unknown: no %s',
    async (column) => {
      const doc = withColumn(document, 'route', column, (entry: Entry, row) => (row === 13 ? null : entry));
      await within(doc, (notebook) => {
        expect(notebook.faults()).toEqual([]);
        expect(new Set(texts(notebook, 'wear.guard'))).toEqual(new Set(['not enough known']));
        expect(figures(notebook, 'calls.allowed')).not.toContain(1);
      });
    },
  );

  it('does without a second surface or a shop', async () => {
    const plain = withColumn(document, 'route', 'second_share', () => null);
    await within(
      withColumn(plain, 'route', 'shop', () => false),
      (notebook) => {
        expect(notebook.faults()).toEqual([]);
        expect(texts(notebook, 'calls.bar')).toContain('no stop');
        expect(texts(notebook, 'decision.call')).not.toContain('change on the way');
        expect(notebook.rowsOf('decision')).toBe(entriesOf(document, 'wear', 'part').length);
      },
    );
  });
});
