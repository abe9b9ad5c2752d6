// Names, crops and sources of the shipped profiles, in Spanish.
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
