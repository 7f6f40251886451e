/** Take away: what is in sight, at full resolution, as a PNG, a TIFF or a page to print. */
import { citation } from '../cite-tool.ts';
import { captionOf } from '../control-state.ts';
import type { PlateStage } from '../stage.ts';
import type { Tool } from '../tool-panels.ts';
import { clipRegion, frameOf } from '../view-state.ts';
import { download } from './download.ts';
import { figurePicture } from './figure-picture.ts';
import { lookPicture } from './look-picture.ts';
import { withWords } from './png-metadata.ts';
import { words } from '../words.ts';
import type { PictureWords } from './xmp-packet.ts';

/** The picture with its strip of words, and what goes into the file. */
interface Figure {
  readonly canvas: OffscreenCanvas;
  readonly perMillimetre: number | null;
  readonly about: PictureWords;
  /** What to tell the reader. */
  readonly said: string;
}

async function png({ canvas, perMillimetre, about }: Figure): Promise<Blob> {
  const plain = await canvas.convertToBlob({ type: 'image/png' });
  const perMetre = perMillimetre === null ? null : perMillimetre * 1000;
  const bytes = withWords(new Uint8Array(await plain.arrayBuffer()), about, perMetre);
  return new Blob([bytes], { type: 'image/png' });
}

async function tiff({ canvas, perMillimetre, about }: Figure): Promise<Blob> {
  const { tiffFile } = await import('./tiff-file.ts');
  const { width, height } = canvas;
  const { data: rgba } = canvas.getContext('2d')!.getImageData(0, 0, width, height);
  const pixelsPerCentimetre = perMillimetre === null ? null : perMillimetre * 10;
  const bytes = tiffFile({ width, height, rgba, pixelsPerCentimetre, words: about });
  return new Blob([bytes], { type: 'image/tiff' });
}

export class TakeTool implements Tool {
  private readonly stage: PlateStage;

  constructor(stage: PlateStage) {
    this.stage = stage;
  }

  opened(): void {
    void this.stage.use();
  }

  closed(): void {
    // Nothing is left behind.
  }

  moved(): void {
    // The picture is made when it is asked for.
  }

  pressed(): boolean {
    return false;
  }

  act(object: string): void {
    if (object === 'png' || object === 'tiff' || object === 'print') void this.take(object);
  }

  private async take(as: 'png' | 'tiff' | 'print'): Promise<void> {
    const { stage } = this;
    stage.say(words.take.making);
    try {
      const figure = await this.figure();
      const name = `${stage.data.slug}-${stage.state.mode}`;
      if (as === 'tiff') download(`${name}.tif`, await tiff(figure));
      else if (as === 'png') download(`${name}.png`, await png(figure));
      else await this.print(await png(figure));
      stage.say(figure.said);
    } catch (fault) {
      stage.say(fault instanceof Error ? fault.message : words.take.failed);
    }
  }

  private async figure(): Promise<Figure> {
    const { stage } = this;
    stage.rested();
    const { data, state, surfaces } = stage;
    const frame = frameOf(data, state.mode, state.of);
    const seen = surfaces.region();
    const region = seen === null ? null : clipRegion(seen, frame);
    const laid = surfaces.laid();
    if (region === null || laid === null) throw new Error(words.take.nothing);
    const { canvas, factor } = await lookPicture(
      laid.look,
      laid.views,
      region,
      surfaces.distance(),
    );
    const perMillimetre =
      frame.pixelsPerMillimetre === null ? null : frame.pixelsPerMillimetre / factor;
    const page = location.href.replace(/#.*$/, '');
    const cited = citation(data, state, page, new Date().toISOString().slice(0, 10));
    const caption = captionOf(stage);
    const lines = [
      ...(caption === null ? [] : [`${caption}.`]),
      cited,
      words.take.rights(data.rights),
    ];
    const { width, height } = canvas;
    const size =
      factor === 1 ? words.take.full(width, height) : words.take.smaller(factor, width, height);
    return {
      canvas: figurePicture(canvas, { lines, perMillimetre }, state.corrected),
      perMillimetre,
      about: {
        title: data.title,
        description: cited,
        credit: data.credit ?? '',
        rights: data.rights,
        source: cited.slice(cited.lastIndexOf(' ') + 1),
      },
      said: state.mode === 'beside' ? `${size} ${words.take.firstOnly}` : size,
    };
  }

  /** Only the figure is on the page while it is printed. */
  private async print(blob: Blob): Promise<void> {
    const image = new Image();
    image.src = URL.createObjectURL(blob);
    image.alt = this.stage.data.title;
    await image.decode();
    const sheet = document.createElement('div');
    sheet.className = 'figure-sheet';
    sheet.append(image);
    document.body.append(sheet);
    document.documentElement.dataset['sheet'] = '';
    const clear = () => {
      delete document.documentElement.dataset['sheet'];
      sheet.remove();
      URL.revokeObjectURL(image.src);
    };
    addEventListener('afterprint', clear, { once: true });
    window.print();
  }
}
