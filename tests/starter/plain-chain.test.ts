import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { chancesFrom, stillFit, suddenSurvival, wearChance } from './plain-model.ts';
import { callsOf, partOf, reachOf, rowsOf } from './plain-trip.ts';
import { byCall, demo, figures, ofPart, opened, texts, valuesOf } from './support.ts';

/**
 * The notebook's formulas against the model once more in plain loops (plain-model.ts, plain-trip.ts), which
 * share no code with them and read the same CSV files.
 */
const document = demo();
const values = valuesOf(document);
const DAYS_LEFT = 19; // 12 April to 1 May
const wear = rowsOf('wear.csv');
const row = (part: string) => wear.find((one) => one.part === part)!;

let notebook: LiveNotebook;
beforeAll(async () => {
  notebook = await opened(document);
});
afterAll(() => notebook.dispose());

/** Within 1e-9 of the larger of the figure and 1 EUR. */
function close(actual: number, wanted: number, what: string): void {
  const off = Math.abs(actual - wanted) / Math.max(1, Math.abs(wanted));
  expect(off, `${what}: ${actual} against ${wanted}`).toBeLessThan(1e-9);
}

function checkCalls(part: string): void {
  const plain = callsOf(row(part), values, DAYS_LEFT);
  const columns = { cash: 'cash', onRoad: 'on_road', leftOver: 'left_over', expected: 'expected' } as const;
  for (const [field, column] of Object.entries(columns)) {
    const ours = byCall(notebook, part, column);
    for (const [call, sums] of Object.entries(plain.calls)) {
      close(ours[call]!, sums[field as keyof typeof columns], `${part}, ${call}, ${column}`);
    }
  }
}

function chosenChangeLeg(part: string): number | null {
  const here = figures(notebook, 'ride.change_here');
  const at = texts(notebook, 'ride.part').findIndex((name, row) => name === part && here[row] === 1);
  return at < 0 ? null : figures(notebook, 'ride.leg_number')[at]!;
}

describe('the whole chain of a part against plain loops', () => {
  it('agrees for a reading: front brake pads, every call', () => {
    checkCalls('Front brake pads');
  });

  it('agrees for a Weibull life by rating: rear wheel bearings, every call', () => {
    checkCalls('Rear wheel bearings');
  });

  it('agrees for random hits shared by two bikes: rear inner tube, every call', () => {
    checkCalls('Rear inner tube');
  });

  it('agrees for every part of the demo, every call but the change on the way', () => {
    for (const one of wear) checkCalls(one.part!);
  });

  it('agrees for the change on the way at the leg that the notebook picks', () => {
    let checked = 0;
    for (const one of wear) {
      const plain = callsOf(one, values, DAYS_LEFT);
      const leg = chosenChangeLeg(one.part!);
      if (leg === null || plain.byChance) continue;
      const sums = plain.change(leg);
      close(
        byCall(notebook, one.part!, 'on_road')['change on the way']!,
        sums.onRoad,
        `${one.part}, on the road`,
      );
      close(
        byCall(notebook, one.part!, 'expected')['change on the way']!,
        sums.expected,
        `${one.part}, change`,
      );
      checked += 1;
    }
    expect(checked).toBeGreaterThan(25);
  });

  it('picks the cheapest stop that keeps a critical part under the risk limit', () => {
    const shops = rowsOf('route.csv').map((leg) => leg.shop === 'yes');
    for (const part of ['Rear tyre', 'Front tyre', 'Fork seals', 'Engine oil and filter']) {
      const plain = callsOf(row(part), values, DAYS_LEFT);
      const [parts, legs] = [texts(notebook, 'ride.part'), figures(notebook, 'ride.leg_number')];
      const risk = figures(notebook, 'ride.stretch_risk');
      const riskAt = (leg: number): number =>
        risk[parts.findIndex((name, at) => name === part && legs[at] === leg)]!;
      const critical = row(part).critical === 'yes';
      const stops = shops.flatMap((shop, at) => (shop && at + 1 < shops.length ? [at + 1] : []));
      const fit = stops.filter((leg) => !critical || riskAt(leg) <= Number(values.risk_limit));
      const best = fit.reduce((a, b) => (plain.change(b).expected < plain.change(a).expected ? b : a));
      expect(chosenChangeLeg(part), part).toBe(best);
    }
  });
});

describe('what leads to the calls', () => {
  it('reaches of every wear class add up as in plain sums', () => {
    for (const one of wear) {
      close(ofPart(notebook, one.part!, 'reach_end'), reachOf(one.wear_class!, values).at(-1)!, one.part!);
    }
  });

  it('splits the chance of every leg into worn and sudden as the plain loops do', () => {
    const parts = texts(notebook, 'ride.part');
    const [worn, sudden] = [figures(notebook, 'ride.p_worn'), figures(notebook, 'ride.p_sudden')];
    for (const one of wear) {
      const plain = chancesFrom(partOf(one, values), reachOf(one.wear_class!, values), 0);
      const rows = parts.flatMap((name, at) => (name === one.part ? [at] : []));
      rows.forEach((at, leg) => {
        close(worn[at]!, plain.worn[leg + 1]!, `${one.part}, leg ${leg + 1}, worn`);
        close(sudden[at]!, plain.sudden[leg + 1]!, `${one.part}, leg ${leg + 1}, sudden`);
      });
    }
  });

  it('judges a critical part on few readings with the wider spread', () => {
    const part = partOf(row('Front tyre'), values);
    const reach = reachOf('tread', values).at(-1)!;
    const wide = { ...part, spread: Math.hypot(part.spread, Number(values.trip_spread)) };
    close(ofPart(notebook, 'Front tyre', 'judged'), 1 - stillFit(wide, reach), 'judged');
    expect(ofPart(notebook, 'Front tyre', 'judged')).toBeGreaterThan(
      ofPart(notebook, 'Front tyre', 'gives_up'),
    );
    // Seven readings stand behind the rear tyre's rate: no wider spread.
    const rear = partOf(row('Rear tyre'), values);
    close(ofPart(notebook, 'Rear tyre', 'judged'), 1 - stillFit(rear, reach), 'rear, judged');
    close(ofPart(notebook, 'Rear tyre', 'judged_wear'), wearChance(rear, reach), 'rear, worn');
    close(ofPart(notebook, 'Rear tyre', 'judged_sudden'), 1 - suddenSurvival(rear, reach), 'rear, sudden');
  });
});
