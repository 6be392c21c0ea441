import { useEffect, useRef, useState } from 'preact/hooks'
import type { CaseView } from '../../../shared/index.js'
import { useSheetWording } from '../wording/sheet-language.js'
import { waitBeforeAttempt } from '../wire/backoff.js'
import { newOpeningKey } from '../wire/opening-key.js'
import type { CaseService } from '../wire/case-service.js'
import { PhotoThumb } from './photo-thumb.js'

interface PhotoBoxProps {
  readonly view: CaseView
  readonly service: CaseService
  /** A newer state of the case, as a photo brings it. */
  readonly onView: (view: CaseView) => void
  readonly mayRemove: boolean
}

/** A photo that is not kept yet. */
interface Upload {
  readonly key: string
  readonly file: File
  readonly share: number
  readonly state: 'sending' | 'waiting' | 'failed'
  /** What the service said against it. */
  readonly said: string | null
}

/** Photos of the plant: those kept, those on their way with how far they are, and the way to add one. */
export function PhotoBox({ view, service, onView, mayRemove }: PhotoBoxProps) {
  const words = useSheetWording().photos
  const [uploads, setUploads] = useState<readonly Upload[]>([])
  const stop = useRef(new AbortController())
  useEffect(() => () => stop.current.abort(), [])
  const change = (key: string, next: Partial<Upload> | null) => setUploads(all => next === null
    ? all.filter(upload => upload.key !== key) : all.map(upload => upload.key === key ? { ...upload, ...next } : upload))

  async function send(key: string, file: File): Promise<void> {
    const { signal } = stop.current
    for (let attempt = 1; !signal.aborted; attempt++) {
      change(key, { state: 'sending', share: 0 })
      const reply = await service.addPhoto(view.link, key, file, share => change(key, { share }), signal)
      if (signal.aborted) return
      if (reply.ok) {
        change(key, null)
        onView(reply.value.case)
        return
      }
      const { trouble } = reply
      if (trouble.kind !== 'lost' || attempt > MOST_TRIES) {
        change(key, { state: 'failed', said: 'detail' in trouble ? trouble.detail : null })
        return
      }
      change(key, { state: 'waiting', said: trouble.detail })
      await new Promise(resolve => setTimeout(resolve, waitBeforeAttempt(attempt, Math.random())))
    }
  }

  function choose(event: Event & { readonly currentTarget: HTMLInputElement }): void {
    const chosen = [...event.currentTarget.files ?? []].slice(0, room)
    event.currentTarget.value = ''
    const fresh = chosen.map((file): Upload => ({
      key: newOpeningKey(), file, share: 0, ...(file.size > MOST_BYTES ? { state: 'failed', said: words.tooLarge } : { state: 'sending', said: null }),
    }))
    setUploads(all => [...all, ...fresh])
    for (const { key, file, state } of fresh) if (state === 'sending') void send(key, file)
  }

  async function remove(photo: number): Promise<void> {
    const reply = await service.removePhoto(view.link, photo)
    if (reply.ok) onView(reply.value)
  }

  const room = MOST_PHOTOS - view.photos.length - uploads.length
  return (
    <section class="photos" aria-labelledby="photos-title">
      <h4 id="photos-title">{words.title}</h4>
      <p class="hint">{words.hint}</p>
      <ul>
        {view.photos.map(({ photo }, place) => (
          <li key={photo}>
            <PhotoThumb service={service} link={view.link} photo={photo} label={words.photo(place + 1)} />
            {mayRemove && <button type="button" class="quiet" aria-label={words.removePhoto(place + 1)} onClick={() => void remove(photo)}>{words.remove}</button>}
          </li>
        ))}
        {uploads.map(({ key, file, share, state, said }) => (
          <li key={key}>
            <span>{file.name}</span>
            {state === 'sending' && <><progress max={1} value={share} aria-label={words.sending(file.name)} /> <span class="hint">{Math.round(share * 100)} %</span></>}
            {state === 'waiting' && <span class="hint" role="status">{words.waiting}</span>}
            {state === 'failed' && (
              <span role="alert">{said ?? words.failed} <span class="row">
                {file.size <= MOST_BYTES && <button type="button" class="quiet" onClick={() => void send(key, file)}>{words.again}</button>}
                <button type="button" class="quiet" onClick={() => change(key, null)}>{words.leave}</button>
              </span></span>
            )}
          </li>
        ))}
      </ul>
      {room > 0
        ? (
          <p class="photo-add">
            <label for="photo-file">{words.add}</label>
            <input id="photo-file" type="file" accept={KINDS} multiple onChange={choose} />
          </p>
        )
        : <p class="hint">{words.full(MOST_PHOTOS)}</p>}
    </section>
  )
}

// Written here again: the wire's own constants would bring their schemas along into every page. A test holds them together.
export const MOST_PHOTOS = 6
export const MOST_BYTES = 12 * 1024 * 1024
export const KINDS = 'image/jpeg,image/png,image/webp'
const MOST_TRIES = 4
