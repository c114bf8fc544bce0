/** A page that is not shown is not painted: its figures are worked out without it, after this long, ms. */
const UNSEEN_MS = 250;

let ahead: Promise<void> | null = null;

/** Resolves once what was drawn is painted, or will not be for a while as nobody sees the page. */
export function painted(): Promise<void> {
  // Many ask in the turn of an edit.
  ahead ??= new Promise((resolve) => {
    // Counted from the end of the turn that draws, which on a slow device is itself longer than that.
    setTimeout(() => setTimeout(resolve, UNSEEN_MS));
    // A frame's own callback runs before its paint; a message that it sends is read after.
    requestAnimationFrame(() => {
      ahead = null;
      void breath().then(resolve);
    });
  });
  return ahead;
}

/** Resolves when the page has seen to what came in before. */
export function breath(): Promise<void> {
  return new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => {
      channel.port1.close();
      resolve();
    };
    channel.port2.postMessage(null);
  });
}
