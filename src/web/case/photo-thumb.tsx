import { useEffect, useRef, useState } from 'preact/hooks'
import { useSheetWording } from '../wording/sheet-language.js'
import type { CaseService } from '../wire/case-service.js'

interface PhotoThumbProps {
  readonly service: CaseService
  readonly link: string
  readonly photo: number
  readonly label: string
}

/** A small photo, drawn rather than linked: the content security policy of a host page may allow no picture of ours. */
export function PhotoThumb({ service, link, photo, label }: PhotoThumbProps) {
  const words = useSheetWording().photos
  const canvas = useRef<HTMLCanvasElement>(null)
  const [isLost, setLost] = useState(false)
  useEffect(() => {
    const stop = new AbortController()
    void service.photo(link, photo, 'small', stop.signal)
      .then(file => file === null ? null : createImageBitmap(file))
      .then(picture => {
        const target = canvas.current
        if (stop.signal.aborted) return
        if (picture === null || target === null) { setLost(true); return }
        target.width = picture.width
        target.height = picture.height
        target.getContext('2d')?.drawImage(picture, 0, 0)
      })
      .catch(() => { if (!stop.signal.aborted) setLost(true) })
    return () => stop.abort()
  }, [service, link, photo])
  return isLost ? <span>{label} <span class="hint">{words.notShown}</span></span> : <canvas class="thumb" ref={canvas} role="img" aria-label={label} />
}
