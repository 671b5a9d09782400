// The cautions that belong to this work. They stand beside every danger and on every export.
import type { ChassisDocument, Part, Wire } from '#document/index.ts';
import { readRoles } from '#study/function-words.ts';

export const cautionIds = [
  'competence',
  'stored-charge',
  'hot-chassis',
  'implosion',
  'x-radiation',
  'lead-and-insulation',
  'local-codes'
] as const;
export type CautionId = (typeof cautionIds)[number];

export interface Caution {
  readonly id: CautionId;
  /** Two or three words, for a heading. */
  readonly title: string;
  /** One line, for the foot of a sheet. */
  readonly short: string;
  readonly text: string;
}

export const cautions: readonly Caution[] = [
  {
    id: 'competence',
    title: 'Lethal voltages',
    short: 'Lethal voltages: work on this only if you are competent to.',
    text: 'The voltages in this set can kill. Work on it only if you are competent to, never alone, and with the plug pulled wherever that will do. Nothing on these pages says that anything is safe.'
  },
  {
    id: 'stored-charge',
    title: 'Stored charge',
    short: 'Discharge the picture tube and the filters, leave the clip on, measure, then touch.',
    text: 'Filter capacitors and the picture tube stay charged after the plug is pulled, for hours where no bleeder works, and a charge comes back. Discharge them through a resistor to the chassis, leave the clip on, measure, and only then touch.'
  },
  {
    id: 'hot-chassis',
    title: 'Live chassis',
    short: 'The chassis may be live at line voltage: use an isolation transformer.',
    text: 'A chassis may be joined to the power line, with the plug either way round and with the switch off. Treat it as live until a meter says otherwise, feed it through an isolation transformer, and connect no grounded instrument to it without one.'
  },
  {
    id: 'implosion',
    title: 'Implosion',
    short: 'A picture tube can implode: cover your eyes, never lift it by the neck.',
    text: 'A picture tube can implode and throw glass. Cover your eyes and wrists, never lift it by the neck, never knock or scratch it, and keep others away while it is out of its mount.'
  },
  {
    id: 'x-radiation',
    title: 'X-radiation',
    short: 'Never raise the anode voltage above the published figure: it makes X-rays.',
    text: 'Tubes at many kilovolts make X-radiation, and far more of it when the anode voltage is raised. Keep the voltage at the published figure, keep shields and cage closed, and do not defeat a hold-down circuit.'
  },
  {
    id: 'lead-and-insulation',
    title: 'Lead and old insulation',
    short:
      'Old solder holds lead, old insulation may hold asbestos or worse: no dust, wash your hands.',
    text: 'Old solder holds lead, and old insulation, sleeving, wax and capacitors may hold asbestos, PCB or cadmium. Do not sand, burn or blow them off; ventilate, and wash your hands before you eat.'
  },
  {
    id: 'local-codes',
    title: 'Local codes first',
    short: 'Local codes and licensed practice come first.',
    text: 'Local codes and licensed practice come before anything that is written here, for the power cord, fuse, grounding and whatever stays in use after the repair.'
  }
];

const cautionById: ReadonlyMap<CautionId, Caution> = new Map(cautions.map((one) => [one.id, one]));

export function cautionOf(id: CautionId): Caution {
  const caution = cautionById.get(id);
  if (!caution) throw new RangeError(`no caution is called ${JSON.stringify(id)}`);
  return caution;
}

/** X-radiation begins to matter at many kilovolts; from memory, check against your local rules. */
const xRadiationFromV = 5000;

/** The cautions that apply to a document, in a fixed order. Those on picture tubes and X-radiation
 *  apply where it has such a tube or such a voltage; all others always. */
export function cautionsFor(document: ChassisDocument): readonly Caution[] {
  const hasPictureTube = Object.values(document.parts).some(isPictureTube);
  const hasHighVoltage = hasPictureTube || Object.values(document.wires).some(isHighVoltage);
  return cautions.filter(
    ({ id }) => (id !== 'implosion' || hasPictureTube) && (id !== 'x-radiation' || hasHighVoltage)
  );
}

const isPictureTube = (part: Part): boolean => part.kind === 'picture tube' || part.kind === 'yoke';

const isHighVoltage = ({ carries, function: words }: Wire): boolean =>
  Math.abs(carries.dcV ?? 0) >= xRadiationFromV ||
  (carries.pulseV ?? 0) >= xRadiationFromV ||
  (words !== undefined && readRoles(words).has('second anode'));

/** The caution that stands beside a danger at so many volts. */
export function cautionAtVolts(volts: number): string {
  const texts = [cautionOf('stored-charge').short];
  if (volts >= xRadiationFromV) texts.push(cautionOf('x-radiation').short);
  texts.push(cautionOf('competence').short);
  return texts.join(' ');
}
