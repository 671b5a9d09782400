// What a heading means. Headings are compared in small letters without points; the first rule that
// fits wins. Words for "found" are left away and words for "planned" turn a column into its planned twin.
import type { ColumnRole, PairedRole } from './columns.ts';

export interface HeadingMeaning {
  readonly role: ColumnRole | PairedRole;
  readonly unit: string | null;
}

const units: Readonly<Record<string, string>> = {
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  ins: 'in',
  mm: 'mm',
  millimeters: 'mm',
  millimetres: 'mm',
  cm: 'cm',
  m: 'm',
  ft: 'ft',
  feet: 'ft',
  v: 'V',
  volts: 'V',
  kv: 'kV',
  mv: 'mV',
  a: 'A',
  amps: 'A',
  ma: 'mA',
  milliamps: 'mA'
};

const first = '(?:from|starts?|source|a|end a|end 1|side a|point a|first|1st)';
const second =
  '(?:to|finish(?:es)?|ends|dest(?:ination)?|target|b|end b|end 2|side b|point b|second|2nd)';
const partWord =
  '(?:part|component|comp|device|ref|reference|ref des|socket|item|designator|connector|tube no)';
const terminalWord =
  '(?:pin|terminal|term|lug|contact|post|tap|pin no|pin #|pin number|pin lug|pin terminal|terminal no)';
const whole = (pattern: string): RegExp => new RegExp(`^(?:${pattern})$`);

const rules: readonly (readonly [RegExp, ColumnRole | PairedRole])[] = [
  [
    whole('connected points|stress|stress basis|class needed|class preferred|cut|findings'),
    'derived'
  ],
  [whole(`${first} (?:unit|chassis|assembly|section|board)`), 'fromUnit'],
  [whole(`${second} (?:unit|chassis|assembly|section|board)`), 'toUnit'],
  [whole(`${first} (?:type|tube|tube type)`), 'fromType'],
  [whole(`${second} (?:type|tube|tube type)`), 'toType'],
  [whole(`${first} ${partWord}`), 'fromPart'],
  [whole(`${second} ${partWord}`), 'toPart'],
  [whole(`${first} ${terminalWord}`), 'fromTerminal'],
  [whole(`${second} ${terminalWord}`), 'toTerminal'],
  [whole(`${partWord} ?(?:1|a)`), 'fromPart'],
  [whole(`${partWord} ?(?:2|b)`), 'toPart'],
  [whole(`${terminalWord} ?(?:1|a)`), 'fromTerminal'],
  [whole(`${terminalWord} ?(?:2|b)`), 'toTerminal'],
  [whole(`end at from|${first} (?:termination|ending)`), 'fromEnding'],
  [whole(`end at to|${second} (?:termination|ending)`), 'toEnding'],
  [whole(`strip(?: at)? from|${first} strip`), 'fromStrip'],
  [whole(`strip(?: at)? to|${second} strip`), 'toStrip'],
  [
    whole(
      'from|von|van|starts?|starts at|start point|source|begin(?:ning)?|(?:end|side|point|node|end point) ?(?:a|1|one)|first end|1st end|near end|from (?:end|point|location|at|where|side|here)|(?:wire|connects|goes|runs|comes) from'
    ),
    'from'
  ],
  [
    whole(
      'to|nach|naar|finish(?:es)?|finishes at|ends|ends at|stops?|end point|dest(?:ination)?|target|(?:end|side|point|node|end point) ?(?:b|2|two)|second end|2nd end|far end|other end|to (?:end|point|location|at|where|side|there)|(?:wire|connects|connected|goes|runs) to'
    ),
    'to'
  ],
  [
    whole('from (?:and )?to|from (?:→|>|->) to|ends and|end to end|both ends|run between|between'),
    'both'
  ],
  [whole('end|point|location|connection'), 'end'],
  [whole(partWord), 'part'],
  [whole(terminalWord), 'terminal'],
  [
    whole(
      '(?:no|nr|num|number|#|n|id|wire|lead|tag|run|seq|line)|(?:wire|tag|lead|run|item|tag wire|conductor) ?(?:no|nr|num|number|#|id|tag)'
    ),
    'number'
  ],
  [whole('cable|cable (?:no|name|id|#|number)|in cable|jacketed cable'), 'cable'],
  [whole('(?:cable )?(?:conductor|core)'), 'conductor'],
  [whole('unit|sub ?chassis|assembly|assy|section|chassis'), 'unit'],
  [/colou?r(?: and| &)? (?:tracer|stripe)/, 'colour'],
  [/tracer|stripe/, 'tracer'],
  [/colou?r|^col$|^jacket$|^farbe$|^kleur$/, 'colour'],
  [/gau?ge|guage|\bawg\b|^size$|^ga$|^wire size$/, 'gauge'],
  [/\bul\b|\bawm\b|^(?:wire )?style$/, 'style'],
  [/^temp|temperature/, 'ratingC'],
  [/(?:current|amp).*rat(?:ing|ed)|rated (?:current|amp)/, 'extra'],
  [/\brat(?:ing|ed)\b/, 'rating'],
  [/^ins(?:ul(?:ation)?)?$|insulation|^covering$/, 'insulation'],
  [/strand|^solid/, 'stranding'],
  [/\bp ?-? ?p\b|peak to peak|\bvpp\b/, 'extra'],
  [/pulse|peak|\bpk\b|\bvpk?\b/, 'pulseV'],
  [/\bv?dc\b|^b\+/, 'dcV'],
  [/\bv?ac\b|\brms\b/, 'acV'],
  [
    /\bcurr(?:ent)?\b|^strom$|^stroom$|\bamp(?:s|eres|erage)?\b|^i$|\bma$|milliamps|^a$|^(?:load|draw)$/,
    'amps'
  ],
  [/volt|^v$|^kv$|^e$|potential/, 'volts'],
  [
    /^(?!.*(?:cut|strip)).*(?:length|\blen\b)|^l(?:ä|ae)nge$|^lengte$|^taped$|^how long$|^lg(?:th)?$/,
    'length'
  ],
  [/condition|^cond$/, 'condition'],
  [whole('state|status|work state|done|progress'), 'state'],
  [/^(?:notes?|remarks?|bemerkung(?:en)?|comments?|memo|observations?)\b/, 'notes'],
  [whole('type|kind|construction|(?:wire|lead|conductor|tube) (?:type|kind)|tube|tubes'), 'type'],
  [/^origin$/, 'origin'],
  [/dress/, 'dress'],
  [/sleev|spaghetti/, 'sleeve'],
  [/^critical/, 'critical'],
  [whole('way|action'), 'way'],
  [
    whole(
      'function|func|fn|signal|signal name|circuit|circuit function|use|used for|usage|purpose|description|desc|what|net|net name|carries|duty|service|job'
    ),
    'function'
  ],
  [/function|signal|purpose|^fun[ck]tie$|^funktion$/, 'function']
];

const plannedTwins: Readonly<Partial<Record<ColumnRole | PairedRole, ColumnRole>>> = {
  colour: 'plannedColour',
  tracer: 'plannedTracer',
  gauge: 'plannedGauge',
  rating: 'plannedRating',
  insulation: 'plannedInsulation',
  style: 'plannedStyle',
  type: 'planned',
  number: 'planned',
  notes: 'extra',
  length: 'extra',
  function: 'extra'
};

const plannedWords =
  /\b(?:planned|plan|new|replacement|repl|replace(?:d)?(?: with| by)?|proposed)\b/g;
const foundWords = /\b(?:as found|found|original|orig|existing|old|measured|meas|taped)\b/g;

const tidy = (text: string): string => text.replace(/\s+/g, ' ').trim();

const ruleFor = (name: string): ColumnRole | PairedRole | null =>
  name === '' ? null : (rules.find(([pattern]) => pattern.test(name))?.[1] ?? null);

const meaningOf = (name: string, unit: string | null): HeadingMeaning | null => {
  const exact = ruleFor(name);
  const isPlanned = name.search(plannedWords) >= 0;
  const bare = tidy(name.replace(plannedWords, ' ').replace(foundWords, ' '));
  if (isPlanned) {
    if (bare === '') return { role: 'planned', unit };
    const twin = ruleFor(bare);
    return { role: (twin && plannedTwins[twin]) ?? 'extra', unit };
  }
  const role = ruleFor(bare) ?? exact;
  return role ? { role, unit } : null;
};

/** What a heading means, or null where it says nothing that is known here. */
export const readHeading = (heading: string): HeadingMeaning | null => {
  const plain = tidy(heading.slice(0, 120).toLowerCase().replaceAll('_', ' '));
  const bracket = /^([^([]*)[([]([^)\]]*)[)\]]?$/.exec(plain);
  const name = wordsOf(bracket ? (bracket[1] ?? '') : plain);
  const inside = wordsOf(bracket?.[2] ?? '');
  const insideUnit = inside.split(' ').find((word) => Object.hasOwn(units, word));
  const unit = insideUnit === undefined ? null : (units[insideUnit] ?? null);
  if (inside !== '') {
    // "Voltage (dc)" is told by both together, "Stress (V)" by the name alone.
    const both = meaningOf(`${name} ${inside}`, unit);
    if (both) return both;
  }
  const tail = /^(.+?) (\S+)$/.exec(name);
  const tailUnit = Object.hasOwn(units, tail?.[2] ?? '') ? units[tail?.[2] ?? ''] : undefined;
  if (unit === null && tail && tailUnit !== undefined && !isPairLetter(name)) {
    const stripped = meaningOf(tail[1] ?? '', tailUnit);
    if (stripped) return stripped;
  }
  const own = Object.hasOwn(units, name) ? (units[name] ?? null) : null;
  const meaning = meaningOf(name, unit ?? own ?? unitWithin(name));
  if (meaning) return meaning;
  // "inches" over a column is its length; volts and amperes have rules of their own.
  return own !== null && lengthUnits.has(own) ? { role: 'length', unit: own } : null;
};

// "kV peak": units that are no other word may stand anywhere.
const unitWithin = (name: string): string | null => {
  const word = name.split(' ').find((each) => /^(?:kv|ma|mm|cm|inch(?:es)?|feet|ft)$/.test(each));
  return word === undefined ? null : (units[word] ?? null);
};

const lengthUnits: ReadonlySet<string> = new Set(['in', 'mm', 'cm', 'ft']);

// A dash parts words, but "p-p" keeps its own.
const wordsOf = (text: string): string =>
  tidy(text.replace(/(?<!\bp)-/g, ' ').replace(/[.:?*'’,/]/g, ' '));

// "end a" is an end, no end in amperes.
const isPairLetter = (name: string): boolean =>
  /^(?:end|side|point|node|terminal|term|part|pin|ref|end point) a$/.test(name);
