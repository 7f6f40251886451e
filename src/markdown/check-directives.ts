/** Whether a directive is one of ours and leads to something that is there. */
import { nearestWord } from '../records/nearest-word.ts';
import type { TextFault } from './check.ts';
import { directiveNames, directiveTarget, isKnown, type Directive } from './directives.ts';
import type { KnownPlate, MarkdownLookup } from './lookup.ts';
import { viewModes } from './view-state.ts';

const colons = { textDirective: ':', leafDirective: '::', containerDirective: ':::' } as const;

export function directiveFaults(
  node: Directive,
  ownPlate: string,
  lookup: MarkdownLookup,
): TextFault[] {
  if (!isKnown(node)) return unknownName(node);
  const name = `${colons[node.type]}${node.name}`;
  const target = directiveTarget(node, ownPlate);
  if (target.plate === '') {
    const field = node.name === 'plate' ? 'slug' : 'plate';
    return [
      {
        code: 'directive-incomplete',
        message: `"${name}" does not say which plate it is about.`,
        remedy: `Add {${field}=...} with the name of the plate's folder.`,
      },
    ];
  }
  const plate = lookup.plate(target.plate);
  if (!plate) {
    const near = nearestWord(target.plate, lookup.plates());
    return [
      {
        code: 'unknown-plate',
        message: `"${name}" is about the plate "${target.plate}", but there is no such plate.`,
        remedy: near ? `Did you mean "${near}"?` : 'Correct the name.',
      },
    ];
  }
  return [...idFaults(node, name, plate, ownPlate), ...modeFaults(node, name)];
}

/** `10:30` is a time of day; a name with a label or fields is meant as a directive. */
function unknownName(node: Directive): TextFault[] {
  const meant = node.children.length > 0 || Object.keys(node.attributes ?? {}).length > 0;
  if (node.type === 'textDirective' && !meant) return [];
  const known = Object.entries(directiveNames).flatMap(([type, names]) =>
    names.map((name) => `${colons[type as keyof typeof colons]}${name}`),
  );
  const near = nearestWord(node.name, known);
  return [
    {
      code: 'unknown-directive',
      message: `"${colons[node.type]}${node.name}" is no directive of ours and stays in the text as it is written.`,
      remedy: near ? `Did you mean "${near}"?` : `There are: ${known.join(', ')}.`,
    },
  ];
}

function idFaults(node: Directive, name: string, plate: KnownPlate, ownPlate: string): TextFault[] {
  const { spot, look } = directiveTarget(node, ownPlate);
  const wanted =
    node.name === 'spot' || spot !== null ? 'spot' : node.name === 'look' ? 'look' : null;
  if (wanted === null) return [];
  const id = wanted === 'spot' ? spot : look;
  if (id === null) {
    const message = `"${name}" does not say which ${wanted} it is about.`;
    const remedy = wanted === 'spot' ? 'Add {id=...}.' : 'Add {#...}.';
    return [{ code: 'directive-incomplete', message, remedy }];
  }
  const known = plate[wanted === 'spot' ? 'spots' : 'looks'].map((entry) => entry.id);
  const own = wanted === 'look' && hasSteps(node);
  if (own && known.includes(id)) {
    return [
      {
        code: 'duplicate-id',
        message: `The guided look "${id}" is written here and in the fields of plate.md as well.`,
        remedy: 'Leave the block empty to point to the other, or give it an id of its own.',
      },
    ];
  }
  if (own || known.includes(id)) return [];
  const near = nearestWord(id, known);
  return [
    {
      code: `unknown-${wanted}`,
      message: `"${name}" is about "${id}", which is not among the ${wanted}s of the plate "${plate.title}".`,
      remedy: near ? `Did you mean "${near}"?` : `There are: ${known.join(', ') || 'none'}.`,
    },
  ];
}

function hasSteps(node: Directive): boolean {
  return node.children.some(
    (child) => child.type !== 'paragraph' || child.data?.directiveLabel !== true,
  );
}

function modeFaults(node: Directive, name: string): TextFault[] {
  const mode = node.attributes?.['view'];
  if (mode === undefined || mode === null || viewModes.some((known) => known === mode)) return [];
  const near = nearestWord(mode, viewModes);
  return [
    {
      code: 'unknown-mode',
      message: `"${name}" asks for the view "${mode}". Expected one of ${viewModes.join(', ')}.`,
      remedy: near ? `Did you mean "${near}"?` : 'Correct it.',
    },
  ];
}
