// The document's policy as a person reads and changes it: one row an item, with its unit, its default and
// what it decides. An empty field goes back to the default, and only what differs from it is stored.
import { defaultPolicy, policySchema, setPolicy, type Edit, type Policy } from '#document/index.ts';
import { formatQuantity, formatVolts, parseQuantity, type Dimension } from '#quantity/index.ts';

export type PolicyKey = keyof typeof policySchema.shape;

export type PolicyReading =
  { readonly ok: true; readonly edit: Edit } | { readonly ok: false; readonly why: string };

export interface PolicyItem {
  readonly key: PolicyKey;
  readonly label: string;
  /** What it decides. */
  readonly words: string;
  readonly show: (policy: Policy) => string;
  readonly read: (text: string) => PolicyReading;
  /** What can be chosen, where it is not typed. */
  readonly choices?: readonly string[];
}

export interface PolicyGroup {
  readonly title: string;
  readonly items: readonly PolicyItem[];
}

const percent = (share: number): string => `${Number((share * 100).toPrecision(6))} %`;

type NumberKey = Exclude<PolicyKey, 'ladderV' | 'ampacityBasis'>;

type Issue = NonNullable<ReturnType<typeof policySchema.safeParse>['error']>['issues'][number];

const limitOf = (issue: Issue, format: (value: number) => string): string => {
  if (issue.code === 'too_small' && issue.origin === 'array') return 'give one class at least';
  if (issue.code === 'too_small') return `it cannot be below ${format(Number(issue.minimum))}`;
  if (issue.code === 'too_big') return `it cannot be above ${format(Number(issue.maximum))}`;
  return issue.message;
};

/** The edit that sets an item, or why the value is not taken. */
const taken = (
  key: PolicyKey,
  value: unknown,
  format: (value: number) => string = String
): PolicyReading => {
  const checked = policySchema.shape[key].safeParse(value);
  if (!checked.success) {
    const [issue] = checked.error.issues;
    return {
      ok: false,
      why: issue === undefined ? 'it is not understood' : limitOf(issue, format)
    };
  }
  const isDefault = JSON.stringify(checked.data) === JSON.stringify(defaultPolicy[key]);
  return { ok: true, edit: setPolicy({ [key]: isDefault ? null : checked.data }) };
};

const orDefault =
  (key: PolicyKey, read: (text: string) => PolicyReading) =>
  (text: string): PolicyReading =>
    text.trim() === '' ? { ok: true, edit: setPolicy({ [key]: null }) } : read(text);

const amount = (
  key: NumberKey,
  label: string,
  words: string,
  dimension: Dimension
): PolicyItem => ({
  key,
  label,
  words,
  show: (policy) => formatQuantity(policy[key], dimension),
  read: orDefault(key, (text) => {
    const parsed = parseQuantity(text, dimension);
    const format = (value: number): string => formatQuantity(value, dimension);
    return parsed.ok ? taken(key, parsed.value, format) : { ok: false, why: parsed.problem };
  })
});

const share = (key: NumberKey, label: string, words: string): PolicyItem => ({
  key,
  label,
  words,
  show: (policy) => percent(policy[key]),
  read: orDefault(key, (text) => {
    // "10" and "10 %" are the same here: a share of ten would be no share.
    const number = Number(text.replace(/%\s*$/, '').replace('\u2212', '-').trim());
    return Number.isFinite(number)
      ? taken(key, number / 100, percent)
      : { ok: false, why: `"${text.trim()}" is no percentage: write 10 %` };
  })
});

const ladder: PolicyItem = {
  key: 'ladderV',
  label: 'Insulation classes',
  words: 'the ratings that wire is bought in, smallest first',
  show: ({ ladderV }) => ladderV.map((step) => formatVolts(step)).join(', '),
  read: orDefault('ladderV', (text) => {
    const steps = text.split(/[,;]/).filter((step) => step.trim() !== '');
    const volts: number[] = [];
    for (const step of steps) {
      const parsed = parseQuantity(step, 'voltage');
      if (!parsed.ok) return { ok: false, why: parsed.problem };
      volts.push(parsed.value);
    }
    return taken('ladderV', volts, formatVolts);
  })
};

const basis: PolicyItem = {
  key: 'ampacityBasis',
  label: 'Currents by',
  words:
    'which published table a wire is held against: they differ by four to one. Cabinet: an aviation table, corrected for a hot cabinet. Space: wire without air. 700 cmil: circular mils for each ampere',
  show: ({ ampacityBasis }) => ampacityBasis,
  read: (text) => taken('ampacityBasis', text),
  choices: policySchema.shape.ampacityBasis.options
};

/** All items, in the order in which they are read. */
export const policyGroups: readonly PolicyGroup[] = [
  {
    title: 'Insulation',
    items: [
      ladder,
      amount(
        'marginRequired',
        'Margin required',
        'rating over stress, below which a wire is a fault',
        'ratio'
      ),
      amount('marginPreferred', 'Margin preferred', 'rating over stress to buy', 'ratio'),
      amount(
        'supplyFloorV',
        'Least on a supply rail',
        'no class below this on B+ and its like',
        'voltage'
      ),
      amount(
        'lineFloorV',
        'Least on the line side',
        'no class below this from the plug to the primary',
        'voltage'
      )
    ]
  },
  {
    title: 'Volts, heat and current',
    items: [
      share('highLine', 'High line', 'how far the line may stand above its nominal volts'),
      amount('ambientC', 'In the cabinet', 'air round ordinary wiring', 'temperature'),
      amount(
        'hotZoneC',
        'In hot places',
        'near power resistors, output and damper tubes',
        'temperature'
      ),
      share('heaterLow', 'Heaters, low', 'how far below its rating a heater may run'),
      share('heaterHigh', 'Heaters, high', 'how far above its rating a heater may run'),
      basis
    ]
  },
  {
    title: 'Lengths and gauges',
    items: [
      share('slackShare', 'Slack', 'added to each path, as a share of it'),
      amount('slackMm', 'Slack, at least', 'added to each path as well', 'length'),
      amount('roundUpMm', 'Cut in steps of', 'cut lengths are rounded up', 'length'),
      amount('defaultAwg', 'Ordinary runs', 'gauge where nothing asks for more', 'gauge'),
      amount('heaterBranchAwg', 'Heater branches', 'gauge from the trunk to a socket', 'gauge')
    ]
  }
];
