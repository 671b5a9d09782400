// Every example in a docstring of the room is run.
import { expect, test } from 'vitest';
import { readGauge } from '#quantity/gauge.ts';
import * as quantity from '#quantity/index.ts';
import { evaluateExample, findExamples } from '../helpers/docstring-examples.ts';

const examples = findExamples('src/lib/quantity');

test('the room has examples', () => {
  expect(examples.length).toBeGreaterThan(8);
});

test.each(examples)('$file: $expression', ({ expression, expected }) => {
  const value = evaluateExample(expression, { ...quantity, readGauge });
  expect(value).toEqual(JSON.parse(expected));
});
