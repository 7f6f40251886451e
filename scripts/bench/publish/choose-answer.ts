/** How long the index of plates takes to narrow itself, in a browser without a GPU. */
import { serveStatic } from '../../../src/pipeline/static-server.ts';
import { openBrowser } from '../../../tests/site/browser.ts';

/**
 * From choosing a decade to the picture after it, the longest of three choices, milliseconds.
 *
 * @param site The folder of a built exhibit at `/`.
 */
export async function millisecondsToChoose(site: string): Promise<number> {
  const server = await serveStatic(site);
  const browser = await openBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(`${server.url}plates/`, { waitUntil: 'load' });
    const waits = await page.locator('plate-index select').first().evaluate(chooseThrice);
    return Math.round(Math.max(...waits));
  } finally {
    await browser.close();
    await server.close();
  }
}

/** Runs in the page; the first answer to “from” keeps every plate. @throws Error where a choice leaves nothing or everything. */
async function chooseThrice(select: HTMLElement | SVGElement): Promise<number[]> {
  const field = select as HTMLSelectElement;
  const plates = [...document.querySelectorAll('.plates > li')];
  const waits: number[] = [];
  for (const index of [2, 3, 2]) {
    const started = performance.now();
    field.selectedIndex = index;
    field.dispatchEvent(new Event('change', { bubbles: true }));
    await new Promise((drawn) => {
      requestAnimationFrame(() => requestAnimationFrame(drawn));
    });
    waits.push(performance.now() - started);
    const left = plates.filter((plate) => plate.getClientRects().length > 0).length;
    if (left === 0 || left === plates.length) throw new Error(`A choice left ${left} plates.`);
  }
  return waits;
}
