/**
 * Whether a chosen password is among the first that anyone would try: the person's name or the helpline's word in it with
 * little else, one sign or a short piece over and over, a run along the keyboard or the alphabet. Length alone (12 signs
 * and more) keeps out the lists of common short passwords; common practice, no source.
 */
export function isEasyPassword(password: string, name: string): boolean {
  const plain = password.toLowerCase()
  const bare = [name.toLowerCase(), ...EASY_WORDS].reduce((rest, word) => (word.length < 3 ? rest : rest.replaceAll(word, '')), plain)
  if (new Set(bare.replaceAll(/[^\p{L}]/gu, '')).size < 4 && bare.length < 10) return true
  if (/^(.{1,4})\1+.{0,3}$/u.test(plain)) return true
  return RUNS.some((run) => longestShared(plain, run) >= plain.length - 3)
}

const EASY_WORDS = ['password', 'passwort', 'frondline', 'helpline', 'welcome', 'letmein', 'qwerty', 'secret', 'admin']
const RUNS = ['abcdefghijklmnopqrstuvwxyz', '01234567890123456789', 'qwertyuiopasdfghjklzxcvbnm', '1qaz2wsx3edc4rfv5tgb6yhn7ujm']

function longestShared(text: string, run: string): number {
  let longest = 0
  for (let from = 0; from < text.length; from++) {
    let to = from + longest + 1
    while (to <= text.length && run.includes(text.slice(from, to))) {
      longest = to - from
      to++
    }
  }
  return longest
}
