import { dateWords } from '../../src/formula/day-words.ts';
import { showNumber } from '../../src/formula/show.ts';
import type { PrepReading } from './prep-reading.ts';
import { moneyWords, opensWords, orderWords, spareWords } from './prep-words.ts';

/** One list of the sheet as plain rows: for a CSV or Markdown file. */
export interface PrepList {
  readonly title: string;
  /** Heads; units stand in brackets. */
  readonly heads: readonly string[];
  /** Whether each row is something to be ticked off. */
  readonly ticks: boolean;
  readonly groups: readonly { readonly title: string; readonly rows: readonly (readonly string[])[] }[];
}

/** The lists of a prep sheet in its order; a list with nothing on it is left out. */
export function prepLists(prep: PrepReading): readonly PrepList[] {
  return [
    figures(prep),
    shopping(prep),
    jobs(prep),
    pack(prep),
    checks(prep),
    refills(prep),
    leftOn(prep),
  ].filter((list) => list.groups.some((group) => group.rows.length > 0));
}

const plain = (amount: number, decimals: number): string =>
  Number.isNaN(amount) ? '' : showNumber(amount, decimals);

function figures(prep: PrepReading): PrepList {
  const rows = prep.figures.map((figure) => [
    figure.label,
    figure.shown,
    figure.limit?.shown ?? '',
    figure.unit,
  ]);
  const title = prep.cutOff > 0 ? `cut-off ${dateWords(prep.cutOff)}` : '';
  return {
    title: 'Figures',
    heads: ['Figure', 'Now', 'Limit', 'Unit'],
    ticks: false,
    groups: [{ title, rows }],
  };
}

function shopping(prep: PrepReading): PrepList {
  const groups = prep.shopping.orders.map((order) => ({
    title: `${order.supplier}, ${orderWords(order)}, ${moneyWords(order.sum)} ${prep.money}`,
    rows: order.lines.map((line) => [
      line.part,
      line.number,
      line.call?.words ?? '',
      showNumber(line.pieces),
      line.pack > 1 ? showNumber(line.pack) : '',
      moneyWords(line.each),
      moneyWords(line.sum),
    ]),
  }));
  if (prep.shopping.freight > 0)
    groups.push({
      title: 'Freight',
      rows: [['Freight', '', '', '', '', '', moneyWords(prep.shopping.freight)]],
    });
  const money = `(${prep.money})`;
  return {
    title: 'Shopping',
    heads: ['Part', 'Number', 'Call', 'Pieces', 'Pack of', `Each ${money}`, `Sum ${money}`],
    ticks: true,
    groups,
  };
}

function jobs(prep: PrepReading): PrepList {
  return {
    title: 'Shed jobs',
    heads: ['Job', 'Caution', 'Mind', 'Hours (h)', 'Reading after', 'Unit', 'Done by'],
    ticks: true,
    groups: prep.jobs.map((group) => ({
      title: `${opensWords(group.opens, group.jobs.length)}, ${plain(group.hours, 2)} h`,
      rows: group.jobs.map((job) => [
        job.part,
        job.call.critical ? 'safety-critical' : '',
        job.hint,
        plain(job.hours, 2),
        '',
        job.unit,
        '',
      ]),
    })),
  };
}

function pack(prep: PrepReading): PrepList {
  return {
    title: 'Pack',
    heads: ['Spare', 'Carried by', `Weight (${prep.massUnit})`, `Volume (${prep.volumeUnit})`],
    ticks: true,
    groups: prep.bags.map((bag) => ({
      title: `${bag.bag || 'no bag named'}, ${plain(bag.mass, 2)} ${prep.massUnit}, ${plain(bag.volume, 2)} ${prep.volumeUnit}`,
      rows: bag.lines.map((line) => [
        spareWords(line),
        line.carrier,
        plain(line.mass, 2),
        plain(line.volume, 2),
      ]),
    })),
  };
}

function checks(prep: PrepReading): PrepList {
  return {
    title: 'Checks on the road',
    heads: ['Part', 'Caution', 'Do', 'Likely then', 'Change at', 'Unit', 'Reading'],
    ticks: true,
    groups: prep.checks.map((stop) => ({
      title: `At ${stop.shownAt} ${stop.unit}, ${stop.place}`,
      rows: stop.checks.map((check) => [
        check.part,
        check.critical ? 'safety-critical' : '',
        check.change ? 'change it here' : `measure ${check.gauge}`,
        check.expected,
        check.limit,
        check.unit,
        '',
      ]),
    })),
  };
}

function refills(prep: PrepReading): PrepList {
  const { refills: from } = prep;
  return {
    title: 'Fuel and water',
    heads: [
      'Leaving',
      `At (${from.distanceUnit})`,
      `Fuel (${from.fuelUnit})`,
      `Water (${from.waterUnit})`,
      'Note',
    ],
    ticks: false,
    groups: [
      {
        title: from.oil ? `oil for the whole trip ${from.oil}` : '',
        rows: from.stops.map((stop) => [stop.place, stop.shownAt, stop.fuel, stop.water, stop.says]),
      },
    ],
  };
}

function leftOn(prep: PrepReading): PrepList {
  return {
    title: 'Left on',
    heads: ['Part', 'Caution', 'Call', 'Now', 'Limit', 'Unit', 'Reading'],
    ticks: true,
    groups: [
      {
        title: 'check each before you go',
        rows: prep.leftOn.map((part) => [
          part.part,
          part.critical ? 'safety-critical' : '',
          part.words,
          part.now,
          part.limit,
          part.unit,
          '',
        ]),
      },
    ],
  };
}
