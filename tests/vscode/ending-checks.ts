// A server whose process ends: it comes back, one plan at most is set aside, and "Restart" is never gone.
import { commands } from 'vscode';
import { ask, check, equal, until } from './checks.ts';
import { extension, Plan } from './plan.ts';

export async function checkEnding(): Promise<void> {
  await check(
    'a server that ends comes back with the plan last touched set aside, until its text changes',
    async () => {
      const other = await Plan.open('wrong.liftplan');
      const plan = await Plan.open('bench.liftplan');
      await plan.restoring(async () => {
        await plan.replace(plan.at('Small'), 'Tiny');
        await ask('endServer');
        await until(
          'the plan to be set aside',
          () => plan.findings(),
          ([first, ...more]) => more.length === 0 && first?.startsWith('error not-judged') === true,
        );
        await until(
          'the findings of the other plan',
          () => other.findings(),
          (found) => found.length === 2,
        );
      });
      await until(
        'the plan to be worked out again',
        () => plan.findings(),
        (found) => found.length === 0,
      );
    },
  );
  await check('after four ends nothing starts by itself, and "Restart" starts it', async () => {
    const plan = await Plan.open('bench.liftplan');
    for (let end = 2; end <= 4; end += 1) {
      await plan.settled();
      await ask('endServer');
      await until('the end', () => extension().exports.idle(), isEmpty);
    }
    // Long enough for a server to start, had it been going to.
    await new Promise((wait) => setTimeout(wait, 3000));
    equal(await extension().exports.idle(), {});
    await commands.executeCommand('becket.restart');
    await plan.settled();
    equal(plan.findings(), []);
  });
}

const isEmpty = (versions: Record<string, number>) => Object.keys(versions).length === 0;
