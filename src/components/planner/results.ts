/** The plan as HTML: the page makes it while building, the browser makes it again. */
import type { Plan } from '../../optics/plan/plan.ts';
import { escaped } from '../setup/svg.ts';
import { sectionTechniques } from './fields.ts';
import { planValue, type PlanSpeech } from './plan-value.ts';

/** `techniques` is the address of the technique pages, with its slash. */
export function resultsHtml(plan: Plan, techniques: string, speech: PlanSpeech): string {
  const { words } = speech;
  return plan.sections
    .map(({ id, figures }) => {
      const rows = figures
        .map(
          (f) =>
            `<tr><th scope="row">${escaped(words.figures[f.id])}</th><td>${escaped(planValue(f.value, f.unit, speech))}</td></tr>`,
        )
        .join('');
      const own = plan.warnings.filter((warning) => warning.section === id);
      const technique = sectionTechniques[id];
      const link =
        technique === null
          ? ''
          : `<p class="more"><a href="${techniques}${technique}/">${words.technique}<span class="away">: ${words.sections[id]}</span></a></p>`;
      return (
        `<section class="planned-part"><h3 id="plan-${id}">${words.sections[id]}</h3>` +
        own
          .map((warning) => `<p class="warned">${escaped(warningText(warning, speech))}</p>`)
          .join('') +
        `<table aria-labelledby="plan-${id}"><tbody>${rows}</tbody></table>` +
        `<details><summary>${words.formula}<span class="away">: ${words.sections[id]}</span></summary>` +
        words.formulas[id].map((text) => `<p>${escaped(text)}</p>`).join('') +
        `</details>${link}</section>`
      );
    })
    .join('');
}

export function warningText(
  warning: Plan['warnings'][number],
  { words, measures }: PlanSpeech,
): string {
  return words.warningTexts[warning.id](warning.values.map((value) => measures.figure(value)));
}
