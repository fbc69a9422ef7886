// The settings under `becket`, each document's own: asked for when it opens and whenever they change, live at once.
import type { Settings } from './messages.ts';

export const defaults: Settings = {
  hints: { totals: true, parts: true, legs: true, crane: true },
  findings: { when: 'typing' },
  sheet: { refresh: 'typing' },
};

/** Settings as a client hands them over; what is missing or has another form is as it is at first. */
export function readSettings(given: unknown): Settings {
  const { hints, findings, sheet } = record(given);
  return {
    hints: {
      totals: flag(hints, 'totals'),
      parts: flag(hints, 'parts'),
      legs: flag(hints, 'legs'),
      crane: flag(hints, 'crane'),
    },
    findings: { when: oneOf(record(findings).when, ['typing', 'pause', 'save']) },
    sheet: { refresh: oneOf(record(sheet).refresh, ['typing', 'save']) },
  };
}

const record = (value: unknown): Record<string, unknown> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
const flag = (hints: unknown, name: string): boolean => record(hints)[name] !== false;
const oneOf = <T extends string>(value: unknown, words: readonly [T, ...T[]]): T =>
  words.find((word) => word === value) ?? words[0];
