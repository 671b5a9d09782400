// How a walk goes is common practice, no source: look at a terminal, name the colours of all its leads,
// follow each, go on; what cannot be followed yet waits.
import { describe, expect, it } from 'vitest';
import { countLeads } from '#editor/pin-walk/leads.ts';
import { openLeads } from '#editor/pin-walk/walk-state.ts';
import { chassis } from '../../helpers/chassis.ts';
import { Walker } from './walker.ts';

const bench = () =>
  chassis('Bench set')
    .unit('Main chassis')
    .tube('V1', '6CG7')
    .tube('V2', '6AU6A')
    .strip('TS3', 5)
    .ground('G1');
const atV1 = (terminal?: string): Walker => new Walker(bench().build(), 'V1', terminal);

describe('a terminal with one lead', () => {
  it('takes a colour and a far end, and goes on by itself', () => {
    const walker = atV1().see('blue');
    expect(walker.asks).toBe('blue');
    expect(walker.at).toBe('1');
    walker.to('ts3-2');
    expect(walker.at).toBe('2');
    expect(walker.words('1')).toEqual(['blue to TS3-2']);
    expect(walker.wires[0]).toMatchObject({
      construction: 'hook-up wire',
      state: 'found',
      found: { colour: 'blue' },
      from: { known: 'seen' },
      to: { known: 'seen' }
    });
  });

  it('lets a far end wait, and goes on', () => {
    const walker = atV1().see('blue').say({ kind: 'not-yet' });
    expect(walker.at).toBe('2');
    expect(walker.words('1')).toEqual(['blue other end not yet']);
  });

  it('keeps words that name no terminal, as the schedule does', () => {
    const walker = atV1().see('brown').to('into the loom');
    expect(walker.at).toBe('2');
    expect(walker.words('1')).toEqual(['brown "into the loom", not yet found']);
    expect(walker.wires[0]?.to).toEqual({ as: 'into the loom', known: 'unknown' });
  });

  it('says how the far end is known, of this and the following leads', () => {
    const walker = atV1().say({ kind: 'how', how: 'metered' }).see('blue').to('V2-5');
    walker.see('red').to('TS3-1');
    expect(walker.wires.map(({ from, to }) => [from.known, to.known])).toEqual([
      ['seen', 'metered'],
      ['seen', 'metered']
    ]);
  });
});

describe('a terminal with several leads', () => {
  it('takes all colours first and asks for each in turn', () => {
    const walker = atV1('3').see('blue', 'yellow/black');
    walker.say({ kind: 'note', lead: { kind: 'part', partKind: 'resistor' } });
    expect(walker.asks).toBe('blue');
    walker.to('TS3-2');
    expect([walker.at, walker.asks]).toEqual(['3', 'yellow with a black tracer']);
    walker.say({ kind: 'not-yet' });
    expect([walker.at, walker.asks]).toEqual(['3', 'resistor']);
    walker.to('G1');
    expect(walker.at).toBe('4');
    expect(walker.words('3')).toEqual([
      'blue to TS3-2',
      'yellow with a black tracer other end not yet',
      'resistor to chassis at G1'
    ]);
  });

  it('asks first about the lead that is chosen', () => {
    const walker = atV1().see('blue', 'red');
    walker.say({ kind: 'ask', lead: walker.leads()[1]!.key });
    expect(walker.asks).toBe('red');
    walker.to('TS3-1');
    expect([walker.at, walker.asks]).toEqual(['1', 'blue']);
  });

  it('stays while leads that were counted are not accounted for', () => {
    const walker = atV1().say({ kind: 'count', leads: 2 }).see('blue').to('TS3-2');
    expect(walker.at).toBe('1');
    expect(walker.said.at(-1)).toBe('blue to TS3-2; 1 not accounted for');
    walker.see('red').to('TS3-1');
    expect(walker.at).toBe('2');
  });

  it('gives the asked wire a tracer', () => {
    const walker = atV1().see('white').say({ kind: 'tracer', colour: 'red' });
    expect(walker.asks).toBe('white with a red tracer');
  });

  it('forgets what was taken away', () => {
    const walker = atV1().see('blue', 'red');
    walker.say({ kind: 'remove', lead: walker.leads()[0]!.key });
    expect(walker.wires).toHaveLength(1);
    expect(walker.asks).toBe('red');
  });
});

describe('stepping', () => {
  it('writes down that there is no lead only where nobody said a number', () => {
    const walker = atV1().say({ kind: 'next' }).say({ kind: 'count', leads: 3 }, { kind: 'next' });
    expect(walker.at).toBe('3');
    const counts = ['1', '2'].map((name) => {
      const part = walker.document.parts[walker.walk.part]!;
      return Object.values(part.terminals).find((one) => one.name === name)?.leadsCounted;
    });
    expect(counts).toEqual([0, 3]);
  });

  it('does not count for a person: one lead recorded is no count', () => {
    const walker = atV1().see('blue').say({ kind: 'next' });
    const entry = walker.study.index.terminals[0]!;
    expect(countLeads(walker.study, entry)).toEqual({
      recorded: 1,
      counted: null,
      unaccounted: null
    });
  });

  it('goes back, to a given terminal, and past the last to the look back', () => {
    const walker = atV1('8').say({ kind: 'next' }, { kind: 'next' });
    expect(walker.at).toBe('done');
    walker.say({ kind: 'back' });
    expect(walker.at).toBe('9');
    const part = walker.document.parts[walker.walk.part]!;
    const fifth = Object.values(part.terminals).find(({ name }) => name === '5')!;
    walker.say({ kind: 'go', terminal: fifth.id });
    expect(walker.at).toBe('5');
    walker.say({ kind: 'back' }, { kind: 'back' }, { kind: 'back' }, { kind: 'back' });
    expect(walker.at).toBe('1');
    walker.say({ kind: 'back' });
    expect(walker.at).toBe('1');
    expect(walker.said.at(-1)).toBe('this is the first terminal');
  });

  it('finds a lead there that was noted from the other side', () => {
    const walker = atV1('4').see('brown').to('V1-5');
    expect(walker.at).toBe('5');
    expect(walker.words()).toEqual(['brown to V1-4']);
  });
});

describe('what is refused', () => {
  it('is an end where the lead begins', () => {
    const walker = atV1().see('blue').to('V1-1');
    expect([walker.at, walker.asks]).toEqual(['1', 'blue']);
    expect(walker.said.at(-1)).toMatch(/starts at/);
  });

  it('is an answer before anything was seen', () => {
    const walker = atV1().to('TS3-1');
    expect(walker.wires).toHaveLength(0);
    expect(walker.said.at(-1)).toMatch(/say first what is seen/);
  });
});

describe('splices, tees, parts', () => {
  it('ends a lead in a splice that can be walked in its turn', () => {
    const walker = atV1().see('green').say({ kind: 'splice' });
    expect(walker.words('1')).toEqual(['green to SPL1']);
    const there = new Walker(walker.document, 'SPL1', undefined, 32);
    there.see('green').to('TS3-4');
    expect(there.walk.isDone).toBe(true);
    expect(there.words('')).toEqual(['green to V1-1', 'green to TS3-4']);
  });

  it('tees onto a wire: two pieces that meet, one net, its length kept in words', () => {
    const document = bench()
      .wire(7, 'V2-5', 'TS3-1', { colour: 'red', tapedMm: 240, notes: 'stiff', dcV: 285 })
      .build();
    const walker = new Walker(document, 'V1').see('red').say({ kind: 'tee', wire: 'w7' });
    const labels = walker.wires.map((wire) =>
      [
        wire.number,
        walker.study.index.labelOf(wire.from),
        walker.study.index.labelOf(wire.to)
      ].join(' ')
    );
    expect(labels).toEqual(['7 V2-5 SPL1', '7b SPL1 TS3-1', '8 V1-1 SPL1']);
    expect(walker.wires[0]?.notes).toBe(
      'stiff; one wire with 7b before the tee at SPL1; taped 240 mm as a whole'
    );
    expect(walker.wires.map(({ tapedMm }) => tapedMm)).toEqual([undefined, undefined, undefined]);
    expect(walker.wires[1]?.carries).toEqual({ dcV: 285 });
    const nets = walker.wires.map(({ id }) => walker.study.wires.get(id)?.net);
    expect(new Set(nets).size).toBe(1);
  });

  it('names a part by no number of the maker, and takes its value only where it is given', () => {
    const walker = atV1().line('resistor 47k TS3-2').line('resistor');
    const parts = walker.study.index.parts.filter(({ kind }) => kind === 'resistor');
    expect(parts.map(({ reference, value }) => [reference, value])).toEqual([
      ['R?1', '47k'],
      ['R?2', undefined]
    ]);
    expect(walker.words()).toEqual(['resistor to TS3-2', 'resistor other end not yet']);
    expect(walker.at).toBe('1');
  });

  it('keeps words for the far lead of a part', () => {
    const walker = atV1().line('cap 0.05 MFD into the loom');
    expect(walker.words()).toEqual(['capacitor "into the loom", not yet found']);
  });
});

describe('undo', () => {
  it('leaves no question about a lead that is gone', () => {
    const walker = atV1().see('blue');
    walker.document = bench().build();
    expect(openLeads(walker.walk, walker.study)).toEqual([]);
    expect(walker.asks).toBe('');
  });

  it('takes a whole line back in one step', () => {
    const walker = atV1().line('blue ts3-2');
    expect(walker.words()).toEqual(['blue to TS3-2']);
    expect(walker.edits.map(({ kind }) => kind)).toEqual(['add-wire']);
  });
});
