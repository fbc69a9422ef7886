// Sizes that no solid can have.
import { words } from '../../quantities/index.ts';
import { check } from '../check.ts';
import { figures } from '../figures.ts';
import type { Asked } from '../types.ts';

export const geometryImpossible = check({
  slug: 'geometry-impossible',
  severity: 'error',
  effect: 'open',
  says: ({ facts }, { system }) => {
    const [a = 0, b = 0] = facts.figures;
    const why = reasons[facts.reason]?.(a, b, system) ?? 'its sizes are at odds with each other';
    return `This ${facts.shape} ${facts.reason === 'does-not-fit' ? 'cannot lie there' : 'cannot be made'}: ${why}.`;
  },
});

type Reason = (a: number, b: number, system: Asked['system']) => string;

/** Two lengths in one unit, put into a sentence. */
const lengths =
  (say: (a: string, b: string) => string): Reason =>
  (a, b, system) =>
    say(...figures(system).unlike('m', a, b));
const which = (hole: number): string => (hole < 0 ? 'its outline' : `its hole ${ordinal(hole)}`);
const ordinal = (index: number): string => `${index + 1}`; // counted from 1 as a reader does

/** By the word the solids give for what is wrong, with the two figures at odds. */
const reasons: Readonly<Record<string, Reason>> = {
  'not-above-zero': (a, _, system) => `a size of ${figures(system).any('m', a)} leaves nothing of it`,
  'below-zero': (a, _, system) => `a size cannot be ${figures(system).any('m', a)}`,
  'walls-meet': lengths((wall, outside) => `two walls of ${wall} do not fit in ${outside} outside`),
  'bore-not-inside': lengths((bore, outside) => `a bore of ${bore} does not fit in ${outside} outside`),
  'bend-too-tight': lengths((radius, half) => `a bend radius of ${radius} is less than half the outside, ${half}`),
  'angle-too-large': (a, b, system) => {
    const [angle, most] = figures(system).unlike('rad', a, b);
    return `it cannot turn by ${angle}; the most is ${most}`;
  },
  'too-few-corners': (a, b) => `${words(a, 'corner')} make no outline, it takes ${words(b, 'corner')}`,
  'crosses-itself': (hole) => `${which(hole)} crosses or touches itself`,
  'hole-outside-outline': (hole) => `${which(hole)} reaches outside the outline`,
  'holes-overlap': (a, b) => `its holes ${ordinal(a)} and ${ordinal(b)} overlap`,
  'ring-closed': lengths((section, mean) => `a section of ${section} closes the ring of ${mean} over its middle`),
  'knuckle-too-large': lengths(
    (radius, half) => `a knuckle radius of ${radius} is more than half the inside diameter, ${half}`,
  ),
  'crown-too-small': lengths(
    (radius, half) => `a crown radius of ${radius} is less than half the inside diameter, ${half}`,
  ),
  'does-not-fit': (a, b, system) => {
    const [liquid, space] = figures(system).unlike('m3', a, b);
    return `${liquid} does not fit in ${space}`;
  },
};
