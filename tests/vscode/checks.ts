// The suite's own few tools: named checks that are told one by one, waiting to a deadline, questions to the page.

/** Where the runner answers; put in by the bundler. */
declare const ASK: string;

let failed = 0;

/** Runs one check and tells the runner how it went; the checks after a failed one still run. */
export async function check(name: string, deed: () => Promise<void>): Promise<void> {
  const why = await deed().then(
    () => undefined,
    (error: unknown) => String(error),
  );
  if (why !== undefined) failed += 1;
  await ask('note', { name, held: why === undefined, why });
}

/** Ends the suite: throws if any check failed. */
export function endChecks(): void {
  if (failed > 0) throw new Error(`${failed} checks failed`);
}

/** Asks the runner for a deed on the page (tests/vscode/page.mjs). */
export async function ask<Answer>(deed: string, details: Record<string, unknown> = {}): Promise<Answer> {
  // Plain text, so that the browser needs no leave for another kind of content.
  const answer = await fetch(ASK, { method: 'POST', body: JSON.stringify({ deed, ...details }) });
  if (!answer.ok) throw new Error(`${deed}: ${await answer.text()}`);
  return (await answer.json()) as Answer;
}

/** What `look` gives as soon as `fits` holds for it; after the deadline an error that shows the last look. */
export async function until<Found>(
  what: string,
  look: () => Promise<Found> | Thenable<Found> | Found,
  fits: (found: Found) => boolean,
  deadline = 20_000,
): Promise<Found> {
  const end = Date.now() + deadline;
  for (;;) {
    const found = await inTime(look(), end, what);
    if (fits(found)) return found;
    if (Date.now() > end) throw new Error(`Waited in vain for ${what}; last seen: ${show(found)}`);
    await new Promise((wait) => setTimeout(wait, 50));
  }
}

/** What is asked may never answer; then that is the failure. */
async function inTime<Found>(
  asked: Promise<Found> | Thenable<Found> | Found,
  end: number,
  what: string,
): Promise<Found> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const over = new Promise<never>((_, fail) => {
    timer = setTimeout(() => fail(new Error(`No answer while waiting for ${what}`)), Math.max(0, end - Date.now()));
  });
  return Promise.race([asked, over]).finally(() => clearTimeout(timer));
}

/** Equal as JSON, or an error that shows both. */
export function equal(actual: unknown, expected: unknown, what = 'value'): void {
  if (show(actual) !== show(expected))
    throw new Error(`${what}\nis       ${show(actual)}\nshould be ${show(expected)}`);
}

export function holds(condition: boolean, what: string): void {
  if (!condition) throw new Error(what);
}

const show = (value: unknown) => JSON.stringify(value, null, 1)?.slice(0, 1500) ?? 'undefined';
