// Works every row out, one after the other and beside the page, and keeps what came of it.
import { SvelteMap } from 'svelte/reactivity';
import type { ReferenceRow } from '#physics/reference/reference-row.ts';
import type { Reckoner, RowAnswer } from '../sums/reckoner.ts';
import { compare } from './compare.ts';

export class ProofWork {
  readonly rows: readonly ReferenceRow[];
  readonly answers = new SvelteMap<ReferenceRow, RowAnswer>();
  readonly isDone = $derived.by(() => this.answers.size === this.rows.length);
  /** Rows that are outside what they allow, or that could not be worked out. */
  readonly outside = $derived.by(() =>
    this.rows.filter((row) => {
      const answer = this.answers.get(row);
      return answer !== undefined && !(answer.ok && compare(row, answer.value).isWithin);
    })
  );

  constructor(rows: readonly ReferenceRow[]) {
    this.rows = rows;
  }

  /** All at once into the worker's queue, in the order of the page; the answers come one by one. */
  async run(reckoner: Pick<Reckoner, 'workRow'>): Promise<void> {
    await Promise.all(
      this.rows.map(async (row) => this.answers.set(row, await reckoner.workRow(row)))
    );
  }
}
