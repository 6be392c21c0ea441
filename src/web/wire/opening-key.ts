/** A fresh random name for one opening of a case: 128 bits as 22 characters of base64url. */
export function newOpeningKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  return btoa(String.fromCharCode(...bytes)).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')
}
