import { byCount } from './by-count.js'
import type { Season, SheetWording } from './en-sheet.js'

/** The words of an open case's sheet, in Spanish. */
export const esSheet: SheetWording = {
  carryOn: {
    lead: 'Cuando ya nadie corra peligro, puede seguir con su pregunta sobre la planta.',
    submit: 'Seguir con mi pregunta sobre la planta',
  },

  words: { title: 'Con sus palabras', and: 'y más tarde' },

  label: {
    title: 'La planta', plant: 'Planta', trouble: 'Problema', job: 'Tarea', question: 'Pregunta', place: 'Lugar', date: 'Fecha',
    notYet: 'aún sin nombre', fromTheTop: 'aún no está claro', change: 'Cambiar',
    changePlant: 'Cambiar la planta o el problema',
  },

  place: {
    title: '¿Le hemos entendido bien?',
    titleNothing: '¿De qué planta se trata?',
    lead: 'Elija la línea que mejor encaje. Podrá cambiarla más tarde.',
    heard: 'Usted dijo:',
    guess: 'Lo que nos parece más probable',
    anything: 'otra cosa de esta planta',
    somethingElse: 'Otra cosa',
    unknown: 'No sé qué planta es',
    notSick: 'No está enferma. Quiero saber cómo cultivarla o cómo podarla',
    jobTitle: '¿Qué quiere hacer?',
    noneOfThese: 'Ninguna de estas. Preguntar a un especialista',
    tellNext: 'le preguntaremos qué ve',
    back: 'Volver a las líneas de arriba',
    titleUnsure: '¿Cuál de estas se acerca más?',
    leadUnsure: 'No estamos seguros de haberle entendido. Elija la línea que mejor encaje, o «Otra cosa». Podrá cambiarla más tarde.',
    guesses: 'Ver lo que entendimos de sus palabras',
  },

  picker: {
    title: '¿Qué planta es y qué le pasa?',
    aboutAPlant: 'Se trata de una planta. Quiero elegirla',
    plant: 'Escriba el nombre de la planta',
    plantHint: 'Bastan unas pocas letras.',
    found: count => count === 0
      ? 'En nuestra lista no hay ninguna planta con ese nombre.'
      : byCount('es', count, { one: `Encaja ${count} planta.`, other: `Encajan ${count} plantas.` }),
    none: 'Pruebe con otro nombre o pregunte abajo a un especialista.',
    more: count => byCount('es', count, {
      one: `Hay ${count} más. Escriba más letras para encontrarla.`, other: `Hay ${count} más. Escriba más letras para encontrarlas.`,
    }),
    complaint: plant => `¿Qué le pasa a su planta? (${plant})`,
    complaintHint: 'Escriba una palabra o elija la línea que más se acerque.',
    anything: 'Ninguna de estas, o no sé decirlo',
    otherPlant: 'Otra planta',
    cancel: 'Dejarlo como estaba',
    loading: 'Buscando la lista …',
    failed: 'No pudimos traer la lista.',
    again: 'Probar otra vez',
  },

  lines: {
    title: 'Lo que ha visto hasta ahora',
    change: 'Cambiar',
    changeLine: ask => `Cambiar su respuesta a: ${ask}`,
    offPath: 'Fuera del camino de siempre. Pero cuenta.',
    sideLook: 'Una mirada a un lado. También cuenta.',
    again: 'se pregunta otra vez abajo',
    origin: { asked: '', said: 'lo dijo usted', note: 'apuntado por teléfono', photo: 'de una foto' },
  },

  check: {
    line: number => `Línea ${number}`,
    left: left => left === null ? '' : left.most <= 1
      ? 'Puede que sea la última.'
      : left.least === left.most ? `Faltan unas ${left.most}.` : `Faltan de ${left.least} a ${left.most}.`,
    how: 'Cómo mirar',
    why: 'Por qué lo preguntamos',
    notSure: 'No lo tengo claro',
    cantLook: 'Ahora no puedo mirar',
    calm: 'Las dos valen. Después preguntaremos otra cosa.',
    lastLook: 'Esto lo debe ver un especialista. Lo que usted mire ahora le ayudará.',
    lastCalm: 'Las dos valen. Después puede seguir un especialista.',
    before: 'su respuesta de ahora',
    keep: 'Dejar mi respuesta',
    later: 'Ahora no',
    sending: 'Apuntando …',
    lineAgain: number => `Línea ${number}, otra vez`,
    again: (said, problem, usual) => `Usted respondió «${said}». La mayoría de las plantas con este problema (${problem}) muestran «${usual}». Mire otra vez, por favor.`,
    againCalm: 'Si ve lo mismo que antes, respóndalo otra vez. Está bien así.',
  },

  drawings: {
    leafUnderside: 'Dibujo: una hoja vuelta del revés, para ver los nervios por debajo.',
    scratchTest: 'Dibujo: un pulgar levanta un trocito de piel de una ramita.',
    stemBase: 'Dibujo: un tallo donde entra en la tierra, con la tierra apartada.',
    rootFlare: 'Dibujo: un tronco que se ensancha hacia las raíces, sin tierra alrededor.',
    roots: 'Dibujo: una planta fuera de la maceta, con las raíces colgando.',
  },

  advice: {
    title: 'Lo que creemos que es',
    sure: 'Con qué certeza',
    share: probability => `más o menos ${Math.min(99, Math.max(1, Math.round(probability * 100)))} de cada 100`,
    cause: 'Causa',
    report: 'Por favor, avise de esto',
    doNow: 'Haga ahora',
    notWorth: 'No vale la pena',
    nextYear: 'El año que viene',
    spray: 'Rociar o fumigar',
    noSpray: 'Sin rociar nada',
    when: 'Cuándo',
    months: (first, last) => first === last ? first : `de ${first} a ${last}`,
    mostlySeen: months => `Se ve sobre todo en estos meses: ${months}.`,
    season: (season, months) => `Con «${seasons[season]}» queremos decir: ${months}.`,
    askedIn: month => `Usted preguntó en ${month}. Haga cada cosa en su mes.`,
    cautions: 'Tenga cuidado',
    why: 'Por qué lo creemos',
    for: 'A favor',
    against: 'En contra',
    nothingAgainst: 'Nada de lo que vio habla en contra.',
    turns: 'Qué cambiaría esto',
    turn: (answer, ask) => `Si en cambio viera «${answer}» en «${ask}», lo más probable sería:`,
    lookAtTurn: 'Mirar esto',
    seen: often => `con esto se ve ${often}`,
    lookAlikes: 'Se parece mucho a',
    others: 'Qué más podría ser',
    sources: 'De dónde sale esto',
    commonPractice: 'Práctica común',
    reviewed: date => `Escrito o cambiado por última vez el ${date}.`,
    print: 'Imprimir esta ficha',
    openToPrint: 'Abrir en una página para imprimir',
    noFit: 'Esto no encaja. Preguntar a un especialista',
  },

  watched: {
    title: 'Esto no lo podemos descartar',
    why: 'Hay que avisar de ello. Por eso lo nombramos aunque sea poco probable.',
  },

  sample: {
    title: 'Lo que un laboratorio podría aclarar',
    pack: 'Cómo empaquetarlo',
  },

  likely: {
    title: 'Qué podría ser',
    somethingElse: 'Algo que no está en nuestra lista',
    reasons: 'A favor y en contra',
  },

  handOver: {
    title: 'Pregunte a un especialista',
    ask: 'Preguntar a un especialista',
    lead: 'Un especialista lee toda su ficha. No hace falta que lo cuente todo otra vez.',
    unsettled: 'Todavía podría mirar esto',
    lookNow: 'Mirar ahora',
    tomorrow: 'Para mañana',
    tomorrowHint: 'Mírelo mañana. Con su enlace seguirá donde lo dejó.',
    keepLink: 'Su enlace privado',
    haveLooked: 'Ya he mirado',
    contactLead: '¿Cómo podemos hablar con usted? Puede dejarlo todo vacío. Entonces su enlace privado es el camino a la respuesta.',
    contactLeadNoMail: 'Puede decirnos cómo hablar con usted o dejarlo todo vacío. Desde aquí no enviamos correos. Guarde su enlace privado: es el camino a la respuesta.',
    name: 'Nombre',
    email: 'Correo electrónico',
    phone: 'Teléfono',
    callTime: 'Mejor hora para llamar',
    optional: 'si quiere',
    note: '¿Hay algo más que debamos saber?',
    submit: 'Entregar mi ficha',
    sending: 'Entregando …',
    cancel: 'Todavía no',
    privacy: 'Sus datos solo los ven los especialistas, y solo para esta ficha.',
    badEmail: 'Eso no parece un correo. Corríjalo o déjelo vacío.',
    badPhone: 'Use solo cifras, espacios, + - . y paréntesis.',
  },

  after: {
    waiting: 'Su ficha está con un especialista',
    taken: 'Un especialista está leyendo su ficha',
    sample: 'Su muestra va camino del laboratorio',
    sampleNumber: number => `Número de la muestra: ${number}.`,
    within: hours => hours % 24 === 0 && hours >= 48
      ? `Queremos responderle en menos de ${hours / 24} días.`
      : `Queremos responderle en menos de ${byCount('es', hours, { one: `${hours} hora`, other: `${hours} horas` })}.`,
    contact: 'Le avisaremos como nos pidió. También puede mirar aquí.',
    contactNoMail: 'Desde aquí no enviamos correos. Guarde este enlace: es el camino a la respuesta.',
    noContact: 'No dejó ningún contacto. Guarde este enlace: es el único camino a la respuesta.',
    link: 'Su enlace privado',
    copy: 'Copiar el enlace',
    copied: 'Copiado.',
    copyByHand: 'Pulse Ctrl+C, o mantenga pulsado para copiar.',
    keepPrivate: 'Quien tenga este enlace puede leer su ficha.',
    goOn: 'Mientras espera puede seguir. El especialista ve cada línea nueva.',
    look: 'Mirar si hay respuesta',
    answered: 'La respuesta del especialista',
    outcome: {
      'problem': name => name ?? 'Un problema conocido de las plantas',
      'not known': () => 'No sabemos qué es',
      'not a plant problem': () => 'Esto no es un problema de la planta',
    },
    answeredOn: date => `Respondido el ${date}`,
  },

  askedBack: {
    title: 'El especialista le pregunta algo',
    answered: 'Gracias. El especialista ya tiene su respuesta',
    checks: 'Mire esto, por favor',
    look: 'Mirar ahora',
    change: 'Cambiar',
    sent: 'enviado',
    photos: 'Una foto ayudaría. Añada una o más abajo, por favor.',
    goesAtOnce: 'Cada respuesta le llega al especialista en el momento.',
    answer: 'Su respuesta',
    send: 'Enviársela al especialista',
  },

  photos: {
    title: 'Fotos',
    hint: 'Lo que más ayuda es una foto de la planta entera y otra de cerca. No guardamos dónde ni cuándo se hicieron.',
    add: 'Añadir fotos',
    photo: number => `Foto ${number}`,
    onTheWay: share => `Sus fotos están en camino: ${share} %. Entregaremos su ficha en cuanto lleguen.`,
    someFailed: count => byCount('es', count, {
      one: 'Una foto no se pudo enviar. Pruebe otra vez arriba, o entregue la ficha sin ella.',
      other: `${count} fotos no se pudieron enviar. Pruebe otra vez arriba, o entregue la ficha sin ellas.`,
    }),
    without: 'Entregar sin esperar',
    noRoom: names => `No quedaba sitio para: ${names}.`,
    notRemoved: 'Ahora mismo no se pudo quitar la foto.',
    remove: 'Quitar',
    removePhoto: number => `Quitar la foto ${number}`,
    sending: name => `Enviando ${name}`,
    waiting: 'Se perdió la conexión. Lo volvemos a intentar solos.',
    failed: 'Esta foto no se pudo enviar.',
    tooLarge: 'Esta foto es demasiado grande. Puede tener hasta 12 megabytes.',
    again: 'Probar otra vez',
    leave: 'Dejarla fuera',
    full: most => `Hay sitio para ${most} fotos.`,
    notShown: 'ahora no se puede mostrar',
  },

  more: {
    title: 'He visto algo más',
    label: '¿Qué ha visto?',
    submit: 'Añadir a la ficha',
    restart: 'Empezar otra ficha',
  },
}

const seasons: Readonly<Record<Season, string>> = { spring: 'primavera', summer: 'verano', autumn: 'otoño', winter: 'invierno' }
