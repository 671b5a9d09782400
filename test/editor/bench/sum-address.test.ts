import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatSumAddress, parseSumAddress } from '#editor/bench/sums/sum-address.ts';

describe('the address of a sum', () => {
  it('holds the sum and what was typed, as it was typed', () => {
    const address = { id: 'voltage-drop', texts: { awg: '22', length: '7 1/2"', amps: '450 mA' } };
    expect(formatSumAddress(address)).toBe('#voltage-drop?awg=22&length=7+1%2F2%22&amps=450+mA');
    expect(parseSumAddress(formatSumAddress(address))).toEqual(address);
  });

  it('leaves blank fields out', () => {
    expect(formatSumAddress({ id: 'stress', texts: { dc: ' ', ac: '' } })).toBe('#stress');
    expect(parseSumAddress('#stress?dc=&ac=6.3')).toEqual({ id: 'stress', texts: { ac: '6.3' } });
  });

  it('is none where no sum is named', () => {
    for (const hash of ['', '#', '#?dc=1', '# ']) expect(parseSumAddress(hash), hash).toBeNull();
  });

  it('reads whatever stands in an address bar', () => {
    expect(parseSumAddress('#100%')).toEqual({ id: '100%', texts: {} });
    expect(parseSumAddress('#stress?dc=%E0%A4%A')?.id).toBe('stress');
    const odd = parseSumAddress('#stress?__proto__=1');
    expect(Object.hasOwn(odd?.texts ?? {}, '__proto__')).toBe(true);
    expect(({} as Record<string, unknown>)['1']).toBeUndefined();
  });

  it('comes back from any text', () => {
    const texts = fc.dictionary(
      fc.stringMatching(/^[a-z][a-z0-9_]{0,8}$/),
      fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== '')
    );
    fc.assert(
      fc.property(fc.stringMatching(/^[a-z-]{1,20}$/), texts, (id, typed) => {
        const address = parseSumAddress(formatSumAddress({ id, texts: typed }));
        expect(address).toEqual({ id, texts: { ...typed } });
      }),
      { seed: 20_114, numRuns: 300 }
    );
  });
});
