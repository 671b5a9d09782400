// Gauge cells: "22", "#22 solid", "7/30", "0.8 mm", "0.5 mm2". A metric size is read as the nearest
// gauge, and says so.
import { strandings } from '#handbook/index.ts';
import { parseQuantity } from '#quantity/index.ts';

export interface GaugeReading {
  readonly awg: number | null;
  readonly stranding: 'solid' | 'stranded' | null;
  readonly plating: 'bare' | 'tinned' | null;
  /** How it was read, where that is more than the number. */
  readonly remark: string | null;
  /** Why it could not be read; null where it could. */
  readonly problem: string | null;
}

/** The gauge nearest to a solid conductor of this diameter, mm, from 0.02 to 12 mm; else null.
 *  Formula:  g = 36 - 39 log92(d / 0.127)
 *  Source:   ASTM B258: d = 0.127 mm x 92^((36 - g)/39) */
export const nearestAwg = (diameterMm: number): number | null => {
  if (!(diameterMm >= 0.02 && diameterMm <= 12)) return null;
  return Math.max(
    -3,
    Math.min(50, Math.round(36 - (39 * Math.log(diameterMm / 0.127)) / Math.log(92)))
  );
};

const diameterOf = (text: string): { readonly mm: number; readonly what: string } | null => {
  const match =
    /^(?:ø|dia\.?)?\s*(\d{1,3}(?:[.,]\d{1,4})?)\s*(mm(?:2|²|\^2)?|sq\.? ?mm)(?: dia\.?)?$/i.exec(
      text
    );
  if (!match) return null;
  const value = Number((match[1] ?? '').replace(',', '.'));
  const isArea = !/^mm$/i.test(match[2] ?? '');
  return isArea
    ? { mm: Math.sqrt((4 * value) / Math.PI), what: 'a cross-section' }
    : { mm: value, what: 'a diameter' };
};

const takeWords = (text: string) => {
  const stranding = /\bsolid\b|\bsol\b/i.test(text)
    ? 'solid'
    : /\bstr(?:d|anded)?\b/i.test(text)
      ? 'stranded'
      : null;
  const plating = /\btinned\b|\btin(?:ned)? cu\b/i.test(text)
    ? 'tinned'
    : /\bbare cu\b/i.test(text)
      ? 'bare'
      : null;
  const core = text
    .replace(
      /\b(?:solid|sol|str|strd|stranded|tinned|tin(?:ned)? cu|bare cu|copper|cu|wire)\b\.?/gi,
      ' '
    )
    .replace(/^(\d{1,2})\.0+$/, '$1')
    .replace(/[,()]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  return { stranding, plating, core } as const;
};

/** Reads a gauge cell that is not blank. */
export const readGaugeCell = (written: string): GaugeReading => {
  const text = written.slice(0, 80).trim();
  const metric = diameterOf(text);
  if (metric) {
    const awg = nearestAwg(metric.mm);
    const none = { stranding: null, plating: null } as const;
    return awg === null
      ? { awg, ...none, remark: null, problem: `${metric.what} from 0.02 to 12 mm is read` }
      : {
          awg,
          ...none,
          remark: `${metric.what}, read as the nearest gauge: ${awg} AWG`,
          problem: null
        };
  }
  const doubt = /[^?]\?+$/.test(text);
  const { stranding, plating, core } = takeWords(text.replace(/\?+$/, ''));
  const strands = strandings.find((row) => row.name === core);
  if (strands) {
    const remark = `${strands.name} strands make ${strands.awg} AWG`;
    return { awg: strands.awg, stranding: 'stranded', plating, remark, problem: null };
  }
  const parsed = parseQuantity(core, 'gauge');
  if (/^[-−–]\s*\d/.test(core)) {
    const problem = 'a gauge has no minus: 0, 2/0 and 3/0 stand for the thick ones';
    return { awg: null, stranding, plating, remark: null, problem };
  }
  if (parsed.ok && parsed.value >= -3 && parsed.value <= 50) {
    const remark = doubt ? 'marked as doubtful' : null;
    return { awg: parsed.value, stranding, plating, remark, problem: null };
  }
  if (core === '' && (stranding ?? plating) !== null) {
    return { awg: null, stranding, plating, remark: null, problem: null };
  }
  const problem = 'a gauge is a whole number such as 22, or a diameter such as 0.8 mm';
  return { awg: null, stranding, plating, remark: null, problem };
};
