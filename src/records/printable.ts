/**
 * Text of others for a terminal. A file may be named with signs that a terminal obeys: that
 * clear it, recolour it or write into its title. Each is shown as its picture instead.
 *
 * Reference
 * - Unicode, block Control Pictures (U+2400 to U+2426): the picture of a control sign is its
 *   number and 0x2400; U+2421 is that of DELETE.
 */
export function printable(text: string): string {
  return text.replace(/[^\P{Cc}\n\t]/gu, (sign) => {
    const code = sign.charCodeAt(0);
    if (code < 0x20) return String.fromCharCode(0x2400 + code);
    return code === 0x7f ? '\u2421' : '\uFFFD';
  });
}
