/** Made by `src/integration/theme-module.ts`. */
declare module 'virtual:exhibit-theme' {
  /** Addresses of the institution's sign, where it has one. */
  export const logo: string | undefined;
  export const logoDark: string | undefined;
}
