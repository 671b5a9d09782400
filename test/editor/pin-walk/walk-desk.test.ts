// The walk tied to the editor: what is pressed on the sheet answers the question that stands, and each
// answer is one step of undo.
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { makeIdFrom } from '#document/index.ts';
import { DocumentState } from '#editor/core/document-state.svelte.ts';
import { lateWalk } from '#editor/pin-walk/late-walk.ts';
import { WalkDesk } from '#editor/pin-walk/walk-desk.svelte.ts';
import { EndNames } from '#editor/schedule/end-text.ts';
import { chassis } from '../../helpers/chassis.ts';
import { seeded } from '../../helpers/generate-chassis.ts';

beforeAll(() => lateWalk.load());

let documents: DocumentState;
let desk: WalkDesk;
let said: string[];
let shown: string[];

beforeEach(() => {
  said = [];
  shown = [];
  documents = new DocumentState(
    chassis('Bench set')
      .unit('Main chassis')
      .tube('V1', '6CG7')
      .tube('V2', '6AU6A')
      .strip('TS1', 5)
      .wire(1, 'V2-5', 'TS1-1', { colour: 'red' })
      .wire(2, 'TS1-2', null, { colour: 'blue' })
      .build(),
    () => 0
  );
  desk = new WalkDesk({
    documents,
    ends: () => new EndNames(documents.document, documents.study.index),
    makeId: makeIdFrom(seeded(5)),
    tell: (words) => said.push(words),
    show: ({ id }) => shown.push(id)
  });
});

const partOf = (reference: string): string =>
  documents.study.index.parts.find((part) => part.reference === reference)!.id;
const keyOf = (label: string): string =>
  documents.study.index.terminals.find(
    ({ part, terminal }) => `${part.reference}-${terminal.name}` === label
  )!.key;
const press = (label: string): boolean => desk.takePress({ kind: 'terminal', id: keyOf(label) });
const blue = () => desk.say({ kind: 'note', lead: { kind: 'wire', colour: 'blue' } });
const runs = (): string[] =>
  documents.study.index.wires.map(
    ({ number, from, to }) =>
      `${number} ${documents.study.index.labelOf(from)} ${documents.study.index.labelOf(to)}`
  );

describe('a press on the sheet', () => {
  it("is not the walk's while it is closed", () => expect(press('V1-1')).toBe(false));

  it('goes to a terminal while nothing is asked, of another part as well', () => {
    desk.begin(partOf('V1'));
    expect(press('V1-4')).toBe(true);
    expect(desk.label).toBe('V1-4');
    expect(press('TS1-3')).toBe(true);
    expect(desk.label).toBe('TS1-3');
    expect(shown).toEqual(['V1-1', 'V1-4', 'TS1-3'].map(keyOf));
  });

  it('answers where a lead goes, in one step of undo', () => {
    desk.begin(partOf('V1'));
    blue();
    expect(desk.awaitsEnd).toBe(true);
    press('TS1-4');
    expect(runs().at(-1)).toBe('3 V1-1 TS1-4');
    expect([desk.label, desk.awaitsEnd]).toEqual(['V1-2', false]);
    documents.undo();
    expect(runs().at(-1)).toBe('3 V1-1 ?');
  });

  it('on a half-traced wire says that it is the same wire', () => {
    desk.begin(partOf('V1'));
    blue();
    expect(desk.takePress({ kind: 'wire', id: 'w2' })).toBe(true);
    expect(runs()).toEqual(['1 V2-5 TS1-1', '2 TS1-2 V1-1']);
  });

  it('on a whole wire changes nothing, unless the lead is said to be soldered onto it', () => {
    desk.begin(partOf('V1'));
    blue();
    desk.takePress({ kind: 'wire', id: 'w1' });
    expect(said.at(-1)).toMatch(/has both its ends/);
    expect(runs()).toHaveLength(3);
    desk.isTeeing = true;
    desk.takePress({ kind: 'wire', id: 'w1' });
    expect(runs()).toContain('3 V1-1 SPL1');
    expect(desk.isTeeing).toBe(false);
  });
});

describe('the desk', () => {
  it('offers the half-traced wires of one colour, and joins from the list in one step', () => {
    desk.begin(partOf('V1'));
    blue();
    expect(desk.likely.map(({ half }) => half.wire.number)).toEqual(['2']);
    desk.say({ kind: 'not-yet' });
    const [, first, second] = documents.study.index.wires;
    desk.join(first!.id, second!.id);
    expect(desk.waiting).toEqual([]);
    documents.undo();
    expect(desk.waiting).toHaveLength(2);
  });

  it('takes a line that it can read, and keeps one that it cannot', () => {
    desk.begin(partOf('V1'));
    desk.text = 'some wire';
    desk.enter();
    expect([desk.text, runs()]).toEqual(['some wire', runs()]);
    expect(said.at(-1)).toMatch(/begins with no colour/);
    desk.text = 'green ts1-5';
    desk.enter();
    expect([desk.text, runs().at(-1)]).toEqual(['', '3 V1-1 TS1-5']);
  });

  it('gives a strip a terminal more, and stands there', () => {
    desk.begin(partOf('TS1'));
    desk.addTerminal();
    expect(desk.label).toBe('TS1-6');
  });

  it('is nowhere once its part is gone', () => {
    desk.begin(partOf('V1'));
    documents.edit({ kind: 'remove-part', args: { id: partOf('V1') } });
    expect([desk.entry, desk.ring, desk.leads]).toEqual([null, null, []]);
    desk.say({ kind: 'next' });
  });
});
