// Routes that nobody gave: along the ways that are there already, high voltages apart. What a hand placed
// and what must stay as it is are not looked at for change, only for company.
import type { Id, Support, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { findTerminalPlace, stepMm, type Place3 } from './place.ts';
import type { Study } from './types.ts';

export interface PlannedRoute {
  readonly wire: Id;
  /** In order from the wire's first end. */
  readonly supports: readonly Id[];
}

/** From here on a wire keeps to a way of its own kind, and from there on to none: it is run by itself
 *  through the air. Peak volts to chassis; common practice, no source. */
const apartFromV = 1000;
const aloneFromV = 5000;

/** What a stretch costs for each of its millimetres. Beside wires that run there it is held already; a
 *  lead that hangs free wants a support. Chosen for the look of it. */
const cost = { shared: 0.6, held: 1, lead: 1.15, free: 1.35 } as const;
/** A stretch of this length costs double: wires want to be held on the way, mm. */
const sagMm = 400;
const stretch = (mm: number, rate: number): number => mm * rate * (1 + mm / sagMm);
/** No support is worth more than this way round: so many times the straight line, and so much, mm. */
const detour = { times: 1.7, mm: 25 } as const;

type Company = 'ordinary' | 'high' | 'alone';

/** With whom a wire may run. One of which nothing is known runs among the ordinary ones, as it was
 *  found, and never with high voltages. */
export const companyOf = (study: Study, wire: Id): Company => {
  const made = study.wires.get(wire)?.stress?.made;
  if (!made) return 'ordinary';
  const peakV = Math.abs(made.dcV) + Math.SQRT2 * Math.abs(made.acV) + Math.abs(made.pulseV);
  return peakV >= aloneFromV ? 'alone' : peakV >= apartFromV ? 'high' : 'ordinary';
};

/** A hand placed it, or it must stay as it is, or it is in its new place already. */
export const isHeldFast = ({ route, critical, isPart, cable, state }: Wire): boolean =>
  route?.by === 'hand' ||
  critical?.keepLength === true ||
  critical?.keepPlace === true ||
  critical?.keepShort === true ||
  isPart !== undefined ||
  cable !== undefined ||
  state === 'fitted' ||
  state === 'checked';

interface Stop extends Place3 {
  readonly id: Id;
}

const stopOf = ({ id, place, heightMm }: Support): Stop => ({
  id,
  x: place.x,
  y: place.y,
  heightMm: heightMm ?? null
});

const linkKey = (a: Id, b: Id): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/** Who is at which support, and which stretches are in use. */
class Ways {
  private readonly at = new Map<Id, Set<Company>>();
  private readonly links = new Set<string>();

  add(supports: readonly Id[], company: Company): void {
    supports.forEach((id, n) => {
      this.at.set(id, (this.at.get(id) ?? new Set()).add(company));
      const before = supports[n - 1];
      if (before !== undefined) this.links.add(linkKey(before, id));
    });
  }

  admits(support: Id, company: Company): boolean {
    const there = this.at.get(support);
    return there === undefined || [...there].every((other) => other === company);
  }

  isUsed(a: Id, b: Id): boolean {
    return this.links.has(linkKey(a, b));
  }
}

interface Job {
  readonly wire: Wire;
  readonly from: Place3;
  readonly to: Place3;
  readonly stops: readonly Stop[];
  readonly company: Company;
}

/** The cheapest order of supports between two places; none where the straight way is. */
const cheapest = ({ from, to, stops, company }: Job, ways: Ways): readonly Id[] => {
  const open = stops.filter(({ id }) => ways.admits(id, company));
  const straight = stepMm(from, to);
  const reached = open.map((stop) => ({
    stop,
    costMm: stretch(stepMm(from, stop), cost.lead),
    lengthMm: stepMm(from, stop),
    before: -1,
    isDone: false
  }));
  let best = { costMm: stretch(straight, cost.free), at: -1 };
  for (;;) {
    let next = -1;
    reached.forEach(({ isDone, costMm }, n) => {
      if (!isDone && (next < 0 || costMm < (reached[next]?.costMm ?? Infinity))) next = n;
    });
    const here = reached[next];
    if (!here || here.costMm >= best.costMm) break;
    here.isDone = true;
    const lengthMm = here.lengthMm + stepMm(here.stop, to);
    const costMm = here.costMm + stretch(stepMm(here.stop, to), cost.lead);
    const isNear = lengthMm <= straight * detour.times + detour.mm;
    if (isNear && costMm < best.costMm) best = { costMm, at: next };
    for (const there of reached) {
      if (there.isDone) continue;
      const step = stepMm(here.stop, there.stop);
      const rate = ways.isUsed(here.stop.id, there.stop.id) ? cost.shared : cost.held;
      const costMm = here.costMm + stretch(step, rate);
      if (costMm >= there.costMm) continue;
      there.costMm = costMm;
      there.lengthMm = here.lengthMm + step;
      there.before = next;
    }
  }
  const supports: Id[] = [];
  for (let at = best.at; at >= 0; at = reached[at]?.before ?? -1) {
    const stop = reached[at]?.stop;
    if (stop) supports.unshift(stop.id);
  }
  return supports;
};

/** The routes that are to change, longest wires first. Wires that a hand placed, that are marked critical,
 *  that are parts themselves, that lie in a cable or are fitted already are never among them, and
 *  neither are wires whose ends are not both placed in one unit. No support gets wires of 1 kV
 *  and more beside others; from 5 kV on a wire gets none.
 *  @param only the wires that may change; all of them where left out */
export function planRoutes(study: Study, only?: ReadonlySet<Id>): readonly PlannedRoute[] {
  const { document, index } = study;
  const supports = Object.values(document.supports);
  const ways = new Ways();
  const jobs: Job[] = [];
  for (const wire of index.wires) {
    const company = companyOf(study, wire.id);
    const job = isHeldFast(wire) || only?.has(wire.id) === false ? null : jobOf(wire, company);
    if (job) jobs.push(job);
    else ways.add(knownSupports(wire), company);
  }
  const longest = jobs.toSorted((a, b) => stepMm(b.from, b.to) - stepMm(a.from, a.to));
  return longest.flatMap((job): PlannedRoute[] => {
    const { wire, company } = job;
    const planned = company === 'alone' ? [] : cheapest(job, ways);
    ways.add(planned, company);
    const isSame = planned.join(' ') === (wire.route?.supports ?? []).join(' ');
    return isSame ? [] : [{ wire: wire.id, supports: planned }];
  });

  function jobOf(wire: Wire, company: Company): Job | null {
    const [from, to] = [index.findAt(wire.from), index.findAt(wire.to)];
    if (!from || !to || from.key === to.key || from.part.unit !== to.part.unit) return null;
    const [start, end] = [from, to].map((at) => findTerminalPlace(at.part, at.terminal));
    if (!start || !end) return null;
    const stops = supports.flatMap((support) =>
      support.unit === from.part.unit ? [stopOf(support)] : []
    );
    return { wire, from: start, to: end, stops, company };
  }

  function knownSupports({ route }: Wire): readonly Id[] {
    return (route?.supports ?? []).filter((id) => findElement(document.supports, id));
  }
}
