// Wires that have something in common offer themselves, so that one field of all can be changed at once.
import { describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import { wireGroups } from '#editor/schedule/wire-groups.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../helpers/chassis.ts';

const document = chassis('Bench set')
  .tube('V1', '6CG7')
  .strip('TS1', 5)
  .wire(1, 'V1-1', 'TS1-2', { colour: 'red', dcV: 285 })
  .wire(2, 'TS1-2', 'V1-6', { colour: 'red' })
  .wire(3, 'V1-3', 'TS1-4', { colour: 'blue', dcV: 12 })
  .build();
const study = buildStudy(document);
const idOf = (number: string): string =>
  Object.values(document.wires).find((wire) => wire.number === number)!.id;
const groupsAt = (pick: Parameters<typeof wireGroups>[0]['pick']) => {
  const groups = wireGroups({ study, findings: runChecks(study), pick, marked: [], found: [] });
  return new Map(
    groups.map(({ id, wires }) => [id, wires.map((wire) => document.wires[wire]!.number)])
  );
};

describe('wires that belong together', () => {
  it('are those of one net, one colour and one class', () => {
    const groups = groupsAt({ kind: 'wire', id: idOf('1') });
    expect(groups.get('net')).toEqual(['1', '2']);
    expect(groups.get('colour')).toEqual(['1', '2']);
    expect(groups.get('class')).toEqual(['1', '2']);
    expect(groups.get('all')).toEqual(['1', '2', '3']);
  });

  it('are those at what is picked', () => {
    const part = Object.values(document.parts).find(({ reference }) => reference === 'V1')!;
    expect(groupsAt({ kind: 'part', id: part.id }).get('picked')).toEqual(['1', '2', '3']);
    const strip = Object.values(document.parts).find(({ reference }) => reference === 'TS1')!;
    const lug = Object.values(strip.terminals).find(({ name }) => name === '2')!;
    expect(groupsAt({ kind: 'terminal', id: `${strip.id}/${lug.id}` }).get('picked')).toEqual([
      '1',
      '2'
    ]);
  });

  it('are no group where there is only one', () => {
    expect([...groupsAt({ kind: 'wire', id: idOf('3') }).keys()]).not.toContain('colour');
    expect(groupsAt(null)).toEqual(new Map([['all', ['1', '2', '3']]]));
  });
});
