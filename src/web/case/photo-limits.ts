// Written here again: the wire's own constants would bring their schemas along into every page. A test holds them together.
export const MOST_PHOTOS = 6
export const MOST_BYTES = 12 * 1024 * 1024
export const KINDS = 'image/jpeg,image/png,image/webp'
