import { describe, expect, test } from 'vitest';
import type { FaultKind } from '../../src/formula/fault.ts';
import { choices, dates, faultOf, numbers, run, type SampleNotebook, words, yesNos } from './sample-scope.ts';

const sample: SampleNotebook = {
  tables: {
    wear: {
      part: words('chain', 'pads', 'pads'),
      rate: numbers('1/(1000 km)', 0.3, 0.2, 0.1),
      kg: numbers('kg', 1.7, 0.2, null),
      critical: yesNos(true, true, false),
    },
    route: {
      leg: words('a', 'b'),
      km: numbers('km', 640, 910),
      surface: choices(['sealed', 'gravel'], 'sealed', 'gravel'),
    },
  },
  figures: {
    reach: numbers('km', 2000),
    tread: numbers('mm', 4.8),
    mass: numbers('kg', 2),
    plain: numbers('', 3),
    nought: numbers('', 0),
    today: dates('2027-04-01'),
    cut_off: dates('2027-04-20'),
    spare: yesNos(true),
    note: words('dusty'),
    broken: numbers('km', 1),
    heat: numbers('degC', 31),
  },
  faulty: ['broken'],
};

const inRoute: SampleNotebook = { ...sample, here: 'route' };

/** Formula, kind, sentence, and for some the place of the fault in the text. */
const CASES: readonly (readonly [string, FaultKind, RegExp, string?])[] = [
  // Grammar
  ['', 'grammar', /^The formula is empty\.$/],
  [
    '3 +',
    'grammar',
    /^This cannot be read: a figure or name is missing|^This cannot be read: it ends too early/,
  ],
  ['(3 + 2', 'grammar', /a closing bracket is missing/],
  ['3 + * 2', 'grammar', /a figure or name is missing at place 5/, '*'],
  ['"gravel', 'grammar', /opened with " and not closed/, '"gravel'],
  ['reach tread', 'grammar', /A sign is missing before tread/, 'tread'],
  ['3 # 4', 'grammar', /The character # at place 3/, '#'],
  ['2 reach', 'unknown-name', /reach stands after a number but is no unit/, 'reach'],
  // Not in the language
  ['x = 3', 'not-in-language', /does not assign with =/, '='],
  ['f(x) = x', 'not-in-language', /does not assign with =/],
  ['[1, 2]', 'not-in-language', /Square brackets/, '['],
  ['reach[1]', 'not-in-language', /Square brackets/],
  ['1:10', 'not-in-language', /Ranges are not part/],
  ['3; 4', 'not-in-language', /parted by ;/, ';'],
  ['{a: 1}', 'not-in-language', /Curly brackets/],
  ["'gravel'", 'not-in-language', /double quotes/],
  ['5!', 'not-in-language', /The sign ! is not part/],
  ['plain | 2', 'not-in-language', /Write or|The sign \|/],
  ['null', 'not-in-language', /null is not part of this language/, 'null'],
  ['Infinity', 'not-in-language', /Infinity is too large or no number/],
  ['1e999', 'not-in-language', /1e999 is too large or no number/],
  ['plain xor nought', 'not-in-language', /The sign xor is not part/],
  ['wear.part.length', 'not-in-language', /Only table\.column can be read/],
  ['wear.rate(3)', 'not-in-language', /Only the functions of the reference/],
  // Names
  ['reech', 'unknown-name', /no figure, column or unit called reech/, 'reech'],
  ['wear.rte', 'unknown-name', /Table wear has no column rte/, 'wear.rte'],
  ['waer.rate', 'unknown-name', /There is no table waer/],
  ['surviva(0, 1, 2, 3)', 'unknown-name', /There is no function surviva\(\)/, 'surviva'],
  ['evaluate("1")', 'unknown-name', /There is no function evaluate\(\)/],
  ['import(1)', 'unknown-name', /There is no function import\(\)/],
  ['parse("1")', 'unknown-name', /There is no function parse\(\)/],
  ['createUnit("x")', 'unknown-name', /There is no function createUnit\(\)/],
  ['zeros(1e9)', 'unknown-name', /There is no function zeros\(\)/],
  ['constructor', 'unknown-name', /called constructor/],
  ['__proto__', 'unknown-name', /called __proto__/],
  ['wear.__proto__', 'unknown-name', /no column __proto__/],
  ['toString()', 'unknown-name', /no function toString/],
  ['i', 'unknown-name', /called i\./],
  ['wear', 'whole-column', /wear is a whole table/, 'wear'],
  // Whole columns
  ['wear.rate', 'whole-column', /gives a whole column of wear/],
  ['wear.rate * reach', 'whole-column', /gives a whole column of wear/],
  ['sum(wear.kg * route.km)', 'whole-column', /different rows/],
  ['sum(reach)', 'whole-column', /sum\(\) takes a whole column; reach is a single figure/, 'reach'],
  // Units
  ['reach + mass', 'units', /^These cannot be added: reach is in km, mass is in kg\.$/, '+'],
  ['reach - tread * mass', 'units', /^These cannot be subtracted/],
  [
    'mass * (2 km / mass) + mass',
    'units',
    /^These cannot be added: mass \* \(2 km \/ mass\) is in km, mass is in kg\.$/,
  ],
  ['reach + 3', 'units', /3 is a plain number/],
  ['reach > mass', 'units', /^These cannot be compared/],
  ['reach to kg', 'units', /reach is in km and cannot be turned into kg/],
  ['reach to foo', 'units', /foo after to is no unit/, 'foo'],
  ['2 ^ reach', 'units', /A power is a plain number/, 'reach'],
  ['reach ^ plain', 'units', /must be written out as a number/],
  ['exp(reach)', 'units', /exp\(\) takes a plain number; reach is in km/],
  ['min(reach, mass)', 'units', /min\(\) compares like with like/],
  [
    'limit_chance(tread, plain, 0.3, reach)',
    'units',
    /limit_chance\(\) takes a figure in mm.* as its rate here; plain is a plain number/,
    'plain',
  ],
  ['survival(0 km, reach, mass, 2)', 'units', /as its life here; mass is in kg/],
  ['heat + heat', 'units', /temperature on a scale/],
  ['true ? reach : mass', 'units', /Both sides of :/],
  // Kinds
  ['note + 1', 'kind', /The sign \+ takes a number; note is text/, 'note'],
  ['note < "x"', 'kind', /Texts can be equal or not/],
  ['reach == "x"', 'kind', /cannot be compared/],
  ['reach and spare', 'kind', /and takes a yes\/no; reach is a number/],
  ['not reach', 'kind', /not takes a yes\/no/],
  ['reach ? 1 : 2', 'kind', /Before \? stands a yes\/no/],
  ['spare ? 1 : "x"', 'kind', /Both sides of : must be the same kind of thing: 1 is a number, "x" is text/],
  ['reach == missing', 'kind', /Nothing equals or exceeds missing/],
  ['cut_off + today', 'kind', /does not fit a date/],
  ['cut_off * 2', 'kind', /does not fit a date/],
  ['days_until(reach)', 'kind', /days_until\(\) takes a date/],
  ['sum(wear.part)', 'kind', /sum\(\) takes numbers/],
  // Arguments
  ['sqrt()', 'arguments', /sqrt\(\) takes 1 argument; none is given/],
  ['survival(1, 2)', 'arguments', /survival\(\) takes 4 arguments; 2 are given/],
  ['pick(wear.kg, wear.part)', 'arguments', /pick\(\) takes 3 or more arguments|keys in pairs/],
  ['total(wear.kg, wear.part, "chain", wear.part)', 'arguments', /keys in pairs/],
  // Not one match
  ['pick(wear.kg, wear.part, "pads")', 'not-one-match', /2 rows of wear\.part are pads; pick\(\) needs one/],
  ['pick(wear.kg, wear.part, "fork")', 'not-one-match', /No row of wear\.part is fork/],
  // Domain
  ['1 / nought', 'domain', /1 is divided by 0/],
  ['sqrt(-plain)', 'domain', /sqrt\(-3\) has no real, finite value/i],
  ['log(nought)', 'domain', /log\(0\) has no real, finite value/i],
  ['(-plain) ^ 0.5', 'domain', /-3 to the power 0\.5 is no real, finite number/],
  ['10 ^ 400', 'domain', /10 to the power 400/],
  ['1e300 * 1e300', 'domain', /too large to be written/],
  ['survival(0 km, reach, 5000 km, nought)', 'domain', /shape is 0, it must be above 0/],
  ['survival(0 km, -reach, 5000 km, 1)', 'domain', /reach is -2000/],
  ['limit_chance(1, 0, 0.3, 100)', 'domain', /rate is 0/],
  ['spread_from_cv(-1)', 'domain', /v is -1/],
  // Waiting
  ['broken + reach', 'waits', /^Waits for broken\.$/],
  // What is gone is told first, whatever else is wrong.
  ['broken + gone_figure', 'unknown-name', /gone_figure/],
  ['today * 2 + wear.gone_column', 'unknown-name', /Table wear has no column gone_column\./],
  // Bounds
  [`${'('.repeat(70)}1${')'.repeat(70)}`, 'size', /nested more than 64 levels/],
  [`1${'+1'.repeat(3000)}`, 'size', /4,000/],
  [`${'-'.repeat(1600)}1`, 'size', /1,500|nested/],
];

describe('every fault has its kind, its sentence, its mend and its place', () => {
  test.each(CASES.map((held) => [held[0], held] as const))('%s', (_, [formula, kind, message, place]) => {
    const fault = faultOf(formula, sample);
    expect(fault.message).toMatch(message);
    expect(fault.kind).toBe(kind);
    expect((fault.mend ?? '').length).toBeGreaterThan(5);
    if (place !== undefined) expect(formula.slice(fault.place.from, fault.place.to)).toBe(place);
  });

  test('a whole column where one row is meant says what would serve', () => {
    const fault = faultOf('km * wear.rate', inRoute);
    expect(fault).toMatchObject({
      kind: 'whole-column',
      message: 'This uses a whole column of wear where one row of route is meant.',
    });
    expect(fault.mend).toMatch(/sum\(wear\.column\).*total\(wear\.column, wear\.key, key\).*pick\(/);
  });

  test('a choice that is no choice of its column is told before it silently never matches', () => {
    expect(faultOf('surface == "gravle" ? 1 : 2', inRoute)).toMatchObject({
      kind: 'kind',
      message: '"gravle" is none of the choices of surface: sealed, gravel.',
      mend: 'Did you mean "gravel"?',
    });
  });

  test('a name with two meanings lists both', () => {
    const both: SampleNotebook = { ...inRoute, figures: { ...sample.figures, km: numbers('km', 3) } };
    expect(faultOf('km * 2', both)).toMatchObject({
      kind: 'two-meanings',
      message: 'km means two things here: column km of route and value km.',
    });
  });

  test('a unit alone is no figure, as the name of a column that is gone would be one in silence', () => {
    const { kind, message, mend, fix } = faultOf('2 * km', sample);
    expect(kind).toBe('unknown-name');
    expect(message).toBe('There is no figure or column called km; km alone is no figure, but a unit.');
    expect(mend).toBe('Write 1 km where the unit is meant, or add a cell or column with this name.');
    expect(fix).toEqual({ label: 'Use 1 km', formula: '2 * 1 km' });
    expect(run('reach / 1 km', sample)).toMatchObject({ values: Float64Array.of(2000) });
  });

  test('under a figure with its unit a unit needs no number; a figure called so is asked after', () => {
    expect(run('reach / (500 km/day) / 1 day', sample)).toMatchObject({ values: Float64Array.of(4) });
    const days: SampleNotebook = { ...sample, figures: { ...sample.figures, day: numbers('day', 3) } };
    const { kind, message, mend, fix } = faultOf('500 km / day', days);
    expect(kind).toBe('two-meanings');
    expect(message).toBe('day means two things here: value day and the unit day.');
    expect(mend).toBe('Write (day) for the figure, or (1 day) for the unit.');
    expect(fix).toEqual({ label: 'Use (day)', formula: '500 km / (day)' });
    expect(run('600 km / (day)', days)).toMatchObject({ values: Float64Array.of(200) });
    expect(faultOf('600 km / (day)', sample).kind).toBe('unknown-name');
  });

  test('near misses come with one fix', () => {
    expect(faultOf('reech * 2', sample).fix).toEqual({ label: 'Use reach', formula: 'reach * 2' });
    expect(faultOf('2 * sqr(plain)', sample).fix).toEqual({
      label: 'Use sqrt()',
      formula: '2 * sqrt(plain)',
    });
  });

  test('days_until without a value today asks for it', () => {
    expect(faultOf('days_until(cut_off)', { figures: { cut_off: dates('2027-04-20') } }).mend).toBe(
      'Add a date value named today.',
    );
  });

  test('a declared unit that does not fit names both', () => {
    expect(faultOf('reach * 2', sample, 'kg').message).toBe('The formula gives km, but kg is declared.');
  });
});
