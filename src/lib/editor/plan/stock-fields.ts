// The fields of a piece of wire on the shelf as people write them: a table with one row a field, for the
// form and for pasted rows. An emptied field takes the value away.
import type { Changes } from '#document/edits.ts';
import { constructions, type Stock } from '#document/index.ts';
import { readColourCell } from '#intake/conductor-cells.ts';
import { readGaugeCell } from '#intake/gauge-cells.ts';
import { wireResistanceOhm } from '#physics/conductor.ts';
import { formatAwg, formatNumber, formatVolts, parseQuantity } from '#quantity/index.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { colourText, lengthText } from '../core/words.ts';
import { mmPerFoot } from './stock-length.ts';

export type StockReading =
  | { readonly ok: true; readonly fields: Changes<Stock>; readonly understood: string | null }
  | { readonly ok: false; readonly why: string };

export interface StockField {
  readonly id: string;
  readonly label: string;
  /** How to write it. */
  readonly hint?: string;
  readonly choices?: readonly string[];
  /** Headings of pasted rows that mean it. */
  readonly heading: RegExp;
  readonly show: (stock: Stock, unit: LengthUnit) => string;
  readonly read: (text: string, stock: Partial<Stock>, unit: LengthUnit) => StockReading;
}

const good = (fields: Changes<Stock>, understood: string | null = null): StockReading => ({
  ok: true,
  fields,
  understood
});
const bad = (why: string): StockReading => ({ ok: false, why });

const words = (
  key: 'where' | 'notes' | 'insulation' | 'style',
  label: string,
  heading: RegExp,
  hint?: string
): StockField => ({
  id: key,
  label,
  heading,
  ...(hint === undefined ? {} : { hint }),
  show: (stock) => stock[key] ?? '',
  read: (text) => good({ [key]: text.trim() === '' ? null : text.trim() })
});

const choice = (
  key: 'kind' | 'construction' | 'stranding' | 'plating',
  label: string,
  choices: readonly string[],
  heading: RegExp
): StockField => ({
  id: key,
  label,
  choices,
  heading,
  show: (stock) => stock[key] ?? '',
  read: (text) => {
    const plain = text.trim().toLowerCase();
    if (plain === '' && key !== 'kind') return good({ [key]: null });
    const found = choices.find((each) => each !== '' && each === plain);
    return found === undefined
      ? bad(`"${text}" is none of ${choices.filter(Boolean).join(', ')}`)
      : good({ [key]: found });
  }
});

const volts = (key: 'dcV' | 'acRmsV' | 'pulseV', label: string, heading: RegExp): StockField => ({
  id: key,
  label,
  heading,
  hint: '600 V, 15 kV',
  show: ({ ratings }) => (ratings?.[key] === undefined ? '' : formatVolts(ratings[key])),
  read: (text) => {
    if (text.trim() === '') return good({ ratings: { [key]: null } });
    const read = parseQuantity(text, 'voltage');
    return read.ok
      ? good({ ratings: { [key]: Math.abs(read.value) } }, read.understood)
      : bad(read.problem);
  }
});

/** "12 m", "40 ft", or what the whole of it reads end to end: "1.3 ohm", from which the length is reckoned. */
function readLength(text: string, stock: Partial<Stock>, unit: LengthUnit): StockReading {
  const length = parseQuantity(text, 'length', { defaultUnit: unit === 'mm' ? 'm' : 'ft' });
  if (length.ok)
    return length.value >= 0
      ? good({ lengthMm: length.value }, `${formatNumber(length.value / 1000)} m`)
      : bad('a length cannot be below nought');
  const resistance = parseQuantity(text, 'resistance');
  if (!resistance.ok || !/[oΩΩ]|ohm/i.test(text)) return bad(length.problem);
  if (stock.awg === undefined) return bad('from ohms a length is reckoned only with its gauge');
  const ohmsPerMetre = wireResistanceOhm({
    awg: stock.awg,
    lengthM: 1,
    temperatureC: 20,
    plating: stock.plating === 'tinned' && stock.awg <= 40 ? 'tinned' : 'bare'
  });
  const metres = resistance.value / ohmsPerMetre;
  return good(
    { lengthMm: Math.floor(metres * 1000) },
    `${formatNumber(metres, 3)} m: ${formatNumber(resistance.value)} Ω at ${formatNumber(ohmsPerMetre * 1000, 3)} mΩ a metre of ${formatAwg(stock.awg)} at 20 °C, leads nulled`
  );
}

/** "0.42", "0.42/m" or "0.13 / ft", in whatever money the shelf is kept. */
function readPrice(text: string): StockReading {
  if (text.trim() === '') return good({ pricePerMetre: null });
  const [, figure = '', unit = 'm'] =
    /^[^\d.,]*([\d.,]+)[^\d/a-z]*(?:\/|per|a)?\s*(m|metre|meter|ft|foot)?\.?$/i.exec(text.trim()) ??
    [];
  const read = parseQuantity(figure, 'number');
  if (!read.ok || read.value < 0) return bad(`"${text}" is no price: write 0.42/m or 0.13/ft`);
  const isFoot = /^f/i.test(unit);
  const perMetre = isFoot ? read.value / (mmPerFoot / 1000) : read.value;
  return good({ pricePerMetre: perMetre }, isFoot ? `${formatNumber(perMetre)} a metre` : null);
}

export const stockFields: readonly StockField[] = [
  {
    id: 'name',
    label: 'Name',
    heading: /^(name|what|item|wire|description)/i,
    hint: '22 AWG red',
    show: ({ name }) => name,
    read: (text) => good({ name: text.trim() })
  },
  choice('kind', 'It is', ['spool', 'offcut', 'salvage'], /^(kind|sort|spool)/i),
  {
    id: 'length',
    label: 'On hand',
    heading: /^(on hand|length|left|have)/i,
    hint: '12 m, 40 ft, or its ohms',
    show: ({ lengthMm }, unit) =>
      unit === 'mm'
        ? `${formatNumber(lengthMm / 1000)} m`
        : `${formatNumber(lengthMm / mmPerFoot)} ft`,
    read: readLength
  },
  choice('construction', 'Construction', ['', ...constructions], /^(construction|make)/i),
  {
    id: 'awg',
    label: 'Gauge',
    heading: /^(gauge|awg|size)/i,
    hint: '22, 0.64 mm',
    show: ({ awg }) => (awg === undefined ? '' : formatAwg(awg)),
    read: (text) => {
      if (text.trim() === '') return good({ awg: null });
      const { awg, stranding, plating, remark, problem } = readGaugeCell(text);
      if (awg === null || problem !== null) return bad(problem ?? `"${text}" is no gauge`);
      return good(
        {
          awg,
          ...(stranding === null ? {} : { stranding }),
          ...(plating === null ? {} : { plating })
        },
        remark
      );
    }
  },
  choice('stranding', 'Strands', ['', 'solid', 'stranded'], /^(strand|solid)/i),
  choice('plating', 'Surface', ['', 'bare', 'tinned'], /^(plating|surface|tinned)/i),
  {
    id: 'colour',
    label: 'Colour',
    heading: /^colou?r/i,
    hint: 'red, red/white',
    show: ({ colour, tracer }) => colourText(colour, tracer),
    read: (text) => {
      if (text.trim() === '') return good({ colour: null, tracer: null });
      const { fields } = readColourCell(text);
      return good({ colour: fields.colour ?? text.trim(), tracer: fields.tracer ?? null });
    }
  },
  words('style', 'Style', /^(style|ul|type)/i, 'UL 1015'),
  words('insulation', 'Insulation', /^insulation/i, 'PVC, fluoropolymer'),
  {
    id: 'ratingV',
    label: 'Rated, any kind',
    heading: /^(rating|rated|volts?|v)$/i,
    hint: '600 V',
    show: ({ ratingV }) => (ratingV === undefined ? '' : formatVolts(ratingV)),
    read: (text) => {
      if (text.trim() === '') return good({ ratingV: null, ratingKind: null });
      const read = parseQuantity(text, 'voltage');
      return read.ok ? good({ ratingV: Math.abs(read.value) }, read.understood) : bad(read.problem);
    }
  },
  volts('dcV', 'Rated dc', /^(v dc|dc)/i),
  volts('acRmsV', 'Rated ac, rms', /^(v ac|ac)/i),
  volts('pulseV', 'Rated pulse, peak', /^(v pulse|pulse|peak)/i),
  {
    id: 'ratingC',
    label: 'Temperature',
    heading: /^(temp|°?c$|degrees)/i,
    hint: '105 °C',
    show: ({ ratingC }) => (ratingC === undefined ? '' : `${ratingC} °C`),
    read: (text) => {
      if (text.trim() === '') return good({ ratingC: null });
      const read = parseQuantity(text, 'temperature');
      return read.ok ? good({ ratingC: read.value }, read.understood) : bad(read.problem);
    }
  },
  {
    id: 'diameter',
    label: 'Over the insulation',
    heading: /^(diameter|od|outside)/i,
    hint: '2.4 mm, 3/32 in',
    show: ({ diameterMm }, unit) => (diameterMm === undefined ? '' : lengthText(diameterMm, unit)),
    read: (text, _stock, unit) => {
      if (text.trim() === '') return good({ diameterMm: null });
      const read = parseQuantity(text, 'length', { defaultUnit: unit });
      return read.ok ? good({ diameterMm: read.value }, read.understood) : bad(read.problem);
    }
  },
  {
    id: 'price',
    label: 'Price',
    heading: /^(price|cost)/i,
    hint: '0.42/m, 0.13/ft',
    show: ({ pricePerMetre }, unit) =>
      pricePerMetre === undefined
        ? ''
        : unit === 'mm'
          ? `${formatNumber(pricePerMetre)}/m`
          : `${formatNumber((pricePerMetre * mmPerFoot) / 1000)}/ft`,
    read: readPrice
  },
  words('where', 'Where it lies', /^(where|place|drawer|bin|box)/i),
  words('notes', 'Notes', /^notes?/i)
];
