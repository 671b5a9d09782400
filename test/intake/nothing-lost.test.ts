// Whatever the columns are called and however they stand, the text of every cell of a wire comes out
// again: in the document, or in a note that says that it was left out.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readText } from './read-list.ts';

const ends = [
  'From', 'To', 'Start', 'End', 'Finish', 'Origin', 'Destination', 'A', 'B', 'Point', 'Von', 'Nach',
  'Source', 'End A', 'End B', 'From part', 'To part', 'From pin', 'To pin', 'Part', 'Pin', 'Item'
]; // prettier-ignore
const others = [
  'No', 'Colour', 'Tracer', 'Function', 'Use', 'Notes', 'Remarks', 'Condition', 'Cable', 'Type', 'Unit',
  'Volts dc', 'Volts', 'mA', 'Length (in)', 'Gauge', 'Rating', 'New wire', 'State', 'Bin', 'Anything'
]; // prettier-ignore

test('the text of every cell is kept (seed 31)', () => {
  const headings = fc
    .tuple(
      fc.uniqueArray(fc.constantFrom(...ends), { minLength: 2, maxLength: 4 }),
      fc.uniqueArray(fc.constantFrom(...others), { minLength: 0, maxLength: 6 })
    )
    .chain(([some, more]) =>
      fc.shuffledSubarray([...some, ...more], {
        minLength: some.length + more.length,
        maxLength: some.length + more.length
      })
    );
  let read = 0;
  fc.assert(
    fc.property(headings, (names) => {
      const cells = names.map((name, index) =>
        ends.includes(name)
          ? `TS${index + 1}-${index + 11}`
          : `word${String.fromCharCode(97 + index)}q`
      );
      const { document, notes } = readText(`${names.join(',')}\n${cells.join(',')}\n`);
      if (!document) return;
      read += 1;
      const kept = JSON.stringify(document) + notes.map(({ text }) => text).join('\n');
      for (const cell of cells)
        for (const piece of cell.split('-'))
          expect(kept.includes(piece), `${names.join(',')}: "${cell}"`).toBe(true);
    }),
    { seed: 31, numRuns: 600 }
  );
  expect(read).toBeGreaterThan(300);
});
