// Long sums off the page's own thread, so that typing never waits for a packing. A question that a
// later one makes pointless is given up by ending the worker in the middle of it.
import type { ReferenceRow } from '#physics/reference/reference-row.ts';
import { ourValue } from '#physics/reference/work-out.ts';
import { workSum, type Answer, type Texts } from './work-sum.ts';

export type Question =
  | { readonly kind: 'sum'; readonly id: string; readonly texts: Texts }
  | { readonly kind: 'row'; readonly row: ReferenceRow };

/** What the project makes of a reference row: its figure, or why there is none. */
export type RowAnswer =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly problem: string };

export function workRow(row: ReferenceRow): RowAnswer {
  try {
    return { ok: true, value: ourValue(row) };
  } catch (error) {
    return { ok: false, problem: error instanceof Error ? error.message : String(error) };
  }
}

export interface Reckoner {
  readonly workSum: (id: string, texts: Texts) => Promise<Answer>;
  readonly workRow: (row: ReferenceRow) => Promise<RowAnswer>;
  /** Gives up what is being worked out; its promises never settle. */
  readonly stop: () => void;
}

/** A reckoner over a worker that starts with the first question. Where the browser refuses to start
 *  one, the page's own thread does the work. */
export function createReckoner(startWorker: () => Worker): Reckoner {
  let worker: Worker | null = null;
  let tickets = 0;
  const waiting = new Map<number, { question: Question; answer: (value: unknown) => void }>();

  const takeOver = (): void => {
    const left = [...waiting.values()];
    waiting.clear();
    for (const { question, answer } of left) answer(workHere(question));
  };

  const start = (): Worker => {
    const started = startWorker();
    started.addEventListener(
      'message',
      ({ data }: MessageEvent<{ ticket: number; answer: unknown }>) => {
        const asked = waiting.get(data.ticket);
        waiting.delete(data.ticket);
        asked?.answer(data.answer);
      }
    );
    started.addEventListener('error', takeOver);
    return started;
  };

  const ask = <T>(question: Question): Promise<T> =>
    new Promise((resolve) => {
      tickets += 1;
      waiting.set(tickets, { question, answer: (value) => resolve(value as T) });
      worker ??= start();
      worker.postMessage({ ticket: tickets, question });
    });

  return {
    workSum: (id, texts) => ask<Answer>({ kind: 'sum', id, texts: { ...texts } }),
    workRow: (row) => ask<RowAnswer>({ kind: 'row', row }),
    stop: () => {
      worker?.terminate();
      worker = null;
      waiting.clear();
    }
  };
}

/** The answer to a question, here and now. */
export const workHere = (question: Question): Answer | RowAnswer =>
  question.kind === 'sum' ? workSum(question.id, question.texts) : workRow(question.row);
