// Two documents side by side, and a member's copy taken in.
import {
  applyEdit,
  buildRevision,
  buildShareCopy,
  changeInOneLine,
  compareDocuments,
  compareRevisions,
  countChanges,
  findCommonRevision,
  hashOfDocument,
  mergeDocuments,
  saveDocument,
  setFound,
  setIdentity,
  setWireFields,
  sharedPart,
  type ChassisDocument,
  type Edit
} from '#document/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryDocument } from '../../helpers/arbitrary-document.ts';
import { arbitraryEditPlan, type EditPlan } from '../../helpers/arbitrary-edit.ts';
import { chassis } from '../../helpers/chassis.ts';

const set = chassis('Bench set')
  .tube('V1', '6CG7')
  .strip('TS1', 3)
  .wire(1, 'V1-5', null, { awg: 22 })
  .wire(2, 'V1-4', 'TS1-1')
  .wire(3, 'V1-3', 'TS1-2')
  .build();
const edited = (document: ChassisDocument, ...edits: Edit[]): ChassisDocument =>
  edits.reduce((current, edit) => {
    const result = applyEdit(current, edit);
    if (!result.ok) throw new Error(result.problem);
    return result.document;
  }, document);
const without = ({ lineage: _, ...rest }: ChassisDocument) => rest;
const idOf = (document: ChassisDocument, number: string): string =>
  Object.values(document.wires).find((wire) => wire.number === number)?.id ?? '';
const wire1 = idOf(set, '1');
const wire2 = idOf(set, '2');

describe('compared', () => {
  it('fields are told with what stood there and what stands there now', () => {
    const terminal = Object.values(set.parts).find(({ reference }) => reference === 'TS1');
    const third = Object.values(terminal?.terminals ?? {}).find(({ name }) => name === '3');
    const after = edited(
      set,
      setFound(wire1, { awg: 20, colour: 'blue' }),
      setWireFields(wire2, { to: { at: { part: terminal?.id ?? '', terminal: third?.id ?? '' } } }),
      { kind: 'remove-wire', args: { id: idOf(set, '3') } },
      setIdentity({ run: '2' })
    );
    const changes = compareDocuments(set, after);
    expect(changes.map(changeInOneLine)).toEqual([
      'the set changed: run: “2” instead of nothing',
      'wire 3 removed',
      'wire 1 changed: gauge: 20 AWG instead of 22 AWG; colour: “blue” instead of nothing',
      'wire 2 changed: second end: TS1-3 instead of TS1-1'
    ]);
    expect(countChanges(changes)).toBe('1 removed, 3 changed');
  });

  it('two ends that go by one name are told apart by what differs', () => {
    const base = chassis('Jacks')
      .unit('Tuner')
      .tube('V1', '6CG7')
      .part('ground lug', 'J1', ['1'])
      .part('jack', 'J1', ['', 'tip'])
      .wire(8, 'V1-5', null)
      .build();
    const wire = idOf(base, '8');
    const of = (kind: string, name: string) => {
      const part = Object.values(base.parts).find((each) => each.kind === kind)!;
      const terminal = Object.values(part.terminals).find((each) => each.name === name)!;
      return { at: { part: part.id, terminal: terminal.id } };
    };
    const before = edited(base, setWireFields(wire, { to: of('ground lug', '1') }));
    const after = edited(base, setWireFields(wire, { to: of('jack', '') }));
    expect(compareDocuments(before, after).map(changeInOneLine)).toEqual([
      'wire 8 changed: second end: J1 (its terminal without a name, jack, in Tuner) instead of J1 (its terminal “1”, ground lug, in Tuner)'
    ]);
  });

  it('any document is the same as itself, and every edit that changes something is found', () => {
    fc.assert(
      fc.property(
        arbitraryDocument(),
        fc.array(arbitraryEditPlan, { maxLength: 4 }),
        (document, plans) => {
          expect(compareDocuments(document, document)).toEqual([]);
          const after = follow(document, plans);
          for (const { fields } of compareDocuments(document, after))
            for (const { field, words } of fields) {
              const [now, old] = words.slice(field.length + 2).split(' instead of ');
              expect(now).not.toBe(old);
            }
          const isSame =
            JSON.stringify(sorted(withoutSilence(document))) ===
            JSON.stringify(sorted(withoutSilence(after)));
          expect(compareDocuments(document, after).length === 0).toBe(isSame);
        }
      ),
      { seed: 11, numRuns: 150 }
    );
  });

  it('finds the like of documents that were begun apart by number and reference', () => {
    const ids = new Map<string, string>();
    let count = 0;
    const other = JSON.parse(
      saveDocument(set).replaceAll(/"([a-z][0-9a-z]{1,23})"/g, (whole, id: string) => {
        const isId =
          [set.units, set.parts, set.wires].some((record) => Object.hasOwn(record, id)) ||
          Object.values(set.parts).some(({ terminals }) => Object.hasOwn(terminals, id));
        if (!isId) return whole;
        if (!ids.has(id)) ids.set(id, `${id[0]}zz${count++}`);
        return `"${ids.get(id)}"`;
      })
    ) as ChassisDocument;
    expect(Object.keys(other.wires)).not.toEqual(Object.keys(set.wires));
    const after = edited(other, setFound(idOf(other, '1'), { awg: 18 }));
    expect(compareDocuments(set, after).map(changeInOneLine)).toEqual([
      'wire 1 changed: gauge: 18 AWG instead of 22 AWG'
    ]);
  });
});

const follow = (document: ChassisDocument, plans: readonly EditPlan[]): ChassisDocument =>
  plans.reduce((current, plan) => {
    const edit = plan(current);
    const result = edit && applyEdit(current, edit);
    return result?.ok ? result.document : current;
  }, document);
/** The order in a row and a record with nothing in it say nothing about the set, and are not compared. */
const withoutSilence = <T>(value: T): T => {
  if (Array.isArray(value)) return value.map(withoutSilence) as T;
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value)
    .map(([key, inner]): [string, unknown] => [key, withoutSilence(inner)])
    .filter(([key, inner]) => key !== 'order' && !isEmpty(inner));
  return Object.fromEntries(entries) as T;
};
const sorted = <T>(value: T): T =>
  typeof value !== 'object' || value === null || Array.isArray(value)
    ? value
    : (Object.fromEntries(
        Object.entries(value)
          .sort(([a], [b]) => (a < b ? -1 : 1))
          .map(([key, inner]) => [key, sorted(inner)])
      ) as T);
const isEmpty = (value: unknown): boolean =>
  typeof value === 'object' &&
  value !== null &&
  !Array.isArray(value) &&
  Object.keys(value).length === 0;

describe('merged', () => {
  it('takes what the other changed and keeps what is mine', () => {
    const mine = edited(set, setFound(wire1, { colour: 'blue' }));
    const theirs = edited(set, setFound(wire1, { awg: 20 }), {
      kind: 'remove-wire',
      args: { id: wire2 }
    });
    const { document, clashes } = mergeDocuments(set, mine, theirs);
    expect(clashes).toEqual([]);
    expect(document.wires[wire1]?.found).toMatchObject({ colour: 'blue', awg: 20 });
    expect(document.wires[wire2]).toBeUndefined();
  });

  it('asks where both changed the same, and does as is said', () => {
    const mine = edited(set, setFound(wire1, { awg: 18 }));
    const theirs = edited(set, setFound(wire1, { awg: 20 }), setFound(wire2, { colour: 'red' }));
    const asked = mergeDocuments(set, mine, theirs);
    expect(asked.clashes.map(({ what, mine: own, theirs: other }) => [what, own, other])).toEqual([
      ['wire 1: gauge', '18 AWG', '20 AWG']
    ]);
    expect(asked.document.wires[wire1]?.found.awg).toBe(18);
    const [clash] = asked.clashes;
    const decided = mergeDocuments(set, mine, theirs, new Map([[clash?.key ?? '', 'theirs']]));
    expect(decided.document.wires[wire1]?.found.awg).toBe(20);
    expect(decided.document.wires[wire2]?.found.colour).toBe('red');
  });

  it('asks where one removed what the other changed', () => {
    const mine = edited(set, { kind: 'remove-wire', args: { id: wire2 } });
    const theirs = edited(set, setFound(wire2, { colour: 'red' }));
    const { document, clashes } = mergeDocuments(set, mine, theirs);
    expect(clashes.map(({ what, mine: own, theirs: other }) => [what, own, other])).toEqual([
      ['wire 2', 'removed', 'kept, with changes']
    ]);
    expect(document.wires[wire2]).toBeUndefined();
    const [clash] = clashes;
    const decided = mergeDocuments(set, mine, theirs, new Map([[clash?.key ?? '', 'theirs']]));
    expect(decided.document.wires[wire2]?.found.colour).toBe('red');
  });

  it('with a copy that nobody touched changes nothing, and takes all where nothing was done here', () => {
    fc.assert(
      fc.property(
        arbitraryDocument(),
        fc.array(arbitraryEditPlan, { minLength: 1, maxLength: 4 }),
        (base, plans) => {
          const changed = follow(base, plans);
          const kept = mergeDocuments(base, changed, base);
          expect(kept.clashes).toEqual([]);
          expect(without(kept.document)).toEqual(without(changed));
          const taken = mergeDocuments(base, base, changed);
          expect(taken.clashes).toEqual([]);
          expect(taken.problem).toBeNull();
          expect(compareDocuments(changed, taken.document)).toEqual([]);
        }
      ),
      { seed: 12, numRuns: 150 }
    );
  });

  it('is the same whoever merges, where nothing clashes', () => {
    let clean = 0;
    fc.assert(
      fc.property(
        arbitraryDocument(),
        fc.array(arbitraryEditPlan, { minLength: 1, maxLength: 3 }),
        fc.array(arbitraryEditPlan, { minLength: 1, maxLength: 3 }),
        (base, ones, others) => {
          const [one, other] = [follow(base, ones), follow(base, others)];
          const there = mergeDocuments(base, one, other);
          const back = mergeDocuments(base, other, one);
          expect(back.clashes.length).toBe(there.clashes.length);
          if (there.clashes.length > 0 || there.problem !== null) return;
          clean++;
          expect(compareDocuments(there.document, back.document)).toEqual([]);
        }
      ),
      { seed: 13, numRuns: 150 }
    );
    expect(clean).toBeGreaterThan(30);
  });

  it('finds the revision that both came from', () => {
    const mine = buildRevision(edited(set, setFound(wire1, { awg: 18 })), set);
    const theirs = buildRevision(edited(set, setFound(wire2, { awg: 20 })), set);
    expect(compareRevisions(mine, theirs)).toBe('parted');
    const states = [hashOfDocument(mine), hashOfDocument(set)];
    expect(findCommonRevision(theirs, states)).toBe(hashOfDocument(set));
    expect(findCommonRevision(theirs, [hashOfDocument(mine)])).toBeNull();
    const merged = mergeDocuments(set, mine, theirs).document;
    expect(compareRevisions(merged, theirs)).toBe('first is later');
  });

  it('without a common revision asks about every difference and keeps what only one has', () => {
    const mine = edited(set, setFound(wire1, { awg: 18 }));
    const theirs = edited(set, setFound(wire1, { awg: 20 }), {
      kind: 'remove-wire',
      args: { id: wire2 }
    });
    const { document, clashes } = mergeDocuments(sharedPart(mine, theirs), mine, theirs);
    expect(clashes.map(({ what }) => what)).toEqual(['wire 1: gauge']);
    expect(document.wires[wire2]).toBeDefined();
  });
});

describe('a copy to be shared', () => {
  const shelf = {
    id: 's1',
    order: 'a0',
    name: 'red spool',
    kind: 'spool',
    lengthMm: 5000,
    pricePerMetre: 2.5,
    where: 'drawer 3'
  };
  const owned = edited(
    set,
    { kind: 'add-stock', args: { element: shelf } },
    setWireFields(wire1, {
      privateNotes: 'paid too much for it',
      planned: { stock: 's1', awg: 20 }
    }),
    setIdentity({ privateNotes: 'for Sunday' })
  );

  it('is without shelf, prices and private notes, and says so', () => {
    const copy = buildShareCopy(owned);
    const text = saveDocument(copy);
    for (const word of ['red spool', 'drawer 3', '2.5', 'paid too much', 'for Sunday'])
      expect(text).not.toContain(word);
    expect(copy.wires[wire1]?.planned).toEqual({ awg: 20 });
    expect(compareRevisions(copy, owned)).toBe('first is later');
  });

  it('has what was asked for', () => {
    const copy = buildShareCopy(owned, new Set(['shelf', 'private notes']));
    expect(copy.shelf['s1']).toMatchObject({ name: 'red spool', where: 'drawer 3' });
    expect(copy.shelf['s1']?.pricePerMetre).toBeUndefined();
    expect(copy.identity['privateNotes']).toBe('for Sunday');
  });

  it('that comes back changed takes nothing away that it was without', () => {
    const copy = buildShareCopy(owned);
    const back = buildRevision(edited(copy, setFound(wire2, { awg: 24 })), copy);
    expect(findCommonRevision(back, [hashOfDocument(owned)])).toBe(hashOfDocument(owned));
    const { document, clashes } = mergeDocuments(owned, owned, back);
    expect(clashes).toEqual([]);
    expect(document.shelf['s1']).toEqual(owned.shelf['s1']);
    expect(document.identity['privateNotes']).toBe('for Sunday');
    expect(document.wires[wire1]).toEqual(owned.wires[wire1]);
    expect(document.wires[wire2]?.found.awg).toBe(24);
  });
});
