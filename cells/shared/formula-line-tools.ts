import type { openFormulaEditor } from './formula-editor.ts';
import type { offersAt } from './formula-editor-words.ts';
import type { callHelp } from './formula-line-help.ts';

/** What turns the plain field of a formula into an editor. */
export interface EditorTools {
  readonly openFormulaEditor: typeof openFormulaEditor;
  readonly offersAt: typeof offersAt;
  readonly callHelp: typeof callHelp;
}

/**
 * Fetches the editor, which the first visit does without.
 *
 * @throws when a file cannot be had
 */
export async function fetchEditorTools(): Promise<EditorTools> {
  const [editor, words, help] = await Promise.all([
    import('./formula-editor.ts'),
    import('./formula-editor-words.ts'),
    import('./formula-line-help.ts'),
  ]);
  return { ...editor, ...words, ...help };
}
