/** A first plate.md: what must be written carries a mark, what may be written stands as comments. */
import { stringify } from 'yaml';
import { toWriteMark } from '../../records/to-write.ts';
import type { Process } from '../../records/vocabulary.ts';

const notEvaluated = 'http://rightsstatements.org/vocab/CNE/1.0/';

const optional = `# Add what is known, without the "#":
# objectNumber: "FQ 1911.14"
# maker:
#   - { name: "...", role: daguerreotypist, place: "..." }
# date: "1852~"              # EDTF: 1852, 1852~ (about), 185X, 1849/1855, ../1860
# place: "..."
# size: [70, 83]             # width and height in millimetres, or a trade name such as sixth
# orientation: laterally-reversed   # or right-reading
# credit: "..."
# condition:
#   - { term: tarnish, note: "..." }`;

/** Fields and body; every value is one that the schema takes, so that a build shows the pictures. */
export function plateText(slug: string, process: Process | null): string {
  const fields = {
    title: `${toWriteMark}: title of ${slug}`,
    process: process ?? {
      name: 'other',
      text: `${toWriteMark}: daguerreotype, ambrotype, tintype, or what else`,
    },
    description: {
      positive: `${toWriteMark}: what the plate shows when it reads positive`,
      negative: `${toWriteMark}: what the plate shows when it reads negative`,
    },
    rights: notEvaluated,
  };
  return `---
${stringify(fields, { lineWidth: 100 }).trimEnd()}
${optional}
---

${toWriteMark}: a paragraph or two about the plate.

<!--
## Provenance

- 1852~: Made.
- 1852~/1911: The family.
-->
`;
}

/** A first collection.md, for a content folder that has none. */
export function collectionText(): string {
  const fields = {
    title: `${toWriteMark}: name of the exhibit`,
    institution: { name: `${toWriteMark}: name of the institution` },
    languages: ['en'],
  };
  return `---
${stringify(fields, { lineWidth: 100 }).trimEnd()}
# contact: plates@example.org
# address: https://example.org/plates/     # where the exhibit will be published
# credit: "..."
# accent: "#a9823c"
---

${toWriteMark}: a word of welcome.
`;
}
