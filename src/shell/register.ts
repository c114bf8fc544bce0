import { HeadBar } from './head/head-bar.ts';
import { TallyStrip } from './head/tally-strip.ts';
import { RoadView } from './road/road-view.ts';
import { SparewellApp } from './sparewell-app.ts';

customElements.define('sw-head-bar', HeadBar);
customElements.define('sw-tally-strip', TallyStrip);
customElements.define('sw-road', RoadView);
customElements.define('sparewell-app', SparewellApp);
