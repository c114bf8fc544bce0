const MOST = 4000;

/**
 * A function that keeps what it has answered: fields of a column repeat ('EUR', '10', '5 days'), and reading
 * the same text twice gives the same.
 *
 * @example const days = remembered((text) => readLeadDays(text, '', null));
 */
export function remembered<Answer>(read: (text: string) => Answer): (text: string) => Answer {
  const held = new Map<string, Answer>();
  return (text) => {
    const known = held.get(text);
    if (known !== undefined || held.has(text)) return known as Answer;
    const answer = read(text);
    if (held.size >= MOST) held.clear();
    held.set(text, answer);
    return answer;
  };
}
