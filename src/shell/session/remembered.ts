const KEY = 'sparewell-notebooks';
/** More than this are not looked for; the one kept last comes first. */
const MOST_NOTEBOOKS = 100;

/** A notebook that was kept on this device, and should be there on the next visit. */
export interface RememberedNotebook {
  readonly id: string;
  readonly title: string;
}

/**
 * The notebooks that should be kept on this device, the one open last first. Written down apart from the
 * notebooks themselves, so that a device that has lost them can be told from one that never had any.
 */
export function rememberedNotebooks(): readonly RememberedNotebook[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? '[]');
    return Array.isArray(found) ? found.filter(isRemembered) : [];
  } catch {
    return [];
  }
}

/** Puts a notebook first: to be called once it is kept, not before. */
export function rememberNotebook(notebook: RememberedNotebook): void {
  const { id, title } = notebook;
  const others = rememberedNotebooks().filter((one) => one.id !== id);
  write([{ id, title }, ...others]);
}

/** Takes notebooks off the list: they were removed, or it was told that they are lost. */
export function forgetNotebooks(ids: readonly string[]): void {
  write(rememberedNotebooks().filter((one) => !ids.includes(one.id)));
}

function write(notebooks: readonly RememberedNotebook[]): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(notebooks.slice(0, MOST_NOTEBOOKS)));
  } catch {
    // A closed storage only loses what should be there; the notebooks are kept elsewhere.
  }
}

function isRemembered(found: unknown): found is RememberedNotebook {
  const { id, title } = (found ?? {}) as Partial<RememberedNotebook>;
  return typeof id === 'string' && typeof title === 'string';
}
