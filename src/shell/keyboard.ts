/** What a key asks of the page. */
export type Command =
  | 'undo'
  | 'redo'
  | 'next-stop'
  | 'previous-stop'
  | 'enter-card'
  | 'leave-card'
  | 'move-up'
  | 'move-down'
  | 'to-feeder'
  | 'to-reader'
  | 'next-fault'
  | 'panel';

export interface KeyContext {
  /** Someone is writing in a field: single letters and Escape are the field's own. */
  readonly writing: boolean;
  /** The keyboard stands on a card as a whole, not on something inside it. */
  readonly onStop: boolean;
  /** The keyboard stands on or inside a card. */
  readonly inRoad: boolean;
  /** The user has switched single letters off. */
  readonly noLetters: boolean;
}

export type Key = Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/**
 * The command of a key, or null when the key is not the page's.
 *
 * @example commandOf({ key: 'z', ctrlKey: true, ... }, { writing: false, ... }) // 'undo'
 */
export function commandOf(key: Key, context: KeyContext): Command | null {
  if ((key.ctrlKey || key.metaKey) && !key.altKey) return context.writing ? null : withControl(key);
  if (key.altKey) return context.inRoad && !context.writing ? withAlt(key) : null;
  if (context.onStop) {
    if (key.key === 'Tab') return key.shiftKey ? 'previous-stop' : 'next-stop';
    if (key.key === 'Enter') return 'enter-card';
  }
  if (key.key === 'Escape') return context.writing && !context.inRoad ? null : 'leave-card';
  if (context.writing || context.noLetters) return null;
  return letter(key.key);
}

function withControl(key: Key): Command | null {
  const letterTyped = key.key.toLowerCase();
  if (letterTyped === 'z') return key.shiftKey ? 'redo' : 'undo';
  return letterTyped === 'y' && !key.shiftKey ? 'redo' : null;
}

function withAlt(key: Key): Command | null {
  if (key.key === 'ArrowUp') return 'move-up';
  return key.key === 'ArrowDown' ? 'move-down' : null;
}

function letter(key: string): Command | null {
  switch (key) {
    case '[':
      return 'to-feeder';
    case ']':
      return 'to-reader';
    case 'f':
    case 'F':
      return 'next-fault';
    case 'p':
    case 'P':
      return 'panel';
    default:
      return null;
  }
}
