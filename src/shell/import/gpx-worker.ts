import { writeNumbersAs } from '../../formula/show.ts';
import { type GpxTable, gpxTable } from './gpx-table.ts';

/** One way of a GPX file, and the locale in which the page writes numbers. */
export interface GpxQuestion {
  readonly text: string;
  readonly way: number;
  readonly locale: string;
}

/** What this file needs of the worker it runs in. */
interface WorkerScope {
  onmessage: ((event: { readonly data: GpxQuestion }) => void) | null;
  postMessage(message: GpxTable | { readonly refusal: string }): void;
}

const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data: { text, way, locale } }) => {
  writeNumbersAs(locale);
  scope.postMessage(gpxTable(text, way));
};
