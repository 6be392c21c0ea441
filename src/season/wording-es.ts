import type { MoveWording } from './move-wording.js'

/** Spanish for each reason. Written without a native speaker's review. */
export const es: MoveWording = {
  line: (isMoreLikely, reasons) => `${isMoreLikely ? 'más' : 'menos'} probable aquí y ahora: ${reasons}`,
  lastAnd: ' y ',
  reasons: {
    'reports this week': ({ count, district }) => `${reports(count)} en ${district} esta semana`,
    'reports lately': ({ count, district, weeks }) => `${reports(count)} en ${district} en las últimas ${weeks} semanas`,
    presence: ({ state, district }) => {
      switch (state) {
        case 'not found': return `no encontrado en ${district} hasta ahora`
        case 'found nearby': return `encontrado cerca de ${district}`
        case 'widespread': return `muy extendido en ${district}`
        default: return `se sabe que está en ${district}`
      }
    },
    'presence beside': ({ district }) => `encontrado en ${district}, justo al lado`,
  },
  weather: {
    BLIGHT_WEATHER: '{count} veces dos días de tiempo de tizón en los últimos {days} días',
    BLIGHT_WEATHER_ONCE: 'dos días de tiempo de tizón en los últimos {days} días',
    LEAF_BLIGHT_WEATHER: 'tiempo de tizón de la hoja: {sum} puntos de gravedad en los últimos {days} días',
    SCAB_WEATHER: '{count} periodos de tiempo de sarna, hace de {least} a {most} días',
    SCAB_WEATHER_ONCE: 'un periodo de tiempo de sarna, hace de {least} a {most} días',
    WET_LEAVES: 'hojas mojadas {hours} horas al día o más en {count} de los últimos {days} días',
    DROUGHT: 'solo {rain} mm de lluvia en los últimos 30 días',
    SOAKING_RAIN: '{rain} mm de lluvia en los últimos 7 días',
    HEAT_NOW: 'más o menos ahora según el calor de este año: {sum} grados-día sobre {base} °{unit}',
    HEAT_TOO_EARLY: 'pronto para ello según el calor de este año: {sum} grados-día sobre {base} °{unit}, se ve desde {least}',
    HEAT_OVER: 'tarde para ello según el calor de este año: {sum} grados-día sobre {base} °{unit}, se ve hasta {most}',
  },
}

function reports(count: string | number | undefined): string {
  return count === 1 ? '1 aviso' : `${count ?? 0} avisos`
}
