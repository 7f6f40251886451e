/**
 * The check of a text before it becomes a page. Astro publishes an empty page and reports success
 * when a Markdown step fails, and counts lines from the end of the front matter; so every text
 * goes through the same steps here first, and what is wrong is said with the line of the file.
 */
import { createMarkdownProcessor } from '@astrojs/markdown-remark';
import type { Nodes, Root } from 'mdast';
import { toString } from 'mdast-util-to-string';
import { visit } from 'unist-util-visit';
import { pathToFileURL } from 'node:url';
import { finding, type Finding } from '../records/finding.ts';
import { nearestWord } from '../records/nearest-word.ts';
import { toWriteMark } from '../records/to-write.ts';
import { isOutside } from './addresses-step.ts';
import { directiveFaults } from './check-directives.ts';
import { isDirective } from './directives.ts';
import type { MarkdownLookup } from './lookup.ts';
import { markdownPlugins } from './plugins.ts';
import { outOfOrder, provenanceLists } from './provenance.ts';
import { textFile } from './text-file.ts';

export interface CheckContext {
  /** Slug for the findings; empty for pages that are about no one plate. */
  readonly plate: string;
  /** Path of the file within the content folder, `plates/harbour/plate.md`. */
  readonly path: string;
  /** Line of the file on which the text begins, from 1. */
  readonly firstLine: number;
  readonly lookup: MarkdownLookup;
  /** Addresses of all pages under the base path, such as `lessons/left-is-right/`. */
  readonly pages: ReadonlySet<string>;
}

/** One fault before it has its place. */
export interface TextFault {
  readonly level?: Finding['level'];
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
}

type Say = (node: Nodes, fault: TextFault) => void;

/**
 * Check one text.
 *
 * @param file Name of the file for the findings, relative to the plate's or the content folder.
 */
export async function checkMarkdown(
  file: string,
  text: string,
  context: CheckContext,
): Promise<Finding[]> {
  const { plate, firstLine, lookup } = context;
  const findings: Finding[] = [];
  const say: Say = (node, fault) => {
    const start = node.position?.start;
    const line = start ? start.line + firstLine - 1 : null;
    const column = start ? { column: start.column } : {};
    findings.push(finding({ level: 'warning', plate, file, line, ...column, ...fault }));
  };
  const look = () => (tree: Root) => {
    checkTree(tree, context, say);
  };
  const steps = markdownPlugins({ base: '/', language: 'en', lookup });
  try {
    const processor = await createMarkdownProcessor({
      syntaxHighlight: false,
      remarkPlugins: [steps.remarkPlugins[0], look, ...steps.remarkPlugins.slice(1)] as never,
      rehypePlugins: steps.rehypePlugins as never,
    });
    await processor.render(text, { fileURL: pathToFileURL(`/${context.path}`) });
  } catch (error) {
    const message = `The text cannot be made into a page (${(error as Error).message}).`;
    const remedy = 'Take parts of the text out until it can, and look at the last one.';
    findings.push(
      finding({ level: 'error', plate, file, code: 'markdown-failed', message, remedy }),
    );
  }
  return findings;
}

function checkTree(tree: Root, context: CheckContext, say: Say): void {
  const own = textFile(context.path);
  visit(tree, (node) => {
    if (isDirective(node)) {
      for (const fault of directiveFaults(node, own.plate, context.lookup)) say(node, fault);
    }
    if (node.type === 'html') checkHtml(node, say);
    if (node.type === 'link' || node.type === 'definition') {
      checkLink(node, node.url, own.address, context, say);
    }
    if (node.type === 'image') checkImage(node, say);
    if (node.type === 'heading' && node.depth === 1) {
      say(node, {
        code: 'top-heading',
        message: `"${toString(node)}" is a heading of the first level, and the title is that already.`,
        remedy: 'Begin headings of the text with "##".',
      });
    }
    if (node.type === 'text' && node.value.includes(toWriteMark)) {
      say(node, {
        code: 'to-write',
        message: 'A passage is still to be written.',
        remedy: `Replace the words that begin with "${toWriteMark}".`,
      });
    }
  });
  checkProvenance(tree, say);
}

function checkHtml(node: Extract<Nodes, { type: 'html' }>, say: Say): void {
  if (/^<!--[\s\S]*-->$/.test(node.value.trim())) return;
  const shown = node.value.trim().slice(0, 40);
  say(node, {
    code: 'raw-html',
    message: `HTML is left out of the page: ${JSON.stringify(shown)}.`,
    remedy: 'Write it as Markdown, or with one of our directives (README, Texts).',
  });
}

function checkImage(node: Extract<Nodes, { type: 'image' }>, say: Say): void {
  if (isOutside(node.url)) {
    say(node, {
      code: 'outside-image',
      message: `The picture ${JSON.stringify(node.url.slice(0, 80))} lies elsewhere, and a page fetches nothing from others.`,
      remedy: 'Put the file beside the text and name it by its file name.',
    });
  }
  if (!node.alt?.trim()) {
    say(node, {
      code: 'no-alternative',
      message: `The picture ${JSON.stringify(node.url.slice(0, 80))} has no words for readers who cannot see it.`,
      remedy: 'Write them between the square brackets: ![A harbour at low water](harbour.jpg).',
    });
  }
}

/** An address as a browser on the page resolves it, under the base path; null for no address. */
function resolved(url: string, own: string): { path: string; fragment: string } | null {
  try {
    const { pathname, hash } = new URL(url, `http://exhibit.invalid/${own}`);
    return { path: decodeURIComponent(pathname).slice(1), fragment: hash.slice(1) };
  } catch {
    return null;
  }
}

function checkLink(node: Nodes, url: string, own: string, context: CheckContext, say: Say): void {
  if (/^(https?|mailto):/i.test(url)) return;
  if (isOutside(url)) {
    say(node, {
      code: 'unsafe-link',
      message: `The link ${JSON.stringify(url.slice(0, 60))} is left out: pages link to http, https and mailto only.`,
      remedy: 'Link to a page, or write the words without a link.',
    });
    return;
  }
  const target = resolved(url, own);
  if (target === null) {
    say(node, {
      code: 'bad-link',
      message: `The link ${JSON.stringify(url.slice(0, 60))} is not an address.`,
      remedy: 'Correct it.',
    });
    return;
  }
  const { path, fragment } = target;
  const page = path === '' || path.endsWith('/') ? path : `${path}/`;
  const [, plate] = /^plates\/([^/]+)\//.exec(page) ?? [];
  if (plate !== undefined && !context.lookup.plate(plate)) {
    const near = nearestWord(plate, context.lookup.plates());
    say(node, {
      code: 'unknown-plate',
      message: `The link ${JSON.stringify(url)} leads to the plate "${plate}", but there is no such plate.`,
      remedy: near ? `Did you mean "${near}"?` : 'Correct the link.',
    });
    return;
  }
  if (plate === undefined && !context.pages.has(page) && !/\.[a-z0-9]+\/$/i.test(page)) {
    const near = nearestWord(page, [...context.pages]);
    say(node, {
      code: 'unknown-page',
      message: `The link ${JSON.stringify(url)} leads to no page of the exhibit.`,
      remedy: near ? `Did you mean "/${near}"?` : 'Correct the link.',
    });
    return;
  }
  if (/\.md\/$/.test(page)) {
    say(node, {
      code: 'unknown-page',
      message: `The link ${JSON.stringify(url)} leads to a file, not to a page.`,
      remedy: 'Link to the page: /plates/SLUG/, /techniques/ID/ or /lessons/ID/.',
    });
    return;
  }
  checkFragment(node, url, fragment, plate, context, say);
}

/** `#spot-masts` and `#look-round` of a plate's page. */
function checkFragment(
  node: Nodes,
  url: string,
  fragment: string,
  plate: string | undefined,
  { lookup }: CheckContext,
  say: Say,
): void {
  const [, kind, id] = /^(spot|look)-(.+)$/.exec(fragment) ?? [];
  if (plate === undefined || id === undefined) return;
  const known = lookup.plate(plate)?.[kind === 'spot' ? 'spots' : 'looks'].map((entry) => entry.id);
  if (!known || known.includes(id)) return;
  const near = nearestWord(id, known);
  say(node, {
    code: `unknown-${kind}`,
    message: `The link ${JSON.stringify(url)} leads to "${id}", which is not among the ${kind}s of "${plate}".`,
    remedy: near ? `Did you mean "${near}"?` : 'Correct the link.',
  });
}

function checkProvenance(tree: Root, say: Say): void {
  for (const { items } of provenanceLists(tree)) {
    for (const { node, date, text } of items) {
      if (date) continue;
      say(node, {
        code: 'provenance-date',
        message: `The entry ${JSON.stringify(text.slice(0, 40))} of the provenance does not begin with a date.`,
        remedy: 'Begin it with a date as EDTF and a colon, such as "1850~/1911: ...".',
      });
    }
    for (const k of outOfOrder(items)) {
      say(items[k].node, {
        code: 'provenance-order',
        message: `The entry of ${items[k].date?.text ?? ''} begins before the entry above it.`,
        remedy: 'Put the entries in order of time, or correct the date.',
      });
    }
  }
}
