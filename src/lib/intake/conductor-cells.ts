// What cells say of a conductor and its insulation: colour, rating, material, style; and a whole
// replacement in one cell ("22 AWG UL1015 600V red/yel solid").
import { findWireStyle, formatColour, parseColour } from '#handbook/index.ts';
import { parseQuantity } from '#quantity/index.ts';

/** The fields that found and planned conductors share. */
export interface ConductorFields {
  awg?: number;
  stranding?: 'solid' | 'stranded';
  plating?: 'bare' | 'tinned';
  colour?: string;
  tracer?: string;
  insulation?: string;
  style?: string;
  ratingV?: number;
  ratingKind?: 'any' | 'dc' | 'ac' | 'pulse';
  ratingC?: number;
}

const materials =
  /\b(?:cloth|cotton|rubber|plastic|pvc|teflon|ptfe|silicone|lacquer(?:ed)?|varnished|varnish|braided|wax(?:ed)?|asbestos)\b/gi;

export interface ColourReading {
  readonly fields: ConductorFields;
  /** Words that are no colour; they belong in the notes. */
  readonly rest: string;
}

/** Colour and tracer of a cell; material words go to the insulation. What is no colour that is
 *  known stays the colour as it is written. */
export const readColourCell = (written: string): ColourReading => {
  const text = written.slice(0, 400).trim();
  const found = text.match(materials) ?? [];
  const brackets = text.match(/\([^()]*\)/g) ?? [];
  const whole = parseColour(text);
  const core = text
    .replace(materials, ' ')
    .replace(/\([^()]*\)/g, ' ')
    .replace(/\?/g, ' ')
    .trim();
  const parsed = whole ?? parseColour(core);
  if (!parsed) return { fields: { colour: text }, rest: '' };
  const rest = whole ? '' : [...brackets, ...(text.includes('?') ? ['doubtful'] : [])].join(' ');
  return {
    fields: {
      colour: formatColour(parsed),
      ...(parsed.tracer === null ? {} : { tracer: parsed.tracer }),
      ...(found.length > 0 ? { insulation: found.join(' ').toLowerCase() } : {})
    },
    rest
  };
};

/** Volts, kind and degrees out of a rating's text ("600 V 105C", "5 kV pulse"); null where no volts
 *  stand in it. */
export const readRatingCell = (written: string): ConductorFields | null => {
  const text = written.slice(0, 200).trim();
  const match = /(\d[\d.,]*) ?(k?v)?(?: ?(ac|dc|pulse|peak|pk|rms|p)\b)?/i.exec(
    text
      .replace(/\b\d{2,3} ?(?:°|deg\.? ?)?c\b/i, ' ')
      .replace(/\b(?:ul|awm|style)[\s-]*\d{4,5}\b/i, ' ')
  );
  const volts = match ? parseQuantity(`${match[1]} ${match[2] ?? 'V'}`, 'voltage') : null;
  if (!volts?.ok || volts.value < 0 || volts.value > 200_000) return null;
  const celsius = /\b(\d{2,3}) ?(?:°|deg\.? ?)?c\b/i.exec(text)?.[1];
  const kind = (match?.[3] ?? '').toLowerCase();
  return {
    ratingV: volts.value,
    ...(kind === 'dc' ? { ratingKind: 'dc' } : {}),
    ...(kind === 'ac' || kind === 'rms' ? { ratingKind: 'ac' } : {}),
    ...(/^p/.test(kind) ? { ratingKind: 'pulse' } : {}),
    ...(celsius === undefined ? {} : { ratingC: Number(celsius) })
  };
};

/** What a text about insulation says: itself, and the style and volts that are printed in it. */
export const readInsulationCell = (written: string): ConductorFields => {
  const text = written.slice(0, 400).trim();
  const style = findWireStyle(text);
  const printed = /\d ?k?v\b/i.test(text) ? readRatingCell(text) : null;
  return { insulation: text, ...(style ? { style: style.name } : {}), ...(printed ?? {}) };
};

export interface WholeConductor {
  readonly fields: ConductorFields;
  /** What was left over, and belongs in the notes. */
  readonly rest: string;
}

/** A conductor that is described in one cell: gauge, style, volts, strands and colour in any order. */
export const readWholeConductor = (written: string): WholeConductor => {
  let rest = ` ${written.slice(0, 400)} `;
  const fields: ConductorFields = {};
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const match = pattern.exec(rest);
    if (match) rest = rest.replace(match[0], ' ');
    return match;
  };
  const style = take(/\b(?:ul|awm)(?: style)?[\s-]*(\d{4,5})\b/i);
  const row = style ? findWireStyle(style[1] ?? '') : null;
  if (style) fields.style = row?.name ?? `UL ${style[1]}`;
  const celsius = take(/\b(\d{2,3}) ?(?:°|deg\.? ?)?c\b/i);
  if (celsius) fields.ratingC = Number(celsius[1]);
  const rating = take(/\b\d[\d.,]* ?k?v(?: ?(?:ac|dc|pulse|peak|pk|rms))?\b/i);
  Object.assign(fields, rating ? readRatingCell(rating[0]) : null);
  const gauge =
    take(/#(\d{1,2})\b|\b(\d{1,2}) ?(?:awg|ga(?:uge)?)\b|\bawg ?(\d{1,2})\b/i) ??
    take(/(?<=\s)(\d{2})(?=[\s,;])/);
  const awg = gauge ? Number(gauge[1] ?? gauge[2] ?? gauge[3]) : NaN;
  if (awg >= 0 && awg <= 50) fields.awg = awg;
  const strands = take(/\b(solid|stranded|str)\b/i);
  if (strands) fields.stranding = /^sol/i.test(strands[1] ?? '') ? 'solid' : 'stranded';
  if (take(/\btinned\b/i)) fields.plating = 'tinned';
  const material = take(/\b(?:pvc|ptfe|teflon|silicone(?: rubber)?|cloth|rubber)\b/i);
  if (material) fields.insulation = material[0];
  const left = rest.replace(/[\s,;]+/g, ' ').trim();
  const colour = parseColour(left);
  if (!colour) return { fields, rest: left };
  fields.colour = formatColour(colour);
  if (colour.tracer !== null) fields.tracer = colour.tracer;
  return { fields, rest: '' };
};
