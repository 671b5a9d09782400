// What the validator says of a chassis; fails where it was told to.
import { explainReasoning, explainRule, rules, severities } from '#checks/index.ts';
import { findingsToJson, findingsToText } from '#paperwork/index.ts';
import { choiceOf, CommandError, onlyPositional, type Command } from '../command.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--json] [--fail-on SEVERITY]';
const failOn = [...severities, 'never'] as const;

export const checkCommand: Command = {
  name: 'check',
  usage,
  help: 'Judge a chassis: findings with reason, source and way out.',
  options: [
    { name: 'json', help: 'Findings and counts as JSON.' },
    {
      name: 'fail-on',
      value: 'SEVERITY',
      help: `Exit with 1 at a finding as bad as this: ${failOn.join(', ')}. danger if not given.`
    },
    {
      name: 'explain',
      value: 'RULE',
      help: 'Say how a rule decides, and with DOC how its findings were reckoned.'
    }
  ],
  run: async (input, terminal) => {
    const rule = input.values['explain'];
    if (rule !== undefined) {
      const text = explainRule(rule);
      if (text === undefined)
        throw new CommandError(
          `--explain ${rule}: there is no such rule: choose one of ${rules.map(({ id }) => id).join(', ')}`
        );
      terminal.out(`${text}\n`);
      if (input.positionals.length === 0) return 0;
    }
    const limit = choiceOf(input, 'fail-on', failOn, 'danger');
    const { findings } = await judge(onlyPositional(input, 'DOC', `check ${usage}`), terminal);
    const asJson = input.switches.has('json');
    for (const { rule: own, message, why } of asJson ? [] : findings) {
      if (own === rule) terminal.out(`\n${message}\n${explainReasoning(why)}\n`);
    }
    terminal.out(asJson ? findingsToJson(findings) : findingsToText(findings));
    const isBad = (severity: (typeof severities)[number]): boolean =>
      limit !== 'never' && severities.indexOf(severity) <= severities.indexOf(limit);
    return findings.some((finding) => isBad(finding.severity)) ? 1 : 0;
  }
};
