// What is said about keeping, when, and with which way out.
import { keepLineOf, nagAfterEdits, type KeepStanding } from '#editor/files/keep-words.ts';
import { progressWords, whenWords } from '#editor/files/kept-words.ts';
import { buildPreview, isPreview } from '#editor/files/preview.ts';
import type { DisplayItem } from '#drawing/index.ts';
import { describe, expect, it } from 'vitest';

const well: KeepStanding = {
  newerVersion: null,
  isFollowing: false,
  problem: null,
  isPromised: true,
  editsSinceFile: 1000,
  putOffAt: 0
};

describe('the line on keeping', () => {
  it('is not there where all is well', () => {
    expect(keepLineOf(well)).toBeNull();
    expect(
      keepLineOf({ ...well, isPromised: false, editsSinceFile: nagAfterEdits - 1 })
    ).toBeNull();
  });

  it('offers to take over where another window writes', () => {
    expect(keepLineOf({ ...well, isFollowing: true, problem: 'x' })?.actions).toEqual([
      'take over'
    ]);
  });

  it('says what failed, and offers a file right there', () => {
    const line = keepLineOf({ ...well, problem: 'the browser has no room left' });
    expect(line?.words).toContain('Not kept: the browser has no room left.');
    expect(line?.actions).toEqual(['save a file', 'try again']);
  });

  it('asks for a file where the browser promises nothing, and again after as much work', () => {
    const standing = { ...well, isPromised: false, editsSinceFile: nagAfterEdits };
    expect(keepLineOf(standing)?.words).toContain(`the last ${nagAfterEdits} changes`);
    const later = { ...standing, putOffAt: nagAfterEdits };
    expect(keepLineOf(later)).toBeNull();
    expect(keepLineOf({ ...later, editsSinceFile: 2 * nagAfterEdits })).not.toBeNull();
  });
});

describe('a chassis in the list', () => {
  const none = { found: 0, tagged: 0, removed: 0, fitted: 0, checked: 0 };
  it.each([
    [undefined, ''],
    [none, 'no wires yet'],
    [{ ...none, found: 1 }, '1 wire: all found'],
    [{ ...none, found: 28, fitted: 12 }, '40 wires: 28 found, 12 fitted']
  ])('%j is "%s"', (states, words) => {
    expect(progressWords(states ? { states } : {})).toBe(words);
  });

  it('says when, in full where the clock was set back', () => {
    const noon = new Date(2026, 10, 26, 12, 0).getTime();
    expect(whenWords(noon - 1000, noon, 'en-GB')).toBe('just now');
    expect(whenWords(noon - 3_600_000, noon, 'en-GB')).toBe('today, 11:00');
    expect(whenWords(noon - 86_400_000, noon, 'en-GB')).toBe('25 Nov 2026, 12:00');
    expect(whenWords(noon + 3_600_000, noon, 'en-GB')).toBe('26 Nov 2026, 13:00');
  });
});

describe('a preview', () => {
  const item = (
    layer: DisplayItem['layer'],
    style: string,
    shape: DisplayItem['shape']
  ): DisplayItem => ({ id: `${style}`, layer, order: 0, shape, style });
  const bounds = { x: 100, y: 0, width: 640, height: 320 };

  it('holds lines by tone on a coarse grid, each once', () => {
    const line = { kind: 'line', points: [100, 0, 100.4, 0, 740, 320] } as const;
    const preview = buildPreview({
      bounds,
      items: [
        item('wires', 'wire.600', line),
        item('wires', 'wire.600', line),
        item('wires', 'wire.20k+', { ...line, points: [420, 160, 740, 160] }),
        item('parts', 'part.body', { kind: 'box', x: 100, y: 0, width: 64, height: 32 }),
        item('numbers', 'number.600.box', line)
      ]
    });
    expect(preview).toEqual({
      width: 320,
      height: 160,
      paths: { wire: 'M0 0L320 160', high: 'M160 80L320 80', part: 'M0 0L32 0L32 16L0 16L0 0' }
    });
    expect(isPreview(preview)).toBe(true);
    expect(isPreview(structuredClone(preview))).toBe(true);
  });

  it('is none of nothing', () => {
    expect(buildPreview({ bounds, items: [] })).toBeNull();
    expect(buildPreview({ bounds: { x: 0, y: 0, width: 0, height: 0 }, items: [] })).toBeNull();
  });

  it.each([
    [null],
    ['M0 0'],
    [{ width: 1, height: 1 }],
    [{ width: 1, height: 1, paths: { wire: '"/><script>' } }],
    [{ width: 1, height: 1, paths: { other: 'M0 0L1 1' } }],
    [{ width: '1', height: 1, paths: {} }]
  ])('is not %j', (value) => {
    expect(isPreview(value)).toBe(false);
  });

  it('says of a newer document that it is not changed here, after what is worse', () => {
    const line = keepLineOf({ ...well, newerVersion: 99, editsSinceFile: 99, isPromised: false });
    expect([line?.weight, line?.actions]).toEqual(['note', []]);
    expect(line?.words).toContain('newer version of this program (99)');
    expect(keepLineOf({ ...well, newerVersion: 99, problem: 'x' })?.weight).toBe('danger');
  });
});
