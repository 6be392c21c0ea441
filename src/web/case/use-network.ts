import { useEffect, useState } from 'preact/hooks'

/** Whether the browser has a network, as far as it knows: false is certain, true is a hope. */
export function useNetwork(): boolean {
  const [on, setOn] = useState(navigator.onLine)
  useEffect(() => {
    const look = () => setOn(navigator.onLine)
    look()
    window.addEventListener('online', look)
    window.addEventListener('offline', look)
    return () => { window.removeEventListener('online', look); window.removeEventListener('offline', look) }
  }, [])
  return on
}
