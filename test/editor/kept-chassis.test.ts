import { describe, expect, it } from 'vitest';
import type { ChassisDocument } from '#document/index.ts';
import {
  KeptChassis,
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
    load: async (id) => saved.findLast((document) => document.id === id) ?? null,
    list: async () =>
      saved
        .map(({ id, identity }, index) => ({ id, title: identity.title, savedAt: index }))
        .reverse(),
    remove: async (id) => {
      saved.splice(0, saved.length, ...saved.filter((document) => document.id !== id));
    }
  };
  return {
    store,
    saved,
    breakWith: (words: string | null): void => {
      fault = words;
    }
  };
};

describe('what the browser keeps', () => {
  it('writes the last of several quick edits, once', async () => {
    const clock = new HandClock();
    const { store, saved } = buildStore();
    const kept = new KeptChassis(store, clock);
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

  it('does not keep a demonstration that nobody changed', async () => {
    const clock = new HandClock();
    const { store, saved } = buildStore();
    const kept = new KeptChassis(store, clock);
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
    const kept = new KeptChassis(store, clock);
    kept.follow(documentOf('first'), false);
    const edited = documentOf('first, edited');
    kept.keep(edited);
    const other = documentOf('other');
    kept.follow(other);
    await clock.pass(settleMs);
    expect(saved).toEqual([edited, other]);
  });

  it('says plainly when something could not be kept, and is well again after', async () => {
    const clock = new HandClock();
    const { store, breakWith } = buildStore();
    const kept = new KeptChassis(store, clock);
    breakWith('the disk is full');
    kept.follow(documentOf('first'));
    await clock.pass(settleMs);
    expect(kept.words).toBe('not kept: the disk is full');
    breakWith(null);
    kept.keep(documentOf('second'));
    await clock.pass(settleMs);
    expect(kept.words).toBe('kept in this browser');
  });

  it('lists the newest first and forgets what is removed', async () => {
    const clock = new HandClock();
    const { store } = buildStore();
    const kept = new KeptChassis(store, clock);
    for (const title of ['old', 'new']) {
      kept.follow({ ...documentOf(title), id: `d${title}` });
      await clock.pass(settleMs);
    }
    await kept.refresh();
    expect(kept.list.map(({ title }) => title)).toEqual(['new', 'old']);
    await kept.remove('dnew');
    expect(kept.list.map(({ title }) => title)).toEqual(['old']);
    expect((await kept.read('dold'))?.identity.title).toBe('old');
  });
});
