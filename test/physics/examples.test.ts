// Every example in a docstring of the room is run.
import { expect, test } from 'vitest';
import * as physics from '#physics/index.ts';
import { evaluateExample, findExamples } from '../helpers/docstring-examples.ts';

const examples = findExamples('src/lib/physics');

test('the room has examples', () => {
  expect(examples.length).toBeGreaterThan(10);
});

test.each(examples)('$file: $expression', ({ expression, expected }) => {
  const value = evaluateExample(expression, { ...physics });
  const wanted: unknown = JSON.parse(expected);
  if (typeof wanted === 'number') {
    // The example prints about six digits.
    expect(Math.abs(Number(value) - wanted)).toBeLessThanOrEqual(Math.abs(wanted) * 2e-6);
  } else {
    expect(value).toEqual(wanted);
  }
});
