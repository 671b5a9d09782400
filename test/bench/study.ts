// Study and rules against zod's parse of the same document, growth from size to size, and an edit against
// a study from nothing; on generated chassis.
import { makeChecker, runChecks } from '#checks/index.ts';
import { applyEdit, documentSchema, type ChassisDocument, type Wire } from '#document/index.ts';
import { buildStudy, updateStudy } from '#study/index.ts';
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

/** Prints how study and rules grow when a chassis doubles. */
export function benchGrowth(wires = 1000): void {
  const half = generateChassis(wires);
  const whole = generateChassis(2 * wires);
  const small = measure(`that of ${wires}`, () => runChecks(buildStudy(half)));
  const large = measure(`study + rules of ${2 * wires} wires`, () => runChecks(buildStudy(whole)));
  console.log(ratioLine(large, small));
}

const changes: Readonly<
  Record<string, (wire: Wire, turn: number, document: ChassisDocument) => object>
> = {
  'a colour': (_, turn) => ({ found: { colour: turn % 2 === 0 ? 'blue' : 'green' } }),
  'a gauge': (_, turn) => ({ found: { awg: turn % 2 === 0 ? 20 : 24 } }),
  'declared volts': (_, turn) => ({ carries: { dcV: 100 + turn } }),
  'an end': ({ id }, _, document) => {
    const ids = Object.keys(document.wires);
    const other = ids[(ids.indexOf(id) + 37) % ids.length];
    return { to: other === undefined ? undefined : document.wires[other]?.to };
  }
};

/** Prints what study and rules cost after one wire was changed, against those from nothing. */
export function benchEdits(wires = 1000): void {
  const document = generateChassis(wires);
  const before = buildStudy(document);
  const full = measure('a study from nothing', () => buildStudy(document));
  const rules = measure('all rules from nothing', () => runChecks(before));
  const all = Object.values(document.wires);
  for (const [what, fieldsOf] of Object.entries(changes)) {
    const edited = Array.from({ length: 100 }, (_, turn) => {
      const wire = all[(turn * 7 + 3) % all.length];
      if (!wire) throw new RangeError('a chassis without wires');
      const fields = fieldsOf(wire, turn, document) as Record<string, unknown>;
      const applied = applyEdit(document, { kind: 'change-wire', args: { id: wire.id, fields } });
      if (!applied.ok) throw new RangeError(applied.problem);
      return applied.document;
    });
    let turn = 0;
    const next = (): ChassisDocument => edited[turn++ % edited.length] ?? document;
    const after = measure(`${what} changed, the study after`, () => updateStudy(before, next()));
    console.log(`${wires} wires, ${ratioLine(after, full)}`);
    const studies = edited.slice(0, 20).map((one) => updateStudy(before, one));
    const check = makeChecker();
    const again = measure(`${what} changed, the rules after`, () => {
      // From the same study each time, as an edit is followed by its undo.
      check(before);
      return check(studies[turn++ % studies.length] ?? before);
    });
    console.log(`${wires} wires, there and back: ${ratioLine(again, rules)}`);
  }
}
