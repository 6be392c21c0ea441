import type { Wording } from './en.js'

/** The words of the first paint, in Spanish. They are for worried people: usted, plain words, short sentences. */
export const es: Wording = {
  sheetTitle: 'Ficha de consulta sobre plantas',
  languageLabel: 'Idioma',
  demonstration: 'Esto es una demostración. El servicio de ayuda y sus teléfonos son inventados.',
  opening: 'Buscando su ficha …',

  question: {
    title: '¿Qué le pasa a su planta?',
    lead: 'Cuéntelo como se lo diría a un vecino. Diga qué planta es, si lo sabe, y qué ve.',
    label: 'Su pregunta',
    district: '¿Dónde está la planta?',
    anyDistrict: 'Prefiero no decirlo',
    examplesTitle: 'Por ejemplo',
    examples: [
      'Las hojas de mi rosal tienen manchas negras y se caen',
      'Algo se come las hojas de mi lechuga por la noche',
      'Mis tomates tienen una mancha oscura y hundida por debajo',
    ],
    submit: 'Empezar la ficha',
    sending: 'Empezando …',
    empty: 'Primero escriba unas palabras sobre la planta, por favor.',
    tooLong: max => `El texto es demasiado largo. Escriba menos de ${max} letras, por favor.`,
    privacy: 'No hace falta dar su nombre ni abrir una cuenta.',
  },

  notAsked: {
    title: 'A esto no le podemos responder',
    lead: 'Puede preguntarnos por una planta, por el césped o por una mala hierba: qué le pasa, qué se la come y qué hacer. Escriba en español o en inglés. Diga qué planta es y qué ve.',
    kept: 'Sus palabras siguen aquí abajo. Puede cambiarlas y preguntar otra vez.',
    submit: 'Preguntar otra vez',
  },

  flags: {
    emergency: 'Actúe ya',
    caution: 'Tenga cuidado',
    doNow: 'Haga esto ahora mismo',
    doNot: 'No haga esto',
    call: 'Llamar a:',
  },

  calm: { notSure: 'no lo tengo claro', cantLook: 'ahora no puedo mirar' },

  trouble: {
    lost: 'Ahora mismo no podemos llegar al servicio de ayuda. Lo que escribió está guardado.',
    lostAnswer: answer => `Ahora mismo no podemos llegar al servicio de ayuda. Su respuesta «${answer}» está guardada.`,
    noNetwork: 'Ahora mismo no hay conexión.',
    goOn: 'Puede seguir. Lo que responda se guarda y saldrá cuando vuelva la conexión.',
    lostSeveral: count => `Hay ${count} cosas suyas guardadas. Saldrán una tras otra cuando vuelva la conexión.`,
    busy: detail => `${detail} Lo que escribió está guardado.`,
    partMissing: 'No pudimos traer el resto de la ficha. Lo que escribió está guardado.',
    trying: 'Seguimos intentándolo solos.',
    again: 'Probar otra vez',
    stale: 'Esta ficha se cambió en otro sitio, quizá en otra ventana. Así está ahora. Mírela y responda otra vez, por favor.',
    gone: 'No encontramos esta ficha. Puede que el enlace esté cortado o que la ficha ya no se guarde.',
    refused: detail => `No ha funcionado: ${detail}`,
    close: 'Cerrar este aviso',
  },

  announce: {
    check: number => `Línea ${number}: hay algo nuevo que mirar.`,
    again: number => `Línea ${number}: mire otra vez, por favor.`,
    place: 'Confirme la planta, por favor.',
    conclude: 'La ficha tiene una respuesta.',
    handOver: 'Esto no lo podemos aclarar solos.',
    reply: 'Un especialista ha respondido.',
  },
}
