// Every feature of the protocol, by what people do with it.
import { answerLayout } from './features/layout.ts';
import { answerTokens } from './features/tokens.ts';
import type { Session } from './session.ts';

export function answerFeatures(session: Session): void {
  answerLayout(session);
  if (session.announced.tokens) answerTokens(session);
}
