// Study and rules against zod's parse of the same document, on generated chassis.
import { runChecks } from '#checks/index.ts';
import { documentSchema } from '#document/index.ts';
import { buildStudy } from '#study/index.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { measure, ratioLine } from './measure.ts';

/** Prints a line for each size: study, and study with rules, as ratios to zod's parse. */
export function benchStudy(sizes: readonly number[] = [100, 300, 1000]): void {
  for (const wires of sizes) {
    const document = generateChassis(wires);
    const text = JSON.stringify(document);
    const plain: unknown = JSON.parse(text);
    const parse = measure("zod's parse", () => documentSchema.parse(plain));
    const study = measure('study', () => buildStudy(document));
    const both = measure('study + rules', () => runChecks(buildStudy(document)));
    console.log(`${wires} wires: ${ratioLine(study, parse)}; ${ratioLine(both, parse)}`);
  }
}
