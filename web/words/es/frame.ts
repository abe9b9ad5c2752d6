// In Spanish: the frame round every page: head, navigation, connection, signing in, what goes wrong.

import { many } from '../../strings.ts';
import type { frame as english } from '../en/frame.ts';

export const frame: typeof english = {
  product: 'Takewell',
  skipToMain: 'Ir a la página',
  menu: 'Menú',
  pageTitle: (page) => `${page} · Takewell`,
  nav: {
    overview: 'Cámaras',
    alarms: 'Alarmas',
    batches: 'Lotes',
    profiles: 'Perfiles',
    sensors: 'Sensores',
    people: 'Personas',
    settings: 'Ajustes',
    more: 'Más',
    mine: 'Mis avisos, cerrar sesión',
    mineOf: (name) => `${name}: mis avisos, cerrar sesión`,
    open: (count) => `${many(count, 'alarma', 'alarmas')} sin confirmar`,
  },
  demo: 'Datos de demostración, inventados',
  live: {
    connecting: 'conectando',
    none: 'sin conexión',
    fresh: 'al día',
    heard: (age) => `de ${age}`,
    lost: (time, age) =>
      `Sin conexión. Lo que ve es de las ${time}, hace ${age}. Se pone al día solo cuando vuelve la conexión.`,
    underAMinute: 'menos de un minuto',
    lostShort: (age) => `sin conexión, hace ${age}`,
    neverHeard: 'Aún no hay conexión con el servicio. Mire si este dispositivo está en la misma red.',
    back: 'Ha vuelto la conexión; todo está al día.',
  },
  printed: (site, time) => (site === '' ? `Situación de ${time}` : `${site}, situación de ${time}`),
  version: {
    newer: 'Hay una versión más nueva de Takewell.',
    load: 'Cargarla ahora',
  },
  problems: {
    unreachable: 'No se llega al servicio. Mire la red; lo que ha escrito se conserva.',
    timeOut: 'El servicio tardó demasiado en contestar. Inténtelo otra vez.',
    badAnswer: 'El servicio contestó algo que esta página no entiende. Recargue la página.',
    notAllowed: 'Su papel no permite esto. Pídalo a un responsable.',
    notFound: 'Eso ya no existe. Recargue la página.',
    tooMany: 'Demasiados intentos. Espere un minuto e inténtelo otra vez.',
    server: 'El servicio tuvo un problema. No ha cambiado nada; inténtelo en un minuto.',
    signInAgain: 'Su sesión está cerrada. Inicie sesión otra vez.',
    seeFields: 'Cambie lo marcado; no se pierde nada más.',
    again: 'Intentar otra vez',
    loading: 'Cargando…',
  },
  notFound: {
    title: 'Aquí no hay nada',
    text: 'No hay ninguna página en esta dirección.',
    home: 'Ir a las cámaras',
  },
  signIn: {
    title: 'Iniciar sesión',
    name: 'Nombre',
    password: 'Contraseña',
    act: 'Entrar',
    needsSetup: 'Aún no hay ningún responsable. Abra la dirección de instalación que el servicio mostró al arrancar.',
  },
  language: {
    label: 'Idioma',
  },
};
