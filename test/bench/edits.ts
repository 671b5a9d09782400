// One wire changed in a chassis of 1,000: the study and the rules after it against those from nothing. A
// ground or rail wire is measured apart from a signal wire, since hundreds of others share its net.
import { makeChecker, runChecks } from '#checks/index.ts';
import { applyEdit, type ChassisDocument, type Wire } from '#document/index.ts';
import { buildStudy, updateStudy, type Study } from '#study/index.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { judge, type Verdict } from './goals.ts';
import { measureBeside } from './measure.ts';

/** The study after an edit of one wire costs at most so much of a full one. */
const studyAtMost = 1 / 20;
/** The rules after it, of a full run of them. */
const rulesAtMost = 1 / 5;
const editsALine = 20;

/** @param others wires of the same sort; the wire itself may be among them
 *  @param all every wire */
type Change = (
  wire: Wire,
  turn: number,
  others: readonly Wire[],
  all: readonly Wire[]
) => Readonly<Record<string, unknown>>;

const changes: Readonly<Record<string, Change>> = {
  'colour of': (_, turn) => ({ found: { colour: turn % 2 === 0 ? 'blue' : 'green' } }),
  'gauge of': (_, turn) => ({ found: { awg: turn % 2 === 0 ? 20 : 24 } }),
  'volts of': (_, turn) => ({ carries: { dcV: 100 + turn } }),
  'an end moved to another of its sort,': (wire, _, others) => ({
    to: others[(others.indexOf(wire) + 7) % others.length]?.to
  }),
  'an end moved anywhere,': (wire, _, _others, all) => ({
    to: all[(all.indexOf(wire) + 37) % all.length]?.to
  })
};

/** Wires by what they are on: the chassis and the supply rails, or anything else. */
const sortWires = ({ index, wires, nets }: Study): Readonly<Record<string, readonly Wire[]>> => {
  const isShared = ({ id }: Wire): boolean => {
    const net = nets.get(wires.get(id)?.net ?? '');
    return net !== undefined && (net.isChassis || net.isSupply);
  };
  return {
    'a signal wire': index.wires.filter((wire) => !isShared(wire)),
    'a ground or rail wire': index.wires.filter(isShared)
  };
};

const editDocument = (
  document: ChassisDocument,
  { id }: Wire,
  fields: Readonly<Record<string, unknown>>
): ChassisDocument => {
  const applied = applyEdit(document, { kind: 'change-wire', args: { id, fields } });
  if (!applied.ok) throw new RangeError(applied.problem);
  return applied.document;
};

/** Two lines for each change of each sort of wire. */
export function benchEdits(wires = 1000): readonly Verdict[] {
  const document = generateChassis(wires);
  const before = buildStudy(document);
  const all = before.index.wires;
  const verdicts: Verdict[] = [];
  for (const [sort, own] of Object.entries(sortWires(before))) {
    for (const [what, fieldsOf] of Object.entries(changes)) {
      const edited = Array.from({ length: editsALine }, (_, turn) => {
        const wire = own[(turn * 7 + 3) % own.length];
        if (!wire) throw new RangeError(`a chassis without ${sort}`);
        return editDocument(document, wire, fieldsOf(wire, turn, own, all));
      });
      verdicts.push(...benchChange(`${what} ${sort}`, before, edited));
    }
  }
  return verdicts;
}

function benchChange(
  label: string,
  before: Study,
  edited: readonly ChassisDocument[]
): readonly Verdict[] {
  let turn = 0;
  const [after, full] = measureBeside(
    {
      name: 'the study after',
      work: () => updateStudy(before, edited[turn++ % edited.length] ?? before.document)
    },
    { name: 'one from nothing', work: () => buildStudy(before.document) },
    edited.length
  );
  const studies = edited.map((document) => updateStudy(before, document));
  const check = makeChecker();
  check(before);
  const [again, rules] = measureBeside(
    {
      name: 'the rules after it and after its undo',
      work: () => {
        check(studies[turn++ % studies.length] ?? before);
        check(before);
      }
    },
    { name: 'all of them from nothing, twice', work: () => [runChecks(before), runChecks(before)] },
    edited.length
  );
  return [judge(label, after, full, studyAtMost), judge(label, again, rules, rulesAtMost)];
}
