// Names, crops, notes and sources of the shipped profiles, in Spanish.
import type { SharedWords } from '../shared-words.ts';

export const profiles: SharedWords['profiles'] = {
  names: {
    tomato: 'Tomate, práctica habitual',
    solanaceous: 'Solanáceas, cámara cálida',
    cucurbit: 'Cucurbitáceas, cámara cálida',
  },
  crops: {
    tomato: 'Tomate',
    solanaceous: 'Tomate, berenjena, pimiento',
    cucurbit: 'Sandía, melón, pepino',
  },
  notes: {
    tomato:
      'Trabajo de invernadero al estilo holandés, como se hace habitualmente; no está publicado. Antes de injertar: tallos de 1,5 mm e iguales, clasificados como mucho dos días antes; abonar y regar la víspera; túnel de 30–40 cm de alto; injerto con clip cortado a 45°. Sala de injerto y túnel a 21–22 °C y 80–90 %HR, sin sol directo; durante el llenado los límites de alarma son 2 °C y 5 %HR más amplios. El túnel nunca pasa de 28–29 °C. Algo lacias pueden estar hasta un día; después las púas deben estar erguidas. Cerrado al menos cuatro días; el día 4 se mira por una rendija; desde la mañana del día 5 se ventila por pasos hasta la humedad del invernadero en dos días; abierto del todo el día 7 si siguen erguidas. Sol solo cuando el plástico está quitado. Después dos días de aclimatación con abono, pasando poco a poco a la temperatura de cultivo.',
    solanaceous:
      'Un perfil de partida propio para una cámara calentada, reunido de varias fuentes; no está publicado: cámbielo según lo que muestre su invernadero. 24–27 °C. Al menos 95 %HR los días 1–3, 92 el día 4, 90 el día 5; 85–90 el día 6, 75–85 el día 7, después el nivel del invernadero. Los pasos llegan a las 07:00 de cada día desde el día 4. No sature el sustrato durante el prendimiento.',
    cucurbit:
      'Un perfil de partida propio, reunido de varias fuentes; no está publicado: cámbielo según lo que muestre su invernadero. 25–28 °C de día y al menos 18 °C de noche; el límite inferior es el de la noche, así que vigile de día que la cámara llegue a 25 °C. Al menos 95 %HR los días 1–3, 92 el día 4, 90 el día 5; 88–92 el día 6, 80–88 el día 7, hacia el nivel del invernadero el día 8, fuera el día 9. Los pasos llegan a las 07:00 de cada día desde el día 4.',
  },
  sources: {
    practice: 'práctica habitual',
    ours: 'valor nuestro',
    starting: 'valor nuestro: perfil de partida, no publicado',
    wilt: 'estudio con plántulas de tomate (déficit de vapor leve): las púas se marchitan con 80–90 %HR',
    healingHumidity: 'resumen de Johnson & Miles 2011, HortTechnology 21(6):752: 85–100 %HR, leído de segunda mano',
    callus: 'Hartmann & Kester, de memoria: el callo crece despacio por debajo de 20 °C y mal por encima de 32 °C',
    watermelonNight: 'sandía sobre calabaza, resumen: unión a los 5 d con noches de 18 °C, a los 7 d con 15 °C',
    watermelonHumidity: 'estudio coreano con sandía, resumen: prende más del 90 % a 28 °C con más de 80 %HR',
    watermelonVpd: 'estudio coreano con sandía, resumen: prende más del 90 % por debajo de 0,76 kPa',
  },
};
