// Capture first: while a chassis is traced only dangers are said, and in no way of working is one put away.
import { describe, expect, it } from 'vitest';
import { severities } from '#checks/index.ts';
import { bookCommandOf } from '#editor/ui/book-keys.ts';
import { hiddenIn, ways } from '#editor/core/ways.ts';

describe('the ways of working', () => {
  it('never put a danger away', () => {
    for (const way of ways) expect(hiddenIn(way)).not.toContain('danger');
  });

  it('let everything but dangers wait while one captures', () =>
    expect([...hiddenIn('capture')].sort()).toEqual(
      severities.filter((severity) => severity !== 'danger').sort()
    ));
});

describe('the key of the pin walk', () => {
  const press = { key: 'P', ctrlKey: false, metaKey: false, altKey: false, shiftKey: true };
  it('is Shift+P alone', () => {
    expect(bookCommandOf(press)).toBe('walk');
    expect(bookCommandOf({ ...press, key: 'p', shiftKey: false })).toBeNull();
    expect(bookCommandOf({ ...press, ctrlKey: true })).not.toBe('walk');
  });
});
