import type { ComponentChildren } from 'preact'
import { useSheetWording } from '../wording/sheet-language.js'

/** A simple line drawing of how to look, for the checks where words alone leave a beginner guessing; nothing for the others. */
export function LookDrawing({ check }: { readonly check: string }) {
  const words = useSheetWording().drawings
  const name = Object.hasOwn(DRAWN, check) ? DRAWN[check] : undefined
  if (name === undefined) return null
  return (
    <svg class="drawing" viewBox="0 0 160 100" role="img" aria-label={words[name]} fill="none" stroke="currentColor" stroke-width="1.6" stroke-linecap="round" stroke-linejoin="round">
      {LINES[name]}
    </svg>
  )
}

type Drawing = 'leafUnderside' | 'scratchTest' | 'stemBase' | 'rootFlare' | 'roots'

/** The drawing of each check, by the check's name in the guide. */
const DRAWN: Readonly<Record<string, Drawing>> = {
  'leaf-underside': 'leafUnderside', 'scratch-test': 'scratchTest', 'stem-base': 'stemBase', 'root-flare': 'rootFlare', 'roots': 'roots',
}

/** In each, the heavy line is where to look. */
const LOOK = { 'stroke-width': '3', 'class': 'drawing-look' }

const LINES: Readonly<Record<Drawing, ComponentChildren>> = {
  // A leaf whose right half is turned over, veins standing out below, and an arrow for the turning.
  leafUnderside: (
    <>
      <path d="M80 92V78M80 78C48 74 36 44 80 10" /><path d="M80 66L60 54M80 50L62 38M80 34L69 27" />
      <path d="M80 78C112 74 124 44 80 10V78" {...LOOK} /><path d="M80 66L101 54M80 50L99 38M80 34L91 27" {...LOOK} />
      <path d="M40 22C52 6 104 2 122 20M122 20L121 10M122 20L112 19" />
    </>
  ),
  // A twig lying down, a patch of skin lifted, and the thumb that lifts it.
  scratchTest: (
    <>
      <path d="M8 62L152 46M8 74L152 58M118 50L138 26M124 49L144 27" />
      <ellipse cx="70" cy="61" rx="13" ry="4.5" transform="rotate(-6 70 61)" {...LOOK} />
      <path d="M83 58C88 54 90 50 86 47" />
      <path d="M92 42C86 50 78 52 74 46C72 38 84 22 96 14M92 42C104 36 114 26 118 14M76 45C80 42 84 40 89 41" />
    </>
  ),
  // A stem coming out of the soil, the soil brushed aside in a hollow, a ring where it meets.
  stemBase: (
    <>
      <path d="M74 8C75 30 74 46 72 62M88 8C87 30 88 46 90 62M74 24L52 14M88 34L112 22" />
      <path d="M6 60C30 56 44 60 54 72M156 60C130 56 118 60 106 72M54 72C66 80 94 80 106 72" />
      <ellipse cx="81" cy="65" rx="19" ry="8" {...LOOK} />
      <path d="M72 76L60 94M81 79V95M90 76L102 94M18 68H28M132 68H142M24 80H34" />
    </>
  ),
  // A trunk that widens into roots at the soil, with a hand's width cleared round it.
  rootFlare: (
    <>
      <path d="M66 6C66 30 66 44 62 54M96 6C96 30 96 44 100 54" />
      <path d="M62 54C56 64 46 68 34 72M100 54C106 64 116 68 128 72M74 58C73 68 70 74 64 80M88 58C89 68 92 74 98 80" {...LOOK} />
      <path d="M4 62C14 60 22 64 28 74M156 62C146 60 138 64 134 74M28 74C50 90 112 90 134 74" />
      <path d="M30 92H62M30 92L35 89M30 92L35 95M62 92L57 89M62 92L57 95" />
    </>
  ),
  // A plant out of its pot, the roots hanging free.
  roots: (
    <>
      <path d="M80 6V34M80 16C70 6 60 8 56 16C66 22 74 20 80 16M80 24C90 12 102 14 106 22C96 28 88 28 80 24M52 34H108" />
      <path d="M62 36C60 52 52 60 54 76M70 36C70 56 64 66 68 88M80 36C82 56 78 70 82 92M90 36C90 56 98 64 94 86M98 36C102 50 108 60 104 74" {...LOOK} />
      <path d="M57 60L48 66M68 64L76 70M81 66L88 74M95 62L104 66" />
    </>
  ),
}
