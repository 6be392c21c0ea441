import type { DeskWording } from './en.js'

/** What the service itself says to askers, in Spanish: usted, plain words. */
export const es: DeskWording = {
  // A translation of our own; the scale's published terms are English.
  sureness: [
    'casi seguro', 'extremadamente probable', 'muy probable', 'probable', 'tan probable como que no', 'poco probable',
    'muy poco probable', 'extremadamente improbable', 'casi imposible',
  ],

  notListed: { name: 'Algo que no está en esta lista', what: 'Una causa que esta guía no conoce.' },
  noSpray: 'No hace falta rociar nada.',

  seen: {
    'always': 'siempre', 'almost always': 'casi siempre', 'very often': 'muy a menudo', 'usually': 'normalmente', 'often': 'a menudo',
    'as often as not': 'la mitad de las veces', 'sometimes': 'a veces', 'occasionally': 'de vez en cuando', 'seldom': 'pocas veces',
    'rarely': 'rara vez', 'almost never': 'casi nunca', 'never': 'nunca',
  },

  because: {
    'several causes fit': 'Lo que ha visto encaja con más de una causa, y no queremos adivinar.',
    'out of sight': 'Ahora es difícil ver lo suficiente, y no pasa nada. Muchas veces a un especialista le bastan unas fotos.',
  },

  answer: { doNow: 'Haga ahora', notWorthDoing: 'No vale la pena', nextYear: 'El año que viene', cautions: 'Tenga cuidado' },

  letter: {
    received: {
      subject: ticket => `hemos recibido su pregunta (consulta ${ticket})`,
      arrived: (helpline, ticket, hours) => `Su pregunta le ha llegado a un especialista. Servicio: ${helpline}. Número de consulta: ${ticket}. Queremos responderle en menos de ${hours} horas.`,
      link: 'Aquí puede leerla, añadir fotos y ver la respuesta. Quien tenga este enlace puede hacer lo mismo, así que no lo comparta:',
      mistake: 'Si usted no nos preguntó nada, alguien nos dio su dirección por error. No tiene que hacer nada.',
    },
    askedBack: {
      subject: ticket => `hay algo más que mirar (consulta ${ticket})`,
      needs: ticket => `Para responder a su pregunta, consulta ${ticket}, el especialista necesita saber un poco más.`,
      link: 'Mire lo que se le pregunta aquí, por favor. «No lo tengo claro» también es una buena respuesta:',
    },
    answered: {
      subject: ticket => `la respuesta a su pregunta (consulta ${ticket})`,
      answered: ticket => `El especialista ha respondido a su pregunta, consulta ${ticket}.`,
      changed: ticket => `El especialista ha cambiado la respuesta a su pregunta, consulta ${ticket}.`,
      about: problem => `Se trata de: ${problem}.`,
      link: 'La ficha entera, con todo lo que usted vio:',
      cautions: 'Antes de rociar nada: lo que dice la etiqueta es la ley, y las normas de su zona van primero. Nada de esto quiere decir que una planta se pueda comer. Deje los trabajos en árboles grandes a una persona cualificada.',
    },
    danger: calls => `Si alguien puede estar envenenado o en peligro, no espere una carta. Llame ahora mismo: ${calls}.`,
  },
}
