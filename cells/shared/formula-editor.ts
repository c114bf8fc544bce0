import {
  acceptCompletion,
  autocompletion,
  type CompletionContext,
  type CompletionResult,
  closeBrackets,
  closeBracketsKeymap,
  completionKeymap,
  completionStatus,
  startCompletion,
} from '@codemirror/autocomplete';
import { defaultKeymap, history, historyKeymap, insertNewline } from '@codemirror/commands';
import { bracketMatching } from '@codemirror/language';
import { EditorState, Prec, StateEffect, StateField } from '@codemirror/state';
import { Decoration, type DecorationSet, EditorView, keymap, tooltips } from '@codemirror/view';
import { formulaEditorTheme } from './formula-editor.styles.ts';
import type { Offer, Offers } from './formula-editor-words.ts';

/** A stretch of the formula, `to` exclusive. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface FormulaEditorOptions {
  readonly parent: HTMLElement;
  readonly root: ShadowRoot;
  readonly text: string;
  readonly selection: Stretch;
  /** Name for screen readers, and id of what describes it. */
  readonly label: string;
  readonly describedBy: string;
  offers(formula: string, place: number, asked: boolean): Offers | null;
  /** The text or the cursor has changed. */
  changed(text: string, place: number): void;
  keep(): void;
  leave(): void;
}

/** A formula editor on the page. */
export interface FormulaEditor {
  readonly text: string;
  /** Where the cursor is. */
  readonly place: number;
  /** Replaces the whole text, as one step of its own undo. */
  write(text: string): void;
  /** Writes over what is selected, with the cursor after it. */
  insert(text: string): void;
  /** Marks the stretch at fault; null takes the mark off. */
  mark(stretch: Stretch | null): void;
  focus(): void;
  close(): void;
}

const setFault = StateEffect.define<Stretch | null>();
const faultMark = Decoration.mark({ tagName: 'mark' });

const faultField = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(marks, transaction) {
    let next = marks.map(transaction.changes);
    for (const effect of transaction.effects) {
      if (effect.is(setFault)) next = effect.value === null ? Decoration.none : marked(effect.value);
    }
    return next;
  },
  provide: (field) => EditorView.decorations.from(field),
});

const marked = ({ from, to }: Stretch): DecorationSet =>
  from < to ? Decoration.set([faultMark.range(from, to)]) : Decoration.none;

const NARROW = '(max-width: 720px)';

/** Words that belong first are offered first: this table's columns before single figures, functions, units. */
const BOOST: Readonly<Record<Offer['sort'], number>> = {
  choice: 50,
  column: 40,
  name: 30,
  table: 20,
  function: 10,
  unit: 0,
  word: -10,
};

function completionsOf(options: FormulaEditorOptions) {
  return (context: CompletionContext): CompletionResult | null => {
    const found = options.offers(context.state.doc.toString(), context.pos, context.explicit);
    if (found === null) return null;
    return {
      from: found.from,
      options: found.offers.map((offer) => ({
        label: offer.label,
        apply: offer.apply,
        detail: offer.detail,
        info: offer.about,
        type: offer.sort,
        boost: BOOST[offer.sort],
      })),
    };
  };
}

/**
 * Enter keeps, unless an offer has been gone to; Tab takes the first offer while some are shown, and goes on
 * to the buttons otherwise; Escape closes the offers, then leaves.
 */
function keysOf(options: FormulaEditorOptions) {
  const done = (act: () => void) => () => {
    act();
    return true;
  };
  return [
    keymap.of([...completionKeymap.filter(({ key }) => key !== 'Enter')]),
    Prec.highest(keymap.of([{ key: 'Enter', run: acceptCompletion }])),
    Prec.high(
      keymap.of([
        { key: 'Enter', run: done(options.keep) },
        { key: 'Shift-Enter', run: insertNewline },
        { key: 'Escape', run: (view) => completionStatus(view.state) === null && done(options.leave)() },
        { key: 'Tab', run: takeFirst },
        { key: 'Mod-Space', run: startCompletion },
      ]),
    ),
    keymap.of([...closeBracketsKeymap, ...historyKeymap, ...defaultKeymap]),
  ];
}

function takeFirst(view: EditorView): boolean {
  if (completionStatus(view.state) !== 'active') return false;
  if (acceptCompletion(view)) return true;
  for (const binding of completionKeymap) if (binding.key === 'ArrowDown') binding.run?.(view);
  return acceptCompletion(view);
}

/** Opens an editor for one formula in `parent`. It is fetched when a formula is first written. */
export function openFormulaEditor(options: FormulaEditorOptions): FormulaEditor {
  const view = new EditorView({
    parent: options.parent,
    root: options.root,
    state: EditorState.create({
      doc: options.text,
      selection: { anchor: options.selection.from, head: options.selection.to },
      extensions: [
        keysOf(options),
        history(),
        bracketMatching(),
        closeBrackets(),
        autocompletion({
          override: [completionsOf(options)],
          selectOnOpen: false,
          icons: false,
          activateOnTyping: true,
          // No key takes an offer by chance: Enter keeps unless one was gone to. Tab is heard as soon as they are seen.
          interactionDelay: 0,
          // Under the line stands what the function takes, which a narrow page has no room to show beside the offers.
          aboveCursor: matchMedia(NARROW).matches,
          maxRenderedOptions: 60,
        }),
        tooltips({ position: 'fixed' }),
        faultField,
        EditorView.lineWrapping,
        EditorView.contentAttributes.of({
          'aria-label': options.label,
          'aria-describedby': options.describedBy,
          autocapitalize: 'off',
          autocorrect: 'off',
          spellcheck: 'false',
        }),
        EditorView.updateListener.of((update) => {
          if (update.docChanged || update.selectionSet) {
            options.changed(update.state.doc.toString(), update.state.selection.main.head);
          }
        }),
        formulaEditorTheme,
      ],
    }),
  });
  return handleOf(view);
}

function handleOf(view: EditorView): FormulaEditor {
  const replace = (from: number, to: number, text: string): void => {
    view.dispatch({
      changes: { from, to, insert: text },
      selection: { anchor: from + text.length },
      userEvent: 'input',
    });
    view.focus();
  };
  return {
    get text() {
      return view.state.doc.toString();
    },
    get place() {
      return view.state.selection.main.head;
    },
    write: (text) => replace(0, view.state.doc.length, text),
    insert: (text) => replace(view.state.selection.main.from, view.state.selection.main.to, text),
    mark: (stretch) => {
      const most = view.state.doc.length;
      const within = stretch && { from: Math.min(stretch.from, most), to: Math.min(stretch.to, most) };
      view.dispatch({ effects: setFault.of(within) });
      view.contentDOM.setAttribute('aria-invalid', stretch === null ? 'false' : 'true');
    },
    focus: () => view.focus(),
    close: () => view.destroy(),
  };
}
