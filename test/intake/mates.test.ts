// A plug and a jack of one number in a wire list, and the winding that its leads' colours tell of.
import { buildStudy } from '#study/index.ts';
import { describe, expect, test } from 'vitest';
import { readText } from './read-list.ts';

const list = (rows: string) => readText(`From,To,Function,Volts DC,Volts AC\n${rows}`);
const matesIn = ({ document }: ReturnType<typeof readText>): string[] => {
  const parts = document!.parts;
  return Object.values(parts).flatMap(({ reference, mates }) =>
    mates === undefined ? [] : [`${reference} ${parts[mates]!.reference}`]
  );
};

describe('a plug and a jack of one number', () => {
  test('are taken for one connector where three pins have the same names, and that is told', () => {
    const read = list('P1-1,V1-1,B+,285,\nP1-3,V1-2,,,\nJ1-1,TS1-1,,,\nJ1-3,TS1-2,,,');
    expect(matesIn(read)).toEqual(['P1 J1']);
    expect(read.notes.map(({ text }) => text).join()).toMatch(
      /P1 and J1 are taken for .* pins 1, 2, 3 joined .* another number in the list/
    );
    const { wires, index } = buildStudy(read.document!);
    expect(wires.get(index.wires[2]!.id)!.carries.dcV).toMatchObject({ value: 285 });
  });

  test.each([
    ['two pins', 'P2-1,V1-1,,,\nP2-2,V1-2,,,\nJ2-1,TS1-1,,,\nJ2-2,TS1-2,,,'],
    ['a pin that the other lacks', 'P2-1,V1-1,,,\nP2-cap,V1-2,,,\nJ2-1,TS1-1,,,\nJ2-4,TS1-2,,,']
  ])('are not, and that is told too: %s', (_, rows) => {
    const read = list(rows);
    expect(matesIn(read)).toEqual([]);
    expect(read.notes.map(({ text }) => text).join()).toContain('P2 and J2 have one number, but');
  });

  test('are not where a wire runs from the one to the other', () => {
    const read = list('P1-1,V1-1,,,\nP1-3,J1-3,,,\nJ1-1,TS1-1,,,');
    expect(matesIn(read)).toEqual([]);
  });

  test('are not told of where their numbers differ', () => {
    const read = list('P1-1,V1-1,,,\nP1-3,V1-2,,,\nJ2-1,TS1-1,,,\nJ2-3,TS1-2,,,');
    expect(matesIn(read)).toEqual([]);
    expect(read.notes.map(({ text }) => text).join()).not.toContain('connector');
  });
});

describe('a winding that only the colours of its leads tell of', () => {
  const dcOf = (rows: string): number | undefined => {
    const { wires, index } = buildStudy(list(rows).document!);
    return wires.get(index.wires[0]!.id)!.carries.dcV?.value;
  };

  test('with one lead grounded rides on 0 V dc', () => {
    expect(dcOf('T1 green 1,V1-4,heaters,,6.3\nT1 green 2,chassis,,,')).toBe(0);
    expect(dcOf('T1 red 1,V2-4,high voltage winding,,275\nT1 red/yellow,chassis,,,')).toBe(0);
  });

  test('on a rail stands at the rail', () => {
    expect(dcOf('T1 yellow 1,V2-2,rectifier filament,,5\nT1 yellow 2,TS1-1,B+,300,')).toBe(300);
  });

  test('does not reach to leads of another colour', () => {
    expect(dcOf('T1 green 1,V1-4,heaters,,6.3\nT1 brown 1,chassis,,,')).toBeUndefined();
  });
});
