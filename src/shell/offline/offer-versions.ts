import { followVersions, type VersionNews } from './follow-versions.ts';
import type { Slips } from './slips.ts';

/** Keeps all edits of the open notebook; false if they could not be kept. */
export type KeepAll = () => Promise<boolean>;

const WORDS: Readonly<Record<VersionNews, { readonly says: string; readonly take: string }>> = {
  ready: { says: 'A new version is ready. Nothing changes until you take it.', take: 'Take it' },
  'taken-elsewhere': {
    says: 'Another tab has taken a new version. This one goes on with the old until you load it again.',
    take: 'Load again',
  },
};

const NOT_KEPT =
  'The edits could not be kept on this device, so the page was not loaded again. Save the notebook as a file first.';

/** Keeps the app for use without a network, and offers new versions. */
export function offerVersions(slips: Slips, keepAll: KeepAll): void {
  const offer = (news: VersionNews, says = WORDS[news].says): void =>
    slips.show('version', {
      says,
      actions: [{ words: WORDS[news].take, run: () => void take(news) }],
      away: 'Later',
    });
  const versions = followVersions((news) => offer(news));
  const take = async (news: VersionNews): Promise<void> => {
    if (!(await keepAll())) offer(news, NOT_KEPT);
    else if (news === 'ready') versions?.take();
    else location.reload();
  };
}
