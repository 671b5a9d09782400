import { describe, expect, it } from 'vitest';
import { matcherOf } from '#editor/bench/filter-words.ts';
import { buildTopics, findTopicSum, topics } from '#editor/bench/topics.ts';
import { sums, type Sum } from '#physics/index.ts';

describe('topics', () => {
  it('hold every registered sum once', () => {
    const ids = topics.flatMap((topic) => topic.sums.map(({ sum }) => sum.id));
    expect([...ids].sort()).toEqual(sums.map(({ id }) => id).sort());
  });

  it('number topics and sums from 1', () => {
    expect(topics.map(({ number }) => number)).toEqual(topics.map((_, index) => index + 1));
    expect(topics[0]?.sums.map(({ number }) => number).slice(0, 2)).toEqual(['1.1', '1.2']);
    expect(findTopicSum('wire-size')?.number).toBe('1.1');
    expect(findTopicSum('no-such-sum')).toBeUndefined();
  });

  it('put a sum that no topic names last, and leave out topics without sums', () => {
    const newcomer: Sum = { ...sums[0]!, id: 'newcomer' };
    expect(buildTopics([newcomer]).map(({ title }) => title)).toEqual(['More sums']);
    expect(
      buildTopics([...sums, newcomer])
        .at(-1)
        ?.sums.map(({ sum }) => sum.id)
    ).toContain('newcomer');
  });
});

describe('a filter', () => {
  it('wants all words, anywhere, whatever the capitals', () => {
    expect(matcherOf('PVC  awg')('a wire by AWG', 'of pvc')).toBe(true);
    expect(matcherOf('pvc silk')('a wire of pvc')).toBe(false);
    expect(matcherOf('  ')('anything')).toBe(true);
  });
});
