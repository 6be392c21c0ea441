/** Address of the panel's first module beside this script; its name carries a hash of its content, so the build puts it in. */
declare const PANEL_CORE: string

// The one script of a host page: it stays tiny and is asked for anew each time, what it loads may be kept for ever.
// Only a classic script knows its own address, and only while it first runs.
const script = document.currentScript
const here = script instanceof HTMLScriptElement && script.src !== '' ? script.src : location.href
void import(/* @vite-ignore */ new URL(PANEL_CORE, here).href)

export {}
