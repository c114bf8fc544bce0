import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import { columnsOf, isEntered, isWorked } from '../../src/notebook/lookup.ts';
import { readNotebookFile, writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { renameMoney } from '../../src/notebook/rename-money.ts';
import type { OwnTripChoices, TypedLeg } from '../../src/starter/own-trip/choices.ts';
import { ownTrip } from '../../src/starter/own-trip/own-trip.ts';
import { type CataloguePart, readCatalogue } from '../../src/starter/own-trip/part-catalogue.ts';
import { readTripFile, textsOf } from '../../src/starter/trip-file.ts';
import { byCall, demo, entriesOf, figures, texts, within } from './support.ts';

const read = (name: string): string =>
  readFileSync(new URL(`../../datasets/reference/${name}`, import.meta.url), 'utf8');
const files = { reference: read('wear-reference.csv'), start: read('start-parts.csv') };
const catalogue = readCatalogue(files);
const example = demo();

const NOTHING: OwnTripChoices = {
  title: '',
  money: 'EUR',
  today: '2027-02-10',
  values: {},
  parts: [],
  legs: [],
  brought: {},
};

const leg = (start: string, end: string, more: Partial<TypedLeg> = {}): TypedLeg => ({
  start,
  end,
  distanceKm: 320,
  surface: 'gravel',
  helpKm: 60,
  waitDays: 4,
  shop: false,
  fuel: true,
  water: true,
  ...more,
});

function named(name: string): CataloguePart {
  const found = catalogue.find((part) => part.name.startsWith(name));
  if (found === undefined) throw new Error(`No part ${name}.`);
  return found;
}

/** Half way from new to the limit, or 5,000 km old. */
const halfWorn = (part: CataloguePart) => ({
  part,
  now: part.limit === null ? null : ((part.newReading ?? 0) + part.limit) / 2,
  ageKm: 5000,
});
const unmeasured = (part: CataloguePart) => ({ part, now: null, ageKm: null });
const own = (choices: Partial<OwnTripChoices> = {}): NotebookDocument =>
  ownTrip(example, { ...NOTHING, ...choices }, 'own');

/** Every formula of a notebook by where it stands. */
function formulas(document: NotebookDocument): Record<string, string> {
  return Object.fromEntries(
    document.cells.flatMap((cell) => [
      ...(cell.kind === 'formula' ? [[cell.name, cell.formula] as const] : []),
      ...columnsOf(cell)
        .filter(isWorked)
        .map((column) => [`${cell.id}.${column.name}`, column.formula] as const),
    ]),
  );
}

describe('the parts to be ticked', () => {
  it('are those of the reference data that wear, each once', () => {
    const known = textsOf(readTripFile({ a: files.reference }, 'a'), 'part');
    const left = known.filter(
      (part) => !catalogue.some(({ name }) => name.toLowerCase() === part.toLowerCase()),
    );
    expect(left).toEqual([
      'engine oil top-up, 1 L',
      'puncture kit, levers, pump',
      'fixings, wire, tape, epoxy, ties',
      'tow strap',
    ]);
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
  });

  it('have a wear class with severities, and write only into columns that the notebook has', () => {
    const classes = new Set(entriesOf(example, 'wear_classes', 'wear_class'));
    const wear = example.cells.find((cell) => cell.id === 'wear') as TableCell;
    const columns = new Set(wear.columns.filter(isEntered).map(({ name }) => name));
    const handled = new Set(entriesOf(example, 'handling', 'part'));
    for (const part of catalogue) {
      expect(classes, part.name).toContain(part.entries.wear_class);
      expect(Object.keys(part.entries).filter((name) => !columns.has(name))).toEqual([]);
      if (part.handledLike !== '') expect(handled).toContain(part.handledLike);
    }
  });

  it('turn lives into rates and medians into characteristic lives', () => {
    // 4.0 to 1.0 mm in 9,500 to 27,000 km: 3 / 27 and 3 / 9.5 mm per 1,000 km.
    expect(named('Front brake pads').entries).toMatchObject({ rate_low: 0.1111, rate_high: 0.3158 });
    // 80,000 km / (ln 2)^(1 / 1.1) = 80,000 * 1.39542 = 111,633 km.
    expect(named('Regulator').entries).toMatchObject({ sudden_life: 111_600, shape: 1.1 });
    // Shape 1: 33,000 km / ln 2 = 47,609 km; its age tells nothing.
    expect(named('Rear tube').entries).toMatchObject({ sudden_life: 47_600, shape: 1, age: 0 });
    expect(named('Clutch cable').entries).toMatchObject({ life_low: 13_000, life_high: 50_000 });
  });

  it('name the part that only one of the files has', () => {
    const start = files.start.replace('Wheels,tread,reading', 'Wheels,tread,guess');
    expect(() => readCatalogue({ ...files, start })).toThrow(/50\/50 pattern is judged by 'guess'/);
    const strange = files.start.replace('countershaft sprocket', 'sail');
    expect(() => readCatalogue({ ...files, start: strange })).toThrow(/names sail/);
  });
});

describe('a trip of one’s own', () => {
  it('keeps every formula, and nothing of the invented trip', () => {
    const document = own();
    expect(formulas(document)).toEqual(formulas(example));
    for (const table of ['wear', 'route', 'stops', 'prices', 'suppliers', 'kits', 'handling'])
      expect(
        (document.cells.find((cell) => cell.id === table) as TableCell).columns
          .filter(isEntered)
          .every(({ entries }) => entries.length === 0),
        table,
      ).toBe(true);
    expect(writeNotebookFile(document)).not.toMatch(/Port Ansel|Northgate|Quayside|Dray|Drive chain"/);
    expect(readNotebookFile(writeNotebookFile(document))).toEqual({ document });
  });

  it('has no fault with every step skipped, nor with parts alone, nor with legs alone', async () => {
    await within(own(), (notebook) => {
      expect(notebook.faults()).toEqual([]);
      expect(figures(notebook, 'pack_mass')).toEqual([0]);
    });
    await within(own({ parts: catalogue.map(halfWorn) }), (notebook) => {
      expect(notebook.faults()).toEqual([]);
      expect(new Set(texts(notebook, 'wear.guard'))).toEqual(new Set(['not enough known']));
    });
    await within(own({ legs: [leg('A', 'B'), leg('B', 'A')] }), (notebook) => {
      expect(notebook.faults()).toEqual([]);
      expect(figures(notebook, 'whole_distance')).toEqual([640]);
    });
  });

  it('says of a part without its reading that not enough is known, and judges the others', async () => {
    const parts = catalogue.map((part) =>
      part.name.startsWith('Drive') ? unmeasured(part) : halfWorn(part),
    );
    await within(own({ parts, legs: [leg('A', 'B'), leg('B', 'A')] }), (notebook) => {
      expect(notebook.faults()).toEqual([]);
      const unknown = texts(notebook, 'wear.part').filter(
        (_, row) => texts(notebook, 'wear.guard')[row] === 'not enough known',
      );
      expect(unknown).toEqual(['Drive chain, sealed, 15.875 mm pitch']);
      expect(byCall(notebook, 'Front brake pads', 'allowed').leave).toBe(1);
    });
  });

  it('has calls with costs once prices are there', async () => {
    const brought = Object.fromEntries(
      example.cells.flatMap((cell) =>
        cell.kind === 'table' && ['prices', 'suppliers', 'rates_of_exchange'].includes(cell.id)
          ? [[cell.id, cell] as const]
          : [],
      ),
    );
    const choices = {
      parts: [halfWorn(named('Front brake pads'))],
      legs: [leg('A', 'B'), leg('B', 'A')],
      brought,
      values: { today: '2027-04-12', cut_off: '2027-05-01' },
    };
    await within(own(choices), (notebook) => {
      expect(notebook.faults()).toEqual([]);
      // The example’s offers name its own parts; one of them has the same name here.
      expect(byCall(notebook, 'Front brake pads', 'cash').replace).toBeGreaterThan(0);
      expect(texts(notebook, 'decision.call')[0]).not.toBeNull();
    });
  });

  it('counts money by its own code everywhere, a supplier’s money waits for its worth', async () => {
    const document = own({ money: 'AUD', parts: catalogue.map(halfWorn), legs: [leg('A', 'B')] });
    expect(document.money).toBe('AUD');
    expect(writeNotebookFile(document)).not.toMatch(/\bEUR\b/);
    await within(document, (notebook) => expect(notebook.faults()).toEqual([]));
    const suppliers = example.cells.find((cell) => cell.id === 'suppliers') as TableCell;
    const rates = entriesOf(own({ brought: { suppliers } }), 'rates_of_exchange', 'currency');
    expect(rates).toEqual(['EUR', 'USD']);
    expect(entriesOf(own({ brought: { suppliers } }), 'rates_of_exchange', 'worth')).toEqual([1, null]);
    expect(() => renameMoney(example, 'XYZ')).toThrow(/no currency code/);
  });

  it('tells a stage ridden twice apart, and counts on no fuel that was not ticked', async () => {
    const document = own({ legs: [leg('A', 'B'), leg('A', 'B', { fuel: false }), leg('', '')] });
    expect(entriesOf(document, 'route', 'leg')).toEqual(['A to B', 'A to B (2)', 'Leg 3']);
    expect(entriesOf(document, 'stops', 'fuel')).toEqual([true, false, true]);
    await within(document, (notebook) => expect(notebook.faults()).toEqual([]));
    const route = document.cells.find((cell) => cell.id === 'route') as TableCell;
    const brought = own({ brought: { route } });
    expect(entriesOf(brought, 'stops', 'leg')).toEqual(entriesOf(document, 'route', 'leg'));
    expect(new Set(entriesOf(brought, 'stops', 'fuel'))).toEqual(new Set([false]));
  });

  it('takes sums beyond the example’s sliders, and dates', () => {
    const document = own({ values: { cash_limit: 9000, recovery_call_out: -5, today: '2027-02-03' } });
    const content = (id: string) => {
      const cell = document.cells.find((one) => one.id === id);
      return cell?.kind === 'value' ? cell.content : null;
    };
    expect(content('cash_limit')).toMatchObject({ value: 9000, high: 9000 });
    // Four weeks on.
    expect(content('cut_off')).toEqual({ type: 'date', value: '2027-03-03' });
    expect(content('recovery_call_out')).toMatchObject({ value: -5, low: -5 });
    expect(content('today')).toEqual({ type: 'date', value: '2027-02-03' });
    expect(content('day_value')).toMatchObject({ value: 45 });
  });

  it('writes down in its first note what was left for later', () => {
    const note = (document: NotebookDocument): string => {
      const cell = document.cells.find((one) => one.id === 'note_what');
      return cell?.kind === 'note' ? cell.text : '';
    };
    expect(note(own())).toMatch(
      /The cut-off[\s\S]*Figures of the worked example[^\n]*A lost day[\s\S]*The parts[\s\S]*The legs[\s\S]*Prices/,
    );
    const some = own({
      values: { cut_off: '2027-05-01' },
      parts: [unmeasured(named('Drive chain')), unmeasured(named('Rear tube'))],
      legs: [leg('A', 'B', { waitDays: null })],
    });
    expect(note(some)).toContain('**Readings and ages**: of 1 of 2 parts: Drive chain');
    expect(note(some)).toContain('wait for a part of every leg');
    expect(note(some)).not.toMatch(/The cut-off|The parts\*\*/);
  });
});
