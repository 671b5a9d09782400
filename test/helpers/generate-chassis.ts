// Made-up chassis of any size for benchmarks and for tests of the drawing: the same seed gives the
// same document. They are denser and duller than real sets, which is what a layout is tried with.
import type { ChassisDocument } from '#document/index.ts';
import { chassis, type ChassisBuilder } from './chassis.ts';
import type { WireOptions } from './chassis-options.ts';

/** Chance from a seed (mulberry32): 0 up to 1. */
export const seeded = (seed: number): (() => number) => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
};

interface Stage {
  readonly tube: string;
  readonly pins: number;
  readonly strips: readonly {
    readonly name: string;
    readonly lugs: number;
    readonly foot: number;
  }[];
  readonly transformer: string | null;
}

interface TubeRow {
  readonly type: string;
  readonly pins: number;
  readonly heater: readonly [number, number];
  readonly grid: number;
  readonly plate: number;
  readonly screen: number;
  readonly cathode: number;
}

const tubes: readonly TubeRow[] = [
  { type: '6AU6A', pins: 7, heater: [3, 4], grid: 1, plate: 5, screen: 6, cathode: 7 },
  { type: '6CG7', pins: 9, heater: [4, 5], grid: 2, plate: 1, screen: 6, cathode: 3 },
  { type: '6AW8A', pins: 9, heater: [4, 5], grid: 2, plate: 3, screen: 8, cathode: 1 },
  { type: '6SN7GTB', pins: 8, heater: [7, 8], grid: 1, plate: 2, screen: 5, cathode: 3 },
  { type: '6V6GT', pins: 8, heater: [2, 7], grid: 5, plate: 3, screen: 4, cathode: 8 }
];

const outside = [
  { unit: 'Tuner', stages: 2, plug: 1 },
  { unit: 'Printed board', stages: 3, plug: 2 }
] as const;

/** Builds one chassis while wires are counted against the number asked for. */
class Maker {
  readonly build: ChassisBuilder;
  readonly chance: () => number;
  private readonly wanted: number;
  private count = 0;
  private grounds = 0;
  private tubeCount = 0;
  private stripCount = 0;
  private transformerCount = 0;
  private readonly components: Record<'R' | 'C', number> = { R: 0, C: 0 };
  private readonly rows = new Map<string, TubeRow>();
  /** Terminals that wires join, and what they are joined to; grounds, rails and signals stay apart. */
  private readonly netOf = new Map<string, Set<string>>();

  constructor(seed: number, wanted: number) {
    this.chance = seeded(seed);
    this.wanted = wanted;
    this.build = chassis({
      title: `Generated set, ${wanted} wires`,
      chassis: `G-${wanted}`,
      run: String(seed),
      tracedBy: 'generator'
    });
  }

  get isFull(): boolean {
    return this.count >= this.wanted;
  }

  pick(count: number): number {
    return Math.floor(this.chance() * count);
  }

  oneOf<T>(list: readonly T[]): T {
    return list[this.pick(list.length)] as T;
  }

  rowOf(tube: string): TubeRow {
    return this.rows.get(tube) as TubeRow;
  }

  private netAt(end: string): Set<string> {
    const found = this.netOf.get(end) ?? new Set([end]);
    this.netOf.set(end, found);
    return found;
  }

  wire(from: string, to: string | null, more: WireOptions = {}): void {
    if (this.isFull || from === to) return;
    this.count++;
    this.build.wire(this.count, from, to, { awg: 22, colour: 'white', ...more });
    if (to === null) return;
    const joined = new Set([...this.netAt(from), ...this.netAt(to)]);
    for (const end of joined) this.netOf.set(end, joined);
  }

  /** A wire to fill up with: only where it makes no net that a set would not have. */
  filler(from: string, to: string, more: WireOptions): void {
    const [here, there] = [this.netAt(from), this.netAt(to)];
    if (here === there || here.size + there.size <= 5) this.wire(from, to, more);
  }

  /** A pin to a foot, unless the pin carries something else already. */
  ground(from: string, foot: string): void {
    const net = this.netAt(from);
    if (this.grounds > 0.3 * this.wanted || (net.size > 1 && !net.has(foot))) return;
    this.grounds++;
    this.wire(from, foot, { colour: 'black' });
  }

  component(from: string, to: string): void {
    const kind = this.chance() < 0.5 ? 'R' : 'C';
    const name = `${kind}${++this.components[kind]}`;
    if (kind === 'R') this.build.resistor(name, this.oneOf(['47k', '220k', '1M', '680']), from, to);
    else this.build.capacitor(name, this.oneOf(['0.01 uF', '270 pF', '0.1 uF']), from, to);
  }

  stage(x: number): Stage {
    const row = this.oneOf(tubes);
    const tube = `V${++this.tubeCount}`;
    this.rows.set(tube, row);
    this.build.tube(tube, row.type, { pins: row.pins, at: [x, 60] });
    const more = this.wanted > 500 ? 2 : 1;
    const strips = Array.from({ length: this.chance() < 0.3 ? more + 1 : more }, (_, index) => {
      const lugs = 4 + this.pick(4);
      const foot = 1 + this.pick(lugs);
      const name = `TS${++this.stripCount}`;
      this.build.strip(name, lugs, { grounded: [foot], at: [x + 20 + index * 20, 90] });
      return { name, lugs, foot };
    });
    const transformer = this.chance() < 0.45 ? `T${20 + this.transformerCount++}` : null;
    if (transformer) {
      this.build.part('transformer', transformer, ['1', '2', '3', '4'], { at: [x + 30, 40] });
    }
    return { tube, pins: row.pins, strips, transformer };
  }

  /** A lug that is not a foot. */
  lug(stage: Stage): string {
    const strip = this.oneOf(stage.strips);
    const free = Array.from({ length: strip.lugs }, (_, index) => index + 1).filter(
      (lug) => lug !== strip.foot
    );
    return `${strip.name}-${this.oneOf(free)}`;
  }

  foot(stage: Stage): string {
    const strip = this.oneOf(stage.strips);
    return `${strip.name}-${strip.foot}`;
  }

  spot(stage: Stage): string {
    const turn = this.chance();
    if (turn < 0.45) return `${stage.tube}-${1 + this.pick(stage.pins)}`;
    if (turn < 0.85 || !stage.transformer) return this.lug(stage);
    return `${stage.transformer}-${1 + this.pick(4)}`;
  }
}

const supplyVolts = { dcV: 250, function: 'B+', colour: 'red' } as const;
const heaterVolts = { acV: 6.3, amps: 0.6, function: 'heater', colour: 'brown' } as const;

const powerUnit = (make: Maker): void => {
  make.build
    .unit('Power unit')
    .part('transformer', 'T1', [
      'black',
      'black/red',
      'red',
      'red/yellow',
      'red 2',
      'green',
      'green/yellow',
      'yellow',
      'yellow 2'
    ])
    .tube('V30', '5U4GB', { pins: 8 })
    .part('capacitor', 'C100', ['A', 'B', 'C', { name: 'can', grounded: true }], {
      value: '40-40-20'
    })
    .part('coil', 'L1', ['1', '2'], { function: 'filter choke' })
    .part('fuse', 'F1', ['1', '2'], { value: '3 A' })
    .strip('TS30', 6, { grounded: [3] });
  make.wire('T1 red', 'V30-4', { acV: 365, colour: 'red' });
  make.wire('T1 red 2', 'V30-6', { acV: 365, colour: 'red' });
  make.wire('T1 yellow', 'V30-2', { acV: 5, dcV: 300, colour: 'yellow' });
  make.wire('T1 yellow 2', 'V30-8', { acV: 5, dcV: 300, colour: 'yellow' });
  make.wire('T1 red/yellow', 'TS30-3', { colour: 'red', tracer: 'yellow' });
  make.wire('T1 green/yellow', 'TS30-3', { colour: 'green' });
  make.wire('T1 green', 'TS30-4', heaterVolts);
  make.wire('V30-8', 'C100 A', { dcV: 300, colour: 'red' });
  make.wire('C100 A', 'L1-1', { dcV: 300, colour: 'red' });
  make.wire('L1-2', 'C100 B', { ...supplyVolts });
  make.wire('C100 B', 'TS30-2', { ...supplyVolts });
  make.wire('T1 black', 'F1-1', { acV: 117 });
  make.wire('F1-2', 'TS30-6', { acV: 117 });
};

const chain = (make: Maker, start: string, stages: readonly Stage[]): void => {
  let at = start;
  for (const { tube } of stages) {
    const pin = `${tube}-${make.rowOf(tube).heater[1]}`;
    make.wire(at, pin, heaterVolts);
    at = pin;
  }
};

const stageWires = (make: Maker, stages: readonly Stage[], supply: string): void => {
  let rail = supply;
  stages.forEach((stage, index) => {
    const row = make.rowOf(stage.tube);
    make.wire(`${stage.tube}-${row.heater[0]}`, make.foot(stage), { colour: 'black' });
    const lug = make.lug(stage);
    make.wire(index % 5 === 0 ? supply : rail, lug, supplyVolts);
    rail = lug;
    make.component(lug, `${stage.tube}-${row.screen}`);
    make.component(`${stage.tube}-${row.cathode}`, make.foot(stage));
    if (make.chance() < 0.6) make.component(make.lug(stage), make.foot(stage));
    const out = stage.transformer ? `${stage.transformer}-1` : make.lug(stage);
    make.wire(`${stage.tube}-${row.plate}`, out, {
      dcV: 180,
      pulseV: index === 4 ? 900 : 0,
      colour: 'blue'
    });
    const next = stages[index + 1];
    const from = stage.transformer ? `${stage.transformer}-3` : out;
    if (next) make.component(from, make.lug(next));
    if (next)
      make.wire(make.lug(stage), `${next.tube}-${make.rowOf(next.tube).grid}`, {
        dcV: 5,
        colour: 'green'
      });
  });
};

const fill = (make: Maker, groups: readonly (readonly Stage[])[]): void => {
  for (let guard = 0; !make.isFull && guard < 100_000; guard++) {
    const stages = make.oneOf(groups);
    const at = make.pick(stages.length);
    const here = stages[at] as Stage;
    const turn = make.chance();
    const there = turn < 0.81 ? here : turn < 0.95 ? (stages[at + 1] ?? here) : make.oneOf(stages);
    const more = { dcV: make.oneOf([5, 90, 180, 420]) };
    if (make.chance() < 0.3) make.ground(make.spot(here), make.foot(here));
    else make.filler(make.spot(here), make.spot(there), more);
  }
};

/** A document with as many wires as asked for, valid by the schema; `seed` picks one of many. */
export const generateChassis = (wires: number, seed = 1): ChassisDocument => {
  const make = new Maker(seed, wires);
  const mainStages = wires <= 150 ? 6 : wires <= 500 ? 11 : 24;
  powerUnit(make);

  make.build.unit('Main chassis');
  const main = Array.from({ length: mainStages }, (_, index) => make.stage(40 + index * 50));
  for (const name of ['GL1', 'GL2']) make.build.ground(name);
  const groups: Stage[][] = [main];
  chain(make, 'TS30-4', main);
  stageWires(make, main, 'TS30-2');

  for (const { unit, stages: count, plug } of outside) {
    const pins = ['1', '2', '3', '4', '5', '6'];
    make.build.in('Main chassis').part('jack', `J${plug}`, pins);
    make.build.unit(unit).part('plug', `P${plug}`, pins, { mates: `J${plug}` });
    const stages = Array.from({ length: count }, (_, index) => make.stage(20 + index * 40));
    groups.push(stages);
    make.wire(`J${plug}-1`, 'GL1', { colour: 'black' });
    make.wire('TS30-4', `J${plug}-2`, heaterVolts);
    make.wire('TS30-2', `J${plug}-3`, supplyVolts);
    chain(make, `P${plug}-2`, stages);
    stageWires(make, stages, `P${plug}-3`);
    make.wire(`P${plug}-1`, make.foot(stages[0] as Stage), { colour: 'black' });
    make.wire(make.lug(stages.at(-1) as Stage), `P${plug}-4`, { dcV: 2 });
    make.wire(`J${plug}-4`, make.spot(main[plug] as Stage), { dcV: 2 });
  }

  make.build.in('Main chassis').part('jack', 'J3', ['1', '2', '3', '4', '5', '6', '7', '8']);
  make.build
    .unit('Neck and yoke')
    .part('plug', 'P3', ['1', '2', '3', '4', '5', '6', '7', '8'], { mates: 'J3' })
    .part('yoke', 'L3', ['H1', 'H2', 'V1', 'V2'])
    .part('picture tube', 'V40', ['1', '2', '10', '11', '12', { name: 'anode', ending: 'cap' }], {
      type: '21CBP4A'
    });
  const last = main.at(-1) as Stage;
  make.wire(make.spot(last), 'J3-1', { dcV: 285, pulseV: 3400, colour: 'grey' });
  make.wire(make.spot(last), 'J3-2', { dcV: 285, pulseV: 3100, colour: 'yellow' });
  make.wire(make.lug(last), 'J3-3', { dcV: 260, pulseV: 200 });
  make.wire('P3-1', 'L3 H1', { dcV: 285, pulseV: 3400, colour: 'grey' });
  make.wire('P3-2', 'L3 H2', { dcV: 285, pulseV: 3100, colour: 'yellow' });
  make.wire('P3-3', 'L3 V1', { dcV: 260, pulseV: 200 });
  make.wire('P3-4', 'L3 V2', { dcV: 260, pulseV: 200 });
  make.wire('P3-5', 'V40-1', heaterVolts);
  make.wire('P3-6', 'V40-12', { colour: 'black' });
  make.wire(`${last.tube}-${make.rowOf(last.tube).plate}`, 'V40 anode', {
    dcV: 18_000,
    colour: 'red'
  });

  const controls = wires <= 150 ? 3 : 7;
  make.build.unit('Control panel');
  for (let index = 0; index < controls; index++) {
    make.build.part('control', `R${900 + index}`, ['1', '2', '3'], {
      value: '500k',
      function: make.oneOf(['volume', 'contrast', 'hold', 'height'])
    });
    const stage = main[index % main.length] as Stage;
    make.wire(`R${900 + index}-2`, `${stage.tube}-${make.rowOf(stage.tube).grid}`, { dcV: 3 });
    make.wire(`R${900 + index}-1`, make.lug(stage), { dcV: 40 });
  }
  make.wire(make.lug(main[1] as Stage), null, { toEnd: { as: 'into the loom' } });
  fill(make, groups);
  return make.build.build();
};
