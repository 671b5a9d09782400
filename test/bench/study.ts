// Study and rules against zod's parse of the same document, and growth from size to size; on generated
// chassis.
import { runChecks } from '#checks/index.ts';
import { documentSchema } from '#document/index.ts';
import { buildStudy } from '#study/index.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { judge, type Verdict } from './goals.ts';
import { measure, measureBeside } from './measure.ts';

/** Study and rules together cost at most so many parses. */
const parsesAtMost = 40;
/** Twice the wires cost at most so many times as much. */
const growthAtMost = 2.3;

/** A line for each size: study with rules against zod's parse. */
export function benchStudy(sizes: readonly number[] = [100, 300, 1000]): readonly Verdict[] {
  return sizes.map((wires) => {
    const document = generateChassis(wires);
    const plain: unknown = JSON.parse(JSON.stringify(document));
    const parse = measure("zod's parse", () => documentSchema.parse(plain));
    const both = measure('study + rules', () => runChecks(buildStudy(document)));
    return judge(`${wires} wires`, both, parse, parsesAtMost);
  });
}

/** How study and rules grow when a chassis doubles. */
export function benchGrowth(wires = 1000): readonly Verdict[] {
  const half = generateChassis(wires);
  const whole = generateChassis(2 * wires);
  const [large, small] = measureBeside(
    { name: 'study + rules', work: () => runChecks(buildStudy(whole)) },
    { name: `those of ${wires} wires`, work: () => runChecks(buildStudy(half)) },
    1
  );
  return [judge(`${2 * wires} wires`, large, small, growthAtMost)];
}
