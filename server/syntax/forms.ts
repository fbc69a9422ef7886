// How each kind of value is written: its start rule in grammar/liftplan.ohm, and what to call it in plain words.
import type { ValueType } from './types.ts';

export interface Form {
  readonly rule: string;
  /** What can stand where such a value begins. */
  readonly wanted: string;
}

export const FORMS: Readonly<Record<ValueType, Form>> = {
  nothing: { rule: 'nothing', wanted: 'nothing more' },
  amount: { rule: 'amount', wanted: 'an amount with its unit' },
  size: { rule: 'size', wanted: 'a size such as 2 m x 1 m x 10 mm' },
  'size or amount': { rule: 'sizeOrAmount', wanted: 'an amount, or a size such as 2 m x 1 m' },
  'size or nothing': { rule: 'sizeOrNothing', wanted: 'a size such as 2 m x 1 m' },
  point: { rule: 'point', wanted: 'a point such as (2 m, 0, 0.5 m)' },
  line: { rule: 'line', wanted: 'corners such as (0, 0, 0) (2, 0, 0) (2, 1, 0) m' },
  points: { rule: 'points', wanted: 'points such as (0, 0) (2, 0) (2, 1) m' },
  name: { rule: 'name', wanted: 'a name' },
  names: { rule: 'names', wanted: 'a name, or names joined by "and"' },
  path: { rule: 'path', wanted: 'names joined by >' },
  axis: { rule: 'axis', wanted: 'x, y or z, with or without a minus' },
  turn: { rule: 'turn', wanted: 'an angle and its axis, such as 30 deg about z' },
  side: { rule: 'side', wanted: 'a name and one of its sides, such as "Shell" x' },
  tilt: { rule: 'tilt', wanted: 'an axis and an angle, such as x 30 deg' },
  circle: { rule: 'circle', wanted: 'a diameter and an axis, such as 2 m about z' },
  row: { rule: 'row', wanted: 'amounts with ; between them' },
  compare: { rule: 'compare', wanted: 'what is compared and with what, such as gross load < 8,000 lb' },
  subject: { rule: 'subject', wanted: "a statement's keyword, with its name if one is meant" },
  trigger: {
    rule: 'trigger',
    wanted: 'a comparison such as crane capacity used > 75 %, or a phrase such as people lifted',
  },
  text: { rule: 'text', wanted: 'a text in quotation marks' },
  date: { rule: 'date', wanted: 'a date such as 2026-05-18' },
  label: { rule: 'label', wanted: 'a word, a number or a text in quotation marks' },
  word: { rule: 'words', wanted: 'a word' },
  'word and amount': { rule: 'wordsAndAmount', wanted: 'a word and an amount' },
  designation: { rule: 'designation', wanted: 'a designation' },
  'designation or amount': { rule: 'designationOrAmount', wanted: 'a designation or an amount' },
  'amount or nothing': { rule: 'amountOrNothing', wanted: 'an amount with its unit' },
};
