import type { LimitLine } from './limit-lines.ts';
import type { PlanInstance } from './plan-instance.ts';

const UNITS = { shed_hours: 'h', mass_kg: 'kg', volume_L: 'L' } as const;

const NAMES = {
  cash: 'Cash',
  shed_hours: 'Shed hours',
  trip_risk: 'Chance of a stranding',
  mass_kg: 'Weight',
  volume_L: 'Volume',
} as const;

/** A sum as sentences have it: moneyWords(4.2, 'EUR') is "4.20 EUR". */
export const moneyWords = (sum: number, money: string): string => `${sum.toFixed(2)} ${money}`;

/** The limit's name: "Weight in the pack of Ann", "Volume in the bag tail roll of Ann", "Cash". */
export function limitName({ kind, rider, bag }: Pick<LimitLine, 'kind' | 'rider' | 'bag'>): string {
  if (rider === null) return NAMES[kind];
  const whose = rider === '' ? '' : ` of ${rider}`;
  return bag === null ? `${NAMES[kind]} in the pack${whose}` : `${NAMES[kind]} in the bag ${bag}${whose}`;
}

/** "Cash: the nearest plan takes 60.00 EUR of 50.00 EUR, 10.00 EUR too much." */
export function limitSentence(line: LimitLine, needed: number, { money }: PlanInstance): string {
  const shown = (figure: number): string => {
    if (line.kind === 'cash') return moneyWords(figure, money);
    if (line.kind === 'trip_risk') return `${(figure * 100).toFixed(2)} %`;
    return `${figure.toFixed(2)} ${UNITS[line.kind]}`;
  };
  return `${limitName(line)}: the nearest plan takes ${shown(needed)} of ${shown(line.allowed)}, ${shown(needed - line.allowed)} too much.`;
}
