import { showCount } from '../../formula/show.ts';
import type { NotebookDocument, TableCell, ValueCell } from '../../notebook/document.ts';
import { freshId } from '../../notebook/fresh-id.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import { columnNamed, isEntered, rowCount } from '../../notebook/lookup.ts';
import { renameMoney } from '../../notebook/rename-money.ts';
import { type LeftForLater, leftForLater } from '../../starter/own-trip/beginning-note.ts';
import type { OwnTripChoices, TickedPart, TypedLeg } from '../../starter/own-trip/choices.ts';
import { BROUGHT_TABLES, ownTrip } from '../../starter/own-trip/own-trip.ts';
import type { CataloguePart } from '../../starter/own-trip/part-catalogue.ts';

/** Forms of the worked example whose figures are the rider's own; the rules of the reckoning are not asked. */
const ASKED_FORMS = ['Limits', 'What things are worth', 'Oil, fuel, water'] as const;

/** One supplier whose list was brought in. */
export interface SupplierLine {
  readonly name: string;
  readonly offers: number;
  /** How many of them fit a ticked part. */
  readonly fitting: number;
}

const NO_LEG: TypedLeg = {
  start: '',
  end: '',
  distanceKm: null,
  surface: null,
  helpKm: null,
  waitDays: null,
  shop: false,
  fuel: false,
  water: false,
};

/** What a rider says on the way to a notebook of their own, step by step; nothing is kept before the end. */
export class OwnTripDesk {
  readonly catalogue: readonly CataloguePart[];
  readonly #example: NotebookDocument;
  readonly #id = freshId('notebook');
  #choices: OwnTripChoices;
  #template: NotebookDocument;

  /** @param today YYYY-MM-DD */
  constructor(example: NotebookDocument, catalogue: readonly CataloguePart[], today: string) {
    this.catalogue = catalogue;
    this.#example = example;
    this.#template = example;
    this.#choices = { title: '', money: example.money, today, values: {}, parts: [], legs: [], brought: {} };
  }

  get choices(): OwnTripChoices {
    return this.#choices;
  }

  #change(choices: Partial<OwnTripChoices>): void {
    this.#choices = { ...this.#choices, ...choices };
  }

  // The trip

  setTitle(title: string): void {
    this.#change({ title });
  }

  setMoney(money: string): void {
    this.#change({ money });
    this.#template = renameMoney(this.#example, money);
  }

  /** null: not said; the figure that stood before does again. */
  setValue(name: string, said: number | string | null): void {
    const { [name]: _, ...others } = this.#choices.values;
    this.#change({ values: said === null ? others : { ...others, [name]: said } });
  }

  /** The values that are asked for, form by form, as they stand now. */
  get forms(): readonly { readonly form: string; readonly cells: readonly ValueCell[] }[] {
    const now = this.made().cells;
    return ASKED_FORMS.map((form) => ({
      form,
      cells: now.filter((cell): cell is ValueCell => cell.kind === 'value' && cell.form === form),
    }));
  }

  // The parts

  /** The parts that may be ticked, by where they are on the bike. */
  get groups(): ReadonlyMap<string, readonly CataloguePart[]> {
    const groups = new Map<string, CataloguePart[]>();
    for (const part of this.catalogue) groups.set(part.group, [...(groups.get(part.group) ?? []), part]);
    return groups;
  }

  ticked(part: CataloguePart): TickedPart | undefined {
    return this.#choices.parts.find((one) => one.part === part);
  }

  tick(parts: readonly CataloguePart[], isTicked: boolean): void {
    const kept = this.catalogue.filter((part) =>
      parts.includes(part) ? isTicked : this.ticked(part) !== undefined,
    );
    this.#change({ parts: kept.map((part) => this.ticked(part) ?? { part, now: null, ageKm: null }) });
  }

  tell(part: CataloguePart, told: Partial<Pick<TickedPart, 'now' | 'ageKm'>>): void {
    this.#change({
      parts: this.#choices.parts.map((one) => (one.part === part ? { ...one, ...told } : one)),
    });
  }

  // The legs

  get surfaces(): readonly string[] {
    const route = this.#example.cells.find(({ id }) => id === 'route');
    const column = route === undefined ? null : columnNamed(route, 'surface');
    return column !== null && isEntered(column) ? (column.options ?? []) : [];
  }

  /** A leg more, from where the last one ends. */
  addLeg(): void {
    const { legs } = this.#choices;
    this.#change({ legs: [...legs, { ...NO_LEG, start: legs.at(-1)?.end ?? '' }] });
  }

  setLeg(at: number, said: Partial<TypedLeg>): void {
    this.#change({ legs: this.#choices.legs.map((leg, i) => (i === at ? { ...leg, ...said } : leg)) });
  }

  removeLeg(at: number): void {
    this.#change({ legs: this.#choices.legs.filter((_, i) => i !== at) });
  }

  // What is brought in from files

  /** The notebook as it would be now, at work, for a file to be brought into. */
  draft(): LiveNotebook {
    return LiveNotebook.open(this.made());
  }

  /**
   * Takes over what a file has changed in the draft.
   *
   * @param before the draft as it was opened
   * @returns titles of tables that cannot be filled yet, so that their rows are left out
   */
  takeFrom(draft: NotebookDocument, before: NotebookDocument): readonly string[] {
    const brought: Record<string, TableCell> = { ...this.#choices.brought };
    const leftOut: string[] = [];
    for (const cell of draft.cells) {
      if (cell.kind !== 'table' || before.cells.includes(cell)) continue;
      if ((BROUGHT_TABLES as readonly string[]).includes(cell.id)) brought[cell.id] = cell;
      else leftOut.push(cell.title);
    }
    this.#change({ brought });
    return leftOut;
  }

  /** The legs that a file has brought, in words; '' for none. */
  get broughtLegs(): string {
    const route = this.#choices.brought.route;
    if (route === undefined) return '';
    const column = columnNamed(route, 'distance');
    const lengths = column !== null && isEntered(column) ? column.entries : [];
    const km = lengths.reduce<number>((sum, one) => sum + (typeof one === 'number' ? one : 0), 0);
    const legs = rowCount(route);
    return `${legs} ${legs === 1 ? 'leg' : 'legs'}, ${showCount(km)} km`;
  }

  dropLegs(): void {
    const { route: _, ...brought } = this.#choices.brought;
    this.#change({ brought });
  }

  get suppliers(): readonly SupplierLine[] {
    const prices = this.#choices.brought.prices;
    if (prices === undefined) return [];
    const entries = (name: string) => {
      const column = columnNamed(prices, name);
      return column !== null && isEntered(column) ? column.entries : [];
    };
    const [names, fits] = [entries('supplier'), entries('fits')];
    const parts = new Set<unknown>(this.#choices.parts.map(({ part }) => part.name));
    return [...new Set(names)].map((name) => {
      const rows = names.flatMap((one, row) => (one === name ? [row] : []));
      return {
        name: String(name ?? 'no supplier'),
        offers: rows.length,
        fitting: rows.filter((row) => parts.has(fits[row])).length,
      };
    });
  }

  dropPrices(): void {
    const { route } = this.#choices.brought;
    this.#change({ brought: route === undefined ? {} : { route } });
  }

  // The end

  /** The notebook as it would be made now. */
  made(): NotebookDocument {
    return ownTrip(this.#template, this.#choices, this.#id);
  }

  get left(): readonly LeftForLater[] {
    return leftForLater(this.made(), this.#choices);
  }
}
