import { useEffect, useRef, useState } from 'preact/hooks'
import type { PhotoView } from '../../../shared/index.js'
import { photoAddress, photoName } from '../wire/photo-address.js'

interface PhotoTableProps {
  readonly link: string
  readonly photos: readonly PhotoView[]
  /** The photo to begin with. */
  readonly first: number
  readonly onClose: () => void
}

/** One photo large, or two side by side at the same scale. Plus and minus zoom, arrows move, Escape closes. */
export function PhotoTable({ link, photos, first, onClose }: PhotoTableProps) {
  const dialog = useRef<HTMLDialogElement>(null)
  const [left, setLeft] = useState(first)
  const [right, setRight] = useState<number | null>(null)
  const [zoom, setZoom] = useState(1)

  // A modal dialog keeps the focus inside and gives it back to the print it was opened from.
  useEffect(() => { dialog.current?.showModal() }, [])
  const zoomBy = (factor: number) => setZoom(now => Math.min(MOST_ZOOM, Math.max(1, now * factor)))
  const other = photos.find(photo => photo.photo !== left)?.photo ?? null

  function press(event: KeyboardEvent): void {
    // Keys of the sheet beneath are not for now.
    event.stopPropagation()
    if (event.ctrlKey || event.altKey || event.metaKey || event.target instanceof HTMLSelectElement) return
    if (event.key === '+' || event.key === '=') zoomBy(ZOOM_STEP)
    if (event.key === '-') zoomBy(1 / ZOOM_STEP)
    if (event.key === '0') setZoom(1)
    if (event.key.toLowerCase() === 'c' && other !== null) setRight(right === null ? other : null)
  }
  return (
    <dialog class="photo-table" ref={dialog} aria-label="Photos, large" onClose={onClose} onKeyDown={press}>
      <p class="row">
        <button type="button" class="second" onClick={() => dialog.current?.close()}>Back to the sheet<kbd>Esc</kbd></button>
        <button type="button" class="second" disabled={zoom >= MOST_ZOOM} onClick={() => zoomBy(ZOOM_STEP)}>Closer<kbd>+</kbd></button>
        <button type="button" class="second" disabled={zoom <= 1} onClick={() => zoomBy(1 / ZOOM_STEP)}>Farther<kbd>−</kbd></button>
        <button type="button" class="second" disabled={zoom === 1} onClick={() => setZoom(1)}>Whole<kbd>0</kbd></button>
        {other !== null && <button type="button" class="second" onClick={() => setRight(right === null ? other : null)}>{right === null ? 'Compare with another' : 'One alone'}<kbd>C</kbd></button>}
        <span class="origin" role="status">{Math.round(zoom * 100)} %</span>
      </p>
      <div class={right === null ? 'table-top' : 'table-top two'}>
        <Print link={link} photos={photos} shown={left} zoom={zoom} label={right === null ? 'Which photo' : 'Photo on the left'} onShow={setLeft} />
        {right !== null && <Print link={link} photos={photos} shown={right} zoom={zoom} label="Photo on the right" onShow={setRight} />}
      </div>
    </dialog>
  )
}

interface PrintProps {
  readonly link: string
  readonly photos: readonly PhotoView[]
  readonly shown: number
  readonly zoom: number
  readonly label: string
  readonly onShow: (photo: number) => void
}

function Print({ link, photos, shown, zoom, label, onShow }: PrintProps) {
  const photo = photos.find(each => each.photo === shown)
  return (
    <div class="table-print">
      <label><span>{label}</span>
        <select value={String(shown)} onChange={event => onShow(Number(event.currentTarget.value))}>
          {photos.map(each => <option key={each.photo} value={String(each.photo)}>{photoName(each)}</option>)}
        </select>
      </label>
      {/* Scrolls by arrow keys once it has the focus. */}
      <div class="table-frame" tabIndex={0} role="group" aria-label={`${photo === undefined ? 'photo' : photoName(photo)}, arrow keys move it`}>
        <img src={photoAddress(link, shown, 'large')} alt={photo === undefined ? '' : photoName(photo)} style={{ width: `${zoom * 100}%` }} />
      </div>
    </div>
  )
}

const ZOOM_STEP = 1.5
const MOST_ZOOM = 8
