// In Spanish: how to read strip and figures.
import type { legend as english } from '../en/legend.ts';

export const legend: typeof english = {
  legend: {
    title: 'Cómo leer la franja y las cifras',
    intro:
      'Una franja es un lote, desde que se cierra el túnel, a la izquierda, hasta el fin de la aclimatación, a la derecha; una celda es un día.',
    band: 'Banda verde: la humedad que quiere el plan. Se mantiene alta y después baja por pasos.',
    line: 'Línea azul: humedad medida. La nube clara alrededor es la más baja y la más alta de ese tiempo.',
    house: 'Líneas grises finas: el aire del invernadero. Hacia su humedad va la banda.',
    temperature: 'Línea marrón: temperatura. A trazos: sus límites; trazos largos: el límite extremo.',
    checks: 'Puntos: controles. Lleno = sí, tachado = no, anillo = por venir, rombo = toca o sin hacer.',
    log: 'Signos pequeños bajo los puntos: gota = nebulizado, dos trazos = abertura cambiada, flecha abajo = lacias, flecha arriba = erguidas, un trazo = lo demás.',
    forecast:
      'Cono marrón a la derecha de ahora: adónde va la sonda más caliente. Ocho de cada diez veces queda dentro.',
    doubted: 'Banderitas al pie: lecturas dudosas. No entran en ninguna línea.',
    hold: 'Tramo gris tras dos trazos: el lote estaba en pausa, el plan parado.',
    alarm:
      'Barra roja: una alarma, tan larga como duró. Rayada habla de ese aire; bajo los puntos, de una sonda o un control.',
    gap: 'Rayado gris: no se oyó nada. Queda abierto, no se rellena.',
    now: 'Línea roja vertical: ahora. Más claro a su derecha: el plan que viene.',
    figures: 'Las cifras',
    vpd: 'El DPV (déficit de presión de vapor, en kPa) dice con qué fuerza el aire saca agua de las hojas; se calcula con temperatura y humedad. Cerca de 0 no saca nada; cuanto más alto, antes se marchita un injerto reciente.',
    beyond:
      'Subrayado en rojo: fuera del plan ahora, en la sonda más caliente, más fría o más seca. Gris e inclinado: demasiado viejo para fiarse.',
    shapes: 'Signos de los estados',
    shapeWords: {
      hot: 'demasiado calor',
      warming: 'viene calor',
      cold: 'demasiado frío',
      dry: 'demasiado seco',
      wet: 'demasiado húmedo',
      silent: 'una sonda no da señal',
      gone: 'toda la cámara está sin señal',
      old: 'clima desconocido',
      overdue: 'control sin hacer',
      due: 'toca un control',
      watch: 'justo fuera del plan',
      hold: 'en pausa',
      order: 'en orden',
      empty: 'sin lote',
    },
  },
};
