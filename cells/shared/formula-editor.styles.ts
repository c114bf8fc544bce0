import { EditorView } from '@codemirror/view';

/** How the editor looks: ink on the pen's wash, its offers as a small sheet of paper. */
export const formulaEditorTheme = EditorView.theme({
  '&': { background: 'none', color: 'var(--pen)', fontSize: 'var(--t-4)' },
  '&.cm-focused': { outline: 'none' },
  '.cm-scroller': { fontFamily: 'var(--face-raw)', lineHeight: '1.5' },
  '.cm-content': { padding: '7px 0 8px', minHeight: '40px', caretColor: 'var(--pen)' },
  '.cm-line': { padding: '0 10px' },
  '.cm-cursor': { borderLeftColor: 'var(--pen)', borderLeftWidth: '2px' },
  '&.cm-focused .cm-matchingBracket': {
    background: 'none',
    borderBottom: '2px solid var(--pen)',
  },
  '&.cm-focused .cm-nonmatchingBracket': { background: 'none', borderBottom: '2px solid var(--fault)' },
  mark: {
    color: 'inherit',
    background: 'none',
    textDecoration: 'underline wavy 1.5px var(--fault)',
    textUnderlineOffset: '4px',
    textDecorationSkipInk: 'none',
  },
  '.cm-tooltip': {
    background: 'var(--sheet)',
    color: 'var(--ink)',
    border: '1px solid var(--rule-2)',
    borderTop: '3px solid var(--ink)',
    borderRadius: 'var(--r-2)',
    boxShadow: 'var(--lift-2)',
    zIndex: '60',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul': {
    fontFamily: 'var(--face-read)',
    maxHeight: 'min(264px, 30vh)',
    maxWidth: 'min(440px, calc(100vw - 24px))',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li': {
    display: 'flex',
    gap: '12px',
    alignItems: 'baseline',
    minHeight: '26px',
    padding: '3px 10px',
    fontSize: 'var(--t-3)',
  },
  '.cm-tooltip.cm-tooltip-autocomplete > ul > li[aria-selected]': {
    background: 'var(--ink)',
    color: 'var(--sheet)',
  },
  '.cm-completionLabel': { fontFamily: 'var(--face-raw)' },
  '.cm-completionMatchedText': { textDecoration: 'none', fontWeight: '700' },
  '.cm-completionDetail': {
    marginLeft: 'auto',
    fontStyle: 'normal',
    fontSize: 'var(--t-2)',
    color: 'var(--ink-2)',
    overflow: 'hidden',
    textOverflow: 'ellipsis',
  },
  'li[aria-selected] .cm-completionDetail': { color: 'inherit' },
  '.cm-tooltip.cm-completionInfo': {
    padding: '7px 10px 8px',
    maxWidth: '300px',
    fontFamily: 'var(--face-read)',
    fontSize: 'var(--t-2)',
    lineHeight: '1.4',
  },
  '@media (pointer: coarse)': {
    '.cm-tooltip.cm-tooltip-autocomplete > ul > li': { minHeight: 'var(--touch)', alignItems: 'center' },
  },
});
