import { describe, expect, it } from 'vitest';
import { limitFold, Preferences, type PreferenceStore } from '#editor/core/preferences.svelte.ts';
import { carriesText, counted, lengthText, needText } from '#editor/core/words.ts';
import { sheetCommandOf } from '#editor/sheet/sheet-keys.ts';
import { stringPath } from '#editor/tag/string-path.ts';
import { bookCommandOf } from '#editor/ui/book-keys.ts';
import type { Amount, Need } from '#study/index.ts';

const amount = (value: number): Amount => ({ value, how: 'declared', basis: 'declared' });
const need = (more: Partial<Need>): Need => ({
  requiredV: 600,
  preferredV: 1000,
  beyondLadder: false,
  atLeast: false,
  askedV: 500,
  basis: '',
  ...more
});

describe('words', () => {
  it('never gives a class to what is not known, and says at least for a lower bound', () => {
    expect(needText(null)).toBe('not known');
    expect(needText(need({ atLeast: true }))).toBe('at least 600 V');
    expect(needText(need({ requiredV: 40_000, beyondLadder: true }))).toBe('over 40 kV');
  });

  it('says what is carried, leaving out nought beside the rest', () => {
    const nothing = { dcV: null, acV: null, pulseV: null, amps: null };
    expect(carriesText(nothing)).toBe('');
    expect(carriesText({ ...nothing, dcV: amount(0) })).toBe('0 V');
    expect(
      carriesText({ dcV: amount(0), acV: amount(6.3), pulseV: null, amps: amount(0.45) })
    ).toBe('6.3 V ac, 450 mA');
    expect(carriesText({ ...nothing, dcV: amount(285), pulseV: amount(5000) })).toBe(
      '285 V dc, 5 kV pk'
    );
  });

  it('rounds a cut length up, never down', () => {
    expect(lengthText(461, 'in', 'up')).toBe('18 1/4 in');
    expect(lengthText(460, 'mm')).toBe('460 mm');
    expect(counted(1, 'wire')).toBe('1 wire');
  });
});

describe('keys', () => {
  const press = (key: string, more: object = {}) =>
    bookCommandOf({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...more });

  it('undo and redo, also where the command key is another', () => {
    expect(press('z', { ctrlKey: true })).toBe('undo');
    expect(press('Z', { metaKey: true, shiftKey: true })).toBe('redo');
    expect(press('z')).toBeNull();
    expect(press('z', { ctrlKey: true, altKey: true })).toBeNull();
  });

  it('zoom, fit and move the paper', () => {
    expect(sheetCommandOf('+')).toEqual({ kind: 'zoom', factor: 1.3 });
    expect(sheetCommandOf('0')).toEqual({ kind: 'fit' });
    expect(sheetCommandOf('ArrowRight', true)).toEqual({ kind: 'pan', dx: -240, dy: 0 });
    expect(sheetCommandOf('q')).toBeNull();
  });
});

describe('preferences', () => {
  const storeOf = (
    entries: Record<string, string>
  ): PreferenceStore & { entries: Record<string, string> } => ({
    entries,
    getItem: (key) => entries[key] ?? null,
    setItem: (key, value) => {
      entries[key] = value;
    }
  });

  it('are remembered', () => {
    const store = storeOf({});
    new Preferences(store).setTheme('dark');
    expect(new Preferences(store).theme).toBe('dark');
  });

  it('fall back where the browser holds nonsense or refuses', () => {
    expect(new Preferences(storeOf({ 'underchassis.theme': 'pink' })).theme).toBe('system');
    const refusing: PreferenceStore = {
      getItem: () => {
        throw new Error('denied');
      },
      setItem: () => {
        throw new Error('denied');
      }
    };
    const preferences = new Preferences(refusing);
    preferences.setLengthUnit('in');
    expect(preferences.lengthUnit).toBe('in');
    expect(limitFold(5)).toBeLessThan(1);
  });
});

describe('the string of the tag', () => {
  it('runs from the hole to the place', () => {
    expect(stringPath({ x: 10, y: 200 }, { x: 300, y: 50 })).toMatch(
      /^M10\.0 200\.0C.* 300\.0 50\.0$/
    );
  });
});
