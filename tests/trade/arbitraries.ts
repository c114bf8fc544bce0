import fc from 'fast-check';
import { type PartFigures, partFigures } from '../../src/trade/part-figures.ts';

// The same figures on every run: a gate that is red must stay red until it is mended.
fc.configureGlobal({ seed: 1924 });

export const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Figures of a reading: allowance past the limit one time in five, reading errors one time in three. */
const reading = fc.record({
  allowance: fc.oneof({ weight: 4, arbitrary: between(0.05, 4) }, { weight: 1, arbitrary: between(-1, 0) }),
  fullAllowance: between(4, 8),
  rate: between(0.01, 1),
  spread: fc.oneof({ weight: 5, arbitrary: between(0.05, 1) }, { weight: 1, arbitrary: fc.constant(0) }),
  readingError: fc.oneof(
    { weight: 2, arbitrary: fc.constant(NaN) },
    { weight: 1, arbitrary: between(0.01, 0.5) },
  ),
});
const middleLife = fc.record({ middleLife: between(2000, 60000), spread: between(0.05, 1) });
const sudden = fc.record({ life: between(2000, 90000), shape: fc.oneof(fc.constant(1), between(0.5, 4)) });
const age = fc.record({ age: fc.oneof(fc.constant(0), between(1, 40000)) });

/** Any part: with a reading, a middle life or neither, with or without sudden failures. */
export const anyPart: fc.Arbitrary<PartFigures> = fc
  .tuple(fc.oneof(reading, middleLife, fc.constant({})), fc.oneof(sudden, fc.constant({})), age)
  .map(([wears, fails, used]) => partFigures({ ...wears, ...fails, ...used }));

/** Reach at the end of 1 to 8 legs, some of them of no length. */
export const anyReach: fc.Arbitrary<Float64Array> = fc
  .array(fc.oneof({ weight: 6, arbitrary: between(20, 3000) }, { weight: 1, arbitrary: fc.constant(0) }), {
    minLength: 1,
    maxLength: 8,
  })
  .map((steps) => {
    let reach = 0;
    return Float64Array.from(steps, (step) => {
      reach += step;
      return reach;
    });
  });
