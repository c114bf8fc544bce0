import type { Session } from '../session/session.ts';
import { offerVersions } from './offer-versions.ts';
import { SecondHome } from './second-home.ts';
import { Slips } from './slips.ts';

/** What the page does besides the notebook, once that stands: new versions, and the file on disk. */
export class StandBy {
  readonly #home: SecondHome;
  #session: Session;

  /** @param onFileName hears the name of the file that is kept current, '' for none */
  constructor(session: Session, onFileName: (name: string) => void) {
    const slips = new Slips();
    document.body.append(slips);
    this.#session = session;
    this.#home = new SecondHome(slips, onFileName);
    void this.#home.watch(session);
    offerVersions(slips, async () => (await this.#session.keeper.flush()).kind !== 'failed');
  }

  watch(session: Session): void {
    this.#session = session;
    void this.#home.watch(session);
  }

  /** Has the user choose the file that is kept current, or hands the notebook out as a file. */
  chooseFile(): void {
    void this.#home.choose();
  }
}
