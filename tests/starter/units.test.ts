import { describe, expect, it } from 'vitest';
import { convertMeasures } from '../../src/notebook/convert-units.ts';
import { demo, figure, figures, texts, within } from './support.ts';

describe('metric and imperial', () => {
  it('a switch of all units and back changes no call, no cost and no chance', async () => {
    await within(demo(), async (notebook) => {
      const look = () => ({
        calls: texts(notebook, 'decision.call'),
        costs: figures(notebook, 'calls.expected'),
        judged: figures(notebook, 'wear.judged'),
        recovery: figure(notebook, 'recovery_chance'),
      });
      const metric = look();
      const km = figure(notebook, 'whole_distance');
      for (const measures of ['imperial', 'metric'] as const) {
        const edit = convertMeasures(notebook.document, measures);
        expect(edit.kind === 'group' && edit.edits.length).toBeGreaterThan(10);
        notebook.apply(edit);
        await notebook.settled();
        expect(notebook.faults()).toEqual([]);
        const now = look();
        expect(now.calls).toEqual(metric.calls);
        now.costs.forEach((cost, row) => {
          const wanted = metric.costs[row]!;
          if (Number.isNaN(wanted)) expect(cost).toBeNaN();
          else expect(Math.abs(cost - wanted)).toBeLessThan(1e-7);
        });
        now.judged.forEach((chance, row) => {
          expect(Math.abs(chance - metric.judged[row]!)).toBeLessThan(1e-10);
        });
        expect(Math.abs(now.recovery - metric.recovery)).toBeLessThan(1e-10);
      }
      expect(figure(notebook, 'whole_distance')).toBeCloseTo(km, 9);
    });
  });
});
