/** The planner's words and numbers in one language, as a file of their own. */
import type { PlanSpeech } from '../components/planner/plan-value.ts';
import type { PlannerWords } from '../words/en/planner.ts';
import { interfaceLanguage, isPseudo, type InterfaceLanguage } from '../words/locale.ts';
import { measuresIn } from '../words/measures.ts';

const files: Readonly<Record<InterfaceLanguage, () => Promise<{ planner: PlannerWords }>>> = {
  en: () => import('../words/en/planner.ts'),
  fr: () => import('../words/fr/planner.ts'),
  de: () => import('../words/de/planner.ts'),
  es: () => import('../words/es/planner.ts'),
};

export async function plannerSpeech(language: string): Promise<PlanSpeech> {
  const { planner } = await files[interfaceLanguage(language)]();
  const words = isPseudo(language) ? (await import('../words/pseudo.ts')).marked(planner) : planner;
  return { words, measures: measuresIn(language) };
}
