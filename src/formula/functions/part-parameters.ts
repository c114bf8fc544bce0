import { type PartFigures, partFigures } from '../../trade/part-figures.ts';
import type { Parameter } from './spec.ts';

/** Parameter name in the formula language to figure of a part. */
const FIGURE_OF: Readonly<Record<string, keyof PartFigures>> = {
  allowance: 'allowance',
  full_allowance: 'fullAllowance',
  rate: 'rate',
  middle_life: 'middleLife',
  spread: 'spread',
  reading_error: 'readingError',
  age: 'age',
  life: 'life',
  shape: 'shape',
};

/** A part's own figures with all that the share of life left needs. Each may be missing where it does not apply. */
export const WORN_FROM_NEW: readonly Parameter[] = [
  {
    name: 'allowance',
    about:
      'What is left from the reading to the limit when the part is fitted; missing where nothing is read.',
    unit: { variable: 'A' },
    mayBeMissing: true,
  },
  {
    name: 'full_allowance',
    about: 'From the reading when new to the limit, above 0.',
    unit: { variable: 'A' },
    mayBeMissing: true,
  },
  {
    name: 'rate',
    about: 'Median wear over 1,000 km of sealed road, above 0.',
    unit: { variable: 'A', per: 'X', by: 1000 },
    mayBeMissing: true,
  },
  {
    name: 'middle_life',
    about: 'Median life of a part without a reading, above 0; not looked at where there is an allowance.',
    unit: { variable: 'X' },
    mayBeMissing: true,
  },
  {
    name: 'spread',
    about: 'Log-spread of the rate or of the middle life, 0 or more.',
    unit: 'plain',
    mayBeMissing: true,
  },
  {
    name: 'reading_error',
    about: 'Standard uncertainty of the reading, 0 or more; missing counts as 0.',
    unit: { variable: 'A' },
    mayBeMissing: true,
  },
  {
    name: 'age',
    about: 'Distance covered when the part is fitted, 0 or more; 0 for a new part.',
    unit: { variable: 'X' },
    mayBeMissing: true,
  },
  {
    name: 'life',
    about: 'Weibull characteristic life, above 0; missing where the part has no sudden failures.',
    unit: { variable: 'X' },
    mayBeMissing: true,
  },
  {
    name: 'shape',
    about: 'Weibull shape of the sudden failures, above 0.',
    unit: 'plain',
    mayBeMissing: true,
  },
];

/** The same without the full allowance, for functions of chances and costs. */
export const WORN_TO_LIMIT: readonly Parameter[] = WORN_FROM_NEW.filter((p) => p.name !== 'full_allowance');

/** Figures in the order of `parameters` as those of one part; one that is not a figure of a part is skipped. */
export function partFromFigures(parameters: readonly Parameter[], figures: readonly number[]): PartFigures {
  const known: { -readonly [F in keyof PartFigures]?: number } = {};
  parameters.forEach((parameter, place) => {
    const figure = FIGURE_OF[parameter.name];
    if (figure) known[figure] = figures[place] ?? NaN;
  });
  return partFigures(known);
}
