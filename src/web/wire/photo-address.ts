import type { PhotoSize, PhotoView } from '../../../shared/index.js'

/** Where a case's photo is shown, on our own pages. The same as in `shared`, whose schemas stay out of the browser. */
export function photoAddress(link: string, photo: number, size: PhotoSize): string {
  return `/api/cases/${link}/photos/${photo}/${size}`
}

/** What a photo is called where it cannot be seen. */
export function photoName(photo: PhotoView): string {
  return `photo ${photo.photo} ${photo.from === 'asker' ? 'from the asker' : 'from the helpline'}`
}
