import { CallChoices } from '../../cells/calls/call-choices.ts';
import { PictureCellElement } from '../../cells/picture/picture-cell.ts';
import { CallWhyElement } from '../../cells/plan/call-why.ts';
import { FrontierElement } from '../../cells/plan/frontier.ts';
import { PlanCellElement } from '../../cells/plan/plan-cell.ts';
import { PrepCellElement } from '../../cells/prep/prep-cell.ts';
import { FormulaLine } from '../../cells/shared/formula-line.ts';
import { BlockBar } from '../../cells/shared/table-block-bar.ts';
import { ColumnForm } from '../../cells/shared/table-column-form.ts';
import { ColumnSettings } from '../../cells/shared/table-column-settings.ts';
import { LensLine } from '../../cells/shared/table-lens-line.ts';
import { ValueSettings } from '../../cells/value/value-settings.ts';
import { EmptyNotebook } from './empty-notebook.ts';
import { NewNotebookDialog } from './new-notebook-dialog.ts';
import { CardKey } from './panel/card-key.ts';
import { CardSlip } from './panel/card-slip.ts';
import { FigureSlip } from './panel/figure-slip.ts';
import { RoadLog } from './panel/road-log.ts';
import { SidePanel } from './panel/side-panel.ts';
import { WalkGuide } from './walk/walk-guide.ts';

/*
 * What a notebook can be read and edited without: it is fetched as soon as the first one stands on the page,
 * so that the first visit does not wait for it. Its elements wake where they already stand.
 */
customElements.define('sw-value-settings', ValueSettings);
customElements.define('sw-column-settings', ColumnSettings);
customElements.define('sw-column-form', ColumnForm);
customElements.define('sw-formula-line', FormulaLine);
customElements.define('sw-block-bar', BlockBar);
customElements.define('sw-table-lens', LensLine);
customElements.define('sw-call-choices', CallChoices);
customElements.define('sw-plan-cell', PlanCellElement);
customElements.define('sw-call-why', CallWhyElement);
customElements.define('sw-frontier', FrontierElement);
customElements.define('sw-picture-cell', PictureCellElement);
customElements.define('sw-prep-cell', PrepCellElement);
customElements.define('sw-card-key', CardKey);
customElements.define('sw-card-slip', CardSlip);
customElements.define('sw-figure-slip', FigureSlip);
customElements.define('sw-road-log', RoadLog);
customElements.define('sw-side-panel', SidePanel);
customElements.define('sw-empty-notebook', EmptyNotebook);
customElements.define('sw-new-notebook-dialog', NewNotebookDialog);
customElements.define('sw-walk-guide', WalkGuide);
