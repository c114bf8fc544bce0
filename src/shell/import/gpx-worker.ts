import { type GpxTable, gpxTable } from './gpx-table.ts';

/** What this file needs of the worker it runs in. */
interface WorkerScope {
  onmessage: ((event: { readonly data: { readonly text: string; readonly way: number } }) => void) | null;
  postMessage(message: GpxTable | { readonly refusal: string }): void;
}

const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data: { text, way } }) => scope.postMessage(gpxTable(text, way));
