// The words for the plan itself, its people, steps, hazards, approvals and rules, and what it takes from other files.
import { evidence, triggers } from './evidence.ts';
import type { ClauseRow, Vocabulary } from './types.ts';

const text = (help: string, need?: 'always'): ClauseRow => ({ takes: 'text', help, ...(need && { need }) });
const date = (help: string, need?: 'always'): ClauseRow => ({ takes: 'date', help, ...(need && { need }) });

/** Clauses that may stand under every statement. */
export const everywhere = {
  from: text('The document or person it comes from.'),
  note: { ...text('Printed on the sheet.'), repeat: true },
  assumption: { ...text('Taken as true, confirmed by nobody; shown wherever it matters.'), repeat: true },
  'compared by': { ...text('Who checked it by other means, and when.'), repeat: true },
} as const satisfies Readonly<Record<string, ClauseRow>>;

export const papers = {
  plan: {
    under: ['file'], group: 'plan', names: 'none', once: true, help: 'One lift. A file without it is a library.', example: 'plan "Replace condensate pump 2": date 2026-05-18',
    value: text('What is lifted, in a few words.', 'always'),
    clauses: {
      site: text('Where.'), date: date('Day of the lift.', 'always'), revision: { takes: 'label', help: 'Of this plan.' },
      units: { takes: 'word', words: ['US', 'metric'], help: 'What results are shown in; input may mix freely.' },
      'prepared by': text('Who wrote it.'), category: text('Category under the rules.'), reference: { ...text('A document it belongs to.'), repeat: true },
    },
  },
  use: { under: ['file'], group: 'plan', names: 'none', help: 'Takes names from another file.', example: 'use "library/yard.liftplan"', value: text('Path from this file, with /, inside the opened folder.', 'always'), clauses: {} },
  let: { under: ['file'], group: 'plan', names: 'required', declares: 'let', equals: true, help: 'A name for a value.', example: 'let deck = 12 ft', value: { takes: 'amount', measures: 'any', need: 'always', help: 'Any value with its unit.' }, clauses: {} },
  material: { under: ['file'], group: 'plan', names: 'required', declares: 'material', help: 'A material of your own.', example: 'material "cured grout": density 131 lb/ft3, from "supplier sheet 11"', clauses: { density: { takes: 'amount', measures: 'density', above: 0, need: 'always', help: 'Weight per volume.' } } },
  people: { under: ['file'], group: 'papers', names: 'none', once: true, help: 'Who does what.', example: 'people: signals "radio, channel 4"', clauses: { signals: text('How they talk, and what happens when it fails.') } },
  role: { under: ['people'], group: 'papers', names: 'none', help: 'A duty and who has it.', example: 'role "Person in charge": named "to be named on the day"', value: text('The duty.', 'always'), clauses: { named: text('Who.'), holds: text('Certificate.') } },
  steps: { under: ['file'], group: 'papers', names: 'none', once: true, help: 'What is done, in order.', example: 'steps', clauses: {} },
  step: { under: ['steps'], group: 'papers', names: 'none', help: 'One step.', example: 'step "Raise 4 in, check level and reading", hold', value: text('What is done.', 'always'), clauses: { hold: { takes: 'nothing', help: 'Stop here until somebody says go on.' }, who: text('Who does it.') } },
  hazard: { under: ['file'], group: 'papers', names: 'none', help: 'What can go wrong, and what is done about it.', example: 'hazard "Casing still full": control "drain plug out, seen open"', value: text('The hazard.', 'always'), clauses: { control: { ...text('What is done about it.', 'always'), repeat: true }, remaining: text('What remains.') } },
  approval: { under: ['file'], group: 'papers', names: 'none', help: 'Who has approved, and what.', example: 'approval "Person in charge": named "to be named", date 2026-05-15', value: text('The duty.', 'always'), clauses: { named: text('Who.'), date: date('When.'), mark: text('Content mark approved.'), until: date('Last day.') } },
  permit: { under: ['file'], group: 'papers', names: 'none', help: 'A permit.', example: 'permit "Road closure": until 2026-05-20', value: text('The permit.', 'always'), clauses: { named: text('Who.'), date: date('When.'), mark: text('Content mark.'), until: date('Last day.') } },
  record: { under: ['file'], group: 'papers', names: 'none', help: 'What was found on the day.', example: 'record "Trial lift": dated 2026-05-18, reads 7,420 lb', value: text('What was recorded.', 'always'), clauses: { dated: date('When.'), reads: { takes: 'amount', measures: 'weight', least: 0, help: 'Indicator reading.' }, radius: { takes: 'amount', measures: 'length', above: 0, help: 'Measured.' }, wind: { takes: 'amount', measures: 'speed', least: 0, help: 'Measured.' }, named: text('By whom.') } },
  rules: { under: ['file'], group: 'rules', names: 'optional', declares: 'rules', help: 'Limits of a site or country; of several the strictest holds.', example: 'rules "Works lifting rules"', clauses: {} },
  limit: { under: ['rules', 'category'], group: 'rules', names: 'none', help: 'A limit on a result.', example: 'limit crane capacity used <= 75 %, from "works rule 4"', value: { takes: 'compare', need: 'always', help: 'Subject, result, bound.' }, clauses: {} },
  require: { under: ['rules', 'category'], group: 'rules', names: 'none', help: 'Something a plan must have.', example: 'require approval "Person in charge"', value: { takes: 'subject', need: 'always', help: 'A statement, with its name if one is meant.' }, clauses: {} },
  agreement: { under: ['rules', 'category'], group: 'rules', names: 'none', help: 'How far two weights may differ.', example: 'agreement 5 %', value: { takes: 'amount', measures: 'percent', above: 0, need: 'always', help: 'Of the heavier.' }, clauses: {} },
  contingency: { under: ['rules', 'category'], group: 'rules', names: 'none', help: 'Least addition to a weight by evidence.', example: 'contingency calculation 10 %', value: { takes: 'word and amount', words: evidence, measures: 'percent', least: 0, need: 'always', help: 'Evidence, then percent.' }, clauses: {} },
  category: { under: ['rules'], group: 'rules', names: 'none', declares: 'category', help: 'A category of lift, and when it applies.', example: 'category "critical": when crane capacity used > 75 %', value: text('Its name.', 'always'), clauses: { when: { takes: 'trigger', words: triggers, repeat: true, help: 'What makes it apply.' } } },
  waive: {
    under: ['file'], group: 'rules', names: 'none', help: 'Sets one finding aside, on a named person\'s authority.', example: 'waive hang-tilted, on "Pump skid", reason "set down tilted on purpose", approved by "to be named"',
    value: { takes: 'label', need: 'always', help: 'The finding.' },
    clauses: { on: { takes: 'names', names: 'anything', help: 'For what.' }, reason: text('Why.', 'always'), 'approved by': text('On whose authority.', 'always'), until: date('Last day.') },
  },
  expect: { under: ['file'], group: 'plan', names: 'none', help: 'What the author wants to hold; checked, never used.', example: 'expect gross load < 8,000 lb', value: { takes: 'compare', need: 'always', help: 'Subject, result, bound.' }, clauses: { stage: { takes: 'name', names: 'stage', help: 'Only there.' } } },
} as const satisfies Vocabulary;
