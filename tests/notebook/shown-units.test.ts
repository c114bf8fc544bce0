import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { readTyped, typedIn, typedText } from '../../cells/shared/typed-entry.ts';
import { showNumber, writeNumbersAs } from '../../src/formula/show.ts';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import type { NotebookField } from '../../src/notebook/edit.ts';
import { invert, notebookEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readNotebookFile, writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { moneysToShow, readShown, shownAs } from '../../src/notebook/shown-units.ts';
import { demo, figures, texts, within } from '../starter/support.ts';
import { entered, notebook, number, table } from './small-notebook.ts';

const small = (more: Partial<NotebookDocument> = {}): NotebookDocument => ({
  ...notebook(
    number('far', 100, 'km'),
    table(
      'rates_of_exchange',
      entered('currency', 'text', ['EUR', 'USD', 'AUD']),
      entered('worth', 'number', [1, 0.92, null], { unit: 'EUR' }),
    ),
  ),
  ...more,
});

const imperial = small({ measures: 'imperial' });
const dollars = small({ shown_money: 'USD' });

describe('figures in the notebook’s own choice of measures and money', () => {
  it.each([
    // Exact by definition: NIST SP 811, appendix B.8 (mile, inch, pound; US gallon of 231 cubic inches).
    ['km', 1.609344, 'mi', 1],
    ['mm', 25.4, 'inch', 1],
    ['kg', 0.45359237, 'lb', 1],
    ['L', 3.785411784, 'galUS', 1],
    ['L/(100 km)', 3.785411784, 'galUS/(100 mi)', 1.609344],
    ['1/(1000 km)', 1, '1/(1000 mi)', 1.609344],
  ])('shows %s %d as %s %d', (unit, kept, shown, figure) => {
    const as = shownAs(imperial, unit);
    expect(as?.unit).toBe(shown);
    expect(Math.abs(as!.toShown(kept) / figure - 1)).toBeLessThan(1e-12);
    expect(Math.abs(as!.toKept(figure) / kept - 1)).toBeLessThan(1e-12);
  });

  it('tells the gallon of the United Kingdom from that of the United States', () => {
    // Exact by definition: NIST SP 811, appendix B.8 (gallon, Canadian and UK, 4.54609 L; US 3.785 411 784 L).
    const uk = small({ measures: 'imperial_uk' });
    expect(shownAs(uk, 'L')).toMatchObject({ unit: 'galUK', extraDecimals: 1 });
    expect(shownAs(uk, 'L')!.toShown(4.54609)).toBeCloseTo(1, 12);
    expect(shownAs(uk, 'km')!.unit).toBe('mi');
    expect(shownAs(uk, 'galUS')!.toShown(4.54609)).toBeCloseTo(3.785411784, 12);
    expect(shownAs(imperial, 'galUK')!.toShown(3.785411784)).toBeCloseTo(4.54609, 12);
    expect(shownAs(small({ measures: 'metric' }), 'galUK')!.toShown(1)).toBeCloseTo(4.54609, 12);
  });

  it('shows sums through the rates of exchange, also behind a rate and with measures', () => {
    // 0.92 EUR a dollar: 92 EUR are 100 USD.
    expect(shownAs(dollars, 'EUR')).toMatchObject({ unit: 'USD' });
    expect(shownAs(dollars, 'EUR')!.toShown(92)).toBeCloseTo(100, 12);
    expect(shownAs(dollars, 'EUR/h')!.unit).toBe('USD/h');
    const both = small({ measures: 'imperial', shown_money: 'USD' });
    // 0.92 EUR/km = 1 USD/km = 1.609344 USD/mi.
    expect(shownAs(both, 'EUR/km')!.unit).toBe('USD/mi');
    expect(shownAs(both, 'EUR/km')!.toShown(0.92)).toBeCloseTo(1.609344, 12);
    expect(moneysToShow(small())).toEqual(['EUR', 'USD']);
  });

  it('leaves as it is kept what has no counterpart, no rate, or was not chosen', () => {
    expect(shownAs(small(), 'km')).toBeNull();
    expect(shownAs(imperial, 'days')).toBeNull();
    expect(shownAs(imperial, 'EUR')).toBeNull();
    expect(shownAs(small({ shown_money: 'AUD' }), 'EUR')).toBeNull();
    expect(shownAs(imperial, 'no unit')).toBeNull();
  });

  it('is chosen by an edit that undo takes back byte for byte, and is kept in the file', () => {
    for (const [field, word] of [
      ['measures', 'imperial'],
      ['shown_money', 'USD'],
    ] as readonly (readonly [NotebookField, string])[]) {
      const before = small();
      const edit = notebookEdit(before, field, word);
      const after = applyEdit(before, edit);
      expect(after[field]).toBe(word);
      expect(readNotebookFile(writeNotebookFile(after))).toEqual({ document: after });
      expect(writeNotebookFile(applyEdit(after, invert(edit)))).toBe(writeNotebookFile(before));
      expect(() => applyEdit(before, { ...edit, after: 'leagues' } as typeof edit)).toThrow(/must be/);
    }
  });

  it('turns figures for the page, and not those that are reckoned with', async () => {
    const live = LiveNotebook.open(imperial);
    await live.settled();
    const [shown, kept] = [readShown(live, 'far'), live.read('far')];
    if (shown.state !== 'settled' || kept.state !== 'settled') throw new Error('not settled');
    expect([shown.type.unit?.text, kept.type.unit?.text]).toEqual(['mi', 'km']);
    // 100 / 1.609344.
    expect(shown.column.values[0]).toBeCloseTo(62.137119223733, 12);
    expect(kept.column.values[0]).toBe(100);
    live.dispose();
  });

  it('changes no call, cost or chance of the worked example, whatever is chosen', async () => {
    const look = (live: LiveNotebook) => ({
      calls: texts(live, 'decision.call'),
      figures: [
        ...figures(live, 'calls.expected'),
        ...figures(live, 'wear.judged'),
        ...figures(live, 'recovery_chance'),
      ],
    });
    await within(demo(), async (live) => {
      const first = look(live);
      const choice = fc.record({
        measures: fc.constantFrom('', 'metric', 'imperial', 'imperial_uk'),
        shown_money: fc.constantFrom('', 'EUR', 'USD'),
      });
      await fc.assert(
        fc.asyncProperty(choice, async (chosen) => {
          for (const field of ['measures', 'shown_money'] as const)
            live.apply(notebookEdit(live.document, field, chosen[field]));
          await live.settled();
          const now = look(live);
          expect(now.calls).toEqual(first.calls);
          now.figures.forEach((figure, at) => {
            const wanted = first.figures[at]!;
            if (Number.isNaN(wanted)) expect(figure).toBeNaN();
            else expect(Math.abs(figure - wanted)).toBeLessThanOrEqual(1e-12 * Math.abs(wanted));
          });
        }),
        { numRuns: 12 },
      );
    });
  });
});

describe('figures that are typed', () => {
  const typed = (document: NotebookDocument, unit: string, text: string) =>
    readTyped(text, { kind: 'number', unit, ...typedIn(document, unit) });

  it('are in the unit that is shown, or in the one that stands behind them', () => {
    expect(typed(imperial, 'km', '100')).toEqual({ entry: 160.9344 });
    expect(typed(imperial, 'km', '100 km')).toEqual({ entry: 100 });
    expect(typed(imperial, 'mm', '1/4')).toEqual({ entry: 6.35 });
    expect(typed(small(), 'km', '62 mi')).toEqual({ entry: 99.779328 });
    expect(typed(imperial, 'km', '-')).toEqual({ entry: null });
    expect(typed(imperial, 'km', 'far')).toMatchObject({ reason: expect.stringContaining('far') });
    expect(typedText(100, { unit: 'km', as: shownAs(imperial, 'km') })).toBe('100 km');
  });

  it('are exchanged at the notebook’s own rate, or refused where it has none', () => {
    // 50 USD of 0.92 EUR.
    expect(typed(small(), 'EUR', '50 USD')).toEqual({ entry: 46 });
    expect(typed(dollars, 'EUR', '50')).toEqual({ entry: 46 });
    expect(typed(dollars, 'EUR', '€46')).toEqual({ entry: 46 });
    expect(typed(small(), 'EUR/h', '10 USD/h')).toMatchObject({ entry: 9.2 });
    expect(typed(small(), 'EUR', '50 AUD')).toMatchObject({ reason: expect.stringContaining('AUD') });
  });

  it('come back as they were, whatever is shown', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), (figure) => {
        const as = shownAs(imperial, 'km')!;
        const back = as.toKept(as.toShown(figure));
        expect(Math.abs(back / figure - 1)).toBeLessThan(1e-13);
        // Writing begins with the figure as it is kept: leaving it alone changes no bit.
        expect(typed(imperial, 'km', typedText(figure, { unit: 'km', as }))).toEqual({ entry: figure });
      }),
    );
  });
});

describe('numbers in the locale', () => {
  afterEach(() => writeNumbersAs('en'));

  it.each([
    // Unicode CLDR: symbols-numberSystem-latn of each locale.
    ['en-GB', '12,345.7', '−0.5', '1234.5'],
    ['de-DE', '12.345,7', '−0,5', '1234,5'],
    ['sv', '12\u00a0345,7', '−0,5', '1234,5'],
    ['ar-EG', '12,345.7', '−0.5', '1234.5'],
  ])('%s writes %s', (locale, grouped, below, plain) => {
    writeNumbersAs(locale);
    expect(showNumber(12345.678, 1)).toBe(grouped);
    expect(showNumber(-0.5, 1)).toBe(below);
    expect(showNumber(-0.001, 0)).toBe('0');
    expect(typedText(1234.5)).toBe(plain);
    for (const figure of [1.234, 1234.5, 0.001, 12345678, 1e-7])
      expect(readTyped(typedText(figure), { kind: 'number' })).toEqual({ entry: figure });
    expect(readTyped(grouped, { kind: 'number' })).toEqual({ entry: 12345.7 });
  });

  it('reads one mark alone as the locale means it, and decimals either way', () => {
    writeNumbersAs('de-DE');
    expect(readTyped('1.234', { kind: 'number' })).toEqual({ entry: 1234 });
    expect(readTyped('1,5 mm', { kind: 'number', unit: 'mm' })).toEqual({ entry: 1.5 });
    expect(readTyped('1.5', { kind: 'number' })).toEqual({ entry: 1.5 });
    writeNumbersAs('en-GB');
    expect(readTyped('1,234', { kind: 'number' })).toEqual({ entry: 1234 });
    expect(readTyped('1,5', { kind: 'number' })).toEqual({ entry: 1.5 });
    writeNumbersAs('no such locale');
    expect(showNumber(1.5, 1)).toBe('1.5');
  });
});
