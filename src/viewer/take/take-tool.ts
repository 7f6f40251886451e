/** Take away: what is in sight, at full resolution, as a PNG or as a page to print. */
import { citation } from '../cite-tool.ts';
import type { PlateStage } from '../stage.ts';
import type { Tool } from '../tool-panels.ts';
import { clipRegion, frameOf } from '../view-state.ts';
import { download } from './download.ts';
import { figurePicture } from './figure-picture.ts';
import { lookPicture } from './look-picture.ts';
import { withWords } from './png-metadata.ts';

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
    if (object === 'png' || object === 'print') void this.take(object);
  }

  private async take(as: 'png' | 'print'): Promise<void> {
    const { stage } = this;
    stage.say('Putting the picture together …');
    try {
      const { blob, said } = await this.figure();
      if (as === 'png') download(`${stage.data.slug}-${stage.state.mode}.png`, blob);
      else await this.print(blob);
      stage.say(said);
    } catch (fault) {
      stage.say(fault instanceof Error ? fault.message : 'The picture could not be made.');
    }
  }

  private async figure(): Promise<{ readonly blob: Blob; readonly said: string }> {
    const { stage } = this;
    stage.rested();
    const { data, state, surfaces } = stage;
    const frame = frameOf(data, state.mode, state.of);
    const seen = surfaces.region();
    const region = seen === null ? null : clipRegion(seen, frame);
    const laid = surfaces.laid();
    if (region === null || laid === null) throw new Error('Nothing is in sight to be taken away.');
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
    const lines = [cited, `Rights: ${data.rights}`];
    const drawn = figurePicture(canvas, { lines, perMillimetre }, state.corrected);
    const png = await drawn.convertToBlob({ type: 'image/png' });
    const words = {
      title: data.title,
      description: cited,
      credit: data.credit ?? '',
      rights: data.rights,
      source: cited.slice(cited.lastIndexOf(' ') + 1),
    };
    const bytes = withWords(
      new Uint8Array(await png.arrayBuffer()),
      words,
      perMillimetre === null ? null : perMillimetre * 1000,
    );
    const part = state.mode === 'beside' ? ' Only the left picture was taken.' : '';
    const size = `${canvas.width} by ${canvas.height} pixels`;
    return {
      blob: new Blob([bytes], { type: 'image/png' }),
      said:
        factor === 1
          ? `Made at full resolution, ${size}.${part}`
          : `Made at 1/${factor} of the full resolution, ${size}: all of it would be too large for a browser.${part}`,
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
