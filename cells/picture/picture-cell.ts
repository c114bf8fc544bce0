import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import {
  PICTURE_SHAPES,
  type PictureCell,
  type PictureRole,
  type PictureShape,
} from '../../src/notebook/document.ts';
import { replaceCell } from '../../src/notebook/edits.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { readsOf } from '../../src/notebook/reads-of.ts';
import { CellElement } from '../shared/cell-element.ts';
import { type PickDetail, pick } from '../shared/cell-events.ts';
import { readsSettings, readsStyles, setupFold } from '../shared/reads-settings.ts';
import { settingLine, settingStyles } from '../shared/setting-line.ts';
import { tableStyles } from '../shared/sheet-table-styles.ts';
import { bandPicture } from './band-picture.ts';
import { barsPicture } from './bars-picture.ts';
import { mapPicture } from './map-picture.ts';
import { pictureCellStyles } from './picture-cell.styles.ts';
import type { Picture, PictureHost } from './picture-host.ts';
import { PICTURE_SETTINGS, SHAPE_WORDS } from './picture-roles.ts';
import { spendingPicture } from './spending-picture.ts';
import { takenPicture } from './taken-picture.ts';

const PICTURES: Readonly<Record<PictureShape, (host: PictureHost) => Picture>> = {
  reading: bandPicture,
  map: mapPicture,
  bars: barsPicture,
  taken: takenPicture,
  spending: spendingPicture,
};

/**
 * A picture of columns of a table: a reading along the road with its band, a map of parts by legs, bars, or readings
 * taken against those expected; or of a plan: spending against risk.
 * It follows every edit, says in words what it shows, and has its figures as a table. Pointing at a mark shows
 * its figures in the line below and lights its row; choosing one opens the figure in the panel.
 *
 * No slots. Parts: sheet, head.
 *
 * @fires sw-pick {PickDetail} a mark was chosen: the figure and its row
 */
export class PictureCellElement extends CellElement<PictureCell> implements PictureHost {
  static override properties: PropertyDeclarations = {
    picked: { attribute: false },
    widthPx: { state: true },
    // What is owed is drawn once the card comes near.
    far: { type: Boolean, hasChanged: (now: boolean, before?: boolean) => before === true && !now },
    setup: { state: true },
  };

  static override styles = [CellElement.styles, tableStyles, settingStyles, readsStyles, pictureCellStyles];

  declare picked: PickDetail | null;
  declare widthPx: number;
  /** Whether the card is out of sight, by more than half a page (out-of-sight.ts). */
  declare far: boolean;
  /** Whether the settings are open. */
  declare private setup: boolean;

  #reads: ReadonlySet<string> = new Set();
  #isDrawn = false;
  #picture: { readonly shape: PictureShape; readonly draw: Picture } | null = null;
  readonly #measured = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry?.contentRect.width ?? 0);
    // A scroll bar that comes and goes must not set off one drawing after another.
    if (Math.abs(width - this.widthPx) > 1) this.widthPx = width;
  });

  constructor() {
    super();
    this.picked = null;
    this.widthPx = 0;
    this.far = false;
    this.setup = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#measured.observe(this);
    addEventListener('beforeprint', this.#drawAtOnce);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#measured.disconnect();
    removeEventListener('beforeprint', this.#drawAtOnce);
  }

  protected override concerns(change: NotebookChange): boolean {
    if (super.concerns(change)) return true;
    for (const node of change.nodes) if (this.#reads.has(node)) return true;
    return false;
  }

  pickRow(node: string, row: number): void {
    pick(this, { node, row, cell: this.cellId });
  }

  keep(cell: PictureCell): void {
    this.notebook.apply(replaceCell(this.notebook.document, cell.id, cell));
  }

  #of(shape: PictureShape): Picture {
    if (this.#picture?.shape !== shape) {
      this.#picture = { shape, draw: PICTURES[shape](this) };
    }
    return this.#picture.draw;
  }

  protected override headNote(cell: PictureCell): unknown {
    return this.#of(cell.shape).head(cell);
  }

  protected override body(cell: PictureCell): TemplateResult {
    this.#reads = new Set(readsOf(cell));
    return html`${this.#of(cell.shape).body(cell)}${this.#settings(cell)}`;
  }

  /** Out of sight its words and figures follow an edit when there is time; its drawing does when it comes near. */
  protected override updated(): void {
    if (!this.far || !this.#isDrawn) this.#draw();
  }

  #draw(atOnce = false): void {
    const cell = this.cell;
    if (!cell || !this.hasUpdated) return;
    this.#of(cell.shape).drawn(cell, atOnce);
    this.#isDrawn = this.widthPx > 0;
  }

  readonly #drawAtOnce = (): void => this.#draw(true);

  #settings(cell: PictureCell): TemplateResult {
    return setupFold(
      'What this picture shows',
      this.setup,
      (open) => {
        this.setup = open;
      },
      () => html`<div class="settings reads wide">
          ${this.#shapeLine(cell)} ${cell.shape === 'bars' ? this.#figureList(cell) : nothing}
        </div>
        ${readsSettings(PICTURE_SETTINGS[cell.shape], cell.reads, this.notebook.document, (role, name) => this.#point(cell, role, name))}`,
    );
  }

  #shapeLine(cell: PictureCell): TemplateResult {
    const shapes = PICTURE_SHAPES.map((shape) => SHAPE_WORDS[shape]);
    return settingLine({
      label: 'Drawn as',
      entry: SHAPE_WORDS[cell.shape],
      column: { kind: 'choice', options: shapes },
      keep: (entry) => {
        const shape = PICTURE_SHAPES[shapes.indexOf(String(entry))];
        if (shape !== undefined) this.keep({ ...cell, shape });
      },
    });
  }

  #figureList(cell: PictureCell): TemplateResult {
    return settingLine({
      label: 'Figures',
      entry: cell.figures.join(', '),
      check: (entry) => wrongName(String(entry ?? '')),
      keep: (entry) => this.keep({ ...cell, figures: namesIn(String(entry ?? '')) }),
    });
  }

  #point(cell: PictureCell, role: PictureRole, name: string): void {
    const { [role]: _before, ...rest } = cell.reads;
    this.keep({ ...cell, reads: name === '' ? rest : { ...rest, [role]: name } });
  }
}

const namesIn = (text: string): string[] => text.split(/[\s,;]+/).filter((name) => name !== '');

function wrongName(text: string): { readonly reason: string; readonly mend: string } | null {
  const wrong = namesIn(text).find((name) => !/^[A-Za-z]\w{0,59}(\.[A-Za-z]\w{0,59})?$/.test(name));
  if (wrong === undefined) return null;
  return {
    reason: `'${wrong}' is not a name`,
    mend: 'Write names of figures, such as budget or calls.cash, with commas between them',
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-picture-cell': PictureCellElement;
  }
}
