import { describe, expect, it } from 'vitest';
import type { ChassisDocument } from '#document/index.ts';
import {
  KeptChassis,
  latestMs,
  settleMs,
  type ChassisStore,
  type KeptClock
} from '#editor/files/kept-chassis.svelte.ts';
import { chassis } from '../helpers/chassis.ts';

const documentOf = (title: string): ChassisDocument =>
  chassis(title).unit('Main chassis').tube('V1', '6CG7').build();

class HandClock implements KeptClock {
  time = 0;
  #due: { at: number; run: () => void }[] = [];
  readonly now = (): number => this.time;
  readonly later = (run: () => void, ms: number): (() => void) => {
    const entry = { at: this.time + ms, run };
    this.#due.push(entry);
    return () => {
      this.#due = this.#due.filter((other) => other !== entry);
    };
  };
  async pass(ms: number): Promise<void> {
    this.time += ms;
    const due = this.#due.filter(({ at }) => at <= this.time);
    this.#due = this.#due.filter(({ at }) => at > this.time);
    for (const { run } of due) run();
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
}

const buildStore = () => {
  const saved: ChassisDocument[] = [];
  let fault: string | null = null;
  const store: ChassisStore = {
    save: async (document) => {
      if (fault !== null) throw new Error(fault);
      saved.push(document);
    },
    load: async (id) => saved.findLast((document) => document.id === id) ?? null
  };
  return {
    store,
    saved,
    breakWith: (words: string | null): void => {
      fault = words;
    }
  };
};

const keptWith = (store: ChassisStore, clock: KeptClock): KeptChassis =>
  new KeptChassis({
    store,
    clock,
    seatHost: null,
    show: () => undefined,
    askToPersist: async () => false
  });

describe('what the browser keeps', () => {
  it('writes the last of several quick edits, once', async () => {
    const clock = new HandClock();
    const { store, saved } = buildStore();
    const kept = keptWith(store, clock);
    kept.follow(documentOf('first'), false);
    const [second, third] = [documentOf('second'), documentOf('third')];
    kept.keep(second);
    await clock.pass(settleMs - 1);
    kept.keep(third);
    expect(kept.words).toBe('keeping…');
    await clock.pass(settleMs - 1);
    expect(saved).toEqual([]);
    await clock.pass(1);
    expect(saved).toEqual([third]);
    expect(kept.words).toBe('kept in this browser');
  });

  it('is never more than a second behind, however fast the edits follow each other', async () => {
    const clock = new HandClock();
    const { store, saved } = buildStore();
    const kept = keptWith(store, clock);
    kept.follow(documentOf('first'), false);
    const times: number[] = [];
    for (let turn = 0; turn < 100; turn++) {
      kept.keep(documentOf(`edit ${turn}`));
      await clock.pass(50);
      if (saved.length > times.length) times.push(clock.time);
    }
    expect(latestMs).toBeLessThan(1000);
    const gaps = times.map((time, index) => time - (times[index - 1] ?? 0));
    expect(times.length).toBeGreaterThan(5);
    expect(Math.max(...gaps)).toBeLessThanOrEqual(latestMs + 50);
  });

  it('does not keep a demonstration that nobody changed', async () => {
    const clock = new HandClock();
    const { store, saved } = buildStore();
    const kept = keptWith(store, clock);
    const shown = documentOf('demonstration');
    kept.follow(shown, false);
    kept.keep(shown);
    await clock.pass(10 * settleMs);
    expect(saved).toEqual([]);
    expect(kept.words).toBe('');
  });

  it('writes what waits before another document is followed', async () => {
    const clock = new HandClock();
    const { store, saved } = buildStore();
    const kept = keptWith(store, clock);
    kept.follow(documentOf('first'), false);
    const edited = documentOf('first, edited');
    kept.keep(edited);
    const other = documentOf('other');
    kept.follow(other);
    await clock.pass(settleMs);
    expect(saved).toEqual([edited, other]);
  });

  it('says plainly when something could not be kept, and keeps it at the next try', async () => {
    const clock = new HandClock();
    const { store, saved, breakWith } = buildStore();
    const kept = keptWith(store, clock);
    breakWith('the disk is full');
    const first = documentOf('first');
    kept.follow(first);
    await clock.pass(settleMs);
    expect(kept.words).toBe('not kept');
    expect(kept.problem).toBe('the disk is full');
    expect(kept.isKept).toBe(false);
    breakWith(null);
    await kept.tryAgain();
    expect(saved).toEqual([first]);
    expect(kept.problem).toBeNull();
    expect(kept.words).toBe('kept in this browser');
  });

  it('counts what is in no file, and asks once whether the browser keeps its word', async () => {
    const clock = new HandClock();
    const { store } = buildStore();
    let asked = 0;
    const kept = new KeptChassis({
      store,
      clock,
      seatHost: null,
      show: () => undefined,
      askToPersist: async () => {
        asked += 1;
        return false;
      }
    });
    kept.follow(documentOf('first'), false);
    for (const title of ['second', 'third']) {
      kept.keep(documentOf(title));
      await clock.pass(settleMs);
    }
    expect([kept.editsSinceFile, kept.isPromised, asked]).toEqual([2, false, 1]);
    kept.filed();
    expect(kept.editsSinceFile).toBe(0);
  });
});
