import { describe, expect, it } from 'vitest';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
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
  withValue,
  wordOfPart,
} from './support.ts';

/** Section 8: safety comes before cost. */
const document = demo();

const barred = (notebook: LiveNotebook, part: string): Record<string, string> => {
  const [parts, calls] = [texts(notebook, 'calls.part'), texts(notebook, 'calls.call')];
  const bars = texts(notebook, 'calls.bar');
  return Object.fromEntries(parts.flatMap((name, row) => (name === part ? [[calls[row], bars[row]]] : [])));
};

describe('critical parts over the risk limit', () => {
  it('are never proposed to be left, whatever it would save', async () => {
    await within(withValue(document, 'hour_value', 200), (notebook) => {
      const over = figures(notebook, 'wear.over_limit');
      const parts = texts(notebook, 'wear.part');
      const held = parts.filter((_, row) => over[row] === 1);
      expect(held.length).toBeGreaterThan(5);
      for (const part of held) {
        expect(byCall(notebook, part!, 'allowed').leave, part!).toBe(0);
        expect(wordOfPart(notebook, part!, 'decision.call'), part!).not.toBe('leave');
      }
    });
  });

  it('may be left up to the limit and not above it', async () => {
    const judged = await within(document, (notebook) => ofPart(notebook, 'Rear shock', 'judged'));
    expect(judged).toBeGreaterThan(0.02);
    await within(withValue(document, 'risk_limit', judged + 1e-9), (notebook) => {
      expect(barred(notebook, 'Rear shock').leave).toBe('');
    });
    await within(withValue(document, 'risk_limit', judged - 1e-9), (notebook) => {
      expect(barred(notebook, 'Rear shock').leave).toBe('held back');
    });
  });

  it('may be carried for, or changed on the way, where only wear is over it, it shows, and the job can be done there', async () => {
    await within(document, (notebook) => {
      expect(barred(notebook, 'Front brake pads')).toEqual({
        leave: 'held back',
        replace: '',
        'carry 1': '',
        'carry 2': '',
        'carry 3': '',
        'replace and keep old': '',
        'change on the way': '',
        'send out': 'no workshop',
      });
    });
    for (const [column, entry] of [
      ['wear_shows', false],
      ['roadside', false],
      ['sudden_life', 60_000],
    ] as const) {
      const withLife = withPartFigure(document, 'Front brake pads', 'shape', 1);
      const doc = withPartFigure(
        column === 'sudden_life' ? withLife : document,
        'Front brake pads',
        column,
        entry,
      );
      await within(doc, (notebook) => {
        const bars = barred(notebook, 'Front brake pads');
        expect(bars['carry 1'], column).toBe('held back');
      });
    }
  });

  it('have a check at the end of the leg before the first that is over the limit', async () => {
    await within(document, (notebook) => {
      const parts = texts(notebook, 'ride.part');
      const [gone, legs] = [figures(notebook, 'ride.judged_gone'), figures(notebook, 'ride.leg_number')];
      const limit = figures(notebook, 'risk_limit')[0]!;
      const places = entriesOf(document, 'route', 'end_place');
      for (const part of ['Drive chain', 'Front brake pads', 'Throttle cables']) {
        const over = parts.flatMap((name, row) => (name === part && gone[row]! > limit ? [legs[row]!] : []));
        const first = Math.min(...over);
        expect(ofPart(notebook, part, 'first_over')).toBe(first);
        expect(wordOfPart(notebook, part, 'wear.check_at')).toBe(places[first - 2]);
      }
      expect(wordOfPart(notebook, 'Brake fluid', 'wear.check_at')).toBe('');
    });
  });

  it('get no such exception when they are over it on the first leg already', async () => {
    await within(withPartFigure(document, 'Front brake pads', 'now', 1.02), (notebook) => {
      expect(ofPart(notebook, 'Front brake pads', 'first_over')).toBe(1);
      expect(barred(notebook, 'Front brake pads')['carry 1']).toBe('held back');
      expect(wordOfPart(notebook, 'Front brake pads', 'decision.call')).toMatch(/^replace/);
    });
  });

  it('must be changed on the way when a new one would be over it too', async () => {
    await within(document, (notebook) => {
      expect(barred(notebook, 'Rear tyre')).toMatchObject({
        leave: 'held back',
        replace: 'new one too',
        'change on the way': '',
      });
      expect(wordOfPart(notebook, 'Rear tyre', 'decision.call')).toBe('change on the way');
      const here = figures(notebook, 'ride.change_here');
      const at = texts(notebook, 'ride.part').findIndex(
        (name, row) => name === 'Rear tyre' && here[row] === 1,
      );
      const limit = figures(notebook, 'risk_limit')[0]!;
      expect(figures(notebook, 'ride.judged_gone')[at]).toBeLessThanOrEqual(limit);
      expect(figures(notebook, 'ride.judged_rest')[at]).toBeLessThanOrEqual(limit);
    });
  });

  it('say by how much no call meets the limit when none does', async () => {
    const soft = withPartFigure(
      withPartFigure(document, 'Rear tyre', 'rate_low', 1.6),
      'Rear tyre',
      'rate_high',
      2.4,
    );
    await within(soft, (notebook) => {
      expect(wordOfPart(notebook, 'Rear tyre', 'wear.guard')).toBe('no call meets the limit');
      const over = ofPart(notebook, 'Rear tyre', 'over_by');
      expect(over).toBeGreaterThan(0);
      const parts = texts(notebook, 'ride.part');
      const stops = figures(notebook, 'ride.stop_risk').filter((_, row) => parts[row] === 'Rear tyre');
      const least = Math.min(
        ofPart(notebook, 'Rear tyre', 'judged'),
        ofPart(notebook, 'Rear tyre', 'new_judged'),
        ...stops.filter((risk) => !Number.isNaN(risk)),
      );
      expect(over).toBeCloseTo(least - 0.05, 12);
      expect(Object.values(byCall(notebook, 'Rear tyre', 'allowed'))).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
      expect(wordOfPart(notebook, 'Rear tyre', 'decision.state')).toBe('no call meets the limit');
    });
  });

  it('give a sentence for every call that is not allowed, and none for one that is', async () => {
    await within(document, (notebook) => {
      const [allowed, why] = [figures(notebook, 'calls.allowed'), texts(notebook, 'calls.why_not')];
      why.forEach((sentence, row) => {
        if (allowed[row] === 1) expect(sentence).toBe('');
        else expect(sentence).toMatch(/^[A-Z].{20,}\.$/);
      });
      const held = why.filter((sentence) => /risk limit/.test(sentence!) && /Safety/.test(sentence!));
      expect(held.length).toBeGreaterThan(0);
      for (const sentence of held) expect(sentence).toMatch(/manual.*local rules.*licensed mechanic/);
    });
  });
});

describe('limits of the pack', () => {
  it('bar a spare that is too big by itself', async () => {
    await within(withValue(document, 'pack_volume_limit', 2), (notebook) => {
      expect(barred(notebook, 'Engine oil and filter')['carry 1']).toBe('too big');
      expect(barred(notebook, 'Clutch lever')['carry 1']).toBe('');
    });
  });
});

describe('a part that no supplier sells', () => {
  it('needs a price, and leaves the other parts as they were', async () => {
    const before = await within(document, (notebook) => texts(notebook, 'decision.call'));
    const unsold = withColumn(document, 'prices', 'fits', (fits) =>
      fits === 'Clutch lever' ? 'Clutch lever, old type' : fits,
    );
    await within(unsold, (notebook) => {
      expect(notebook.faults()).toEqual([]);
      expect(wordOfPart(notebook, 'Clutch lever', 'decision.state')).toBe('needs a price');
      const parts = texts(notebook, 'wear.part');
      const after = texts(notebook, 'decision.call');
      parts.forEach((part, row) => {
        if (part !== 'Clutch lever') expect(after[row], part!).toBe(before[row]);
      });
    });
  });
});
