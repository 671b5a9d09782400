// Conductors as they are offered: a piece of the shelf, or what somebody planned, read the same way.
import type { ChassisDocument, Planned, Stock, Wire } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { styleOf } from '#study/wire-rating.ts';
import type { Offer, StockType, VoltsKind, WireForm } from './types.ts';

const formByConstruction: ReadonlyMap<string, WireForm> = new Map([
  ['bare bus', 'bare'],
  ['jumper', 'bare'],
  ['braid', 'braid'],
  ['coax', 'coax'],
  ['twin lead', 'twin lead'],
  ['shielded pair', 'cable'],
  ['shielded wire', 'cable'],
  ['multi-conductor', 'cable']
]);

export const formOf = (construction: string | undefined): WireForm =>
  formByConstruction.get(construction ?? '') ?? 'insulated';

type Fields = Pick<
  Planned,
  | 'awg'
  | 'stranding'
  | 'plating'
  | 'colour'
  | 'tracer'
  | 'insulation'
  | 'style'
  | 'ratingV'
  | 'ratingKind'
  | 'ratingC'
>;

function readFields(fields: Fields): Omit<Offer, 'name' | 'form'> {
  const { ratingV, ratingKind = 'any' } = fields;
  const row = styleOf(fields.style) ?? styleOf(fields.insulation);
  const ratings: Partial<Record<VoltsKind | 'any', number>> = {};
  if (ratingV !== undefined) ratings[ratingKind] = ratingV;
  else if (row?.volts !== null && row?.volts !== undefined) ratings[ratingKind] = row.volts;
  return {
    awg: fields.awg ?? null,
    stranding: fields.stranding ?? null,
    plating: fields.plating ?? null,
    celsius: fields.ratingC ?? row?.celsius ?? null,
    ratings,
    style: fields.style ?? null,
    insulation: fields.insulation ?? row?.insulation ?? null,
    colour: fields.colour ?? null,
    tracer: fields.tracer ?? null
  };
}

/** What is planned for a wire, with what is not said taken from elsewhere by the caller. */
export const offerOfPlanned = (wire: Wire, form: WireForm): Offer => ({
  name: wire.planned.style ?? wire.planned.insulation ?? 'as planned',
  form,
  ...readFields(wire.planned)
});

/** Alternating volts are rated in rms; insulation stands their peak. */
function offerOfStock(stock: Stock): Offer {
  const own = readFields(stock);
  const { dcV, acRmsV, pulseV } = stock.ratings ?? {};
  return {
    name: stock.name,
    form: formOf(stock.construction),
    ...own,
    ratings: {
      ...own.ratings,
      ...(dcV === undefined ? {} : { dc: dcV }),
      ...(acRmsV === undefined ? {} : { ac: acRmsV * Math.SQRT2 }),
      ...(pulseV === undefined ? {} : { pulse: pulseV })
    }
  };
}

/** The shelf by types: pieces that differ in nothing but length and place. In the order of the shelf. */
export function stockTypesOf(document: ChassisDocument): readonly StockType[] {
  const types = new Map<string, { offer: Offer; pieces: Stock[] }>();
  for (const stock of sortByOrder(document.shelf)) {
    const offer = offerOfStock(stock);
    const { name: _name, ...same } = offer;
    const key = JSON.stringify([same, stock.construction ?? null]);
    const known = types.get(key);
    if (known) known.pieces.push(stock);
    else types.set(key, { offer, pieces: [stock] });
  }
  return [...types].map(([key, { offer, pieces }]) => ({
    ...offer,
    key,
    pieces,
    onHandMm: pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0)
  }));
}
