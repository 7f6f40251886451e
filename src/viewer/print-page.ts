/** `<print-page>`: a button that prints the page, shown where a script can answer it. */

export class PrintPage extends HTMLElement {
  connectedCallback(): void {
    this.hidden = false;
    this.querySelector('button')?.addEventListener('click', () => {
      print();
    });
  }
}

customElements.define('print-page', PrintPage);
