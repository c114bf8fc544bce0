/** `sw-drop-file`: a file that is no notebook was dropped on the page; who takes it in prevents the default. */
export interface DropFileDetail {
  readonly file: File;
}

/** What a dropped file is given to. */
export interface DropPage extends EventTarget {
  notice: string;
}

const isNotebook = (file: File): boolean => /\.json$/i.test(file.name) || file.type === 'application/json';

const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/**
 * Takes files that are dropped anywhere on the page, with a dashed sheet over it while one is dragged: a
 * notebook file is opened, any other is offered to the page as `sw-drop-file`.
 *
 * @returns what ends it
 */
export function watchDrops(page: DropPage, open: (file: File) => void): () => void {
  const sheet = document.createElement('div');
  sheet.className = 'drop-sheet';
  sheet.textContent = 'Drop the file to open it';
  const over = (event: DragEvent): void => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    if (!sheet.isConnected) document.body.append(sheet);
  };
  const leave = (event: DragEvent): void => {
    if (event.relatedTarget === null) sheet.remove();
  };
  const drop = (event: DragEvent): void => {
    if (!holdsFiles(event)) return;
    event.preventDefault();
    sheet.remove();
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    if (isNotebook(file)) open(file);
    else offer(page, file);
  };
  const listeners = [
    ['dragover', over],
    ['dragleave', leave],
    ['drop', drop],
  ] as const;
  for (const [name, listener] of listeners) addEventListener(name, listener);
  return () => {
    sheet.remove();
    for (const [name, listener] of listeners) removeEventListener(name, listener);
  };
}

function offer(page: DropPage, file: File): void {
  const event = new CustomEvent<DropFileDetail>('sw-drop-file', { detail: { file }, cancelable: true });
  if (page.dispatchEvent(event)) {
    page.notice = `${file.name} is no notebook file: those end in .sparewell.json. What was open stays open.`;
  }
}

declare global {
  interface HTMLElementEventMap {
    'sw-drop-file': CustomEvent<DropFileDetail>;
  }
}
