// All sentences of the findings, each as the plans of its page raise it.
import { checks } from '../../server/checks/index.ts';
import { readPages, run } from './pages.ts';

export interface Said {
  readonly slug: string;
  readonly severity: string;
  readonly effect: string;
  readonly said: readonly { readonly message: string; readonly fixes: readonly string[] }[];
}

/** By slug, in the order of the pages. */
export const sentences = (): readonly Said[] =>
  readPages().map(({ slug, raises }) => {
    const { severity, effect } = checks[slug as keyof typeof checks];
    const found = raises.flatMap(({ fixture }) => run(fixture).findings.filter((finding) => finding.slug === slug));
    const said = found.map(({ message, fixes }) => ({
      message,
      fixes: fixes.map((fix) => `${fix.title}${fix.preferred ? ' (preferred)' : ''}`),
    }));
    return { slug, severity: typeof severity === 'string' ? severity : 'by what is found', effect, said };
  });
