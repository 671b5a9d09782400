// The calculator's desk: which sum lies on it, what was typed into each, and the answer to exactly
// that. Every change goes through it and on to the address.
import { aboutInput, fallbackOf, type Sum } from '#physics/index.ts';
import { findTopicSum } from '../topics.ts';
import type { Reckoner } from './reckoner.ts';
import { formatSumAddress, parseSumAddress } from './sum-address.ts';
import {
  addends,
  isComplete,
  readSheet,
  workSum,
  type Answer,
  type SheetReading,
  type Texts
} from './work-sum.ts';

interface SumDeskParts {
  readonly reckoner: Pick<Reckoner, 'workSum' | 'stop'>;
  /** Keeps the sum and what is typed in the address. */
  readonly write: (hash: string) => void;
  /** Runs something later; what it returns calls that off. */
  readonly later: (run: () => void, ms: number) => () => void;
}

/** Sums that take long enough to be felt: they are worked out beside the page, after a pause in typing. */
const longSums: ReadonlySet<string> = new Set(['bundle']);
const pauseMs = 180;

export class SumDesk {
  sum = $state.raw<Sum | null>(null);
  texts = $state.raw<Texts>({});
  answer = $state.raw<Answer>({ state: 'waiting' });
  /** What could not be opened of an address, in words. */
  notice = $state('');
  readonly reading = $derived<SheetReading | null>(
    this.sum === null ? null : readSheet(this.sum, this.texts)
  );
  readonly #parts: SumDeskParts;
  #typed = $state.raw<Readonly<Record<string, Texts>>>({});
  #callOff: () => void = () => undefined;

  constructor(parts: SumDeskParts) {
    this.#parts = parts;
  }

  /** Opens what an address says; the contents where it says nothing. */
  openHash(hash: string): void {
    const address = parseSumAddress(hash);
    const sum = address === null ? undefined : findTopicSum(address.id)?.sum;
    this.sum = sum ?? null;
    this.texts = {};
    this.notice = '';
    if (address !== null && sum === undefined)
      this.notice = `There is no sum called "${address.id}" here. Choose one of these.`;
    if (address !== null && sum !== undefined) {
      const names = Object.keys(sum.inputs.shape);
      const unknown = Object.keys(address.texts).filter((name) => !names.includes(name));
      const known = Object.entries(address.texts).filter(([name]) => names.includes(name));
      this.texts = Object.fromEntries(known);
      this.#typed = { ...this.#typed, [sum.id]: this.texts };
      if (unknown.length > 0)
        this.notice = `The link also gives ${unknown.join(', ')}, which this sum does not have: left out.`;
    }
    this.#work();
  }

  /** What somebody typed; an answer to other texts is gone with it. */
  type(name: string, text: string): void {
    this.#set({ ...this.texts, [name]: text });
  }

  /** Fills in the example in place of what was typed. */
  takeExample(): void {
    if (this.sum !== null) this.#set(exampleOf(this.sum));
  }

  clear(): void {
    this.#set({});
  }

  /** The address of a sum with what was typed into it before. */
  hashOf(id: string): string {
    return formatSumAddress({ id, texts: this.#typed[id] ?? {} });
  }

  #set(texts: Texts): void {
    if (this.sum === null) return;
    this.texts = texts;
    this.notice = '';
    this.#typed = { ...this.#typed, [this.sum.id]: texts };
    this.#parts.write(this.hashOf(this.sum.id));
    this.#work();
  }

  #work(): void {
    const { sum, texts, reading } = this;
    this.#callOff();
    this.#parts.reckoner.stop();
    if (sum === null || reading === null || !isComplete(reading)) {
      this.answer = { state: 'waiting' };
    } else if (longSums.has(sum.id)) {
      this.answer = { state: 'working' };
      this.#callOff = this.#parts.later(() => void this.#workBeside(sum, texts), pauseMs);
    } else {
      this.answer = workSum(sum.id, texts);
    }
  }

  async #workBeside(sum: Sum, texts: Texts): Promise<void> {
    const answer = await this.#parts.reckoner.workSum(sum.id, texts);
    if (this.sum === sum && this.texts === texts) this.answer = answer;
  }
}

/** Something to try a sum with: the example of every input that has to be given, or that adds to it. */
export function exampleOf({ id, inputs }: Sum): Texts {
  const names = Object.keys(inputs.shape);
  const needed = names.filter((name) => fallbackOf(inputs, name) === undefined);
  return Object.fromEntries(
    [...needed, ...(addends[id] ?? [])].map((name) => [name, aboutInput(inputs, name).example])
  );
}
