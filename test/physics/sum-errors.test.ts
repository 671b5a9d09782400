// Whatever comes in, a sum answers with finite numbers or with a SumError, and with nothing else.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aboutInput, runSum, runSumOn, SumError, sums, type SumResult } from '#physics/index.ts';

function answerOrSumError(run: () => SumResult): void {
  let answer: SumResult;
  try {
    answer = run();
  } catch (error) {
    expect(error).toBeInstanceOf(SumError);
    if (error instanceof SumError) {
      expect(error.input).not.toBe('');
      expect(error.limit).not.toBe('');
      expect(error.wayOut).not.toBe('');
      expect(error.message).not.toMatch(/undefined|\[object/);
    }
    return;
  }
  for (const [name, { value }] of Object.entries(answer.results)) {
    expect(Number.isFinite(value), name).toBe(true);
  }
}

const strangeNumber = fc.oneof(
  fc.double(),
  fc.constantFrom(NaN, Infinity, -Infinity, 0, -0, -1, 1e-308, 1e308, 5e-324),
  fc.integer({ min: -100, max: 100_000 }),
  fc.double({ min: 0, max: 100, noNaN: true })
);
const strangeValue = fc.oneof(
  { weight: 6, arbitrary: strangeNumber },
  fc.constantFrom(undefined, null, '', 'bare', 'I', 'wire', true, {}),
  fc.array(strangeNumber, { maxLength: 5 })
);
const strangeText = fc.oneof(
  fc.string({ maxLength: 12 }),
  strangeNumber.map(String),
  fc
    .tuple(
      fc.double({ min: 0, max: 1e6, noNaN: true }),
      fc.constantFrom(
        'V',
        'kV',
        'VAC',
        'mA',
        'k',
        'MEG',
        'pF',
        'mm',
        'in',
        'C',
        'awg',
        'Hz',
        's',
        '%'
      )
    )
    .map(([value, unit]) => value.toPrecision(4) + unit)
);

describe.each(sums.map((sum) => ({ sum, id: sum.id })))('$id', ({ sum, id }) => {
  const names = Object.keys(sum.inputs.shape);
  const examples = Object.fromEntries(
    names.map((name) => [name, aboutInput(sum.inputs, name).example])
  );
  const good = runSum(id, examples).inputs;

  test('numbers, however strange', () => {
    const changes = fc.dictionary(fc.constantFrom(...names), strangeValue);
    fc.assert(
      fc.property(changes, (strange) => {
        answerOrSumError(() => runSumOn(id, { ...good, ...strange }));
      }),
      { seed: 11, numRuns: 150 }
    );
  });

  test('texts, however strange', () => {
    const changes = fc.dictionary(fc.constantFrom(...names, 'other'), strangeText);
    fc.assert(
      fc.property(changes, (strange) => {
        answerOrSumError(() => runSum(id, { ...examples, ...strange }));
      }),
      { seed: 12, numRuns: 150 }
    );
  });

  test('NaN, infinite and missing inputs are refused one by one', () => {
    for (const name of names) {
      if (typeof good[name] !== 'number') continue;
      for (const value of [NaN, Infinity, -Infinity, '22']) {
        expect(() => runSumOn(id, { ...good, [name]: value }), `${name} ${value}`).toThrow(
          SumError
        );
      }
    }
  });

  const amounts = names.flatMap((name) => {
    const { reading } = aboutInput(sum.inputs, name);
    return reading.as === 'amount' ? [{ name, ...reading }] : [];
  });
  const refusal = (run: () => SumResult): SumError => {
    try {
      run();
    } catch (error) {
      if (error instanceof SumError) return error;
      throw error;
    }
    throw new Error('it was answered');
  };

  test('what is left out is said to be missing, with what would do', () => {
    const needed = names.filter((name) => !sum.inputs.shape[name]!.safeParse(undefined).success);
    expect(needed.length > 0 || id === 'stress' || id === 'insulation-class').toBe(true);
    for (const name of needed) {
      const { [name]: left, ...others } = examples;
      expect(left).toBeDefined();
      const error = refusal(() => runSum(id, others));
      expect([error.problem, error.input, error.value]).toEqual(['missing', name, '']);
      expect(error.limit, name).not.toBe('');
    }
  });

  test.each(amounts)('$name past its limits is refused, with the value and the limit', (input) => {
    const { name, limits } = input;
    const { min = -Infinity, max = Infinity, above = false } = limits;
    // An input that takes any number at all would hold nothing back.
    expect(Number.isFinite(min) || Number.isFinite(max)).toBe(true);
    const past = fc.oneof(
      ...(Number.isFinite(min)
        ? [
            fc
              .double({ min: 0, max: 1e9, noNaN: true, minExcluded: !above })
              .map((by) => min - by)
              .filter((value) => value < min || (above && value === min))
          ]
        : []),
      ...(Number.isFinite(max)
        ? [
            fc
              .double({ min: 0, max: 1e9, noNaN: true, minExcluded: true })
              .map((by) => max + by)
              .filter((value) => value > max)
          ]
        : [])
    );
    fc.assert(
      fc.property(past, (value) => {
        const error = refusal(() => runSumOn(id, { ...good, [name]: value }));
        expect(error.input).toBe(name);
        expect(error.problem).toBe('out of range');
        expect(error.value).not.toBe('');
        expect(error.limit).not.toBe('');
      }),
      { seed: 13, numRuns: 60 }
    );
  });

  test.each(amounts)('$name in a unit of something else is refused', ({ name, dimension }) => {
    const wrong = dimension === 'voltage' ? ['5 mm', '2 ohm'] : ['5 kV', '300 VDC'];
    for (const text of [...wrong, '5 furlongs', '1.2.3', 'NaN', '--4']) {
      const error = refusal(() => runSum(id, { ...examples, [name]: text }));
      expect([error.input, error.value]).toEqual([name, text]);
    }
  });
});
