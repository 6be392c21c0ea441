import type { PlainWording } from './en-plain.js'

/** The words that only the pages without script need, in Spanish. */
export const esPlain: PlainWording = {
  lead: 'Estas páginas funcionan sin JavaScript. Pulse un botón para enviar cada respuesta.',
  title: {
    opening: 'Pregunte por una planta', gone: 'No encontramos esta ficha', refused: 'No ha funcionado',
    check: ask => ask, place: '¿De qué planta se trata?', card: 'Haga esto primero', conclude: name => name,
    handOver: 'Pregunte a un especialista', waiting: 'Su ficha está con un especialista', reply: 'La respuesta del especialista',
  },
  goOn: 'Seguir',
  plant: 'Elija la planta',
  pick: 'de la lista',
  found: {
    title: '¿Tiene un enlace privado?', label: 'Su enlace privado', submit: 'Abrir mi ficha',
    bad: 'El enlace privado no está entero. Cópielo todo, por favor.',
  },
  photo: {
    choose: 'Elija una foto', add: 'Añadir esta foto', none: 'Primero elija una foto, por favor.',
    one: 'De una en una, en JPEG, PNG o WebP, de hasta 12 megabytes.',
    first: 'Añada primero sus fotos y después entregue la ficha. Una foto elegida pero no añadida no se envía.',
  },
  link: 'Copie este enlace y guárdelo. Es el camino de vuelta a su ficha.',
  back: 'Volver a la ficha',
  look: 'Mirar si hay respuesta',
  page: 'Siga con los botones de esta página. El botón de volver de su navegador muestra una ficha más antigua.',
  print: 'Para imprimir esta ficha, use la orden de imprimir de su navegador.',
  noWords: 'Primero escriba unas palabras, por favor.',
  longName: 'Ese nombre es demasiado largo para nosotros.',
  fault: 'Mire esto, por favor:',
}
