// The cutting, a few milliseconds at a time: the page stays alive, shows how far it is, and can stop it
// with the best so far. A later plan takes the place of an earlier one.
import {
  chanceFrom,
  cutListInSteps,
  type CutList,
  type CutProgress,
  type Plan
} from '#plan/index.ts';

/** What drives it: a clock in milliseconds, and something that calls back when the page has drawn. */
export interface CutDriver {
  readonly now: () => number;
  readonly later: (run: () => void) => void;
}

const sliceMs = 10;
/** Of chance: the same list comes out of the same document, here and on the command line. */
const seed = 1;

export class CutWork {
  /** Null while nothing is being cut. */
  progress = $state.raw<CutProgress | null>(null);
  /** The last list that was finished, with the plan that it belongs to. */
  done = $state.raw<{ readonly plan: Plan; readonly list: CutList } | null>(null);
  #asked: Plan | null = null;
  #ticket = 0;
  #isStopped = false;
  readonly #driver: CutDriver;

  constructor(driver: CutDriver) {
    this.#driver = driver;
  }

  /** Begins on a plan, unless it is the one that is being cut or was cut last. */
  cut(plan: Plan): void {
    if (this.#asked === plan) return;
    this.#asked = plan;
    this.#ticket += 1;
    this.#isStopped = false;
    const ticket = this.#ticket;
    const steps = cutListInSteps(plan, { chance: chanceFrom(seed) });
    const slice = (): void => {
      if (ticket !== this.#ticket) return;
      const until = this.#driver.now() + sliceMs;
      let step = steps.next(!this.#isStopped);
      while (step.done !== true && (this.#isStopped || this.#driver.now() < until))
        step = steps.next(!this.#isStopped);
      if (step.done === true) {
        this.done = { plan, list: step.value };
        this.progress = null;
      } else {
        this.progress = step.value;
        this.#driver.later(slice);
      }
    };
    slice();
  }

  /** Enough: the best so far is the list. */
  stop(): void {
    this.#isStopped = true;
  }

  /** Cuts again from the start, to the end. */
  again(plan: Plan): void {
    this.#asked = null;
    this.cut(plan);
  }
}
