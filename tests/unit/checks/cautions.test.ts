// The standing cautions, word for word: whoever changes one changes it here too, knowingly.
import { expect, test } from 'vitest';
import { cautions } from '../../../server/checks/cautions.ts';

test('open points and rules set aside are counted', () => {
  expect(cautions.openFigures(3)).toBe('3 figures are not known. This plan cannot be used as it stands.');
  expect(cautions.openFigures(1)).toBe('1 figure is not known. This plan cannot be used as it stands.');
  expect(cautions.rulesSetAside(['works rule 4', 'sling angle'])).toBe(
    "2 rules set aside: works rule 4, sling angle. Each stands on the named person's authority, not on a calculation.",
  );
  expect(cautions.notJudged(['ground pressure'])).toBe(
    'Not judged by this version: ground pressure. A qualified person must judge these before any use.',
  );
});

test('the foot of a page names revision and content mark', () => {
  expect(cautions.pageFoot('C', '4f2a91')).toBe(
    'Revision C, content mark 4f2a91. Good only while load, gear, crane set-up, ground and weather are as written. Anything different: stop; have the plan changed, checked and approved again.',
  );
});

test('the lift-day page says when to stop, and what is not stated', () => {
  const text = cautions.liftDay({
    reading: '7,420 lb with block and rigging',
    tilt: '5 deg',
    radius: '27 ft',
    wind: null,
  });
  expect(text).toBe(
    'Stop if the load cell or crane indicator reads more than 7,420 lb with block and rigging; if a leg named tight goes slack; if the load hangs more than 5 deg out of level; if the measured radius passes 27 ft or the wind a value this plan does not state; if you are in doubt. Anyone may stop the lift. Nobody under the load.',
  );
});

test('hovers say what a number rests on', () => {
  expect(cautions.notKnown('Motor has no weight.')).toBe(
    'Not known: Motor has no weight. Everything built on it is not known either. Unknown is not zero.',
  );
  expect(cautions.assumed('the middle of its size')).toBe(
    'Assumed: the middle of its size. Nobody has confirmed it for this lift. Find evidence or measure before relying on this number.',
  );
  expect(cautions.estimate('site visit', '25 %', 'the built-in rule')).toBe(
    'Rests on an estimate (site visit); 25 % is added under the built-in rule. Weigh before the lift where you can.',
  );
  expect(cautions.builtIn('common practice')).toBe(
    'A default of this program (common practice), not a rule of your site or country.',
  );
});

test('the command line never says that a lift may go ahead', () => {
  expect(cautions.checked(4, 2)).toBe(
    '4 findings in 2 plans. Only what is written was checked; this approves no lift.',
  );
  expect(cautions.nothingFound(1, ['ground', 'wind'])).toBe(
    'No findings in 1 plan. Not stated, so not checked: ground, wind. This approves no lift.',
  );
  expect(cautions.help).toBe(
    "Planning aid. Local codes, makers' instructions and qualified or licensed people decide.",
  );
  expect(cautions.pullRequest).toBe("Figures worked out from the plan's text. Merging is not an approval to lift.");
  expect(cautions.sheetHead).toBe(
    "Planning aid, not an approval. A qualified person must check every figure against the load, gear, crane and ground as they really are. Local codes and makers' instructions come first.",
  );
});

test('the first words of the README', () => {
  expect(cautions.readme.title).toBe('Before you rely on it.');
  expect(
    cautions.readme.text.startsWith(
      'Lifting can kill. Becket is a planning aid: it does the arithmetic of what a plan says.',
    ),
  ).toBe(true);
  expect(
    cautions.readme.text.endsWith(
      'Tables and rules name their source; compare them with the edition in force. No warranty: see LICENSE.',
    ),
  ).toBe(true);
});
