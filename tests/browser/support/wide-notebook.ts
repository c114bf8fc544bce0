import { FORMAT, type NotebookDocument, VERSION } from '../../../src/notebook/document.ts';

export const PARTS = 40;
export const LEGS = 60;

/** Forty parts on sixty legs, each figure from a formula, with a map and a band over them. */
export function wideNotebook(): NotebookDocument {
  const text = (name: string, entries: string[]) => ({ id: name, name, kind: 'text' as const, entries });
  const worked = (name: string, formula: string) => ({ id: name, name, kind: 'worked' as const, formula });
  const count = (length: number): number[] => Array.from({ length }, (_, at) => at + 1);
  return {
    format: FORMAT,
    version: VERSION,
    id: 'wide',
    title: 'Wide',
    gist: '',
    money: 'EUR',
    cells: [
      {
        id: 'map',
        kind: 'picture',
        title: 'Map',
        shape: 'map',
        reads: {
          of: 'ride.part',
          along: 'ride.leg',
          chance: 'ride.p',
          cost: 'ride.cost',
          chance_called: 'ride.p_called',
          cost_called: 'ride.cost_called',
        },
        figures: [],
      },
      {
        id: 'band',
        kind: 'picture',
        title: 'Band',
        shape: 'reading',
        reads: {
          of: 'ride.part',
          along: 'ride.km',
          middle: 'ride.middle',
          low: 'ride.low',
          high: 'ride.high',
        },
        figures: [],
      },
      {
        id: 'parts',
        kind: 'table',
        title: 'Parts',
        name: 'parts',
        columns: [
          text(
            'part',
            count(PARTS).map((at) => `Part ${at}`),
          ),
          { id: 'rate', name: 'rate', kind: 'number', entries: count(PARTS) },
        ],
      },
      {
        id: 'legs',
        kind: 'table',
        title: 'Legs',
        name: 'legs',
        columns: [
          text(
            'leg',
            count(LEGS).map((at) => `Leg ${at}`),
          ),
          { id: 'nr', name: 'nr', kind: 'number', entries: count(LEGS) },
        ],
      },
      {
        id: 'ride',
        kind: 'pairing',
        title: 'Ride',
        name: 'ride',
        left: 'parts',
        right: 'legs',
        columns: [
          worked('km', 'nr * 100'),
          worked('p', 'rate * nr / 40000'),
          worked('cost', 'p * 400'),
          worked('p_called', 'p * (100 - nr) / 150'),
          worked('cost_called', 'p_called * 400'),
          worked('middle', '100 - rate * nr / 50'),
          worked('low', 'middle - nr / 20'),
          worked('high', 'middle + nr / 20'),
        ],
      },
    ],
  };
}
