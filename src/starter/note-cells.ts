import type { NoteCell } from '../notebook/document.ts';

const WHAT = `This notebook helps you decide, before a long trip through remote country, what to do about each part that wears: **leave** it, **replace** it now, **carry** a spare, **replace it and keep the old one** as the spare, or **change it on the way** at a shop.

It opens on an invented trip: a loop of 26 legs from Port Ansel, 36 fitted parts, three suppliers and a workshop. Every place, price and reading is made up. What you see in blue is yours to change; all else is worked out from it at once, and every formula is there to be read and rewritten.

The order of the cards: what limits you and what things are worth; the legs and how hard they are; the parts and their readings; prices; where each part is likely to give up; what each call costs; the calls; the totals.`;

const CAUTIONS = `**This is arithmetic about money and days, not an inspection.** A projection is an estimate. A part that nobody has looked at is of unknown condition.

- The maker’s manual and its service limits come first; local roadworthiness rules apply; where in doubt, a licensed mechanic decides. The limits, rates and lives here are planning figures: put in those of your motorcycle.
- Tyres, brakes, wheel and steering bearings, chain, suspension and controls carry a triangle. Such a part is never proposed to be left past the risk limit, whatever that would save.
- A part removed for a fault is no spare. Carry only what still passes the maker’s limit, labelled with distance and date.
- A low chance is a chance all the same. Tell someone your route, carry water, and a way to call for help.`;

const ROUTE = `**Legs.** Each leg has a length, a surface, perhaps a second one over part of it, the distance to help, and the days a part would take to reach you. A part that gives up on a leg is changed at its end.

**Severity** turns a kilometre of gravel or sand into kilometres of sealed road, for each class of wear. Distance times severity times load adds up to the *reach*: what the trip takes out of a part, in sealed km. Rates, ages and lives are all counted in these.`;

const WEAR = `**Wear.** A part is judged in one of four ways, or two together:

- by a *reading* that moves from new to a limit, up or down, at a rate for each 1,000 sealed km (tread, pads, chain length);
- by *age* against a life with a low and a high figure, one in ten below and one in ten above (cables, sprockets);
- by a *sudden life* and a shape: shape 1 fails at random, above 1 with age and without showing it (bearings, seals). A rating life is the distance that nine in ten outlast;
- by *chance* alone: shape 1 and nothing else (tubes, levers).

Where *bikes sharing* is above 1, so many like bikes ride along, with a like part each that has come as far, and what is carried serves whichever needs it first. Parts that differ are rows of their own.

A rate that rests on few readings is judged with a wider spread. Units are the gauge’s own, row by row; rates are in them, for each 1,000 km.`;

const PRICES = `**Prices.** Offers stand as the suppliers list them, in their own money, matched to the part or kit that they fit. *Landed* is one piece with discount, tax, its share of the freight on a usual order, in the notebook’s money. An offer that cannot arrive some days before the cut-off does not count. A pack’s price is shared over its pieces.`;

const RIDE = `**Where parts give up.** Every part meets every leg. The chance that it gives up there is split into worn out (seen coming, so no recovery unless the part is marked) and sudden (a recovery, days of waiting, and a part at the roadside price). With a spare it costs the work alone, and a recovery where the job cannot be done by the track. *Later* columns hold what follows once a new or the old part is fitted at that leg’s end.`;

const CALLS = `**Calls.** Expected cost = cash + shelf + shed hours + cost on the road − what is left over. Left over counts the life still in the part at the end, the labour which that puts off, spares that come home unused, and what the old part fetches.

A workshop may do the work instead, for its price and no hours in the shed. Calls behind the same thing, such as the rear wheel, count its coming off in full each; the plan counts it once.

The plan makes the calls of all parts together, the cheapest set within the limits on cash, pack, bags and hours. Set another call by hand, or forbid one, and the plan shows what that costs. A call that is not allowed says why.`;

const BRAKES = `Brakes, tyres, bearings, chain, steering and suspension: a figure here says what is likely to wear and what that costs. Whether a part may be ridden on is for the maker’s manual, local rules and a licensed mechanic. Change tyres before the legal depth where you ride, pads and discs before the maker’s minimum; check play, tightness and leaks on the road every day.`;

const TOTALS = `**Totals.** Spending, work, pack, cost on the road and chances, each one formula over the calls as they stand.`;

const FLUIDS = `**Oil, fuel, water.** Fuel is counted leg by leg, from one place that sells it to the next: what the tank does not hold above its reserve has to go into cans, and a leg beyond both is named as out of range. Water is counted in days between taps, with days in reserve. Oil is the use that one trip in ten exceeds, less what may go from the sump.`;

const PREP = `**The last night.** Everything above as lists on paper: what to order from whom and by when, what to fit in which turn, what to pack, where on the road to measure what. It is made for a printer in black and white, and follows every edit.`;

const note = (id: string, title: string, text: string, caution = false): NoteCell => ({
  id: `note_${id}`,
  kind: 'note',
  title,
  text,
  ...(caution ? { caution } : {}),
});

/** What the notebook is, what each part of it does, and its cautions. */
export const NOTES = {
  what: note('what', 'What this notebook is', WHAT),
  cautions: note('cautions', 'Before you rely on it', CAUTIONS, true),
  route: note('route', 'The way and how hard it is', ROUTE),
  wear: note('wear', 'The parts', WEAR),
  brakes: note('brakes', 'Brakes, tyres, bearings', BRAKES, true),
  prices: note('prices', 'What parts cost', PRICES),
  ride: note('ride', 'Parts on the road', RIDE),
  calls: note('calls', 'What to do about each', CALLS),
  fluids: note('fluids', 'What the trip drinks', FLUIDS),
  prep: note('prep', 'On paper', PREP),
  totals: note('totals', 'What it comes to', TOTALS),
} as const;
