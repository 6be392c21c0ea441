import { useState } from 'preact/hooks'
import type { TicketView } from '../../../shared/index.js'
import { momentInWords } from '../wording/day.js'
import { photoAddress, photoName } from '../wire/photo-address.js'
import { PhotoTable } from './photo-table.js'

/** The case's photos as small prints; one opens large, and a second can be laid beside it. */
export function PhotoStrip({ view }: { readonly view: TicketView }) {
  const { link, photos } = view.case
  const [open, setOpen] = useState<number | null>(null)
  if (photos.length === 0) return null
  return (
    <section class="step photos">
      <h3>Photos <span class="origin">{photos.length}</span></h3>
      <ul class="prints">
        {photos.map(photo => (
          <li key={photo.photo}>
            <button type="button" class="print" aria-label={`Open ${photoName(photo)} large`} onClick={() => setOpen(photo.photo)}>
              <img src={photoAddress(link, photo.photo, 'small')} alt={photoName(photo)} loading="lazy" />
              <span class="origin">{photo.photo}. {photo.from === 'asker' ? 'from the asker' : 'from the helpline'}, {momentInWords(photo.at)}</span>
            </button>
          </li>
        ))}
      </ul>
      {open !== null && <PhotoTable link={link} photos={photos} first={open} onClose={() => setOpen(null)} />}
    </section>
  )
}
