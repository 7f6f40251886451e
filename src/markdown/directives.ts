/**
 * The few words that a text may use beyond Markdown:
 *
 * - `:plate[the harbour]{slug=inner-basin}`: a link to a plate;
 * - `:show[the masts]{spot=masts view=tilt of="normal,axial"}`: a link to a state of the viewer;
 * - `::spot[The masts, enlarged]{id=masts}`: a figure of a spot;
 * - `:::look[Round the basin]{#round}` ... `:::`: a guided look, a list of steps with `:show`.
 *
 * `plate=<slug>` in any of them means another plate than the one whose text it is. Everything
 * else that looks like a directive (`10:30`, `a:b`) is put back as it was written.
 */
import type { Root, RootContent } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import { SKIP, visit } from 'unist-util-visit';
import type { VFile } from 'vfile';
import type { KnownPlate, MarkdownLookup } from './lookup.ts';
import { textFile } from './text-file.ts';
import { viewFragment, viewModes, type ViewMode } from './view-state.ts';

export type Directive = ContainerDirective | LeafDirective | TextDirective;

export const directiveNames = {
  textDirective: ['plate', 'show'],
  leafDirective: ['spot'],
  containerDirective: ['look'],
} as const;

export function isDirective(node: { type: string }): node is Directive {
  return Object.hasOwn(directiveNames, node.type);
}

export function isKnown(node: Directive): boolean {
  return (directiveNames[node.type] as readonly string[]).includes(node.name);
}

/** What a directive says, with the plate that it is about. */
export interface DirectiveTarget {
  readonly plate: string;
  readonly spot: string | null;
  readonly look: string | null;
  readonly mode: ViewMode;
  readonly of: readonly string[];
}

export function directiveTarget(node: Directive, ownPlate: string): DirectiveTarget {
  const given = node.attributes ?? {};
  const plate = given['plate'] ?? (node.name === 'plate' ? given['slug'] : null) ?? ownPlate;
  const mode = viewModes.find((name) => name === given['view']) ?? 'look';
  const of = (given['of'] ?? '').split(',').map((id) => id.trim());
  return {
    plate,
    spot: (node.name === 'spot' ? given['id'] : given['spot']) ?? null,
    look: node.name === 'look' ? (given['id'] ?? null) : null,
    mode,
    of: of.filter((id) => id !== ''),
  };
}

/** Address of what a directive leads to, under the site's base path, or a fragment of its own page. */
function addressOf(target: DirectiveTarget, ownPlate: string, known: KnownPlate | null): string {
  const page = target.plate === ownPlate ? '' : `/plates/${target.plate}/`;
  const spot = known?.spots.find(({ id }) => id === target.spot);
  const of = target.of.length > 0 ? target.of : spot?.view === undefined ? [] : [spot.view];
  return `${page}${viewFragment(target.mode, of, spot?.region)}`;
}

function put(node: Directive, name: string, properties: Readonly<Record<string, unknown>>): void {
  Object.assign(node, { data: { ...node.data, hName: name, hProperties: properties } });
}

function link(text: string, href: string): RootContent {
  return { type: 'link', url: href, children: [{ type: 'text', value: text }] };
}

function spotFigure(
  node: LeafDirective,
  target: DirectiveTarget,
  address: string,
  known: KnownPlate | null,
) {
  const spot = known?.spots.find(({ id }) => id === target.spot);
  const caption =
    node.children.length > 0
      ? node.children
      : [{ type: 'text' as const, value: spot?.title ?? '' }];
  const inner = { type: 'link' as const, url: address, children: caption };
  const data = { hName: 'figcaption' };
  node.children = [
    { type: 'emphasis', children: [inner], data },
  ] as unknown as typeof node.children;
  put(node, 'figure', {
    className: ['spot-figure'],
    dataPlate: target.plate,
    dataSpot: target.spot,
    ...(spot ? { dataRegion: Object.values(spot.region).join(',') } : {}),
  });
}

function guidedLook(
  node: ContainerDirective,
  target: DirectiveTarget,
  ownPlate: string,
  plate: KnownPlate | null,
) {
  const label = node.children[0];
  const isLabel = label?.type === 'paragraph' && label.data?.directiveLabel === true;
  const steps = isLabel ? node.children.slice(1) : node.children;
  const known = plate?.looks.find(({ id }) => id === target.look);
  const words = isLabel ? label.children : [{ type: 'text' as const, value: known?.title ?? '' }];
  if (steps.length === 0) {
    const page = target.plate === ownPlate ? '' : `/plates/${target.plate}/`;
    const way = {
      type: 'link' as const,
      url: `${page}#look-${target.look ?? ''}`,
      children: words,
    };
    node.children = [{ type: 'paragraph', children: [way] }] as typeof node.children;
    put(node, 'div', { className: ['look-place'] });
    return;
  }
  const title = { type: 'heading' as const, depth: 3 as const, children: words };
  node.children = [title, ...steps] as typeof node.children;
  put(node, 'section', { className: ['look'], id: `look-${target.look ?? ''}` });
}

/** An unknown directive as it was written, around its children where it has a body. */
function asWritten(node: Directive, source: string): RootContent[] {
  const start = node.position?.start.offset ?? 0;
  const end = node.position?.end.offset ?? start;
  const text = source.slice(start, end);
  const paragraph = (value: string): RootContent => ({
    type: 'paragraph',
    children: [{ type: 'text', value }],
  });
  if (node.type === 'textDirective') return [{ type: 'text', value: text }];
  if (node.type === 'leafDirective') return [paragraph(text)];
  const lines = text.split(/\r?\n/);
  const body = node.children.filter(
    (child) => child.type !== 'paragraph' || child.data?.directiveLabel !== true,
  );
  const closed = /^\s*:{3,}\s*$/.test(lines.at(-1) ?? '') && lines.length > 1;
  return [paragraph(lines[0]), ...body, ...(closed ? [paragraph(lines.at(-1)!.trim())] : [])];
}

/** remark plugin; comes after `remark-directive`. */
export function directivesStep({ lookup }: { readonly lookup: MarkdownLookup }) {
  return (tree: Root, file: VFile): void => {
    const source = String(file);
    const { plate, language } = textFile(file.path ?? '');
    visit(tree, (node, index, parent) => {
      if (!isDirective(node) || !parent || index === undefined) return undefined;
      if (!isKnown(node)) {
        parent.children.splice(index, 1, ...(asWritten(node, source) as typeof parent.children));
        // The text is not looked at again, the children of a container are.
        return node.type === 'containerDirective' ? index : [SKIP, index + 1];
      }
      const target = directiveTarget(node, plate);
      const known = lookup.plate(target.plate, language);
      const address = addressOf(target, plate, known);
      if (node.type === 'leafDirective') spotFigure(node, target, address, known);
      else if (node.type === 'containerDirective') guidedLook(node, target, plate, known);
      else {
        const fallback = node.name === 'plate' ? (known?.title ?? target.plate) : '';
        const children =
          node.children.length > 0 ? node.children : [{ type: 'text' as const, value: fallback }];
        const href = node.name === 'plate' ? `/plates/${target.plate}/` : address;
        const made = { ...link('', href), children } as RootContent;
        parent.children.splice(index, 1, made);
        return [SKIP, index + 1];
      }
      return undefined;
    });
  };
}
