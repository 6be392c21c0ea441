/** What we use of the library, which brings no types of its own. */
declare module 'qrcode' {
  export function create(text: string, options: { readonly errorCorrectionLevel: 'L' | 'M' | 'Q' | 'H' }): {
    readonly modules: { readonly size: number, readonly data: Uint8Array }
  }
}
