import type { PrepReader } from './chosen-calls.ts';

/** How a part is fitted and where its spare travels. */
export interface Handling {
  /** What has to come off for it, '' for nothing worth sharing. */
  readonly opens: string;
  /** Jobs are done from the lowest turn on. */
  readonly turn: number;
  readonly hint: string;
  readonly bag: string;
  readonly carrier: string;
}

/** Handling by part. */
export function handlingOf(reader: PrepReader): ReadonlyMap<string, Handling> {
  const byPart = new Map<string, Handling>();
  for (let row = 0; row < reader.rows('job_part'); row++) {
    const turn = reader.number('job_turn', row);
    byPart.set(reader.text('job_part', row), {
      opens: reader.text('job_opens', row),
      turn: Number.isNaN(turn) ? Number.MAX_VALUE : turn,
      hint: reader.text('job_hint', row),
      bag: reader.text('job_bag', row),
      carrier: reader.text('job_carrier', row),
    });
  }
  return byPart;
}
