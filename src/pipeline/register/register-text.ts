/** `plate.md` from the fields of a register; what it does not say is marked to be written. */
import { stringify } from 'yaml';
import { toWriteMark } from '../../records/to-write.ts';

const notEvaluated = 'http://rightsstatements.org/vocab/CNE/1.0/';

export function registerPlateText(fields: Readonly<Record<string, unknown>>): string {
  const { title, process, description, rights, ...rest } = fields;
  const said = (description ?? {}) as { positive?: string; negative?: string };
  const all = {
    title,
    process: process ?? {
      name: 'other',
      text: `${toWriteMark}: daguerreotype, ambrotype, tintype, or what else`,
    },
    ...rest,
    description: {
      positive: said.positive ?? `${toWriteMark}: what the plate shows when it reads positive`,
      negative: said.negative ?? `${toWriteMark}: what the plate shows when it reads negative`,
    },
    rights: rights ?? notEvaluated,
  };
  return `---\n${stringify(all, { lineWidth: 100 }).trimEnd()}\n---\n\n${toWriteMark}: a paragraph or two about the plate.\n`;
}
