import { useState } from 'preact/hooks'
import type { CaseView } from '../../../shared/index.js'
import { useSheetWording } from '../wording/sheet-language.js'
import type { CaseService } from '../wire/case-service.js'
import { KINDS, MOST_PHOTOS } from './photo-limits.js'
import { PhotoThumb } from './photo-thumb.js'
import type { PhotoUploads } from './photo-uploads.js'

interface PhotoBoxProps {
  readonly view: CaseView
  readonly service: CaseService
  readonly photos: PhotoUploads
  /** A newer state of the case, as a removed photo brings it. */
  readonly onView: (view: CaseView) => void
  readonly mayRemove: boolean
}

/** Photos of the plant: those kept, those on their way with how far they are, and the way to add one. */
export function PhotoBox({ view, service, photos, onView, mayRemove }: PhotoBoxProps) {
  const words = useSheetWording().photos
  const uploads = photos.uploads()
  /** Names of photos for which there was no room. */
  const [noRoom, setNoRoom] = useState<readonly string[]>([])
  /** The photo that could not be removed. */
  const [notRemoved, setNotRemoved] = useState<number | null>(null)

  function choose(event: Event & { readonly currentTarget: HTMLInputElement }): void {
    const chosen = [...event.currentTarget.files ?? []]
    event.currentTarget.value = ''
    setNoRoom(chosen.slice(room).map(file => file.name))
    photos.add(chosen.slice(0, room))
  }

  async function remove(photo: number): Promise<void> {
    const reply = await service.removePhoto(view.link, photo)
    setNotRemoved(reply.ok ? null : photo)
    if (reply.ok) onView(reply.value)
  }

  const room = Math.max(0, MOST_PHOTOS - view.photos.length - uploads.length)
  return (
    <section class="photos" aria-labelledby="photos-title">
      <h4 id="photos-title">{words.title}</h4>
      <p class="hint">{words.hint}</p>
      <ul>
        {view.photos.map(({ photo }, place) => (
          <li key={photo}>
            <PhotoThumb service={service} link={view.link} photo={photo} label={words.photo(place + 1)} />
            {mayRemove && <button type="button" class="quiet" aria-label={words.removePhoto(place + 1)} onClick={() => void remove(photo)}>{words.remove}</button>}
            {notRemoved === photo && <span class="fault" role="alert">{words.notRemoved} <button type="button" class="quiet" onClick={() => void remove(photo)}>{words.again}</button></span>}
          </li>
        ))}
        {uploads.map(({ key, file, share, state, said }) => (
          <li key={key}>
            <span>{file.name}</span>
            {state === 'sending' && <><progress max={1} value={share} aria-label={words.sending(file.name)} /> <span class="hint">{Math.round(share * 100)} %</span></>}
            {state === 'waiting' && <span class="hint" role="status">{words.waiting}</span>}
            {(state === 'failed' || state === 'too large') && (
              <span role="alert">{state === 'too large' ? words.tooLarge : said ?? words.failed} <span class="row">
                {state === 'failed' && <button type="button" class="quiet" onClick={() => photos.again(key)}>{words.again}</button>}
                <button type="button" class="quiet" onClick={() => photos.leaveOut(key)}>{words.leave}</button>
              </span></span>
            )}
          </li>
        ))}
      </ul>
      {noRoom.length > 0 && <p class="fault" role="alert">{words.full(MOST_PHOTOS)} {words.noRoom(noRoom.join(', '))}</p>}
      {room > 0
        ? (
          <p class="photo-add">
            <label for="photo-file">{words.add}</label>
            <input id="photo-file" type="file" accept={KINDS} multiple onChange={choose} />
          </p>
        )
        : noRoom.length === 0 && <p class="hint">{words.full(MOST_PHOTOS)}</p>}
    </section>
  )
}
