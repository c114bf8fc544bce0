import { plainProse } from './plain-prose.ts';

type NoteHtml = typeof import('./note-html.ts').noteHtml;

let parser: NoteHtml | null = null;
let fetching: Promise<unknown> | null = null;

/**
 * A note's text as HTML that is fit to be put in the page; null where it is shown as it was written: it is too long or
 * too deep to be set, or the parser is still being fetched or cannot be.
 *
 * @param fetched is called once the parser is there, if this text waits for it
 */
export function noteProse(text: string, fetched: () => void): string | null {
  const plain = plainProse(text);
  if (plain !== null || parser !== null) return plain ?? parser?.(text) ?? null;
  fetching ??= import('./note-html.ts').then(
    ({ noteHtml }) => {
      parser = noteHtml;
    },
    () => {
      // Without a network on the first visit; the next note to be drawn asks again.
      fetching = null;
    },
  );
  void fetching.then(() => {
    if (parser !== null) fetched();
  });
  return null;
}
