/** What the check of a bag found, for a person. */
import type { BagVerdict } from './check-bag.ts';

export function bagVerdictText(name: string, verdict: BagVerdict): string {
  const { valid, version, files, bytes, errors, warnings } = verdict;
  const size = `${files} files, ${(bytes / 1e6).toFixed(1)} MB`;
  const head = valid ? `${name}: valid (BagIt ${version ?? ''}; ${size}).` : `${name}: not valid.`;
  return [
    head,
    ...errors.map((sentence) => `  error    ${sentence}`),
    ...warnings.map((sentence) => `  warning  ${sentence}`),
  ].join('\n');
}
